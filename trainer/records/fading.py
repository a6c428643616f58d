"""How much of a sum's working somebody is shown, moved on by each first try at its skill.

Only sums move it, with help or without: what is picked has no working that could be shown.
"""

from dataclasses import dataclass
from datetime import date

from .rules import SkillRules

__all__ = ["LAST_STAGE", "NOT_MET", "Fading", "faded"]

LAST_STAGE = 3
"""All of it is theirs; 0 shows all of it, on other numbers."""


@dataclass(frozen=True, slots=True)
class Fading:
    """Where somebody stands with the working of a skill's sums."""

    stage: int = 0
    """From 0, all of it is shown, to LAST_STAGE."""
    wrong_running: int = 0
    right_alone: int = 0
    """Rights without help on the first day."""
    met_on: date | None = None
    """The day of the first sum."""


NOT_MET = Fading()


def faded(before: Fading, day: date, rules: SkillRules, *, right: bool, unaided: bool) -> Fading:
    """Return the fading after one sum.

    A right one leads one stage on; so many wrong in a row, as the rules say, lead one back. Some
    that were right unaided on the day of the first lead to the last at once.
    """
    met_on = before.met_on or day
    if not right:
        running, back = before.wrong_running + 1, rules.fading_back_at_wrong
        stage = max(0, before.stage - 1) if running == back else before.stage
        return Fading(stage, 0 if running == back else running, before.right_alone, met_on)
    counts = unaided and day == met_on
    alone = before.right_alone + counts
    skips = counts and alone == rules.fading_skipped_at_right
    stage = LAST_STAGE if skips else min(LAST_STAGE, before.stage + 1)
    return Fading(stage, 0, alone, met_on)
