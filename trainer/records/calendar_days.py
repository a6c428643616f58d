"""Local dates as the skills use them: counted on and back, and never off the calendar's end."""

from datetime import UTC, date, datetime, time

__all__ = ["days_between", "days_on", "kept_on_calendar", "noon"]

_EARLIEST = date(1970, 1, 1).toordinal()
_LATEST = date(9000, 1, 1).toordinal()


def days_on(day: date, days: int) -> date:
    """Return the date so many days after `day`, before it when `days` is below zero.

    It stays between 1970 and 9000: a clock that was set to nonsense makes a date, and no fault.
    """
    return date.fromordinal(min(max(day.toordinal() + days, _EARLIEST), _LATEST))


def kept_on_calendar(day: date) -> date:
    """Return the date itself, or the nearest one that can be counted on from."""
    return days_on(day, 0)


def days_between(earlier: date, later: date) -> int:
    """Return how many days `later` comes after `earlier`; below zero where it comes before."""
    return later.toordinal() - earlier.toordinal()


def noon(day: date) -> datetime:
    """Return noon UTC of a date: a date decides, not an hour."""
    return datetime.combine(day, time(12), UTC)
