"""DEVELOPERS.md, "A first lesson": whoever does what it says sees what it shows."""

import re
import shlex
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from click.testing import CliRunner

from trainer.cli import main

ROOT = Path(__file__).resolve().parents[1]
CHAPTER = re.search(
    r"^### A first lesson\n(.*?)^### ",
    (ROOT / "DEVELOPERS.md").read_text("utf-8"),
    re.DOTALL | re.MULTILINE,
)
#: Where the page has somebody stand, and where the preview is served on it.
HOME, PORT = "/home/you", "8000"
_TRAINER = "from trainer.cli import main; main()"
_STEP = re.compile(
    r"^(?P<what>Write|Add to the end of) `(?P<file>[^`]+)`:\n\n"
    r"(?P<fence>`{3,})\w+\n(?P<text>.*?)^(?P=fence)$"
    r"|^In `(?P<changed>[^`]+)`, `(?P<old>[^`]+)` must read `(?P<new>[^`]+)`\.$"
    r"|^```console\n(?P<session>.*?)^```$",
    re.DOTALL | re.MULTILINE,
)
_COMMAND = re.compile(r"^\$ (.*)\n((?:(?!\$ ).*\n)*)", re.MULTILINE)


@dataclass
class Author:
    """Somebody who follows the page in a folder of their own, with the page open beside it."""

    home: Path
    port: int
    monkeypatch: pytest.MonkeyPatch
    preview: subprocess.Popen[str] | None = None
    #: What the browser said after each step: a status and a page.
    seen: list[tuple[int, str]] = field(default_factory=list)
    typed: list[str] = field(default_factory=list)

    def follow(self, step: re.Match[str]) -> None:
        """Do what one step says, and look at the page."""
        if step["file"]:
            self.write(self.home / step["file"], step["text"], step["what"] == "Write")
        elif step["changed"]:
            file = self.home / step["changed"]
            text = file.read_text("utf-8")
            assert text.count(step["old"]) == 1
            file.write_text(text.replace(step["old"], step["new"]), "utf-8")
        else:
            for command, shown in _COMMAND.findall(step["session"]):
                self.type(command, shown)
        if self.preview:
            self.seen.append(self.look())

    def write(self, file: Path, text: str, anew: bool) -> None:  # noqa: FBT001 - as it is told
        """Write a file anew, or at its end."""
        assert file.exists() != anew
        file.write_text(text if anew else file.read_text("utf-8") + text, "utf-8")

    def type(self, command: str, shown: str) -> None:
        """Type a command, which prints what is shown."""
        self.typed.append(command)
        words = shlex.split(self.here(command))
        if words[0] == "export":
            self.monkeypatch.setenv(*words[1].split("=", 1))
            assert shown == ""
        elif words[:2] == ["trainer", "preview"]:
            self.start(words[1:], shown)
        else:
            assert words.pop(0) == "trainer"
            said = CliRunner().invoke(main, words, prog_name="trainer").output
            assert re.fullmatch(as_pattern(self.here(shown)), said), said

    def start(self, words: list[str], shown: str) -> None:
        """Leave the preview running in a terminal of its own."""
        self.preview = subprocess.Popen(  # noqa: S603 - our own command
            [sys.executable, "-c", _TRAINER, *words, "--port", str(self.port)],
            stdout=subprocess.PIPE,
            text=True,
        )
        assert self.preview.stdout
        said = "".join(self.preview.stdout.readline() for _ in shown.splitlines())
        assert said == self.here(shown).replace(PORT, str(self.port))

    def look(self) -> tuple[int, str]:
        """Return the status and the words of the page in the browser."""
        # A file system may not tell two changes within one tick of its clock apart.
        time.sleep(0.02)
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        try:
            with opener.open(f"http://127.0.0.1:{self.port}/", timeout=60) as answer:
                return answer.status, answer.read().decode()
        except urllib.request.HTTPError as refused:
            return refused.code, refused.read().decode()

    def here(self, text: str) -> str:
        """Return a text with this folder where the page has its own."""
        return text.replace(HOME, str(self.home))


def as_pattern(shown: str) -> str:
    """Return what matches a text in which … stands for any figure."""
    return re.escape(shown).replace("…", r"\d+")


def steps() -> list[re.Match[str]]:
    """Return what the chapter has somebody do, in order."""
    assert CHAPTER
    return list(_STEP.finditer(CHAPTER[1]))


@pytest.fixture(scope="module")
def author(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Author]:
    """Somebody who has followed the page to its end."""
    home = tmp_path_factory.mktemp("you")
    with pytest.MonkeyPatch.context() as monkeypatch:
        monkeypatch.chdir(home)
        monkeypatch.setenv("PYTHONPATH", str(ROOT))
        monkeypatch.setenv("TRAINER_INSTANCE", str(home / "instance"))
        with socket.create_server(("127.0.0.1", 0)) as server:
            port = server.getsockname()[1]
        author = Author(home, port, monkeypatch)
        try:
            for step in steps():
                author.follow(step)
            yield author
        finally:
            if author.preview:
                author.preview.kill()
                author.preview.communicate()


def test_every_text_and_command_is_followed() -> None:
    """No block of the chapter stands there without somebody doing something with it."""
    assert CHAPTER
    outside = _STEP.sub("", CHAPTER[1])
    assert "```" not in outside


def test_it_goes_from_a_copy_to_a_check(author: Author) -> None:
    """Each command is there, and each printed what the page says."""
    for command in ("trainer content copy ", "trainer preview ", "trainer check"):
        assert any(each.startswith(command) for each in author.typed)


def test_the_mistake_is_where_the_check_says(author: Author) -> None:
    """Its line, in the file as it is but for the mistake, is the one that is shown."""
    assert CHAPTER
    found = re.search(r"^content/(\S+):(\d+): .*\n    (.*)$", CHAPTER[1], re.MULTILINE)
    (change,) = (step for step in steps() if step["changed"])
    assert found
    text = (author.home / "my-lessons" / found[1]).read_text("utf-8")
    line = text.splitlines()[int(found[2]) - 1]
    assert line.replace(change["new"], change["old"]) == found[3]


def test_the_page_follows_every_step(author: Author) -> None:
    """It shows the lesson, then the mistake, then the lesson again with nothing to mend."""
    assert [status for status, _ in author.seen if status != 200] == [503, 503]
    broken = next(number for number, (status, _) in enumerate(author.seen) if status == 503)
    assert all("A lesson asks 5 questions at least." in page for _, page in author.seen[:broken])
    status, page = author.seen[-1]
    assert status == 200
    assert "A board that has split" in page
    assert "content/lessons" not in page


def test_the_firms_own_records_are_not_touched(author: Author) -> None:
    """Neither looking nor checking needs them."""
    assert not (author.home / "instance").exists()
