"""Skills moved on in the commit of each try are what a count from all tries makes of them."""

import random
import threading
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from flask import Flask
from records_cast import ANSWER, NOW, RULES, TRY, People, record
from sqlalchemy import delete, func, insert, select

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, db, table_of, writing
from trainer.records.evidence import Answer, Attempt
from trainer.records.people import Person
from trainer.records.recount import rebuild
from trainer.records.running import NEVER_TRIED
from trainer.records.skill_recount import keep_from_here, rebuild_skills
from trainer.records.skill_table import SkillProgress
from trainer.records.skills import skills_of
from trainer.records.tallies import LessonProgress, QuestionProgress

SKILLS = ("dose", "syringe", "fall")
KEPT = (SkillProgress, QuestionProgress, LessonProgress)


def history(person_id: int, chance: random.Random) -> Iterator[AttemptFacts]:
    """Yield the tries of somebody made up: chains, choices, retries, roofs, and wild clocks."""
    day, ability = date(2026, 1, 5), chance.choice([0.3, 0.6, 0.9, 0.97])
    for count in range(chance.randint(1, 26)):
        day += timedelta(days=chance.choice([0, 0, 0, 1, 1, 2, 4, 7, 9, 40, -1, -3, -30]))
        skills = chance.sample(SKILLS, chance.choice([1, 1, 1, 2]))
        verdicts = ["right" if chance.random() < ability else "wrong" for _ in skills]
        right = "wrong" not in verdicts
        facts = replace(
            TRY,
            person_id=person_id,
            question_id=chance.choice(["q1", "q2", "q3"]) + f"-{count}",
            kind=chance.choice(["calculate"] * 5 + ["choose"]),
            roof=chance.choice([""] * 8 + ["ab12"]),
            count=0,
            sent_at=NOW + timedelta(days=(day - date(2026, 3, 9)).days),
            local_date=day,
            unaided=chance.random() < 0.85,
            right=right,
            finished=right or chance.random() < 0.5,
            answers=tuple(
                replace(ANSWER, skill=skill, verdict=verdict)
                for skill, verdict in zip(skills, verdicts, strict=True)
            ),
        )
        yield facts
        if not facts.finished:
            yield replace(facts, try_no=2, finished=True, unaided=False)


def crowd(session: AnySession, number: int, seed: int) -> list[int]:
    """Return so many made-up people, each with a history that was recorded try by try."""
    writing(session)
    table, chance = table_of(Person), random.Random(seed)  # noqa: S311 - made-up people
    first = (session.scalar(select(func.max(table.c.id))) or 0) + 1
    people = list(range(first, first + number))
    named = [
        {
            "id": each,
            "ref": f"ref-{each}",
            "name": f"Number {each}",
            "sign_in_name": f"number-{each}",
            "password_hash": "none",
            "created_at": NOW,
        }
        for each in people
    ]
    session.execute(insert(table), named)
    for each in people:
        for facts in history(each, chance):
            record(session, facts)
    return people


def rows(session: AnySession, model: Any, whose: list[int] | None = None) -> list[tuple[Any, ...]]:
    """Return a table whole, in the order of its keys."""
    table = table_of(model)
    query = select(table).order_by(*table.primary_key.columns)
    query = query if whose is None else query.where(table.c.person_id.in_(whose))
    return [tuple(row) for row in session.execute(query)]


@pytest.mark.usefixtures("people")
def test_a_count_from_the_tries_is_what_was_kept(session: AnySession) -> None:
    """Two thousand made-up histories: skills, and the totals with them."""
    crowd(session, 2000, seed=1)
    before = [rows(session, table) for table in KEPT]
    assert len(before[0]) > 4000
    assert {row[2] for row in before[0]} == {"started", "gelled", "set", "cured"}
    rebuild(session)
    rebuild_skills(session, RULES)
    assert [rows(session, table) for table in KEPT] == before


@pytest.mark.usefixtures("any_people")
def test_it_is_so_on_every_database(any_session: AnySession) -> None:
    """A hundred histories, and one person's alone."""
    people = crowd(any_session, 100, seed=2)
    before = rows(any_session, SkillProgress)
    rebuild_skills(any_session, RULES, people[7])
    assert rows(any_session, SkillProgress) == before
    rebuild_skills(any_session, RULES)
    assert rows(any_session, SkillProgress) == before


@pytest.mark.usefixtures("any_people")
def test_what_went_wrong_is_put_right(any_session: AnySession) -> None:
    """Rows that were lost come back; another person's are left alone."""
    people = crowd(any_session, 5, seed=3)
    before = rows(any_session, SkillProgress)
    table = table_of(SkillProgress)
    gone = any_session.execute(delete(table).where(table.c.person_id.in_(people[:3])))
    again = rebuild_skills(any_session, RULES, people[0])
    assert (again.people, again.changed) == (1, again.skills)
    assert rows(any_session, SkillProgress, people[:1]) == [
        row for row in before if row[0] == people[0]
    ]
    assert rows(any_session, SkillProgress, people[1:3]) == []
    rest = rebuild_skills(any_session, RULES)
    assert rest.changed + again.changed == gone.rowcount  # type: ignore[attr-defined]
    assert rows(any_session, SkillProgress) == before


