"""What was predicted before a season, against what came of it."""

from collections.abc import Iterable
from dataclasses import dataclass

from sqlalchemy import select

from .database import AnySession
from .people import Person
from .rules import SeasonRules
from .sitting_rows import REFRESHER, Sitting, SittingTurn

__all__ = ["Comparison", "Tenth", "compare", "predicted_turns"]


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
    """How far the share right lies from the share predicted, over all answers."""
    leans: str
    """"more" where more was right than predicted, "less" where less was; empty without answers."""
    is_enough: bool
    """Whether there are as many answers as the rule asks for."""
    is_off: bool
    """Whether there are, and the gap is larger than the rule allows."""


def compare(turns: Iterable[tuple[float, bool]], rules: SeasonRules) -> Comparison:
    """Return the comparison of predictions, 0 to 1, with whether each answer was right."""
    kept = [(min(max(share, 0.0), 1.0), right) for share, right in turns]
    tenths = [_tenth(place, kept) for place in range(10)]
    answers = len(kept)
    apart = sum(right for _, right in kept) - sum(share for share, _ in kept)
    gap = abs(apart) / answers if answers else 0.0
    enough = answers >= rules.compared_answers
    return Comparison(
        tuple(each for each in tenths if each.answers),
        answers,
        gap,
        ("more" if apart > 0 else "less") if answers else "",
        enough,
        enough and gap > rules.compared_gap,
    )


def predicted_turns(
    session: AnySession, season_id: int, crew_id: int | None = None
) -> list[tuple[float, bool]]:
    """Return prediction and outcome of each unaided first try in a season's refresher.

    Of one crew where it is named, else of all.
    """
    query = (
        select(SittingTurn.predicted, SittingTurn.right)
        .join(Sitting, Sitting.id == SittingTurn.sitting_id)
        .join(Person, Person.id == Sitting.person_id)
        .where(
            Sitting.kind == REFRESHER,
            Sitting.season_id == season_id,
            SittingTurn.unaided.is_(True),
            SittingTurn.predicted.is_not(None),
        )
    )
    query = query if crew_id is None else query.where(Person.crew_id == crew_id)
    found = session.execute(query)
    return [(share, bool(right)) for share, right in found if share is not None]


def _tenth(place: int, turns: list[tuple[float, bool]]) -> Tenth:
    # Sure to be there belongs to the highest tenth.
    inside = [(share, right) for share, right in turns if min(int(share * 10), 9) == place]
    expected = sum(share for share, _ in inside)
    return Tenth(place, len(inside), expected, sum(right for _, right in inside))
