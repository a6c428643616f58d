"""`trainer person`: who may sign in."""

from datetime import UTC, datetime

import click

from trainer.cli.opening import prepared_app, told
from trainer.records import crews, db, people, writing


@click.group()
def person() -> None:
    """Look after the people who may sign in."""


@person.command()
@click.argument("name")
@click.option("--sign-in-name", help="What they type to sign in; else their name.")
@click.option(
    "--role",
    "roles",
    multiple=True,
    type=click.Choice(people.ROLES),
    default=["trainee"],
    show_default=True,
    help="What they are here; may be given several times.",
)
@click.option("--crew", help="The crew they belong to; a new name makes a new crew.")
@click.password_option(help="At least 8 characters; asked for when left out.")
def add(
    name: str, sign_in_name: str | None, roles: tuple[str, ...], crew: str | None, password: str
) -> None:
    """Add NAME, who can then sign in.

    Example: trainer person add "Noor Amari" --role trainee --crew North
    """
    with prepared_app().app_context(), told():
        writing(db.session)
        added = people.add_person(
            db.session,
            name=name,
            sign_in_name=sign_in_name or name,
            password=password,
            roles=roles,
            now=datetime.now(UTC),
            crew_id=None if crew is None else crew_named(crew),
        )
        db.session.commit()
    held = ", ".join(sorted(added.roles))
    click.echo(f"{added.name} can sign in as '{added.sign_in_name}' ({held}).")


def crew_named(name: str) -> int:
    """Return the id of the crew of this name, made where there is none yet; raise NameMissing."""
    wanted = crews.named(name).casefold()
    for crew in crews.crews(db.session):
        if crew.name.casefold() == wanted:
            return crew.crew_id
    return crews.add_crew(db.session, name).crew_id
