"""When a Cured skill comes back: the memory model, and all that is known of it.

Its codes stay here. Two outcomes are told to it, wrong and right, one a skill a day, stamped noon
UTC of the local date. It hears them from the first day on, so that it has something to go by when
the skill is Cured; until then the date is the running rule's.
"""

from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import TYPE_CHECKING

from .calendar_days import days_between, noon
from .rules import SkillRules

if TYPE_CHECKING:
    from fsrs import Card as TheirCard
    from fsrs import Scheduler

__all__ = ["MODEL", "Card", "card_after", "recall"]

MODEL = "FSRS-6"
"""Stands beside each card: figures of another model mean something else."""


@dataclass(frozen=True, slots=True)
class Card:
    """What the model keeps of one skill of one person."""

    stability: float
    """Days until recall has fallen to nine in ten."""
    difficulty: float
    """From 1, easy, to 10."""
    heard: date
    """The day of the last outcome."""
    due: date


def card_after(card: Card | None, day: date, rules: SkillRules, *, right: bool) -> Card:
    """Return the card after one outcome on a day; None stands for a skill never asked.

    A day before the last outcome counts as the day of it: dates never run backwards.
    """
    # Imported at the first answer, since it takes a good part of what a start may take.
    from fsrs import Rating

    day = max(day, card.heard) if card else day
    rating = Rating.Good if right else Rating.Again
    new, _ = _scheduler(rules).review_card(_as_theirs(card), rating, noon(day))
    stability, difficulty = (float(each or 0.0) for each in (new.stability, new.difficulty))
    return Card(stability, difficulty, day, new.due.date())


def recall(card: Card | None, day: date, rules: SkillRules) -> float:
    """Return how likely a skill is there on a day, from 0 to 1: to sort and band by, never to show.

    0 when it was never asked; 1 on days before the last outcome.
    """
    if card is None:
        return 0.0
    if days_between(card.heard, day) < 0:
        return 1.0
    return _scheduler(rules).get_card_retrievability(_as_theirs(card), noon(day))


def _as_theirs(card: Card | None) -> "TheirCard":
    import fsrs

    if card is None:
        return fsrs.Card(card_id=0)
    return fsrs.Card(
        card_id=0,
        state=fsrs.State.Review,
        stability=card.stability,
        difficulty=card.difficulty,
        due=noon(card.due),
        last_review=noon(card.heard),
    )


def _scheduler(rules: SkillRules) -> "Scheduler":
    return _made(rules.recall_wanted, rules.longest_gap_days)


@lru_cache(maxsize=4)
def _made(recall_wanted: float, longest_gap_days: int) -> "Scheduler":
    from fsrs import Scheduler

    return Scheduler(
        desired_retention=recall_wanted,
        learning_steps=(),
        relearning_steps=(),
        maximum_interval=longest_gap_days,
        enable_fuzzing=False,
    )
