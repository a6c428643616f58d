"""The band of a gel time from one cup, and the dose for a gel time that is wanted.

Its ends take the furthest of 40 and 82.6 kJ/mol and of the orders 0.5 and 1: the first is
published, the second common practice, the orders from memory.
"""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import (
    Refused,
    answer,
    dose_for_gel,
    gel_at_dose,
    gel_at_temperature,
    gel_long_end,
    gel_short_end,
    line_keys,
    work,
)

MINUTES = st.floats(1, 240)
CELSIUS = st.floats(5, 35)
PERCENT = st.floats(0.5, 6)
KEYS = ("cup_k", "now_k", "low_energy", "high_energy", "temperature", "low_order", "high_order")


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(gel_short_end) == (*KEYS, "dose", "gel")
    assert line_keys(gel_long_end) == (*KEYS, "dose", "gel")
    assert line_keys(dose_for_gel) == (*KEYS[:5], "shortest", "share", *KEYS[5:], "times", "dose")


def test_a_warmer_day_and_a_weaker_dose_pull_apart() -> None:
    """30 min at 18 °C and 2 %, now 26 °C and 1.5 %: each end takes its own energy and order."""
    short = work(gel_short_end(30, 18, 2, 26, 1.5)).figures
    assert short["temperature"] == short["high_energy"] < short["low_energy"] < 1
    assert short["dose"] == short["low_order"] == pytest.approx((2 / 1.5) ** 0.5)
    long = work(gel_long_end(30, 18, 2, 26, 1.5)).figures
    assert long["temperature"] == long["low_energy"]
    assert long["dose"] == long["high_order"] == pytest.approx(2 / 1.5)


@given(MINUTES, CELSIUS, PERCENT)
def test_where_nothing_changed_the_band_is_the_cup(
    minutes: float, celsius: float, percent: float
) -> None:
    """The same day and dose as the cup: both ends are its own gel time."""
    for end in (gel_short_end, gel_long_end):
        told = answer(end(minutes, celsius, percent, celsius, percent))
        assert told == pytest.approx(minutes)


@given(MINUTES, CELSIUS, PERCENT, CELSIUS, PERCENT, st.floats(40, 82.6), st.floats(0.5, 1))
def test_whatever_the_resin_its_time_lies_in_the_band(
    minutes: float,
    cup_c: float,
    cup: float,
    now_c: float,
    now: float,
    energy: float,
    order: float,
) -> None:
    """Any energy and any order between the ends give a time between the ends."""
    by_warmth = answer(gel_at_temperature(minutes, cup_c, now_c, energy))
    time = answer(gel_at_dose.inside(by_warmth, cup, now, order))
    short = answer(gel_short_end(minutes, cup_c, cup, now_c, now))
    long = answer(gel_long_end(minutes, cup_c, cup, now_c, now))
    assert short * (1 - 1e-9) <= time <= long * (1 + 1e-9)


@given(MINUTES, CELSIUS, PERCENT, CELSIUS, st.floats(0.5, 5.9))
def test_more_catalyst_is_never_later(
    minutes: float, cup_c: float, cup: float, now_c: float, now: float
) -> None:
    """The short end shrinks as the dose grows."""
    weak = answer(gel_short_end(minutes, cup_c, cup, now_c, now))
    assert answer(gel_short_end(minutes, cup_c, cup, now_c, now + 0.1)) < weak


def test_a_dose_for_a_longer_and_for_a_shorter_time() -> None:
    """A cup of 20 min at 2 %, same day: for 40 min ½² of it, 0.5 %; for 10 min twice, 4 %."""
    assert answer(dose_for_gel(20, 20, 2, 20, 40)) == pytest.approx(0.5)
    assert answer(dose_for_gel(20, 20, 2, 20, 10)) == pytest.approx(4)


@given(MINUTES, CELSIUS, PERCENT, CELSIUS, st.floats(5, 180))
def test_at_the_dose_for_a_time_the_short_end_is_that_time(
    minutes: float, cup_c: float, cup: float, now_c: float, wanted: float
) -> None:
    """There and back, whether it is longer or shorter than the cup's own."""
    try:
        dose = answer(dose_for_gel(minutes, cup_c, cup, now_c, wanted))
    except Refused:
        assume(False)
    short = answer(gel_short_end.inside(minutes, cup_c, cup, now_c, dose))
    assert short == pytest.approx(wanted)


@given(MINUTES, CELSIUS, PERCENT, CELSIUS, PERCENT)
def test_the_dose_for_the_short_end_is_the_dose(
    minutes: float, cup_c: float, cup: float, now_c: float, now: float
) -> None:
    """And back and there."""
    short = answer(gel_short_end(minutes, cup_c, cup, now_c, now))
    assert answer(dose_for_gel.inside(minutes, cup_c, cup, now_c, short)) == pytest.approx(now)


@pytest.mark.parametrize("wanted", [5, 180])
def test_a_dose_that_nobody_lays_is_refused(wanted: float) -> None:
    """From 20 min at 2 %, 5 min take 8 % and 180 min take 0.025 %."""
    with pytest.raises(Refused, match=r"No dose from 0\.5 to 6 % by mass"):
        answer(dose_for_gel(20, 20, 2, 20, wanted))
