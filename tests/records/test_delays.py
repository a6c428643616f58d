"""The wait after wrong passwords."""

from datetime import datetime, timedelta

import pytest
from records_cast import NOW
from sqlalchemy import func, select, text

from trainer.records import delays
from trainer.records.database import AnySession, writing
from trainer.records.delays import SignInDelay

NONE = timedelta(0)
#: Where the crew's own phone is, and somewhere else.
VAN, ELSEWHERE = "192.0.2.7", "198.51.100.9"


def fail(
    session: AnySession, name: str, times: int, now: datetime = NOW, where: str = VAN
) -> timedelta:
    """The wait after that many wrong passwords in a row, from one address."""
    writing(session)
    return [delays.failed(session, name, where, now) for _ in range(times)][-1]


def test_a_name_that_never_failed_may_try(any_session: AnySession) -> None:
    """There is no wait to begin with."""
    assert delays.wait(any_session, "mina", VAN, NOW) == NONE


@pytest.mark.parametrize(
    ("failures", "seconds"),
    [(1, 0), (4, 0), (5, 30), (6, 60), (7, 120), (8, 240), (9, 480), (10, 900), (60, 900)],
)
def test_the_wait_doubles_up_to_a_quarter_of_an_hour(
    any_session: AnySession, failures: int, seconds: int
) -> None:
    """Four are free; the fifth costs half a minute; no wait is over fifteen."""
    assert fail(any_session, "mina", failures) == timedelta(seconds=seconds)
    assert delays.wait(any_session, "mina", VAN, NOW) == timedelta(seconds=seconds)


def test_a_wait_runs_down_and_ends(any_session: AnySession) -> None:
    """Ten seconds later twenty are left; after thirty the name may try again."""
    fail(any_session, "mina", 5)
    assert delays.wait(any_session, "mina", VAN, NOW + timedelta(seconds=10)) == timedelta(
        seconds=20
    )
    assert delays.wait(any_session, "mina", VAN, NOW + timedelta(seconds=30)) == NONE
    assert delays.wait(any_session, "mina", VAN, NOW + timedelta(days=3)) == NONE


def test_a_success_begins_again(any_session: AnySession) -> None:
    """Failures in a row are counted, not failures in all."""
    fail(any_session, "mina", 7)
    delays.succeeded(any_session, "mina", VAN)
    assert delays.wait(any_session, "mina", VAN, NOW) == NONE
    assert fail(any_session, "mina", 4) == NONE


def test_a_name_waits_for_itself_alone(any_session: AnySession) -> None:
    """Tom may sign in while Mina waits; case makes no other name."""
    fail(any_session, "mina", 6)
    assert delays.wait(any_session, "tom", VAN, NOW) == NONE
    assert delays.wait(any_session, " MINA", VAN, NOW) == timedelta(seconds=60)


@pytest.mark.usefixtures("people")
def test_a_name_that_does_not_exist_waits_like_any(session: AnySession) -> None:
    """The wait doesn't tell whether there is such a person."""
    assert fail(session, "nobody", 5) == fail(session, "mina", 5)
    assert delays.wait(session, "nobody", VAN, NOW) == delays.wait(session, "mina", VAN, NOW)


def test_what_was_typed_is_not_kept(session: AnySession) -> None:
    """Somebody who typed a password into the name box finds it nowhere in the table."""
    fail(session, "correct horse", 3)
    row = session.execute(text("SELECT * FROM sign_in_delay")).one()
    assert "horse" not in str(row)


def test_a_day_without_failures_is_forgotten(any_session: AnySession) -> None:
    """Counting begins again, and the table keeps no names from the day before."""
    fail(any_session, "mina", 8)
    fail(any_session, "tom", 8)
    assert fail(any_session, "mina", 1, NOW + timedelta(days=1, seconds=1)) == NONE
    assert any_session.scalar(select(func.count()).select_from(SignInDelay)) == 1


def test_a_success_forgives_one_address_alone(any_session: AnySession) -> None:
    """Mina in her van is no reason to let somebody elsewhere guess faster."""
    fail(any_session, "mina", 6, where=ELSEWHERE)
    fail(any_session, "mina", 6)
    delays.succeeded(any_session, "mina", VAN)
    assert delays.wait(any_session, "mina", VAN, NOW) == NONE
    assert delays.wait(any_session, "mina", ELSEWHERE, NOW) == timedelta(seconds=60)


def test_wrong_ones_from_elsewhere_never_delay_the_owner(any_session: AnySession) -> None:
    """A wrong try every quarter of an hour from another address keeps nobody out of the van."""
    for quarter in range(20):
        now = NOW + timedelta(minutes=15 * quarter)
        fail(any_session, "mina", 1, now, where=ELSEWHERE)
        assert delays.wait(any_session, "mina", VAN, now) == NONE
    assert delays.wait(any_session, "mina", ELSEWHERE, now) > NONE
