"""Dew point and the surface above it. The Magnus figures are cited second-hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import OutOfRange, answer, dew_point, line_keys, surface_margin, work

AIR = st.floats(-20, 50)
HUMIDITY = st.floats(1, 100)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(dew_point) == ("gamma", "dew")
    assert line_keys(surface_margin) == ("air.gamma", "air.dew", "margin")


def test_a_morning_on_the_deck() -> None:
    """20 °C and 50 %: ln 0.5 is −0.6931, 352.5 ÷ 263.04 is 1.3401; dew at 9.26 °C."""
    figures = work(dew_point(20, 50)).figures
    assert figures["gamma"] == pytest.approx(0.6470, abs=5e-5)
    assert figures["dew"] == pytest.approx(9.26, abs=5e-3)


def test_a_deck_colder_than_the_dew_point_is_wet() -> None:
    """At 9.26 °C of dew a deck of 12 °C is 2.74 °C above it, and one of 7 °C is 2.26 °C below."""
    assert answer(surface_margin(20, 50, 12)) == pytest.approx(2.74, abs=5e-3)
    assert answer(surface_margin(20, 50, 7)) == pytest.approx(-2.26, abs=5e-3)


@given(AIR)
def test_in_full_damp_dew_falls_at_the_air_s_own_temperature(air_c: float) -> None:
    """At 100 % the logarithm is nothing, and the formula undoes itself."""
    assert answer(dew_point(air_c, 100)) == pytest.approx(air_c, abs=1e-9)


@given(AIR, st.floats(1, 99))
def test_dew_falls_below_the_air_temperature(air_c: float, humidity_percent: float) -> None:
    """Air that isn't full must cool before it drips."""
    assert answer(dew_point(air_c, humidity_percent)) < air_c


@given(st.floats(-20, 49), HUMIDITY)
def test_warmer_air_of_one_humidity_holds_more(air_c: float, humidity_percent: float) -> None:
    """The dew point climbs with the air."""
    warmer = answer(dew_point(air_c + 1, humidity_percent))
    assert warmer > answer(dew_point(air_c, humidity_percent))


@given(AIR, HUMIDITY, st.floats(-20, 70))
def test_a_deck_ten_degrees_warmer_has_ten_degrees_more(
    air_c: float, humidity_percent: float, surface_c: float
) -> None:
    """The margin is a plain difference."""
    margin = answer(surface_margin(air_c, humidity_percent, surface_c))
    warmer = answer(surface_margin(air_c, humidity_percent, surface_c + 10))
    assert warmer - margin == pytest.approx(10)


@pytest.mark.parametrize(("air_c", "humidity"), [(-20.1, 50), (50.1, 50), (20, 0), (20, 100.1)])
def test_figures_no_weather_has_are_refused(air_c: float, humidity: float) -> None:
    """Bone-dry air has no dew point, and 101 % is a slip of the keyboard."""
    with pytest.raises(OutOfRange):
        dew_point(air_c, humidity)
