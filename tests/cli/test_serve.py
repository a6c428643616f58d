"""`trainer serve`: the pages, once it is clear where, from what and in which time zone."""

import os
import pty
import re
import signal
import socket
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from cli_terminal import free_port, refused, running

from trainer.cli.opening import with_zone
from trainer.cli.serve import refuse_taken_port
from trainer.config import read_config


@pytest.fixture
def taken_port() -> Iterator[int]:
    """A port that something else listens on."""
    with socket.create_server(("127.0.0.1", 0)) as server:
        yield server.getsockname()[1]


# What is refused.


@pytest.mark.usefixtures("zone")
def test_a_taken_port(taken_port: int, instance: Path) -> None:
    """It is named with what can be done, before anything is written."""
    told = refused("serve", "--port", str(taken_port))
    assert told == (
        f"Port {taken_port} on 127.0.0.1 can't be used (Address already in use). "
        "Stop what uses it, or give another --port."
    )
    assert not instance.exists()


def test_an_address_of_another_machine() -> None:
    """Nobody can listen there; 192.0.2.1 is kept for examples and is no machine's."""
    told = refused("serve", "--host", "192.0.2.1", "--port", str(free_port()))
    assert "on 192.0.2.1 can't be used (Cannot assign requested address)" in told
    assert "--host" in told


@pytest.mark.parametrize("port", ["0", "65536", "http"])
def test_a_port_that_is_none(port: str) -> None:
    """Ports are numbers from 1 to 65535."""
    assert port in refused("serve", "--port", port)


def test_the_other_kind_of_address_can_be_free() -> None:
    """The machine itself, in the newer writing."""
    if not socket.has_dualstack_ipv6():
        pytest.skip("This machine has no IPv6.")
    refuse_taken_port("::1", free_port())


@pytest.mark.usefixtures("zone", "one_lesson")
def test_an_instance_folder_that_cannot_be_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The folder is named, why, and the setting that names another."""
    (tmp_path / "file").touch()
    monkeypatch.setenv("TRAINER_INSTANCE", str(tmp_path / "file" / "instance"))
    assert refused("serve", "--port", str(free_port())) == (
        f"The instance folder {tmp_path}/file/instance can't be written (Not a directory). "
        "Give yourself the right to, or set TRAINER_INSTANCE to a folder that you own."
    )


@pytest.mark.usefixtures("one_lesson")
def test_no_zone_and_no_terminal() -> None:
    """There is nobody to ask, so the sentence says how to set it."""
    assert refused("serve", "--port", str(free_port())) == (
        "No time zone is set. Set TRAINER_ZONE, such as TRAINER_ZONE=Europe/London, "
        "or start 'trainer serve' once on a terminal and answer its question."
    )


@pytest.mark.parametrize("name", ["Europe/Lundon", "GMT+25", "Europe", "../UTC", "/etc/passwd"])
def test_an_unknown_zone(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The setting and what it is set to are named."""
    monkeypatch.setenv("TRAINER_ZONE", name)
    assert refused("serve", "--port", str(free_port())) == (
        f"TRAINER_ZONE: There is no time zone '{name}'. Write it like Europe/London or UTC."
    )


# What is served, started once on a terminal where nothing is set yet.


@dataclass(frozen=True)
class Evening:
    """What came of starting it, answering its question, opening a page and stopping it."""

    said: str
    address: str
    content: Path
    instance: Path
    page: str
    exit_code: int


@pytest.fixture(scope="module")
def evening(tmp_path_factory: pytest.TempPathFactory) -> Evening:
    """The first start: a zone that there isn't, then one that there is."""
    instance, port = tmp_path_factory.mktemp("evening") / "instance", free_port()
    ours, theirs = pty.openpty()
    os.write(ours, b"Mars/Olympus\nEurope/London\n")
    settings = {"TRAINER_INSTANCE": str(instance)}
    with running("serve", "--port", str(port), settings=settings, stdin=theirs) as server:
        server.read_until("Stop with Ctrl-C.")
        with urllib.request.urlopen(f"http://127.0.0.1:{port}/sign-in", timeout=60) as answer:
            page = answer.read().decode()
        exit_code = server.stop(signal.SIGINT)
    os.close(ours)
    os.close(theirs)
    content = read_config({}).content
    return Evening(server.said, f"http://127.0.0.1:{port}/", content, instance, page, exit_code)


def test_the_zone_is_asked_for_until_it_is_one(evening: Evening) -> None:
    """The first answer is no zone, so the question comes again."""
    question = "Which time zone is this? (such as Europe/London): "
    assert evening.said.count(question) == 2
    assert "Error: There is no time zone 'Mars/Olympus'." in evening.said


def test_the_zone_is_kept(evening: Evening) -> None:
    """It stands in the instance folder, and nobody is asked again."""
    config = read_config({"TRAINER_INSTANCE": str(evening.instance)})
    assert config.wanted_zone().key == "Europe/London"
    assert with_zone(config) == config


def test_it_says_where_everything_is(evening: Evening) -> None:
    """The address of the pages, the folder of the lessons, the folder of the records."""
    assert f"Pages:   {evening.address}\n" in evening.said
    assert f"Lessons: {evening.content}\n" in evening.said
    assert f"Records: {evening.instance}\n" in evening.said
    assert (evening.instance / "trainer.sqlite").is_file()


def test_pages_are_served(evening: Evening) -> None:
    """Somebody who isn't signed in can sign in."""
    assert re.search(r"<h1>\s*Sign in\s*</h1>", evening.page)


def test_ctrl_c_ends_it_without_a_fuss(evening: Evening) -> None:
    """No traceback, and the shell is told that all went well."""
    assert evening.exit_code == 0
    assert "Traceback" not in evening.said
