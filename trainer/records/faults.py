"""What can go wrong with the records, each told in a sentence."""

import sqlite3

from sqlalchemy.exc import DBAPIError, OperationalError

__all__ = ["RecordsAway", "RecordsBusy", "RecordsError", "RecordsFull", "translate"]

# SQLite's first result codes: sqlite.org/rescode.html. Longer codes keep them in the low byte.
_SQLITE_BUSY = {5, 6}
_SQLITE_UNWRITABLE = {8, 10, 13, 14}
# PostgreSQL's states: appendix A of its manual, "Error Codes".
_POSTGRESQL_BUSY = {"40001", "40P01", "55P03"}
_POSTGRESQL_UNWRITABLE = {"25006", "53100", "58030"}
_POSTGRESQL_AWAY = ("08", "57P")


class RecordsError(Exception):
    """Anything the records refuse. Its text is a sentence for whoever asked."""


class RecordsBusy(RecordsError):
    """Somebody else was writing for longer than we wait."""

    def __str__(self) -> str:
        return "Nothing was kept: the records were busy. Wait a few seconds, then send it again."


class RecordsFull(RecordsError):
    """The disk is full, or the database may not be written to."""

    def __str__(self) -> str:
        return (
            "Nothing was kept: the records can't be written to. "
            "Ask the office to look for a full disk or a folder without write access. "
            "Then send it again."
        )


class RecordsAway(RecordsError):
    """The database doesn't answer, or has just been started again."""

    def __str__(self) -> str:
        return (
            "Nothing was kept: the records don't answer. Wait a minute, then send it again. "
            "If it goes on, ask the office whether the database is running."
        )


def translate(error: BaseException) -> RecordsError | None:
    """Return our own error for a database error, or None where we have no better word for it.

    `error` is what SQLAlchemy raised; a commit raises the same kinds as a statement does.
    """
    if not isinstance(error, DBAPIError):
        return None
    if _is_one_of(error.orig, _SQLITE_BUSY, _POSTGRESQL_BUSY):
        return RecordsBusy()
    if _is_one_of(error.orig, _SQLITE_UNWRITABLE, _POSTGRESQL_UNWRITABLE):
        return RecordsFull()
    if error.connection_invalidated or _is_away(error):
        return RecordsAway()
    return None


def _is_away(error: DBAPIError) -> bool:
    """Whether a server is down, going down or coming up; SQLite has none."""
    if isinstance(error.orig, sqlite3.Error):
        return False
    state = getattr(error.orig, "sqlstate", None)
    if state is None:
        # Refused, lost or silent before the server could say why.
        return isinstance(error, OperationalError)
    return str(state).startswith(_POSTGRESQL_AWAY)


def _is_one_of(cause: BaseException | None, sqlite: set[int], postgresql: set[str]) -> bool:
    if isinstance(cause, sqlite3.Error):
        return getattr(cause, "sqlite_errorcode", 0) & 0xFF in sqlite
    return getattr(cause, "sqlstate", None) in postgresql
