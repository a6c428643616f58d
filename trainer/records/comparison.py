"""What was predicted before a season, against what came of it.

A prediction is for the day on which its sitting began: an answer that came more than a day later
is none of its answers.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta

from sqlalchemy import select

from .database import AnySession
from .people import Person
from .rules import SeasonRules
from .sitting_rows import REFRESHER, Sitting, SittingTurn

__all__ = ["Comparison", "Tenth", "compare", "predicted_turns"]

_SAME_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Tenth:
    """The answers whose prediction lay in one tenth: from `place` tenths to one more."""

    place: int
    answers: int
    expected: float
    """How many of them were predicted right."""
    right: int

    @property
    def gap(self) -> float:
        """How far right lies from predicted, as a share of the answers."""
        return abs(self.right - self.expected) / self.answers if self.answers else 0.0


@dataclass(frozen=True, slots=True)
class Comparison:
    """All tenths that have answers, and what they say together."""

    tenths: tuple[Tenth, ...]
    answers: int
    gap: float
    """How far the share right lies from the share predicted, tenth by tenth: their mean.

    Each counts by its answers. Tenths that are too high don't make up for others too low.
    """
    leans: str
    """"more" where more was right than predicted, "less" where less was, "both" where some
    tenths lie above and others below; empty without answers."""
    is_enough: bool
    """Whether there are as many answers as the rule asks for."""
    is_off: bool
    """Whether there are, and the gap is larger than the rule allows."""


def compare(turns: Iterable[tuple[float, bool]], rules: SeasonRules) -> Comparison:
    """Return the comparison of predictions, 0 to 1, with whether each answer was right."""
    tenths = _tenths(turns)
    answers = sum(each.answers for each in tenths)
    gap = sum(each.gap * each.answers for each in tenths) / answers if answers else 0.0
    apart = sum(each.right - each.expected for each in tenths) / answers if answers else 0.0
    enough = answers >= rules.compared_answers
    # Rounded, so that a gap of just as much as the rule allows isn't a hair more.
    is_off = enough and round(gap, 9) > rules.compared_gap
    return Comparison(tenths, answers, gap, _leaning(apart, gap), enough, is_off)


def predicted_turns(
    session: AnySession, season_id: int, crew_id: int | None = None
) -> list[tuple[float, bool]]:
    """Return prediction and outcome of each unaided first try in a season's refresher.

    Of one crew where it is named, else of all.
    """
    query = (
        select(SittingTurn.predicted, SittingTurn.right, SittingTurn.answered_at, Sitting.begun_at)
        .join(Sitting, Sitting.id == SittingTurn.sitting_id)
        .join(Person, Person.id == Sitting.person_id)
        .where(
            Sitting.kind == REFRESHER,
            Sitting.season_id == season_id,
            SittingTurn.unaided.is_(True),
            SittingTurn.predicted.is_not(None),
            SittingTurn.answered_at.is_not(None),
        )
    )
    query = query if crew_id is None else query.where(Person.crew_id == crew_id)
    found = session.execute(query)
    return [
        (share, bool(right))
        for share, right, answered_at, begun_at in found
        if share is not None and answered_at is not None and answered_at - begun_at <= _SAME_DAY
    ]


def _tenths(turns: Iterable[tuple[float, bool]]) -> tuple[Tenth, ...]:
    """Return the tenths that have answers, the lowest first."""
    answers, right, expected = [0] * 10, [0] * 10, [0.0] * 10
    for share, was_right in turns:
        kept = min(max(share, 0.0), 1.0)
        # Sure to be there belongs to the highest tenth.
        place = min(int(kept * 10), 9)
        answers[place] += 1
        right[place] += was_right
        expected[place] += kept
    return tuple(
        Tenth(place, answers[place], expected[place], right[place])
        for place in range(10)
        if answers[place]
    )


def _leaning(apart: float, gap: float) -> str:
    """Return which way predictions are off, from the signed gap over all and the tenths' own."""
    if not gap:
        return ""
    if abs(apart) < gap / 2:
        return "both"
    return "more" if apart > 0 else "less"
