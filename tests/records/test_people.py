"""People: how one is added, what is refused, how they are found."""

from collections.abc import Callable
from typing import Any

import pytest
from records_cast import NOW, PASSWORD, People
from sqlalchemy import func, select

from trainer.records.crews import CrewUnknown, NameMissing
from trainer.records.database import AnySession, writing
from trainer.records.passwords import PasswordTooShort
from trainer.records.people import (
    Person,
    PersonRow,
    RoleUnknown,
    SignInNameTaken,
    add_person,
    by_ref,
    crew_members,
    crews_with,
    folded,
    without_crew,
)


@pytest.fixture
def add(any_session: AnySession, any_people: People) -> Callable[..., PersonRow]:
    """A function that adds Edith, with whatever differs given by name."""

    def added(**differs: Any) -> PersonRow:
        facts: dict[str, Any] = {
            "name": "Edith Lane",
            "sign_in_name": "Edith.Lane",
            "password": PASSWORD,
            "roles": ["trainee"],
            "crew_id": any_people.north,
            "now": NOW,
        }
        writing(any_session)
        return add_person(any_session, **{**facts, **differs})

    return added


def test_somebody_added_is_found_by_their_reference(
    any_session: AnySession, add: Callable[..., PersonRow]
) -> None:
    """What was given comes back, with the sign-in name folded and every role."""
    added = add(roles=["office", "supervisor"])
    assert by_ref(any_session, added.ref) == added
    assert (added.name, added.sign_in_name) == ("Edith Lane", "edith.lane")
    assert added.roles == {"office", "supervisor"}


def test_a_reference_tells_nothing(add: Callable[..., PersonRow]) -> None:
    """It is sixteen random signs: no number, and no two alike."""
    refs = {add(sign_in_name=f"edith{number}").ref for number in range(5)}
    assert len(refs) == 5
    assert all(len(ref) == 16 for ref in refs)


def test_nobody_is_found_by_a_wrong_reference(any_session: AnySession, any_people: People) -> None:
    """The key of a row is no reference, and neither is a sign that can't be printed."""
    assert by_ref(any_session, str(any_people.mina)) is None
    assert by_ref(any_session, "mina-ref\0") is None


def test_a_password_is_never_kept_as_typed(
    any_session: AnySession, add: Callable[..., PersonRow]
) -> None:
    """Only its hash is in the table."""
    added = add()
    kept = any_session.scalar(select(Person.password_hash).where(Person.id == added.person_id))
    assert kept is not None
    assert PASSWORD not in kept


@pytest.mark.parametrize("sign_in_name", ["mina", "MINA", "  Mina "])
def test_a_sign_in_name_is_given_once(add: Callable[..., PersonRow], sign_in_name: str) -> None:
    """Case and stray spaces don't make another name of it."""
    with pytest.raises(SignInNameTaken, match="Somebody signs in as mina already"):
        add(sign_in_name=sign_in_name)


@pytest.mark.parametrize(
    ("differs", "refusal", "sentence"),
    [
        ({"roles": ["boss", "trainee"]}, RoleUnknown, "The role asked for is boss, trainee."),
        ({"roles": []}, RoleUnknown, "asked for is nothing. Choose one or more of trainee,"),
        ({"crew_id": 4711}, CrewUnknown, "There is no crew number 4711."),
        ({"name": " "}, NameMissing, "The name is empty."),
        ({"sign_in_name": ""}, NameMissing, "The name is empty."),
        ({"password": "short"}, PasswordTooShort, "has 5 characters"),
    ],
)
def test_somebody_half_described_is_refused(
    any_session: AnySession,
    add: Callable[..., PersonRow],
    differs: dict[str, Any],
    refusal: type[Exception],
    sentence: str,
) -> None:
    """The refusal says what is wrong, and nobody was added."""
    before = any_session.scalar(select(func.count()).select_from(Person))
    with pytest.raises(refusal, match=sentence):
        add(**differs)
    assert any_session.scalar(select(func.count()).select_from(Person)) == before


def test_a_crew_is_those_who_are_here(any_session: AnySession, any_people: People) -> None:
    """By name, of that crew alone, without those who have left."""
    members = crew_members(any_session, any_people.north)
    assert [person.name for person in members] == ["Mina", "Ruth", "Tom"]


def test_a_crew_can_be_asked_for_a_role(session: AnySession, people: People) -> None:
    """Ruth is both: she is among the trainees and among the supervisors."""
    trainees = crew_members(session, people.north, "trainee")
    supervisors = crew_members(session, people.north, "supervisor")
    assert [person.name for person in trainees] == ["Mina", "Ruth", "Tom"]
    assert [person.name for person in supervisors] == ["Ruth"]


@pytest.mark.usefixtures("people")
def test_all_crews_together_are_everybody(session: AnySession) -> None:
    """Without a crew all are returned, those in none too."""
    everybody = crew_members(session, None)
    assert [person.name for person in everybody] == ["Iris", "Karel", "Mina", "Ruth", "Tom"]


def test_a_sign_in_name_is_folded_the_same_way_always() -> None:
    """Case, width and spaces go, once and for all."""
    assert folded("  Ｍina \t Brown ") == "mina brown"
    assert folded(folded("STRASSE")) == folded("straße")


@pytest.mark.usefixtures("any_people")
def test_who_is_in_no_crew_is_found_too(any_session: AnySession) -> None:
    """By role, and only while they are here."""
    assert [each.name for each in without_crew(any_session, "office")] == ["Iris"]
    assert without_crew(any_session, "trainee") == []


def test_crews_are_known_by_who_is_in_them(any_session: AnySession, any_people: People) -> None:
    """None stands for those in no crew; whoever has left is in none of them."""
    north, south = any_people.north, any_people.south
    assert crews_with(any_session, "trainee") == {north, south}
    assert crews_with(any_session, "supervisor") == {north}
    assert crews_with(any_session, "office") == {None}
