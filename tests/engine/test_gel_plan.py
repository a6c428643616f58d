"""Gel times from test cups: the band, the reasons for having none, and what is said beside it.

Noor's resin is Harbour 20; the cups of Quay 7 were timed with another tin. The usual dose of 1
to 4 %, the limits of 5, 15 and 35 °C and the shares of the gel time are common practice.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import NotAFigure, answer, dose_for_gel, gel_long_end, gel_short_end
from trainer.engine.plans import gel

HARBOUR = "Harbour 20"
MORNING = gel.TestCup(HARBOUR, 30, 18, 2)
NOON = gel.TestCup(HARBOUR, 22, 24, 2)
OTHER_TIN = gel.TestCup("Quay 7", 12, 18, 2)
BATCH = gel.TestCup(HARBOUR, 26, 20, 2, from_batch=True)


def times(*cups: gel.TestCup, now_c: float = 20, percent: float = 2) -> gel.GelTimes:
    """Return the gel times that cups of Noor's resin tell."""
    told = gel.gel_times(cups, HARBOUR, now_c, percent)
    assert isinstance(told, gel.GelTimes)
    return told


def reasons(*cups: gel.TestCup, now_c: float = 20, percent: float = 2) -> tuple[str, ...]:
    """Return why there are no gel times, with plain spaces."""
    told = gel.gel_times(cups, HARBOUR, now_c, percent)
    assert isinstance(told, gel.NoTimes)
    return tuple(each.replace("\u00a0", " ") for each in told.reasons)


def test_one_cup_gives_its_own_band() -> None:
    """Short, long and two thirds of the short less two minutes, each with its working."""
    told = times(MORNING, now_c=26, percent=1.5)
    assert told.short.value == pytest.approx(13.9, abs=0.05)
    assert told.long.value == pytest.approx(25.7, abs=0.05)
    assert told.working.value == pytest.approx(told.short.value * 2 / 3 - 2)
    assert (told.short.method, told.long.method) == (gel_short_end, gel_long_end)
    assert (told.short.key, told.long.key, told.working.key) == (
        "gel.short",
        "gel.long",
        "gel.working",
    )
    assert told.short.unit == told.long.unit == told.working.unit == "min"


def test_several_cups_are_planned_with_the_shortest_of_all() -> None:
    """The least of the short ends, and the greatest of the long ones."""
    both, morning, noon = times(MORNING, NOON), times(MORNING), times(NOON)
    assert both.short.value == min(morning.short.value, noon.short.value)
    assert both.long.value == max(morning.long.value, noon.long.value)
    assert both.used == (MORNING, NOON)


def test_a_cup_of_another_product_is_named_and_not_used() -> None:
    """Its 12 minutes say nothing of Noor's resin."""
    told = times(MORNING, OTHER_TIN, OTHER_TIN)
    assert told.short.value == times(MORNING).short.value
    assert told.used == (MORNING,)
    assert told.refused == ("The cup of Quay 7 is another product. It tells nothing.",)


@pytest.mark.parametrize("typed", ["harbour 20", "  HARBOUR  20 "])
def test_a_name_is_known_however_it_is_typed(typed: str) -> None:
    """Capitals and spaces don't make another product."""
    assert MORNING.is_of(typed)
    assert not MORNING.is_of("Harbour 21")


def test_a_batch_of_the_day_replaces_the_cups() -> None:
    """What gelled in the bucket is better known than what gelled in a cup."""
    assert times(MORNING, NOON, BATCH).used == (BATCH,)
    older = gel.TestCup(HARBOUR, 15, 20, 2, days_old=30, from_batch=True)
    assert times(MORNING, older, BATCH).used == (BATCH,)


def test_an_old_batch_does_not_replace_a_younger_cup() -> None:
    """It stands for the day it was laid on, and the cups until then."""
    old = gel.TestCup(HARBOUR, 26, 20, 2, days_old=3, from_batch=True)
    older_cup = gel.TestCup(HARBOUR, 18, 20, 2, days_old=4)
    assert times(MORNING, older_cup, old).used == (MORNING, old)


def test_a_batch_of_another_product_replaces_nothing() -> None:
    """It is another resin's."""
    other = gel.TestCup("Quay 7", 9, 20, 2, from_batch=True)
    assert times(MORNING, other).used == (MORNING,)


def test_the_clock_goes_by_the_cup_that_speaks_of_the_soonest() -> None:
    """At 20 °C the noon cup of 22 min at 24 °C is later than a cup of 20 min at 20 °C."""
    quick = gel.TestCup(HARBOUR, 20, 20, 2, days_old=3)
    told = times(NOON, quick)
    assert told.goes_by == quick
    assert quick.words.replace("\u00a0", " ") == (
        "the cup of 3 days ago: 20 min at 20 °C, 2 % by mass"
    )
    assert BATCH.words.startswith("the batch on the roof of today: ")


