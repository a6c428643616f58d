"""The factory: what it needs, what it refuses, and what it doesn't wake up."""

import os
import shutil
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from trainer import create_app, web
from trainer.config import Config, ConfigError
from trainer.lessons import ContentError

ROOT = Path(__file__).resolve().parents[1]


def config(instance: Path, zone: str | None = "UTC", content: Path = ROOT / "content") -> Config:
    """Return the settings of an installation in this folder."""
    url = f"sqlite:///{instance / 'trainer.sqlite'}"
    return Config(content, instance, url, ZoneInfo(zone) if zone else None)


def modules_after(code: str, settings: Mapping[str, str] | None = None) -> set[str]:
    """Return the packages that a fresh Python has in it after running some code."""
    ended = subprocess.run(  # noqa: S603 - the code stands in this file
        [sys.executable, "-c", f"{code}\nimport sys\nprint(*sys.modules)"],
        env={"PATH": os.environ["PATH"], "PYTHONPATH": str(ROOT), **(settings or {})},
        capture_output=True,
        text=True,
        check=True,
    )
    return {name.partition(".")[0] for name in ended.stdout.split()}


def test_the_engine_wakes_neither_the_web_nor_the_database() -> None:
    """Whoever wants a sum alone gets nothing else."""
    found = modules_after("import trainer.engine")
    assert found & {"flask", "werkzeug", "jinja2", "sqlalchemy", "markdown", "pyclipper"} == set()


def test_the_command_for_a_sum_wakes_neither() -> None:
    """`trainer work` starts quickly: each command brings only its own."""
    code = "from trainer.cli import main\nmain(['work'], standalone_mode=False)"
    assert modules_after(code) & {"flask", "werkzeug", "sqlalchemy", "alembic"} == set()


def test_the_factory_wakes_no_migrations(tmp_path: Path) -> None:
    """Most starts change no table and clip no polygon."""
    settings = {"TRAINER_INSTANCE": str(tmp_path), "TRAINER_ZONE": "UTC"}
    found = modules_after("from trainer import create_app\ncreate_app()", settings)
    assert "flask" in found
    assert found & {"alembic", "mako", "pyclipper", "waitress", "gunicorn"} == set()


def test_an_app_has_pages_before_its_database(tmp_path: Path) -> None:
    """It is made without touching the records; `web.prepare` makes them."""
    app = create_app(config(tmp_path))
    assert not (tmp_path / "trainer.sqlite").exists()
    web.prepare(app)
    assert (tmp_path / "trainer.sqlite").is_file()
    assert app.test_client().get("/sign-in").status_code == 200


def test_preparing_twice_changes_nothing(tmp_path: Path) -> None:
    """Every start prepares, so that nobody has to remember it."""
    app = create_app(config(tmp_path))
    web.prepare(app)
    web.prepare(app)
    assert app.test_client().get("/sign-in").status_code == 200


def test_two_apps_are_two_installations(tmp_path: Path) -> None:
    """Each has its own secret and its own records; there is no state beside the app."""
    here, there = (create_app(config(tmp_path / name)) for name in ("here", "there"))
    assert here.secret_key != there.secret_key
    assert here.config["SQLALCHEMY_DATABASE_URI"] != there.config["SQLALCHEMY_DATABASE_URI"]


def test_without_a_zone_there_is_no_app(tmp_path: Path) -> None:
    """An answer's date would be a guess."""
    with pytest.raises(ConfigError, match="No time zone is set"):
        create_app(config(tmp_path, zone=None))


def test_mistakes_in_the_lessons_are_all_named(tmp_path: Path) -> None:
    """None is served, and each mistake has its file and line."""
    content = shutil.copytree(ROOT / "content", tmp_path / "content")
    first, second, *_ = sorted((content / "lessons").iterdir())
    for lesson in (first, second):
        lesson.write_text(lesson.read_text("utf-8").replace("minutes = ", "minuets = ", 1), "utf-8")
    with pytest.raises(ContentError) as caught:
        create_app(config(tmp_path / "instance", content=content))
    named = {Path(mistake.file).name for mistake in caught.value.mistakes if mistake.line > 1}
    assert {first.name, second.name} <= named


def test_a_folder_that_cannot_be_written_is_refused(tmp_path: Path) -> None:
    """The secret has nowhere to be kept."""
    (tmp_path / "file").touch()
    with pytest.raises(ConfigError, match="can't be written"):
        create_app(config(tmp_path / "file" / "instance"))
