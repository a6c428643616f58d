"""`trainer rebuild`: totals and skills counted again from the tries."""

import click
from flask import Flask

from trainer.cli.opening import prepared_app, told
from trainer.engine.units import counted
from trainer.records import db, repair, writing
from trainer.records.repair import Repaired
from trainer.records.rules import SkillRules
from trainer.web import Installation


@click.command()
def rebuild() -> None:
    """Count everybody's totals and skills again from their tries.

    After a repair, or when a threshold in competencies.toml was changed. Nothing that somebody
    answered, read or signed is touched, and a server may go on serving meanwhile.
    """
    app = prepared_app()
    with told():
        repaired = repaired_in(app)
    click.echo(said_of(repaired))


def repaired_in(app: Flask) -> list[Repaired]:
    """Return what came of each person's tries; each is committed before the next begins."""
    installation: Installation = app.extensions["installation"]
    with app.app_context():
        return [
            _repaired(person_id, installation.thresholds.skills)
            for person_id in repair.everybodys_ids(db.session)
        ]


def said_of(repaired: list[Repaired]) -> str:
    """Return the sentences that tell of it."""
    people = sum(each.rows > 0 or each.changed > 0 for each in repaired)
    skills, changed = (
        sum(getattr(each, name) for each in repaired) for name in ("skills", "changed")
    )
    words = f"Counted again: {counted(people, 'person', 'people')}, {counted(skills, 'skill')}."
    if not changed:
        return f"{words} Every row was right."
    return f"{words} {counted(changed, 'row')} put right."


def _repaired(person_id: int, rules: SkillRules) -> Repaired:
    # One at a time, so that nobody who answers meanwhile waits for all of it.
    writing(db.session)
    repaired = repair.repair(db.session, rules, person_id)
    db.session.commit()
    return repaired
