"""The running totals: what each try adds, and what it doesn't."""

from collections.abc import Callable
from datetime import date, timedelta

from records_cast import ANSWER, ASKED, NOW, People, record

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, writing
from trainer.records.progress import LessonRow, QuestionRow, lesson_rows, question_row
from trainer.records.recount import rebuild

Try = Callable[..., AttemptFacts]

WRONG = {"right": False, "finished": True}
SLIPPED = {"right": False, "finished": False}


def lesson(session: AnySession, person_id: int) -> LessonRow:
    """The total of the one lesson somebody has answered in."""
    (row,) = lesson_rows(session, person_id, ASKED)
    return row


def question(session: AnySession, person_id: int) -> QuestionRow:
    """The total of the usual question."""
    row = question_row(session, person_id, "batch-catalyst")
    assert row is not None
    return row


def test_a_first_try_counts_right_or_wrong(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Two runs, one right: two tried, one right, two finished."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    record(any_session, a_try(any_people.mina, count=1, **WRONG))
    told = question(any_session, any_people.mina)
    assert (told.tried, told.right, told.finished, told.ever_right) == (2, 1, 2, True)
    whole = lesson(any_session, any_people.mina)
    assert (whole.tried, whole.right, whole.questions_right) == (2, 1, 1)


def test_a_retry_adds_no_try(any_session: AnySession, any_people: People, a_try: Try) -> None:
    """A slip and a right retry: one tried, none right, one finished, and right once after all."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, **SLIPPED))
    told = question(any_session, any_people.mina)
    assert (told.tried, told.finished, told.ever_right) == (1, 0, False)
    record(any_session, a_try(any_people.mina, try_no=2))
    told = question(any_session, any_people.mina)
    assert (told.tried, told.right, told.finished, told.ever_right) == (1, 0, 1, True)
    assert lesson(any_session, any_people.mina).questions_right == 1


def test_a_second_try_that_mends_its_own_line_alone_is_not_right(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Its answer is right, and other lines of the run weren't: never right, counted again too."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, **SLIPPED))
    record(any_session, a_try(any_people.mina, try_no=2, **WRONG, answers=(ANSWER,)))
    for _ in range(2):
        told = question(any_session, any_people.mina)
        assert (told.tried, told.right, told.finished, told.ever_right) == (1, 0, 1, False)
        assert lesson(any_session, any_people.mina).questions_right == 0
        rebuild(any_session)


def test_a_question_is_right_once_in_its_lesson(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Right three times is one question right; another question makes two."""
    writing(any_session)
    for count in range(3):
        record(any_session, a_try(any_people.mina, count=count))
    assert lesson(any_session, any_people.mina).questions_right == 1
    record(any_session, a_try(any_people.mina, question_id="syringe-mark"))
    assert lesson(any_session, any_people.mina).questions_right == 2


def test_a_wrong_one_later_takes_nothing_away(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """What was right once stays right once."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    record(any_session, a_try(any_people.mina, count=1, **WRONG))
    assert question(any_session, any_people.mina).ever_right
    assert lesson(any_session, any_people.mina).questions_right == 1


def test_practice_on_a_roof_is_the_questions_alone(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """It moves the question's count on, so that the next form is fresh; no lesson hears of it."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, roof="ab12"))
    assert question(any_session, any_people.mina).finished == 1
    assert lesson_rows(any_session, any_people.mina, ASKED) == []


def test_a_right_one_on_a_roof_is_still_to_come_in_the_lesson(
    session: AnySession, people: People, a_try: Try
) -> None:
    """Right on a roof first, then right in the lesson: the lesson counts its own."""
    writing(session)
    record(session, a_try(people.mina, roof="ab12"))
    record(session, a_try(people.mina, count=1))
    assert lesson(session, people.mina).questions_right == 1


def test_one_persons_tries_are_not_anothers(
    session: AnySession, people: People, a_try: Try
) -> None:
    """Tom's right answer is no help to Mina's totals."""
    writing(session)
    record(session, a_try(people.tom))
    record(session, a_try(people.mina, **WRONG))
    assert question(session, people.mina).right == 0
    assert lesson(session, people.mina).questions_right == 0
    assert lesson(session, people.tom).questions_right == 1


def test_last_seen_is_the_latest_in_whatever_order(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """An answer that a phone kept and sent later doesn't turn the clock back."""
    tomorrow = {"sent_at": NOW + timedelta(days=1), "local_date": date(2026, 3, 10)}
    writing(any_session)
    record(any_session, a_try(any_people.mina, **tomorrow))
    record(any_session, a_try(any_people.mina, count=1, sent_later=True))
    for row in (question(any_session, any_people.mina), lesson(any_session, any_people.mina)):
        assert row.last_seen_at == NOW + timedelta(days=1)
        assert row.last_date == date(2026, 3, 10)


def test_a_question_that_moved_is_in_its_new_lesson(
    session: AnySession, people: People, a_try: Try
) -> None:
    """From the next try on; the old lesson keeps its tries, the new one has it right."""
    writing(session)
    record(session, a_try(people.mina))
    record(session, a_try(people.mina, count=1, lesson="topcoat"))
    assert question(session, people.mina).lesson == "topcoat"
    told = {
        row.lesson: (row.tried, row.questions_right)
        for row in lesson_rows(session, people.mina, ASKED)
    }
    assert told == {"mixing-a-batch": (1, 0), "topcoat": (1, 1)}
