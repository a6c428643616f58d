"""Who is stuck on what: questions tried several times and never had right."""

from collections.abc import Collection
from dataclasses import dataclass

from sqlalchemy import select

from .database import AnySession
from .rules import StuckRules
from .tallies import QuestionProgress

__all__ = ["Stuck", "stuck_rows"]


@dataclass(frozen=True, slots=True)
class Stuck:
    """A question that somebody has tried several times and never had right."""

    question_id: str
    tried: int


def stuck_rows(
    session: AnySession,
    person_ids: Collection[int],
    asked: Collection[str],
    rules: StuckRules,
) -> dict[int, list[Stuck]]:
    """Return what these people are stuck on, by person, the most tried first.

    `asked` are the ids of today's questions; so many first tries as the rules say, none of them
    right, are stuck.
    """
    query = (
        select(QuestionProgress.person_id, QuestionProgress.question_id, QuestionProgress.tried)
        .where(
            QuestionProgress.person_id.in_(list(person_ids)),
            QuestionProgress.question_id.in_(list(asked)),
            QuestionProgress.tried >= rules.stuck_after,
            ~QuestionProgress.ever_right,
        )
        .order_by(QuestionProgress.tried.desc(), QuestionProgress.question_id)
    )
    stuck: dict[int, list[Stuck]] = {}
    for person_id, question_id, tried in session.execute(query):
        stuck.setdefault(person_id, []).append(Stuck(question_id, tried))
    return stuck
