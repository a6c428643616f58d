"""An installation to test on, and somebody who visits it with a browser of their own."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from flask import Flask
from flask.testing import FlaskClient
from sqlalchemy import func, insert, select, text
from sqlalchemy.exc import OperationalError
from web_cast import CREWS, EVERYBODY, NOW, Who
from web_visitor import Clock, Visitor

from trainer import create_app, web
from trainer.config import Config
from trainer.lessons import Library
from trainer.records import attempts, crews, db, progress, signins, writing
from trainer.records.attempts import Attempt, StoredAttempt
from trainer.records.database import AnySession, table_of
from trainer.records.people import Person, PersonRole
from trainer.records.progress import LessonRow, QuestionRow
from trainer.web.signing_in import COOKIE

#: An hour ahead of UTC in March, so that a local date can differ from the instant's.
ZONE = ZoneInfo("Europe/Prague")


@dataclass
class Bench:
    """One installation with its people in it."""

    app: Flask
    clock: Clock
    #: The database as it stands at the beginning of each test.
    pattern: Path
    config: Config = field(repr=False)

    @property
    def database(self) -> Path:
        """The file that the application writes to."""
        return self.config.instance / "trainer.sqlite"

    @property
    def library(self) -> Library:
        """What the installation teaches."""
        return self.installation.library

    @property
    def installation(self) -> web.Installation:
        """What it has that is the same for every request."""
        installation: web.Installation = self.app.extensions["installation"]
        return installation

    def renew(self) -> None:
        """Begin again: the first morning, and nobody has done anything."""
        self.clock.now = NOW
        self.close()
        for old in self.config.instance.glob("trainer.sqlite*"):
            old.unlink()
        shutil.copy(self.pattern, self.database)

    def close(self) -> None:
        """Close every connection to the database."""
        with self.app.app_context():
            db.session.remove()
            db.engine.dispose()

    def visit(self, who: Who | None = None) -> Visitor:
        """Return a new browser, in which this person is signed in."""
        client = self.app.test_client()
        if who:
            sign_in(client, who)
        return Visitor(client)

    def reader(self, who: Who) -> Visitor:
        """Return the browser of somebody who has read the first lesson, so that all are open."""
        with self.records() as session:
            first, person_id = self.library.first.slug, id_of(session, who)
            today = self.clock.now.astimezone(ZONE).date()
            writing(session)
            progress.mark_read(session, person_id, first, self.clock.now, today)
            session.commit()
        return self.visit(who)

    def restarted(self, content: Path) -> "Bench":
        """Return the installation, as it starts again on other texts and the same records."""
        config = replace(self.config, content=content)
        app = create_app(config, self.clock)
        web.prepare(app)
        return Bench(app, self.clock, self.pattern, config)

    @contextmanager
    def records(self) -> Iterator[AnySession]:
        """The records, to look into or to prepare."""
        with self.app.app_context():
            yield db.session

    def attempts_kept(self) -> int:
        """Return how many tries are in the records."""
        with self.records() as session:
            return session.scalar(select(func.count()).select_from(Attempt)) or 0

    def stored(self, who: Who, question: str, count: int = 0, try_no: int = 1) -> StoredAttempt:
        """Return a try that was kept."""
        with self.records() as session:
            person_id = id_of(session, who)
            kept = attempts.attempt_at(session, person_id, question, count=count, try_no=try_no)
            assert kept is not None
            return kept

    def question_row(self, who: Who, question: str) -> QuestionRow | None:
        """Return what somebody has done on a question."""
        with self.records() as session:
            return progress.question_row(session, id_of(session, who), question)

    def lesson_row(self, who: Who, lesson: str) -> LessonRow | None:
        """Return what somebody has done in a lesson."""
        with self.records() as session:
            rows = progress.lesson_rows(session, id_of(session, who), self.library.questions)
            return next((row for row in rows if row.lesson == lesson), None)

    def ref_of(self, who: Who) -> str:
        """Return the name by which a person's page goes."""
        with self.records() as session:
            ref = session.scalar(select(Person.ref).where(Person.name == who.name))
            assert ref is not None
            return ref


def lock(bench: Bench) -> sqlite3.Connection:
    """Take the database's only turn to write, from another connection."""
    with bench.records() as session:
        session.execute(text("PRAGMA busy_timeout = 1"))
    other = sqlite3.connect(bench.database, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    return other


def full_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """Have every commit fail as it does when nothing more fits on the disk."""
    cause = sqlite3.OperationalError("database or disk is full")
    cause.sqlite_errorcode = sqlite3.SQLITE_FULL

    def commit() -> None:
        raise OperationalError("COMMIT", None, cause)

    monkeypatch.setattr(db.session, "commit", commit)


def sign_in(client: FlaskClient, who: Who) -> None:
    """Sign somebody in without the form, whose password takes long to check on purpose."""
    installation: web.Installation = client.application.extensions["installation"]
    with client.application.app_context():
        writing(db.session)
        person_id = id_of(db.session, who)
        token = signins.start(db.session, person_id, installation.now(), "a browser in a test")
        db.session.commit()
    client.set_cookie(installation.config.cookie_name(COOKIE), token)


def id_of(session: AnySession, who: Who) -> int:
    """Return the key of one of the cast."""
    person_id = session.scalar(select(Person.id).where(Person.sign_in_name == who.sign_in_name))
    assert person_id is not None
    return person_id


def enrol(session: AnySession, password_hash: str) -> None:
    """Put the crews and the cast into the records; all have the same password."""
    writing(session)
    crew_ids = {name: crews.add_crew(session, name).crew_id for name in CREWS}
    for who in EVERYBODY:
        person = {
            "ref": f"ref-of-{who.sign_in_name}",
            "name": who.name,
            "sign_in_name": who.sign_in_name,
            "password_hash": password_hash,
            "crew_id": crew_ids.get(who.crew),
            "created_at": NOW,
        }
        session.execute(insert(table_of(Person)).values(person))
        role = {"person_id": id_of(session, who), "role": who.role}
        session.execute(insert(table_of(PersonRole)).values(role))
    session.commit()


def set_up(content: Path, instance: Path, password_hash: str, *, https: bool = False) -> Bench:
    """Return an installation of these lessons, with the cast in it."""
    instance.mkdir(parents=True, exist_ok=True)
    url = f"sqlite:///{instance / 'trainer.sqlite'}"
    config = Config(content, instance, url, ZONE, https)
    clock = Clock()
    app = create_app(config, clock)
    app.testing = True
    web.prepare(app)
    bench = Bench(app, clock, instance / "pattern.sqlite", config)
    with bench.records() as session:
        enrol(session, password_hash)
    bench.close()
    shutil.copy(bench.database, bench.pattern)
    return bench
