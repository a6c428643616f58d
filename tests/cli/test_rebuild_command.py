"""`trainer rebuild`: totals and skills counted again from the answers."""

import pytest
from cli_terminal import said
from sqlalchemy import delete, func, select

from trainer import create_app
from trainer.cli.demo import fill
from trainer.records import db, writing
from trainer.records.database import table_of
from trainer.records.skill_table import SkillProgress
from trainer.records.tallies import QuestionProgress
from trainer.web import prepare

TABLES = (SkillProgress, QuestionProgress)


@pytest.fixture(autouse=True)
def _a_crew(zone: None, instance: None) -> None:  # noqa: ARG001 - the settings of this test
    """An invented crew with some weeks behind them."""
    app = create_app()
    prepare(app)
    fill(app)


def kept() -> list[int]:
    """How many rows there are of skills and of questions."""
    with create_app().app_context():
        counts = [db.session.scalar(select(func.count()).select_from(each)) for each in TABLES]
        db.session.remove()
        db.engine.dispose()
    return [count or 0 for count in counts]


def test_what_stands_right_is_left_as_it_is() -> None:
    """And it says how much there is."""
    told = said("rebuild")
    assert told.startswith("Counted again from the answers: ")
    assert "people. All skills stood right before." in told


def test_what_was_lost_comes_back() -> None:
    """Skills and totals both; it says how many were wrong."""
    before = kept()
    with create_app().app_context():
        writing(db.session)
        for each in TABLES:
            db.session.execute(delete(table_of(each)))
        db.session.commit()
        db.session.remove()
        db.engine.dispose()
    assert kept() == [0, 0]
    assert f"{before[0]} skills stood wrong before." in said("rebuild")
    assert kept() == before
