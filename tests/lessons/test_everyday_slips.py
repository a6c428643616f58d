"""Slips that anybody makes, at questions that don't name them."""

from lessons_specimens import RESIN, question

from trainer.engine import Tolerance, tape_rolls, work
from trainer.lessons import Slip, Typed, mark_answers, variant
from trainer.lessons.asks import Ask
from trainer.lessons.everyday_slips import (
    NOT_ROUNDED,
    OTHER_UNIT,
    ROUNDED_DOWN,
    EverydaySlip,
    everyday_slips,
)


def named(text: str, unit: str | None) -> Slip | EverydaySlip | None:
    """Return the slip of what was typed for the tiny lesson's resin, asked in grams."""
    return mark_answers(variant(question(RESIN), "seed"), {"resin": Typed(text, unit)}, 1).slip


def right_grams() -> float:
    """What the tiny lesson's resin comes to."""
    return variant(question(RESIN), "seed").working().value * 1000


def test_a_figure_right_for_the_other_unit_is_named() -> None:
    """Worked out in kilograms, sent with grams picked: a slip, with its second try."""
    assert named(f"{right_grams() / 1000:.5f}", "g") == OTHER_UNIT
    assert named(f"{right_grams() / 1000:.5f}", "kg") is None


def test_a_unit_that_was_typed_was_meant() -> None:
    """Who writes the unit out hasn't overlooked it."""
    assert named(f"{right_grams() / 1000:.5f} g", "kg") != OTHER_UNIT


def test_rolls_are_rounded_up() -> None:
    """43 m from rolls of 10 m is 4.3, so 5: neither 4.3 nor 4."""
    line = work(tape_rolls((43,), 0, 10)).line("rolls")
    ask = Ask("rolls", "rolls", "rolls", Tolerance(), "0", "tape-rolls")
    assert list(everyday_slips(ask, line, 4.3, None)) == [NOT_ROUNDED]
    assert list(everyday_slips(ask, line, 4, None)) == [ROUNDED_DOWN]
    assert list(everyday_slips(ask, line, 6, None)) == []
