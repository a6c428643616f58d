"""What was predicted before a season, against what came of it."""

from datetime import date, timedelta

import pytest
from records_cast import NOW, SEASONS, People

from trainer.records.comparison import compare, predicted_turns
from trainer.records.database import AnySession, writing
from trainer.records.sitting_rows import PRACTICE, REFRESHER, TurnFacts
from trainer.records.sittings import begin_sitting, note_answer

TODAY = date(2026, 3, 9)


def test_answers_are_told_in_tenths() -> None:
    """Each with how many were predicted right, and how many were."""
    told = compare([(0.85, True), (0.81, False), (0.33, False), (1.0, True)], SEASONS)
    assert [(each.place, each.answers, each.right) for each in told.tenths] == [
        (3, 1, 0),
        (8, 2, 1),
        (9, 1, 1),
    ]
    assert told.tenths[1].expected == pytest.approx(1.66)
    assert told.tenths[1].gap == pytest.approx(0.33)


def test_without_answers_there_is_nothing_to_tell() -> None:
    """Not a gap of nought."""
    told = compare([], SEASONS)
    assert (told.tenths, told.answers, told.is_off, told.leans) == ((), 0, False, "")


@pytest.mark.parametrize(
    ("answers", "right", "enough", "off"),
    [(199, 100, False, False), (200, 140, True, True), (200, 162, True, False)],
    ids=["too few", "off", "near enough"],
)
def test_a_gap_is_told_from_two_hundred_answers_on(
    answers: int, right: int, *, enough: bool, off: bool
) -> None:
    """Predicted 0.9 each: seventy in a hundred is off, 81 in a hundred isn't."""
    told = compare([(0.9, number < right) for number in range(answers)], SEASONS)
    assert (told.is_enough, told.is_off, told.leans) == (enough, off, "less")


def test_more_right_than_predicted_is_off_too() -> None:
    """People then answer more often than they need."""
    told = compare([(0.5, True)] * 200, SEASONS)
    assert (told.is_off, told.leans) == (True, "more")


def test_too_high_here_doesn_t_make_up_for_too_low_there() -> None:
    """Predicted 0.9 and 0.1, and half of each right: 0.4 off in both, though not on the whole."""
    told = compare([(0.9, True), (0.9, False), (0.1, True), (0.1, False)] * 50, SEASONS)
    assert told.gap == pytest.approx(0.4)
    assert (told.is_off, told.leans) == (True, "both")


def test_a_gap_of_just_as_much_as_is_allowed_is_not_off() -> None:
    """Nine in ten predicted, eight in ten right: a tenth apart, whatever floats make of it."""
    told = compare([(0.9, number % 10 < 8) for number in range(300)], SEASONS)
    assert told.gap == pytest.approx(0.1)
    assert not told.is_off


def test_an_answer_on_another_day_meets_no_prediction(
    any_session: AnySession, any_people: People
) -> None:
    """It was for the day on which the sitting began."""
    writing(any_session)
    turns = [TurnFacts("q", "fall", "Cured", 0.8), TurnFacts("r", "dose", "Cured", 0.7)]
    sitting = begin_sitting(
        any_session, any_people.mina, turns, NOW, TODAY, kind=REFRESHER, season_id=1
    )
    for position, later in ((1, timedelta(hours=3)), (2, timedelta(days=3))):
        note_answer(
            any_session, sitting, position, count=0, right=True, unaided=True, now=NOW + later
        )
    assert predicted_turns(any_session, 1) == [(0.8, True)]


def test_only_unaided_first_tries_of_that_season_s_refresher_count(
    any_session: AnySession, any_people: People
) -> None:
    """Not practice, nor another season, nor with help, nor what isn't answered."""
    writing(any_session)
    turns = [TurnFacts(f"q{number}", "fall", "Cured", 0.8) for number in range(3)]
    for kind, season in ((REFRESHER, 1), (REFRESHER, 2), (PRACTICE, 0)):
        sitting = begin_sitting(
            any_session, any_people.mina, turns, NOW, TODAY, kind=kind, season_id=season
        )
        for position, unaided in ((1, True), (2, False)):
            note_answer(
                any_session, sitting, position, count=0, right=True, unaided=unaided, now=NOW
            )
    assert predicted_turns(any_session, 1) == [(0.8, True)]
    assert predicted_turns(any_session, 1, crew_id=999) == []
