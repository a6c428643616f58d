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
        before, last = text, None
        done = 0
        for start, end, word in self._to_open(text):
            begins, ends = _with_signs(text, start, end, done)
            held = _held(
                word, *map(unmarked, (text[begins:start], text[start:end], text[end:ends]))
            )
            if last is None:
                before = text[:begins]
            else:
                last.tail = text[done:begins]
            held.tail = text[ends:]
            element.append(held)
            last, done = held, ends
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