@pytest.mark.parametrize("share", [0.3, 0.7, 1.0])
@pytest.mark.usefixtures("any_people")
def test_what_wiped_tries_came_to_is_where_a_count_begins(
    any_session: AnySession, share: float
) -> None:
    """State, run and review card as if nothing had been wiped, whatever part of it was."""
    people = crowd(any_session, 60, seed=4)
    before = rows(any_session, SkillProgress)
    for each in people:
        wipe(any_session, each, share)
    rebuild_skills(any_session, RULES)
    assert rows(any_session, SkillProgress) == before


@pytest.mark.usefixtures("any_people")
def test_wiping_twice_is_wiping_once(any_session: AnySession) -> None:
    """What was kept the first time goes into what is kept the second."""
    people = crowd(any_session, 40, seed=5)
    before = rows(any_session, SkillProgress)
    for share in (0.4, 0.8):
        for each in people:
            wipe(any_session, each, share)
    rebuild_skills(any_session, RULES)
    assert rows(any_session, SkillProgress) == before


@pytest.mark.usefixtures("any_people")
def test_somebody_goes_on_from_what_was_kept(any_session: AnySession) -> None:
    """Tries after the wiping move the same skills on, in the commit and in a count."""
    (person,) = crowd(any_session, 1, seed=6)
    wipe(any_session, person, 1.0)
    for facts in history(person, random.Random(7)):  # noqa: S311 - made-up people
        record(any_session, replace(facts, question_id=f"later {facts.question_id}"))
    before = rows(any_session, SkillProgress)
    rebuild_skills(any_session, RULES)
    assert rows(any_session, SkillProgress) == before


@pytest.mark.usefixtures("any_people")
def test_a_skill_that_no_lesson_has_any_more_is_kept_and_not_told(any_session: AnySession) -> None:
    """Whoever asks for today's skills gets today's; the row stays for the day it comes back."""
    (person,) = crowd(any_session, 1, seed=8)
    told = skills_of(any_session, [person], ["brand-new"])
    assert told == {person: {"brand-new": NEVER_TRIED}}
    rebuild_skills(any_session, RULES)
    assert rows(any_session, SkillProgress, [person])


def test_two_thousand_tries_of_one_person_make_the_right_state(
    session: AnySession, people: People
) -> None:
    """The step looks at one row, however many tries came before."""
    writing(session)
    day = date(2020, 1, 1)
    for number in range(2000):
        facts = replace(
            TRY,
            person_id=people.mina,
            question_id=f"q{number}",
            local_date=day + timedelta(days=number),
            sent_at=NOW,
            unaided=True,
            answers=(replace(ANSWER, skill="dose", verdict="right"),),
        )
        record(session, facts)
    (progress,) = skills_of(session, [people.mina], ["dose"])[people.mina].values()
    assert progress.reached == "cured"
    assert progress.day == day + timedelta(days=1999)
    before = rows(session, SkillProgress)
    rebuild_skills(session, RULES)
    assert rows(session, SkillProgress) == before


def test_two_phones_at_the_same_moment_move_a_skill_on_one_after_the_other(
    any_app: Flask, any_session: AnySession, any_people: People
) -> None:
    """Neither try is lost: the skill stands as a count from both says."""
    started = threading.Barrier(2, timeout=30)

    def send(phone: str) -> None:
        with any_app.app_context():
            for number in range(15):
                facts = replace(
                    TRY,
                    person_id=any_people.mina,
                    question_id=f"{phone} {number}",
                    local_date=date(2026, 3, 9) + timedelta(days=number),
                    unaided=True,
                    answers=(replace(ANSWER, skill="dose", verdict="right"),),
                )
                started.wait()
                writing(db.session)
                record(db.session, facts)
                db.session.commit()

    threads = [threading.Thread(target=send, args=(phone,)) for phone in ("one", "two")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    before = rows(any_session, SkillProgress)
    assert len(before) == 1
    writing(any_session)
    assert rebuild_skills(any_session, RULES).changed == 0
    assert rows(any_session, SkillProgress) == before


def wipe(session: AnySession, person_id: int, share: float) -> None:
    """Wipe the oldest share of somebody's tries, after what they came to was kept."""
    attempt, answer = table_of(Attempt), table_of(Answer)
    theirs = session.scalars(
        select(attempt.c.id).where(attempt.c.person_id == person_id).order_by(attempt.c.id)
    ).all()
    if not theirs:
        return
    last = theirs[max(0, round(len(theirs) * share) - 1)]
    keep_from_here(session, RULES, person_id, last)
    gone = select(attempt.c.id).where(attempt.c.person_id == person_id, attempt.c.id <= last)
    session.execute(delete(answer).where(answer.c.attempt_id.in_(gone)))
    session.execute(delete(attempt).where(attempt.c.person_id == person_id, attempt.c.id <= last))
