"""Collars round a pipe, an outlet and a rooflight's kerb.

150 mm up and a lap of 50 mm: common practice; 100 mm of mat round an outlet: from memory.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    OutOfRange,
    answer,
    kerb_collar,
    line_keys,
    outlet_collar,
    pipe_collar,
    work,
)

DIAMETERS = st.floats(20, 600)
SIDES = st.floats(100, 6000)
UPS = st.floats(50, 600)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(pipe_collar) == ("around", "height", "area")
    assert line_keys(outlet_collar) == ("side", "area")
    assert line_keys(kerb_collar) == ("around", "height", "area")


def test_a_sleeve_round_a_pipe_by_hand() -> None:
    """110 mm across is 345.6 mm round, 395.6 mm with the lap; 200 mm high it is 0.0791 m²."""
    figures = work(pipe_collar(110)).figures
    assert figures["around"] == pytest.approx(395.6, abs=0.05)
    assert figures["height"] == pytest.approx(200)
    assert figures["area"] == pytest.approx(0.0791, abs=5e-5)


def test_the_working_of_a_sleeve_shows_pi() -> None:
    """It stands there by its sign, and as a figure where figures are put in."""
    around = work(pipe_collar(110)).lines[0]
    assert around.in_words() == "π × diameter + lap on itself"
    assert around.in_figures().startswith("3.142 × ")


@given(DIAMETERS, UPS)
def test_without_laps_a_sleeve_is_the_pipe_s_own_skin(diameter_mm: float, up_mm: float) -> None:
    """The side of a cylinder: between that of the hexagon inside it and the square round it."""
    area_mm2 = answer(pipe_collar(diameter_mm, up_mm, lap_mm=0)) * 1e6
    assert 3 * diameter_mm * up_mm < area_mm2 < 4 * diameter_mm * up_mm
    assert area_mm2 / up_mm / diameter_mm == pytest.approx(math.acos(-1))


def test_the_square_round_an_outlet_by_hand() -> None:
    """100 mm across and 100 mm all round is 300 by 300 mm, 0.09 m²."""
    assert work(outlet_collar(100)).figures == pytest.approx({"side": 300, "area": 0.09})


@given(st.floats(40, 300), st.floats(100, 200))
def test_twice_the_outlet_takes_four_times_the_mat(diameter_mm: float, flange_mm: float) -> None:
    """An area grows with the square of its size."""
    one = answer(outlet_collar(diameter_mm, flange_mm))
    assert answer(outlet_collar(2 * diameter_mm, 2 * flange_mm)) == pytest.approx(4 * one)


def test_mat_round_a_kerb_by_hand() -> None:
    """1000 by 600 mm is 3200 mm round, 3400 mm with four laps; 200 mm high it is 0.68 m²."""
    figures = work(kerb_collar(1000, 600)).figures
    assert figures == pytest.approx({"around": 3400, "height": 200, "area": 0.68})


@given(SIDES, SIDES, UPS, st.floats(0, 300))
def test_a_kerb_may_be_turned(length: float, width: float, up: float, lap: float) -> None:
    """Length and width can change places."""
    turned = answer(kerb_collar(width, length, up, lap))
    assert answer(kerb_collar(length, width, up, lap)) == pytest.approx(turned)


@given(SIDES, SIDES, UPS, st.floats(0, 300))
def test_four_walls_of_a_kerb_are_four_strips(
    length: float, width: float, up: float, lap: float
) -> None:
    """Each as long as its side and a lap, as high as the kerb and a lap."""
    strips = sum((side + lap) * (up + lap) for side in (length, width, length, width))
    assert answer(kerb_collar(length, width, up, lap)) == pytest.approx(strips / 1e6)


def test_figures_out_of_range_are_refused() -> None:
    """What is thinner than a finger is no pipe; a kerb under 50 mm isn't turned up."""
    with pytest.raises(OutOfRange, match="diameter of the pipe is 15 mm"):
        pipe_collar(15)
    with pytest.raises(OutOfRange, match="mat turned up is 40 mm"):
        kerb_collar(1000, 600, 40)
