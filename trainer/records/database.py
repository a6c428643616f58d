"""The database handle, and how SQLite is spoken to.

SQLite begins no transaction by itself here: we say BEGIN, so that a read is one snapshot and a
schema change can be undone. A write says BEGIN IMMEDIATE, so that it waits its turn at the start
instead of failing half-way.
"""

import sqlite3
from collections.abc import Sequence
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any, cast

from flask import Flask
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import Connection, DateTime, Dialect, Engine, MetaData, Table, event
from sqlalchemy.dialects import sqlite
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlalchemy.orm import DeclarativeBase, Session, scoped_session
from sqlalchemy.pool import ConnectionPoolEntry
from sqlalchemy.types import TypeDecorator

from .statements import told_as_ours

__all__ = [
    "AnySession",
    "Base",
    "Model",
    "UtcDateTime",
    "db",
    "dialect_of",
    "init_app",
    "insert_into",
    "one_of",
    "prepare",
    "table_of",
    "take_turn",
    "writing",
]

BUSY_TIMEOUT_MS = 5000
"""How long a writer waits for its turn before it is told that the records are busy."""

PRAGMAS = (
    f"PRAGMA busy_timeout = {BUSY_TIMEOUT_MS}",
    "PRAGMA journal_mode = WAL",
    "PRAGMA synchronous = FULL",
    "PRAGMA foreign_keys = ON",
    # Without it an INSERT OR REPLACE slips past a trigger that forbids deleting.
    "PRAGMA recursive_triggers = ON",
)

_WRITES, _CHANGES = "records_writes", "records_changes"
_TOO_LATE = "Call writing() before changing anything in this session."

AnySession = Session | scoped_session[Any]
"""What the functions of this room take first."""


class Base(DeclarativeBase):
    """The tables, with names for every constraint so that a migration can find them again."""

    metadata = MetaData(
        naming_convention={
            "ix": "ix_%(table_name)s_%(column_0_N_name)s",
            "uq": "uq_%(table_name)s_%(column_0_N_name)s",
            "ck": "ck_%(table_name)s_%(constraint_name)s",
            "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
            "pk": "pk_%(table_name)s",
        }
    )


db = SQLAlchemy(model_class=Base)

if TYPE_CHECKING:
    from sqlalchemy.dialects import postgresql

    Model = Base
else:
    Model = db.Model


class UtcDateTime(TypeDecorator[datetime]):
    """An instant: aware going in, aware UTC coming out, on a database that keeps no zones too."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, _dialect: Dialect) -> datetime | None:
        """Return the instant in UTC. Raises ValueError for a time without a zone."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"{value.isoformat()} has no time zone. Give an aware time.")
        return value.astimezone(UTC)

    def process_result_value(self, value: datetime | None, _dialect: Dialect) -> datetime | None:
        """Return the stored instant, aware. SQLite hands it back without its zone, which is UTC."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


def init_app(app: Flask) -> None:
    """Give the app its database, ready to be spoken to. The tables are `schema.upgrade`'s work."""
    db.init_app(app)
    with app.app_context():
        for engine in db.engines.values():
            prepare(engine)


def prepare(engine: Engine) -> None:
    """Have every connection of an engine set up as we use it."""
    if engine.dialect.name == "postgresql":
        event.listen(engine, "connect", _set_up_postgresql)
        return
    event.listen(engine, "connect", _set_up)
    event.listen(engine, "begin", _begin)


def _set_up(connection: sqlite3.Connection, _entry: ConnectionPoolEntry) -> None:
    connection.isolation_level = None
    for pragma in PRAGMAS:
        connection.execute(pragma)


def _set_up_postgresql(connection: DBAPIConnection, _entry: ConnectionPoolEntry) -> None:
    cursor = connection.cursor()
    cursor.execute(f"SET lock_timeout = {BUSY_TIMEOUT_MS}")
    cursor.close()
    connection.commit()


def _begin(connection: Connection) -> None:
    connection.info[_WRITES] = False
    connection.info[_CHANGES] = _driver(connection).total_changes
    _say(connection, "BEGIN")


def writing(session: AnySession) -> None:
    """Make the session's transaction a writer's: wait for the turn now, and keep it to the end.

    A request that writes calls this before it writes. Reading before it (who is signed in?) is
    fine: that read ends here, so read again whatever the writing rests on.
    Raises RuntimeError when something was changed already, and OperationalError when the turn
    doesn't come within the timeout.
    """
    if session.new or session.dirty or session.deleted:
        raise RuntimeError(_TOO_LATE)
    take_turn(session.connection())
    session.expire_all()


def take_turn(connection: Connection) -> None:
    """Do the same for a connection whose transaction has begun. PostgreSQL needs no turns."""
    if connection.dialect.name != "sqlite" or connection.info[_WRITES]:
        return
    if _driver(connection).total_changes != connection.info[_CHANGES]:
        raise RuntimeError(_TOO_LATE)
    # Behind SQLAlchemy's back: for it this stays one transaction, and that saves a good part
    # of what an answer costs.
    _say(connection, "COMMIT")
    _say(connection, "BEGIN IMMEDIATE")
    connection.info[_WRITES] = True


def _say(connection: Connection, words: str) -> None:
    try:
        _driver(connection).execute(words)
    except sqlite3.Error as error:
        raise told_as_ours(error, words, connection) from error


def _driver(connection: Connection) -> sqlite3.Connection:
    return cast("sqlite3.Connection", connection.connection.driver_connection)


def dialect_of(session: AnySession) -> str:
    """Return "sqlite" or "postgresql", from the database the session speaks to."""
    return session.get_bind().dialect.name


def insert_into(table: Table, dialect: str) -> "sqlite.Insert | postgresql.Insert":
    """Return an INSERT that may say ON CONFLICT; both databases spell it alike."""
    if dialect == "postgresql":
        # Imported only where it is spoken to: it takes a while.
        from sqlalchemy.dialects import postgresql  # noqa: PLC0415

        return postgresql.insert(table)
    return sqlite.insert(table)


def one_of(column: str, values: Sequence[str]) -> str:
    """Return the text of a CHECK that a column holds one of these words."""
    return f"{column} IN ({', '.join(repr(value) for value in values)})"


def table_of(model: type[Base]) -> Table:
    """Return the model's table, for statements that are to bypass the unit of work."""
    return cast("Table", model.__table__)
