"""Runs the migrations on the app's database. Needs an app context, and no alembic.ini."""

from alembic import context
from sqlalchemy import text

from trainer.records.database import Base, db, take_turn
from trainer.records.schema import LOCK


def _run() -> None:
    with db.engine.connect() as connection:
        context.configure(
            connection=connection,
            target_metadata=Base.metadata,
            render_as_batch=True,
            compare_type=True,
            # We say BEGIN to SQLite ourselves, so a schema change there is undone as a whole too.
            transactional_ddl=True,
        )
        with context.begin_transaction():
            # A second worker waits here, and then finds the work done.
            take_turn(connection)
            if connection.dialect.name == "postgresql":
                # An upgrade may take longer than a request waits for its turn.
                connection.execute(text("SET LOCAL lock_timeout = 0"))
                connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": LOCK})
            context.run_migrations()


if context.is_offline_mode():
    raise RuntimeError("These migrations need a database to run on. Leave out --sql.")

_run()
