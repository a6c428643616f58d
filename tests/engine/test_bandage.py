"""Bandage: its length with laps, its glass, its resin."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    answer,
    bandage_glass,
    bandage_length,
    line_keys,
    resin_for_area,
    resin_for_bandage,
    work,
)

LENGTHS = st.floats(0.05, 250)
WIDTHS = st.floats(25, 150)
WEIGHTS = st.floats(100, 600)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(bandage_length) == ("straight", "laps", "bandage")
    assert line_keys(bandage_glass) == ("area", "glass")
    assert line_keys(resin_for_bandage) == (
        "bandage.area",
        "bandage.glass",
        "glass_kg",
        "net",
        "resin",
    )


def test_bandage_for_three_edges_with_two_laps() -> None:
    """2.4 + 3.6 + 1.2 m is 7.2 m; two laps of 50 mm are 0.1 m; together 7.3 m."""
    worked = work(bandage_length((2.4, 3.6, 1.2), 2))
    assert worked.figures == pytest.approx({"straight": 7.2, "laps": 0.1, "bandage": 7.3})


def test_without_laps_the_bandage_is_as_long_as_the_edges() -> None:
    """No lap, or laps of nothing, add nothing."""
    assert answer(bandage_length((2.4, 3.6))) == pytest.approx(6)
    assert answer(bandage_length((2.4, 3.6), 3, lap_mm=0)) == pytest.approx(6)


def test_resin_for_four_metres_of_bandage() -> None:
    """0.3 m², 135 g, 0.135 kg; 2.5 to 1 is 0.3375 kg; a tenth on top makes 0.37125 kg."""
    assert work(resin_for_bandage(4)).figures == pytest.approx(
        {
            "bandage.area": 0.3,
            "bandage.glass": 135,
            "glass_kg": 0.135,
            "net": 0.3375,
            "resin": 0.37125,
        }
    )


@given(LENGTHS, WIDTHS, WEIGHTS)
def test_twice_as_long_as_wide_or_as_heavy_takes_twice_the_glass(
    length_m: float, width_mm: float, mat: float
) -> None:
    """Glass is proportional to length, to width and to the weight of the mat."""
    glass = answer(bandage_glass(length_m, width_mm, mat))
    for doubled in (
        bandage_glass(2 * length_m, width_mm, mat),
        bandage_glass(length_m, 2 * width_mm, mat),
        bandage_glass(length_m, width_mm, 2 * mat),
    ):
        assert answer(doubled) == pytest.approx(2 * glass)


@given(LENGTHS, LENGTHS)
def test_two_strips_take_what_one_of_their_length_takes(one_m: float, other_m: float) -> None:
    """Cutting a bandage changes nothing but its laps."""
    both = answer(resin_for_bandage(one_m)) + answer(resin_for_bandage(other_m))
    assert answer(resin_for_bandage(one_m + other_m)) == pytest.approx(both)


@given(st.floats(1, 500), WEIGHTS)
def test_a_bandage_takes_what_its_area_of_mat_takes(length_m: float, mat: float) -> None:
    """A strip of 75 mm is mat like any other."""
    area = answer(resin_for_area(length_m * 0.075, mat))
    assert answer(resin_for_bandage(length_m, mat_g_per_m2=mat)) == pytest.approx(area)
