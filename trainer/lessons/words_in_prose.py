"""Words of the trade in a lesson's prose: the first in each section opens its sentence on a tap.

The sentences stand once each at the foot of the page; a browser that knows no popovers shows
them there, and so does paper.
"""

import re
from collections.abc import Iterator
from xml.etree.ElementTree import Element

from trainer.lessons.glossary import Glossary, Word

#: An author's own mark round a word that must be explained: [[binder]].
MARK = re.compile(r"\[\[(?P<word>[^\[\]\n]+)\]\]")
_OPEN, _CLOSE = "\ue000", "\ue001"
_MARKED = re.compile(f"{_OPEN}([^{_OPEN}{_CLOSE}]*){_CLOSE}")
_SECTION = "h2"
#: A word here stands in a heading, in another link, or in something that is no prose.
_SHUT = {*("h1", "h2", "h3", "h4", "h5", "h6", "a", "button", "code", "pre"), "figure", "th"}
_SHUT_CLASSES = {"admonition-title", "footnote"}


def marked(line: str) -> str:
    """Return a line with a sign that Markdown leaves alone for each [[ and ]]."""
    return MARK.sub(rf"{_OPEN}\g<word>{_CLOSE}", line) if "[[" in line else line


def unmarked(text: str) -> str:
    """Return a text without those signs."""
    return text.replace(_OPEN, "").replace(_CLOSE, "")


class Opener:
    """Makes a button of the first of each word in each section of one page."""

    def __init__(self, glossary: Glossary) -> None:
        self._glossary = glossary
        self._in_section: set[Word] = set()
        self._found: set[Word] = set()

    @property
    def opened(self) -> list[Word]:
        """The words that can be opened, in the order of the glossary."""
        return [word for word in self._glossary.words if word in self._found]

    def open_in(self, element: Element) -> None:
        """Open the words in an element, and in what stands in it."""
        if element.tag == _SECTION:
            self._in_section.clear()
        if _is_shut(element):
            return
        children = list(element)
        element.text = self._put(element, 0, element.text or "")
        for child in children:
            self.open_in(child)
            if child.tail and not child.tail.isspace():
                after = list(element).index(child) + 1
                child.tail = self._put(element, after, child.tail)

    def _put(self, element: Element, place: int, text: str) -> str:
        """Insert a button at a place for each word in a text; return what comes before the first.

        What comes after a button is its tail.
        """
        before, last, done = text, None, 0
        for start, end, word in sorted(self._to_open(text), key=_beginning):
            self._found.add(word)
            begins, ends = _with_signs(text, start, end, done)
            parts = (text[begins:start], text[start:end], text[end:ends])
            held = _held(word, *map(unmarked, parts))
            if last is None:
                before = text[:begins]
            else:
                last.tail = text[done:begins]
            held.tail = text[ends:]
            element.insert(place, held)
            place, last, done = place + 1, held, ends
        return before

    def _to_open(self, text: str) -> Iterator[tuple[int, int, Word]]:
        """Yield where a word is opened: where an author marked it, else the first in a section."""
        marks = list(_MARKED.finditer(text)) if _OPEN in text else []
        for mark in marks:
            word = self._glossary.named(mark[1])
            if word:
                self._in_section.add(word)
                yield mark.start(), mark.end(), word
        for start, end, word in self._glossary.found_in(text):
            inside = any(mark.start() < start < mark.end() for mark in marks)
            if word not in self._in_section and not inside:
                self._in_section.add(word)
                yield start, end, word


def _is_shut(element: Element) -> bool:
    return element.tag in _SHUT or not _SHUT_CLASSES.isdisjoint(element.get("class", "").split())


def _beginning(opened: tuple[int, int, Word]) -> int:
    return opened[0]


def _with_signs(text: str, start: int, end: int, done: int) -> tuple[int, int]:
    """Return where a word begins and ends with the signs that stand hard by it."""
    while start > done and _is_sign(text[start - 1]):
        start -= 1
    while end < len(text) and _is_sign(text[end]):
        end += 1
    return start, end


def _is_sign(letter: str) -> bool:
    # What Markdown has put by is held between letters that can't be printed.
    return letter.isprintable() and not (letter.isspace() or letter.isalnum())


def _held(word: Word, before: str, text: str, after: str) -> Element:
    """Return a word's button, in one piece with its signs.

    A line may break on either side of a button, and would begin with a full stop.
    """
    target = f"word-{word.slug}"
    button = Element("button", {"type": "button", "class": "word", "popovertarget": target})
    button.set("aria-describedby", target)
    button.text = text
    if not before and not after:
        return button
    held = Element("span", {"class": "held"})
    held.text, button.tail = before, after
    held.append(button)
    return held
