"""What one try says about each skill that it asked for.

A try tells of a skill when it is the first one at its numbers, in a lesson. A retry comes after a
cue, and practice on a roof never counts; neither is looked at here. It is right unless a line of
that skill is wrong: other skills' lines don't matter, and right for the person's own figure is
right.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime
from itertools import groupby
from typing import Any

from sqlalchemy import Select, select

from .calendar_days import days_on
from .database import AnySession
from .evidence import Answer, AnswerFacts, Attempt, AttemptFacts

__all__ = ["SkillTold", "all_told", "told_by"]

_WITH_NUMBERS = "calculate"


@dataclass(frozen=True, slots=True)
class SkillTold:
    """One try at one skill."""

    day: date
    right: bool
    unaided: bool
    """On numbers not seen lately, with no line of the working shown."""
    numberless: bool = False
    """Whether the answer was picked and not worked out."""


def told_by(facts: AttemptFacts) -> dict[str, SkillTold]:
    """Return what a try says, by skill; nothing when it is a retry, or practice on a roof."""
    if facts.try_no != 1 or facts.roof:
        return {}
    return {
        skill: SkillTold(
            _day(facts.local_date, facts.sent_at),
            _all_right(facts.answers, skill),
            facts.unaided,
            facts.kind != _WITH_NUMBERS,
        )
        for skill in dict.fromkeys(answer.skill for answer in facts.answers)
    }


def all_told(
    session: AnySession, person_id: int | None = None, *, up_to: int | None = None
) -> Iterator[tuple[int, str, SkillTold]]:
    """Yield person, skill and try for all that is kept, in the order in which it came in.

    `person_id` picks one person's; None is everybody's, one person after another. `up_to` is the
    id of the last one that is told; None tells all.
    """
    query = _query(person_id)
    query = query if up_to is None else query.where(Attempt.id <= up_to)
    rows = session.execute(query, execution_options={"yield_per": 1000})
    for _, lines in groupby(rows, key=lambda row: row.id):
        asked = list(lines)
        first = asked[0]
        for skill in dict.fromkeys(line.skill for line in asked):
            right = all(line.verdict != "wrong" for line in asked if line.skill == skill)
            numberless = first.kind != _WITH_NUMBERS
            day = _day(first.local_date, first.sent_at)
            told = SkillTold(day, right, first.unaided, numberless)
            yield first.person_id, skill, told


def _query(person_id: int | None) -> Select[*tuple[Any, ...]]:
    query = (
        select(
            Attempt.person_id,
            Attempt.id,
            Attempt.kind,
            Attempt.unaided,
            Attempt.local_date,
            Attempt.sent_at,
            Answer.skill,
            Answer.verdict,
        )
        .join(Answer, Answer.attempt_id == Attempt.id)
        .where(Attempt.try_no == 1, Attempt.roof == "")
        .order_by(Attempt.person_id, Attempt.id, Answer.position)
    )
    return query if person_id is None else query.where(Attempt.person_id == person_id)


def _all_right(answers: Iterable[AnswerFacts], skill: str) -> bool:
    return all(answer.verdict != "wrong" for answer in answers if answer.skill == skill)


def _day(local_date: date, sent_at: datetime) -> date:
    """Return the date a try counts for: never later than any zone's date when it came in."""
    return min(local_date, days_on(sent_at.astimezone(UTC).date(), 1))
