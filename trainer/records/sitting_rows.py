"""The tables of sittings, and a sitting with its turns as it is read back."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import CheckConstraint, Double, ForeignKey, UniqueConstraint, select
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, UtcDateTime, one_of

__all__ = [
    "KINDS",
    "PRACTICE",
    "REFRESHER",
    "Sitting",
    "SittingRow",
    "SittingTurn",
    "TurnFacts",
    "TurnRow",
    "row_in",
    "turn_values",
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
    #: Skills that its owner had as a refresher began, and how many of them held.
    had: Mapped[int | None]
    held: Mapped[int | None]
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
    had: int | None
    held: int | None
    begun_at: datetime
    ended_at: datetime | None
    turns: tuple[TurnRow, ...]

    def turn(self, position: int) -> TurnRow | None:
        """Return the turn of a place from 1, or None."""
        return self.turns[position - 1] if 1 <= position <= len(self.turns) else None


def turn_values(sitting_id: int, turns: Sequence[TurnFacts]) -> list[dict[str, Any]]:
    """Return the rows that keep the turns of a sitting, in order."""
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


def row_in(session: AnySession, sitting: Sitting) -> SittingRow:
    """Return a sitting with its turns."""
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
        sitting.had,
        sitting.held,
        sitting.begun_at,
        sitting.ended_at,
        tuple(map(_turn_row, turns)),
    )


def _turn_row(turn: SittingTurn) -> TurnRow:
    facts = TurnFacts(turn.question_id, turn.skill, turn.stood, turn.predicted)
    return TurnRow(turn.position, facts, turn.count, turn.right, turn.answered_at)
