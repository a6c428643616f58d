"""Sign-ins: how one starts, who is found, how it ends."""

from datetime import timedelta

import pytest
from argon2 import PasswordHasher
from records_cast import NOW, PASSWORD, People
from sqlalchemy import select, update

from trainer.records import signins
from trainer.records.database import AnySession, table_of, writing
from trainer.records.people import Person
from trainer.records.signins import SignedIn, SignIn

LATER = NOW + timedelta(days=1)


@pytest.fixture
def token(any_session: AnySession, any_people: People) -> str:
    """Mina has signed in on her phone."""
    writing(any_session)
    token = signins.start(any_session, any_people.mina, NOW, "phone")
    any_session.commit()
    return token


def test_the_token_tells_who_it_is(any_session: AnySession, any_people: People, token: str) -> None:
    """Whoever holds the token is Mina, in North, a trainee."""
    found = signins.find(any_session, token, LATER)
    assert found is not None
    assert found == SignedIn(
        person_id=any_people.mina,
        ref="mina-ref",
        name="Mina",
        crew_id=any_people.north,
        roles=frozenset({"trainee"}),
        sign_in_id=found.sign_in_id,
    )


def test_every_role_is_told(any_session: AnySession, any_people: People) -> None:
    """Ruth, a supervisor and a trainee, is found as both."""
    writing(any_session)
    found = signins.find(any_session, signins.start(any_session, any_people.ruth, NOW), NOW)
    assert found is not None
    assert found.roles == {"supervisor", "trainee"}


def test_finding_is_one_read(session: AnySession, people: People, statements: list[str]) -> None:
    """One SELECT tells everything a page must know, and nothing is written."""
    writing(session)
    token = signins.start(session, people.mina, NOW)
    statements.clear()
    assert signins.find(session, token, NOW) is not None
    assert len(statements) == 1
    assert statements[0].startswith("SELECT")


def test_the_token_is_not_in_the_table(any_session: AnySession, token: str) -> None:
    """A stolen copy of the table opens nothing, since a digest is no token."""
    digest = any_session.scalar(select(SignIn.token_digest))
    assert digest is not None
    assert token not in digest
    assert signins.find(any_session, digest, NOW) is None


def test_tokens_are_long_and_never_the_same(any_session: AnySession, any_people: People) -> None:
    """256 random bits: 43 signs of six bits each, rounded up."""
    writing(any_session)
    tokens = {signins.start(any_session, any_people.mina, NOW) for _ in range(5)}
    assert len(tokens) == 5
    assert {len(token) for token in tokens} == {43}


def test_an_unknown_token_is_nobody(any_session: AnySession, token: str) -> None:
    """Neither a wrong one nor none at all finds anybody."""
    assert signins.find(any_session, token + "x", NOW) is None
    assert signins.find(any_session, "", NOW) is None


@pytest.mark.parametrize(("days", "found"), [(29.99, True), (30, False), (400, False)])
def test_a_phone_stays_signed_in_for_thirty_days(
    any_session: AnySession, token: str, days: float, *, found: bool
) -> None:
    """Up to the thirtieth day, not including its last instant."""
    then = NOW + timedelta(days=days)
    assert (signins.find(any_session, token, then) is not None) is found


def test_a_sign_in_can_be_shorter(session: AnySession, people: People) -> None:
    """A shared desk asks for half an hour."""
    writing(session)
    token = signins.start(session, people.mina, NOW, lasts=timedelta(minutes=30))
    assert signins.find(session, token, NOW + timedelta(minutes=29)) is not None
    assert signins.find(session, token, NOW + timedelta(minutes=31)) is None


def test_signing_out_ends_one(any_session: AnySession, any_people: People, token: str) -> None:
    """The phone that signed out is nobody's; the other phone stays signed in."""
    writing(any_session)
    other = signins.start(any_session, any_people.mina, NOW)
    found = signins.find(any_session, token, NOW)
    assert found is not None
    signins.end(any_session, found.sign_in_id, NOW)
    assert signins.find(any_session, token, NOW) is None
    assert signins.find(any_session, other, NOW) is not None


