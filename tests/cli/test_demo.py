"""`trainer demo`: an invented crew to look round in, which leaves nothing behind."""

import http.cookiejar
import re
import signal
import time
import urllib.parse
import urllib.request
from dataclasses import dataclass
from pathlib import Path

import pytest
from cli_terminal import free_port, refused, running, said

from trainer.cli import demo as demo_module
from trainer.cli.demo import CREW, PASSWORD, demo_config, kept_or_passing, machine_zone
from trainer.config import read_config
from trainer.records.people import ROLES

TRAINEES = [each.name for each in CREW if each.roles == ("trainee",)]
WATCHERS = [each.name for each in CREW if each.roles != ("trainee",)]


class Phone:
    """A browser with its own cookies, as far as signing in needs one."""

    def __init__(self, address: str) -> None:
        self.address = address
        jar = urllib.request.HTTPCookieProcessor(http.cookiejar.CookieJar())
        # Whatever proxy this machine has, the demo is on this machine.
        self.opener = urllib.request.build_opener(urllib.request.ProxyHandler({}), jar)

    def open(self, path: str, fields: dict[str, str] | None = None) -> str:
        """Return the page that a path, or a form sent there, leads to."""
        data = urllib.parse.urlencode(fields).encode() if fields else None
        with self.opener.open(f"{self.address}{path}", data, timeout=60) as answer:
            page: str = answer.read().decode()
            return page

    def sign_in(self, name: str, password: str) -> str:
        """Return the page that signing in leads to."""
        found = re.search(r'name="csrf_token" value="([^"]+)"', self.open("/sign-in"))
        assert found
        fields = {"csrf_token": found[1], "name": name, "password": password}
        return self.open("/sign-in", fields)


@dataclass(frozen=True)
class Visit:
    """What somebody saw who started the demo, looked round, and stopped it."""

    said: str
    port: int
    #: The first page of each of the crew, and the crew's page of those who may see it.
    first_pages: dict[str, str]
    crew_pages: dict[str, str]
    #: What is in the folder of folders that pass, while it runs and afterwards.
    during: list[str]
    after: list[str]
    exit_code: int
    own_records: dict[str, str]


@pytest.fixture(scope="module")
def visit(tmp_path_factory: pytest.TempPathFactory) -> Visit:
    """The demo from start to Ctrl-C, beside records of one's own."""
    folder, port = tmp_path_factory.mktemp("visit"), free_port()
    passing, own = folder / "passing", folder / "own"
    passing.mkdir()
    own.mkdir()
    (own / "trainer.sqlite").write_text("Not to be touched.")
    settings = {"TMPDIR": str(passing), "TRAINER_INSTANCE": str(own), "HOME": str(folder)}
    with running("demo", "--port", str(port), settings=settings) as server:
        server.read_until("Stop with Ctrl-C.")
        address = re.search(r"http://\S+", server.said)
        assert address
        phones = {each.name: Phone(address[0].rstrip("/")) for each in CREW}
        first = {name: phone.sign_in(name, PASSWORD) for name, phone in phones.items()}
        crew = {name: phones[name].open("/crew") for name in WATCHERS}
        during = [each.name for each in passing.iterdir()]
        exit_code = server.stop(signal.SIGINT)
    after = [each.name for each in passing.iterdir()]
    records = {file.name: file.read_text() for file in own.iterdir()}
    return Visit(server.said, port, first, crew, during, after, exit_code, records)


# What it prints and serves.


def test_it_says_where_it_is(visit: Visit) -> None:
    """The address, on this machine alone, the lessons and the folder that passes."""
    assert f"Pages:   http://127.0.0.1:{visit.port}/\n" in visit.said
    assert f"Lessons: {read_config({}).content}\n" in visit.said
    assert re.search(rf"Records: \S+/{visit.during[0]}\n", visit.said)


def test_it_says_which_zone_it_took(visit: Visit) -> None:
    """None was set and nobody was asked: it is this machine's, or UTC."""
    assert f"Zone:    {machine_zone().key}\n" in visit.said


def test_it_says_who_can_sign_in(visit: Visit) -> None:
    """Each of the crew with their roles, and the password that all of them have."""
    told = visit.said.partition(f"Sign in with the password {PASSWORD} as\n")[2]
    for each in CREW:
        line = next(line for line in told.splitlines() if each.name.lower() in line.split())
        assert all(role in line for role in each.roles)
        assert each.crew is None or each.crew in line
    assert {role for each in CREW for role in each.roles} == set(ROLES)


