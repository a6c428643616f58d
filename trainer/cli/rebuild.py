"""`trainer rebuild`: totals and skills, counted again from what people answered."""

import click

from trainer.cli.opening import prepared_app, told
from trainer.engine.units import counted
from trainer.records import db, recount, skill_recount, writing
from trainer.web.installation import Installation


@click.command()
def rebuild() -> None:
    """Count totals and skills again from the answers.

    For after a repair or a restored backup. Nothing that anybody answered is changed, and what
    was read stays read. Run it while nobody is answering.
    """
    app = prepared_app()
    installation: Installation = app.extensions["installation"]
    with app.app_context(), told():
        writing(db.session)
        recount.rebuild(db.session)
        done = skill_recount.rebuild_skills(db.session, installation.thresholds.skills)
        db.session.commit()
    people, skills = counted(done.people, "person", "people"), counted(done.skills, "skill")
    click.echo(f"Counted again from the answers: {skills} of {people}. {_changed(done.changed)}")


def _changed(rows: int) -> str:
    if not rows:
        return "All skills stood right before."
    return f"{counted(rows, 'skill')} stood wrong before."
