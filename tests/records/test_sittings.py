"""Sittings: planned once, then left and taken up anywhere."""

from datetime import date, timedelta

import pytest
from records_cast import NOW, People

from trainer.records.database import AnySession, writing
from trainer.records.rules import SittingRules
from trainer.records.sitting_rows import REFRESHER, SittingRow, TurnFacts
from trainer.records.sittings import (
    begin_sitting,
    end_sitting,
    last_sitting,
    minutes_of,
    note_answer,
    sat_whole,
    sitting_of,
    sittings_of_season,
)

TODAY = date(2026, 3, 9)
TURNS = [
    TurnFacts("first", "fall", "Gelled"),
    TurnFacts("second", "dose", "Cured", predicted=0.81),
    TurnFacts("third", "fall", "Gelled"),
]
RULES = SittingRules(
    sitting_questions=12,
    sitting_minutes=10,
    break_minutes=5,
    returns_after=3,
    same_numbers_after_days=90,
    numberless_after_days=14,
)


def begun(session: AnySession, person_id: int, day: date = TODAY) -> SittingRow:
    """Begin a sitting, and return it as it is kept."""
    writing(session)
    number = begin_sitting(session, person_id, TURNS, NOW, day)
    sitting = sitting_of(session, person_id, number)
    assert sitting is not None
    return sitting


def answered(session: AnySession, person_id: int, *minutes: float) -> SittingRow:
    """Begin a sitting, and answer its turns so many minutes after its beginning."""
    sitting = begun(session, person_id)
    for position, after in enumerate(minutes, start=1):
        note_answer(
            session,
            sitting.sitting_id,
            position,
            count=0,
            right=True,
            unaided=True,
            now=NOW + timedelta(minutes=after),
        )
    session.expire_all()
    found = sitting_of(session, person_id, sitting.sitting_id)
    assert found is not None
    return found


def test_a_sitting_is_kept_as_it_was_planned(any_session: AnySession, any_people: People) -> None:
    """Its turns in order, each with the skill and where that stood."""
    sitting = begun(any_session, any_people.mina)
    assert [each.facts for each in sitting.turns] == TURNS
    assert [each.position for each in sitting.turns] == [1, 2, 3]
    assert not any(each.is_answered for each in sitting.turns)
    assert (sitting.local_date, sitting.begun_at, sitting.ended_at) == (TODAY, NOW, None)


def test_practice_is_begun_once_a_day(any_session: AnySession, any_people: People) -> None:
    """A second press finds the first one's; another day and another person have their own."""
    first = begun(any_session, any_people.mina)
    assert begun(any_session, any_people.mina).sitting_id == first.sitting_id
    assert len(begun(any_session, any_people.mina).turns) == 3
    others = begun(any_session, any_people.tom), begun(any_session, any_people.mina, date.max)
    assert len({first.sitting_id, *(each.sitting_id for each in others)}) == 3


def test_the_refresher_is_begun_once_a_number(any_session: AnySession, any_people: People) -> None:
    """Whatever the day it is gone on with."""
    mina = any_people.mina
    writing(any_session)
    numbers = [
        begin_sitting(
            any_session, mina, TURNS, NOW, day, kind=REFRESHER, season_id=7, number=number
        )
        for day, number in ((TODAY, 1), (date(2026, 3, 12), 1), (date(2026, 3, 20), 2))
    ]
    assert numbers[0] == numbers[1] != numbers[2]
    kept = sittings_of_season(any_session, mina, 7)
    assert [each.number for each in kept] == [1, 2]
    assert sittings_of_season(any_session, mina, 8) == []
    assert last_sitting(any_session, mina) is None


def test_nobody_sees_another_s(any_session: AnySession, any_people: People) -> None:
    """To Tom it isn't there, nor can he end it."""
    sitting = begun(any_session, any_people.mina)
    assert sitting_of(any_session, any_people.tom, sitting.sitting_id) is None
    assert not end_sitting(any_session, any_people.tom, sitting.sitting_id, NOW)


def test_the_first_answer_of_a_turn_stands(any_session: AnySession, any_people: People) -> None:
    """A form sent twice changes nothing."""
    sitting = answered(any_session, any_people.mina, 1)
    note_answer(
        any_session,
        sitting.sitting_id,
        1,
        count=4,
        right=False,
        unaided=False,
        now=NOW + timedelta(hours=1),
    )
    any_session.expire_all()
    found = sitting_of(any_session, any_people.mina, sitting.sitting_id)
    assert found is not None
    turn = found.turn(1)
    assert turn is not None
    assert (turn.count, turn.right, turn.answered_at) == (0, True, NOW + timedelta(minutes=1))


def test_it_is_ended_once(any_session: AnySession, any_people: People) -> None:
    """The time of the first press is kept."""
    mina = any_people.mina
    sitting = begun(any_session, mina)
    assert end_sitting(any_session, mina, sitting.sitting_id, NOW)
    assert not end_sitting(any_session, mina, sitting.sitting_id, NOW + timedelta(hours=1))
    any_session.expire_all()
    ended = last_sitting(any_session, mina)
    assert ended is not None
    assert ended.ended_at == NOW


@pytest.mark.parametrize("position", [0, -1, 4, 99])
def test_a_place_that_it_doesn_t_have_has_no_turn(
    any_session: AnySession, any_people: People, position: int
) -> None:
    """Nor the last one by counting from behind."""
    assert begun(any_session, any_people.mina).turn(position) is None


@pytest.mark.parametrize(
    ("answers", "minutes"),
    [
        ((), 0),
        ((2, 3), 3),
        # Ten minutes away count as a break of five.
        ((2, 12, 13), 8),
        # A phone's clock that runs backwards counts for nothing.
        ((4, 1), 4),
    ],
)
def test_minutes_are_counted_from_answer_to_answer(
    any_session: AnySession, any_people: People, answers: tuple[float, ...], minutes: float
) -> None:
    """From the beginning on, and no break as longer than it counts."""
    sitting = answered(any_session, any_people.mina, *answers)
    assert minutes_of(sitting, RULES) == pytest.approx(minutes)


def test_a_sitting_is_sat_whole_when_all_of_it_was_right(
    any_session: AnySession, any_people: People
) -> None:
    """A question left or wrong is none of it; one that no lesson asks any more is no matter."""
    mina, tom, ruth = any_people.mina, any_people.tom, any_people.ruth
    writing(any_session)
    for person, told in ((mina, (True, True)), (tom, (True, False)), (ruth, (True,))):
        sitting = begin_sitting(
            any_session, person, TURNS, NOW, TODAY, kind=REFRESHER, season_id=7, number=1
        )
        for position, right in enumerate(told, start=1):
            note_answer(any_session, sitting, position, count=0, right=right, unaided=True, now=NOW)
    people, asked = [mina, tom, ruth], ["first", "second"]
    assert sat_whole(any_session, people, 7, 1, asked) == {mina}
    assert sat_whole(any_session, people, 7, 1, [*asked, "third"]) == set()
    assert sat_whole(any_session, people, 7, 2, asked) == set()
    assert sat_whole(any_session, [tom], 7, 1, asked) == set()
