"""Counting the skills again from the tries, and keeping what tries came to that are to go."""

from collections.abc import Iterable

from sqlalchemy import ColumnElement, Table, delete, insert

from .database import AnySession, table_of
from .rules import SkillRules
from .running import NEVER_TRIED, Progress, after
from .skill_table import SkillProgress, SkillStart, kept_in, row_of
from .skill_tries import SkillTold, all_told
from .skills import wait_for_everybody, wait_for_person

__all__ = ["keep_from_here", "rebuild_skills"]

Whose = tuple[int, str]


def rebuild_skills(session: AnySession, rules: SkillRules, person_id: int | None = None) -> None:
    """Make the skills of one person, or of everybody, what their tries say.

    It begins with what tries came to that are gone, and takes the others in the order in which
    they came in: the same step as in the commit of each. Whoever answers meanwhile waits.
    """
    _wait_for(session, person_id)
    counted = dict(kept_in(session, SkillStart, person_id))
    _count(counted, all_told(session, person_id), rules)
    _replace(session, table_of(SkillProgress), counted, person_id)


def keep_from_here(
    session: AnySession, rules: SkillRules, person_id: int, last_attempt_id: int
) -> None:
    """Keep what a person's tries up to that one came to, since they are about to go.

    The caller deletes those tries in the same transaction. A count from the tries then begins at
    what was kept, with whatever tries are left.
    """
    _wait_for(session, person_id)
    kept = dict(kept_in(session, SkillStart, person_id))
    _count(kept, all_told(session, person_id, up_to=last_attempt_id), rules)
    _replace(session, table_of(SkillStart), kept, person_id)


def _wait_for(session: AnySession, person_id: int | None) -> None:
    if person_id is None:
        wait_for_everybody(session.connection())
    else:
        wait_for_person(session.connection(), person_id)


def _count(
    progress: dict[Whose, Progress],
    told: Iterable[tuple[int, str, SkillTold]],
    rules: SkillRules,
) -> None:
    """Move the progress on by tries that come one person after another."""
    for person_id, skill, each in told:
        whose = (person_id, skill)
        progress[whose] = after(progress.get(whose, NEVER_TRIED), (each,), rules)


def _replace(
    session: AnySession, table: Table, progress: dict[Whose, Progress], person_id: int | None
) -> None:
    session.execute(delete(table).where(_theirs(table.c.person_id, person_id)))
    rows = [row_of(*whose, each) for whose, each in progress.items()]
    if rows:
        session.execute(insert(table), rows)


def _theirs(column: ColumnElement[int], person_id: int | None) -> ColumnElement[bool]:
    return column.is_not(None) if person_id is None else column == person_id
