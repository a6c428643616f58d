"""`trainer person add`: who may sign in, in the installation that is named."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import pytest
from cli_terminal import GOOD, refused, said, trainer

from trainer import create_app
from trainer.records import crews, db, people, signins
from trainer.records.database import AnySession

pytestmark = pytest.mark.usefixtures("one_lesson", "zone")


@dataclass(frozen=True)
class Enrolled:
    """Somebody as the records have them."""

    sign_in_name: str
    crew: str | None
    roles: frozenset[str]


@contextmanager
def records() -> Iterator[AnySession]:
    """The records of the installation that the settings name."""
    with create_app().app_context():
        yield db.session
        db.session.remove()
        db.engine.dispose()


def everybody() -> dict[str, Enrolled]:
    """Return who there is, by name."""
    with records() as session:
        names = {crew.crew_id: crew.name for crew in crews.crews(session)}
        return {
            person.name: Enrolled(
                person.sign_in_name,
                names[person.crew_id] if person.crew_id else None,
                person.roles,
            )
            for person in people.crew_members(session, None)
        }


def add(*words: str, password: str = GOOD) -> str:
    """Return what is printed when somebody is added."""
    return said("person", "add", *words, "--password", password)


def refused_to_add(*words: str, password: str = GOOD) -> str:
    """Return why somebody can't be added."""
    return refused("person", "add", *words, "--password", password)


# Who is added.


def test_a_trainee_of_a_crew() -> None:
    """Noor signs in with her name, however she writes it, and her crew is made."""
    told = add("Noor Amari", "--role", "trainee", "--crew", "North")
    assert told == "Noor Amari can sign in as 'noor amari' (trainee).\n"
    assert everybody() == {"Noor Amari": Enrolled("noor amari", "North", frozenset({"trainee"}))}
    with records() as session:
        assert signins.recognise(session, "NOOR  amari", GOOD)
        assert not signins.recognise(session, "Noor Amari", "harbour-wall-8")


def test_nothing_but_a_name() -> None:
    """A trainee without a crew."""
    add("Sam")
    assert everybody() == {"Sam": Enrolled("sam", None, frozenset({"trainee"}))}


def test_several_roles() -> None:
    """Ruth watches others and learns too; a role said twice counts once."""
    told = add("Ruth", *("--role", "supervisor", "--role", "trainee", "--role", "trainee"))
    assert told == "Ruth can sign in as 'ruth' (supervisor, trainee).\n"
    assert everybody()["Ruth"].roles == {"supervisor", "trainee"}


def test_another_name_to_sign_in_with() -> None:
    """Two people called Kit can both be here."""
    add("Kit", "--role", "office")
    add("Kit", "--sign-in-name", "kit.hill")
    with records() as session:
        assert signins.recognise(session, "kit", GOOD)
        assert signins.recognise(session, "kit.hill", GOOD)


def test_a_crew_is_made_once() -> None:
    """However its name is written."""
    add("Noor", "--crew", "Hill crew")
    add("Sam", "--crew", " hill  CREW ")
    assert {person.crew for person in everybody().values()} == {"Hill crew"}


def test_the_installation_that_is_named_gets_them(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And no other."""
    add("Noor")
    monkeypatch.setenv("TRAINER_INSTANCE", str(tmp_path / "branch"))
    add("Bertil", "--role", "supervisor")
    assert set(everybody()) == {"Bertil"}
    assert (tmp_path / "branch" / "trainer.sqlite").is_file()


def test_a_password_left_out_is_asked_for_twice() -> None:
    """Where the two differ it is asked for again; it is typed unseen."""
    typed = [GOOD, "harbour-wall-8", GOOD, GOOD]
    result = trainer("person", "add", "Noor", typed="\n".join(typed))
    assert result.exit_code == 0
    assert result.stdout.count("Repeat for confirmation") == 2
    assert GOOD not in result.output
    with records() as session:
        assert signins.recognise(session, "Noor", GOOD)


# Who isn't.


def test_a_name_that_is_taken() -> None:
    """The sentence says whose it is; no crew is left behind for nobody."""
    add("Noor")
    told = refused_to_add("NOOR", "--crew", "Hill crew")
    assert told == "Somebody signs in as noor already. Choose another name."
    assert list(everybody()) == ["Noor"]
    with records() as session:
        assert crews.crews(session) == []


@pytest.mark.parametrize(
    ("password", "told"),
    [
        ("tape", "The password has 4 characters. Use 8 or more; a few words in a row are fine."),
        ("Password1", "That password is one of the first people guess. Choose another."),
        ("noor amari", "That password is one of the first people guess. Choose another."),
    ],
)
def test_a_password_that_may_not_be_used(password: str, told: str) -> None:
    """Too short, too common, or the same as the name."""
    assert refused_to_add("Noor Amari", password=password) == told
    assert everybody() == {}


def test_an_unknown_role() -> None:
    """Those that there are, are listed."""
    told = refused_to_add("Noor", "--role", "foreman")
    assert "'foreman'" in told
    assert all(role in told for role in people.ROLES)


def test_a_name_of_spaces() -> None:
    """Neither a person nor a crew can be called nothing."""
    assert refused_to_add(" ") == "The name is empty. Type at least one letter."
    assert refused_to_add("Noor", "--crew", "") == "The name is empty. Type at least one letter."


def test_a_name_left_out() -> None:
    """The command says that it needs one."""
    assert "NAME" in refused("person", "add", "--password", GOOD)


# Where they can't be kept.


def test_without_a_zone(monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a terminal to ask on, the sentence names the setting."""
    monkeypatch.delenv("TRAINER_ZONE")
    assert "Set TRAINER_ZONE" in refused_to_add("Noor")


def test_an_instance_folder_that_cannot_be_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A folder below a file is named, and the setting that names it."""
    (tmp_path / "file").touch()
    monkeypatch.setenv("TRAINER_INSTANCE", str(tmp_path / "file" / "instance"))
    told = refused_to_add("Noor")
    assert str(tmp_path / "file" / "instance") in told
    assert "TRAINER_INSTANCE" in told


def test_a_database_that_cannot_be_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its folder isn't there: nothing was kept, and the sentence says so."""
    monkeypatch.setenv("TRAINER_DATABASE_URL", f"sqlite:///{tmp_path}/nowhere/trainer.sqlite")
    assert refused_to_add("Noor").startswith("Nothing was kept: the records can't be written to.")


def test_a_file_that_is_no_database(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What the database says of it is passed on, with what to look at."""
    (tmp_path / "notes.txt").write_text("Buy tape. " * 100)
    monkeypatch.setenv("TRAINER_DATABASE_URL", f"sqlite:///{tmp_path}/notes.txt")
    told = refused_to_add("Noor")
    assert told.startswith("The database can't be used: file is not a database. ")
    assert "TRAINER_DATABASE_URL" in told


def test_a_fault_of_ours_is_not_hidden(monkeypatch: pytest.MonkeyPatch) -> None:
    """Only what the records refuse becomes a sentence."""

    def broken(*_given: object, **_named: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(people, "add_person", broken)
    result = trainer("person", "add", "Noor", "--password", GOOD)
    assert isinstance(result.exception, ZeroDivisionError)
