"""`trainer rebuild`: totals and skills counted again from the tries, and what is said of it."""

import hashlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import pytest
from cli_terminal import GOOD, refused, said
from sqlalchemy import delete, select, update

from trainer import create_app
from trainer.cli.demo import fill
from trainer.cli.opening import prepared_app
from trainer.records import attempts, db, people, progress, texts, writing
from trainer.records.attempts import AnswerFacts, AttemptFacts
from trainer.records.database import AnySession, table_of
from trainer.records.skill_table import SkillProgress
from trainer.records.tallies import LessonProgress, QuestionProgress

pytestmark = pytest.mark.usefixtures("one_lesson", "zone")

NOW = datetime(2026, 3, 9, 7, 45, tzinfo=UTC)
LESSON = texts.Text("lesson", "mixing", "Stir.\n", hashlib.sha256(b"Stir.\n").hexdigest())
ANSWER = AnswerFacts(
    line="mass",
    skill="catalyst-dose",
    unit="g",
    tolerance="2 %",
    right_value=40.0,
    expected_value=40.0,
    typed="40",
    read_as="40 g",
    read_value=40.0,
    verdict="right",
)
TRY = AttemptFacts(
    person_id=1,
    question_id="batch-catalyst",
    lesson="mixing",
    competency="mixing",
    count=0,
    try_no=1,
    seed="0",
    variant="0",
    source_digest=LESSON.digest,
    engine_version="1",
    givens={},
    lines=[],
    sent_at=NOW,
    local_date=date(2026, 3, 9),
    unaided=True,
    right=True,
    finished=True,
    answers=(ANSWER,),
)


@contextmanager
def records() -> Iterator[AnySession]:
    """The records of the installation that the settings name, to be written to."""
    with create_app().app_context():
        writing(db.session)
        yield db.session
        db.session.commit()
        db.session.remove()
        db.engine.dispose()


@pytest.fixture
def answered(one_lesson: Path, zone: str) -> None:
    """Noor was right three times at one skill; Sam once at two, and read a lesson; Ada did nothing.

    That makes a question and a lesson of each, and three skills: seven rows.
    """
    assert one_lesson.is_dir(), zone
    for name in ("Noor", "Sam", "Ada"):
        said("person", "add", name, "--password", GOOD)
    with records() as session:
        ids = {each.name: each.person_id for each in people.crew_members(session, None)}
        noor, sam = ids["Noor"], ids["Sam"]
        texts.keep(session, [LESSON], NOW)
        rules = create_app().extensions["installation"].thresholds.skills
        for count in range(3):
            attempts.record(session, replace(TRY, person_id=noor, count=count), rules)
        both = (ANSWER, replace(ANSWER, skill="tape-rolls"))
        attempts.record(session, replace(TRY, person_id=sam, answers=both), rules)
        progress.mark_read(session, sam, "mixing", NOW, date(2026, 3, 9))


def counted() -> list[list[tuple[Any, ...]]]:
    """Return all that is counted from the tries."""
    with records() as session:
        tables = map(table_of, (SkillProgress, QuestionProgress, LessonProgress))
        return [
            [
                tuple(row)
                for row in session.execute(select(table).order_by(*table.primary_key.columns))
            ]
            for table in tables
        ]


@pytest.mark.usefixtures("answered")
def test_where_all_is_right_it_says_so() -> None:
    """How many people and skills were counted; Ada has nothing to count."""
    before = counted()
    assert said("rebuild") == "Counted again: 2 people, 3 skills. Every row was right.\n"
    assert counted() == before


@pytest.mark.usefixtures("answered")
def test_what_is_wrong_missing_or_stray_is_put_right() -> None:
    """A skill that moved is one row too many and one missing; a second count finds nothing."""
    before = counted()
    with records() as session:
        skills, lessons = table_of(SkillProgress), table_of(LessonProgress)
        session.execute(update(skills).where(skills.c.person_id == 1).values(reached="cured"))
        session.execute(update(skills).where(skills.c.skill == "tape-rolls").values(skill="gone"))
        session.execute(delete(lessons).where(lessons.c.person_id == 1))
    assert said("rebuild") == "Counted again: 2 people, 3 skills. 4 rows put right.\n"
    assert counted() == before
    assert said("rebuild").endswith("Every row was right.\n")


@pytest.mark.usefixtures("answered")
def test_one_row_is_said_as_one() -> None:
    """And a person without any try whose row tells of some is a person too."""
    with records() as session:
        questions = table_of(QuestionProgress)
        session.execute(update(questions).where(questions.c.person_id == 1).values(person_id=3))
    assert said("rebuild") == "Counted again: 3 people, 3 skills. 2 rows put right.\n"
    with records() as session:
        questions = table_of(QuestionProgress)
        session.execute(update(questions).where(questions.c.person_id == 1).values(tried=9))
    assert said("rebuild") == "Counted again: 2 people, 3 skills. 1 row put right.\n"


@pytest.mark.usefixtures("answered")
def test_a_changed_threshold_judges_the_tries_anew(one_lesson: Path) -> None:
    """Four rights in a row are asked for now, and Noor has three."""
    file = one_lesson / "competencies.toml"
    text = file.read_text("utf-8")
    file.write_text(
        text.replace("[rules.gelled_after]\nvalue = 3", "[rules.gelled_after]\nvalue = 4")
    )
    assert said("rebuild") == "Counted again: 2 people, 3 skills. 1 row put right.\n"
    with records() as session:
        skills = table_of(SkillProgress)
        assert set(session.scalars(select(skills.c.reached))) == {"started"}


def test_nobody_is_no_fault() -> None:
    """A new installation has nothing to count."""
    assert said("rebuild") == "Counted again: 0 people, 0 skills. Every row was right.\n"


def test_what_the_demo_invents_is_right() -> None:
    """The invented crew's weeks, kept up to date try by try, are what their tries say."""
    fill(prepared_app())
    told = said("rebuild")
    assert told.endswith("Every row was right.\n")
    assert " 0 skills" not in told


def test_a_database_that_cannot_be_opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its folder isn't there: the sentence says so."""
    monkeypatch.setenv("TRAINER_DATABASE_URL", f"sqlite:///{tmp_path}/nowhere/trainer.sqlite")
    assert refused("rebuild").startswith("Nothing was kept: the records can't be written to.")
