"""Test cups: kept for whoever timed them, by the resin's name."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from records_cast import NOW, People

from trainer.records.cups import CupFacts, cups_of, keep_cup, take_back
from trainer.records.database import AnySession, writing

TODAY = date(2026, 3, 9)
CUP = CupFacts("Own brew", 25, 18, 2, 2, "by mass")


def kept(session: AnySession, person_id: int, facts: CupFacts = CUP, days_ago: int = 0) -> int:
    """Keep a cup that was noted so many days ago."""
    writing(session)
    back = timedelta(days=days_ago)
    return keep_cup(session, person_id, facts, NOW - back, TODAY - back)


def test_a_cup_is_kept_as_it_was_noted(any_session: AnySession, any_people: People) -> None:
    """Minutes, temperature, and the dose by mass and as it was given."""
    facts = replace(CUP, percent=2.34, dose=2, convention="ml per kg", from_batch=True)
    number = kept(any_session, any_people.mina, facts)
    (cup,) = cups_of(any_session, any_people.mina)
    assert (cup.cup_id, cup.facts, cup.local_date) == (number, facts, TODAY)


def test_the_newest_comes_first(any_session: AnySession, any_people: People) -> None:
    """Today's before yesterday's."""
    for days, minutes in ((3, 31), (0, 25), (1, 28)):
        kept(any_session, any_people.mina, replace(CUP, minutes=minutes), days)
    cups = cups_of(any_session, any_people.mina)
    assert [cup.facts.minutes for cup in cups] == [25, 28, 31]
    assert [cup.days_old(TODAY) for cup in cups] == [0, 1, 3]


def test_a_product_is_the_same_however_it_is_written(
    any_session: AnySession, any_people: People
) -> None:
    """Case and stray spaces make no other resin; another name does."""
    kept(any_session, any_people.mina, replace(CUP, product="  own  BREW "))
    kept(any_session, any_people.mina, replace(CUP, product="Other brew"))
    (cup,) = cups_of(any_session, any_people.mina, "Own brew")
    assert cup.facts.product == "own BREW"


def test_cups_are_their_own(any_session: AnySession, any_people: People) -> None:
    """Tom sees none of Mina's, and can take none of them back."""
    number = kept(any_session, any_people.mina)
    assert cups_of(any_session, any_people.tom) == []
    assert not take_back(any_session, any_people.tom, number)
    assert len(cups_of(any_session, any_people.mina)) == 1


def test_a_cup_is_taken_back_once(any_session: AnySession, any_people: People) -> None:
    """The second time there is nothing left to take back."""
    number = kept(any_session, any_people.mina)
    assert take_back(any_session, any_people.mina, number)
    assert not take_back(any_session, any_people.mina, number)
    assert cups_of(any_session, any_people.mina) == []


def test_a_clock_that_was_set_back_makes_no_cup_of_tomorrow(
    session: AnySession, people: People
) -> None:
    """A cup whose day is still to come counts as today's."""
    kept(session, people.mina, days_ago=-2)
    assert cups_of(session, people.mina)[0].days_old(TODAY) == 0


@pytest.mark.parametrize("product", ["", "   ", "a\0b", "two\nlines", "x" * 81])
def test_a_cup_needs_a_name(product: str) -> None:
    """Nothing, an unprintable sign or a page of text is no resin's name."""
    with pytest.raises(ValueError, match="needs the resin's name"):
        replace(CUP, product=product)


@pytest.mark.parametrize("field", ["minutes", "percent", "dose"])
@pytest.mark.parametrize("figure", [0, -1, float("nan"), float("inf")])
def test_a_cup_needs_figures(field: str, figure: float) -> None:
    """No minutes, or no number, tell nobody when resin gels."""
    with pytest.raises(ValueError, match="figures above zero"):
        replace(CUP, **{field: figure})
