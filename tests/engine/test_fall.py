"""The fall of a roof: drop, ratio, and drop in a metre."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, drop_per_metre, fall_drop, fall_ratio, line_keys

RUNS = st.floats(0.1, 100)
RATIOS = st.floats(10, 200)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(fall_drop) == ("drop",)
    assert line_keys(fall_ratio) == ("ratio",)
    assert line_keys(drop_per_metre) == ("drop",)


def test_one_in_forty_is_the_default() -> None:
    """4 m at 1:40 drop 100 mm, by hand."""
    assert answer(fall_drop(4)) == pytest.approx(100)
    assert answer(fall_ratio(4, 100)) == pytest.approx(40)


@given(RUNS, RATIOS)
def test_there_and_back(run_m: float, ratio: float) -> None:
    """The drop of a ratio has that ratio."""
    drop_mm = answer(fall_drop(run_m, ratio))
    assert answer(fall_ratio.inside(run_m, drop_mm)) == pytest.approx(ratio)


@given(RUNS, RATIOS)
def test_a_run_drops_so_much_in_each_of_its_metres(run_m: float, ratio: float) -> None:
    """Twice the run, twice the drop."""
    each = answer(drop_per_metre(ratio))
    assert answer(fall_drop(run_m, ratio)) == pytest.approx(run_m * each)


@given(RUNS, st.floats(10, 100))
def test_a_fall_half_as_steep_drops_half(run_m: float, ratio: float) -> None:
    """One in eighty drops half of what one in forty does."""
    steep, flat = answer(fall_drop(run_m, ratio)), answer(fall_drop(run_m, 2 * ratio))
    assert steep == pytest.approx(2 * flat)
