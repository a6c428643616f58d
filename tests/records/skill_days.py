"""Tries at one skill, told by the day, and days counted from one Monday."""

from collections.abc import Sequence
from datetime import date, timedelta

from records_cast import RULES

from trainer.records.running import NEVER_TRIED, Progress, after
from trainer.records.skill_tries import SkillTold
from trainer.records.standing import Standing, standing

MONDAY = date(2026, 3, 2)
"""The day of the first meeting."""


def on(days: int) -> date:
    """Return the day so many days after the Monday."""
    return MONDAY + timedelta(days=days)


def told(days: int, marks: str, **more: bool) -> list[SkillTold]:
    """Return tries of one day: "r" is right, "w" is wrong, each unaided and worked out.

    "R" and "W" are the same with help; "p" is picked right, without numbers, "q" picked wrong.
    """
    return [
        SkillTold(
            on(days), mark in "rRp", unaided=mark not in "RW", numberless=mark in "pq", **more
        )
        for mark in marks
    ]


def tried(*days: tuple[int, str], before: Progress = NEVER_TRIED) -> Progress:
    """Return the progress after the tries of these days, in order."""
    tries: Sequence[SkillTold] = [each for day, marks in days for each in told(day, marks)]
    return after(before, tries, RULES)


def stood(progress: Progress, days: int) -> Standing:
    """Return where a skill stands so many days after the Monday."""
    return standing(progress, on(days), RULES)


GELLED = tried((0, "rrr"))
"""Three rights on the Monday: due on Tuesday."""

CURED = tried((0, "rrr"), (1, "rr"), (3, "rr"), (7, "rr"), (14, "r"))
"""All right and practised when due."""
