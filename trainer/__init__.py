"""A trainer for people who lay glass-fibre flat roofs by hand."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from flask import Flask

    from trainer.config import Config
    from trainer.lessons import Library
    from trainer.web.installation import Clock

__all__ = ["create_app"]


def create_app(
    config: "Config | None" = None,
    clock: "Clock | None" = None,
    library: "Library | None" = None,
) -> "Flask":
    """Return the web application of one installation, of its own lessons or of this library.

    Raises ConfigError for a setting that can't be used and ContentError for mistakes in the
    lessons. The database is brought up to date by `web.prepare`, before the first page.
    """
    # Imported here, so that the engine and the command line start without the web.
    from flask import Flask  # noqa: PLC0415

    from trainer import web  # noqa: PLC0415
    from trainer.config import read_config  # noqa: PLC0415
    from trainer.lessons import read_library  # noqa: PLC0415
    from trainer.records import database  # noqa: PLC0415

    config = config or read_config()
    library = library or read_library(config.content)
    installation = web.Installation.read(config, library, clock or web.utc_now)
    app = Flask("trainer.web", instance_path=str(config.instance))
    app.config.from_mapping(web.settings(config, installation.secret))
    database.init_app(app)
    web.init_app(app, installation)
    return app
