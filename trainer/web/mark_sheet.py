"""A stored answer as a page tells it.

All of it is drawn from what was stored with the answer, so that it reads years later as it was
given, whatever the sums or the lessons say by then.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from trainer.engine import ENGINE_VERSION
from trainer.records.attempts import StoredAttempt

ENGINE_DIFFERS = (
    "The sums have been revised since this was answered. It stands as it was marked then."
)
STARTED_AFRESH = (
    "Your first figure can't be worked on, so the lines below it were marked by the right one."
)
SENT_LATER = "This was sent later, and counts for the day that you pressed the button."


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkSheet:
    """What the page of a mark says, whatever kind of question it was."""

    #: "right", "wrong", or "slip" where a second try is to come.
    banner: str
    words: str
    cue: str = ""
    text: str
    notes: tuple[str, ...]
    finished: bool
    #: The first wrong line's key, or nothing.
    wrong_line: str = ""
    #: Whether every line but the first wrong one was right.
    rest_right: bool = True


def notes_of(stored: StoredAttempt) -> Iterator[str]:
    """Yield what has to be said about how and when an answer was given."""
    if stored.engine_version != ENGINE_VERSION:
        yield ENGINE_DIFFERS
    if stored.started_afresh:
        yield STARTED_AFRESH
    if stored.sent_later:
        yield SENT_LATER
