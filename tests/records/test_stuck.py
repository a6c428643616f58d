"""Who is stuck on what."""

from collections.abc import Callable

from records_cast import ASKED, STUCK, People, record

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, writing
from trainer.records.stuck import Stuck, stuck_rows


def test_two_tries_without_a_right_one_are_stuck(
    any_session: AnySession, any_people: People, a_try: Callable[..., AttemptFacts]
) -> None:
    """One wrong try isn't; a right one ends it; another's tries are another's."""
    writing(any_session)
    for count in range(2):
        record(any_session, a_try(any_people.mina, count=count, right=False))
    record(any_session, a_try(any_people.tom, right=False))
    people = (any_people.mina, any_people.tom)
    assert stuck_rows(any_session, people, ASKED, STUCK) == {
        any_people.mina: [Stuck("batch-catalyst", 2)]
    }
    record(any_session, a_try(any_people.mina, count=2))
    assert stuck_rows(any_session, people, ASKED, STUCK) == {}


def test_a_question_that_is_no_longer_asked_keeps_nobody(
    any_session: AnySession, any_people: People, a_try: Callable[..., AttemptFacts]
) -> None:
    """Only today's questions can be stuck on."""
    writing(any_session)
    for count in range(2):
        record(any_session, a_try(any_people.mina, count=count, right=False))
    assert stuck_rows(any_session, (any_people.mina,), ("syringe-mark",), STUCK) == {}
