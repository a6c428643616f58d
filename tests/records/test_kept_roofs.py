"""Roofs that are kept: own ones, and those that a supervisor shares with the crew."""

from datetime import date, timedelta

from records_cast import NOW, People, kept_text

from trainer.records import texts
from trainer.records.database import AnySession, writing
from trainer.records.roofs import change_roof, remove_roof, roof_for, roofs_for, save_roof

TODAY = date(2026, 3, 9)
GARAGE = kept_text("roof", "Garage", '{"title": "Garage"}')
LONGER = kept_text("roof", "Garage, longer", '{"title": "Garage, longer"}')


def saved(session: AnySession, person_id: int, text: texts.Text = GARAGE) -> int:
    """Save a roof."""
    writing(session)
    return save_roof(session, person_id, text, NOW, TODAY)


def test_a_roof_is_kept_with_its_text(any_session: AnySession, any_people: People) -> None:
    """It comes back as it was described."""
    number = saved(any_session, any_people.mina)
    roof = roof_for(any_session, any_people.mina, any_people.north, number)
    assert roof
    assert (roof.title, roof.text, roof.digest) == ("Garage", GARAGE.text, GARAGE.digest)
    assert (roof.owner, roof.local_date) == ("Mina", TODAY)


def test_own_roofs_come_last_changed_first(any_session: AnySession, any_people: People) -> None:
    """The garage was described first and changed last."""
    garage = saved(any_session, any_people.mina)
    saved(any_session, any_people.mina, LONGER)
    later = NOW + timedelta(hours=1)
    assert change_roof(any_session, any_people.mina, garage, GARAGE, later, TODAY)
    listed = roofs_for(any_session, any_people.mina, any_people.north)
    assert [roof.title for roof in listed] == ["Garage", "Garage, longer"]


def test_a_trainee_s_roof_is_their_own(any_session: AnySession, any_people: People) -> None:
    """Tom is in the same crew and sees nothing of Mina's; nor does their supervisor."""
    number = saved(any_session, any_people.mina)
    for person in (any_people.tom, any_people.ruth):
        assert roof_for(any_session, person, any_people.north, number) is None
        assert roofs_for(any_session, person, any_people.north) == []


def test_a_supervisor_s_roof_is_the_crew_s(any_session: AnySession, any_people: People) -> None:
    """Ruth's crew sees it, another crew doesn't, and somebody in no crew doesn't."""
    number = saved(any_session, any_people.ruth)
    assert roof_for(any_session, any_people.tom, any_people.north, number)
    assert roof_for(any_session, any_people.karel, any_people.south, number) is None
    assert roof_for(any_session, any_people.iris, None, number) is None


def test_nobody_changes_or_removes_another_s_roof(
    any_session: AnySession, any_people: People
) -> None:
    """Seeing it is not owning it."""
    number = saved(any_session, any_people.ruth)
    assert not change_roof(any_session, any_people.tom, number, LONGER, NOW, TODAY)
    assert not remove_roof(any_session, any_people.tom, number)
    roof = roof_for(any_session, any_people.ruth, any_people.north, number)
    assert roof
    assert roof.title == "Garage"


def test_what_a_roof_was_stays_when_it_is_changed_or_removed(
    any_session: AnySession, any_people: People
) -> None:
    """Answers name the digest that they were asked on."""
    number = saved(any_session, any_people.mina)
    assert change_roof(any_session, any_people.mina, number, LONGER, NOW, TODAY)
    assert remove_roof(any_session, any_people.mina, number)
    assert not remove_roof(any_session, any_people.mina, number)
    assert roof_for(any_session, any_people.mina, any_people.north, number) is None
    assert texts.text_of(any_session, GARAGE.digest) == GARAGE.text
    assert texts.text_of(any_session, LONGER.digest) == LONGER.text


def test_the_same_roof_saved_twice_is_two(any_session: AnySession, any_people: People) -> None:
    """One may be changed and the other kept."""
    assert saved(any_session, any_people.mina) != saved(any_session, any_people.mina)


def test_a_number_that_nobody_has(session: AnySession, people: People) -> None:
    """There is nothing to see, change or remove."""
    writing(session)
    assert roof_for(session, people.mina, people.north, 999) is None
    assert not change_roof(session, people.mina, 999, GARAGE, NOW, TODAY)
    assert not remove_roof(session, people.mina, 999)
