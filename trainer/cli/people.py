"""`trainer person`: who may sign in."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime

import click
from flask import Flask

from trainer import create_app
from trainer.records import crews, db, people, writing
from trainer.records.faults import RecordsError, translate
from trainer.web import prepare


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
    help="May be given several times.",
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
    click.echo(f"{added.name} can sign in as '{added.sign_in_name}' ({', '.join(sorted(roles))}).")


def crew_named(name: str) -> int:
    """Return the id of the crew of this name, made where there is none yet."""
    for crew in crews.crews(db.session):
        if crew.name.casefold() == name.strip().casefold():
            return crew.crew_id
    return crews.add_crew(db.session, name).crew_id


@contextmanager
def told() -> Iterator[None]:
    """Turn what the records refuse into a sentence for the terminal."""
    try:
        yield
    except RecordsError as error:
        raise click.ClickException(str(error)) from error
    except Exception as error:
        known = translate(error)
        if known is None:
            raise
        raise click.ClickException(str(known)) from error


def prepared_app() -> Flask:
    """Return the application with its database brought up to date."""
    app = create_app()
    with told():
        prepare(app)
    return app
