"""Gel time and temperature against textbook exercises, a published band and a units library.

Of the activation energy of polyester with ketone peroxide and cobalt, 40 to 60 kJ/mol are
published (J. Appl. Polym. Sci. 102, 1870–1876, 2006, abstract). No table of gel time against
temperature could be read anywhere.
"""

import math
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import activation_energy, answer, gel_at_temperature, work
from trainer.engine.materials import CURING_ENERGY, GAS_CONSTANT, HIGH_ENERGY, LOW_ENERGY

UNITS: pint.UnitRegistry[Any] = pint.UnitRegistry()


def celsius(kelvin: float) -> float:
    """Return a temperature of an exercise on the scale that the calculation takes."""
    return kelvin - 273.15


@pytest.mark.parametrize(
    ("cold_k", "warm_k", "energy"), [(298, 308, 52.9), (300, 310, 53.6), (298.15, 308.15, 52.95)]
)
def test_a_rate_that_doubles(cold_k: float, warm_k: float, energy: float) -> None:
    """Textbook exercises: a rate that doubles in ten degrees has this energy (published)."""
    told = activation_energy.inside(2, celsius(cold_k), 1, celsius(warm_k))
    assert answer(told) == pytest.approx(energy, abs=0.05)


@pytest.mark.parametrize(
    ("cold_k", "warm_k", "factor"), [(298, 308, 1.925), (298.15, 308.15, 1.924)]
)
def test_fifty_kilojoules(cold_k: float, warm_k: float, factor: float) -> None:
    """At 50 kJ/mol the rate grows 1.925-fold from 298 to 308 K, 1.924 from 298.15 (published).

    The first is cut off, not rounded: it is 1.9255. So a thousandth is allowed.
    """
    cold, warm = celsius(cold_k), celsius(warm_k)
    figures = work(gel_at_temperature.inside(60, cold, warm, 50)).figures
    assert 1 / figures["factor"] == pytest.approx(factor, abs=1e-3)


def test_the_default_lies_in_the_published_band() -> None:
    """52.9 kJ/mol, between 40 and 60; the band of a plan begins at its foot."""
    assert 40 <= CURING_ENERGY.value <= 60
    assert LOW_ENERGY.value == 40
    assert answer(gel_at_temperature.inside(2, celsius(298), celsius(308))) == pytest.approx(
        1, abs=1e-3
    )


def test_the_head_of_the_band() -> None:
    """25 min at 20 °C and 45 min at 15 °C: common practice, 82.6 kJ/mol."""
    assert answer(activation_energy(45, 15, 25, 20)) == pytest.approx(HIGH_ENERGY.value, abs=0.05)


def test_the_gas_constant_is_the_library_s() -> None:
    """R of the International System since 2019, exact: pint's molar_gas_constant."""
    library = UNITS.Quantity(1, "molar_gas_constant").m_as("J/(mol*K)")
    assert GAS_CONSTANT.value == pytest.approx(library, rel=1e-9)


@given(st.floats(5, 35), st.floats(5, 35))
def test_kelvin_is_the_library_s(cup_c: float, now_c: float) -> None:
    """The library turns both readings into the kelvin of the lines."""
    figures = work(gel_at_temperature(30, cup_c, now_c)).figures
    assert figures["cup_k"] == pytest.approx(UNITS.Quantity(cup_c, "degC").m_as("K"))
    assert figures["now_k"] == pytest.approx(UNITS.Quantity(now_c, "degC").m_as("K"))


@given(st.floats(5, 35), st.floats(5, 35), st.floats(5, 35), st.floats(20, 120))
def test_by_way_of_a_third_temperature(one: float, two: float, three: float, ea: float) -> None:
    """A law of rates: from one to two to three is from one to three."""
    half_way = answer(gel_at_temperature(60, one, two, ea))
    by_way = answer(gel_at_temperature.inside(half_way, two, three, ea))
    assert by_way == pytest.approx(answer(gel_at_temperature(60, one, three, ea)))


@given(st.floats(5, 34), st.floats(20, 120))
def test_the_slope_of_the_logarithm_is_the_energy(now_c: float, energy: float) -> None:
    """The law as textbooks draw it: ln t against 1/T is a line of slope Ea/R."""
    step = 0.5
    one, other = (answer(gel_at_temperature(60, 20, at, energy)) for at in (now_c, now_c + step))
    slope = math.log(one / other) / (1 / (now_c + 273.15) - 1 / (now_c + step + 273.15))
    assert slope * 8.314462618 / 1000 == pytest.approx(energy, rel=1e-6)
