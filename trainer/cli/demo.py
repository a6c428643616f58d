"""`trainer demo`: an invented crew with some weeks behind them, to look round in."""

import signal
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import click
from flask import Flask

from trainer import create_app
from trainer.cli.demo_past import Invented, live_through, note_uses, set_season
from trainer.cli.opening import told
from trainer.cli.serve import refuse_taken_port, run, say_where
from trainer.config import Config, ConfigError, read_config, zone_named
from trainer.records import crews, db, people, writing
from trainer.web import Installation, prepare

PASSWORD = "straw-and-amber"  # noqa: S105 - printed for everybody to see


CREW = (
    Invented("Lena", ("trainee",), "Harbour crew", 1, 0.7),
    Invented("Jory", ("trainee",), "Harbour crew", 3, 0.85, practised=9),
    Invented("Ines", ("trainee",), "Harbour crew", 5, 0.97, away=40, practised=60),
    Invented("Tam", ("trainee",), "Harbour crew"),
    Invented("Bertil", ("supervisor",), "Harbour crew"),
    Invented("Oda", ("trainee",), "Hill crew", 2, 0.6),
    Invented("Ruth", ("supervisor", "trainee"), "Hill crew", 4, 0.9, away=90, practised=30),
    Invented("Kit", ("office",), None),
)


@click.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option(
    "--port", default=8000, show_default=True, type=click.IntRange(1, 65535), help="Port to use."
)
@click.option(
    "--keep",
    type=click.Path(path_type=Path),
    help="A folder for the demo's records, to go on with another time.",
)
def demo(host: str, port: int, keep: Path | None) -> None:
    """Serve an invented crew, and say who can sign in.

    Your own records are not touched. The demo has a folder of its own, which is gone when you
    stop it with Ctrl-C, unless --keep names one.
    """
    refuse_taken_port(host, port)
    with kept_or_passing(keep) as instance:
        config = demo_config(instance)
        app = create_app(config)
        with told():
            prepare(app)
            if not _is_peopled(app):
                fill(app)
        say_where(config, host, port)
        say_who(config)
        run(app, host, port)


@contextmanager
def kept_or_passing(keep: Path | None) -> Iterator[Path]:
    """Yield the folder to keep, or one that is gone afterwards, however the demo was stopped."""
    if keep is not None:
        yield keep
        return
    # Being told to end then unwinds like Ctrl-C, instead of leaving the folder behind.
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        with tempfile.TemporaryDirectory(
            prefix="trainer-demo-", ignore_cleanup_errors=True
        ) as folder:
            yield Path(folder)
    finally:
        signal.signal(signal.SIGTERM, before)


def demo_config(instance: Path) -> Config:
    """Return the settings of a demo in its own folder, in this machine's zone or UTC."""
    config = read_config()
    return replace(
        config,
        instance=instance.resolve(),
        database_url=f"sqlite:///{instance.resolve() / 'trainer.sqlite'}",
        zone=config.zone or machine_zone(),
    )


def machine_zone(local: Path = Path("/etc/localtime")) -> ZoneInfo:
    """Return the time zone that this machine is set to, as far as it says; else UTC."""
    name = str(local.resolve()).partition("zoneinfo/")[2]
    try:
        return zone_named(name if name and local.is_symlink() else "UTC")
    except ConfigError:
        return zone_named("UTC")


def say_who(config: Config) -> None:
    """Print the sign-ins of the invented crew."""
    zone = config.wanted_zone().key
    click.echo(f"Zone:    {zone}\n\nSign in with the password {PASSWORD} as")
    for each in CREW:
        of = f" of the {each.crew}" if each.crew else ""
        click.echo(f"  {each.name.lower():<8} {' and '.join(each.roles)}{of}")
    click.echo()


def fill(app: Flask) -> None:
    """Add the crew, and give each of them the past that was invented for them."""
    installation: Installation = app.extensions["installation"]
    with app.app_context():
        writing(db.session)
        now = installation.now()
        crew_ids = {
            name: crews.add_crew(db.session, name).crew_id
            for name in sorted({each.crew for each in CREW if each.crew})
        }
        ids = {}
        for each in CREW:
            added = people.add_person(
                db.session,
                name=each.name,
                sign_in_name=each.name.lower(),
                password=PASSWORD,
                roles=each.roles,
                now=now - timedelta(weeks=26),
                crew_id=crew_ids[each.crew] if each.crew else None,
            )
            live_through(installation, added.person_id, each)
            ids[each.name] = added.person_id
        set_season(installation, by=ids["Kit"])
        note_uses(installation, ids["Lena"], by=ids["Bertil"])
        db.session.commit()


def _is_peopled(app: Flask) -> bool:
    with app.app_context():
        return bool(people.crew_members(db.session, None))
