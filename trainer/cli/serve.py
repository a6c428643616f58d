"""`trainer serve`: the pages, on this machine or behind a proxy."""

import socket
import sys

import click
from flask import Flask

from trainer.cli.people import prepared_app
from trainer.config import Config, keep_zone, read_config, zone_named


@click.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option("--port", default=8000, show_default=True, type=click.IntRange(1, 65535))
def serve(host: str, port: int) -> None:
    """Serve the pages until Ctrl-C.

    The first start on a terminal asks for the time zone; TRAINER_ZONE sets it without asking.
    """
    config = read_config()
    ask_for_zone(config)
    app = prepared_app()
    say_where(config, host, port)
    run(app, host, port)


def ask_for_zone(config: Config) -> None:
    """Ask for the zone on a terminal, where none is set, and keep it."""
    if config.zone is None and sys.stdin.isatty():
        name = click.prompt("Which time zone is this? (such as Europe/London)", type=str)
        keep_zone(config.instance, zone_named(name))


def say_where(config: Config, host: str, port: int) -> None:
    """Print where the pages, the lessons and the records are."""
    click.echo(f"Pages:   http://{host}:{port}/")
    click.echo(f"Lessons: {config.content}")
    click.echo(f"Records: {config.instance}")


def refuse_taken_port(host: str, port: int) -> None:
    """Raise a sentence when something else listens there already."""
    try:
        with socket.create_server((host, port)):
            return
    except OSError as error:
        raise click.ClickException(
            f"Port {port} on {host} can't be used ({error.strerror}). "
            f"Stop what uses it, or take another: --port {port + 1}."
        ) from error


def run(app: Flask, host: str, port: int) -> None:
    """Serve until stopped; waitress runs on every system and needs no process manager."""
    from waitress import serve as listen  # noqa: PLC0415 - only this command needs it

    refuse_taken_port(host, port)
    click.echo("Stop with Ctrl-C.")
    listen(app, host=host, port=port, threads=8, ident=None)
