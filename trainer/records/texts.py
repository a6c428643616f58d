"""Every text that was ever served to somebody, kept once, by its digest.

An attempt names the digest of what was asked, so that it can be read years later as it was asked.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import CheckConstraint, select
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Model, UtcDateTime, dialect_of, insert_into, one_of, table_of

__all__ = ["KINDS", "SourceText", "Text", "keep", "text_of"]

KINDS = ("lesson", "roof")
_SHA_256 = re.compile(r"[0-9a-f]{64}")


class SourceText(Model):
    """A lesson's or a roof's text as it stood, under the SHA-256 of its UTF-8 bytes."""

    __tablename__ = "source_text"
    __table_args__ = (CheckConstraint(one_of("kind", KINDS), name="kind"),)

    digest: Mapped[str] = mapped_column(primary_key=True)
    kind: Mapped[str]
    name: Mapped[str]
    text: Mapped[str]
    first_kept_at: Mapped[datetime] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class Text:
    """A text to be kept: its kind ("lesson" or "roof"), the name it goes by, and its digest.

    The digest is whatever the answers to it carry; it must be 64 hexadecimal digits.
    """

    kind: str
    name: str
    text: str
    digest: str

    def __post_init__(self) -> None:
        if not _SHA_256.fullmatch(self.digest):
            raise ValueError(f"'{self.digest}' is no SHA-256 in hexadecimal.")


def keep(session: AnySession, texts: Iterable[Text], now: datetime) -> int:
    """Return how many of the texts were new. Keeping the same ones again writes nothing.

    A text that goes by two names is kept once, under the first.
    """
    wanted: dict[str, Text] = {}
    for text in texts:
        wanted.setdefault(text.digest, text)
    new = wanted.keys() - _kept(session, wanted.keys())
    if not new:
        return 0
    rows = [_row(digest, wanted[digest], now) for digest in sorted(new)]
    # Another worker may be starting at the same moment with the same texts.
    statement = insert_into(table_of(SourceText), dialect_of(session)).on_conflict_do_nothing()
    session.execute(statement, rows)
    return len(new)


def text_of(session: AnySession, digest: str) -> str | None:
    """Return the text of that digest, or None when it was never kept."""
    return session.scalar(select(SourceText.text).where(SourceText.digest == digest))


def _kept(session: AnySession, digests: Iterable[str]) -> set[str]:
    query = select(SourceText.digest).where(SourceText.digest.in_(list(digests)))
    return set(session.scalars(query))


def _row(digest: str, text: Text, now: datetime) -> dict[str, object]:
    return {
        "digest": digest,
        "kind": text.kind,
        "name": text.name,
        "text": text.text,
        "first_kept_at": now,
    }
