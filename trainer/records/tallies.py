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
    bindparam,
    case,
    exists,
    literal,
    or_,
)
from sqlalchemy.orm import Mapped, mapped_column

from .database import Model, UtcDateTime, insert_into, table_of
from .evidence import Attempt, AttemptFacts
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
    questions_right: Mapped[int]
    last_seen_at: Mapped[datetime] = mapped_column(UtcDateTime)
    last_date: Mapped[date]


def add_try(connection: Connection, attempt_id: int, facts: AttemptFacts) -> None:
    """Move the totals on by one try that was just written under that key."""
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
        statement = _LESSON_RIGHT if facts.right else _LESSON_NOT_RIGHT
        statement.run(connection, [{**values, "this_attempt": attempt_id}])
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


def _lesson_statement(dialect: str, one_more: ColumnElement[int]) -> ClauseElement:
    table = table_of(LessonProgress)
    statement = insert_into(table, dialect).values(questions_right=one_more)
    kept, new = table.c, statement.excluded
    return statement.on_conflict_do_update(
        index_elements=["person_id", "lesson"],
        set_={
            "tried": kept.tried + new.tried,
            "right": kept.right + new.right,
            "questions_right": kept.questions_right + new.questions_right,
            "last_seen_at": later(new.last_seen_at, kept.last_seen_at),
            "last_date": later(new.last_date, kept.last_date),
        },
    )


def _right_before() -> ColumnElement[bool]:
    """Whether an earlier try of the same person at the same question of the lesson was right."""
    attempt = table_of(Attempt)
    this, earlier = attempt.alias("this"), attempt.alias("earlier")
    return (
        exists()
        .where(this.c.id == bindparam("this_attempt"))
        .where(earlier.c.person_id == this.c.person_id)
        .where(earlier.c.question_id == this.c.question_id)
        .where(earlier.c.lesson == this.c.lesson)
        .where(earlier.c.roof == "", earlier.c.right, earlier.c.id != this.c.id)
    )


_TOTALS = ("person_id", "lesson", "tried", "right", "last_seen_at", "last_date")
_QUESTION = Statement(_question_statement, (*_TOTALS, "question_id", "finished", "ever_right"))
_LESSON_NOT_RIGHT = Statement(lambda dialect: _lesson_statement(dialect, literal(0)), _TOTALS)
_LESSON_RIGHT = Statement(
    lambda dialect: _lesson_statement(dialect, case((_right_before(), 0), else_=1)), _TOTALS
)
