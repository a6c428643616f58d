"""The wheel: what a firm installs, proved where there is no checkout."""

import os
import shutil
import subprocess
import sys
import sysconfig
import venv
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from zipfile import ZipFile

import pytest

ROOT = Path(__file__).resolve().parents[1]
SOURCES = ("trainer", "content", "pyproject.toml", "README.md")

#: Makes the application, brings its database up to date, and opens a page and its style.
STARTED = """
from trainer import create_app, web
app = create_app()
web.prepare(app)
visitor = app.test_client()
for path in ("/sign-in", "/static/face.css", "/static/shapes.svg", "/cautions"):
    answer = visitor.get(path)
    print(path, answer.status_code, len(answer.data) > 500)
    answer.close()
print("records", app.extensions["installation"].config.instance)
"""
#: Works each question a few times; the checkout's own lessons are worked in full elsewhere.
CHECKED = """
from trainer.lessons import question_check
question_check.VARIANTS = 25
from trainer.cli import main
main(["check"])
"""


@dataclass(frozen=True)
class Installed:
    """A fresh environment with the wheel in it, and somebody's home to run it from."""

    wheel: Path
    environment: Path
    home: Path

    @property
    def package(self) -> Path:
        """Where the code lies."""
        return next((self.environment / "lib").glob("python*/site-packages/trainer"))

    def run(self, *words: str, settings: Mapping[str, str] | None = None) -> str:
        """Return what a command of the environment prints, run from home."""
        program, *given = words
        return run(
            self.environment / "bin" / program,
            *given,
            folder=self.home,
            settings={"HOME": str(self.home), **(settings or {})},
        )


def run(*words: str | Path, folder: Path, settings: Mapping[str, str] | None = None) -> str:
    """Return what a command prints that ends well."""
    ended = subprocess.run(  # noqa: S603 - our own commands
        words,
        cwd=folder,
        env={"PATH": os.environ["PATH"], **(settings or {})},
        capture_output=True,
        text=True,
        check=False,
    )
    assert ended.returncode == 0, ended.stdout + ended.stderr
    return ended.stdout


@pytest.fixture(scope="session")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from a copy so that nothing is written into the checkout."""
    copy = tmp_path_factory.mktemp("copy")
    for name in SOURCES:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(source, copy / name)
    run(sys.executable, "-m", "build", "--wheel", "--no-isolation", folder=copy)
    return next((copy / "dist").glob("trainer-*.whl"))


@pytest.fixture(scope="session")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Installed:
    """The wheel in an environment that borrows what it leans on from this one."""
    folder = tmp_path_factory.mktemp("firm")
    environment, home = folder / "environment", folder / "home"
    home.mkdir()
    venv.create(environment, symlinks=True, with_pip=False)
    pip = (sys.executable, "-m", "pip", "--python", environment / "bin" / "python")
    run(*pip, "install", "-q", "--no-index", "--no-deps", "--no-compile", wheel, folder=home)
    found = Installed(wheel, environment, home)
    # A plain line of a .pth file adds that folder alone, so the checkout stays out of sight.
    borrowed = found.package.parent / "borrowed.pth"
    borrowed.write_text(f"{sysconfig.get_path('purelib')}\n")
    return found


def test_the_code_that_runs_is_the_installed_one(installed: Installed) -> None:
    """Neither the checkout nor the environment that is borrowed from."""
    code = "import trainer; print(trainer.__file__)"
    assert installed.run("python", "-c", code) == f"{installed.package}/__init__.py\n"


def test_a_wheel_holds_the_package_and_the_lessons(wheel: Path) -> None:
    """Each file of the lessons is there byte for byte, and neither tests nor records are."""
    with ZipFile(wheel) as opened:
        inside = {name: opened.read(name) for name in opened.namelist()}
    packaged = {
        name.removeprefix("trainer/packaged_content/"): text
        for name, text in inside.items()
        if name.startswith("trainer/packaged_content/")
    }
    lessons = [file for file in (ROOT / "content").rglob("*") if file.is_file()]
    assert packaged == {str(f.relative_to(ROOT / "content")): f.read_bytes() for f in lessons}
    assert {name.partition("/")[0].partition("-")[0] for name in inside} == {"trainer"}
    assert [name for name in inside if "secret" in name or "sqlite" in name] == []


def test_a_wheel_holds_whatever_the_code_reads(wheel: Path) -> None:
    """Templates, style, type, scripts and migrations."""
    with ZipFile(wheel) as opened:
        inside = set(opened.namelist())
    kept = [
        str(file.relative_to(ROOT))
        for folder in ("web/templates", "web/static", "records/migrations")
        for file in (ROOT / "trainer" / folder).rglob("*")
        if file.is_file() and "__pycache__" not in file.parts
    ]
    assert len(kept) > 15
    assert sorted(set(kept) - inside) == []


def test_the_command_is_there(installed: Installed) -> None:
    """`trainer work` gives a bucket of 1.32 kg its 33.85 ml at 3 %."""
    told = installed.run("trainer", "work", "catalyst_by_mass", "resin_kg=1.32", "percent=3")
    assert "\n33.85 ml\n" in told


def test_the_packaged_lessons_are_well(installed: Installed) -> None:
    """The check reads those, and finds nothing to mend."""
    told = installed.run("python", "-c", CHECKED)
    lessons, nothing = told.splitlines()
    assert lessons == f"Lessons: {installed.package}/packaged_content"
    assert nothing.startswith("Nothing to mend: ")


def test_the_packaged_lessons_can_be_copied(installed: Installed) -> None:
    """A firm that edits its own begins with them."""
    installed.run("trainer", "content", "copy", "ours")
    copied = sorted(file.name for file in (installed.home / "ours" / "lessons").iterdir())
    assert copied == sorted(file.name for file in (ROOT / "content" / "lessons").iterdir())


def test_the_pages_are_there(installed: Installed) -> None:
    """The database is made, and pages, style and shapes are served."""
    told = installed.run("python", "-c", STARTED, settings={"TRAINER_ZONE": "UTC"})
    assert told.splitlines()[:4] == [
        "/sign-in 200 True",
        "/static/face.css 200 True",
        "/static/shapes.svg 200 True",
        "/cautions 200 True",
    ]
    records = installed.home / ".local" / "share" / "trainer"
    assert told.splitlines()[4] == f"records {records}"
    assert (records / "trainer.sqlite").is_file()


def test_records_lie_with_the_users_data(installed: Installed, tmp_path: Path) -> None:
    """Wherever the user keeps data; never in the environment."""
    code = "from trainer.config import read_config; print(read_config().instance)"
    found = installed.run("python", "-c", code, settings={"XDG_DATA_HOME": str(tmp_path)})
    assert found == f"{tmp_path}/trainer\n"
