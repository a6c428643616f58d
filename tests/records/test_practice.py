"""How far somebody has come with the questions on one roof."""

from collections.abc import Callable

from records_cast import ASKED, People, record

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, writing
from trainer.records.practice import PracticeRow, practice_rows
from trainer.records.progress import lesson_rows, question_rows
from trainer.records.recount import rebuild

Try = Callable[..., AttemptFacts]

GARAGE, PORCH = "ab12", "cd34"
SLIPPED = {"right": False, "finished": False}


def on_garage(session: AnySession, person_id: int) -> dict[str, PracticeRow]:
    """What somebody has done on the garage."""
    return practice_rows(session, person_id, GARAGE, ASKED)


def test_a_roof_that_nobody_practised_on_has_no_rows(
    any_session: AnySession, any_people: People
) -> None:
    """Nothing is tried, and nothing is right."""
    assert on_garage(any_session, any_people.mina) == {}


def test_tries_on_one_roof_are_counted_by_question(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Two first tries, one of them mended on the second, and another question that is open."""
    writing(any_session)
    mina = any_people.mina
    record(any_session, a_try(mina, roof=GARAGE, **SLIPPED))
    record(any_session, a_try(mina, roof=GARAGE, try_no=2))
    record(any_session, a_try(mina, roof=GARAGE, count=1, right=False))
    record(any_session, a_try(mina, roof=GARAGE, question_id="syringe-mark", **SLIPPED))
    assert on_garage(any_session, mina) == {
        "batch-catalyst": PracticeRow("batch-catalyst", 2, 2, ever_right=True),
        "syringe-mark": PracticeRow("syringe-mark", 1, 0, ever_right=False),
    }


def test_another_roof_begins_anew(any_session: AnySession, any_people: People, a_try: Try) -> None:
    """So does the same roof once it was changed: its digest is another."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, roof=PORCH))
    record(any_session, a_try(any_people.mina))
    assert on_garage(any_session, any_people.mina) == {}


def test_another_persons_tries_are_theirs(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Tom's right answer on the same roof is no help to Mina."""
    writing(any_session)
    record(any_session, a_try(any_people.tom, roof=GARAGE))
    assert on_garage(any_session, any_people.mina) == {}
    assert on_garage(any_session, any_people.tom)["batch-catalyst"].ever_right


def test_only_the_questions_asked_for_are_told(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """One that isn't asked any more stays in the records and out of the list."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, roof=GARAGE))
    assert practice_rows(any_session, any_people.mina, GARAGE, ["syringe-mark"]) == {}
    assert practice_rows(any_session, any_people.mina, GARAGE, []) == {}


def test_the_same_count_on_two_roofs_is_two_runs(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Each roof counts its own runs, and a form sent twice still counts once."""
    writing(any_session)
    kept = [record(any_session, a_try(any_people.mina, roof=roof)) for roof in (GARAGE, PORCH)]
    assert [each.first for each in kept] == [True, True]
    assert not record(any_session, a_try(any_people.mina, roof=GARAGE)).first
    assert on_garage(any_session, any_people.mina)["batch-catalyst"].tried == 1


def test_no_lesson_hears_of_practice_on_a_roof(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Its question is counted, its lesson isn't: not at once, and not when counted again."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, roof=GARAGE))
    record(any_session, a_try(any_people.mina, roof=PORCH, right=False))
    for _ in range(2):
        (row,) = question_rows(any_session, any_people.mina)
        assert (row.tried, row.right, row.finished) == (2, 1, 2)
        assert lesson_rows(any_session, any_people.mina, ASKED) == []
        rebuild(any_session)