def test_a_data_sheets_gel_time_tells_times_too() -> None:
    """It is named as what it is, grows no older, and a cup of today is asked for beside it."""
    sheet = gel.TestCup(HARBOUR, 25, 20, 2, days_old=40, from_sheet=True)
    told = times(sheet)
    assert told.short.value == pytest.approx(25)
    assert told.goes_by.words.startswith("the data sheet: 25")
    assert "The gel time is a data sheet's, and of no cup of yours. Time a cup today." in (
        told.cautions
    )
    assert not any("A cup is from" in each for each in told.cautions)
    assert not any("data sheet" in each for each in times(sheet, NOON).cautions)


def test_a_batch_replaces_a_data_sheets_gel_time() -> None:
    """Whenever the batch was: it gelled on a roof."""
    sheet = gel.TestCup(HARBOUR, 25, 20, 2, from_sheet=True)
    old = gel.TestCup(HARBOUR, 26, 20, 2, days_old=2, from_batch=True)
    assert times(sheet, old).used == (old,)


def test_without_a_cup_no_time_is_told() -> None:
    """The reason says what to do; the other tin's cup doesn't help."""
    told = ("There is no test cup of Harbour 20 to go by. Start a test cup.",)
    assert reasons() == told
    assert reasons(OTHER_TIN) == told
    nameless = gel.gel_times((), " ", 20, 2)
    assert nameless == gel.NoTimes(("There is no test cup to go by. Start a test cup.",))


@pytest.mark.parametrize(
    ("now_c", "told"),
    [
        (4.9, "It is 4.9 °C. No gel time is told below 5 °C: wait for a warmer day."),
        (-3, "It is −3 °C. No gel time is told below 5 °C: wait for a warmer day."),
        (35.1, "It is 35.1 °C. No gel time is told above 35 °C: wait for a cooler hour."),
    ],
)
def test_no_time_is_told_where_nothing_is_laid(now_c: float, told: str) -> None:
    """Below 5 and above 35 °C."""
    assert reasons(MORNING, now_c=now_c) == (told,)


@pytest.mark.parametrize("now_c", [5, 35])
def test_the_limits_themselves_are_told(now_c: float) -> None:
    """At just 5 and just 35 °C there is a time, from a slow cup."""
    slow = gel.TestCup(HARBOUR, 60, 20, 2)
    assert times(slow, now_c=now_c).short.value > 0


@pytest.mark.parametrize("percent", [0.9, 4.1])
def test_no_time_is_told_outside_the_band_of_doses(percent: float) -> None:
    """The usual 1 to 4 %, until the data sheet gives its own."""
    told = f"The dose is {percent} % by mass. No gel time is told outside 1 % to 4 %."
    assert reasons(MORNING, percent=percent) == (told,)
    wider = gel.gel_times((gel.TestCup(HARBOUR, 60, 18, 2),), HARBOUR, 18, percent, band=(0.5, 5))
    assert isinstance(wider, gel.GelTimes)


def test_the_edges_of_the_band_are_inside_it() -> None:
    """Even with the dust of a dose that was turned to millilitres and back."""
    slow = gel.TestCup(HARBOUR, 60, 18, 2)
    for percent in (1, 1 - 1e-15, 4, 4.000000000000001):
        assert times(slow, now_c=18, percent=percent).working.value > 5


def test_every_reason_is_told_at_once() -> None:
    """Whoever mends one thing needn't come back for the next."""
    assert len(reasons(OTHER_TIN, now_c=2, percent=5)) == 3


def test_too_little_time_to_work_is_a_reason() -> None:
    """10 min leave 4.7 to work: a smaller dose or another day."""
    quick = gel.TestCup(HARBOUR, 10, 20, 2)
    told = "Under 5 minutes would be left to work. Take a smaller dose or another day."
    assert reasons(quick) == (told,)


def test_what_a_bucket_does_is_always_said() -> None:
    """A full bucket is the limit, whatever the cup said."""
    told = "A full bucket gels sooner than a cup, and a film on the roof later."
    assert times(MORNING).cautions == (told,)


@pytest.mark.parametrize(("days", "words"), [(1, "yesterday"), (3, "3 days ago")])
def test_a_cup_that_is_not_from_today_carries_a_caution(days: int, words: str) -> None:
    """Resin ages, and the next tin is another one."""
    old = gel.TestCup(HARBOUR, 30, 18, 2, days_old=days)
    assert times(MORNING, old).cautions[0] == f"A cup is from {words}. Time a new one today."


