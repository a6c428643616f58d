"""Marking: right, right for the person's own figure, or wrong.

The bandage is 4 m of 75 mm strip: 0.3 m², 135 g of glass, 0.135 kg, 0.3375 kg of resin in the
laminate, 0.37125 kg with a tenth on top. Somebody who forgets the width has 1800 g of glass.
"""

import math
from collections.abc import Sequence
from typing import Any

import pytest
from engine_cast import doublings, side_of_square
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    Asked,
    Marked,
    Method,
    OutOfRange,
    Refused,
    Tolerance,
    bare_board,
    catalyst_by_mass,
    equal_batches,
    mark,
    resin_for_bandage,
    tape_rolls,
)

TWO_PERCENT = Tolerance(share=0.02)
GLASS = Asked("bandage.glass", TWO_PERCENT)
NET = Asked("net", TWO_PERCENT)
RESIN = Asked("resin", TWO_PERCENT)
SAFE_RESIN = Asked("resin", TWO_PERCENT, safe=(0.5, 1.5))


def marked_bandage(asked: Sequence[Asked], *figures: float) -> Marked:
    """Mark figures for 4 m of bandage, one for each asked line."""
    answers = {each.key: figure for each, figure in zip(asked, figures, strict=True)}
    return mark(resin_for_bandage, {"length_m": 4}, asked, answers)


def verdicts(marked: Marked) -> list[str]:
    """Return the verdicts in order."""
    return [line.verdict for line in marked.lines]


def test_right_answers_are_right() -> None:
    """135 g and 0.371 kg are right; nothing is wrong, and the whole working is there."""
    marked = marked_bandage([GLASS, RESIN], 135, 0.371)
    assert verdicts(marked) == ["right", "right"]
    assert marked.first_wrong is None
    assert not marked.started_afresh
    assert marked.working.value == pytest.approx(0.37125)


def test_a_wrong_answer_is_wrong() -> None:
    """Half a kilogram is wrong; what is right stands beside it, unrounded."""
    marked = marked_bandage([RESIN], 0.5)
    assert verdicts(marked) == ["wrong"]
    assert marked.first_wrong is marked.lines[0]
    assert marked.lines[0].figure == 0.5
    assert marked.lines[0].expected == marked.lines[0].right == pytest.approx(0.37125)


def test_a_mistake_is_charged_once() -> None:
    """1800 g is wrong, and 4.95 kg is what 1800 g come to: right for that figure."""
    marked = marked_bandage([GLASS, RESIN], 1800, 4.95)
    assert verdicts(marked) == ["wrong", "carried"]
    assert marked.lines[1].expected == pytest.approx(4.95)
    assert marked.lines[1].right == pytest.approx(0.37125)
    assert marked.first_wrong is marked.lines[0]


def test_the_right_figure_is_right_whatever_stands_above_it() -> None:
    """0.371 kg below a wrong 1800 g is still the right bucket."""
    assert verdicts(marked_bandage([GLASS, RESIN], 1800, 0.371)) == ["wrong", "right"]


def test_a_second_mistake_is_wrong_for_both_figures() -> None:
    """2 kg follows from neither 1800 g nor 135 g."""
    assert verdicts(marked_bandage([GLASS, RESIN], 1800, 2)) == ["wrong", "wrong"]


@pytest.mark.parametrize(
    ("glass", "resin", "verdict"),
    [
        (1800, 4.95, "wrong"),  # over 13 times the right bucket
        (200, 0.55, "carried"),  # 1.48 times
        (205, 0.56375, "wrong"),  # 1.52 times
        (68, 0.187, "carried"),  # 0.504 times
        (66, 0.1815, "wrong"),  # 0.489 times
    ],
)
def test_a_carried_figure_outside_the_safe_band_is_wrong(
    glass: float, resin: float, verdict: str
) -> None:
    """Right for one's own figure is wrong where it could hurt: half to one and a half is safe."""
    assert verdicts(marked_bandage([GLASS, SAFE_RESIN], glass, resin)) == ["wrong", verdict]


def test_the_safe_band_includes_its_ends() -> None:
    """Exactly half and exactly one and a half times the right figure are still safe."""
    asked = Asked("mass", Tolerance(), safe=(0.5, 1.5))
    assert [asked.judge(each, each, 10) for each in (4.9, 5, 15, 15.1)] == [
        "wrong",
        "carried",
        "carried",
        "wrong",
    ]


def test_rounding_is_not_carried() -> None:
    """40 g is a rounded 39.6 g, so the line below is judged by 39.6 g."""
    asked = (Asked("mass", TWO_PERCENT), Asked("volume", Tolerance(share=0.005)))
    givens = {"resin_kg": 1.32, "percent": 3}
    marked = mark(catalyst_by_mass, givens, asked, {"mass": 40, "volume": 34.19})
    assert verdicts(marked) == ["right", "wrong"]
    assert marked.lines[1].expected == pytest.approx(39.6 / 1.17)


def test_rounding_of_a_carried_figure_is_not_carried_either() -> None:
    """1800 g make 4.5 kg; who writes 4.45 rounded, and the resin is judged by 4.5."""
    marked = marked_bandage([GLASS, NET, RESIN], 1800, 4.45, 4.95)
    assert verdicts(marked) == ["wrong", "carried", "carried"]
    assert marked.lines[2].expected == pytest.approx(4.95)


