"""Running totals of the answers, so that a page need not count a history.

Each recorded try moves them on in its own transaction; `rebuild` counts them again from the tries
and must get the same. What they mean:

- tried, right: first tries, and first tries that were right. A retry adds to neither.
- finished: runs that ended; the count of the next form.
- ever right: any try was, the retry too.
- A try on a roof counts for its question, never for a lesson.
"""

from datetime import date, datetime
from typing import Any

from sqlalchemy import (
    ClauseElement,
    ColumnElement,
    Connection,
    ForeignKey,
    case,
    or_,
)
from sqlalchemy.orm import Mapped, mapped_column

from .database import Model, UtcDateTime, insert_into, table_of
from .evidence import AttemptFacts
from .statements import Statement

__all__ = ["LessonProgress", "QuestionProgress", "add_try", "later"]


class QuestionProgress(Model):
    """What one person has done on one question."""

    __tablename__ = "question_progress"

    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    question_id: Mapped[str] = mapped_column(primary_key=True)
    lesson: Mapped[str]
    tried: Mapped[int]
    right: Mapped[int]
    finished: Mapped[int]
    ever_right: Mapped[bool]
    last_seen_at: Mapped[datetime] = mapped_column(UtcDateTime)
    last_date: Mapped[date]


class LessonProgress(Model):
    """What one person has done in one lesson: whether it was read, and its questions together."""

    __tablename__ = "lesson_progress"

    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    lesson: Mapped[str] = mapped_column(primary_key=True)
    read_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    read_date: Mapped[date | None]
    tried: Mapped[int]
    right: Mapped[int]
    last_seen_at: Mapped[datetime] = mapped_column(UtcDateTime)
    last_date: Mapped[date]


def add_try(connection: Connection, facts: AttemptFacts) -> None:
    """Move the totals on by one try that was just written."""
    first = facts.try_no == 1
    values = {
        "person_id": facts.person_id,
        "lesson": facts.lesson,
        "tried": int(first),
        "right": int(first and facts.right),
        "last_seen_at": facts.sent_at,
        "last_date": facts.local_date,
    }
    if not facts.roof:
        _LESSON.run(connection, [values])
    question = {
        **values,
        "question_id": facts.question_id,
        "finished": int(facts.finished),
        "ever_right": facts.right,
    }
    _QUESTION.run(connection, [question])


def later(new: ColumnElement[Any], old: ColumnElement[Any]) -> ColumnElement[Any]:
    """Return the later of two times: phones send what they kept in any order."""
    return case((new > old, new), else_=old)


def _question_statement(dialect: str) -> ClauseElement:
    table = table_of(QuestionProgress)
    statement = insert_into(table, dialect)
    kept, new = table.c, statement.excluded
    return statement.on_conflict_do_update(
        index_elements=["person_id", "question_id"],
        set_={
            # A question that has moved to another lesson moves with the next try.
            "lesson": new.lesson,
            "tried": kept.tried + new.tried,
            "right": kept.right + new.right,
            "finished": kept.finished + new.finished,
            "ever_right": or_(kept.ever_right, new.ever_right),
            "last_seen_at": later(new.last_seen_at, kept.last_seen_at),
            "last_date": later(new.last_date, kept.last_date),
        },
    )


def _lesson_statement(dialect: str) -> ClauseElement:
    table = table_of(LessonProgress)
    statement = insert_into(table, dialect)
    kept, new = table.c, statement.excluded
    return statement.on_conflict_do_update(
        index_elements=["person_id", "lesson"],
        set_={
            "tried": kept.tried + new.tried,
            "right": kept.right + new.right,
            "last_seen_at": later(new.last_seen_at, kept.last_seen_at),
            "last_date": later(new.last_date, kept.last_date),
        },
    )


_TOTALS = ("person_id", "lesson", "tried", "right", "last_seen_at", "last_date")
_QUESTION = Statement(_question_statement, (*_TOTALS, "question_id", "finished", "ever_right"))
_LESSON = Statement(_lesson_statement, _TOTALS)