@pytest.mark.parametrize(("now_c", "cold"), [(5, True), (14.9, True), (15, False), (20, False)])
def test_a_cold_day_carries_a_caution(now_c: float, *, cold: bool) -> None:
    """From 5 up to 15 °C."""
    told = times(MORNING, now_c=now_c).cautions
    assert any("gels late and cures slowly" in each for each in told) is cold


@pytest.mark.parametrize("minutes", [0, -1, math.nan, math.inf])
def test_a_cup_of_no_minutes_is_refused(minutes: float) -> None:
    """A cup that gelled in nothing was never timed."""
    with pytest.raises(NotAFigure, match="gel time of the cup"):
        gel.TestCup(HARBOUR, minutes, 18, 2)


@pytest.mark.parametrize(("air_c", "percent"), [(math.nan, 2), (-273.15, 2), (18, 0)])
def test_a_cup_of_no_temperature_or_dose_is_refused(air_c: float, percent: float) -> None:
    """No sum can be done on it."""
    with pytest.raises(NotAFigure):
        gel.TestCup(HARBOUR, 30, air_c, percent)


CUPS = st.builds(
    gel.TestCup,
    st.just(HARBOUR),
    st.floats(1, 240),
    st.floats(5, 35),
    st.floats(0.5, 6),
    st.integers(0, 5),
    st.booleans(),
)
DAYS = st.floats(5, 35)


@given(st.lists(CUPS, min_size=1, max_size=5), DAYS, st.floats(1, 4))
def test_a_plan_is_never_longer_than_any_cup_in_use(
    cups: list[gel.TestCup], now_c: float, percent: float
) -> None:
    """Short is no longer than each used cup's own short end; long no shorter than its long end."""
    told = gel.gel_times(cups, HARBOUR, now_c, percent)
    if isinstance(told, gel.NoTimes):
        return
    for cup in told.used:
        figures = (cup.minutes, cup.air_c, cup.percent, now_c, percent)
        assert told.short.value <= answer(gel_short_end(*figures))
        assert told.long.value >= answer(gel_long_end(*figures))
    assert told.working.value >= 5


@given(st.lists(CUPS, min_size=1, max_size=5), DAYS, st.floats(5, 180))
def test_at_the_dose_chosen_the_plan_is_the_time_wanted(
    cups: list[gel.TestCup], now_c: float, wanted: float
) -> None:
    """No cup in use is sooner than wanted, and one is just there; the dose is in its band."""
    chosen = gel.dose_for_wanted(cups, HARBOUR, now_c, wanted)
    if isinstance(chosen, gel.NoTimes):
        assert len(chosen.reasons) == 1
        return
    assert 1 - 1e-9 <= chosen.value <= 4 + 1e-9
    used = gel.cups_to_go_by(cups, HARBOUR)
    ends = [
        answer(gel_short_end.inside(cup.minutes, cup.air_c, cup.percent, now_c, chosen.value))
        for cup in used
    ]
    assert min(ends) == pytest.approx(wanted)


def test_a_dose_for_a_time_that_is_wanted() -> None:
    """A cup of 20 min at 2 %: 4 % for 10 min on the same day, with its working."""
    chosen = gel.dose_for_wanted((gel.TestCup(HARBOUR, 20, 20, 2),), HARBOUR, 20, 10)
    assert not isinstance(chosen, gel.NoTimes)
    assert (chosen.method, chosen.unit) == (dose_for_gel, "%")
    assert chosen.value == pytest.approx(4)


@pytest.mark.parametrize(
    ("now_c", "wanted", "told"),
    [
        (20, 60, "Even at 1 % by mass it may gel after 28 min. Want less time, or another day."),
        (20, 9, "Even at 4 % by mass it takes 10 min or more. Want more time, or another day."),
        (4, 20, "It is 4 °C. No gel time is told below 5 °C: wait for a warmer day."),
    ],
)
def test_a_time_out_of_reach_has_a_reason(now_c: float, wanted: float, told: str) -> None:
    """From 20 min at 2 %: 28.3 at 1 % and 10 at 4 %, by hand."""
    chosen = gel.dose_for_wanted((gel.TestCup(HARBOUR, 20, 20, 2),), HARBOUR, now_c, wanted)
    assert isinstance(chosen, gel.NoTimes)
    assert [each.replace("\u00a0", " ") for each in chosen.reasons] == [told]


def test_a_dose_needs_a_cup() -> None:
    """Nothing is chosen out of the air."""
    chosen = gel.dose_for_wanted((OTHER_TIN,), HARBOUR, 20, 20)
    assert isinstance(chosen, gel.NoTimes)
    assert "Start a test cup" in chosen.reasons[0]
