"""Histories of one skill, short enough to read: the day, then a letter for each try.

`r` right and `w` wrong, unaided; `R` and `W` the same with help; `n` right and `x` wrong, unaided
and without numbers; `N` and `X` the same with help.
"""

from datetime import date, timedelta

from records_cast import RULES

from trainer.records.running import NEVER_TRIED, Progress, after
from trainer.records.skill_tries import SkillTold
from trainer.records.standing import standing

#: A Monday: the day on which it gels, where a history says nothing else.
DAY_0 = date(2026, 3, 9)
#: Gelled on day 0, then right twice on each day when it is due: all but the last try.
NEARLY = ((0, "rrr"), (1, "rr"), (3, "rr"), (7, "rr"))
CURED = (*NEARLY, (14, "r"))


def on(day: int) -> date:
    """Return the date so many days after day 0."""
    return DAY_0 + timedelta(days=day)


def tries(day: int, letters: str) -> list[SkillTold]:
    """Return the tries of one day."""
    return [
        SkillTold(
            on(day),
            right=letter in "rRnN",
            unaided=letter.islower(),
            numberless=letter in "nxNX",
        )
        for letter in letters
    ]


def went(*days: tuple[int, str], since: Progress = NEVER_TRIED) -> Progress:
    """Return what somebody has come to after these days."""
    return after(since, [told for each in days for told in tries(*each)], RULES)


def state(progress: Progress, day: int) -> str:
    """Return the state on a day."""
    return standing(progress, on(day), RULES).state


def due(progress: Progress) -> int | None:
    """Return the next date, in days after day 0."""
    return None if progress.due is None else (progress.due - DAY_0).days
