"""When a Cured skill comes back: dates that go by days alone."""

from datetime import date, timedelta

import pytest
from records_cast import RULES

from trainer.records.reviews import Card, card_after, recall

DAY = date(2026, 3, 9)


def card(*days: tuple[int, bool]) -> Card:
    """Return the card after these outcomes, by days from the first."""
    kept = None
    for after, right in days:
        kept = card_after(kept, DAY + timedelta(days=after), RULES, right=right)
    assert kept is not None
    return kept


def test_what_was_never_asked_is_not_there() -> None:
    """Nought, and not an error."""
    assert recall(None, DAY, RULES) == 0.0


def test_on_its_day_it_is_there_and_then_it_fades() -> None:
    """Each day a little less."""
    kept = card((0, True))
    shares = [recall(kept, DAY + timedelta(days=days), RULES) for days in (0, 1, 5, 50, 500)]
    assert shares[0] == 1.0
    assert shares == sorted(shares, reverse=True)


def test_before_its_last_day_it_is_there() -> None:
    """A clock that was set back makes nobody forget."""
    assert recall(card((0, True)), DAY - timedelta(days=30), RULES) == 1.0


def test_it_comes_back_when_nine_in_ten_would_still_have_it() -> None:
    """Rounded to a day: the day before is above, the day after below."""
    kept = card((0, True), (3, True), (14, True))
    before, after = (recall(kept, kept.due + timedelta(days=days), RULES) for days in (-1, 1))
    assert after < RULES.recall_wanted < before


def test_a_wrong_one_brings_it_back_sooner() -> None:
    """Than a right one on the same day."""
    right, wrong = card((0, True), (9, True)), card((0, True), (9, False))
    assert wrong.due < right.due
    assert wrong.stability < right.stability


def test_it_stays_away_no_longer_than_the_longest_gap() -> None:
    """However firm it sits."""
    days = [(number * 120, True) for number in range(9)]
    kept = card(*days)
    assert (kept.due - kept.heard).days == RULES.longest_gap_days


def test_an_outcome_dated_before_the_last_counts_on_its_day() -> None:
    """Dates never run backwards."""
    kept = card_after(card((5, True)), DAY, RULES, right=True)
    assert kept.heard == DAY + timedelta(days=5)


@pytest.mark.parametrize("right", [True, False])
def test_a_card_is_made_of_a_date_alone(right: bool) -> None:  # noqa: FBT001
    """Nothing is drawn by lot: the same outcome on the same day makes the same card."""
    assert card_after(None, DAY, RULES, right=right) == card_after(None, DAY, RULES, right=right)
