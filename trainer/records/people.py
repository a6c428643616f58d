"""Who there is, and what each may be here."""

import secrets
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import CheckConstraint, ForeignKey, and_, func, insert, literal_column, select
from sqlalchemy.orm import Mapped, mapped_column

from .crews import Crew, CrewUnknown, named
from .database import AnySession, Model, UtcDateTime, dialect_of, insert_into, one_of, table_of
from .faults import RecordsError
from .passwords import check_password, hash_password

__all__ = [
    "ROLES",
    "Person",
    "PersonRole",
    "PersonRow",
    "RoleUnknown",
    "SignInNameTaken",
    "add_person",
    "by_ref",
    "crew_members",
    "crews_with",
    "folded",
    "without_crew",
]

ROLES = ("trainee", "supervisor", "office")


class Person(Model):
    """Somebody who signs in. `ref` is what the world may see of the key, and tells nothing."""

    __tablename__ = "person"

    id: Mapped[int] = mapped_column(primary_key=True)
    ref: Mapped[str] = mapped_column(unique=True)
    name: Mapped[str]
    sign_in_name: Mapped[str] = mapped_column(unique=True)
    password_hash: Mapped[str]
    crew_id: Mapped[int | None] = mapped_column(ForeignKey("crew.id"), index=True)
    created_at: Mapped[datetime] = mapped_column(UtcDateTime)
    left_at: Mapped[datetime | None] = mapped_column(UtcDateTime)


class PersonRole(Model):
    """One of the things a person may be here; somebody may be several."""

    __tablename__ = "person_role"
    __table_args__ = (CheckConstraint(one_of("role", ROLES), name="role"),)

    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    role: Mapped[str] = mapped_column(primary_key=True)


@dataclass(frozen=True, slots=True)
class PersonRow:
    """A person as the pages see them: everything but the password."""

    person_id: int
    ref: str
    name: str
    sign_in_name: str
    crew_id: int | None
    roles: frozenset[str]
    left_at: datetime | None


class SignInNameTaken(RecordsError):
    """A sign-in name that somebody has; carries the name, folded."""

    def __init__(self, sign_in_name: str) -> None:
        super().__init__(sign_in_name)
        self.sign_in_name = sign_in_name

    def __str__(self) -> str:
        return f"Somebody signs in as {self.sign_in_name} already. Choose another name."


class RoleUnknown(RecordsError):
    """No role at all, or one that isn't ours; carries what was asked for."""

    def __init__(self, roles: Iterable[str]) -> None:
        self.roles = tuple(sorted(roles))
        super().__init__(self.roles)

    def __str__(self) -> str:
        asked = ", ".join(self.roles) or "nothing"
        return f"The role asked for is {asked}. Choose one or more of {', '.join(ROLES)}."


# A space as a piece of SQL: `Statement` makes its text once, and a value would come later.
_SPACE: Any = literal_column("' '")
# Looked up by key for each person, so that a role is written in one place and can't drift.
ROLES_IN_A_WORD = (
    select(func.aggregate_strings(PersonRole.role, _SPACE))
    .where(PersonRole.person_id == Person.id)
    .scalar_subquery()
)
"""The roles of the person of the query around it, as one text for `role_set`."""

_PEOPLE = select(
    Person.id,
    Person.ref,
    Person.name,
    Person.sign_in_name,
    Person.crew_id,
    ROLES_IN_A_WORD.label("roles"),
    Person.left_at,
)
_HERE = _PEOPLE.where(Person.left_at.is_(None)).order_by(Person.name, Person.id)


def role_set(roles: str | None) -> frozenset[str]:
    """Return the set of roles from the text that `ROLES_IN_A_WORD` selects."""
    return frozenset((roles or "").split())


def folded(name: str) -> str:
    """Return a sign-in name as it is kept and compared: no case, no stray spaces."""
    # No form can type a NUL, and PostgreSQL keeps none.
    return " ".join(unicodedata.normalize("NFKC", name.replace("\0", "")).casefold().split())


def add_person(
    session: AnySession,
    *,
    name: str,
    sign_in_name: str,
    password: str,
    roles: Iterable[str],
    now: datetime,
    crew_id: int | None = None,
) -> PersonRow:
    """Return a new person with these roles, in that crew or none.

    Raises NameMissing, RoleUnknown, CrewUnknown, SignInNameTaken, or PasswordRefused with its
    reason. Nothing is written then.
    """
    name, sign_in_name, held = named(name), folded(named(sign_in_name)), frozenset(roles)
    if not held or not held <= frozenset(ROLES):
        raise RoleUnknown(held)
    if crew_id is not None and session.get(Crew, crew_id) is None:
        raise CrewUnknown(crew_id)
    check_password(password, sign_in_name)
    facts = {"name": name, "sign_in_name": sign_in_name, "crew_id": crew_id, "created_at": now}
    ref = secrets.token_hex(8)
    person_id = _insert(session, {**facts, "ref": ref, "password_hash": hash_password(password)})
    session.execute(
        insert(table_of(PersonRole)), [{"person_id": person_id, "role": r} for r in sorted(held)]
    )
    return PersonRow(person_id, ref, name, sign_in_name, crew_id, held, None)


def by_ref(session: AnySession, ref: str) -> PersonRow | None:
    """Return the person of that public reference, whether here or gone, or None."""
    if not ref.isprintable():
        return None
    row = session.execute(_PEOPLE.where(Person.ref == ref)).first()
    return None if row is None else _person(row)


def crew_members(
    session: AnySession, crew_id: int | None, role: str | None = None
) -> list[PersonRow]:
    """Return those of a crew who haven't left, by name; of all crews and none for None.

    With a role, only those who have it.
    """
    query = _HERE if crew_id is None else _HERE.where(Person.crew_id == crew_id)
    people = [_person(row) for row in session.execute(query)]
    return [person for person in people if role is None or role in person.roles]


def without_crew(session: AnySession, role: str) -> list[PersonRow]:
    """Return those of a role who are in no crew and haven't left, by name."""
    rows = session.execute(_HERE.where(Person.crew_id.is_(None)))
    return [person for person in map(_person, rows) if role in person.roles]


def crews_with(session: AnySession, role: str) -> set[int | None]:
    """Return the crews that somebody of a role is in who hasn't left; None for those in none."""
    held = and_(PersonRole.person_id == Person.id, PersonRole.role == role)
    query = select(Person.crew_id).join(PersonRole, held).where(Person.left_at.is_(None))
    return set(session.scalars(query.distinct()))


def _insert(session: AnySession, values: dict[str, Any]) -> int:
    # The database decides whether the name is free: two offices may add it at the same moment.
    table = table_of(Person)
    statement = insert_into(table, dialect_of(session)).values(values)
    statement = statement.on_conflict_do_nothing(index_elements=["sign_in_name"])
    person_id = session.scalar(statement.returning(table.c.id))
    if person_id is None:
        raise SignInNameTaken(values["sign_in_name"])
    return int(person_id)


def _person(row: Sequence[Any]) -> PersonRow:
    person_id, ref, name, sign_in_name, crew_id, roles, left_at = row
    return PersonRow(person_id, ref, name, sign_in_name, crew_id, role_set(roles), left_at)
