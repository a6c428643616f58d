"""Local dates, counted on and back, and kept on the calendar."""

from datetime import UTC, date, datetime, timedelta

import pytest

from trainer.records.calendar_days import days_between, days_on, kept_on_calendar, noon

EARLIEST, LATEST = date(1970, 1, 1), date(9000, 1, 1)


@pytest.mark.parametrize("days", [-400, -1, 0, 1, 28, 29, 366])
def test_days_are_counted_on_and_back(days: int) -> None:
    """As the calendar does, over the leap day of 2028 too."""
    begin = date(2028, 2, 1)
    assert days_on(begin, days) == begin + timedelta(days=days)
    assert days_between(begin, days_on(begin, days)) == days


def test_a_day_earlier_is_below_zero() -> None:
    """Friday comes three days before Monday."""
    assert days_between(date(2026, 3, 9), date(2026, 3, 6)) == -3


@pytest.mark.parametrize(
    ("day", "days", "kept"),
    [
        (date.max, 0, LATEST),
        (date.max, 10**9, LATEST),
        (date.min, 0, EARLIEST),
        (date.min, -(10**9), EARLIEST),
        (LATEST, 1, LATEST),
        (EARLIEST, -1, EARLIEST),
        (EARLIEST, 0, EARLIEST),
        (LATEST, 0, LATEST),
    ],
)
def test_it_ends_at_1970_and_9000(day: date, days: int, kept: date) -> None:
    """A clock that was set to nonsense makes a date, and no fault."""
    assert days_on(day, days) == kept


@pytest.mark.parametrize(
    ("day", "kept"), [(date.min, EARLIEST), (date.max, LATEST), (date(2026, 3, 9),) * 2]
)
def test_a_date_on_the_calendar_stays(day: date, kept: date) -> None:
    """Any other becomes the nearest that can be counted on from."""
    assert kept_on_calendar(day) == kept


def test_noon_is_noon_in_utc() -> None:
    """Whatever zone the date was in: the date decides."""
    assert noon(date(2026, 3, 29)) == datetime(2026, 3, 29, 12, tzinfo=UTC)
