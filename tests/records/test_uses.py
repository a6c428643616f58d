"""Uses on a job: noted by whoever did it, confirmed by somebody else; the clocks go by them."""

from dataclasses import replace
from datetime import date

import pytest
from records_cast import NOW, People

from trainer.records.database import AnySession, writing
from trainer.records.rules import UseRules
from trainer.records.uses import (
    UseFacts,
    answer_use,
    earliest_noted,
    last_used,
    note_use,
    take_back_use,
    unused_until,
    uses_of,
    waiting_uses,
)

TODAY = date(2026, 3, 9)
TAPED = UseFacts("taping", "Barn at Holt Lane", TODAY)
RULES = UseRules(unused_days=180, unused_days_if_safety_critical=90, use_noted_within_days=30)


def noted(session: AnySession, person_id: int, facts: UseFacts = TAPED) -> int:
    """Note a use, and return its number."""
    writing(session)
    assert note_use(session, person_id, facts, NOW)
    return max(each.use_id for each in uses_of(session, person_id))


def confirmed(session: AnySession, people: People, facts: UseFacts) -> None:
    """Have Mina's use confirmed."""
    number = noted(session, people.mina, facts)
    assert answer_use(session, number, "confirmed", by=people.tom, crew_id=None, now=NOW)


def test_a_use_waits_until_somebody_answers(any_session: AnySession, any_people: People) -> None:
    """It stands in its owner's list, and in the crew's."""
    noted(any_session, any_people.mina)
    (own,) = uses_of(any_session, any_people.mina)
    assert (own.facts, own.answer, own.answered_by) == (TAPED, "", "")
    assert waiting_uses(any_session, None) == [own]
    assert last_used(any_session, [any_people.mina], TODAY) == {any_people.mina: {}}


def test_the_same_use_noted_twice_is_one(any_session: AnySession, any_people: People) -> None:
    """A form sent twice says so, and adds nothing."""
    noted(any_session, any_people.mina)
    assert not note_use(any_session, any_people.mina, TAPED, NOW)
    assert len(uses_of(any_session, any_people.mina)) == 1


def test_another_day_roof_or_competency_is_another_use(
    any_session: AnySession, any_people: People
) -> None:
    """Three that differ in one thing each, the latest day first."""
    for facts in (
        replace(TAPED, used_on=date(2026, 3, 6)),
        replace(TAPED, roof="Porch in Mill Road"),
        replace(TAPED, competency="mixing"),
    ):
        noted(any_session, any_people.mina, facts)
    kept = [each.facts for each in uses_of(any_session, any_people.mina)]
    assert len(kept) == 3
    assert kept[-1].used_on == date(2026, 3, 6)


def test_a_confirmed_use_sets_the_clock_back(any_session: AnySession, any_people: People) -> None:
    """The latest day counts, in whatever order they were confirmed."""
    for day in (6, 9, 2):
        confirmed(any_session, any_people, replace(TAPED, used_on=date(2026, 3, day)))
    assert last_used(any_session, [any_people.mina], TODAY) == {
        any_people.mina: {"taping": date(2026, 3, 9)}
    }


def test_one_that_nobody_can_confirm_sets_nothing_back(
    any_session: AnySession, any_people: People
) -> None:
    """It no longer waits, and says who couldn't."""
    number = noted(any_session, any_people.mina)
    row = answer_use(any_session, number, "not confirmed", by=any_people.tom, crew_id=None, now=NOW)
    assert row is not None
    assert (row.answer, row.answered_by) == ("not confirmed", "Tom")
    assert waiting_uses(any_session, None) == []
    assert last_used(any_session, [any_people.mina], TODAY) == {any_people.mina: {}}


def test_the_first_answer_stands(any_session: AnySession, any_people: People) -> None:
    """Two supervisors with the same page open: the second is told that there is none left."""
    number = noted(any_session, any_people.mina)
    for said, left in (("confirmed", False), ("not confirmed", True)):
        answered = answer_use(any_session, number, said, by=any_people.tom, crew_id=None, now=NOW)
        assert (answered is None) is left
    assert uses_of(any_session, any_people.mina)[0].answer == "confirmed"


def test_nobody_confirms_their_own(any_session: AnySession, any_people: People) -> None:
    """Nor is it in their list of what waits."""
    number = noted(any_session, any_people.mina)
    assert (
        answer_use(any_session, number, "confirmed", by=any_people.mina, crew_id=None, now=NOW)
        is None
    )
    assert waiting_uses(any_session, None, but_not=any_people.mina) == []


def test_nobody_confirms_for_another_crew(any_session: AnySession, any_people: People) -> None:
    """To them it isn't there."""
    number = noted(any_session, any_people.mina)
    assert (
        answer_use(any_session, number, "confirmed", by=any_people.tom, crew_id=999, now=NOW)
        is None
    )
    assert waiting_uses(any_session, 999) == []


def test_an_answer_is_one_of_two(any_session: AnySession, any_people: People) -> None:
    """Anything else is a fault of the door."""
    number = noted(any_session, any_people.mina)
    with pytest.raises(ValueError, match="'maybe' is no answer"):
        answer_use(any_session, number, "maybe", by=any_people.tom, crew_id=None, now=NOW)


def test_a_use_is_taken_back_while_it_waits(any_session: AnySession, any_people: People) -> None:
    """By its owner, once; not after it was answered."""
    number = noted(any_session, any_people.mina)
    assert not take_back_use(any_session, any_people.tom, number)
    assert take_back_use(any_session, any_people.mina, number)
    assert not take_back_use(any_session, any_people.mina, number)
    confirmed(any_session, any_people, TAPED)
    (row,) = uses_of(any_session, any_people.mina)
    assert not take_back_use(any_session, any_people.mina, row.use_id)


def test_a_day_to_come_counts_as_today(any_session: AnySession, any_people: People) -> None:
    """The clock was wrong when it was noted, and nobody gains a year by it."""
    confirmed(any_session, any_people, replace(TAPED, used_on=date(2031, 1, 1)))
    assert last_used(any_session, [any_people.mina], TODAY)[any_people.mina] == {"taping": TODAY}


def test_a_roof_has_a_name() -> None:
    """Of one line, and not too long."""
    for roof in ("", "two\nlines", "x" * 81):
        with pytest.raises(ValueError, match="needs the roof's name"):
            UseFacts("taping", roof, TODAY)


def test_the_clock_runs_half_as_long_where_a_lapse_hurts_somebody() -> None:
    """180 days from 9 March end on 5 September, 90 on 7 June."""
    assert unused_until(TODAY, RULES, safety_critical=False) == date(2026, 9, 5)
    assert unused_until(TODAY, RULES, safety_critical=True) == date(2026, 6, 7)


def test_a_use_may_be_noted_for_a_month() -> None:
    """Thirty days before 9 March is 7 February."""
    assert earliest_noted(TODAY, RULES) == date(2026, 2, 7)
