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
_UNMARKED = dict.fromkeys(map(ord, (_OPEN, _CLOSE)))
_SECTION = "h2"
#: A word here stands in a heading, in another link, or in something that is no prose.
_SHUT = {*("h1", "h2", "h3", "h4", "h5", "h6", "a", "button", "code", "pre"), "figure", "th"}
_SHUT_CLASSES = {"admonition-title", "footnote"}


def marked(line: str) -> str:
    """Return a line with a sign that Markdown leaves alone for each [[ and ]]."""
    return MARK.sub(rf"{_OPEN}\g<word>{_CLOSE}", line) if "[[" in line else line


def unmarked(text: str) -> str:
    """Return a text without those signs."""
    return text.translate(_UNMARKED) if _OPEN in text else text


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
        for child in children:
            element.remove(child)
        element.text = self._put(element, element.text or "")
        for child in children:
            tail, child.tail = child.tail or "", ""
            element.append(child)
            self.open_in(child)
            child.tail = self._put(element, tail)

    def _put(self, element: Element, text: str) -> str:
        """Append a button for each word in a text; return what comes before the first.

        What comes after a button is its tail.
        """
        last: Element | None = None
        before, done = "", 0
        for start, end, word in self._to_open(text):
            button = _button(word, unmarked(text[start:end]))
            piece, done = text[done:start], end
            if last is None:
                before = piece
            else:
                last.tail = piece
            element.append(button)
            last = button
        if last is None:
            return text
        last.tail = text[done:]
        return before

    def _to_open(self, text: str) -> Iterator[tuple[int, int, Word]]:
        """Yield where a word is opened: the first in a section, and where an author marked it."""
        own = {match.start(): match for match in _MARKED.finditer(text)} if _OPEN in text else {}
        marks = [(m.start(), m.end(), self._glossary.named(m[1])) for m in own.values()]
        found = list(self._glossary.found_in(text))
        for start, end, word in sorted([*marks, *found], key=lambda each: each[:2]):
            by_author = start in own
            inside = any(s < start < e for s, e, _ in marks)
            if word is None or inside or (not by_author and word in self._in_section):
                continue
            self._in_section.add(word)
            self._found.add(word)
            yield start, end, word


def _is_shut(element: Element) -> bool:
    classes = set(element.get("class", "").split())
    return element.tag in _SHUT or bool(classes & _SHUT_CLASSES)


def _button(word: Word, text: str) -> Element:
    target = f"word-{word.slug}"
    button = Element("button", {"type": "button", "class": "word", "popovertarget": target})
    button.set("aria-describedby", target)
    button.text = text
    return button
