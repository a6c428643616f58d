"""Answers: each kept once, whole, and with the totals in the same breath."""

import re
import threading
from collections.abc import Callable
from dataclasses import asdict, replace
from datetime import date, datetime, timedelta, timezone

import pytest
from flask import Flask
from records_cast import ANSWER, ASKED, LESSON, NOW, People, record
from sqlalchemy import func, select
from sqlalchemy.exc import IntegrityError

from trainer.records import progress, texts
from trainer.records.attempts import (
    Answer,
    Attempt,
    AttemptFacts,
    Recorded,
    SeenVariant,
    attempt_at,
    seen_variants,
)
from trainer.records.database import AnySession, db, writing

Try = Callable[..., AttemptFacts]

WRONG = replace(
    ANSWER,
    line="mass",
    unit="g",
    right_value=40.0,
    expected_value=0.1 + 0.2,
    typed="4o g",
    read_as="",
    read_value=None,
    verdict="wrong",
    slip="grams for kilograms",
    cue="Which unit was the resin in?",
)


#: Typed without its unit, which was picked beside the field.
IN_GRAMS = replace(ANSWER, unit="kg", typed="1100", read_as="1100 g", read_value=1.1)


def rows(session: AnySession, model: type) -> int:
    """How many rows a table has."""
    return session.scalar(select(func.count()).select_from(model)) or 0


