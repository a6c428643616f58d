"""Passwords: what is let in, what is kept, what a check tells."""

import pytest
from argon2 import PasswordHasher, extract_parameters
from argon2.exceptions import VerifyMismatchError
from records_cast import PASSWORD

from trainer.records import passwords
from trainer.records.passwords import (
    PasswordTooCommon,
    PasswordTooLong,
    PasswordTooShort,
    check_password,
    hash_password,
    needs_rehash,
    password_matches,
)


@pytest.mark.parametrize("password", ["eight888", "wet out twice", "é" * 64, "x" * 1000])
def test_a_long_enough_password_is_let_in(password: str) -> None:
    """Eight characters are enough, a thousand are not too many, of any alphabet."""
    check_password(password, "mina")


def test_seven_characters_are_too_few() -> None:
    """The refusal tells how many there are and how many are asked."""
    with pytest.raises(PasswordTooShort, match="has 7 characters"):
        check_password("seven77")


def test_a_book_is_too_long() -> None:
    """The refusal of a very long one tells the most."""
    with pytest.raises(PasswordTooLong, match="has 1001 characters"):
        check_password("x" * 1001)


@pytest.mark.parametrize("password", ["password", "PassWord1", "12345678", "Mina Brown"])
def test_a_password_that_is_guessed_first_is_refused(password: str) -> None:
    """Common ones, whatever their case, and one's own sign-in name, are refused."""
    with pytest.raises(PasswordTooCommon, match="one of the first people guess"):
        check_password(password, "mina brown")


def test_the_right_password_matches_and_another_does_not(password_hash: str) -> None:
    """One letter makes the difference, and so does case."""
    assert password_matches(PASSWORD, password_hash)
    assert not password_matches(PASSWORD + "s", password_hash)
    assert not password_matches(PASSWORD.upper(), password_hash)


def test_a_letter_composed_otherwise_is_the_same_password() -> None:
    """An "é" as one sign or as two, as phones differ, is one password."""
    assert password_matches("re\u0301sine verte", hash_password("r\u00e9sine verte"))


def test_the_end_of_a_long_password_counts() -> None:
    """Nothing is cut off at 64 or 72 characters."""
    kept = hash_password("x" * 80 + "a")
    assert password_matches("x" * 80 + "a", kept)
    assert not password_matches("x" * 80 + "b", kept)


def test_the_same_password_is_kept_differently_each_time(password_hash: str) -> None:
    """Two people with one password can't be told from the table."""
    assert hash_password(PASSWORD) != password_hash


def test_a_hash_costs_what_is_asked(password_hash: str) -> None:
    """Argon2id, 19 MiB, two passes, one lane."""
    cost = extract_parameters(password_hash)
    assert (cost.type.name, cost.memory_cost, cost.time_cost, cost.parallelism) == (
        "ID",
        19456,
        2,
        1,
    )


def test_only_a_hash_of_another_cost_is_made_anew(password_hash: str) -> None:
    """A cheaper hash from before is out of date, today's isn't."""
    assert not needs_rehash(password_hash)
    assert needs_rehash(PasswordHasher(time_cost=1, memory_cost=8, parallelism=1).hash(PASSWORD))


def test_nobody_has_the_password_of_somebody_unknown() -> None:
    """Without a hash, and with a damaged one, the answer is no."""
    assert not password_matches(PASSWORD, None)
    assert not password_matches("", None)
    assert not password_matches(PASSWORD, "damaged")


def test_the_check_of_somebody_unknown_is_a_whole_one() -> None:
    """The hash that stands in has today's cost, and is well-formed: the work is done, then no."""
    assert not needs_rehash(passwords._NOBODYS_HASH)
    with pytest.raises(VerifyMismatchError):
        passwords._HASHER.verify(passwords._NOBODYS_HASH, PASSWORD)
