"""The energy and the order that two test cups speak of."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import (
    Refused,
    activation_energy,
    answer,
    dose_order,
    gel_at_dose,
    gel_at_temperature,
    line_keys,
)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(activation_energy) == ("one_k", "other_k", "energy")
    assert line_keys(dose_order) == ("times", "doses", "order")


def test_two_cups_at_fifteen_and_twenty_degrees() -> None:
    """45 min at 15 °C and 25 min at 20 °C speak of 82.6 kJ/mol (common practice)."""
    assert answer(activation_energy(45, 15, 25, 20)) == pytest.approx(82.6, abs=0.05)


def test_two_cups_at_two_and_at_four_percent() -> None:
    """Twice the dose in half the time is an order of one, by hand."""
    assert answer(dose_order(20, 2, 10, 4)) == pytest.approx(1)


def test_either_cup_may_come_first() -> None:
    """Colder or warmer, weaker or stronger: their order on the form doesn't matter."""
    assert answer(activation_energy(25, 20, 45, 15)) == pytest.approx(
        answer(activation_energy(45, 15, 25, 20))
    )
    assert answer(dose_order(10, 4, 20, 2)) == pytest.approx(1)


def test_a_warmer_cup_that_gelled_later_is_below_zero() -> None:
    """A figure is wrong then, and the sign shows it."""
    assert answer(activation_energy(25, 15, 45, 20)) == pytest.approx(-82.6, abs=0.05)


def test_two_cups_alike_tell_nothing() -> None:
    """Equal temperatures and equal doses are refused, with what to do instead."""
    with pytest.raises(Refused, match=r"at one temperature\. Time another one"):
        answer(activation_energy(45, 15, 25, 15))
    with pytest.raises(Refused, match=r"had one dose\. Time another one"):
        answer(dose_order(45, 2, 25, 2))


@given(st.floats(1, 240), st.floats(5, 34), st.floats(6, 35), st.floats(20, 120))
def test_the_energy_of_a_cup_and_its_own_forecast(
    minutes: float, one_c: float, other_c: float, energy: float
) -> None:
    """A forecast at an energy, read as a second cup, speaks of that energy."""
    assume(abs(one_c - other_c) > 0.1)
    other = answer(gel_at_temperature(minutes, one_c, other_c, energy))
    told = answer(activation_energy.inside(minutes, one_c, other, other_c))
    assert told == pytest.approx(energy, rel=1e-6)


@given(st.floats(1, 240), st.floats(0.5, 5.9), st.floats(0.6, 6), st.floats(0.1, 2))
def test_the_order_of_a_cup_and_its_own_forecast(
    minutes: float, one: float, other: float, order: float
) -> None:
    """The same of the dose."""
    assume(abs(one - other) > 0.01)
    minutes_other = answer(gel_at_dose(minutes, one, other, order))
    told = answer(dose_order.inside(minutes, one, minutes_other, other))
    assert told == pytest.approx(order, rel=1e-6)
