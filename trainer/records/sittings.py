"""Sittings: what somebody was offered on a day, in order, and how far they got.

A sitting is planned when it begins and then stays as it is, so that it can be left and taken up
anywhere. Its tries are kept like all others; a turn only says which of them was its own.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import Any

from sqlalchemy import (
    CheckConstraint,
    Double,
    ForeignKey,
    Select,
    UniqueConstraint,
    insert,
    select,
    update,
)
from sqlalchemy.orm import Mapped, mapped_column

from .database import (
    AnySession,
    Model,
    UtcDateTime,
    dialect_of,
    insert_into,
    one_of,
    table_of,
)
from .rules import SittingRules

__all__ = [
    "KINDS",
    "PRACTICE",
    "REFRESHER",
    "Sitting",
    "SittingRow",
    "SittingTurn",
    "TurnFacts",
    "TurnRow",
    "begin_sitting",
    "end_sitting",
    "last_sitting",
    "minutes_of",
    "note_answer",
    "sitting_of",
    "sittings_of_season",
]

KINDS = PRACTICE, REFRESHER = ("practice", "refresher")


class Sitting(Model):
    """One sitting of one person. Practice has season 0 and number 0: there is one a day."""

    __tablename__ = "sitting"
    __table_args__ = (
        UniqueConstraint("person_id", "kind", "local_date", "season_id", "number"),
        CheckConstraint(one_of("kind", KINDS), name="kind"),
    )

    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    kind: Mapped[str]
    season_id: Mapped[int]
    number: Mapped[int]
    local_date: Mapped[date]
    begun_at: Mapped[datetime] = mapped_column(UtcDateTime)
    ended_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


class SittingTurn(Model):
    """One question of a sitting, in its place."""

    __tablename__ = "sitting_turn"

    sitting_id: Mapped[int] = mapped_column(ForeignKey("sitting.id"), primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    question_id: Mapped[str]
    skill: Mapped[str]
    stood: Mapped[str]
    predicted: Mapped[float | None] = mapped_column(Double)
    count: Mapped[int | None]
    right: Mapped[bool | None]
    unaided: Mapped[bool | None]
    answered_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class TurnFacts:
    """A turn as it is planned."""

    question_id: str
    skill: str
    stood: str
    """The state of the skill as the sitting began, so that its end can say what changed."""
    predicted: float | None = None
    """How likely the skill was to be there as the sitting began, 0 to 1."""


@dataclass(frozen=True, slots=True)
class TurnRow:
    """A turn as it is kept, with the first try that answered it."""

    position: int
    """From 1."""
    facts: TurnFacts
    count: int | None
    """Which run at the question it was; None until it is answered."""
    right: bool | None
    answered_at: datetime | None

    @property
    def is_answered(self) -> bool:
        """Whether it has had its first try."""
        return self.count is not None


@dataclass(frozen=True, slots=True)
class SittingRow:
    """A sitting as it is kept, with its turns in order."""

    sitting_id: int
    kind: str
    season_id: int
    number: int
    local_date: date
    begun_at: datetime
    ended_at: datetime | None
    turns: tuple[TurnRow, ...]

    def turn(self, position: int) -> TurnRow | None:
        """Return the turn of a place from 1, or None."""
        return self.turns[position - 1] if 1 <= position <= len(self.turns) else None


def begin_sitting(
    session: AnySession,
    person_id: int,
    turns: Sequence[TurnFacts],
    now: datetime,
    today: date,
    *,
    kind: str = PRACTICE,
    season_id: int = 0,
    number: int = 0,
) -> int:
    """Return the number of a new sitting, or of the one that this person has begun already.

    Of practice there is one a day; of the refresher one for each number of a season.
    """
    table = table_of(Sitting)
    begun = _begun(session, person_id, kind, today, season_id, number)
    if begun is not None:
        return begun
    statement = insert_into(table, dialect_of(session)).values(
        person_id=person_id,
        kind=kind,
        season_id=season_id,
        number=number,
        local_date=today,
        begun_at=now,
    )
    made = session.scalar(statement.on_conflict_do_nothing().returning(table.c.id))
    if made is None:
        begun = _begun(session, person_id, kind, today, season_id, number)
        if begun is None:
            raise RuntimeError("A sitting was neither begun nor there.")
        return begun
    if turns:
        session.execute(insert(table_of(SittingTurn)), _turn_values(int(made), turns))
    return int(made)


def sitting_of(session: AnySession, person_id: int, sitting_id: int) -> SittingRow | None:
    """Return one of a person's own sittings, or None."""
    own = select(Sitting).where(Sitting.id == sitting_id, Sitting.person_id == person_id)
    return _one(session, own)


