"""A made-up crew over a year behaves as the rules say: states, lists and predictions.

Twenty people with invented abilities and a fixed seed; `crew_year.py` prints and draws the same
year. The bounds are the rules' own, or wide enough for the luck of one seed where they say so.
"""

from datetime import date
from statistics import fmean

import pytest
from crew_year import (
    FIRST_DAY,
    LAST_DAY,
    NEXT_START,
    PEOPLE,
    WINTER,
    Year,
    as_the_model_thinks,
    lived,
    picture,
    table,
)

from trainer.records.refresher import refresher_list
from trainer.records.standing import STATES


@pytest.fixture(scope="module")
def year() -> Year:
    """The year, lived through once."""
    return lived()


def able(year: Year, least: float, most: float) -> list[int]:
    """How many skills cured for each of those who are so able."""
    return [len(each.cured_after) for each in year.people if least <= each.able <= most]


def test_every_state_is_seen(year: Year) -> None:
    """From Not started in March to Due again in January."""
    seen = {state for counts in year.states.values() for state in counts}
    assert seen == set(STATES)


def test_always_right_and_always_there_is_cured_on_day_fourteen(year: Year) -> None:
    """A skill that gels on a day of its own takes 14 days; none takes fewer."""
    best = year.people[-1]
    assert len(best.cured_after) == len(year.library.competencies.skills)
    assert sorted(best.cured_after.values())[len(best.cured_after) // 2] == 14
    assert min(best.cured_after.values()) == 14


def test_nobody_cures_faster_than_the_dates_let_them(year: Year) -> None:
    """Whatever their luck."""
    assert all(days >= 14 for each in year.people for days in each.cured_after.values())


def test_the_able_are_cured_and_those_who_guess_are_not(year: Year) -> None:
    """Nine in ten and better: everything. Under 65 in a hundred: a few skills, by luck.

    Of those who guess, and of the middle, the average is held to it: what luck gives one of them
    says little. Over sixteen seeds it lay at 5.6 and less, and at 15.5 and more, of 22 skills.
    """
    skills = len(year.library.competencies.skills)
    assert min(able(year, 0.9, 1.0)) == skills
    assert fmean(able(year, 0.0, 0.65)) < skills / 3
    assert 2 * skills / 3 < fmean(able(year, 0.7, 0.85)) < skills


def test_no_sitting_is_longer_than_a_day_offers(year: Year) -> None:
    """Twelve questions, whoever it is and however much is due."""
    assert max(max(each.sittings) for each in year.people) == year.rules.sittings.sitting_questions


def test_the_winter_takes_what_nobody_practises(year: Year) -> None:
    """Cured skills come due again one after the other, and what holds goes down."""
    autumn, winter = year.states[WINTER[0]], year.states[WINTER[1]]
    assert winter["Due again"] > 5 * autumn["Due again"]
    assert winter["Cured"] < autumn["Cured"] / 2
    assert share_held(year, WINTER[1]) < share_held(year, WINTER[0]) - 0.3


def share_held(year: Year, day: date) -> float:
    """The share of what was learnt that holds on a day."""
    held, had = year.held[day]
    return held / had


def test_the_refresher_brings_it_back(year: Year) -> None:
    """On the season's start as much holds as before the winter, to a twentieth."""
    assert share_held(year, NEXT_START) > share_held(year, WINTER[0]) - 0.05


def test_a_list_is_short_and_safety_comes_first(year: Year) -> None:
    """Fifteen at most a sitting, in the order of the rule."""
    most = year.rules.seasons.refresher_questions
    for each in year.people:
        assert set(each.listed) == {1, 2, 3}
        for listed in each.listed.values():
            assert len(listed) <= most
            assert listed == refresher_list(listed)
            safety = [outlook.facts.safety_critical for outlook in listed]
            assert safety == sorted(safety, reverse=True)


def test_the_lists_get_shorter_for_those_who_know(year: Year) -> None:
    """Of the able half each third list is shorter than the first, or both are empty."""
    for each in year.people[PEOPLE // 2 :]:
        first, _, third = (len(each.listed[number]) for number in (1, 2, 3))
        assert third < first or first == 0


def test_a_crew_that_is_less_able_than_the_model_thinks_is_told_to_be(year: Year) -> None:
    """It knows how skills fade and not how able somebody is: less is right than predicted."""
    told = year.comparison()
    assert told.answers >= year.rules.seasons.compared_answers
    assert (told.is_off, told.leans) == (True, "less")


def test_where_people_are_as_the_model_thinks_nothing_is_said() -> None:
    """All able, and forgetting just as it says: predicted and right lie close together."""
    year = lived(change=as_the_model_thinks)
    told = year.comparison()
    assert told.answers > 50
    assert told.gap < year.rules.seasons.compared_gap
    assert not told.is_off


def test_the_more_is_predicted_the_more_is_right(year: Year) -> None:
    """The order is useful where the figure isn't: the upper half of the tenths beats the lower."""
    tenths = year.comparison().tenths
    low, high = ([each for each in tenths if (each.place >= 6) is upper] for upper in (False, True))
    shares = [
        sum(each.right for each in half) / sum(each.answers for each in half)
        for half in (low, high)
    ]
    assert shares[1] > shares[0] + 0.1


def test_it_is_told_and_drawn(year: Year) -> None:
    """A line for each person, and a picture of the whole year."""
    assert len(table(year).splitlines()) > PEOPLE
    drawn = picture(year)
    weeks = (LAST_DAY - FIRST_DAY).days // 7 + 1
    assert drawn.count("<rect") >= weeks * 3
    assert drawn.startswith("<svg")
