"""An installation of its own for each test, so that nobody's records or settings are touched."""

import os
import shutil
from pathlib import Path

import pytest
from cli_terminal import ROOT

from trainer.lessons import question_check as proving


@pytest.fixture(autouse=True)
def instance(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder that TRAINER_INSTANCE names, not made yet; no other setting is there."""
    for name in os.environ:
        if name.startswith("TRAINER_"):
            monkeypatch.delenv(name)
    folder = tmp_path / "instance"
    monkeypatch.setenv("TRAINER_INSTANCE", str(folder))
    return folder


@pytest.fixture
def zone(monkeypatch: pytest.MonkeyPatch) -> str:
    """The zone that TRAINER_ZONE names."""
    monkeypatch.setenv("TRAINER_ZONE", "Europe/Prague")
    return "Europe/Prague"


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """A copy of the lessons, to edit and to spoil."""
    return shutil.copytree(ROOT / "content", tmp_path / "content")


@pytest.fixture
def one_lesson(content: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the first lesson alone, which is read quickly, named by TRAINER_CONTENT."""
    for lesson in sorted((content / "lessons").iterdir())[1:]:
        lesson.unlink()
    monkeypatch.setenv("TRAINER_CONTENT", str(content))
    return content


@pytest.fixture
def quick_check(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have the check work each question 25 times; elsewhere the lessons are worked in full."""
    monkeypatch.setattr(proving, "VARIANTS", 25)
