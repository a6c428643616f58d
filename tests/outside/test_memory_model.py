"""The dates of Cured skills are those of the published memory model.

Source: FSRS-6 as the open-source library `fsrs` documents it (formulas and the 21 default
weights; the library is the reference implementation, the formulas here are written out anew).
A lapse is "wrong" (grade 1), a success is "right" (grade 3); days are whole.
"""

import math
from datetime import date, timedelta
from pathlib import Path

import pytest

from trainer.lessons.library import read_library
from trainer.records.reviews import card_after, recall
from trainer.web.thresholds import thresholds_of

RULES = thresholds_of(read_library(Path(__file__).parents[2] / "content")).skills
W = (
    *(0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796),
    *(1.4835, 0.0614, 0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542),
)
WRONG, RIGHT = 1, 3
HISTORY = ((0, RIGHT), (1, RIGHT), (3, RIGHT), (7, WRONG), (9, RIGHT), (30, RIGHT), (100, WRONG))
"""Days from the first, and what came of each."""


def remembered(days: float, stability: float) -> float:
    """R = (1 + factor · t / S) ** −w20, so that R is 0.9 after S days."""
    factor = 0.9 ** (-1 / W[20]) - 1
    return (1 + factor * days / stability) ** -W[20]


def first_difficulty(grade: int) -> float:
    """D0 = w4 − e^(w5 · (grade − 1)) + 1, unclamped."""
    return W[4] - math.exp(W[5] * (grade - 1)) + 1


def clamped(difficulty: float) -> float:
    """Difficulty lies from 1 to 10."""
    return min(max(difficulty, 1.0), 10.0)


def next_difficulty(difficulty: float, grade: int) -> float:
    """Damped by how far it is from 10, then drawn a little towards an easy start."""
    changed = difficulty + (10 - difficulty) * (-W[6] * (grade - 3)) / 9
    return clamped(W[7] * first_difficulty(4) + (1 - W[7]) * changed)


def next_stability(difficulty: float, stability: float, share: float, grade: int) -> float:
    """Growth after a success; what is left after a lapse, never more than e^(w17 · w18) less."""
    if grade == RIGHT:
        growth = math.exp(W[8]) * (11 - difficulty) * stability ** -W[9]
        return stability * (1 + growth * (math.exp((1 - share) * W[10]) - 1))
    left = W[11] * difficulty ** -W[12] * ((stability + 1) ** W[13] - 1)
    left *= math.exp((1 - share) * W[14])
    return min(left, stability / math.exp(W[17] * W[18]))


def by_the_formulas() -> list[tuple[float, float]]:
    """Return stability and difficulty after each outcome of the history."""
    day, grade = HISTORY[0]
    stability, difficulty = W[grade - 1], clamped(first_difficulty(grade))
    kept = [(stability, difficulty)]
    for later, grade in HISTORY[1:]:
        share = remembered(later - day, stability)
        stability = next_stability(difficulty, stability, share, grade)
        difficulty, day = next_difficulty(difficulty, grade), later
        kept.append((stability, difficulty))
    return kept


def test_a_history_gets_the_published_model_s_numbers() -> None:
    """Each stability and difficulty on the way, to 1e-6."""
    card, first = None, date(2026, 3, 9)
    for (days, grade), (stability, difficulty) in zip(HISTORY, by_the_formulas(), strict=True):
        card = card_after(card, first + timedelta(days=days), RULES, right=grade == RIGHT)
        assert card.stability == pytest.approx(stability, abs=1e-6)
        assert card.difficulty == pytest.approx(difficulty, abs=1e-6)


@pytest.mark.parametrize("days", [0, 1, 7, 30, 120, 365])
def test_recall_fades_by_the_published_curve(days: int) -> None:
    """To 1e-6, from the day of the last outcome."""
    card = card_after(None, date(2026, 3, 9), RULES, right=True)
    expected = remembered(days, card.stability)
    told = recall(card, date(2026, 3, 9) + timedelta(days=days), RULES)
    assert told == pytest.approx(expected, abs=1e-6)


def test_the_next_date_is_when_nine_in_ten_remember() -> None:
    """The stability in whole days, since recall wanted is 0.9."""
    card = card_after(None, date(2026, 3, 9), RULES, right=True)
    card = card_after(card, date(2026, 3, 12), RULES, right=True)
    assert (card.due - card.heard).days == round(card.stability)
