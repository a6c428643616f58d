"""How much of a sum's working somebody is shown, from what their tries at its skill came to.

It is told from the tries themselves, each time a sum is shown, so that it can't drift from them;
there are few of one person and one skill.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from itertools import groupby

from sqlalchemy import select

from .database import AnySession
from .evidence import Answer, Attempt
from .rules import TeachingRules

__all__ = ["SkillTry", "stage_after", "stage_of"]


@dataclass(frozen=True, slots=True)
class SkillTry:
    """The first try at one sum, as far as it asked for one skill."""

    right: bool
    unaided: bool
    local_date: date


def stage_of(
    session: AnySession, person_id: int, skill: str, rules: TeachingRules, *, last: int
) -> int:
    """Return the stage of a person at a skill: 0 where they never tried it, `last` at the most."""
    return stage_after(_tries(session, person_id, skill), rules, last=last)


def stage_after(tries: Iterable[SkillTry], rules: TeachingRules, *, last: int) -> int:
    """Return the stage after these tries, oldest first.

    A right one leads one stage on; so many wrong in a row, as the rules say, lead one back. Some
    that were right unaided on the day of the first try lead to the last at once.
    """
    stage = wrong_running = right_alone = 0
    for each in (kept := list(tries)):
        if not each.right:
            wrong_running += 1
            if wrong_running == rules.fading_back_at_wrong:
                stage, wrong_running = max(0, stage - 1), 0
            continue
        stage, wrong_running = min(last, stage + 1), 0
        if each.unaided and each.local_date == kept[0].local_date:
            right_alone += 1
            stage = last if right_alone == rules.fading_skipped_at_right else stage
    return stage


def _tries(session: AnySession, person_id: int, skill: str) -> Iterator[SkillTry]:
    rows = session.execute(
        select(Attempt.id, Attempt.unaided, Attempt.local_date, Answer.verdict)
        .join(Answer, Answer.attempt_id == Attempt.id)
        .where(
            Attempt.person_id == person_id,
            # Practice on a roof, second tries and what has no working leave it as it is.
            Attempt.roof == "",
            Attempt.try_no == 1,
            Attempt.kind == "calculate",
            Answer.skill == skill,
        )
        .order_by(Attempt.sent_at, Attempt.id)
    )
    for _, lines in groupby(rows, key=lambda row: row.id):
        asked = list(lines)
        right = all(line.verdict != "wrong" for line in asked)
        yield SkillTry(right, asked[0].unaided, asked[0].local_date)
