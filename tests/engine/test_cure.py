"""Gel time at another temperature and at another dose, from a cup that was timed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import OutOfRange, answer, gel_at_dose, gel_at_temperature, line_keys

MINUTES = st.floats(1, 240)
CELSIUS = st.floats(5, 35)
PERCENT = st.floats(0.5, 6)
ENERGY = st.floats(20, 120)
ORDER = st.floats(0.1, 2)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(gel_at_temperature) == ("cup_k", "now_k", "factor", "gel")
    assert line_keys(gel_at_dose) == ("factor", "gel")


def test_ten_degrees_warmer_takes_about_half_the_time() -> None:
    """At 52.9 kJ/mol the rate doubles from 298 to 308 K, so 30 min become 15."""
    assert answer(gel_at_temperature(30, 24.85, 34.85)) == pytest.approx(15, rel=1e-3)


def test_four_times_the_dose_takes_half_the_time() -> None:
    """At an order of 0.5, by hand: the root of a quarter; at an order of 1, a quarter."""
    assert answer(gel_at_dose(40, 1, 4)) == pytest.approx(20)
    assert answer(gel_at_dose(40, 1, 4, 1)) == pytest.approx(10)


@given(MINUTES, CELSIUS, ENERGY)
def test_the_same_temperature_changes_nothing(minutes: float, now_c: float, energy: float) -> None:
    """The factor is one, whatever the energy."""
    assert answer(gel_at_temperature(minutes, now_c, now_c, energy)) == pytest.approx(minutes)


@given(MINUTES, PERCENT, ORDER)
def test_the_same_dose_changes_nothing(minutes: float, percent: float, order: float) -> None:
    """The factor is one, whatever the order."""
    assert answer(gel_at_dose(minutes, percent, percent, order)) == pytest.approx(minutes)


@given(MINUTES, PERCENT, PERCENT)
def test_with_next_to_no_order_the_dose_changes_nothing(
    minutes: float, cup: float, now: float
) -> None:
    """The limit: anything to the power of next to nothing is one."""
    assert answer(gel_at_dose.inside(minutes, cup, now, 1e-12)) == pytest.approx(minutes)


@given(MINUTES, CELSIUS, CELSIUS)
def test_with_next_to_no_energy_the_temperature_changes_nothing(
    minutes: float, cup_c: float, now_c: float
) -> None:
    """The limit: a reaction with no hill to climb doesn't mind the cold."""
    assert answer(gel_at_temperature.inside(minutes, cup_c, now_c, 1e-9)) == pytest.approx(minutes)


@given(MINUTES, CELSIUS, CELSIUS, ENERGY)
def test_there_and_back_by_temperature(
    minutes: float, cup_c: float, now_c: float, energy: float
) -> None:
    """What a cup gels in there, turned back, is what it gelled in here."""
    there = answer(gel_at_temperature(minutes, cup_c, now_c, energy))
    assert answer(gel_at_temperature.inside(there, now_c, cup_c, energy)) == pytest.approx(minutes)


@given(MINUTES, PERCENT, PERCENT, ORDER)
def test_there_and_back_by_dose(minutes: float, cup: float, now: float, order: float) -> None:
    """The same of the dose."""
    there = answer(gel_at_dose(minutes, cup, now, order))
    assert answer(gel_at_dose.inside(there, now, cup, order)) == pytest.approx(minutes)


@given(MINUTES, CELSIUS, CELSIUS, ENERGY)
def test_warmer_is_sooner(minutes: float, one_c: float, other_c: float, energy: float) -> None:
    """Warmth never lengthens a gel time."""
    cold, warm = sorted((one_c, other_c))
    assert answer(gel_at_temperature(minutes, cold, warm, energy)) <= minutes * (1 + 1e-12)


@given(st.floats(1, 120), CELSIUS, CELSIUS)
def test_a_cup_twice_as_slow_is_twice_as_slow_elsewhere(
    minutes: float, cup_c: float, now_c: float
) -> None:
    """Gel times scale: only their ratio is told."""
    one = answer(gel_at_temperature(minutes, cup_c, now_c))
    assert answer(gel_at_temperature(2 * minutes, cup_c, now_c)) == pytest.approx(2 * one)


@pytest.mark.parametrize("now_c", [4.9, 35.1])
def test_no_time_is_told_where_nothing_is_laid(now_c: float) -> None:
    """Below 5 and above 35 °C (common practice) the figures are refused."""
    with pytest.raises(OutOfRange, match="must lie between 5 and 35"):
        gel_at_temperature(30, 20, now_c)
