"""A list as people type it, in which 2.4:3 stands for three of 2.4."""

import re
from collections.abc import Iterator

from trainer.engine.errors import NotAFigure

#: A longer name than this is none of ours; no more of it is repeated.
_LONGEST = 40
_COUNT = re.compile(r"[1-9]\d{0,2}").fullmatch


def repeats_in(text: str) -> Iterator[tuple[str, int]]:
    """Yield each size of a list as it was typed, and how many there are of it.

    Raises NotAFigure for a count that is no whole number from 1 to 999.
    """
    for item in text.split(","):
        size, colon, count = item.partition(":")
        if colon and not _COUNT(count.strip()):
            words = f"count after '{shortened(size)}:'"
            raise NotAFigure(words, shortened(count), "a whole number from 1 on")
        yield size, int(count) if colon else 1


def shortened(text: str) -> str:
    """Return a text as it may be repeated: no more than a name's length, no hidden signs."""
    beginning = "".join(sign if sign.isprintable() else "?" for sign in text[:_LONGEST])
    return beginning if len(text) <= _LONGEST else f"{beginning}…"
