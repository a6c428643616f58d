"""The state of a skill on a day, in the words that people read, with its reason and next date."""

from dataclasses import dataclass
from datetime import date

from .rules import SkillRules
from .running import Progress, on_calendar

__all__ = [
    "CURED",
    "DUE_AGAIN",
    "GELLED",
    "NOT_STARTED",
    "SET",
    "STARTED",
    "STATES",
    "Standing",
    "standing",
    "tries_that_count",
]

NOT_STARTED = "Not started"
STARTED = "Started"
GELLED = "Gelled"
SET = "Set"
CURED = "Cured"
DUE_AGAIN = "Due again"
STATES = (NOT_STARTED, STARTED, GELLED, SET, CURED, DUE_AGAIN)
"""In the order in which somebody goes through them."""

_OF_REACHED = {"": NOT_STARTED, "started": STARTED, "gelled": GELLED, "set": SET, "cured": CURED}


@dataclass(frozen=True, slots=True)
class Standing:
    """Where somebody stands with a skill on one day."""

    state: str
    """One of STATES."""
    reason: str
    """One sentence, without figures of the run."""
    next_date: date | None
    """When it is asked again; None while it hasn't gelled, when any day will do."""
    is_due: bool
    """Whether that date has come, today or before."""
    is_overdue: bool
    """Whether it came on an earlier day."""
    counted: int
    """Where the run stands, to sort by and never to show: tries that have counted in it."""


def standing(progress: Progress, today: date, rules: SkillRules) -> Standing:
    """Return the state on that day: the first row that applies, from Due again to Not started.

    A day before the last try changes nothing: the state is as that try left it.
    """
    progress = on_calendar(progress, today, rules)
    due = progress.due
    state = DUE_AGAIN if _is_due_again(progress, today) else _OF_REACHED[progress.reached]
    return Standing(
        state,
        _reason(state, progress),
        due,
        due is not None and today >= due,
        due is not None and today > due,
        progress.counted,
    )


def tries_that_count(progress: Progress, today: date, rules: SkillRules) -> int:
    """Return how many tries of this day would still be looked at, as things stand.

    Before it has gelled as many as are lacking in the row; on a day when it is due what is left of
    the day's first tries; else 0. A Cured skill is asked once when it is due or Due again.
    """
    progress = on_calendar(progress, today, rules)
    if progress.reached in ("", "started"):
        return rules.gelled_after - progress.in_a_row
    new_day = progress.day is None or today > progress.day
    is_due = progress.due is not None and today >= progress.due
    if progress.reached == "cured":
        heard = progress.card is not None and today <= progress.card.heard
        return int((is_due or progress.owed > 0) and not heard)
    if new_day:
        return rules.counted_tries_a_day if is_due else 0
    return max(0, rules.counted_tries_a_day - progress.day_tries) if progress.day_open else 0


def _is_due_again(progress: Progress, today: date) -> bool:
    if progress.reached != "cured":
        return False
    return progress.owed > 0 or (progress.due is not None and today > progress.due)


def _reason(state: str, progress: Progress) -> str:
    if state == NOT_STARTED:
        return "No question on it has been answered yet."
    if state == STARTED:
        return _reason_started(progress)
    if state == GELLED:
        return _reason_gelled(progress)
    if state == SET:
        return _reason_set(progress)
    if state == CURED:
        return "It was right on many days, with time in between, and holds until its date is over."
    return _reason_due_again(progress)


def _reason_started(progress: Progress) -> str:
    if progress.in_a_row:
        return "It was right without help, but not yet often enough in a row."
    return "It was tried, and is still to be right without help, several times in a row."


def _reason_gelled(progress: Progress) -> str:
    if progress.runs > 1 and not progress.counted:
        return "There were too many wrong answers on later days, so the later days begin afresh."
    if not progress.counted:
        return "It was right several times in a row; later days will show whether it stays."
    if not progress.right_days and progress.runs > 1:
        return "The later days began afresh, and it has not been right on one of the new ones yet."
    if not progress.right_days:
        return "It was right several times in a row, but has not been right on a later day yet."
    return "It was right on a later day, and more later days are to come."


def _reason_set(progress: Progress) -> str:
    if progress.wrong:
        return (
            "It was right on several later days, but wrong answers among them make it take longer."
        )
    return "It was right on several later days, and a few more right answers will cure it."


def _reason_due_again(progress: Progress) -> str:
    if not progress.slipped:
        return "It was Cured and its date has passed; the next right answer brings it back."
    if progress.owed == 1:
        return "It was wrong after it had Cured; a right answer on one more day brings it back."
    return "It was wrong after it had Cured; right answers on other days bring it back."
