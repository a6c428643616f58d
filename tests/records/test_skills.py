"""Where people stand with their skills, moved on in the commit of each try."""

import threading
from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, time

import pytest
from flask import Flask
from records_cast import ANSWER, RULES, TRY, People, record
from skills_cast import CURED, on, state, went
from sqlalchemy import func, insert, select, text

from trainer.records.attempts import Answer, Attempt, AttemptFacts
from trainer.records.database import AnySession, db, table_of, writing
from trainer.records.running import NEVER_TRIED, Progress
from trainer.records.skill_recount import rebuild_skills
from trainer.records.skill_table import SkillProgress, progress_in, row_of
from trainer.records.skills import skills_of

Try = Callable[..., AttemptFacts]
SKILL = "catalyst-by-mass"


def answers(
    session: AnySession,
    person_id: int,
    *days: tuple[int, str],
    first: int = 0,
    question: str = "batch-catalyst",
) -> None:
    """Record a history as a door does; each question is in a lesson of its own."""
    count = first
    for day, letters in days:
        noon = datetime.combine(on(day), time(12), UTC)
        for letter in letters:
            right = letter in "rRnN"
            facts = replace(
                TRY,
                person_id=person_id,
                question_id=question,
                lesson=f"about-{question}",
                kind="calculate" if letter in "rRwW" else "choose",
                count=count,
                sent_at=noon,
                local_date=on(day),
                unaided=letter.islower(),
                right=right,
                answers=(replace(ANSWER, verdict="right" if right else "wrong"),),
            )
            record(session, facts)
            count += 1


def stands(session: AnySession, person_id: int, skill: str = SKILL) -> Progress:
    """Return what somebody has come to at a skill."""
    return skills_of(session, [person_id], [skill])[person_id][skill]


def rows(session: AnySession) -> int:
    """Return how many rows are kept."""
    return session.scalar(select(func.count()).select_from(SkillProgress)) or 0


HISTORY = (*CURED, (15, "nW"), (16, "w"), (17, "Rr"), (400, "xr"), (401, "r"), (402, "r"))


def test_a_history_comes_to_what_the_rule_says(any_session: AnySession, any_people: People) -> None:
    """Through the tables, try by try, to the last bit of the card."""
    writing(any_session)
    answers(any_session, any_people.mina, *HISTORY)
    assert stands(any_session, any_people.mina) == went(*HISTORY)
    assert state(stands(any_session, any_people.mina), 402) == "Cured"


def test_a_skill_is_one_row_a_person(any_session: AnySession, any_people: People) -> None:
    """However many tries; Tom's are his own."""
    writing(any_session)
    answers(any_session, any_people.mina, (0, "rrr"), (1, "rr"))
    answers(any_session, any_people.tom, (0, "w"))
    assert rows(any_session) == 2
    assert stands(any_session, any_people.mina) == went((0, "rrr"), (1, "rr"))
    assert stands(any_session, any_people.tom) == went((0, "w"))
    assert stands(any_session, any_people.karel) == NEVER_TRIED


