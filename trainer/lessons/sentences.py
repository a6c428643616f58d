"""Sentences: what is read on a page, one by one, and which of them are too long."""

import re
from collections.abc import Iterable, Iterator
from html.parser import HTMLParser

LONGEST_SENTENCE = 25
LONGEST_MEAN = 14

_ENDED = re.compile(r"(?<=[.!?…])(?=\s)|(?<=[.!?…][”’\")])(?=\s)")
_FOOTNOTES = '<div class="footnote">'
_READ = ("p", "li", "dd")


def sentences_in(text: str) -> list[str]:
    """Return the sentences of a paragraph.

    A decimal point ends none; what begins with a small letter goes on the one before it.
    """
    found: list[str] = []
    for piece in filter(None, map(str.strip, _ENDED.split(text))):
        if found and piece[0].islower():
            found[-1] += f" {piece}"
        else:
            found.append(piece)
    return found


def words_of(sentence: str) -> int:
    """Return how many words a sentence has; a placeholder, of figure and unit, is one."""
    return len(sentence.split())


def too_long(texts: Iterable[str]) -> Iterator[str]:
    """Yield the sentences in some texts that have too many words."""
    for text in texts:
        yield from (each for each in sentences_in(text) if words_of(each) > LONGEST_SENTENCE)


def sentences_on(page: str, *, captions: bool = True) -> list[str]:
    """Return the sentences of a lesson's page: paragraphs, lists and captions, no footnotes."""
    reader = _Reader((*_READ, "figcaption") if captions else _READ)
    reader.feed(page.partition(_FOOTNOTES)[0])
    return [sentence for text in reader.texts for sentence in sentences_in(text)]


class _Reader(HTMLParser):
    """Collects what is read on, and no drawing."""

    _SKIPPED = ("svg", "sup")

    def __init__(self, read: tuple[str, ...]) -> None:
        super().__init__()
        self.texts: list[str] = []
        self._read = read
        self._skipping = 0
        self._reading = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Begin a paragraph, or something to be left out."""
        self._skipping += tag in self._SKIPPED
        if tag in self._read:
            self._reading = dict(attrs).get("class") != "admonition-title"
            self.texts.append("")

    def handle_endtag(self, tag: str) -> None:
        """End it."""
        self._skipping -= tag in self._SKIPPED
        if tag in self._read:
            self._reading = False

    def handle_data(self, data: str) -> None:
        """Keep what is read."""
        if self._reading and not self._skipping:
            self.texts[-1] += data
