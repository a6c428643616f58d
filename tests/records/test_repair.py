"""Whatever is counted from the tries, counted again for one person, and how much was wrong."""

import threading
from dataclasses import replace

from flask import Flask
from records_cast import NOW, RULES, TRY, People, record
from skills_cast import CURED, went
from sqlalchemy import delete, insert, select, update

from trainer.records.database import AnySession, db, table_of, writing
from trainer.records.progress import mark_read
from trainer.records.repair import Repaired, everybodys_ids, repair
from trainer.records.skill_table import SkillProgress, row_of
from trainer.records.tallies import LessonProgress, QuestionProgress

RIGHT = Repaired(rows=3, skills=1, changed=0)


def answered(session: AnySession, *person_ids: int) -> None:
    """Have each of them answer one question of one lesson, which asks for one skill."""
    writing(session)
    for person_id in person_ids:
        record(session, replace(TRY, person_id=person_id))


def test_everybody_is_told_those_who_left_too(session: AnySession, people: People) -> None:
    """Their tries are kept, and so are their totals."""
    assert everybodys_ids(session) == sorted(vars(people)[name] for name in PERSONS)


PERSONS = ("mina", "tom", "ruth", "karel", "iris", "olga")


def test_what_is_right_stays(any_session: AnySession, any_people: People) -> None:
    """A question, a lesson and a skill, and none was wrong."""
    answered(any_session, any_people.mina)
    assert repair(any_session, RULES, any_people.mina) == RIGHT


def test_whoever_did_nothing_has_nothing(any_session: AnySession, any_people: People) -> None:
    """No row, no fault."""
    writing(any_session)
    assert repair(any_session, RULES, any_people.mina) == Repaired(rows=0, skills=0, changed=0)


def test_wrong_missing_and_stray_rows_are_counted(
    any_session: AnySession, any_people: People
) -> None:
    """One of each kind is three; then all is right."""
    answered(any_session, any_people.mina)
    any_session.execute(update(table_of(QuestionProgress)).values(tried=9))
    any_session.execute(delete(table_of(LessonProgress)))
    stray = row_of(any_people.mina, "never-asked", went(*CURED))
    any_session.execute(insert(table_of(SkillProgress)), [stray])
    assert repair(any_session, RULES, any_people.mina) == replace(RIGHT, changed=3)
    assert repair(any_session, RULES, any_people.mina) == RIGHT


def test_others_stay_as_they_are(any_session: AnySession, any_people: People) -> None:
    """Tom's spoilt row is his own matter."""
    answered(any_session, any_people.mina, any_people.tom)
    questions = table_of(QuestionProgress)
    any_session.execute(update(questions).values(tried=9))
    assert repair(any_session, RULES, any_people.mina).changed == 1
    spoilt = select(questions.c.person_id).where(questions.c.tried == 9)
    assert any_session.scalars(spoilt).all() == [any_people.tom]


def test_a_lesson_that_was_read_stays_read(any_session: AnySession, any_people: People) -> None:
    """No try tells of it, and none is needed."""
    writing(any_session)
    mark_read(any_session, any_people.mina, "mixing", NOW, TRY.local_date)
    assert repair(any_session, RULES, any_people.mina) == Repaired(rows=1, skills=0, changed=0)


def test_an_answer_on_its_way_is_no_change(
    any_app: Flask, any_session: AnySession, any_people: People
) -> None:
    """The count waits for it and has it before and after: nothing was wrong."""
    done, mina, told = threading.Event(), any_people.mina, list[Repaired]()

    def count_again() -> None:
        with any_app.app_context():
            writing(db.session)
            told.append(repair(db.session, RULES, mina))
            db.session.commit()
            done.set()
            db.session.remove()

    answered(any_session, mina)
    thread = threading.Thread(target=count_again)
    thread.start()
    waited = not done.wait(0.4)
    any_session.commit()
    thread.join()
    assert waited
    assert told == [RIGHT]
