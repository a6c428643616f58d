"""Counting again from the tries gives what the running totals say."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import date, timedelta
from typing import Any, NamedTuple

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from records_cast import NOW, TRY, People, record
from sqlalchemy import delete, select, text, update

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, table_of, writing
from trainer.records.progress import mark_read
from trainer.records.recount import rebuild
from trainer.records.tallies import LessonProgress, QuestionProgress


class Step(NamedTuple):
    """One thing somebody does: a lesson read, or a run of one or two tries."""

    person: str
    lesson: str
    question: str
    roof: str
    first_right: bool
    retries: bool
    retry_right: bool
    day: int
    reads: bool


# One question goes by both lessons, as if it had been moved.
QUESTIONS = st.sampled_from(
    [("mixing", "q1"), ("mixing", "q2"), ("topcoat", "q2"), ("taping", "q3")]
)
STEPS = st.lists(
    st.builds(
        lambda person, where, roof, rights, retries, day, reads: Step(
            person, *where, roof, rights[0], retries, rights[1], day, reads
        ),
        st.sampled_from(["mina", "tom"]),
        QUESTIONS,
        st.sampled_from(["", "", "ab12"]),
        st.tuples(st.booleans(), st.booleans()),
        st.booleans(),
        st.integers(0, 30),
        st.sampled_from([False, False, False, True]),
    ),
    max_size=25,
)


def live(session: AnySession, people: People, steps: list[Step]) -> None:
    """Do the steps one after another, as requests would."""
    finished: dict[tuple[int, str], int] = {}
    for step in steps:
        person, day = getattr(people, step.person), date(2026, 3, 1) + timedelta(days=step.day)
        now = NOW + timedelta(days=step.day)
        if step.reads:
            mark_read(session, person, step.lesson, now, day)
            continue
        count = finished.get((person, step.question), 0)
        ends = step.first_right or not step.retries
        facts = _facts(person, step, count, now=now, day=day)
        record(session, facts(try_no=1, right=step.first_right, finished=ends))
        if not ends:
            record(session, facts(try_no=2, right=step.retry_right, finished=True))
        finished[person, step.question] = count + 1


def _facts(
    person: int, step: Step, count: int, *, now: Any, day: date
) -> Callable[..., AttemptFacts]:
    same = replace(
        TRY,
        person_id=person,
        question_id=step.question,
        lesson=step.lesson,
        roof=step.roof,
        count=count,
        sent_at=now,
        local_date=day,
    )
    return lambda **differs: replace(same, **differs)


def totals(session: AnySession) -> list[tuple[Any, ...]]:
    """Both tables, whole, in the order of their keys."""
    tables = [table_of(QuestionProgress), table_of(LessonProgress)]
    return [
        tuple(row)
        for table in tables
        for row in session.execute(select(table).order_by(*table.primary_key.columns))
    ]


@contextmanager
def undone(session: AnySession) -> Iterator[None]:
    """A write that leaves nothing behind."""
    writing(session)
    yield
    session.rollback()


@settings(
    max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None
)
@given(steps=STEPS)
def test_a_recount_changes_nothing(session: AnySession, people: People, steps: list[Step]) -> None:
    """Whatever was done, in whatever order, the totals are what the tries say."""
    with undone(session):
        live(session, people, steps)
        running = totals(session)
        rebuild(session)
        assert totals(session) == running


SOME = [
    Step("mina", "mixing", "q1", "", False, True, True, 4, reads=False),
    Step("mina", "mixing", "q1", "", True, False, False, 2, reads=False),
    Step("mina", "mixing", "q1", "", True, False, False, 9, reads=True),
    Step("mina", "taping", "q3", "ab12", True, False, False, 5, reads=False),
    Step("tom", "mixing", "q2", "", True, False, False, 5, reads=False),
    Step("tom", "topcoat", "q2", "", True, False, False, 3, reads=False),
    Step("tom", "taping", "q3", "", True, False, False, 6, reads=True),
]


def test_lost_and_spoilt_totals_come_back(any_session: AnySession, any_people: People) -> None:
    """After a recount nothing is left of figures that were wrong, and what was missing is there."""
    writing(any_session)
    live(any_session, any_people, SOME)
    running = totals(any_session)
    questions, lessons = table_of(QuestionProgress), table_of(LessonProgress)
    any_session.execute(delete(questions).where(questions.c.question_id == "q1"))
    any_session.execute(update(questions).values(tried=99, lesson="nowhere"))
    any_session.execute(update(lessons).values(tried=99, last_date=date.max))
    rebuild(any_session)
    assert totals(any_session) == running


def test_a_recount_of_one_person_leaves_the_others(session: AnySession, people: People) -> None:
    """Tom's spoilt totals stay spoilt while Mina's are counted again."""
    writing(session)
    live(session, people, SOME)
    session.execute(update(table_of(QuestionProgress)).values(tried=99))
    rebuild(session, people.mina)
    tried = text("SELECT DISTINCT tried FROM question_progress WHERE person_id = :who ORDER BY 1")
    assert session.scalars(tried, {"who": people.mina}).all() == [1, 2]
    assert session.scalars(tried, {"who": people.tom}).all() == [99]


@pytest.mark.parametrize("again", [1, 3])
def test_what_was_read_stays_read(session: AnySession, people: People, again: int) -> None:
    """No try tells when a lesson was read, so a recount doesn't touch it."""
    writing(session)
    mark_read(session, people.mina, "mixing", NOW, date(2026, 3, 9))
    before = totals(session)
    for _ in range(again):
        rebuild(session)
    assert totals(session) == before
