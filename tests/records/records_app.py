"""A bare Flask app on a database, and our code run in a process of its own."""

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from flask import Flask

from trainer.records import database
from trainer.records.database import db


def make_app(url: str) -> Flask:
    """A Flask app that has nothing but these records."""
    app = Flask("records")
    app.config["SQLALCHEMY_DATABASE_URI"] = url
    database.init_app(app)
    return app


@contextmanager
def opened(url: str) -> Iterator[Flask]:
    """The app inside its context, and everything closed afterwards."""
    app = make_app(url)
    with app.app_context():
        yield app
        db.session.remove()
        db.engine.dispose()


def run(*command: str | Path, folder: Path) -> None:
    """Run a command of PostgreSQL's in that folder, without its chatter."""
    subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL)  # noqa: S603 — ours


def begin_script(script: str, folder: Path, *arguments: str) -> subprocess.Popen[str]:
    """Start a script in a Python of its own, in that folder; warnings are errors there too."""
    root = str(Path(database.__file__).parents[2])
    return subprocess.Popen(  # noqa: S603 — the scripts are in the tests
        [sys.executable, "-W", "error", "-c", script, *arguments],
        cwd=folder,
        env={"PYTHONPATH": ":".join([root, *sys.path])},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def said_by(process: subprocess.Popen[str]) -> str:
    """What a script printed, once it has ended well."""
    said, complaints = process.communicate(timeout=60)
    assert process.returncode == 0, complaints
    return said.strip()