def test_rounding_back_on_the_right_way_is_not_carried() -> None:
    """Below a wrong 1800 g, 0.34 kg is the right 0.3375 kg rounded, and goes on as that."""
    marked = marked_bandage([GLASS, NET, RESIN], 1800, 0.34, 0.371)
    assert verdicts(marked) == ["wrong", "right", "right"]
    assert marked.lines[2].expected == pytest.approx(0.37125)


def test_lines_that_were_not_asked_follow_the_carried_figure() -> None:
    """The line between two asked ones is worked from the person's own figure."""
    marked = marked_bandage([GLASS, RESIN], 270, 0.7425)
    assert verdicts(marked) == ["wrong", "carried"]
    assert marked.working.figures["glass_kg"] == pytest.approx(0.135)


def check_afresh(
    method: Method[...], givens: dict[str, Any], answers: dict[str, float], right: float
) -> None:
    """The first line is wrong, and the last is judged by the right figures."""
    asked = [Asked(key, TWO_PERCENT) for key in answers]
    marked = mark(method, givens, asked, answers)
    assert marked.started_afresh
    assert verdicts(marked) == ["wrong", "right"]
    assert marked.lines[1].expected == pytest.approx(right)


def test_a_carried_nothing_starts_afresh() -> None:
    """No glass is no mass to work with: the resin is judged by 135 g."""
    answers = {"bandage.glass": 0.0, "resin": 0.37125}
    check_afresh(resin_for_bandage, {"length_m": 4}, answers, 0.37125)


def test_a_division_by_a_carried_nothing_starts_afresh() -> None:
    """2.5 kg shared into no batches can't be worked; into three they are 0.8333 kg."""
    check_afresh(equal_batches, {"resin_kg": 2.5}, {"batches": 0.0, "batch": 0.8333}, 2.5 / 3)


def test_a_carried_figure_that_is_refused_starts_afresh() -> None:
    """2 mm of bare board can't bear a tape 5 mm off centre; 12.5 mm leave 7.5."""
    check_afresh(bare_board, {"off_centre_mm": 5}, {"side": 2.0, "narrow": 7.5}, 7.5)


def test_a_carried_figure_without_a_logarithm_starts_afresh() -> None:
    """Nothing has no logarithm; 40 g from 10 g are two doublings."""
    givens = {"first_g": 10, "last_g": 40}
    check_afresh(doublings, givens, {"growth": 0.0, "doublings": 2.0}, 2)


def test_a_carried_figure_without_a_root_starts_afresh() -> None:
    """An area below zero has no side; 9 m² less 5 m² leave a side of 2 m."""
    givens = {"area_m2": 9, "hole_m2": 5}
    check_afresh(side_of_square, givens, {"left": -4.0, "side": 2.0}, 2)


@pytest.mark.parametrize("figure", [math.nan, math.inf, -math.inf, 1e308])
def test_what_is_no_figure_is_wrong_and_never_carried(figure: float) -> None:
    """Marking survives what a reader should never let through."""
    marked = marked_bandage([GLASS, RESIN], figure, 0.371)
    assert verdicts(marked) == ["wrong", "right"]


def test_lines_above_the_break_keep_the_persons_own_figure() -> None:
    """Afresh means from the line that couldn't be worked, not from the first."""
    asked = [GLASS, NET, Asked("resin", Tolerance(share=0.02))]
    marked = marked_bandage(asked, 1800, math.nan, 0.371)
    assert marked.started_afresh
    assert marked.lines[1].expected == pytest.approx(4.5)
    assert marked.lines[2].expected == pytest.approx(0.37125)


def test_a_count_is_marked_exactly() -> None:
    """31 m on rolls of 10 m are four rolls: neither three nor three and a bit."""
    asked = [Asked("rolls", Tolerance())]
    givens = {"joints_m": (15.0, 16.0), "meeting_ends": 0, "roll_m": 10}
    for rolls, verdict in ((4, "right"), (3, "wrong"), (3.1, "wrong"), (5, "wrong")):
        assert verdicts(mark(tape_rolls, givens, asked, {"rolls": rolls})) == [verdict]


def test_every_asked_line_needs_an_answer() -> None:
    """A missing answer is the caller's mistake, not the trainee's."""
    with pytest.raises(KeyError):
        mark(resin_for_bandage, {"length_m": 4}, [RESIN], {})


def test_givens_out_of_range_are_not_marked() -> None:
    """A question whose own figures can't be accepted says so."""
    with pytest.raises(OutOfRange):
        mark(resin_for_bandage, {"length_m": 501}, [RESIN], {"resin": 1})
    with pytest.raises(Refused):
        mark(bare_board, {"tape_mm": 100}, [Asked("narrow", TWO_PERCENT)], {"narrow": 1})


@given(st.floats(0.05, 500), st.floats(0.05, 20))
def test_working_on_with_a_wrong_figure_is_never_charged_twice(
    length_m: float, times: float
) -> None:
    """However wrong the glass is, resin worked rightly from it is right or carried."""
    right = 0.075 * 450 * length_m
    answers = {"bandage.glass": right * times, "resin": right * times / 1000 * 2.5 * 1.1}
    marked = mark(resin_for_bandage, {"length_m": length_m}, [GLASS, RESIN], answers)
    assert marked.lines[1].verdict in ("right", "carried")