def last_sitting(session: AnySession, person_id: int, kind: str = PRACTICE) -> SittingRow | None:
    """Return the latest sitting of a kind that a person has begun, or None."""
    latest = (
        select(Sitting)
        .where(Sitting.person_id == person_id, Sitting.kind == kind)
        # Not by its date: a clock that was wrong may have dated one ahead of all that follow.
        .order_by(Sitting.id.desc())
        .limit(1)
    )
    return _one(session, latest)


def sittings_of_season(session: AnySession, person_id: int, season_id: int) -> list[SittingRow]:
    """Return a person's sittings of one season's refresher, by number."""
    query = select(Sitting).where(
        Sitting.person_id == person_id,
        Sitting.kind == REFRESHER,
        Sitting.season_id == season_id,
    )
    return [_row(session, each) for each in session.scalars(query.order_by(Sitting.number))]


def note_answer(
    session: AnySession,
    sitting_id: int,
    position: int,
    *,
    count: int,
    right: bool,
    unaided: bool,
    now: datetime,
) -> None:
    """Note that a turn has had its first try; the first one stands. In the try's transaction."""
    table = table_of(SittingTurn)
    session.execute(
        update(table)
        .where(
            table.c.sitting_id == sitting_id,
            table.c.position == position,
            table.c.count.is_(None),
        )
        .values(count=count, right=right, unaided=unaided, answered_at=now)
    )


def end_sitting(session: AnySession, person_id: int, sitting_id: int, now: datetime) -> bool:
    """Return whether a person's own sitting was still open, and end it where it stands."""
    table = table_of(Sitting)
    own = (table.c.id == sitting_id) & (table.c.person_id == person_id)
    open_ = update(table).where(own, table.c.ended_at.is_(None)).values(ended_at=now)
    return session.scalar(open_.returning(table.c.id)) is not None


def minutes_of(sitting: SittingRow, rules: SittingRules) -> float:
    """Return how many minutes were sat, from the beginning to the last answer.

    A longer time than a break's between two answers was a break, and counts as that.
    """
    answered = sorted(each.answered_at for each in sitting.turns if each.answered_at)
    longest = timedelta(minutes=rules.break_minutes)
    gaps = (
        min(max(later - earlier, timedelta()), longest)
        for earlier, later in pairwise([sitting.begun_at, *answered])
    )
    return sum(gaps, timedelta()) / timedelta(minutes=1)


def _begun(
    session: AnySession, person_id: int, kind: str, today: date, season_id: int, number: int
) -> int | None:
    query = select(Sitting.id).where(
        Sitting.person_id == person_id,
        Sitting.kind == kind,
        Sitting.season_id == season_id,
        Sitting.number == number,
    )
    # A refresher's sitting may have been begun on another day.
    query = query.where(Sitting.local_date == today) if kind == PRACTICE else query
    return session.scalar(query)


def _turn_values(sitting_id: int, turns: Sequence[TurnFacts]) -> list[dict[str, Any]]:
    return [
        {
            "sitting_id": sitting_id,
            "position": position,
            "question_id": each.question_id,
            "skill": each.skill,
            "stood": each.stood,
            "predicted": each.predicted,
        }
        for position, each in enumerate(turns, start=1)
    ]


def _one(session: AnySession, query: Select[Any]) -> SittingRow | None:
    found = session.scalars(query).one_or_none()
    return _row(session, found) if found else None


def _row(session: AnySession, sitting: Sitting) -> SittingRow:
    turns = session.scalars(
        select(SittingTurn)
        .where(SittingTurn.sitting_id == sitting.id)
        .order_by(SittingTurn.position)
    )
    return SittingRow(
        sitting.id,
        sitting.kind,
        sitting.season_id,
        sitting.number,
        sitting.local_date,
        sitting.begun_at,
        sitting.ended_at,
        tuple(map(_turn_row, turns)),
    )


def _turn_row(turn: SittingTurn) -> TurnRow:
    facts = TurnFacts(turn.question_id, turn.skill, turn.stood, turn.predicted)
    return TurnRow(turn.position, facts, turn.count, turn.right, turn.answered_at)
