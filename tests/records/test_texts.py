"""The texts that were served, each kept once."""

import hashlib
from datetime import timedelta

import pytest
from records_cast import NOW, kept_text
from sqlalchemy import func, select

from trainer.records.database import AnySession, writing
from trainer.records.texts import SourceText, Text, keep, text_of

MIXING = kept_text("lesson", "mixing", "Stir the drum. 2 × 450 g/m²\n")
TAPING = kept_text("lesson", "taping", "Sweep first.\n")
SHED = kept_text("roof", "shed", "length_m = 3\n")


def test_a_text_is_found_by_its_digest(any_session: AnySession) -> None:
    """The digest is the SHA-256 of the UTF-8 bytes, and gives back each letter."""
    writing(any_session)
    keep(any_session, [MIXING], NOW)
    digest = hashlib.sha256("Stir the drum. 2 × 450 g/m²\n".encode()).hexdigest()
    assert text_of(any_session, digest) == MIXING.text


def test_many_are_kept_at_once_and_only_once(any_session: AnySession) -> None:
    """What is new is counted; keeping the same again adds none."""
    writing(any_session)
    assert keep(any_session, [MIXING, SHED], NOW) == 2
    assert keep(any_session, [MIXING, TAPING, SHED], NOW) == 1
    assert keep(any_session, [MIXING, TAPING, SHED], NOW) == 0
    assert any_session.scalar(select(func.count()).select_from(SourceText)) == 3


def test_texts_that_are_there_cost_one_look(session: AnySession, statements: list[str]) -> None:
    """A start with nothing new writes nothing."""
    writing(session)
    keep(session, [MIXING, TAPING], NOW)
    statements.clear()
    keep(session, [MIXING, TAPING], NOW)
    assert len(statements) == 1
    assert statements[0].startswith("SELECT")


def test_the_first_time_stands(any_session: AnySession) -> None:
    """A text that comes back was first kept when it was first kept, under its first name."""
    writing(any_session)
    keep(any_session, [MIXING, kept_text("roof", "again", MIXING.text)], NOW)
    keep(any_session, [kept_text("lesson", "renamed", MIXING.text)], NOW + timedelta(days=9))
    kept = any_session.scalars(select(SourceText)).one()
    assert (kept.kind, kept.name, kept.first_kept_at) == ("lesson", "mixing", NOW)


def test_a_changed_text_is_another(any_session: AnySession) -> None:
    """Both versions of a lesson stay readable."""
    changed = kept_text("lesson", "mixing", MIXING.text + "Slowly.\n")
    writing(any_session)
    keep(any_session, [MIXING], NOW)
    keep(any_session, [changed], NOW)
    assert text_of(any_session, MIXING.digest) == MIXING.text
    assert text_of(any_session, changed.digest) == changed.text


@pytest.mark.parametrize("digest", ["", "ab12", "g" * 64, "A" * 64, "0" * 65, "0" * 64 + "\n"])
def test_a_digest_that_is_none_is_refused(digest: str) -> None:
    """Answers point to a text by its digest: 64 hexadecimal digits, in small letters."""
    with pytest.raises(ValueError, match="is no SHA-256 in hexadecimal"):
        Text("lesson", "mixing", "Stir.\n", digest)


@pytest.mark.parametrize("texts", [[], [MIXING]])
def test_an_unknown_digest_is_none(session: AnySession, texts: list[Text]) -> None:
    """A text that was never served is not made up."""
    keep(session, texts, NOW)
    assert text_of(session, TAPING.digest) is None