def test_the_office_can_end_all(any_session: AnySession, any_people: People, token: str) -> None:
    """All of Mina's end and are counted; Tom's stays; doing it again ends none."""
    writing(any_session)
    signins.start(any_session, any_people.mina, NOW)
    toms = signins.start(any_session, any_people.tom, NOW)
    assert signins.end_all(any_session, any_people.mina, LATER) == 2
    assert signins.end_all(any_session, any_people.mina, LATER) == 0
    assert signins.find(any_session, token, LATER) is None
    assert signins.find(any_session, toms, LATER) is not None


def test_somebody_who_left_is_signed_in_nowhere(any_session: AnySession, token: str) -> None:
    """The token still stands in the table, but opens nothing."""
    writing(any_session)
    people = table_of(Person)
    any_session.execute(update(people).where(people.c.name == "Mina").values(left_at=NOW))
    assert signins.find(any_session, token, NOW) is None


def test_what_stands_is_listed_latest_first(
    any_session: AnySession, any_people: People, token: str
) -> None:
    """Ended and outlived ones are left out; use brings one to the top."""
    writing(any_session)
    signins.start(any_session, any_people.mina, NOW, "desk", timedelta(hours=1))
    signins.start(any_session, any_people.mina, NOW + timedelta(hours=2), "tablet")
    phone = signins.find(any_session, token, NOW)
    assert phone is not None
    signins.seen(any_session, phone.sign_in_id, LATER)
    listed = signins.standing(any_session, any_people.mina, LATER)
    assert [row.from_where for row in listed] == ["phone", "tablet"]
    assert listed[0].last_seen_at == LATER
    assert listed[0].expires_at == NOW + timedelta(days=30)


@pytest.mark.parametrize("sign_in_name", ["mina", " MINA"])
def test_name_and_password_together_are_recognised(
    any_session: AnySession, any_people: People, sign_in_name: str
) -> None:
    """The name in any case, the password exactly."""
    assert signins.recognise(any_session, sign_in_name, PASSWORD) == any_people.mina


@pytest.mark.usefixtures("any_people")
@pytest.mark.parametrize(
    ("sign_in_name", "password"),
    [("mina", "three wet roller"), ("nobody\0", PASSWORD), ("olga", PASSWORD), ("", "")],
)
def test_anything_else_is_not(any_session: AnySession, sign_in_name: str, password: str) -> None:
    """A wrong password, an unknown name, somebody who has left, and nothing: all alike."""
    assert signins.recognise(any_session, sign_in_name, password) is None


@pytest.mark.usefixtures("people")
def test_an_unknown_name_is_checked_like_any(
    session: AnySession, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The costly check is made for a name that doesn't exist too, so time tells nothing."""
    checked: list[str | None] = []

    def check(_password: str, password_hash: str | None) -> bool:
        checked.append(password_hash)
        return False

    monkeypatch.setattr(signins, "password_matches", check)
    signins.recognise(session, "nobody\0", PASSWORD)
    signins.recognise(session, "olga", PASSWORD)
    assert checked == [None, None]


def test_a_hash_of_old_cost_is_renewed_at_sign_in(session: AnySession, people: People) -> None:
    """Once: the new hash has today's cost and lets the same password in."""
    old = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash(PASSWORD)
    writing(session)
    session.execute(
        update(table_of(Person)).where(Person.id == people.mina).values(password_hash=old)
    )
    assert signins.recognise(session, "mina", PASSWORD) == people.mina
    assert signins.renew_hash(session, people.mina, PASSWORD)
    assert not signins.renew_hash(session, people.mina, PASSWORD)
    assert signins.recognise(session, "mina", PASSWORD) == people.mina
    assert signins.recognise(session, "mina", "three wet") is None


def test_somebody_unknown_has_no_hash_to_renew(session: AnySession) -> None:
    """Nothing is written for a key that nobody has."""
    assert not signins.renew_hash(session, 4711, PASSWORD)
