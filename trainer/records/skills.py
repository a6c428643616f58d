"""Where each person stands with each skill: moved on in the commit of every try, read for pages."""

from collections.abc import Collection, Sequence
from typing import Any

from sqlalchemy import ClauseElement, Connection, bindparam, select

from .database import AnySession, insert_into, table_of
from .evidence import AttemptFacts
from .people import Person
from .rules import SkillRules
from .running import NEVER_TRIED, Progress, after
from .skill_table import COLUMNS, SkillProgress, progress_in, row_of
from .skill_tries import told_by
from .statements import Statement

__all__ = [
    "add_to_skills",
    "keep_skills",
    "skills_of",
    "stage_of",
    "wait_for_everybody",
    "wait_for_person",
]

#: How many skills one look asks for. Few questions ask for more, and those look again.
_AT_ONCE = 4


def add_to_skills(connection: Connection, facts: AttemptFacts, rules: SkillRules) -> None:
    """Move the skills of one try on, in the transaction that writes it."""
    told = told_by(facts)
    if not told:
        return
    kept = _look_up(connection, facts.person_id, tuple(told))
    moved = {
        skill: after(kept.get(skill, NEVER_TRIED), (each,), rules) for skill, each in told.items()
    }
    rows = [
        row_of(facts.person_id, skill, progress)
        for skill, progress in moved.items()
        if progress != kept.get(skill)
    ]
    if rows:
        keep_skills(connection, rows)


def wait_for_person(connection: Connection, person_id: int) -> None:
    """Wait until no other transaction is adding to this person's skills, where two could.

    SQLite has one writer anyway. The tries of one person are then numbered in the order in which
    their skills are moved on, which is the order that a count from the tries takes.
    """
    if connection.dialect.name == "postgresql":
        _WAIT.first(connection, {"person_id": person_id})


def wait_for_everybody(connection: Connection) -> None:
    """Wait in the same way until nobody's skills are being added to."""
    if connection.dialect.name == "postgresql":
        table = table_of(Person)
        # In one order, so that two that wait for everybody don't wait for each other.
        everybody = select(table.c.id).order_by(table.c.id).with_for_update(key_share=True)
        connection.execute(everybody).all()


def skills_of(
    session: AnySession, person_ids: Collection[int], skills: Collection[str]
) -> dict[int, dict[str, Progress]]:
    """Return the progress of each of these people at each of these skills.

    A skill nobody asks for is not told, though its row is kept; one that was never tried is
    `NEVER_TRIED`. One query, whatever the size of the histories.
    """
    table = table_of(SkillProgress)
    rows = session.execute(
        select(table).where(
            table.c.person_id.in_(list(person_ids)), table.c.skill.in_(list(skills))
        )
    ).mappings()
    found = {(row["person_id"], row["skill"]): progress_in(dict(row)) for row in rows}
    return {
        person_id: {skill: found.get((person_id, skill), NEVER_TRIED) for skill in skills}
        for person_id in person_ids
    }


def stage_of(session: AnySession, person_id: int, skill: str) -> int:
    """Return how much of the working of a skill's sums somebody is shown: 0 all, 3 none."""
    found = _STAGE.first(session.connection(), {"person_id": person_id, "skill": skill})
    return int(found[0]) if found else 0


def keep_skills(connection: Connection, rows: Sequence[dict[str, Any]]) -> None:
    """Write rows of `skill_progress`, each in the place of the one that was there."""
    _KEEP.run(connection, rows)


def _look_up(connection: Connection, person_id: int, skills: Sequence[str]) -> dict[str, Progress]:
    kept = {}
    for begin in range(0, len(skills), _AT_ONCE):
        some = skills[begin : begin + _AT_ONCE]
        # The statement always has as many places: the first skill fills those that are left.
        asked = [*some, *[some[0]] * (_AT_ONCE - len(some))]
        values = {f"skill_{place}": skill for place, skill in enumerate(asked)}
        for skill, *row in _LOOK_UP.all(connection, {"person_id": person_id, **values}):
            kept[skill] = progress_in(dict(zip(COLUMNS, row, strict=True)))
    return kept


def _look_up_statement(_dialect: str) -> ClauseElement:
    table = table_of(SkillProgress)
    places = [bindparam(f"skill_{place}", type_=table.c.skill.type) for place in range(_AT_ONCE)]
    return select(table.c.skill, *(table.c[name] for name in COLUMNS)).where(
        table.c.person_id == bindparam("person_id"), table.c.skill.in_(places)
    )


def _keep_statement(dialect: str) -> ClauseElement:
    statement = insert_into(table_of(SkillProgress), dialect)
    new = statement.excluded
    return statement.on_conflict_do_update(
        index_elements=["person_id", "skill"], set_={name: new[name] for name in COLUMNS}
    )


_STAGE = Statement(
    lambda _dialect: select(table_of(SkillProgress).c.stage).where(
        table_of(SkillProgress).c.person_id == bindparam("person_id"),
        table_of(SkillProgress).c.skill == bindparam("skill"),
    )
)
_LOOK_UP = Statement(_look_up_statement)
_KEEP = Statement(_keep_statement, ("person_id", "skill", *COLUMNS))
_WAIT = Statement(
    lambda _dialect: (
        select(table_of(Person).c.id)
        .where(table_of(Person).c.id == bindparam("person_id"))
        .with_for_update(key_share=True)
    )
)
