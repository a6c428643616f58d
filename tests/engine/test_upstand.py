"""Mat turned up a wall, or down over a face. 150 mm above the roof as a rule: common practice."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import OutOfRange, answer, line_keys, turn_down, upstand_mat, work
from trainer.engine.materials import UPSTAND

LENGTHS = st.floats(0.05, 100)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(upstand_mat) == ("up", "area")
    assert line_keys(turn_down) == ("down", "area")


def test_mat_for_an_upstand_by_hand() -> None:
    """150 mm up and 50 mm on to the deck is a strip of 200 mm; along 4.5 m it is 0.9 m²."""
    figures = work(upstand_mat(4.5, UPSTAND.value)).figures
    assert figures == pytest.approx({"up": 200, "area": 0.9})


def test_mat_turned_down_by_hand() -> None:
    """60 mm down and 50 mm on to the deck is a strip of 110 mm; along 6 m it is 0.66 m²."""
    assert work(turn_down(6, 60)).figures == pytest.approx({"down": 110, "area": 0.66})


@given(LENGTHS, st.floats(10, 300), st.floats(0, 300))
def test_up_and_down_take_the_same_mat(length_m: float, turn_mm: float, lap_mm: float) -> None:
    """A strip is a strip."""
    up = answer(upstand_mat(length_m, turn_mm, lap_mm))
    assert answer(turn_down(length_m, turn_mm, lap_mm)) == pytest.approx(up)


@given(LENGTHS, st.floats(10, 1000), st.floats(0, 300))
def test_twice_the_wall_takes_twice_the_mat(
    length_m: float, height_mm: float, lap_mm: float
) -> None:
    """The width of the strip stays."""
    one, two = (
        answer(upstand_mat(length, height_mm, lap_mm)) for length in (length_m, 2 * length_m)
    )
    assert two == pytest.approx(2 * one)


@given(LENGTHS, st.floats(10, 1000))
def test_without_a_lap_only_the_wall_is_covered(length_m: float, height_mm: float) -> None:
    """Length times height, and nothing on the deck."""
    area = answer(upstand_mat(length_m, height_mm, lap_mm=0))
    assert area == pytest.approx(length_m * height_mm / 1000)


def test_figures_out_of_range_are_refused() -> None:
    """A wall of two metres is cladding; a face of 300 mm is the most that mat is turned down."""
    with pytest.raises(OutOfRange, match="height of the upstand is 2000 mm"):
        upstand_mat(1, 2000)
    with pytest.raises(OutOfRange, match="mat turned down is 301 mm"):
        turn_down(1, 301)
