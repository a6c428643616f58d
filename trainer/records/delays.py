"""A growing wait after wrong passwords, for each name and the address it was tried from.

It counts for names that don't exist too, so that a wait tells nothing. It delays and never locks,
and only where the wrong ones came from: otherwise anybody could keep somebody else out. Names are
kept as hashes, since people sometimes type their password into the wrong box.
"""

import hashlib
from datetime import datetime, timedelta

from sqlalchemy import delete, select, update
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, UtcDateTime, dialect_of, insert_into, table_of
from .people import folded

__all__ = ["SignInDelay", "failed", "succeeded", "wait"]

FREE_FAILURES = 5
"""The failure that brings the first wait. Fewer are typing mistakes."""

FIRST_WAIT = timedelta(seconds=30)
LONGEST_WAIT = timedelta(minutes=15)

FORGOTTEN_AFTER = timedelta(days=1)
"""After this long without another failure, counting begins again."""


class SignInDelay(Model):
    """Failures in a row for a sign-in name from one address, and when it may be tried again."""

    __tablename__ = "sign_in_delay"

    name_digest: Mapped[str] = mapped_column(primary_key=True)
    failures: Mapped[int]
    last_failed_at: Mapped[datetime] = mapped_column(UtcDateTime, index=True)
    free_at: Mapped[datetime] = mapped_column(UtcDateTime)


def wait(session: AnySession, sign_in_name: str, where: str, now: datetime) -> timedelta:
    """Return how long this name must still wait at this address; zero when it may try now.

    Ask before the password is checked, and don't check it while there is a wait.
    """
    free_at = session.scalar(
        select(SignInDelay.free_at).where(SignInDelay.name_digest == _digest(sign_in_name, where))
    )
    if free_at is None:
        return timedelta(0)
    return max(timedelta(0), free_at - now)


def failed(session: AnySession, sign_in_name: str, where: str, now: datetime) -> timedelta:
    """Return the wait after one more failure: none for four, then 30 s, 1, 2, 4, 8, 15 minutes."""
    table = table_of(SignInDelay)
    session.execute(delete(table).where(table.c.last_failed_at < now - FORGOTTEN_AFTER))
    digest = _digest(sign_in_name, where)
    first = {"name_digest": digest, "failures": 1, "last_failed_at": now, "free_at": now}
    counted = (
        insert_into(table, dialect_of(session))
        .values(first)
        .on_conflict_do_update(
            index_elements=["name_digest"],
            set_={"failures": table.c.failures + 1, "last_failed_at": now},
        )
        .returning(table.c.failures)
    )
    pause = _pause(session.scalars(counted).one())
    free = update(table).where(table.c.name_digest == digest).values(free_at=now + pause)
    session.execute(free)
    return pause


def succeeded(session: AnySession, sign_in_name: str, where: str) -> None:
    """Forget the failures of a name that has signed in from there."""
    table = table_of(SignInDelay)
    session.execute(delete(table).where(table.c.name_digest == _digest(sign_in_name, where)))


def _pause(failures: int) -> timedelta:
    doublings = failures - FREE_FAILURES
    if doublings < 0:
        return timedelta(0)
    # Capped before it is raised: a thousand failures must not make a thousand-bit number.
    return min(LONGEST_WAIT, FIRST_WAIT * (1 << min(doublings, 10)))


def _digest(sign_in_name: str, where: str) -> str:
    return hashlib.sha256(f"sign-in name:{folded(sign_in_name)}\n{where}".encode()).hexdigest()
