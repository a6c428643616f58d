"""The crews of the firm."""

import pytest
from records_cast import People

from trainer.records.crews import CrewNameTaken, NameMissing, add_crew, crew_by_id, crews
from trainer.records.database import AnySession, writing


def test_crews_come_by_name(any_session: AnySession) -> None:
    """Whatever order they were added in; stray spaces are dropped."""
    writing(any_session)
    south, north = add_crew(any_session, " South "), add_crew(any_session, "North")
    assert crews(any_session) == [north, south]
    assert south.name == "South"


def test_a_crew_name_is_given_once(any_session: AnySession) -> None:
    """The second crew of a name is refused with a sentence, and the transaction goes on."""
    writing(any_session)
    add_crew(any_session, "North")
    with pytest.raises(CrewNameTaken, match="There is a crew called North already"):
        add_crew(any_session, "North")
    assert len(crews(any_session)) == 1


def test_a_crew_needs_a_name(session: AnySession) -> None:
    """Spaces are no name."""
    with pytest.raises(NameMissing, match="The name is empty"):
        add_crew(session, "  ")


def test_a_crew_is_found_by_its_number(any_session: AnySession, any_people: People) -> None:
    """And nothing where there is none."""
    found = crew_by_id(any_session, any_people.north)
    assert found is not None
    assert found.name == "North"
    assert crew_by_id(any_session, 999) is None
