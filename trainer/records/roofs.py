"""Roofs that were described and kept: whose they are, and who else sees them.

What was described is a text of its own, kept for ever under its digest, since answers name it.
A supervisor's roofs are the crew's to see; anybody else's are their own.
"""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import ForeignKey, Select, delete, exists, or_, select, update
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, UtcDateTime, dialect_of, insert_into, table_of
from .people import Person, PersonRole
from .texts import SourceText, Text, keep

__all__ = ["KeptRoof", "Roof", "change_roof", "remove_roof", "roof_for", "roofs_for", "save_roof"]

MOST_SHOWN = 200


class Roof(Model):
    """One roof that somebody keeps; its digest names what it was described as last."""

    __tablename__ = "roof"

    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    title: Mapped[str]
    digest: Mapped[str] = mapped_column(ForeignKey("source_text.digest"))
    created_at: Mapped[datetime] = mapped_column(UtcDateTime)
    changed_at: Mapped[datetime] = mapped_column(UtcDateTime)
    local_date: Mapped[date]


@dataclass(frozen=True, slots=True)
class KeptRoof:
    """A roof as pages see it. The text is left out of lists."""

    roof_id: int
    person_id: int
    owner: str
    title: str
    digest: str
    #: The day it was described or changed last.
    local_date: date
    text: str = ""


def save_roof(session: AnySession, person_id: int, text: Text, now: datetime, today: date) -> int:
    """Return the number of a new roof, with its text kept."""
    keep(session, [text], now)
    table = table_of(Roof)
    statement = insert_into(table, dialect_of(session)).values(
        person_id=person_id,
        title=text.name,
        digest=text.digest,
        created_at=now,
        changed_at=now,
        local_date=today,
    )
    return int(session.scalars(statement.returning(table.c.id)).one())


def change_roof(
    session: AnySession, person_id: int, roof_id: int, text: Text, now: datetime, today: date
) -> bool:
    """Return whether one's own roof was there to be changed, and change it.

    The text that it had stays, for the answers that name it.
    """
    keep(session, [text], now)
    table = table_of(Roof)
    changed = {
        "title": text.name,
        "digest": text.digest,
        "changed_at": now,
        "local_date": today,
    }
    own = (table.c.id == roof_id) & (table.c.person_id == person_id)
    return (
        session.scalar(update(table).where(own).values(changed).returning(table.c.id)) is not None
    )


def remove_roof(session: AnySession, person_id: int, roof_id: int) -> bool:
    """Return whether one's own roof was there to be removed, and remove it."""
    table = table_of(Roof)
    own = (table.c.id == roof_id) & (table.c.person_id == person_id)
    return session.scalar(delete(table).where(own).returning(table.c.id)) is not None


def roofs_for(session: AnySession, person_id: int, crew_id: int | None) -> list[KeptRoof]:
    """Return one's own roofs and those of the crew's supervisors, the last changed first."""
    query = _seen_by(person_id, crew_id).order_by(Roof.changed_at.desc(), Roof.id.desc())
    return [KeptRoof(*row) for row in session.execute(query.limit(MOST_SHOWN))]


def roof_for(
    session: AnySession, person_id: int, crew_id: int | None, roof_id: int
) -> KeptRoof | None:
    """Return a roof with its text, or None where there is none that this person may see."""
    query = (
        _seen_by(person_id, crew_id)
        .add_columns(SourceText.text)
        .join(SourceText, SourceText.digest == Roof.digest)
        .where(Roof.id == roof_id)
    )
    row = session.execute(query).one_or_none()
    return KeptRoof(*row) if row else None


def _seen_by(person_id: int, crew_id: int | None) -> "Select[*tuple[Any, ...]]":
    supervises = exists().where(
        PersonRole.person_id == Roof.person_id, PersonRole.role == "supervisor"
    )
    of_crew = (Person.crew_id == crew_id) & Person.left_at.is_(None) & supervises
    shared = [of_crew] if crew_id is not None else []
    return (
        select(Roof.id, Roof.person_id, Person.name, Roof.title, Roof.digest, Roof.local_date)
        .join(Person, Person.id == Roof.person_id)
        .where(or_(Roof.person_id == person_id, *shared))
    )
