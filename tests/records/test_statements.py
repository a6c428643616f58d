"""Statements that go straight to the driver behave as the others do."""

from datetime import date

import pytest
from records_cast import NOW, People
from sqlalchemy import bindparam, insert, literal, select, text
from sqlalchemy.exc import IntegrityError, OperationalError, ProgrammingError

from trainer.records.crews import Crew
from trainer.records.database import AnySession, db, table_of
from trainer.records.people import Person
from trainer.records.statements import Statement, told_as_ours
from trainer.records.tallies import LessonProgress

BY_NAME = Statement(
    lambda _dialect: select(Person.id, literal("fixed %").label("word")).where(
        Person.name == bindparam("name")
    )
)


def test_values_given_and_values_fixed_are_both_sent(
    any_session: AnySession, any_people: People
) -> None:
    """A value named at each call, and one that is part of the statement, a percent sign too."""
    row = BY_NAME.first(any_session.connection(), {"name": "Mina"})
    assert row is not None
    assert tuple(row) == (any_people.mina, "fixed %")
    assert BY_NAME.first(any_session.connection(), {"name": "Nobody"}) is None


def test_values_are_converted_as_the_column_asks(
    any_session: AnySession, any_people: People
) -> None:
    """Instants and dates written past SQLAlchemy are read back by it unchanged."""
    table = table_of(LessonProgress)
    names = [column.name for column in table.columns]
    statement = Statement(lambda _dialect: insert(table).inline(), names)
    row = (any_people.mina, "taping", NOW, date(2026, 3, 9), 0, 0, NOW, date(2026, 3, 9))
    statement.run(any_session.connection(), [dict(zip(names, row, strict=True))])
    assert tuple(any_session.execute(select(table)).one()) == row


def test_the_transaction_is_the_sessions_own(any_session: AnySession) -> None:
    """What such a statement wrote goes with the session's rollback."""
    statement = Statement(lambda _dialect: insert(table_of(Crew)).inline(), ["name"])
    statement.run(any_session.connection(), [{"name": "North"}, {"name": "South"}])
    assert len(any_session.execute(select(Crew.id)).all()) == 2
    any_session.rollback()
    assert any_session.execute(select(Crew.id)).all() == []


def test_an_error_is_the_one_sqlalchemy_raises(any_session: AnySession) -> None:
    """A name given twice is an IntegrityError, a table that isn't there what it always is."""
    statement = Statement(lambda _dialect: insert(table_of(Crew)).inline(), ["name"])
    with pytest.raises(IntegrityError):
        statement.run(any_session.connection(), [{"name": "North"}, {"name": "North"}])
    any_session.rollback()
    missing = Statement(lambda _dialect: text("SELECT 1 FROM nowhere"))
    with pytest.raises((OperationalError, ProgrammingError)):
        missing.first(any_session.connection(), {})


@pytest.mark.usefixtures("app")
def test_a_mistake_of_ours_stays_what_it_is() -> None:
    """Only the driver's errors are told anew."""
    mistake = KeyError("name")
    with db.engine.connect() as connection:
        assert told_as_ours(mistake, "SELECT 1", connection) is mistake
        with pytest.raises(KeyError):
            BY_NAME.first(connection, {})
