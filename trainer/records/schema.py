"""Bringing a database to the tables this version of the trainer needs."""

from pathlib import Path
from typing import TYPE_CHECKING

from flask import Flask
from sqlalchemy import Engine, inspect, text

from .database import db
from .faults import RecordsError

if TYPE_CHECKING:
    from alembic.config import Config

__all__ = ["HEAD", "LOCK", "MIGRATIONS", "DatabaseIsNewer", "upgrade", "version_of"]

MIGRATIONS = Path(__file__).with_name("migrations")

HEAD = "0007"
"""The newest migration. Written down so that a database that is up to date costs one look."""


LOCK = 7_500_450
"""What upgrades of a PostgreSQL database take turns by: any number that nothing else locks."""


class DatabaseIsNewer(RecordsError):
    """A database from a later version of the trainer; carries its version and ours."""

    def __init__(self, found: str, known: str) -> None:
        super().__init__(found, known)
        self.found, self.known = found, known

    def __str__(self) -> str:
        return (
            f"The database is at version {self.found}; this trainer knows it up to {self.known}. "
            "Install the newer trainer again, or restore a backup from before it."
        )


def upgrade(app: Flask) -> bool:
    """Return whether the app's database had to be brought up to date, which is then done.

    Raises DatabaseIsNewer, before anything is written, when it is ahead of this version.
    Two workers that start together wait for each other, and the second finds it done.
    """
    with app.app_context():
        found = version_of(db.engine)
        if found == HEAD:
            return False
        _run(found)
        return True


def version_of(engine: Engine) -> str | None:
    """Return the version of the tables in a database; None for an empty one."""
    with engine.connect() as connection:
        if not inspect(connection).has_table("alembic_version"):
            return None
        found = connection.scalar(text("SELECT version_num FROM alembic_version"))
        return None if found is None else str(found)


def migration_config() -> "Config":
    """Return Alembic's settings for our migrations, wherever the command is run."""
    from alembic.config import Config  # noqa: PLC0415 — see _run

    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config


def _run(found: str | None) -> None:
    # Alembic takes a tenth of a second to import, and most starts need none of it.
    from alembic import command  # noqa: PLC0415
    from alembic.script import ScriptDirectory  # noqa: PLC0415

    config = migration_config()
    known = {script.revision for script in ScriptDirectory.from_config(config).walk_revisions()}
    if found is not None and found not in known:
        raise DatabaseIsNewer(found, HEAD)
    command.upgrade(config, "head")
