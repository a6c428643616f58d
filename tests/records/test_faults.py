"""Database errors told in our own words."""

import socket
from collections.abc import Callable
from pathlib import Path

import pytest
from records_cast import NOW
from sqlalchemy import create_engine, text
from sqlalchemy.exc import DBAPIError

from trainer.records import database
from trainer.records.crews import add_crew
from trainer.records.database import AnySession, db, writing
from trainer.records.faults import (
    RecordsAway,
    RecordsBusy,
    RecordsError,
    RecordsFull,
    translate,
)
from trainer.records.signins import find


@pytest.mark.usefixtures("app")
def test_a_turn_that_never_comes_is_busy(session: AnySession) -> None:
    """Waiting longer than the timeout says that the records are busy."""
    writing(session)
    with db.engine.connect() as other:
        other.exec_driver_sql("PRAGMA busy_timeout = 1")
        error = _raised_by(lambda: other.exec_driver_sql("INSERT INTO crew (name) VALUES ('x')"))
        other.exec_driver_sql("PRAGMA busy_timeout = 5000")
    assert isinstance(translate(error), RecordsBusy)


def test_a_full_disk_is_full(session: AnySession) -> None:
    """When the database can't grow any more, the records are full, and what stood still stands."""
    writing(session)
    add_crew(session, "North")
    session.commit()
    pages = session.scalar(text("PRAGMA page_count"))
    session.execute(text(f"PRAGMA max_page_count = {pages}"))
    error = _raised_by(lambda: add_crew(session, "x" * 100_000))
    assert isinstance(translate(error), RecordsFull)
    session.rollback()
    assert session.scalar(text("SELECT name FROM crew")) == "North"


def test_a_database_that_may_not_be_written_is_full(session: AnySession) -> None:
    """A read-only database is told in the same words as a full disk."""
    session.execute(text("PRAGMA query_only = ON"))
    error = _raised_by(lambda: add_crew(session, "North"))
    assert isinstance(translate(error), RecordsFull)


def test_a_folder_that_is_missing_is_full(tmp_path: Path) -> None:
    """A database that can't even be opened is told in the same words."""
    engine = create_engine(f"sqlite:///{tmp_path / 'nowhere' / 'records.sqlite'}")
    assert isinstance(translate(_raised_by(engine.connect)), RecordsFull)


@pytest.mark.usefixtures("any_app")
@pytest.mark.parametrize("any_app", ["postgresql"], indirect=True)
def test_postgresql_says_busy_in_its_own_code() -> None:
    """A lock that PostgreSQL can't give at once is busy too."""
    lock = text("LOCK TABLE crew IN EXCLUSIVE MODE NOWAIT")
    with db.engine.connect() as one, db.engine.connect() as other:
        one.execute(lock)
        error = _raised_by(lambda: other.execute(lock))
    assert isinstance(translate(error), RecordsBusy)


@pytest.mark.usefixtures("any_app")
@pytest.mark.parametrize("any_app", ["postgresql"], indirect=True)
def test_postgresql_waits_no_longer_than_sqlite(monkeypatch: pytest.MonkeyPatch) -> None:
    """A lock that isn't given within the time is told as busy, and holds nobody up for ever."""
    monkeypatch.setattr(database, "BUSY_TIMEOUT_MS", 200)
    db.engine.dispose()
    lock = text("LOCK TABLE crew IN EXCLUSIVE MODE")
    with db.engine.connect() as one, db.engine.connect() as other:
        one.execute(lock)
        error = _raised_by(lambda: other.execute(lock))
    db.engine.dispose()
    assert isinstance(translate(error), RecordsBusy)


def test_a_server_that_says_nothing_is_away() -> None:
    """It takes the call and never speaks: the wait ends, and is told like a server that is off."""
    pytest.importorskip("psycopg", reason="psycopg is not installed (pip install '.[postgres]')")
    with socket.create_server(("127.0.0.1", 0)) as silent:
        address = f"127.0.0.1:{silent.getsockname()[1]}/none?connect_timeout=2"
        engine = create_engine(f"postgresql+psycopg://nobody@{address}")
        assert isinstance(translate(_raised_by(engine.connect)), RecordsAway)


def test_a_server_that_refuses_is_away() -> None:
    """Nothing listens there: the records don't answer, and that is no fault of the page."""
    pytest.importorskip("psycopg", reason="psycopg is not installed (pip install '.[postgres]')")
    engine = create_engine("postgresql+psycopg://nobody@127.0.0.1:1/none?connect_timeout=2")
    assert isinstance(translate(_raised_by(engine.connect)), RecordsAway)


@pytest.mark.usefixtures("any_app")
@pytest.mark.parametrize("any_app", ["postgresql"], indirect=True)
def test_a_connection_that_was_ended_is_away() -> None:
    """As a server that is started again ends it."""
    with db.engine.connect() as one, db.engine.connect() as other:
        pid = one.scalar(text("SELECT pg_backend_pid()"))
        other.execute(text(f"SELECT pg_terminate_backend({pid})"))
        error = _raised_by(lambda: one.execute(text("SELECT 1")))
    assert isinstance(translate(error), RecordsAway)


@pytest.mark.usefixtures("any_app")
@pytest.mark.parametrize("any_app", ["postgresql"], indirect=True)
def test_after_a_restart_one_request_is_told_and_the_next_is_served(
    any_session: AnySession,
) -> None:
    """The first look finds the server gone and can be undone; no old connection comes back."""
    with db.engine.connect() as one, db.engine.connect() as other:
        pids = [each.scalar(text("SELECT pg_backend_pid()")) for each in (one, other)]
    ended = text("SELECT pg_terminate_backend(pid, 5000) FROM unnest(:pids) AS pid")
    restarting = create_engine(db.engine.url)
    with restarting.connect() as connection:
        assert connection.scalars(ended, {"pids": pids}).all() == [True, True]
    restarting.dispose()
    error = _raised_by(lambda: find(any_session, "a token", NOW))
    assert isinstance(translate(error), RecordsAway)
    any_session.rollback()
    assert find(any_session, "a token", NOW) is None
    with db.engine.connect() as another:
        assert another.scalar(text("SELECT pg_backend_pid()")) not in pids


def test_other_errors_are_left_alone(session: AnySession) -> None:
    """A mistake of our own is not dressed up as bad luck."""
    error = _raised_by(lambda: session.execute(text("SELECT nothing FROM nowhere")))
    assert translate(error) is None
    assert translate(ValueError("no")) is None


@pytest.mark.parametrize("error", [RecordsAway(), RecordsBusy(), RecordsFull()])
def test_an_error_is_short_sentences(error: RecordsError) -> None:
    """What is said ends in a full stop, and no sentence is over 25 words."""
    said = str(error)
    assert said.endswith(".")
    assert all(len(sentence.split()) <= 25 for sentence in said.split(". "))


def _raised_by(act: Callable[[], object]) -> DBAPIError:
    with pytest.raises(DBAPIError) as caught:
        act()
    return caught.value
