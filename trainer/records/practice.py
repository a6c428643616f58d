"""How far somebody has come with the questions on one roof.

It is counted from the tries themselves, of which there are few on one roof; the running totals
of a question count its tries on all roofs together.
"""

from collections.abc import Collection
from dataclasses import dataclass

from sqlalchemy import case, func, select

from .database import AnySession
from .evidence import Attempt

__all__ = ["PracticeRow", "practice_rows"]


@dataclass(frozen=True, slots=True)
class PracticeRow:
    """One person at one question on one roof."""

    question_id: str
    tried: int
    """First tries."""
    finished: int
    """Runs that ended: the count of the next form."""
    ever_right: bool


def practice_rows(
    session: AnySession, person_id: int, roof: str, asked: Collection[str]
) -> dict[str, PracticeRow]:
    """Return what a person has done on a roof, by question; `roof` is the digest of its text.

    `asked` are the ids of the questions to look for; one that was never tried there is left out.
    """
    query = (
        select(
            Attempt.question_id,
            func.sum(case((Attempt.try_no == 1, 1), else_=0)),
            func.sum(case((Attempt.finished, 1), else_=0)),
            func.sum(case((Attempt.right, 1), else_=0)),
        )
        .where(
            Attempt.person_id == person_id,
            Attempt.question_id.in_(list(asked)),
            Attempt.roof == roof,
        )
        .group_by(Attempt.question_id)
    )
    return {
        question_id: PracticeRow(question_id, int(tried), int(finished), bool(right))
        for question_id, tried, finished, right in session.execute(query)
    }
