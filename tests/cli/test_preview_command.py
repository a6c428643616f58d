"""`trainer preview`: one lesson in the browser, named in any way, and nothing is kept."""

import re
import signal
import urllib.request
from pathlib import Path

import pytest
from cli_terminal import free_port, refused, running

from trainer.cli.preview import lesson_named

TAPING = "04-taping-open-joints.md"


@pytest.mark.parametrize(
    "name",
    ["taping-open-joints", "4", "04", "04-taping-open-joints", TAPING, "taping"],
)
def test_a_lesson_is_named_in_any_way(name: str, content: Path) -> None:
    """Its slug, its number, its file; what the file is called besides its number."""
    file = content / "lessons" / TAPING
    if name == "taping":
        file = file.rename(file.with_name("04-taping.md"))
    assert lesson_named(content, name) == file


def test_a_lesson_is_named_by_its_path(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a shell completes it."""
    monkeypatch.chdir(content)
    file = content / "lessons" / TAPING
    for path in (f"lessons/{TAPING}", str(file)):
        assert lesson_named(content, path) == file


def test_an_unknown_lesson_is_guessed_at(one_lesson: Path) -> None:
    """The nearest slug, or all there are."""
    one_lesson.joinpath("lessons", "07-wetting-out.md").write_text('slug = "wetting-out"\n')
    told = refused("preview", "weting-out")
    assert told == f"There is no lesson 'weting-out' in {one_lesson}. Did you mean 'wetting-out'?"
    known = "fire-eyes-fumes-dust-waste, wetting-out"
    assert (
        refused("preview", "12") == f"There is no lesson '12' in {one_lesson}. Known here: {known}."
    )


def test_a_lesson_of_another_folder_is_refused(one_lesson: Path, tmp_path: Path) -> None:
    """Its pictures and cautions would be missing, or others."""
    path = tmp_path / "elsewhere" / TAPING
    assert refused("preview", str(path)) == (
        f"{path} isn't among the lessons in {one_lesson}. "
        "Set TRAINER_CONTENT to the folder above its 'lessons'."
    )


def test_it_takes_no_other_address() -> None:
    """Nobody is asked who they are, so nobody else may look."""
    assert "--host" in refused("preview", "4", "--host", "0.0.0.0")  # noqa: S104 - refused


def test_it_serves_and_leaves_nothing_behind(one_lesson: Path, tmp_path: Path) -> None:
    """The lesson comes without a sign-in, on this machine alone; the firm's records stay theirs."""
    passing, own, port = tmp_path / "passing", tmp_path / "own", free_port()
    for folder in (passing, own):
        folder.mkdir()
    settings = {"TMPDIR": str(passing), "TRAINER_INSTANCE": str(own)}
    settings["TRAINER_CONTENT"] = str(one_lesson)
    with running("preview", "1", "--port", str(port), settings=settings) as server:
        server.read_until("Stop with Ctrl-C.")
        address = re.search(r"http://127\.0\.0\.1:\d+/", server.said)
        assert address
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        with opener.open(address[0], timeout=60) as answer:
            page = answer.read().decode()
        exit_code = server.stop(signal.SIGINT)
    assert "<h1>Fire, eyes" in page
    assert str(one_lesson / "lessons") in server.said
    assert (exit_code, list(passing.iterdir()), list(own.iterdir())) == (0, [], [])
    assert "Traceback" not in server.said
