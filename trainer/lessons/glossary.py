"""content/glossary.md: a sentence for each word of the trade, and the forms it is met in."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from trainer.lessons.errors import AuthorError
from trainer.lessons.figures_in_prose import BadPlaceholder, Stock, fill_prose

_FILE = "glossary.md"
_SENTENCE = ": "
_ALSO = "also:"
_TOKEN = re.compile(r"\w[\w’'-]*")


@dataclass(frozen=True, slots=True)
class Word:
    """One word of the trade."""

    term: str
    #: Other forms that are met in prose: "gels", "gelled".
    forms: tuple[str, ...]
    sentence: str
    #: The line of the file on which it stands.
    line: int

    @property
    def slug(self) -> str:
        """What its place on a page is called: "wet-out"."""
        return re.sub(r"[^a-z0-9]+", "-", self.term.lower()).strip("-")


@dataclass(frozen=True)
class Glossary:
    """All words, in the order of the file."""

    words: tuple[Word, ...] = ()
    #: By the first word of each form, longest form first: what there is to look for.
    _by_first: Mapping[str, Sequence[tuple[str, Word]]] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        found: dict[str, list[tuple[str, Word]]] = {}
        for word in self.words:
            for form in map(plain, (word.term, *word.forms)):
                first = _TOKEN.match(form)
                found.setdefault(first[0] if first else form, []).append((form, word))
        by_first = {key: sorted(each, key=lambda it: -len(it[0])) for key, each in found.items()}
        object.__setattr__(self, "_by_first", by_first)

    def found_in(self, text: str) -> Iterator[tuple[int, int, Word]]:
        """Yield where each word of the trade begins and ends in a text, and the word.

        Of two forms that begin together the longer one is meant.
        """
        low = plain(text)
        after = 0
        # Nearly every word of a page begins no form, so that is asked first.
        for token in _TOKEN.finditer(low):
            forms = self._by_first.get(token[0])
            if forms is None or token.start() < after:
                continue
            start = token.start()
            for form, word in forms:
                end = start + len(form)
                if low.startswith(form, start) and _ends(low, end):
                    yield start, end, word
                    after = end
                    break

    def named(self, text: str) -> Word | None:
        """Return the word that a text is a form of, or None."""
        for start, end, word in self.found_in(text):
            return word if (start, end) == (0, len(text)) else None
        return None


NO_GLOSSARY = Glossary()


def plain(text: str) -> str:
    """Return a text as forms are compared, no longer and no shorter: small letters, plain blanks.

    A letter whose small form has another length stays as it is.
    """
    low = text.lower()
    return (low if len(low) == len(text) else text).replace("\u00a0", " ").replace("\n", " ")


def _ends(text: str, place: int) -> bool:
    return place == len(text) or not (text[place].isalnum() or text[place] in "_-")


def read_glossary(folder: Path, stock: Stock) -> Glossary:
    """Return the words of content/glossary.md by the alphabet; raise AuthorError.

    A firm's own folder may lack the file.
    """
    path = folder / _FILE
    if not path.exists():
        return NO_GLOSSARY
    lines = path.read_text("utf-8").splitlines()
    words: list[Word] = []
    taken: dict[str, Word] = {}
    for number, entry in _entries(lines):
        words.append(_read(number, entry, stock))
        _refuse_repeated(words[-1], taken, entry[0])
    return Glossary(tuple(sorted(words, key=lambda word: word.term.lower())))


def _entries(lines: list[str]) -> Iterator[tuple[int, list[str]]]:
    """Yield the lines between two empty ones, with the number of the first; no headings."""
    entry: list[str] = []
    for number, line in enumerate([*lines, ""], start=1):
        if line.strip() and not line.startswith("#"):
            entry.append(line)
        elif entry:
            yield number - len(entry), entry
            entry = []


def _read(number: int, entry: list[str], stock: Stock) -> Word:
    term, *rest = entry
    also = rest.pop(0) if rest and rest[0].startswith(_ALSO) else ""
    if len(rest) != 1 or not rest[0].startswith(_SENTENCE) or term.startswith(_SENTENCE):
        mend = "Write the word, a line 'also: …' if it has other forms, and a line ': …'."
        raise _mistake(number, "This is no word with its sentence.", term, mend)
    forms = (form.strip() for form in also.removeprefix(_ALSO).split(","))
    try:
        sentence = fill_prose(rest[0].removeprefix(_SENTENCE).strip(), stock)
    except BadPlaceholder as bad:
        line = number + len(entry) - 1
        raise AuthorError(f"content/{_FILE}", line, bad.sentence, bad.text, bad.mend) from bad
    return Word(term.strip(), tuple(filter(None, forms)), sentence, number)


def _refuse_repeated(word: Word, taken: dict[str, Word], text: str) -> None:
    for form in (word.term, *word.forms):
        other = taken.setdefault(plain(form), word)
        if other is not word:
            sentence = f"'{form}' stands with '{other.term}' on line {other.line} too."
            raise _mistake(word.line, sentence, text, "Leave one of them out.")


def _mistake(line: int, sentence: str, text: str, mend: str) -> AuthorError:
    return AuthorError(f"content/{_FILE}", line, sentence, text, mend)
