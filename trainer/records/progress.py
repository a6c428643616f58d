"""How far people have come, read from the running totals: for a person, a question, a crew."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, fields
from datetime import date, datetime
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Date,
    Select,
    and_,
    bindparam,
    case,
    cast,
    func,
    literal_column,
    null,
    select,
    union_all,
)

from .database import AnySession, dialect_of, insert_into, table_of
from .people import Person, PersonRole
from .recount import rebuild
from .statements import Statement
from .tallies import LessonProgress, QuestionProgress, later

__all__ = [
    "CrewRow",
    "Glance",
    "LessonProgress",
    "LessonRow",
    "QuestionProgress",
    "QuestionRow",
    "crew_rows",
    "glance",
    "lesson_rows",
    "mark_read",
    "question_row",
    "question_rows",
    "rebuild",
]

Rows = Select[*tuple[Any, ...]]


@dataclass(frozen=True, slots=True)
class LessonRow:
    """One person in one lesson. `read_at` is None when only its questions were answered."""

    lesson: str
    read_at: datetime | None
    read_date: date | None
    tried: int
    """First tries at its questions."""
    right: int
    """First tries that were right."""
    questions_right: int
    """Of the questions asked today, those that were right at least once."""
    last_seen_at: datetime
    last_date: date


@dataclass(frozen=True, slots=True)
class QuestionRow:
    """One person at one question."""

    question_id: str
    lesson: str
    tried: int
    right: int
    finished: int
    """Runs that ended: the count of the next form."""
    ever_right: bool
    last_seen_at: datetime
    last_date: date


@dataclass(frozen=True, slots=True)
class CrewRow:
    """A trainee of a crew, with the lessons they have opened."""

    person_id: int
    ref: str
    name: str
    crew_id: int | None
    lessons: Mapping[str, LessonRow] = field(default_factory=dict)


_QUESTION = [getattr(QuestionProgress, each.name) for each in fields(QuestionRow)]


def _with_lessons(query: Rows, *whose: ColumnElement[bool]) -> Rows:
    """Return the query with a `LessonRow`'s columns. `whose` spares counting everybody's."""
    kept = QuestionProgress
    right_now = (
        select(kept.person_id, kept.lesson, func.count().label("questions_right"))
        .where(*whose, kept.ever_right, kept.question_id.in_(bindparam("asked", expanding=True)))
        .group_by(kept.person_id, kept.lesson)
        .subquery()
    )
    same_person = right_now.c.person_id == LessonProgress.person_id
    same_lesson = right_now.c.lesson == LessonProgress.lesson
    return query.outerjoin(right_now, and_(same_person, same_lesson)).add_columns(
        LessonProgress.lesson,
        LessonProgress.read_at,
        LessonProgress.read_date,
        LessonProgress.tried,
        LessonProgress.right,
        func.coalesce(right_now.c.questions_right, 0),
        LessonProgress.last_seen_at,
        LessonProgress.last_date,
    )


_LESSONS = _with_lessons(
    select()
    .select_from(LessonProgress)
    .where(LessonProgress.person_id == bindparam("person_id"))
    .order_by(LessonProgress.lesson),
    QuestionProgress.person_id == bindparam("person_id"),
)
_TRAINEES = (
    select(Person.id, Person.ref, Person.name, Person.crew_id)
    .join(PersonRole, and_(PersonRole.person_id == Person.id, PersonRole.role == "trainee"))
    .outerjoin(LessonProgress, LessonProgress.person_id == Person.id)
    .where(Person.left_at.is_(None))
    .order_by(Person.name, Person.id, LessonProgress.lesson)
)
_OF_CREW = Person.crew_id == bindparam("crew_id")
_ALL = _with_lessons(_TRAINEES)
_CREW = _with_lessons(
    _TRAINEES.where(_OF_CREW), QuestionProgress.person_id.in_(select(Person.id).where(_OF_CREW))
)


def mark_read(
    session: AnySession, person_id: int, lesson: str, now: datetime, local_date: date
) -> None:
    """Note that a lesson was read. The first time stands; later calls change nothing."""
    table = table_of(LessonProgress)
    read = {"read_at": now, "read_date": local_date, "last_seen_at": now, "last_date": local_date}
    none_yet = {"tried": 0, "right": 0}
    statement = insert_into(table, dialect_of(session))
    new = statement.excluded
    statement = statement.on_conflict_do_update(
        index_elements=["person_id", "lesson"],
        set_={
            "read_at": new.read_at,
            "read_date": new.read_date,
            "last_seen_at": later(new.last_seen_at, table.c.last_seen_at),
            "last_date": later(new.last_date, table.c.last_date),
        },
        where=table.c.read_at.is_(None),
    )
    session.execute(statement, {"person_id": person_id, "lesson": lesson, **read, **none_yet})


def lesson_rows(session: AnySession, person_id: int, asked: Collection[str]) -> list[LessonRow]:
    """Return the lessons a person has read or answered in, by slug.

    `asked` are the ids of today's questions: only they count as right at least once.
    """
    rows = session.execute(_LESSONS, {"person_id": person_id, "asked": list(asked)})
    return [LessonRow(*row) for row in rows]


def question_rows(
    session: AnySession, person_id: int, lesson: str | None = None
) -> list[QuestionRow]:
    """Return the questions a person has tried, by id; with a lesson, only that one's."""
    query = select(*_QUESTION).where(QuestionProgress.person_id == person_id)
    if lesson is not None:
        query = query.where(QuestionProgress.lesson == lesson)
    rows = session.execute(query.order_by(QuestionProgress.question_id))
    return [QuestionRow(*row) for row in rows]


