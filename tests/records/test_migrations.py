"""The migrations: one line of them, the same tables as the models, safe to run at any start."""

import time
from pathlib import Path

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from flask import Flask
from records_app import begin_script, opened, said_by
from records_cast import People
from sqlalchemy import Engine, inspect, text
from sqlalchemy.exc import IntegrityError

from trainer.records import schema
from trainer.records.database import AnySession, Base, db, take_turn, writing

UPGRADE = """
import sys
from flask import Flask
from trainer.records import database, schema
app = Flask("records")
app.config["SQLALCHEMY_DATABASE_URI"] = sys.argv[1]
database.init_app(app)
print(schema.upgrade(app))
with app.app_context():
    print(schema.version_of(database.db.engine))
"""
TOLD = """
from trainer.records import database, schema
# Not what PostgreSQL waits for: an upgrade may take longer than a request waits.
database.BUSY_TIMEOUT_MS = 300
look = schema.version_of
def told(engine):
    found = look(engine)
    print("looked", flush=True)
    return found
schema.version_of = told
"""


def test_there_is_one_head_and_the_code_names_it() -> None:
    """Two heads would mean two histories; the written-down head is the scripts' own."""
    scripts = ScriptDirectory.from_config(schema.migration_config())
    assert scripts.get_heads() == [schema.HEAD]


@pytest.mark.usefixtures("any_app")
def test_models_and_migrations_agree() -> None:
    """A migrated database lacks nothing that the models have, and has nothing more."""
    with db.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []


def test_models_and_migrations_agree_on_checks(empty_url: str) -> None:
    """Each CHECK is in both places, in the same words; the comparison above is blind to them."""
    with opened(empty_url) as app:
        db.create_all()
        modelled = _checks(db.engine)
        db.drop_all()
        schema.upgrade(app)
        assert _checks(db.engine) == modelled
        assert len(modelled) == 10


@pytest.mark.parametrize(
    "statement",
    [
        "INSERT INTO person_role VALUES (:mina, 'boss')",
        "INSERT INTO source_text VALUES ('d', 'poem', 'n', 't', '2026-03-09 00:00:00')",
        "INSERT INTO answer VALUES (1, 0, 'l', 's', 'g', '0', 1, 1, '1', '1 g', 1, 'half', '', '')",
    ],
)
def test_the_database_knows_the_words(
    any_session: AnySession, any_people: People, statement: str
) -> None:
    """A role, a kind of text or a verdict that isn't ours is refused by the database itself."""
    writing(any_session)
    with pytest.raises(IntegrityError, match=r"(?i)check"):
        any_session.execute(text(statement), {"mina": any_people.mina})


def test_an_upgrade_is_done_once(empty_url: str) -> None:
    """The first upgrade makes the tables and says so; the second finds nothing to do."""
    with opened(empty_url) as app:
        assert schema.version_of(db.engine) is None
        assert schema.upgrade(app)
        assert schema.version_of(db.engine) == schema.HEAD
        assert not schema.upgrade(app)


def test_an_upgrade_can_be_undone(empty_url: str) -> None:
    """Going back to nothing leaves no table of ours, and going forward again works."""
    with opened(empty_url) as app:
        schema.upgrade(app)
        command.downgrade(schema.migration_config(), "base")
        assert inspect(db.engine).get_table_names() == ["alembic_version"]
        assert schema.upgrade(app)


def test_two_workers_that_start_together_upgrade_once(empty_url: str, tmp_path: Path) -> None:
    """One brings the database up to date, the other waits and finds it done; neither fails."""
    with opened(empty_url), db.engine.begin() as held:
        if held.dialect.name == "postgresql":
            held.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": schema.LOCK})
        take_turn(held)
        workers = [begin_script(TOLD + UPGRADE, tmp_path, empty_url) for _ in range(2)]
        for worker in workers:
            assert worker.stdout is not None
            assert worker.stdout.readline() == "looked\n"
        # Both have seen an empty database. Give both the time to come to the same door.
        time.sleep(1)
    assert [said_by(worker).split()[-1] for worker in workers] == [schema.HEAD, schema.HEAD]


def test_a_newer_database_is_left_alone(app: Flask, session: AnySession) -> None:
    """A database from a later version stops the start with a sentence, and is not touched."""
    writing(session)
    session.execute(text("UPDATE alembic_version SET version_num = '0999'"))
    session.commit()
    with pytest.raises(schema.DatabaseIsNewer, match="at version 0999; this trainer knows it up"):
        schema.upgrade(app)
    assert schema.version_of(db.engine) == "0999"


def test_a_database_that_is_up_to_date_needs_no_alembic(
    sqlite_template: Path, tmp_path: Path
) -> None:
    """Looking at a current database imports nothing of the migration tool."""
    script = UPGRADE + "print('alembic' in sys.modules)"
    said = said_by(begin_script(script, tmp_path, f"sqlite:///{sqlite_template}"))
    assert said.split() == ["False", schema.HEAD, "False"]


def test_the_tables_are_made_from_any_folder(empty_url: str, tmp_path: Path) -> None:
    """No alembic.ini is needed where the command is run."""
    assert said_by(begin_script(UPGRADE, tmp_path, empty_url)).split() == ["True", schema.HEAD]


def _checks(engine: Engine) -> set[tuple[str, str | None, str]]:
    found = inspect(engine)
    return {
        (table, check["name"], check["sqltext"])
        for table in found.get_table_names()
        for check in found.get_check_constraints(table)
    }
