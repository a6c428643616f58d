"""Putting right whatever is counted from the tries: totals and skills, one person at a time."""

from dataclasses import dataclass
from typing import Any

from sqlalchemy import select

from . import recount, skill_recount
from .database import AnySession, table_of
from .people import Person
from .rules import SkillRules
from .skill_table import SkillProgress
from .skills import wait_for_person
from .tallies import LessonProgress, QuestionProgress

__all__ = ["Repaired", "everybodys_ids", "repair"]

_COUNTED = (QuestionProgress, LessonProgress, SkillProgress)

Rows = dict[tuple[str, str], tuple[Any, ...]]


@dataclass(frozen=True, slots=True)
class Repaired:
    """What came of counting one person's tries again."""

    rows: int
    """Rows that are counted from tries, and stand now."""
    skills: int
    """Those of them that are skills."""
    changed: int
    """Rows that were wrong, missing, or told by no try."""


def everybodys_ids(session: AnySession) -> list[int]:
    """Return the keys of all people, those who have left too."""
    return list(session.scalars(select(Person.id).order_by(Person.id)))


def repair(session: AnySession, rules: SkillRules, person_id: int) -> Repaired:
    """Count one person's totals and skills again, in the caller's transaction."""
    # Before the first look: what is on its way would else be taken for a change.
    wait_for_person(session.connection(), person_id)
    before = _rows(session, person_id)
    recount.rebuild(session, person_id)
    skill_recount.rebuild_skills(session, rules, person_id)
    after = _rows(session, person_id)
    changed = sum(before.get(key) != after.get(key) for key in before.keys() | after.keys())
    skills = sum(key[0] == SkillProgress.__tablename__ for key in after)
    return Repaired(len(after), skills, changed)


def _rows(session: AnySession, person_id: int) -> Rows:
    """Return what is counted of a person, by table and what it is about."""
    found: Rows = {}
    for table in map(table_of, _COUNTED):
        (about,) = (each.name for each in table.primary_key if each.name != "person_id")
        query = select(table).where(table.c.person_id == person_id)
        for row in session.execute(query).mappings():
            found[table.name, row[about]] = tuple(row.values())
    return found
