"""A bare app with a database of its own for each test, and the people in it.

The `any_…` fixtures run a test on SQLite and on PostgreSQL; the others on SQLite alone.
"""

import importlib.util
import os
import shutil
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import datetime
from itertools import count
from pathlib import Path

import pytest
from flask import Flask
from records_app import opened, run
from records_cast import LESSON, NOW, PASSWORD, TRY, People
from sqlalchemy import create_engine, insert, text

from trainer.records import crews, database, passwords, schema, texts
from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, db, table_of
from trainer.records.people import Person, PersonRole


def missing_for_postgresql() -> str:
    """What keeps PostgreSQL's share of the tests from running; empty when nothing does."""
    if importlib.util.find_spec("psycopg") is None:
        return "psycopg is not installed (pip install '.[postgres]')"
    return "" if initdb() else "there is no initdb (Debian: apt-get install postgresql)"


def initdb() -> Path | None:
    """Debian's initdb of the newest version, or the one on the path."""
    packaged = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    found = shutil.which("initdb")
    if packaged:
        return packaged[-1]
    return Path(found) if found else None


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say aloud at the end when PostgreSQL's share was left out."""
    reason = missing_for_postgresql()
    if reason:
        line = f"LEFT OUT: the records were not tested on PostgreSQL: {reason}."
        terminalreporter.write_line(line, red=True, bold=True)


@pytest.fixture(scope="session")
def sqlite_template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An empty SQLite database at today's version, to be copied."""
    path = tmp_path_factory.mktemp("template") / "records.sqlite"
    with opened(f"sqlite:///{path}") as app:
        schema.upgrade(app)
    return path


@pytest.fixture(scope="session")
def postgresql_server() -> Iterator[str]:
    """The folder with the socket of a throw-away PostgreSQL."""
    missing, program = missing_for_postgresql(), initdb()
    if missing or program is None:
        pytest.skip(missing)
    folder = Path(tempfile.mkdtemp(prefix="pg"))
    as_postgres = ["runuser", "-u", "postgres", "--"] if os.geteuid() == 0 else []
    if as_postgres:
        shutil.chown(folder, "postgres")
    options = f"-c listen_addresses='' -c unix_socket_directories={folder} -c fsync=off"
    data, control = folder / "data", program.with_name("pg_ctl")
    make = [program, "-A", "trust", "--no-sync", "-E", "UTF8", "--locale=C.UTF-8", "-U", "postgres"]
    start = [control, "-D", data, "-w", "-l", folder / "log", "-o", options, "start"]
    for command in ([*make, "-D", data], start):
        run(*as_postgres, *command, folder=folder)
    yield str(folder)
    stop = [control, "-D", data, "-m", "immediate", "stop"]
    run(*as_postgres, *stop, folder=folder)
    shutil.rmtree(folder)


@pytest.fixture(scope="session")
def postgresql_database(postgresql_server: str) -> str:
    """The address of a PostgreSQL database at today's version."""
    create_database(postgresql_server, "records")
    url = postgresql_url(postgresql_server, "records")
    with opened(url) as app:
        schema.upgrade(app)
    return url


def postgresql_url(folder: str, name: str) -> str:
    """The address of a database on the throw-away server."""
    return f"postgresql+psycopg://postgres@/{name}?host={folder}"


def create_database(folder: str, name: str) -> None:
    """Make an empty database."""
    engine = create_engine(postgresql_url(folder, "postgres"), isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f"CREATE DATABASE {name}"))
    engine.dispose()


_NUMBERS = count()


@pytest.fixture(params=["sqlite", "postgresql"])
def empty_url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of a database without any table, on either kind."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'empty.sqlite'}"
    folder, name = request.getfixturevalue("postgresql_server"), f"empty{next(_NUMBERS)}"
    create_database(folder, name)
    return postgresql_url(folder, name)


