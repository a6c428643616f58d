"""Passwords: which are let in, how they are kept, how one is checked.

Cost: Argon2id, 19 MiB, two passes, one lane, the least OWASP's password storage cheat sheet asks.
Length and common words: OWASP ASVS 5, chapter 6. No other rule of composition, no forced change.
"""

import unicodedata

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from .faults import RecordsError

__all__ = [
    "LEAST_LENGTH",
    "MOST_LENGTH",
    "PasswordRefused",
    "PasswordTooCommon",
    "PasswordTooLong",
    "PasswordTooShort",
    "check_password",
    "hash_password",
    "needs_rehash",
    "password_matches",
]

LEAST_LENGTH = 8
MOST_LENGTH = 1000
"""Long enough for any sentence; a longer one would only keep the server busy."""

_HASHER = PasswordHasher(time_cost=2, memory_cost=19456, parallelism=1)

# A well-formed hash that no password has: checking against it takes as long as against a real one.
_NOBODYS_HASH = f"$argon2id$v=19$m=19456,t=2,p=1${'A' * 22}${'A' * 43}"

# From memory: what people choose first when eight characters are asked. Compared without case.
_COMMON_WORDS = """
    00000000 11111111 12341234 12344321 12345678 123456789 1234567890 123123123 87654321 98765432
    987654321 abcd1234 abc12345 abcdefgh administrator asdfasdf asdfghjk asdfghjkl baseball
    charlie1 chocolate computer football fibreglass iloveyou laminate letmein1 letmeinnow liverpool
    manchester michelle mypassword p@ssw0rd pa55word passw0rd password password! password1
    password12 password123 polyester princess qazwsxedc qwer1234 qwertyui qwertyuiop qwerty12
    qwerty123 roofroof roofing1 starwars summer2026 sunshine superman trustno1 welcome1 welcome123
    whatever zaq12wsx
"""
_COMMON = frozenset(_COMMON_WORDS.split())


class PasswordRefused(RecordsError):
    """A password that may not be used."""


class PasswordTooShort(PasswordRefused):
    """A password with fewer characters than are asked."""

    def __init__(self, length: int) -> None:
        super().__init__(length)
        self.length = length

    def __str__(self) -> str:
        return (
            f"The password has {self.length} characters. "
            f"Use {LEAST_LENGTH} or more; a few words in a row are fine."
        )


class PasswordTooLong(PasswordRefused):
    """A password longer than anybody needs."""

    def __init__(self, length: int) -> None:
        super().__init__(length)
        self.length = length

    def __str__(self) -> str:
        return f"The password has {self.length} characters. Use {MOST_LENGTH} or fewer."


class PasswordTooCommon(PasswordRefused):
    """A password that is among the first anybody would try."""

    def __str__(self) -> str:
        return "That password is one of the first people guess. Choose another."


def check_password(password: str, sign_in_name: str = "") -> None:
    """Return nothing for a password that may be used.

    Raises PasswordTooShort under 8 characters, PasswordTooLong over 1000, and PasswordTooCommon
    for one on the list or the same as the sign-in name.
    """
    plain = _plain(password)
    if len(plain) < LEAST_LENGTH:
        raise PasswordTooShort(len(plain))
    if len(plain) > MOST_LENGTH:
        raise PasswordTooLong(len(plain))
    if plain.casefold() in _COMMON or plain.casefold() == _plain(sign_in_name).casefold():
        raise PasswordTooCommon


def hash_password(password: str) -> str:
    """Return what is kept of a password: an Argon2id hash with its salt and cost in it."""
    return _HASHER.hash(_plain(password))


def password_matches(password: str, password_hash: str | None) -> bool:
    """Return whether the password is the one the hash was made from.

    None stands for somebody we don't know. The answer is no, after as much work as for anybody.
    """
    if len(password) > MOST_LENGTH:
        return False
    try:
        return _HASHER.verify(password_hash or _NOBODYS_HASH, _plain(password))
    except (VerificationError, InvalidHashError):
        # A damaged hash lets nobody in; the office can set a new password.
        return False


def needs_rehash(password_hash: str) -> bool:
    """Return whether a hash was made at another cost than today's."""
    return _HASHER.check_needs_rehash(password_hash)


def _plain(password: str) -> str:
    # Phones compose "é" in more than one way; all are the same password.
    return unicodedata.normalize("NFKC", password)
