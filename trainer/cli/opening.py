"""What a command does before it can touch the records: settings, time zone, database."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from zoneinfo import ZoneInfo

import click
from flask import Flask
from sqlalchemy.exc import DBAPIError

from trainer import create_app
from trainer.config import Config, ConfigError, keep_zone, read_config, zone_named
from trainer.records.faults import RecordsError, translate
from trainer.web import prepare


def prepared_app() -> Flask:
    """Return the application with its database brought up to date."""
    app = create_app(with_zone(read_config()))
    with told():
        prepare(app)
    return app


def with_zone(config: Config) -> Config:
    """Return the settings with a zone: on a terminal it is asked for once, and kept."""
    if config.zone is not None or not sys.stdin.isatty():
        return config
    question = "Which time zone is this? (such as Europe/London)"
    zone: ZoneInfo = click.prompt(question, value_proc=_zone)
    keep_zone(config.instance, zone)
    return replace(config, zone=zone)


def _zone(name: str) -> ZoneInfo:
    """Return the zone that was typed; for an unknown one the question comes again."""
    try:
        return zone_named(name.strip())
    except ConfigError as error:
        raise click.BadParameter(str(error)) from error


@contextmanager
def told() -> Iterator[None]:
    """Turn what the records or their database refuse into a sentence for the terminal."""
    try:
        yield
    except RecordsError as error:
        raise click.ClickException(str(error)) from error
    except DBAPIError as error:
        raise click.ClickException(str(translate(error) or _in_its_own_words(error))) from error


def _in_its_own_words(error: DBAPIError) -> str:
    reason = str(error.orig).strip().partition("\n")[0].rstrip(".")
    return (
        f"The database can't be used: {reason}. Look at the file in the instance folder, "
        "or at the server that TRAINER_DATABASE_URL names."
    )
