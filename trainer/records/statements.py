"""Statements for the paths that every request takes: made once, then sent straight to the driver.

Building, caching and unpacking a statement costs SQLAlchemy five to ten times what the database
takes for these small ones. So its compiler writes the text and picks the conversions at the first
use, and after that only the driver is asked. Everything else goes the ordinary way.
"""

from collections.abc import Callable, Mapping, Sequence
from contextlib import closing
from dataclasses import dataclass
from typing import Any, cast

from sqlalchemy import ClauseElement, Connection, Dialect
from sqlalchemy.exc import DBAPIError
from sqlalchemy.sql.compiler import SQLCompiler

__all__ = ["Statement", "told_as_ours"]

Convert = Callable[[Any], Any]
Parameters = Any
"""A tuple or a mapping, as the driver takes them."""


@dataclass(frozen=True, slots=True)
class _Slot:
    """A value's place in the text: its name, or what always stands there, and how it is sent."""

    name: str
    fixed: Any
    is_fixed: bool
    convert: Convert | None

    def value(self, values: Mapping[str, Any]) -> object:
        value = self.fixed if self.is_fixed else values[self.name]
        return value if self.convert is None else self.convert(value)


@dataclass(frozen=True, slots=True)
class _Ready:
    """A statement's text in one database's spelling."""

    text: str
    slots: tuple[_Slot, ...]
    positional: bool

    def parameters(self, values: Mapping[str, Any]) -> Parameters:
        if self.positional:
            return tuple([slot.value(values) for slot in self.slots])
        return {slot.name: slot.value(values) for slot in self.slots}


class Statement:
    """A statement that is made once for each kind of database.

    `make` returns it from the dialect's name. `keys` are the columns that an INSERT is given at
    each call.
    """

    def __init__(self, make: Callable[[str], ClauseElement], keys: Sequence[str] = ()) -> None:
        self._make = make
        self._keys = list(keys)
        self._ready: dict[str, _Ready] = {}

    def first(self, connection: Connection, values: Mapping[str, Any]) -> tuple[Any, ...] | None:
        """Return the first row as the driver gives it, or None. Columns must need no conversion."""
        ready = self._in_spelling_of(connection.dialect)
        try:
            with closing(connection.connection.cursor()) as cursor:
                cursor.execute(ready.text, ready.parameters(values))
                return cast("tuple[Any, ...] | None", cursor.fetchone())
        except Exception as error:
            raise told_as_ours(error, ready.text, connection) from error

    def all(self, connection: Connection, values: Mapping[str, Any]) -> list[tuple[Any, ...]]:
        """Return all rows as the driver gives them. Columns must need no conversion."""
        ready = self._in_spelling_of(connection.dialect)
        try:
            with closing(connection.connection.cursor()) as cursor:
                cursor.execute(ready.text, ready.parameters(values))
                return cast("list[tuple[Any, ...]]", cursor.fetchall())
        except Exception as error:
            raise told_as_ours(error, ready.text, connection) from error

    def run(self, connection: Connection, rows: Sequence[Mapping[str, Any]]) -> None:
        """Send the statement once for each row of values."""
        ready = self._in_spelling_of(connection.dialect)
        try:
            with closing(connection.connection.cursor()) as cursor:
                cursor.executemany(ready.text, [ready.parameters(values) for values in rows])
        except Exception as error:
            raise told_as_ours(error, ready.text, connection) from error

    def _in_spelling_of(self, dialect: Dialect) -> _Ready:
        ready = self._ready.get(dialect.name)
        if ready is None:
            ready = self._ready[dialect.name] = _made(self._make(dialect.name), dialect, self._keys)
        return ready


def told_as_ours(error: Exception, text: str, connection: Connection) -> BaseException:
    """Return the driver's error as SQLAlchemy would raise it; any other error as it is.

    A lost connection is given up as SQLAlchemy would do it too, with all that wait in the pool:
    the session can then be rolled back, and its next transaction begins on a new one.
    """
    dialect = connection.dialect
    base = dialect.loaded_dbapi.Error
    if not isinstance(error, base):
        return error
    lost = not connection.invalidated and dialect.is_disconnect(error, connection.connection, None)
    if lost:
        connection.invalidate(error)
        connection.engine.dispose()
    return DBAPIError.instance(
        text, None, error, base, connection_invalidated=lost, dialect=dialect
    )


def _made(statement: ClauseElement, dialect: Dialect, keys: list[str]) -> _Ready:
    spelt = statement.compile(dialect=dialect, column_keys=keys or None)
    compiled = cast("SQLCompiler", spelt)
    names = compiled.positiontup if compiled.positional else list(compiled.binds)
    slots = tuple(_slot(name, compiled, dialect) for name in names or ())
    return _Ready(str(compiled), slots, compiled.positional)


def _slot(name: str, compiled: SQLCompiler, dialect: Dialect) -> _Slot:
    bind = compiled.binds[name]
    convert = bind.type.dialect_impl(dialect).bind_processor(dialect)
    return _Slot(name, bind.value, not bind.required, convert)
