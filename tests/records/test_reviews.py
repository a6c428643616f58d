"""The memory model behind its two functions: outcomes go in, a date and a share come out."""

import subprocess
import sys
from dataclasses import replace
from datetime import date

import pytest
from records_cast import RULES
from skills_cast import on

from trainer.records.calendar_days import days_between
from trainer.records.reviews import Card, card_after, recall


def heard(*outcomes: tuple[int, bool]) -> Card:
    """Return the card after these outcomes, each on its day."""
    card = None
    for day, right in outcomes:
        card = card_after(card, on(day), RULES, right=right)
    assert card is not None
    return card


STEADY = ((0, True), (1, True), (3, True), (7, True), (14, True))


def test_what_was_never_asked_is_not_there() -> None:
    """0, not a fault."""
    assert recall(None, on(0), RULES) == 0.0


def test_on_the_day_itself_and_before_it_is_there() -> None:
    """1: nothing is forgotten backwards."""
    card = heard(*STEADY)
    assert [recall(card, on(day), RULES) for day in (14, 13, -5000)] == [1.0, 1.0, 1.0]


def test_it_fades_day_by_day() -> None:
    """Always above nothing, always less than the day before."""
    card = heard(*STEADY)
    told = [recall(card, on(day), RULES) for day in range(14, 2000)]
    assert told == sorted(set(told), reverse=True)
    assert told[-1] > 0


def test_it_comes_back_when_nine_in_ten_are_left() -> None:
    """On its date the share is what the rules want, to the half day that dates are rounded to."""
    card = heard(*STEADY)
    days = days_between(card.heard, card.due)
    assert recall(card, on(14 + days - 1), RULES) > 0.9 > recall(card, on(14 + days + 1), RULES)


def test_wanting_more_brings_it_back_sooner() -> None:
    """The wanted share is the rules' own."""
    strict = replace(RULES, recall_wanted=0.95)
    assert card_after(heard(*STEADY[:-1]), on(14), strict, right=True).due < heard(*STEADY).due


def test_a_wrong_one_brings_it_back_sooner_than_a_right_one() -> None:
    """And makes it harder."""
    right, wrong = heard(*STEADY, (60, True)), heard(*STEADY, (60, False))
    assert on(60) < wrong.due < right.due
    assert wrong.difficulty > right.difficulty


def test_it_never_stays_away_longer_than_the_rules_say() -> None:
    """120 days, however well it is known."""
    card = heard(*((day, True) for day in (0, 3, 20, 90, 210, 330, 450)))
    assert card.stability > 120
    assert days_between(card.heard, card.due) == 120


@pytest.mark.parametrize("rights", [(True,), (False,), (True, False, False, False, False)])
def test_it_stays_away_a_day_at_least(rights: tuple[bool, ...]) -> None:
    """However badly it is known."""
    card = heard(*enumerate(rights))
    assert days_between(card.heard, card.due) >= 1


def test_dates_never_run_backwards() -> None:
    """An outcome dated before the last one counts on its day."""
    card = heard(*STEADY)
    assert card_after(card, on(2), RULES, right=True).heard == on(14)
    assert card_after(card, on(2), RULES, right=True) == card_after(card, on(14), RULES, right=True)


def test_chance_has_no_part_in_it() -> None:
    """The same outcomes give the same card each time: a count from the tries must."""
    outcomes = (*STEADY, (40, True), (90, True))
    assert len({heard(*outcomes) for _ in range(20)}) == 1


@pytest.mark.parametrize("day", [date(1970, 1, 1), date(9000, 1, 1)])
def test_the_ends_of_the_calendar_are_no_fault(day: date) -> None:
    """Where a clock can have been."""
    card = card_after(card_after(None, day, RULES, right=True), day, RULES, right=False)
    assert 0 < recall(card, date(9000, 1, 1), RULES) <= 1


def test_it_is_read_at_the_first_answer_and_not_before() -> None:
    """A start doesn't wait for it."""
    script = "import sys, trainer.records; print('fsrs' in sys.modules)"
    said = subprocess.run(  # noqa: S603 - our own words
        [sys.executable, "-c", script], check=True, capture_output=True, text=True
    )
    assert said.stdout.strip() == "False"