@pytest.fixture
def app(tmp_path: Path, sqlite_template: Path) -> Iterator[Flask]:
    """An app on a SQLite file of its own, in its context."""
    path = shutil.copy(sqlite_template, tmp_path / "records.sqlite")
    with opened(f"sqlite:///{path}") as app:
        yield app


@pytest.fixture(params=["sqlite", "postgresql"])
def any_app(request: pytest.FixtureRequest) -> Iterator[Flask]:
    """An app on either kind of database, in its context."""
    if request.param == "sqlite":
        yield request.getfixturevalue("app")
        return
    with opened(request.getfixturevalue("postgresql_database")) as app:
        # Emptied rather than made anew: that takes a tenth of the time.
        tables = ", ".join(table.name for table in database.Base.metadata.sorted_tables)
        with db.engine.begin() as connection:
            connection.execute(text(f"TRUNCATE {tables} RESTART IDENTITY"))
        yield app


@pytest.fixture
def session(app: Flask) -> AnySession:
    """The session of a SQLite app."""
    assert app
    return db.session


@pytest.fixture
def any_session(any_app: Flask) -> AnySession:
    """The session of an app on either kind of database."""
    assert any_app
    return db.session


@pytest.fixture(scope="session")
def password_hash() -> str:
    """Everybody's password, hashed once, since hashing takes long on purpose."""
    return passwords.hash_password(PASSWORD)


@pytest.fixture
def enrol(password_hash: str) -> Callable[[AnySession], People]:
    """A function that puts the people and one lesson's text into a database."""

    def enrolled(session: AnySession) -> People:
        database.writing(session)
        north = crews.add_crew(session, "North").crew_id
        south = crews.add_crew(session, "South").crew_id

        def person(name: str, roles: str, crew: int | None, left: datetime | None = None) -> int:
            person_id = session.scalar(
                insert(table_of(Person))
                .values(
                    ref=f"{name}-ref",
                    name=name.title(),
                    sign_in_name=name,
                    password_hash=password_hash,
                    crew_id=crew,
                    created_at=NOW,
                    left_at=left,
                )
                .returning(table_of(Person).c.id)
            )
            assert person_id is not None
            rows = [{"person_id": person_id, "role": role} for role in roles.split()]
            session.execute(insert(table_of(PersonRole)), rows)
            return int(person_id)

        people = People(
            north=north,
            south=south,
            mina=person("mina", "trainee", north),
            tom=person("tom", "trainee", north),
            ruth=person("ruth", "supervisor trainee", north),
            karel=person("karel", "trainee", south),
            iris=person("iris", "office", None),
            olga=person("olga", "trainee", north, left=NOW),
        )
        texts.keep(session, [LESSON], NOW)
        session.commit()
        return people

    return enrolled


@pytest.fixture
def people(session: AnySession, enrol: Callable[[AnySession], People]) -> People:
    """The people, in SQLite."""
    return enrol(session)


@pytest.fixture
def any_people(any_session: AnySession, enrol: Callable[[AnySession], People]) -> People:
    """The people, in either kind of database."""
    return enrol(any_session)


@pytest.fixture
def a_try() -> Callable[..., AttemptFacts]:
    """A function that returns a right first try, with whatever differs given by name."""

    def made(person_id: int, **differs: object) -> AttemptFacts:
        return replace(TRY, person_id=person_id, **differs)  # type: ignore[arg-type]

    return made


@pytest.fixture
def statements(session: AnySession) -> Iterator[list[str]]:
    """Every statement that reaches SQLite, but for those that begin and end a transaction."""
    sent: list[str] = []

    def note(statement: str) -> None:
        if statement.split(maxsplit=1)[0] not in {"BEGIN", "COMMIT", "ROLLBACK"}:
            sent.append(statement)

    driver = session.connection().connection.driver_connection
    assert driver is not None
    driver.set_trace_callback(note)
    yield sent
    driver.set_trace_callback(None)
