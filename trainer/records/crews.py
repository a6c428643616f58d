"""The crews of the firm."""

from dataclasses import dataclass

from sqlalchemy import select
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, dialect_of, insert_into, table_of
from .faults import RecordsError

__all__ = [
    "Crew",
    "CrewNameTaken",
    "CrewRow",
    "CrewUnknown",
    "NameMissing",
    "add_crew",
    "crew_by_id",
    "crews",
    "named",
]


class Crew(Model):
    """People who lay roofs together."""

    __tablename__ = "crew"

    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str] = mapped_column(unique=True)


@dataclass(frozen=True, slots=True)
class CrewRow:
    """A crew as the pages see it."""

    crew_id: int
    name: str


class NameMissing(RecordsError):
    """A name of nothing but spaces."""

    def __str__(self) -> str:
        return "The name is empty. Type at least one letter."


class CrewNameTaken(RecordsError):
    """A second crew of the same name; carries the name."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name

    def __str__(self) -> str:
        return f"There is a crew called {self.name} already. Choose another name."


class CrewUnknown(RecordsError):
    """A crew that doesn't exist; carries the number asked for."""

    def __init__(self, crew_id: int) -> None:
        super().__init__(crew_id)
        self.crew_id = crew_id

    def __str__(self) -> str:
        return f"There is no crew number {self.crew_id}. Choose one from the list."


def add_crew(session: AnySession, name: str) -> CrewRow:
    """Return a new crew of that name. Raises NameMissing or CrewNameTaken."""
    name = named(name)
    table = table_of(Crew)
    statement = insert_into(table, dialect_of(session)).values(name=name)
    crew_id = session.scalar(statement.on_conflict_do_nothing().returning(table.c.id))
    if crew_id is None:
        raise CrewNameTaken(name)
    return CrewRow(crew_id, name)


def crews(session: AnySession) -> list[CrewRow]:
    """Return all crews, by name."""
    rows = session.execute(select(Crew.id, Crew.name).order_by(Crew.name))
    return [CrewRow(crew_id, name) for crew_id, name in rows]


def crew_by_id(session: AnySession, crew_id: int) -> CrewRow | None:
    """Return the crew of that number, or None."""
    row = session.execute(select(Crew.id, Crew.name).where(Crew.id == crew_id)).first()
    return None if row is None else CrewRow(*row)


def named(name: str) -> str:
    """Return a name without stray spaces. Raises NameMissing when nothing is left."""
    name = " ".join(name.split())
    if not name:
        raise NameMissing
    return name
