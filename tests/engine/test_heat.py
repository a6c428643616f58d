"""Heat of curing, as an upper bound: nothing is lost to the air.

66 kJ/mol of C=C is published (Lucas, Borrajo & Williams, Polymer 34(15), 3216, 1993, abstract);
the specific heats are from memory.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    adiabatic_rise,
    answer,
    laminate_rise,
    leftover_heat,
    leftover_peak,
    line_keys,
    work,
)

HEATS = st.floats(300, 420)
SPECIFIC = st.floats(1.0, 2.5)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(adiabatic_rise) == ("rise",)
    assert line_keys(leftover_peak) == ("heat.rise", "peak")
    assert line_keys(leftover_heat) == ("mass", "heat")
    assert line_keys(laminate_rise) == ("heat", "specific", "rise")


@pytest.mark.parametrize(("heat", "neat", "laminate"), [(333, 185, 155), (398, 221, 186)])
def test_the_ends_of_the_published_heat(heat: float, neat: float, laminate: float) -> None:
    """35 and 45 % of styrene give 333 and 398 J/g: 185 to 221 K neat, 155 to 186 K with glass."""
    assert answer(adiabatic_rise(heat)) == pytest.approx(neat, abs=0.5)
    assert answer(laminate_rise(30, heat)) == pytest.approx(laminate, abs=0.5)


def test_a_left_over_at_twenty_degrees() -> None:
    """20 °C and 221.1 K more is 241.1 °C: far above the 126 and 162 °C that were measured.

    Castings: Polymers 2024, 16(17), 2391 (published).
    """
    peak = answer(leftover_peak(20))
    assert peak == pytest.approx(241.1, abs=0.05)
    assert peak > 162


def test_half_a_litre_left() -> None:
    """0.55 kg at 398 J/g give off 218.9 kJ, by hand."""
    assert work(leftover_heat(0.5)).figures == pytest.approx({"mass": 0.55, "heat": 218.9})


@given(HEATS, SPECIFIC)
def test_all_of_the_heat_goes_into_the_resin(heat: float, specific: float) -> None:
    """Rise times specific heat is the heat again: nothing is lost."""
    assert answer(adiabatic_rise(heat, specific)) * specific == pytest.approx(heat)


@given(HEATS, SPECIFIC, st.floats(15, 45))
def test_glass_soaks_up_heat_and_gives_none(heat: float, specific: float, glass: float) -> None:
    """A laminate never gets as hot as neat resin, and the less glass the hotter."""
    neat = answer(adiabatic_rise(heat, specific))
    laminate = answer(laminate_rise(glass, heat, specific))
    assert laminate < neat
    assert answer(laminate_rise.inside(glass / 2, heat, specific)) > laminate


@given(HEATS, SPECIFIC)
def test_a_laminate_with_next_to_no_glass_is_resin(heat: float, specific: float) -> None:
    """The limit: a millionth of a percent of glass changes nothing that shows."""
    neat = answer(adiabatic_rise(heat, specific))
    assert answer(laminate_rise.inside(1e-6, heat, specific)) == pytest.approx(neat, rel=1e-7)


@given(st.floats(0.01, 12), HEATS)
def test_twice_as_much_left_gives_off_twice_the_heat(left_l: float, heat: float) -> None:
    """Heat goes by the mass; the peak doesn't, and so a small bucket gets as hot."""
    one, two = answer(leftover_heat(left_l, heat)), answer(leftover_heat(2 * left_l, heat))
    assert two == pytest.approx(2 * one)


@given(st.floats(5, 40), HEATS, SPECIFIC)
def test_warm_resin_ends_as_much_hotter(resin_c: float, heat: float, specific: float) -> None:
    """The peak is the start and the rise."""
    rise = answer(adiabatic_rise(heat, specific))
    assert answer(leftover_peak(resin_c, heat, specific)) == pytest.approx(resin_c + rise)
