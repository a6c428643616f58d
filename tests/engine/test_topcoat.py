"""Topcoat by area. 0.5 kg/m² and 2 % by mass: common practice; 1.2 kg/L: from memory."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    answer,
    catalyst_by_mass,
    line_keys,
    topcoat_catalyst,
    topcoat_litres,
    topcoat_mass,
    work,
)

AREAS = st.floats(0.1, 500)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(topcoat_mass) == ("mass",)
    assert line_keys(topcoat_catalyst) == ("topcoat.mass", "mass", "volume")
    assert line_keys(topcoat_litres) == ("topcoat.mass", "litres")


def test_the_garage_in_topcoat() -> None:
    """15 m² take 7.5 kg, 6.25 L, and 150 g of catalyst: 128.2 ml."""
    assert answer(topcoat_mass(15)) == pytest.approx(7.5)
    assert answer(topcoat_litres(15)) == pytest.approx(6.25)
    assert work(topcoat_catalyst(15)).figures == pytest.approx(
        {"topcoat.mass": 7.5, "mass": 150, "volume": 150 / 1.17}
    )


@given(AREAS, st.floats(0.3, 1.0), st.floats(0.5, 6))
def test_topcoat_is_dosed_as_resin_is(area_m2: float, rate: float, percent: float) -> None:
    """Catalyst by mass for the mass of the topcoat: the same sum."""
    mass = answer(topcoat_mass(area_m2, rate))
    expected = answer(catalyst_by_mass.inside(mass, percent))
    assert answer(topcoat_catalyst(area_m2, rate, percent)) == pytest.approx(expected)


@given(st.floats(0.1, 250), st.floats(0.3, 1.0))
def test_twice_the_area_takes_twice_the_topcoat(area_m2: float, rate: float) -> None:
    """Mass, litres and catalyst are proportional to the area."""
    for method in (topcoat_mass, topcoat_litres, topcoat_catalyst):
        one, two = answer(method(area_m2, rate)), answer(method(2 * area_m2, rate))
        assert two == pytest.approx(2 * one)
