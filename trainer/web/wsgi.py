"""What a server starts: gunicorn 'trainer.web.wsgi:application()'."""

import gc

from flask import Flask

from trainer import create_app
from trainer.web import prepare


def application() -> Flask:
    """Return the application, its database brought up to date, ready for its first page."""
    app = create_app()
    prepare(app)
    settle()
    return app


def settle() -> None:
    """Leave what was read at the start out of every later collection of garbage.

    It lives as long as the server, and walking through it is what makes some pages slow.
    """
    gc.collect()
    gc.freeze()
