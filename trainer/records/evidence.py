"""What one answer was: the facts that come in, and the two tables that keep them.

Enough is kept to read an answer years later as it was asked, whatever the lesson says by then.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import JSON, CheckConstraint, Double, ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from .database import Model, UtcDateTime, one_of

__all__ = [
    "VERDICTS",
    "Answer",
    "AnswerFacts",
    "Attempt",
    "AttemptFacts",
    "Recorded",
    "SeenVariant",
    "StoredAttempt",
]

VERDICTS = ("right", "carried", "wrong")
"""Right; right for the person's own figure above it; wrong."""


class Attempt(Model):
    """One try at one question on one set of numbers."""

    __tablename__ = "attempt"
    __table_args__ = (
        # A form sent twice meets this, and the first one stands. It also finds all that a
        # person did on a question.
        UniqueConstraint("person_id", "question_id", "roof", "count", "try_no"),
        CheckConstraint("try_no IN (1, 2)", name="try_no"),
        CheckConstraint("count >= 0", name="count"),
        CheckConstraint("redraws >= 0", name="redraws"),
    )

    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    question_id: Mapped[str]
    kind: Mapped[str] = mapped_column(server_default="calculate")
    lesson: Mapped[str]
    competency: Mapped[str]
    roof: Mapped[str]
    count: Mapped[int]
    try_no: Mapped[int]
    seed: Mapped[str]
    redraws: Mapped[int]
    variant: Mapped[str]
    source_digest: Mapped[str] = mapped_column(ForeignKey("source_text.digest"))
    engine_version: Mapped[str]
    givens: Mapped[dict[str, Any]] = mapped_column(JSON)
    lines: Mapped[list[dict[str, Any]]] = mapped_column(JSON)
    sent_at: Mapped[datetime] = mapped_column(UtcDateTime)
    local_date: Mapped[date]
    sent_later: Mapped[bool]
    working_shown: Mapped[bool]
    started_afresh: Mapped[bool]
    stage: Mapped[int] = mapped_column(server_default="3")
    unaided: Mapped[bool]
    right: Mapped[bool]
    finished: Mapped[bool]


class Answer(Model):
    """What was typed for one asked line of an attempt, and how it was marked."""

    __tablename__ = "answer"
    __table_args__ = (CheckConstraint(one_of("verdict", VERDICTS), name="verdict"),)

    attempt_id: Mapped[int] = mapped_column(ForeignKey("attempt.id"), primary_key=True)
    position: Mapped[int] = mapped_column(primary_key=True)
    line: Mapped[str]
    skill: Mapped[str]
    unit: Mapped[str]
    tolerance: Mapped[str]
    right_value: Mapped[float | None] = mapped_column(Double)
    expected_value: Mapped[float | None] = mapped_column(Double)
    typed: Mapped[str]
    read_as: Mapped[str]
    read_value: Mapped[float | None] = mapped_column(Double)
    verdict: Mapped[str]
    slip: Mapped[str]
    cue: Mapped[str]


@dataclass(frozen=True, kw_only=True, slots=True)
class AnswerFacts:
    """One asked line. The three values are None for kinds of question without numbers."""

    line: str
    skill: str
    unit: str
    tolerance: str
    """As the lesson writes it: "2 %", "0.05"."""
    right_value: float | None
    """Unrounded, in `unit`."""
    expected_value: float | None
    """What would have been right for the person's own figure above; else the right value."""
    typed: str
    read_as: str
    """How the typed text was read, with its unit: "1100 g"; empty when it could not be."""
    read_value: float | None
    """The same figure in `unit`; None when it could not be read."""
    verdict: str
    slip: str = ""
    cue: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class AttemptFacts:
    """One try, as the door hands it in. Its answers are in the order they were asked."""

    person_id: int
    question_id: str
    kind: str = "calculate"
    lesson: str
    competency: str
    roof: str = ""
    """The digest of the roof's description, when the try is practice on a roof."""
    count: int
    """How often the person had finished this question when the form was drawn."""
    try_no: int
    seed: str
    redraws: int = 0
    variant: str
    """A digest of the givens: the same one means the same numbers."""
    source_digest: str
    engine_version: str
    givens: Mapping[str, Any]
    lines: Sequence[Mapping[str, Any]]
    """Every line of the working: key, words, unit, value."""
    sent_at: datetime
    local_date: date
    sent_later: bool = False
    working_shown: bool = False
    """Whether the working for these numbers had been shown before this try."""
    started_afresh: bool = False
    """Whether a carried figure couldn't be worked on, so that lines below were marked without."""
    stage: int = 3
    """How much of the working was shown: 0 all of it on other numbers, 3 none."""
    unaided: bool
    right: bool
    finished: bool
    """Whether the run ends with this try: it was right, or there is no retry to come."""
    answers: tuple[AnswerFacts, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class StoredAttempt(AttemptFacts):
    """A try read back, with its key."""

    attempt_id: int


@dataclass(frozen=True, slots=True)
class Recorded:
    """Where a try is kept, and whether it was this sending that put it there."""

    attempt_id: int
    first: bool


@dataclass(frozen=True, slots=True)
class SeenVariant:
    """Numbers that somebody has finished a question on, and what draws them again."""

    variant: str
    seed: str
    redraws: int
    local_date: date
