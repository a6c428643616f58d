"""How far somebody is with a skill, moved on by each try. Nothing here knows a database.

The same step keeps a skill up to date in the commit of a try and folds a whole history, so that
the two can't differ. What it decides:

- Only unaided tries say anything. Others make a skill Started, and take a place on their day:
  the working that was shown after them helps whatever follows.
- Until three rights in a row the skill is at its first meeting, which may take several days.
  Nothing counts for the run before it has gelled, nor on that same day.
- On a day when the skill was due as the day began, its first two tries count, no others; on other
  days none. A right counts once a day for Set. The gap to the next date grows with each counted
  day, right or wrong, and starts from that day.
- A try without numbers counts like another. Those that a run has no room for, and rights without
  numbers once the skill is Cured, are left out altogether: they take no place either, and the
  review date doesn't hear of them.
- A run that fails leaves the skill Gelled, never less, and closes its day.
- Once Cured, any wrong try makes it Due again, whatever the day and however many came before. A
  right helps when it is the first unaided try of its day, and so a right on the day of a wrong one
  never does. A wrong one that wasn't the first of its day brings the next date to the next day.
- A date has passed when its day is over: on the day itself a skill is due and still Cured.
- A try dated before the last one counts on the last one's day. Where it lies further back than a
  phone's date is believed, a clock was wrong: the dates that came of it move back with it.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from functools import reduce

from .calendar_days import days_between, days_on, kept_on_calendar
from .fading import NOT_MET, Fading, faded
from .reviews import Card, card_after
from .rules import SkillRules
from .skill_tries import SkillTold

__all__ = ["NEVER_TRIED", "REACHED", "Progress", "after", "on_calendar"]

REACHED = ("started", "gelled", "set", "cured")
"""What a skill may have come to, whatever the day; without a try it has come to nothing yet."""
_STARTED, _GELLED, _SET, _CURED = REACHED


@dataclass(frozen=True, kw_only=True, slots=True)
class Progress:
    """One person at one skill."""

    reached: str = ""
    """One of REACHED; empty before the first try. "cured" is kept when the skill is Due again."""
    fading: Fading = NOT_MET
    """How much of the working of its sums is shown."""
    in_a_row: int = 0
    """Unaided rights running, at the first meeting."""
    runs: int = 0
    """Runs that were begun: one when it gelled, another for each that failed."""
    counted: int = 0
    """Counted tries of this run; those wrong and those without numbers are among them."""
    wrong: int = 0
    numberless: int = 0
    counted_days: int = 0
    right_days: int = 0
    owed: int = 0
    """Days with a right that a Cured skill lacks; above 0 it is Due again."""
    slipped: bool = False
    """Whether it lacks them because a try since was wrong."""
    day: date | None = None
    """The day of the last try, and what has happened on it."""
    day_tries: int = 0
    day_open: bool = False
    """Whether tries of that day can count: the skill was due as it began."""
    day_counted: bool = False
    day_right: bool = False
    due: date | None = None
    """The next date; None until it has gelled."""
    card: Card | None = None


NEVER_TRIED = Progress()


def after(progress: Progress, tries: Iterable[SkillTold], rules: SkillRules) -> Progress:
    """Return the progress after these tries, in the order in which they came in."""
    return reduce(lambda before, told: _after_one(before, told, rules), tries, progress)


def on_calendar(progress: Progress, day: date, rules: SkillRules) -> Progress:
    """Return the progress with its dates put back where `day` shows that a clock was wrong."""
    if progress.day is None:
        return progress
    back = days_between(day, progress.day)
    if back <= rules.believed_late_days:
        return progress
    card, due = progress.card, progress.due
    # What was heard before the clock went wrong has the right dates: every date follows a hearing.
    if card is not None and card.heard > day:
        heard, due = days_on(card.heard, -back), due and days_on(due, -back)
        card = replace(card, heard=heard, due=days_on(card.due, -back))
    return replace(progress, day=days_on(progress.day, -back), due=due, card=card)


def _after_one(before: Progress, told: SkillTold, rules: SkillRules) -> Progress:
    day = kept_on_calendar(told.day)
    progress = on_calendar(before, day, rules)
    day = max(day, progress.day or day)
    if day != progress.day:
        progress = _on_new_day(progress, day, rules)
    told = told if told.day == day else replace(told, day=day)
    if not told.numberless:
        now = faded(progress.fading, day, rules, right=told.right, unaided=told.unaided)
        progress = replace(progress, fading=now)
    if told.numberless and _leaves_out(progress, told, rules):
        return progress
    place = progress.day_tries
    reached = progress.reached or _STARTED
    progress = replace(progress, reached=reached, day_tries=place + 1)
    return _after_unaided(progress, told, place, rules) if told.unaided else progress


def _after_unaided(progress: Progress, told: SkillTold, place: int, rules: SkillRules) -> Progress:
    """Return the progress after an unaided try, before which the day had seen `place` others."""
    card, heard = progress.card, progress.card is None or progress.card.heard < told.day
    if card is None or heard:
        card = card_after(card, told.day, rules, right=told.right)
        progress = replace(progress, card=card)
    if progress.reached == _STARTED:
        return _first_meeting(progress, told, rules)
    if progress.reached == _CURED:
        return _since_cured(progress, told, card, rules, heard=heard)
    if not progress.day_open or place >= rules.counted_tries_a_day:
        return progress
    return _looked_at(_counted(progress, told, rules), told, card, rules)


def _on_new_day(progress: Progress, day: date, rules: SkillRules) -> Progress:
    """Return the progress as the first try of a later day finds it."""
    due = progress.due
    if progress.reached == _CURED and not progress.owed and due is not None and day > due:
        progress = replace(progress, owed=rules.due_again_rights)
    return replace(
        progress,
        day=day,
        day_tries=0,
        day_open=due is not None and day >= due,
        day_counted=False,
        day_right=False,
    )


def _leaves_out(progress: Progress, told: SkillTold, rules: SkillRules) -> bool:
    """Whether a try without numbers says nothing."""
    if progress.reached == _CURED:
        return told.right
    return progress.runs > 0 and progress.numberless >= rules.numberless_tries


def _first_meeting(progress: Progress, told: SkillTold, rules: SkillRules) -> Progress:
    in_a_row = progress.in_a_row + 1 if told.right else 0
    progress = replace(progress, in_a_row=in_a_row)
    if in_a_row < rules.gelled_after:
        return progress
    return _new_run(progress, days_on(told.day, rules.first_gaps_days[0]))


def _new_run(progress: Progress, due: date) -> Progress:
    """Return the progress at the beginning of a run, with nothing more to count today."""
    return replace(
        progress,
        reached=_GELLED,
        runs=progress.runs + 1,
        counted=0,
        wrong=0,
        numberless=0,
        counted_days=0,
        right_days=0,
        day_open=False,
        due=due,
    )


def _counted(progress: Progress, told: SkillTold, rules: SkillRules) -> Progress:
    """Return the run one counted try on, with the date that follows from its day."""
    counted_days = progress.counted_days + (not progress.day_counted)
    right_days = progress.right_days + (told.right and not progress.day_right)
    gaps = rules.first_gaps_days
    return replace(
        progress,
        reached=_SET if right_days >= rules.set_days else _GELLED,
        counted=progress.counted + 1,
        wrong=progress.wrong + (not told.right),
        numberless=progress.numberless + told.numberless,
        counted_days=counted_days,
        right_days=right_days,
        day_counted=True,
        day_right=progress.day_right or told.right,
        due=days_on(told.day, gaps[min(counted_days, len(gaps) - 1)]),
    )


def _looked_at(progress: Progress, told: SkillTold, card: Card, rules: SkillRules) -> Progress:
    """Return the progress after a look at the run: Cured, at its beginning again, or as it is."""
    looks = dict(zip(rules.cured_looks, rules.cured_wrongs, strict=True))
    if progress.wrong <= looks.get(progress.counted, -1):
        return replace(progress, reached=_CURED, due=card.due)
    if progress.wrong >= rules.run_ends_at_wrong or progress.counted >= rules.cured_looks[-1]:
        return _new_run(progress, days_on(told.day, rules.new_run_due_days))
    return progress


def _since_cured(
    progress: Progress, told: SkillTold, card: Card, rules: SkillRules, *, heard: bool
) -> Progress:
    """Return a Cured skill's progress; `heard` is whether the try was the day's outcome."""
    due = card.due if heard or progress.due is None else progress.due
    if not told.right:
        soon = days_on(told.day, rules.new_run_due_days)
        owed, due = rules.due_again_right_days, due if heard else min(due, soon)
        return replace(progress, owed=owed, slipped=True, due=due)
    owed = max(0, progress.owed - heard)
    return replace(progress, owed=owed, slipped=progress.slipped and owed > 0, due=due)