@dataclass(frozen=True, slots=True)
class Glance:
    """What a lesson's page tells of one person: lessons read, and this one's questions."""

    read: Mapping[str, str]
    """The local date, ISO 8601, on which each lesson was read."""
    tried: frozenset[str]
    right: frozenset[str]
    """Questions of the lesson that were right at least once."""


def glance(session: AnySession, person_id: int, lesson: str) -> Glance:
    """Return what a lesson's page tells of one person, in one quick look."""
    rows = _GLANCE.all(session.connection(), {"person_id": person_id, "lesson": lesson})
    return Glance(
        {name: str(date) for name, date, _, _ in rows if date is not None},
        frozenset(name for name, _, tried, _ in rows if tried),
        frozenset(name for name, _, _, right in rows if right),
    )


_GLANCE = Statement(
    lambda _dialect: union_all(
        select(
            table_of(LessonProgress).c.lesson,
            table_of(LessonProgress).c.read_date,
            literal_column("0"),
            literal_column("0"),
        ).where(table_of(LessonProgress).c.person_id == bindparam("person_id")),
        select(
            table_of(QuestionProgress).c.question_id,
            cast(null(), Date),
            table_of(QuestionProgress).c.tried,
            case((table_of(QuestionProgress).c.ever_right, 1), else_=0),
        ).where(
            table_of(QuestionProgress).c.person_id == bindparam("person_id"),
            table_of(QuestionProgress).c.lesson == bindparam("lesson"),
        ),
    )
)


def question_row(session: AnySession, person_id: int, question_id: str) -> QuestionRow | None:
    """Return what a person has done on one question, or None when they never tried it."""
    query = select(*_QUESTION).where(
        QuestionProgress.person_id == person_id, QuestionProgress.question_id == question_id
    )
    row = session.execute(query).first()
    return None if row is None else QuestionRow(*row)


def crew_rows(session: AnySession, crew_id: int | None, asked: Collection[str]) -> list[CrewRow]:
    """Return the trainees of a crew (None: of all crews and none) with their lessons, by name.

    `asked` are the ids of today's questions: only they count as right at least once. Those who
    have left are left out. One query, whatever the size of the histories.
    """
    rows: dict[int, CrewRow] = {}
    lessons: dict[int, dict[str, LessonRow]] = {}
    query, asking = (_ALL, {}) if crew_id is None else (_CREW, {"crew_id": crew_id})
    found = session.execute(query, {**asking, "asked": list(asked)})
    for person_id, ref, name, crew, *lesson in found:
        if person_id not in rows:
            lessons[person_id] = {}
            rows[person_id] = CrewRow(person_id, ref, name, crew, lessons[person_id])
        if lesson[0] is not None:
            lessons[person_id][lesson[0]] = LessonRow(*lesson)
    return list(rows.values())