def test_a_try_is_read_back_as_it_was_asked(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Every field and every answer comes back, each figure to the last bit."""
    facts = a_try(
        any_people.mina,
        count=3,
        try_no=2,
        redraws=4,
        givens={"lengths_m": [2.4, 1 / 3], "mat": "450 g/m² × 2"},
        lines=[
            {"key": "bandage.resin", "words": "resin", "unit": "kg", "value": 1 / 3},
            {"key": "rolls", "words": "rolls", "unit": "", "value": 2},
        ],
        sent_later=True,
        working_shown=True,
        started_afresh=True,
        unaided=False,
        right=False,
        finished=False,
        answers=(WRONG, IN_GRAMS),
    )
    writing(any_session)
    kept = record(any_session, facts)
    any_session.commit()
    stored = attempt_at(any_session, any_people.mina, "batch-catalyst", count=3, try_no=2)
    assert stored is not None
    assert asdict(stored) == {**asdict(facts), "attempt_id": kept.attempt_id}
    assert stored.answers == (WRONG, IN_GRAMS)


def test_what_was_never_sent_is_none(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Another person, question, roof, count or try is another try."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    mina, tom = any_people.mina, any_people.tom
    assert attempt_at(any_session, mina, "batch-catalyst", count=0, try_no=1) is not None
    assert attempt_at(any_session, tom, "batch-catalyst", count=0, try_no=1) is None
    assert attempt_at(any_session, mina, "bandage-resin", count=0, try_no=1) is None
    assert attempt_at(any_session, mina, "batch-catalyst", roof="ab", count=0, try_no=1) is None
    assert attempt_at(any_session, mina, "batch-catalyst", count=1, try_no=1) is None
    assert attempt_at(any_session, mina, "batch-catalyst", count=0, try_no=2) is None


@pytest.mark.parametrize("address", [{"question_id": "batch\0"}, {"roof": "ab\0"}])
def test_an_address_that_cannot_be_printed_finds_nothing(
    any_session: AnySession, any_people: People, address: dict[str, str]
) -> None:
    """A NUL in an address is an answer that was never given, and no fault."""
    key = {"question_id": "batch-catalyst", **address}
    assert attempt_at(any_session, any_people.mina, **key, count=0, try_no=1) is None


def test_a_figure_carried_on_is_the_rule(a_try: Try) -> None:
    """Nothing was started afresh unless the door says so."""
    assert not a_try(1).started_afresh


def test_an_instant_from_another_zone_is_kept_in_utc(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """The local date stays what the phone said, even where UTC has another day."""
    there = datetime(2026, 3, 10, 0, 15, tzinfo=timezone(timedelta(hours=1)))
    writing(any_session)
    record(any_session, a_try(any_people.mina, sent_at=there, local_date=date(2026, 3, 10)))
    stored = attempt_at(any_session, any_people.mina, "batch-catalyst", count=0, try_no=1)
    assert stored is not None
    assert stored.sent_at.isoformat() == "2026-03-09T23:15:00+00:00"
    assert stored.local_date == date(2026, 3, 10)


def test_an_answer_without_numbers_is_kept(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """A choice has no value, no unit and no tolerance."""
    chosen = replace(
        ANSWER,
        unit="",
        tolerance="",
        right_value=None,
        expected_value=None,
        typed="lay it out flat outdoors",
        read_value=None,
    )
    writing(any_session)
    record(any_session, a_try(any_people.mina, answers=(chosen,)))
    stored = attempt_at(any_session, any_people.mina, "batch-catalyst", count=0, try_no=1)
    assert stored is not None
    assert stored.answers == (chosen,)


def test_a_sign_that_no_database_keeps_loses_no_answer(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """A NUL in what was typed is kept as the sign for a sign that can't be shown."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, answers=(replace(ANSWER, typed="4\0 ml"),)))
    stored = attempt_at(any_session, any_people.mina, "batch-catalyst", count=0, try_no=1)
    assert stored is not None
    assert stored.answers[0].typed == "4\N{REPLACEMENT CHARACTER} ml"


def test_sent_twice_counts_once(any_session: AnySession, any_people: People, a_try: Try) -> None:
    """The second sending gets the first one's key, and changes neither answer nor total."""
    first, second = a_try(any_people.mina), a_try(any_people.mina, right=False, answers=(WRONG,))
    writing(any_session)
    kept = record(any_session, first)
    any_session.commit()
    writing(any_session)
    assert kept.first
    assert record(any_session, second) == Recorded(kept.attempt_id, first=False)
    any_session.commit()
    stored = attempt_at(any_session, any_people.mina, "batch-catalyst", count=0, try_no=1)
    assert stored is not None
    assert stored.right
    assert stored.answers == (ANSWER,)
    assert (rows(any_session, Attempt), rows(any_session, Answer)) == (1, 1)
    (totals,) = progress.question_rows(any_session, any_people.mina)
    assert (totals.tried, totals.right, totals.finished) == (1, 1, 1)


def test_sent_twice_at_the_same_moment_counts_once(
    any_app: Flask, any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Of two threads that send one form together, one is the first and both get its key."""
    started, kept = threading.Barrier(2, timeout=30), list[Recorded]()

    def send() -> None:
        with any_app.app_context():
            for count in range(20):
                started.wait()
                writing(db.session)
                kept.append(record(db.session, a_try(any_people.mina, count=count)))
                db.session.commit()

    threads = [threading.Thread(target=send) for _ in range(2)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(kept) == 40
    assert sum(one.first for one in kept) == 20
    assert len({one.attempt_id for one in kept}) == 20
    (totals,) = progress.question_rows(any_session, any_people.mina)
    assert (totals.tried, totals.finished) == (20, 20)


def test_nothing_is_kept_before_the_commit(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """A request that fails after recording leaves no answer and no total."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    any_session.rollback()
    assert (rows(any_session, Attempt), rows(any_session, Answer)) == (0, 0)
    assert progress.question_rows(any_session, any_people.mina) == []
    assert progress.lesson_rows(any_session, any_people.mina, ASKED) == []


@pytest.mark.parametrize(
    "differs",
    [
        {"person_id": 4711},
        {"source_digest": "0" * 64},
        {"try_no": 3},
        {"count": -1},
        {"answers": (replace(ANSWER, verdict="nearly"),)},
    ],
)
def test_a_try_that_makes_no_sense_is_refused(
    any_session: AnySession, any_people: People, a_try: Try, differs: dict[str, object]
) -> None:
    """Nobody's answer, an unkept text, a third try: the database itself says no."""
    writing(any_session)
    with pytest.raises(IntegrityError):
        record(any_session, replace(a_try(any_people.mina), **differs))  # type: ignore[arg-type]


def test_recording_takes_six_statements(
    session: AnySession, people: People, a_try: Try, statements: list[str]
) -> None:
    """The try, its answers, the lesson's total, the question's, the skill's before and after."""
    writing(session)
    statements.clear()
    record(session, a_try(people.mina, answers=(ANSWER,)))
    tables = [re.search(r"(?:INTO|FROM) (\w+)", statement) for statement in statements]
    assert [table and table[1] for table in tables] == [
        "attempt",
        "answer",
        "lesson_progress",
        "question_progress",
        "skill_progress",
        "skill_progress",
    ]


def test_variants_come_oldest_first(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """By the day they were finished on, with what draws them again."""
    writing(any_session)
    for count, (variant, day) in enumerate([("b", 12), ("a", 10), ("c", 12)]):
        seen_on = date(2026, 3, day)
        facts = a_try(any_people.mina, count=count, variant=variant, local_date=seen_on)
        record(any_session, replace(facts, seed=f"seed-{variant}", redraws=count))
    found = seen_variants(any_session, any_people.mina, "batch-catalyst", date(2026, 3, 1))
    assert found == [
        SeenVariant("a", "seed-a", 1, date(2026, 3, 10)),
        SeenVariant("b", "seed-b", 0, date(2026, 3, 12)),
        SeenVariant("c", "seed-c", 2, date(2026, 3, 12)),
    ]


def test_only_finished_ones_since_the_day_are_seen(
    session: AnySession, people: People, a_try: Try
) -> None:
    """An open run, an older day, another question and another person are left out."""
    writing(session)
    record(session, a_try(people.mina, variant="open", finished=False, right=False))
    record(session, a_try(people.mina, count=1, variant="old", local_date=date(2026, 3, 8)))
    record(session, a_try(people.mina, count=2, variant="that day"))
    record(session, a_try(people.mina, question_id="bandage-resin", variant="other"))
    record(session, a_try(people.tom, variant="toms"))
    found = seen_variants(session, people.mina, "batch-catalyst", date(2026, 3, 9))
    assert [seen.variant for seen in found] == ["that day"]


def test_the_text_as_it_was_asked_stays_readable(
    session: AnySession, people: People, a_try: Try
) -> None:
    """The try names the digest of a text that is kept."""
    writing(session)
    record(session, a_try(people.mina))
    stored = attempt_at(session, people.mina, "batch-catalyst", count=0, try_no=1)
    assert stored is not None
    assert texts.text_of(session, stored.source_digest) == LESSON.text
    assert stored.sent_at == NOW
