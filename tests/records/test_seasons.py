"""The season's start: set by the office, moved before it, and never to a day of nonsense."""

from datetime import date, timedelta

import pytest
from records_cast import NOW, SEASONS, People

from trainer.records.database import AnySession, writing
from trainer.records.seasons import (
    SeasonRow,
    StartInThePast,
    StartTooFarAhead,
    current_season,
    set_start,
    sitting_dates,
)

TODAY = date(2026, 1, 20)
MARCH = date(2026, 3, 9)


def set_by(session: AnySession, person_id: int, starts: date, today: date = TODAY) -> SeasonRow:
    """Set the start on a day, as the office does."""
    writing(session)
    return set_start(session, starts, today, SEASONS, by=person_id, now=NOW)


def test_at_first_there_is_none(any_session: AnySession) -> None:
    """Nobody has set one."""
    assert current_season(any_session) is None


def test_a_start_is_set(any_session: AnySession, any_people: People) -> None:
    """On any day from today on."""
    season = set_by(any_session, any_people.mina, MARCH)
    assert current_season(any_session) == season
    assert season.starts == MARCH
    assert set_by(any_session, any_people.mina, TODAY).starts == TODAY


def test_before_it_a_start_is_moved(any_session: AnySession, any_people: People) -> None:
    """It stays the same season, so that sittings stay with it."""
    first = set_by(any_session, any_people.mina, MARCH)
    moved = set_by(any_session, any_people.mina, MARCH + timedelta(days=14))
    assert moved.season_id == first.season_id
    assert current_season(any_session) == moved


def test_after_it_another_season_begins(any_session: AnySession, any_people: People) -> None:
    """The old one's sittings stay with the old one."""
    first = set_by(any_session, any_people.mina, MARCH)
    later = date(2026, 11, 1)
    second = set_by(any_session, any_people.mina, date(2027, 3, 1), today=later)
    assert second.season_id != first.season_id
    assert current_season(any_session) == second


@pytest.mark.parametrize(("days_on", "is_moved"), [(1, True), (70, True), (74, False)])
def test_a_start_that_is_put_off_stays_the_same_season(
    any_session: AnySession, any_people: People, days_on: int, *, is_moved: bool
) -> None:
    """As long as the new sittings begin before the old ones have closed, 45 days on."""
    first = set_by(any_session, any_people.mina, MARCH)
    today = MARCH + timedelta(days=1)
    later = set_by(any_session, any_people.mina, MARCH + timedelta(days=days_on), today)
    assert (later.season_id == first.season_id) == is_moved


def test_a_start_in_the_past_is_refused(any_session: AnySession, any_people: People) -> None:
    """With a sentence that says why."""
    with pytest.raises(StartInThePast, match="That day has passed"):
        set_by(any_session, any_people.mina, TODAY - timedelta(days=1))
    assert current_season(any_session) is None


@pytest.mark.parametrize("starts", [date(2031, 3, 1), date.max])
def test_a_start_years_off_is_refused(
    any_session: AnySession, any_people: People, starts: date
) -> None:
    """It names the year that was typed, and the latest day."""
    with pytest.raises(StartTooFarAhead) as told:
        set_by(any_session, any_people.mina, starts)
    assert str(told.value) == (
        f"That is in {starts.year}: look at the year. A start can be set up to 24 February 2027."
    )


def test_the_sittings_lie_round_the_start() -> None:
    """Four weeks and ten days before 9 March 2026, and in its third week."""
    assert sitting_dates(MARCH, SEASONS) == [
        date(2026, 2, 9),
        date(2026, 2, 27),
        date(2026, 3, 26),
    ]