def test_each_skill_of_a_question_is_moved_on(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """More than are looked up at once, one of them wrong, one asked twice."""
    skills = [f"skill-{number}" for number in range(9)]
    lines = [replace(ANSWER, skill=skill) for skill in (*skills, skills[0])]
    lines[5] = replace(lines[5], verdict="wrong")
    writing(any_session)
    for count in range(3):
        record(any_session, a_try(any_people.mina, count=count, right=False, answers=tuple(lines)))
    found = skills_of(any_session, [any_people.mina], skills)[any_people.mina]
    assert [found[skill].reached for skill in skills] == [
        *["gelled"] * 5,
        "started",
        *["gelled"] * 3,
    ]
    assert found[skills[0]].day_tries == 3


@pytest.mark.parametrize("differs", [{"try_no": 2}, {"roof": "ab12"}])
def test_retries_and_practice_on_a_roof_leave_no_row(
    any_session: AnySession, any_people: People, a_try: Try, differs: dict[str, object]
) -> None:
    """They say nothing of a skill, and nothing stands there."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, **differs))
    assert rows(any_session) == 0


def test_retries_and_practice_on_a_roof_move_nothing(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """What was reached stays, though they were wrong."""
    writing(any_session)
    answers(any_session, any_people.mina, *CURED)
    before = stands(any_session, any_people.mina)
    wrong = (replace(ANSWER, verdict="wrong"),)
    for differs in ({"try_no": 2}, {"roof": "ab12"}):
        facts = a_try(any_people.mina, local_date=on(15), right=False, answers=wrong, **differs)
        assert record(any_session, facts).first
    assert stands(any_session, any_people.mina) == before


def test_sent_twice_moves_it_once(any_session: AnySession, any_people: People, a_try: Try) -> None:
    """The second sending changes nothing, whatever it says."""
    writing(any_session)
    record(any_session, a_try(any_people.mina))
    wrong = (replace(ANSWER, verdict="wrong"),)
    record(any_session, a_try(any_people.mina, right=False, answers=wrong))
    assert stands(any_session, any_people.mina) == went((0, "r"))


def test_nothing_is_moved_before_the_commit(any_session: AnySession, any_people: People) -> None:
    """A request that fails after recording leaves no row."""
    writing(any_session)
    answers(any_session, any_people.mina, (0, "rrr"))
    any_session.rollback()
    assert rows(any_session) == 0


def test_only_what_is_asked_for_is_told(any_session: AnySession, any_people: People) -> None:
    """These people at these skills; without a row it was never tried."""
    writing(any_session)
    answers(any_session, any_people.mina, (0, "r"))
    mina, tom = any_people.mina, any_people.tom
    told = skills_of(any_session, [tom, mina], ["tape-rolls", SKILL])
    assert told == {
        tom: {"tape-rolls": NEVER_TRIED, SKILL: NEVER_TRIED},
        mina: {"tape-rolls": NEVER_TRIED, SKILL: went((0, "r"))},
    }
    assert skills_of(any_session, [], [SKILL]) == {}
    assert skills_of(any_session, [mina], []) == {mina: {}}


def test_reading_takes_one_query(
    session: AnySession, people: People, statements: list[str]
) -> None:
    """For any number of people and skills."""
    writing(session)
    answers(session, people.mina, *HISTORY)
    statements.clear()
    skills_of(session, [people.mina, people.tom, people.ruth], [SKILL, "a", "b"])
    assert len(statements) == 1


@pytest.mark.parametrize("days", [HISTORY[:length] for length in range(1, len(HISTORY) + 1)])
def test_a_row_becomes_what_it_was_made_of(days: tuple[tuple[int, str], ...]) -> None:
    """Also where the database hands dates back as text, and a yes as a one."""
    progress = went(*days)
    row = row_of(1, SKILL, progress)
    assert progress_in(row) == progress
    as_text = {
        name: value.isoformat() if isinstance(value, date) else value for name, value in row.items()
    }
    as_numbers = {
        name: int(value) if isinstance(value, bool) else value for name, value in as_text.items()
    }
    told = progress_in(as_numbers)
    assert told == progress
    assert {type(told.slipped), type(told.day_open), type(told.day_right)} == {bool}


# Many tries.


def many(person_id: int, number: int) -> tuple[list[dict[str, object]], list[tuple[int, str]]]:
    """Return the rows of so many tries, four a day, and the same as a history."""
    plain = {
        name: getattr(TRY, name)
        for name in TRY.__dataclass_fields__
        if name not in {"answers", "person_id", "count", "sent_at", "local_date", "right"}
    }
    made, days = [], [(day, "rrwr" if day % 5 == 4 else "rrrr") for day in range(number // 4)]
    for day, letters in days:
        sent = datetime.combine(on(day), time(12), UTC)
        for letter in letters:
            row = {**plain, "id": len(made) + 1, "person_id": person_id, "count": len(made)}
            made.append({**row, "sent_at": sent, "local_date": on(day), "right": letter == "r"})
    return made, days


def test_two_thousand_tries_come_to_the_right_state(
    any_session: AnySession, any_people: People
) -> None:
    """Counted from the tries, then moved on by one more: as the rule says of all of them."""
    made, days = many(any_people.mina, 2000)
    writing(any_session)
    any_session.execute(insert(table_of(Attempt)), made)
    kept = {name: getattr(ANSWER, name) for name in ANSWER.__dataclass_fields__}
    lines = [
        {
            **kept,
            "attempt_id": row["id"],
            "position": 0,
            "verdict": "right" if row["right"] else "wrong",
        }
        for row in made
    ]
    any_session.execute(insert(table_of(Answer)), lines)
    rebuild_skills(any_session, RULES)
    assert stands(any_session, any_people.mina) == went(*days)
    if any_session.get_bind().dialect.name == "postgresql":
        any_session.execute(text("SELECT setval('attempt_id_seq', 2000)"))
    answers(any_session, any_people.mina, (501, "r"), first=2000)
    assert stands(any_session, any_people.mina) == went(*days, (501, "r"))


def test_what_a_try_costs_does_not_grow_with_the_history(
    session: AnySession, people: People, statements: list[str]
) -> None:
    """After a hundred tries it takes as many statements as after one."""
    writing(session)
    taken = []
    for count in range(100):
        statements.clear()
        answers(session, people.mina, (count // 4, "r"), first=count)
        taken.append(len(statements))
    assert set(taken[1:]) == {6}


# At the same moment.


def test_an_answer_waits_for_the_one_before_it(
    any_app: Flask, any_session: AnySession, any_people: People
) -> None:
    """Two questions of two lessons, one skill: the second is moved on from where the first was."""
    mina, kept = any_people.mina, threading.Event()

    def send() -> None:
        with any_app.app_context():
            writing(db.session)
            answers(db.session, mina, (1, "w"), question="syringe-mark")
            db.session.commit()
            kept.set()
            db.session.remove()

    writing(any_session)
    answers(any_session, mina, (0, "rrr"), (1, "r"))
    thread = threading.Thread(target=send)
    thread.start()
    waited = not kept.wait(0.4)
    any_session.commit()
    thread.join()
    assert waited
    assert kept.is_set()
    assert stands(any_session, mina) == went((0, "rrr"), (1, "rw"))


def test_somebody_elses_answer_does_not_wait_on_postgresql(
    any_app: Flask, any_session: AnySession, any_people: People
) -> None:
    """Only one's own answers take turns there; SQLite has one writer."""
    if any_session.get_bind().dialect.name == "sqlite":
        return
    kept = threading.Event()

    def send() -> None:
        with any_app.app_context():
            answers(db.session, any_people.tom, (1, "w"))
            db.session.commit()
            kept.set()
            db.session.remove()

    answers(any_session, any_people.mina, (0, "rrr"))
    thread = threading.Thread(target=send)
    thread.start()
    assert kept.wait(5)
    any_session.commit()
    thread.join()


def test_answers_of_one_person_at_the_same_moment_all_count(
    any_app: Flask, any_session: AnySession, any_people: People
) -> None:
    """Two threads post at one skill: none is lost, and they count in the order of their keys."""
    started, faults = threading.Barrier(2, timeout=30), list[Exception]()

    def send(question: str) -> None:
        with any_app.app_context():
            try:
                for number in range(25):
                    started.wait()
                    writing(db.session)
                    day = (number // 2, "r")
                    answers(db.session, any_people.mina, day, first=number, question=question)
                    db.session.commit()
            except Exception as error:  # noqa: BLE001 - told to the test
                faults.append(error)
                started.abort()
            finally:
                db.session.remove()

    threads = [threading.Thread(target=send, args=(each,)) for each in ("one", "other")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert faults == []
    live = stands(any_session, any_people.mina)
    assert any_session.scalar(select(func.count()).select_from(Attempt)) == 50
    assert live == went(*((day, "r" * 4) for day in range(12)), (12, "rr"))
    any_session.rollback()
    writing(any_session)
    rebuild_skills(any_session, RULES)
    assert stands(any_session, any_people.mina) == live


@pytest.mark.parametrize("whose", ["everybody", "mina"])
def test_counting_again_meanwhile_loses_no_answer(
    any_app: Flask, any_session: AnySession, any_people: People, whose: str
) -> None:
    """Whoever counts again waits for an answer that is on its way, and then has it too."""
    mina, counted = any_people.mina, threading.Event()
    writing(any_session)
    answers(any_session, mina, (0, "rrr"))
    any_session.commit()

    def count_again() -> None:
        with any_app.app_context():
            writing(db.session)
            rebuild_skills(db.session, RULES, mina if whose == "mina" else None)
            db.session.commit()
            counted.set()
            db.session.remove()

    writing(any_session)
    answers(any_session, mina, (1, "rr"), first=3)
    thread = threading.Thread(target=count_again)
    thread.start()
    waited = not counted.wait(0.4)
    any_session.commit()
    thread.join()
    assert waited
    assert counted.is_set()
    assert stands(any_session, mina) == went((0, "rrr"), (1, "rr"))
