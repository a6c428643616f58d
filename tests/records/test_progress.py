"""How far people have come, as the pages ask it."""

from collections.abc import Callable
from datetime import date, timedelta

from records_cast import ASKED, NOW, People, record
from sqlalchemy import text

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, writing
from trainer.records.progress import (
    LessonRow,
    crew_rows,
    lesson_rows,
    mark_read,
    question_row,
    question_rows,
)

Try = Callable[..., AttemptFacts]
TODAY = date(2026, 3, 9)
TOMORROW = NOW + timedelta(days=1)


def test_a_lesson_that_was_read_is_told(any_session: AnySession, any_people: People) -> None:
    """With the instant and the local day, and nothing tried yet."""
    writing(any_session)
    mark_read(any_session, any_people.mina, "taping", NOW, TODAY)
    assert lesson_rows(any_session, any_people.mina, ASKED) == [
        LessonRow("taping", NOW, TODAY, 0, 0, 0, NOW, TODAY)
    ]


def test_the_first_reading_stands(any_session: AnySession, any_people: People) -> None:
    """Opening the lesson again changes nothing at all."""
    writing(any_session)
    mark_read(any_session, any_people.mina, "taping", NOW, TODAY)
    before = lesson_rows(any_session, any_people.mina, ASKED)
    mark_read(any_session, any_people.mina, "taping", TOMORROW, TODAY + timedelta(days=1))
    assert lesson_rows(any_session, any_people.mina, ASKED) == before


def test_reading_after_answering_keeps_the_totals(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """A lesson whose question was answered before it was read gets its date, and loses nothing."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    mark_read(any_session, any_people.mina, "mixing-a-batch", TOMORROW, TODAY)
    (row,) = lesson_rows(any_session, any_people.mina, ASKED)
    assert (row.read_at, row.tried, row.right, row.questions_right) == (TOMORROW, 1, 1, 1)
    assert row.last_seen_at == TOMORROW


def test_answering_after_reading_keeps_the_date(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """The try is added to the row that the reading made."""
    writing(any_session)
    mark_read(any_session, any_people.mina, "mixing-a-batch", NOW, TODAY)
    record(any_session, a_try(any_people.mina, sent_at=TOMORROW))
    (row,) = lesson_rows(any_session, any_people.mina, ASKED)
    assert (row.read_at, row.read_date, row.tried) == (NOW, TODAY, 1)
    assert row.last_seen_at == TOMORROW


def test_questions_come_by_id_and_can_be_asked_by_lesson(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """All of a person's, or one lesson's; nobody else's."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, question_id="z", lesson="taping"))
    record(any_session, a_try(any_people.mina, question_id="a"))
    record(any_session, a_try(any_people.tom, question_id="m"))
    mine = question_rows(any_session, any_people.mina)
    assert [row.question_id for row in mine] == ["a", "z"]
    taping = question_rows(any_session, any_people.mina, "taping")
    assert [row.question_id for row in taping] == ["z"]


def test_a_question_can_be_asked_alone(session: AnySession, people: People, a_try: Try) -> None:
    """It tells the count of the next form; a question never tried is None."""
    writing(session)
    record(session, a_try(people.mina))
    record(session, a_try(people.mina, count=1))
    row = question_row(session, people.mina, "batch-catalyst")
    assert row is not None
    assert row.finished == 2
    assert question_row(session, people.tom, "batch-catalyst") is None


def test_a_crew_is_its_trainees_with_their_lessons(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """By name; those who have done nothing are there too; other crews and leavers are not."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    mark_read(any_session, any_people.mina, "taping", NOW, TODAY)
    mark_read(any_session, any_people.karel, "taping", NOW, TODAY)
    mark_read(any_session, any_people.olga, "taping", NOW, TODAY)
    rows = crew_rows(any_session, any_people.north, ASKED)
    assert [(row.name, sorted(row.lessons)) for row in rows] == [
        ("Mina", ["mixing-a-batch", "taping"]),
        ("Ruth", []),
        ("Tom", []),
    ]
    assert rows[0].lessons["mixing-a-batch"].right == 1
    assert (rows[0].person_id, rows[0].ref, rows[0].crew_id) == (
        any_people.mina,
        "mina-ref",
        any_people.north,
    )


def test_all_crews_together_are_all_trainees(any_session: AnySession, any_people: People) -> None:
    """The office is no trainee; Karel in South is one."""
    assert any_people.karel in {row.person_id for row in crew_rows(any_session, None, ASKED)}
    assert [row.name for row in crew_rows(any_session, None, ASKED)] == [
        "Karel",
        "Mina",
        "Ruth",
        "Tom",
    ]


def test_a_crew_takes_one_query(
    session: AnySession, people: People, a_try: Try, statements: list[str]
) -> None:
    """However many lessons and people there are, and without looking at a single try."""
    writing(session)
    for lesson in ("a", "b", "c"):
        for person in (people.mina, people.tom, people.ruth):
            record(session, a_try(person, lesson=lesson, question_id=f"q-{lesson}"))
    statements.clear()
    assert len(crew_rows(session, people.north, ASKED)) == 3
    assert len(statements) == 1
    assert "attempt" not in statements[0]


def test_a_person_and_a_crew_are_told_without_counting_the_others(
    session: AnySession, people: People, a_try: Try, statements: list[str]
) -> None:
    """Each table of totals is entered by its key: no page grows with the people of the firm."""
    writing(session)
    record(session, a_try(people.mina))
    statements.clear()
    lesson_rows(session, people.mina, ASKED)
    crew_rows(session, people.north, ASKED)
    for sent in list(statements):
        plan = [row.detail for row in session.execute(text(f"EXPLAIN QUERY PLAN {sent}"))]
        assert plan
        assert [step for step in plan if step.startswith("SCAN") and "progress" in step] == []


def test_a_question_that_is_no_longer_asked_counts_for_nothing(
    any_session: AnySession, any_people: People, a_try: Callable[..., AttemptFacts]
) -> None:
    """Two were right, one of them is asked today: one is right."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    record(any_session, a_try(any_people.mina, question_id="syringe-mark"))
    (row,) = lesson_rows(any_session, any_people.mina, ("syringe-mark", "never-tried"))
    assert (row.tried, row.questions_right) == (2, 1)
    mina = next(
        row
        for row in crew_rows(any_session, any_people.north, ("syringe-mark",))
        if row.person_id == any_people.mina
    )
    assert mina.lessons["mixing-a-batch"].questions_right == 1
