"""`trainer serve`: the pages, on this machine or behind a proxy."""

import errno
import logging
import socket
from typing import TYPE_CHECKING

import click

from trainer.cli.opening import prepared_app
from trainer.config import Config
from trainer.web import Installation

if TYPE_CHECKING:
    from _typeshed.wsgi import WSGIApplication


@click.command()
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option(
    "--port", default=8000, show_default=True, type=click.IntRange(1, 65535), help="Port to use."
)
def serve(host: str, port: int) -> None:
    """Serve the pages until Ctrl-C.

    The first start on a terminal asks for the time zone; TRAINER_ZONE sets it without asking.
    """
    refuse_taken_port(host, port)
    app = prepared_app()
    installation: Installation = app.extensions["installation"]
    say_where(installation.config, host, port)
    run(app, host, port)


def say_where(config: Config, host: str, port: int) -> None:
    """Print where the pages, the lessons and the records are."""
    written = f"[{host}]" if ":" in host else host
    click.echo(f"Pages:   http://{written}:{port}/")
    click.echo(f"Lessons: {config.content}")
    click.echo(f"Records: {config.instance}")


def refuse_taken_port(host: str, port: int) -> None:
    """Raise a sentence when something else listens there already, or nobody can."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    try:
        with socket.create_server((host, port), family=family):
            return
    except (OSError, UnicodeError) as error:
        mend = "Give another --host or --port."
        if getattr(error, "errno", None) == errno.EADDRINUSE:
            mend = "Stop what uses it, or give another --port."
        # Python puts the address into the reason too, in brackets.
        reason = (getattr(error, "strerror", None) or "no such address").partition(" (")[0]
        raise click.ClickException(
            f"Port {port} on {host} can't be used ({reason}). {mend}"
        ) from error


def run(app: "WSGIApplication", host: str, port: int) -> None:
    """Serve until stopped; waitress runs on every system and needs no process manager."""
    from waitress import create_server  # noqa: PLC0415 - only this command needs it

    refuse_taken_port(host, port)
    logging.basicConfig()
    server = create_server(app, host=host, port=port, threads=8, ident=None)
    # Whoever reads this can open the pages: it listens already.
    click.echo("Stop with Ctrl-C.")
    server.run()