@pytest.mark.parametrize("name", [each.name for each in CREW])
def test_each_sign_in_opens_pages(name: str, visit: Visit) -> None:
    """What was printed is enough to get in."""
    page = visit.first_pages[name]
    assert name in page
    assert "Sign out" in page


@pytest.mark.parametrize("name", WATCHERS)
def test_those_who_watch_see_who_is_there(name: str, visit: Visit) -> None:
    """A supervisor sees the trainees of the crew, the office all of them."""
    crew = next(each.crew for each in CREW if each.name == name)
    seen = [each.name for each in CREW if each.name in TRAINEES and crew in (each.crew, None)]
    assert seen
    for trainee in seen:
        assert trainee in visit.crew_pages[name]


# What it leaves alone, and behind.


def test_ones_own_records_are_not_touched(visit: Visit) -> None:
    """The folder that the settings name is as it was."""
    assert visit.own_records == {"trainer.sqlite": "Not to be touched."}


def test_ctrl_c_leaves_no_folder_behind(visit: Visit) -> None:
    """It had one, and it is gone; nothing went wrong."""
    assert len(visit.during) == 1
    assert visit.after == []
    assert visit.exit_code == 0
    assert "Traceback" not in visit.said


def test_being_told_to_end_leaves_no_folder_behind(one_lesson: Path, tmp_path: Path) -> None:
    """As when the machine is shut down, even while the crew is still being made."""
    passing = tmp_path / "passing"
    passing.mkdir()
    settings = {"TMPDIR": str(passing), "TRAINER_CONTENT": str(one_lesson)}
    with running("demo", "--port", str(free_port()), settings=settings) as server:
        while not list(passing.glob("trainer-demo-*/secret")):
            assert server.process.poll() is None, server.process.communicate()
            time.sleep(0.01)
        server.stop(signal.SIGTERM)
    assert list(passing.iterdir()) == []
    assert "Traceback" not in server.said


def test_what_goes_wrong_leaves_no_folder_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A setting that can't be used is refused before or after the folder was made."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    monkeypatch.setenv("TRAINER_ZONE", "Mars/Olympus")
    assert "TRAINER_ZONE" in refused("demo", "--port", str(free_port()))
    assert list(tmp_path.iterdir()) == []


def test_ending_means_again_what_it_meant(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Afterwards whoever is told to end does so as before."""
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    before = signal.getsignal(signal.SIGTERM)
    with kept_or_passing(None):
        assert signal.getsignal(signal.SIGTERM) is signal.default_int_handler
    assert signal.getsignal(signal.SIGTERM) == before


@pytest.mark.usefixtures("one_lesson")
def test_a_folder_that_is_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second time it goes on with what is there, and enrols nobody twice."""
    monkeypatch.setattr(demo_module, "run", lambda *_given: None)
    words = ("demo", "--port", str(free_port()), "--keep", str(tmp_path / "kept"))
    assert said(*words) == said(*words)
    assert (tmp_path / "kept" / "trainer.sqlite").is_file()


# Which zone it takes.


@pytest.mark.usefixtures("zone")
def test_a_zone_that_is_set_is_taken(tmp_path: Path) -> None:
    """Only where none is set it looks at the machine."""
    assert demo_config(tmp_path).wanted_zone().key == "Europe/Prague"


@pytest.mark.parametrize(
    ("link", "zone"),
    [
        ("/usr/share/zoneinfo/Europe/Lisbon", "Europe/Lisbon"),
        ("/var/db/timezone/zoneinfo/Asia/Kolkata", "Asia/Kolkata"),
        ("/usr/share/zoneinfo/Mars/Olympus", "UTC"),
        ("/somewhere/else", "UTC"),
    ],
)
def test_a_machine_says_its_zone_by_a_link(link: str, zone: str, tmp_path: Path) -> None:
    """Where the link tells nothing, it is UTC."""
    (tmp_path / "localtime").symlink_to(link)
    assert machine_zone(tmp_path / "localtime").key == zone


def test_a_machine_that_says_nothing_is_in_utc(tmp_path: Path) -> None:
    """No link at all."""
    assert machine_zone(tmp_path / "localtime").key == "UTC"
