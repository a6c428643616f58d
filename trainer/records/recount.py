"""Counting the running totals again from the tries, after a repair or a restored backup."""

from typing import Any

from sqlalchemy import ColumnElement, Select, and_, case, delete, func, select, update

from .database import AnySession, dialect_of, insert_into, table_of
from .evidence import Attempt
from .tallies import LessonProgress, QuestionProgress, later

__all__ = ["rebuild"]


def rebuild(session: AnySession, person_id: int | None = None) -> None:
    """Make the totals of one person, or of everybody, what their tries say.

    Which lessons were read, and when, stays as it is: no try tells it.
    """
    _rebuild_questions(session, person_id)
    _rebuild_lessons(session, person_id)


def _rebuild_questions(session: AnySession, person_id: int | None) -> None:
    table = table_of(QuestionProgress)
    session.execute(delete(table).where(_theirs(table.c.person_id, person_id)))
    counted = _question_totals(person_id)
    names = [column.name for column in counted.selected_columns]
    session.execute(insert_into(table, dialect_of(session)).from_select(names, counted))


def _rebuild_lessons(session: AnySession, person_id: int | None) -> None:
    table = table_of(LessonProgress)
    theirs = _theirs(table.c.person_id, person_id)
    session.execute(delete(table).where(theirs, table.c.read_at.is_(None)))
    session.execute(
        update(table)
        .where(theirs)
        .values(
            tried=0,
            right=0,
            last_seen_at=table.c.read_at,
            last_date=table.c.read_date,
        )
    )
    counted = _lesson_totals(person_id)
    names = [column.name for column in counted.selected_columns]
    statement = insert_into(table, dialect_of(session)).from_select(names, counted)
    new = statement.excluded
    session.execute(
        statement.on_conflict_do_update(
            index_elements=["person_id", "lesson"],
            set_={
                "tried": new.tried,
                "right": new.right,
                "last_seen_at": later(new.last_seen_at, table.c.last_seen_at),
                "last_date": later(new.last_date, table.c.last_date),
            },
        )
    )


def _question_totals(person_id: int | None) -> Select[Any]:
    tries = table_of(Attempt)
    totals = (
        select(
            tries.c.person_id,
            tries.c.question_id,
            _number_of(tries.c.try_no == 1).label("tried"),
            _number_of(and_(tries.c.try_no == 1, tries.c.right)).label("right"),
            _number_of(tries.c.finished).label("finished"),
            (_number_of(tries.c.right) > 0).label("ever_right"),
            func.max(tries.c.sent_at).label("last_seen_at"),
            func.max(tries.c.local_date).label("last_date"),
            func.max(tries.c.id).label("last_id"),
        )
        .where(_theirs(tries.c.person_id, person_id))
        .group_by(tries.c.person_id, tries.c.question_id)
        .subquery()
    )
    last = tries.alias("last")
    columns = [column for column in totals.c if column.name != "last_id"]
    return select(*columns, last.c.lesson).join(last, last.c.id == totals.c.last_id)


def _lesson_totals(person_id: int | None) -> Select[Any]:
    tries = table_of(Attempt)
    return (
        select(
            tries.c.person_id,
            tries.c.lesson,
            _number_of(tries.c.try_no == 1).label("tried"),
            _number_of(and_(tries.c.try_no == 1, tries.c.right)).label("right"),
            func.max(tries.c.sent_at).label("last_seen_at"),
            func.max(tries.c.local_date).label("last_date"),
        )
        .where(_theirs(tries.c.person_id, person_id), tries.c.roof == "")
        .group_by(tries.c.person_id, tries.c.lesson)
    )


def _number_of(claim: ColumnElement[bool]) -> ColumnElement[int]:
    return func.sum(case((claim, 1), else_=0))


def _theirs(column: ColumnElement[int], person_id: int | None) -> ColumnElement[bool]:
    return column.is_not(None) if person_id is None else column == person_id
