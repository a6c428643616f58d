"""Test cups: what gelled, when, and how it had been mixed, kept for whoever timed it.

A batch on the roof whose gel was noted is kept among them; it counts for more.
"""

import math
from dataclasses import dataclass, fields
from datetime import date, datetime

from sqlalchemy import Double, ForeignKey, delete, select
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, UtcDateTime, dialect_of, insert_into, table_of

__all__ = ["CupFacts", "KeptCup", "TestCupRow", "cups_of", "keep_cup", "take_back"]

LONGEST_NAME = 80
MOST_SHOWN = 60


class TestCupRow(Model):
    """One cup, or one batch, that somebody timed; the dose also as it was given."""

    __tablename__ = "test_cup"

    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    product: Mapped[str]
    minutes: Mapped[float] = mapped_column(Double)
    at_c: Mapped[float] = mapped_column(Double)
    percent: Mapped[float] = mapped_column(Double)
    dose: Mapped[float] = mapped_column(Double)
    convention: Mapped[str]
    from_batch: Mapped[bool]
    noted_at: Mapped[datetime] = mapped_column(UtcDateTime)
    local_date: Mapped[date]


@dataclass(frozen=True, slots=True)
class CupFacts:
    """What there is to know of a cup. Raises ValueError for a name or a figure that is none."""

    product: str
    minutes: float
    at_c: float
    #: By mass.
    percent: float
    #: As it was given, in this convention.
    dose: float
    convention: str
    from_batch: bool = False

    def __post_init__(self) -> None:
        named = self.product.strip() and self.product.isprintable()
        if not named or len(self.product) > LONGEST_NAME:
            raise ValueError(f"A cup needs the resin's name, of {LONGEST_NAME} letters at most.")
        figures = (self.minutes, self.at_c, self.percent, self.dose)
        if not all(map(math.isfinite, figures)) or min(self.minutes, self.percent, self.dose) <= 0:
            raise ValueError("A cup's minutes and dose are figures above zero.")


@dataclass(frozen=True, slots=True)
class KeptCup:
    """A cup as it is kept."""

    cup_id: int
    facts: CupFacts
    local_date: date

    def days_old(self, today: date) -> int:
        """Return how many days ago it was noted; a date that is still to come counts as today."""
        return max(0, (today - self.local_date).days)


def keep_cup(
    session: AnySession, person_id: int, facts: CupFacts, now: datetime, today: date
) -> int:
    """Return the number of a new cup. The same one sent twice is kept twice; either may go."""
    table = table_of(TestCupRow)
    values = {each.name: getattr(facts, each.name) for each in fields(facts)}
    values |= {"product": " ".join(facts.product.split()), "person_id": person_id}
    statement = insert_into(table, dialect_of(session)).values(
        **values, noted_at=now, local_date=today
    )
    return int(session.scalars(statement.returning(table.c.id)).one())


def cups_of(session: AnySession, person_id: int, product: str | None = None) -> list[KeptCup]:
    """Return a person's cups, the newest first; of one product alone where it is named.

    A product is the same however its letters are cased and its words are spaced.
    """
    query = (
        select(TestCupRow)
        .where(TestCupRow.person_id == person_id)
        .order_by(TestCupRow.noted_at.desc(), TestCupRow.id.desc())
        .limit(MOST_SHOWN)
    )
    kept = [_kept(row) for row in session.scalars(query)]
    return [cup for cup in kept if product is None or _same(cup.facts.product, product)]


def take_back(session: AnySession, person_id: int, cup_id: int) -> bool:
    """Return whether a person's own cup was there to be taken back, and take it back."""
    table = table_of(TestCupRow)
    own = (table.c.id == cup_id) & (table.c.person_id == person_id)
    return session.scalar(delete(table).where(own).returning(table.c.id)) is not None


def _kept(row: TestCupRow) -> KeptCup:
    facts = CupFacts(**{each.name: getattr(row, each.name) for each in fields(CupFacts)})
    return KeptCup(row.id, facts, row.local_date)


def _same(one: str, other: str) -> bool:
    return " ".join(one.split()).casefold() == " ".join(other.split()).casefold()
