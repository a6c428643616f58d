"""The database handle: how SQLite is set up, what a writer is, how times come back."""

import threading
from datetime import UTC, datetime, timedelta, timezone

import pytest
from flask import Flask
from records_cast import NOW, People
from sqlalchemy import insert, select, text
from sqlalchemy.exc import IntegrityError, OperationalError, StatementError

from trainer.records.crews import Crew, add_crew, crews
from trainer.records.database import AnySession, Base, UtcDateTime, db, table_of, take_turn, writing
from trainer.records.people import Person


@pytest.mark.usefixtures("app")
@pytest.mark.parametrize(
    ("pragma", "value"),
    [
        ("journal_mode", "wal"),
        ("synchronous", 2),  # FULL
        ("foreign_keys", 1),
        ("busy_timeout", 5000),
        ("recursive_triggers", 1),
    ],
)
def test_every_connection_has_the_pragma(pragma: str, value: object) -> None:
    """SQLite flushes each commit, holds foreign keys, and waits five seconds for its turn."""
    with db.engine.connect() as one, db.engine.connect() as another:
        assert one.scalar(text(f"PRAGMA {pragma}")) == value
        assert another.scalar(text(f"PRAGMA {pragma}")) == value


def test_a_replaced_row_meets_the_trigger_that_forbids_deleting(session: AnySession) -> None:
    """INSERT OR REPLACE can't slip past a trigger on DELETE."""
    writing(session)
    add_crew(session, "North")
    session.execute(
        text(
            "CREATE TRIGGER kept BEFORE DELETE ON crew "
            "BEGIN SELECT RAISE(ABORT, 'crews are kept'); END"
        )
    )
    with pytest.raises(IntegrityError, match="crews are kept"):
        session.execute(text("INSERT OR REPLACE INTO crew (id, name) VALUES (9, 'North')"))


def test_an_unknown_key_is_refused(any_session: AnySession) -> None:
    """A person can't be in a crew that doesn't exist."""
    writing(any_session)
    person = {"ref": "r", "name": "N", "sign_in_name": "n", "password_hash": "h", "crew_id": 77}
    with pytest.raises(IntegrityError):
        any_session.execute(insert(table_of(Person)).values(**person, created_at=NOW))


@pytest.mark.usefixtures("app")
def test_a_writer_has_its_turn_before_it_writes(session: AnySession) -> None:
    """From `writing` to the commit nobody else can begin to write."""
    writing(session)
    with pytest.raises(OperationalError, match="locked"):
        _write_without_waiting()
    session.commit()
    _write_without_waiting()


@pytest.mark.usefixtures("app")
def test_a_reader_keeps_nobody_from_writing(session: AnySession) -> None:
    """A transaction that only reads takes no turn."""
    session.scalar(select(Crew.id))
    _write_without_waiting()


@pytest.mark.usefixtures("app")
def test_a_read_is_one_snapshot(session: AnySession) -> None:
    """What is read in one transaction stays the same, whatever others write meanwhile."""
    assert crews(session) == []
    _write_without_waiting()
    assert crews(session) == []
    session.rollback()
    assert [crew.name for crew in crews(session)] == ["East"]


@pytest.mark.usefixtures("app")
def test_a_request_may_read_before_it_writes(session: AnySession) -> None:
    """`writing` ends the read before it, so that what others wrote meanwhile is no hindrance."""
    crews(session)
    _write_without_waiting()
    writing(session)
    add_crew(session, "North")
    session.commit()
    assert [crew.name for crew in crews(session)] == ["East", "North"]


def test_writing_twice_keeps_what_was_written(any_session: AnySession) -> None:
    """A second `writing` in the same transaction does nothing."""
    writing(any_session)
    add_crew(any_session, "North")
    writing(any_session)
    any_session.commit()
    assert [crew.name for crew in crews(any_session)] == ["North"]


def test_writing_is_refused_when_it_would_lose_something(session: AnySession) -> None:
    """A change that is waiting to be written is not thrown away silently."""
    session.add(Crew(name="North"))
    with pytest.raises(RuntimeError, match="before changing anything"):
        writing(session)
    session.flush()
    with pytest.raises(RuntimeError, match="before changing anything"):
        writing(session)


@pytest.mark.usefixtures("app")
def test_a_turn_that_never_comes_is_told_like_any_error(session: AnySession) -> None:
    """Waiting in vain at the start of a write raises what a statement would raise."""
    writing(session)
    with db.engine.connect() as other:
        other.execute(text("PRAGMA busy_timeout = 0"))
        with pytest.raises(OperationalError, match="locked"):
            take_turn(other)
        other.execute(text("PRAGMA busy_timeout = 5000"))


def test_what_was_loaded_is_looked_at_again(session: AnySession, people: People) -> None:
    """A row read before the turn came is read anew, since others may have changed it."""
    mina = session.get_one(Person, people.mina)
    with db.engine.connect() as other:
        other.execute(text("UPDATE person SET name = 'Mina Hill' WHERE name = 'Mina'"))
        other.commit()
    writing(session)
    assert mina.name == "Mina Hill"


def test_two_writers_take_turns(any_app: Flask) -> None:
    """Two threads that write fifty times each lose nothing and get no error."""
    started = threading.Barrier(2, timeout=30)

    def write(letter: str) -> None:
        with any_app.app_context():
            started.wait()
            for number in range(50):
                writing(db.session)
                add_crew(db.session, f"{letter}{number}")
                db.session.commit()

    threads = [threading.Thread(target=write, args=(letter,)) for letter in "ab"]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(crews(db.session)) == 100


def test_an_instant_comes_back_in_utc(any_session: AnySession, any_people: People) -> None:
    """Half past nine at UTC+1 is read back as half past eight UTC, to the microsecond."""
    there = datetime(2026, 3, 9, 9, 30, 0, 123456, tzinfo=timezone(timedelta(hours=1)))
    writing(any_session)
    person = db.session.get_one(Person, any_people.mina)
    person.left_at = there
    any_session.commit()
    left_at = any_session.scalar(select(Person.left_at).where(Person.id == any_people.mina))
    assert left_at == there
    assert left_at is not None
    assert left_at.tzinfo is UTC


def test_a_time_without_a_zone_is_refused(any_session: AnySession) -> None:
    """A naive time could be any hour of the day, so it gets no further."""
    query = select(Person.id).where(Person.created_at > datetime(2026, 3, 9))  # noqa: DTZ001
    with pytest.raises(StatementError, match="has no time zone"):
        any_session.execute(query)


def test_every_instant_in_every_table_is_kept_in_utc() -> None:
    """No column of a time escapes the type that keeps the zone."""
    columns = [column for table in Base.metadata.sorted_tables for column in table.columns]
    times = [column for column in columns if column.name.endswith("_at")]
    assert len(times) >= 10
    assert [c.name for c in times if not isinstance(c.type, UtcDateTime)] == []


def _write_without_waiting() -> None:
    with db.engine.connect() as connection:
        connection.execute(text("PRAGMA busy_timeout = 0"))
        connection.execute(text("INSERT INTO crew (name) VALUES ('East')"))
        connection.commit()
        connection.execute(text("PRAGMA busy_timeout = 5000"))
