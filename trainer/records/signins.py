"""Who is signed in, on which phone, until when.

The browser holds a random token; only its SHA-256 is kept, so a copy of the table opens nothing.
A plain hash will do for 256 random bits. Reading who is signed in writes nothing.
"""

import hashlib
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, cast

from sqlalchemy import CursorResult, ForeignKey, bindparam, insert, select, update
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, UtcDateTime, table_of
from .passwords import hash_password, needs_rehash, password_matches
from .people import ROLES_IN_A_WORD, Person, folded, role_set
from .statements import Statement

__all__ = [
    "OWN_PHONE",
    "SignIn",
    "SignInRow",
    "SignedIn",
    "end",
    "end_all",
    "find",
    "recognise",
    "renew_hash",
    "seen",
    "standing",
    "start",
]

OWN_PHONE = timedelta(days=30)
"""How long somebody stays signed in on a phone of their own."""

TOKEN_BYTES = 32


class SignIn(Model):
    """One phone or desk that somebody signed in on."""

    __tablename__ = "sign_in"

    id: Mapped[int] = mapped_column(primary_key=True)
    token_digest: Mapped[str] = mapped_column(unique=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), index=True)
    created_at: Mapped[datetime] = mapped_column(UtcDateTime)
    last_seen_at: Mapped[datetime] = mapped_column(UtcDateTime)
    expires_at: Mapped[datetime] = mapped_column(UtcDateTime)
    ended_at: Mapped[datetime | None] = mapped_column(UtcDateTime)
    from_where: Mapped[str]


@dataclass(frozen=True, slots=True)
class SignedIn:
    """The person behind a request."""

    person_id: int
    ref: str
    name: str
    crew_id: int | None
    roles: frozenset[str]
    sign_in_id: int


@dataclass(frozen=True, slots=True)
class SignInRow:
    """A sign-in as its owner or the office sees it in a list."""

    sign_in_id: int
    created_at: datetime
    last_seen_at: datetime
    expires_at: datetime
    from_where: str


# One round trip, as every page asks it: the sign-in, the person, and their roles as one text.
_FIND = Statement(
    lambda _dialect: (
        select(
            Person.id,
            Person.ref,
            Person.name,
            Person.crew_id,
            ROLES_IN_A_WORD.label("roles"),
            SignIn.id.label("sign_in_id"),
        )
        .join(Person, Person.id == SignIn.person_id)
        .where(
            SignIn.token_digest == bindparam("digest"),
            SignIn.ended_at.is_(None),
            SignIn.expires_at > bindparam("now", type_=UtcDateTime),
            Person.left_at.is_(None),
        )
    )
)


def recognise(session: AnySession, sign_in_name: str, password: str) -> int | None:
    """Return the person_id of whoever has that sign-in name and password, or None.

    None for a wrong password, an unknown name and somebody who has left, each after the same
    work, so that the time taken doesn't tell which. Reads only: call it before `writing`, since
    the check takes tens of milliseconds.
    """
    query = select(Person.id, Person.password_hash).where(
        Person.sign_in_name == folded(sign_in_name), Person.left_at.is_(None)
    )
    row = session.execute(query).first()
    matches = password_matches(password, None if row is None else row.password_hash)
    return int(row.id) if row is not None and matches else None


def renew_hash(session: AnySession, person_id: int, password: str) -> bool:
    """Return whether the person's hash was made anew, because the cost has changed since.

    Call it with a password that `recognise` has just let in.
    """
    kept = session.scalar(select(Person.password_hash).where(Person.id == person_id))
    if kept is None or not needs_rehash(kept):
        return False
    renewed = hash_password(password)
    session.execute(
        update(table_of(Person)).where(Person.id == person_id).values(password_hash=renewed)
    )
    return True


def start(
    session: AnySession,
    person_id: int,
    now: datetime,
    from_where: str = "",
    lasts: timedelta = OWN_PHONE,
) -> str:
    """Return the token of a new sign-in, for the browser to keep. It can't be read back later.

    `from_where` is what the list shows of the phone or desk: its kind, its address.
    """
    token = secrets.token_urlsafe(TOKEN_BYTES)
    session.execute(
        insert(table_of(SignIn)).values(
            token_digest=_digest(token),
            person_id=person_id,
            created_at=now,
            last_seen_at=now,
            expires_at=now + lasts,
            from_where=from_where,
        )
    )
    return token


def find(session: AnySession, token: str, now: datetime) -> SignedIn | None:
    """Return who holds the token; None when it is unknown, ended, too old, or its owner left."""
    row = _FIND.first(session.connection(), {"digest": _digest(token), "now": now})
    if row is None:
        return None
    person_id, ref, name, crew_id, roles, sign_in_id = row
    return SignedIn(person_id, ref, name, crew_id, role_set(roles), sign_in_id)


def seen(session: AnySession, sign_in_id: int, now: datetime) -> None:
    """Note that the sign-in was used. For requests that write anyway."""
    _SEEN.run(session.connection(), [{"sign_in": sign_in_id, "now": now}])


_SEEN = Statement(
    lambda _dialect: (
        update(table_of(SignIn))
        .where(table_of(SignIn).c.id == bindparam("sign_in"))
        .values(last_seen_at=bindparam("now", type_=UtcDateTime))
    )
)


def end(session: AnySession, sign_in_id: int, now: datetime) -> None:
    """End one sign-in. Ending it again changes nothing."""
    session.execute(
        update(table_of(SignIn))
        .where(SignIn.id == sign_in_id, SignIn.ended_at.is_(None))
        .values(ended_at=now)
    )


def end_all(session: AnySession, person_id: int, now: datetime) -> int:
    """Return how many sign-ins of the person were ended: all that stood."""
    result = session.execute(
        update(table_of(SignIn))
        .where(SignIn.person_id == person_id, SignIn.ended_at.is_(None), SignIn.expires_at > now)
        .values(ended_at=now)
    )
    return cast("CursorResult[Any]", result).rowcount


def standing(session: AnySession, person_id: int, now: datetime) -> list[SignInRow]:
    """Return the person's sign-ins that still open pages, latest used first."""
    rows = session.execute(
        select(
            SignIn.id,
            SignIn.created_at,
            SignIn.last_seen_at,
            SignIn.expires_at,
            SignIn.from_where,
        )
        .where(SignIn.person_id == person_id, SignIn.ended_at.is_(None), SignIn.expires_at > now)
        .order_by(SignIn.last_seen_at.desc(), SignIn.id.desc())
    )
    return [SignInRow(*row) for row in rows]


def _digest(token: str) -> str:
    return hashlib.sha256(token.encode()).hexdigest()
