"""Sittings: what somebody was offered on a day, in order, and how far they got.

A sitting is planned when it begins and then stays as it is, so that it can be left and taken up
anywhere. Its tries are kept like all others; a turn only says which of them was its own.
"""

from collections.abc import Collection, Sequence
from datetime import date, datetime, timedelta
from itertools import pairwise
from typing import Any

from sqlalchemy import Select, exists, insert, select, update

from .database import AnySession, dialect_of, insert_into, table_of
from .rules import SittingRules
from .sitting_rows import (
    PRACTICE,
    REFRESHER,
    Sitting,
    SittingRow,
    SittingTurn,
    TurnFacts,
    row_in,
    turn_values,
)

__all__ = [
    "begin_sitting",
    "end_sitting",
    "held_as_begun",
    "last_sitting",
    "minutes_of",
    "note_answer",
    "sat_whole",
    "sitting_of",
    "sittings_of_season",
]


def begin_sitting(
    session: AnySession,
    person_id: int,
    turns: Sequence[TurnFacts],
    now: datetime,
    today: date,
    *,
    kind: str = PRACTICE,
    season_id: int = 0,
    number: int = 0,
    had: int | None = None,
    held: int | None = None,
) -> int:
    """Return the number of a new sitting, or of the one that this person has begun already.

    Of practice there is one a day; of the refresher one for each number of a season. `had` and
    `held` are how many skills somebody had as it began, and how many of them held.
    """
    table = table_of(Sitting)
    begun = _begun(session, person_id, kind, today, season_id, number)
    if begun is not None:
        return begun
    statement = insert_into(table, dialect_of(session)).values(
        person_id=person_id,
        kind=kind,
        season_id=season_id,
        number=number,
        local_date=today,
        had=had,
        held=held,
        begun_at=now,
    )
    made = session.scalar(statement.on_conflict_do_nothing().returning(table.c.id))
    if made is None:
        begun = _begun(session, person_id, kind, today, season_id, number)
        if begun is None:
            raise RuntimeError("A sitting was neither begun nor there.")
        return begun
    if turns:
        session.execute(insert(table_of(SittingTurn)), turn_values(int(made), turns))
    return int(made)


def sitting_of(session: AnySession, person_id: int, sitting_id: int) -> SittingRow | None:
    """Return one of a person's own sittings, or None."""
    own = select(Sitting).where(Sitting.id == sitting_id, Sitting.person_id == person_id)
    return _one(session, own)


def last_sitting(session: AnySession, person_id: int, kind: str = PRACTICE) -> SittingRow | None:
    """Return the latest sitting of a kind that a person has begun, or None."""
    latest = (
        select(Sitting)
        .where(Sitting.person_id == person_id, Sitting.kind == kind)
        # Not by its date: a clock that was wrong may have dated one ahead of all that follow.
        .order_by(Sitting.id.desc())
        .limit(1)
    )
    return _one(session, latest)


def sittings_of_season(session: AnySession, person_id: int, season_id: int) -> list[SittingRow]:
    """Return a person's sittings of one season's refresher, by number."""
    query = select(Sitting).where(
        Sitting.person_id == person_id,
        Sitting.kind == REFRESHER,
        Sitting.season_id == season_id,
    )
    return [row_in(session, each) for each in session.scalars(query.order_by(Sitting.number))]


def held_as_begun(
    session: AnySession, person_ids: Collection[int], season_id: int
) -> dict[int, dict[int, tuple[int, int]]]:
    """Return how much held of what these people had as each sitting of a season was begun.

    By the sitting's number, then by person.
    """
    found = session.execute(
        select(Sitting.number, Sitting.person_id, Sitting.held, Sitting.had).where(
            Sitting.person_id.in_(list(person_ids)),
            Sitting.kind == REFRESHER,
            Sitting.season_id == season_id,
        )
    )
    begun: dict[int, dict[int, tuple[int, int]]] = {}
    for number, person_id, held, had in found:
        begun.setdefault(number, {})[person_id] = (held or 0, had or 0)
    return begun


def sat_whole(
    session: AnySession,
    person_ids: Collection[int],
    season_id: int,
    number: int,
    asked: Collection[str],
) -> set[int]:
    """Return those of these people who have sat one sitting of a season whole: all of it right.

    `asked` are the ids of today's questions: what no lesson asks any more isn't left to do.
    A wrong answer is told here, since no prediction tells it: what was just seen is there today.
    """
    is_left = SittingTurn.count.is_(None) & SittingTurn.question_id.in_(list(asked))
    lacks = exists().where(
        SittingTurn.sitting_id == Sitting.id, is_left | SittingTurn.right.is_(False)
    )
    found = session.scalars(
        select(Sitting.person_id).where(
            Sitting.person_id.in_(list(person_ids)),
            Sitting.kind == REFRESHER,
            Sitting.season_id == season_id,
            Sitting.number == number,
            ~lacks,
        )
    )
    return set(found)


def note_answer(
    session: AnySession,
    sitting_id: int,
    position: int,
    *,
    count: int,
    right: bool,
    unaided: bool,
    now: datetime,
) -> None:
    """Note that a turn has had its first try; the first one stands. In the try's transaction."""
    table = table_of(SittingTurn)
    session.execute(
        update(table)
        .where(
            table.c.sitting_id == sitting_id,
            table.c.position == position,
            table.c.count.is_(None),
        )
        .values(count=count, right=right, unaided=unaided, answered_at=now)
    )


def end_sitting(session: AnySession, person_id: int, sitting_id: int, now: datetime) -> bool:
    """Return whether a person's own sitting was still open, and end it where it stands."""
    table = table_of(Sitting)
    own = (table.c.id == sitting_id) & (table.c.person_id == person_id)
    open_ = update(table).where(own, table.c.ended_at.is_(None)).values(ended_at=now)
    return session.scalar(open_.returning(table.c.id)) is not None


def minutes_of(sitting: SittingRow, rules: SittingRules) -> float:
    """Return how many minutes were sat, from the beginning to the last answer.

    A longer time than a break's between two answers was a break, and counts as that.
    """
    answered = sorted(each.answered_at for each in sitting.turns if each.answered_at)
    longest = timedelta(minutes=rules.break_minutes)
    gaps = (
        min(max(later - earlier, timedelta()), longest)
        for earlier, later in pairwise([sitting.begun_at, *answered])
    )
    return sum(gaps, timedelta()) / timedelta(minutes=1)


def _begun(
    session: AnySession, person_id: int, kind: str, today: date, season_id: int, number: int
) -> int | None:
    query = select(Sitting.id).where(
        Sitting.person_id == person_id,
        Sitting.kind == kind,
        Sitting.season_id == season_id,
        Sitting.number == number,
    )
    # A refresher's sitting may have been begun on another day.
    query = query.where(Sitting.local_date == today) if kind == PRACTICE else query
    return session.scalar(query)


def _one(session: AnySession, query: Select[Any]) -> SittingRow | None:
    found = session.scalars(query).one_or_none()
    return row_in(session, found) if found else None
