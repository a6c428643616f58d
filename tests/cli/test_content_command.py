"""`trainer content copy`: lessons of one's own."""

import shlex
from pathlib import Path

import pytest
from cli_terminal import ROOT, refused, said


def files_in(folder: Path) -> dict[str, bytes]:
    """Return the files below a folder, by their path in it."""
    return {
        str(file.relative_to(folder)): file.read_bytes()
        for file in folder.rglob("*")
        if file.is_file()
    }


def test_all_lessons_and_pictures_are_copied(tmp_path: Path) -> None:
    """The copy has every file, byte for byte."""
    said("content", "copy", str(tmp_path / "ours"))
    assert files_in(tmp_path / "ours") == files_in(ROOT / "content")


@pytest.mark.usefixtures("quick_check", "zone")
def test_the_copy_is_used(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is printed can be pasted, from wherever it was made and with a space in its name."""
    monkeypatch.chdir(tmp_path)
    told = said("content", "copy", "our lessons").split("Set ")[1].removesuffix(" to use them.\n")
    (setting,) = shlex.split(told)
    name, _, folder = setting.partition("=")
    assert (name, folder) == ("TRAINER_CONTENT", str(tmp_path / "our lessons"))
    monkeypatch.setenv(name, folder)
    monkeypatch.chdir("/")
    assert said("check").startswith(f"Lessons: {folder}\nNothing to mend: ")


def test_an_empty_folder_is_filled(tmp_path: Path) -> None:
    """Whoever made it first is welcome."""
    (tmp_path / "ours").mkdir()
    said("content", "copy", str(tmp_path / "ours"))
    assert (tmp_path / "ours" / "lessons").is_dir()


def test_a_folder_with_anything_in_it_is_refused(tmp_path: Path) -> None:
    """Nothing that somebody wrote is written over."""
    (tmp_path / "notes.txt").write_text("Buy tape.")
    assert (
        refused("content", "copy", str(tmp_path)) == f"{tmp_path} isn't empty. Name a new folder."
    )
    assert [file.name for file in tmp_path.iterdir()] == ["notes.txt"]


def test_a_folder_inside_the_lessons_is_refused(one_lesson: Path) -> None:
    """A copy of the lessons in the lessons would never come to its end."""
    inside = one_lesson / "lessons" / "ours"
    assert "lies inside the lessons" in refused("content", "copy", str(inside))
    assert not inside.exists()


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    """Neither itself nor anything below it."""
    (tmp_path / "file").touch()
    assert "is a file" in refused("content", "copy", str(tmp_path / "file"))
    assert "can't be written (Not a directory)" in refused(
        "content", "copy", str(tmp_path / "file" / "ours")
    )


@pytest.mark.usefixtures("zone")
def test_lessons_that_are_set_and_not_there(monkeypatch: pytest.MonkeyPatch) -> None:
    """The setting is named, rather than copying others."""
    monkeypatch.setenv("TRAINER_CONTENT", "/nowhere")
    assert refused("content", "copy", "ours").startswith("TRAINER_CONTENT is /nowhere, ")
