"""An author's mistake: the file, the line, the text, and a guess at what was meant."""

import difflib
from collections.abc import Iterable
from dataclasses import dataclass

from trainer.engine.measures import unit_spelled


# Not frozen, since Python itself writes to an error that is on its way.
@dataclass(eq=False)
class AuthorError(Exception):
    """One mistake in the content."""

    file: str
    line: int
    sentence: str
    #: The text that is wrong, as it stands in the file.
    text: str = ""
    #: How it is mended, as far as can be guessed.
    mend: str = ""

    def __str__(self) -> str:
        text = f"\n    {self.text.strip()}" if self.text.strip() else ""
        mend = f"\n    {self.mend}" if self.mend else ""
        return f"{self.file}:{self.line}: {self.sentence}{text}{mend}"


def in_order(mistakes: Iterable[AuthorError]) -> list[AuthorError]:
    """Return mistakes by file and line, as somebody meets them who mends them from the top."""
    return sorted(mistakes, key=lambda each: (each.file, each.line))


class ContentError(Exception):
    """All the mistakes that were found in one reading of the content."""

    def __init__(self, mistakes: Iterable[AuthorError]) -> None:
        self.mistakes = tuple(in_order(mistakes))
        super().__init__("\n".join(str(mistake) for mistake in self.mistakes))


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """Return "Did you mean 'x'?" for the nearest known name, or what there is to choose from."""
    known = sorted(known)
    near = difflib.get_close_matches(name, known, n=1)
    if near:
        return f"Did you mean '{near[0]}'?"
    return f"Known here: {', '.join(known)}." if known else ""


def did_you_mean_unit(text: str, known: Iterable[str]) -> str:
    """Return the guess at a unit: the one that people write so ("litres"), else the nearest."""
    known, meant = [symbol for symbol in known if symbol], unit_spelled(text)
    if meant and meant.symbol in known:
        return f"Did you mean '{meant.symbol}'?"
    return did_you_mean(text, known)
