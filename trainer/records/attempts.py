"""Keeping an answer, once, and reading it back.

`record` is the hot path of the whole trainer: six statements, made once.
The attempt itself comes first, and the unique constraint on it decides which of two sendings was
the first; the second writes nothing.
"""

from collections.abc import Mapping
from dataclasses import fields
from datetime import date
from typing import Any

from sqlalchemy import ClauseElement, Connection, bindparam, insert, select

from .database import AnySession, insert_into, table_of
from .evidence import (
    Answer,
    AnswerFacts,
    Attempt,
    AttemptFacts,
    Recorded,
    SeenVariant,
    StoredAttempt,
)
from .rules import SkillRules
from .skills import add_to_skills, wait_for_person
from .statements import Statement
from .tallies import add_try

__all__ = [
    "Answer",
    "AnswerFacts",
    "Attempt",
    "AttemptFacts",
    "Recorded",
    "SeenVariant",
    "StoredAttempt",
    "attempt_at",
    "record",
    "seen_variants",
]

_KEY = ("person_id", "question_id", "roof", "count", "try_no")
_ATTEMPT_FIELDS = tuple(field.name for field in fields(AttemptFacts) if field.name != "answers")
_ANSWER_FIELDS = tuple(field.name for field in fields(AnswerFacts))


def record(session: AnySession, facts: AttemptFacts, rules: SkillRules) -> Recorded:
    """Return where the try is kept, and whether this sending put it there.

    The first sending writes the try, its answers, the running totals and the skills, which are
    judged by the rules. A second one, of the same person, question, roof, count and try, changes
    nothing and returns the first one's key, whatever it carries.
    """
    connection = session.connection()
    wait_for_person(connection, facts.person_id)
    new = _INSERT_ATTEMPT.first(connection, _values(facts, _ATTEMPT_FIELDS))
    if new is None:
        return Recorded(_kept_id(connection, facts), first=False)
    attempt_id = int(new[0])
    _INSERT_ANSWERS.run(connection, _answers(attempt_id, facts))
    add_try(connection, facts)
    add_to_skills(connection, facts, rules)
    return Recorded(attempt_id, first=True)


def attempt_at(
    session: AnySession,
    person_id: int,
    question_id: str,
    *,
    roof: str = "",
    count: int,
    try_no: int,
) -> StoredAttempt | None:
    """Return everything stored of that try, its answers in the order asked, or None."""
    if not (question_id.isprintable() and roof.isprintable()):
        # Never asked; and PostgreSQL takes no NUL.
        return None
    key = dict(zip(_KEY, (person_id, question_id, roof, count, try_no), strict=True))
    connection = session.connection()
    row = connection.execute(_SELECT_ATTEMPT, key).mappings().first()
    if row is None:
        return None
    answers = connection.execute(_SELECT_ANSWERS, {"attempt_id": row["id"]}).mappings()
    kept = {name: row[name] for name in _ATTEMPT_FIELDS}
    told = tuple(AnswerFacts(**answer) for answer in answers)
    return StoredAttempt(**kept, answers=told, attempt_id=row["id"])


def seen_variants(
    session: AnySession, person_id: int, question_id: str, since: date
) -> list[SeenVariant]:
    """Return the numbers a person has finished the question on since that day, oldest first."""
    rows = session.execute(
        select(Attempt.variant, Attempt.seed, Attempt.redraws, Attempt.local_date)
        .where(
            Attempt.person_id == person_id,
            Attempt.question_id == question_id,
            Attempt.local_date >= since,
            Attempt.finished,
        )
        .order_by(Attempt.local_date, Attempt.id)
    )
    return [SeenVariant(*row) for row in rows]


def _insert_attempt(dialect: str) -> ClauseElement:
    table = table_of(Attempt)
    return (
        insert_into(table, dialect)
        .on_conflict_do_nothing(index_elements=list(_KEY))
        .returning(table.c.id)
    )


_INSERT_ATTEMPT = Statement(_insert_attempt, _ATTEMPT_FIELDS)
_INSERT_ANSWERS = Statement(
    lambda _dialect: insert(table_of(Answer)).inline(),
    ("attempt_id", "position", *_ANSWER_FIELDS),
)
_OF_THE_KEY = [table_of(Attempt).c[name] == bindparam(name) for name in _KEY]
_SELECT_ID = select(table_of(Attempt).c.id).where(*_OF_THE_KEY)
_SELECT_ATTEMPT = select(table_of(Attempt)).where(*_OF_THE_KEY)
_SELECT_ANSWERS = (
    select(*(table_of(Answer).c[name] for name in _ANSWER_FIELDS))
    .where(table_of(Answer).c.attempt_id == bindparam("attempt_id"))
    .order_by(table_of(Answer).c.position)
)


def _kept_id(connection: Connection, facts: AttemptFacts) -> int:
    return int(connection.execute(_SELECT_ID, _values(facts, _KEY)).scalar_one())


def _answers(attempt_id: int, facts: AttemptFacts) -> list[dict[str, Any]]:
    return [
        {
            **_values(answer, _ANSWER_FIELDS),
            "attempt_id": attempt_id,
            "position": position,
            # PostgreSQL keeps no NUL; a form sent by hand may carry one.
            "typed": answer.typed.replace("\0", "\N{REPLACEMENT CHARACTER}"),
        }
        for position, answer in enumerate(facts.answers)
    ]


def _values(facts: AttemptFacts | AnswerFacts, names: tuple[str, ...]) -> Mapping[str, Any]:
    return {name: getattr(facts, name) for name in names}
