"""Uses on a job: a competency that somebody used on a real roof, confirmed by whoever was there.

A confirmed use sets the unused clock of that competency back, and nothing else: no skill, no
watched job and no signature moves with it.
"""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from sqlalchemy import (
    CheckConstraint,
    ForeignKey,
    Row,
    Select,
    UniqueConstraint,
    delete,
    func,
    select,
    update,
)
from sqlalchemy.orm import Mapped, aliased, mapped_column

from .calendar_days import days_on
from .database import AnySession, Model, UtcDateTime, dialect_of, insert_into, one_of, table_of
from .people import Person
from .rules import UseRules

__all__ = [
    "ANSWERS",
    "LONGEST_ROOF",
    "JobUse",
    "UseFacts",
    "UseRow",
    "answer_use",
    "earliest_noted",
    "last_used",
    "note_use",
    "take_back_use",
    "unused_until",
    "uses_of",
    "waiting_uses",
]

LONGEST_ROOF = 80
MOST_SHOWN = 100
ANSWERS = ("confirmed", "not confirmed")
"""What a supervisor may say to a use; until then it waits."""
_WAITS = ""


class JobUse(Model):
    """One competency, used by one person on one roof on one day."""

    __tablename__ = "job_use"
    __table_args__ = (
        # A form that was sent twice is one use.
        UniqueConstraint("person_id", "competency", "used_on", "roof"),
        CheckConstraint(one_of("answer", (_WAITS, *ANSWERS)), name="answer"),
    )

    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"))
    competency: Mapped[str]
    roof: Mapped[str]
    used_on: Mapped[date]
    noted_at: Mapped[datetime] = mapped_column(UtcDateTime)
    answer: Mapped[str]
    answered_by: Mapped[int | None] = mapped_column(ForeignKey("person.id"))
    answered_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class UseFacts:
    """What somebody notes. Raises ValueError for a roof that has no name."""

    competency: str
    roof: str
    """In the crew's words: where it was."""
    used_on: date

    def __post_init__(self) -> None:
        if not self.roof or not self.roof.isprintable() or len(self.roof) > LONGEST_ROOF:
            raise ValueError(f"A use needs the roof's name, of {LONGEST_ROOF} letters at most.")


@dataclass(frozen=True, slots=True)
class UseRow:
    """A use as it is kept."""

    use_id: int
    person_id: int
    person: str
    facts: UseFacts
    answer: str
    """One of ANSWERS; empty while it waits."""
    answered_by: str
    """The name of whoever answered, or nothing."""
    answered_at: datetime | None


def note_use(session: AnySession, person_id: int, facts: UseFacts, now: datetime) -> bool:
    """Return whether the use is new, and keep it until somebody confirms it.

    The same competency on the same roof and day is one use; a second noting changes nothing.
    """
    table = table_of(JobUse)
    statement = (
        insert_into(table, dialect_of(session))
        .values(
            person_id=person_id,
            competency=facts.competency,
            roof=facts.roof,
            used_on=facts.used_on,
            noted_at=now,
            answer=_WAITS,
        )
        .on_conflict_do_nothing()
        .returning(table.c.id)
    )
    return session.scalar(statement) is not None


def take_back_use(session: AnySession, person_id: int, use_id: int) -> bool:
    """Return whether a person's own use was still waiting, and take it back."""
    table = table_of(JobUse)
    own = (table.c.id == use_id) & (table.c.person_id == person_id) & (table.c.answer == _WAITS)
    return session.scalar(delete(table).where(own).returning(table.c.id)) is not None


def answer_use(
    session: AnySession,
    use_id: int,
    answer: str,
    *,
    by: int,
    crew_id: int | None,
    now: datetime,
) -> UseRow | None:
    """Return a use that waited, with what was answered; None where there is none to answer.

    `crew_id` is the crew that may be answered for, None for all of them. Nobody answers their
    own. The first answer stands. Raises ValueError for an answer that is none of ANSWERS.
    """
    if answer not in ANSWERS:
        raise ValueError(f"'{answer}' is no answer to a use; there are {', '.join(ANSWERS)}.")
    table = table_of(JobUse)
    theirs = select(Person.id).where(Person.id != by)
    theirs = theirs if crew_id is None else theirs.where(Person.crew_id == crew_id)
    waits = (table.c.id == use_id) & (table.c.answer == _WAITS) & table.c.person_id.in_(theirs)
    told = {"answer": answer, "answered_by": by, "answered_at": now}
    if session.scalar(update(table).where(waits).values(told).returning(table.c.id)) is None:
        return None
    return _row(session.execute(_query().where(JobUse.id == use_id)).one())


def uses_of(session: AnySession, person_id: int) -> list[UseRow]:
    """Return a person's uses, the latest first."""
    query = _query().where(JobUse.person_id == person_id)
    latest = query.order_by(JobUse.used_on.desc(), JobUse.id.desc()).limit(MOST_SHOWN)
    return [_row(row) for row in session.execute(latest)]


def waiting_uses(
    session: AnySession, crew_id: int | None, *, but_not: int | None = None
) -> list[UseRow]:
    """Return the uses of a crew (None: of all) that wait for an answer, the oldest first.

    `but_not` leaves out one person's own. Those of people who have left wait for nobody.
    """
    query = _query().where(JobUse.answer == _WAITS, Person.left_at.is_(None))
    if crew_id is not None:
        query = query.where(Person.crew_id == crew_id)
    if but_not is not None:
        query = query.where(JobUse.person_id != but_not)
    oldest = query.order_by(JobUse.used_on, JobUse.id).limit(MOST_SHOWN)
    return [_row(row) for row in session.execute(oldest)]


def last_used(
    session: AnySession, person_ids: Collection[int], today: date
) -> dict[int, dict[str, date]]:
    """Return the day each of these people last used a competency, where that is confirmed.

    A day that is still to come, from when a clock was wrong, counts as today.
    """
    query = (
        select(JobUse.person_id, JobUse.competency, func.max(JobUse.used_on))
        .where(JobUse.person_id.in_(list(person_ids)), JobUse.answer == ANSWERS[0])
        .group_by(JobUse.person_id, JobUse.competency)
    )
    found: dict[int, dict[str, date]] = {person_id: {} for person_id in person_ids}
    for person_id, competency, used_on in session.execute(query):
        found[person_id][competency] = min(used_on, today)
    return found


def unused_until(used_on: date, rules: UseRules, *, safety_critical: bool) -> date:
    """Return the day on which a competency last used then has gone unused for too long."""
    days = rules.unused_days_if_safety_critical if safety_critical else rules.unused_days
    return days_on(used_on, days)


def earliest_noted(today: date, rules: UseRules) -> date:
    """Return the earliest day that a use may still be noted for."""
    return days_on(today, -rules.use_noted_within_days)


_Answerer = aliased(Person)


def _query() -> Select[*tuple[Any, ...]]:
    return (
        select(
            JobUse.id,
            JobUse.person_id,
            Person.name,
            JobUse.competency,
            JobUse.roof,
            JobUse.used_on,
            JobUse.answer,
            func.coalesce(_Answerer.name, "").label("answered_by"),
            JobUse.answered_at,
        )
        .join(Person, Person.id == JobUse.person_id)
        .outerjoin(_Answerer, _Answerer.id == JobUse.answered_by)
    )


def _row(row: Row[*tuple[Any, ...]]) -> UseRow:
    use_id, person_id, person, competency, roof, used_on, answer, answered_by, answered_at = row
    facts = UseFacts(competency, roof, used_on)
    return UseRow(use_id, person_id, person, facts, answer, answered_by, answered_at)
