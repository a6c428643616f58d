"""Markdown to a lesson's page: blocks of TOML lifted out, pictures drawn in.

```question and ```worked blocks are taken out before Markdown sees them; a worked job leaves
a mark behind, at which the page draws it. A picture that stands in a paragraph of its own
becomes a figure with its words below. Placeholders are filled with figures, and words of the
trade can be opened.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.extensions.admonition import AdmonitionExtension
from markdown.extensions.attr_list import AttrListExtension
from markdown.extensions.def_list import DefListExtension
from markdown.extensions.fenced_code import FencedCodeExtension
from markdown.extensions.footnotes import FootnoteExtension
from markdown.extensions.md_in_html import MarkdownInHtmlExtension
from markdown.extensions.sane_lists import SaneListExtension
from markdown.extensions.tables import TableExtension
from markdown.extensions.toc import TocExtension
from markdown.preprocessors import Preprocessor
from markdown.treeprocessors import Treeprocessor

from trainer.lessons.block import Block
from trainer.lessons.errors import AuthorError
from trainer.lessons.figures_in_prose import BadPlaceholder, Filled, Stock, fill_each
from trainer.lessons.glossary import NO_GLOSSARY, Glossary, Word
from trainer.lessons.prose_lines import outside_fences
from trainer.lessons.standing import KnownFigure, Notes
from trainer.lessons.words_in_prose import Opener, marked, unmarked

_OPENING = re.compile(r"```(?P<kind>question|worked)\s*$")
_CLOSING = "```"
_CLOSE_IT = "End it with a line of three back quotes."
WORKED_MARK = "<!--worked-->"
#: What a placeholder or a marked word begins with.
_BRACKETS = re.compile(r"[{}]|\[\[")
# "50 mm" stays on one line, here as in a working.
_FIGURE_AND_UNIT = re.compile(r"(?<=\d) (?=(?:mm|ml|m²|m|kg|g|g/m²|L|min|minutes|ppm)\b|%|°C)")
# Made by hand: looking names up among all installed packages takes longer than the rest.
_EXTENSIONS: tuple[Callable[[], Extension], ...] = (
    AdmonitionExtension,
    TocExtension,
    AttrListExtension,
    MarkdownInHtmlExtension,
    TableExtension,
    FootnoteExtension,
    DefListExtension,
    FencedCodeExtension,
    SaneListExtension,
)


def kept_together(text: str) -> str:
    """Return a text in which no line breaks between a figure and its unit."""
    return _FIGURE_AND_UNIT.sub("\u00a0", text)


@dataclass
class Lifted:
    """What was found while reading a page."""

    questions: list[Block] = field(default_factory=list)
    worked: list[Block] = field(default_factory=list)
    pictures: list[str] = field(default_factory=list)
    #: The defaults that stand in the prose, in order.
    figures: list[KnownFigure] = field(default_factory=list)
    #: The words of the trade that can be opened, by the alphabet.
    words: list[Word] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Known:
    """What prose may lean on: the sizes that are sold, and the words of the trade."""

    stock: Stock = field(default_factory=dict)
    glossary: Glossary = NO_GLOSSARY


NOTHING_KNOWN = Known()


def lift_blocks(file: str, lines: list[str], first_line: int, lifted: Lifted) -> list[str]:
    """Return the lines without their blocks, which go to `lifted` with their line numbers."""
    kept: list[str] = []
    numbered = iter(enumerate(lines, start=first_line))
    for number, line in numbered:
        opening = _OPENING.match(line)
        if not opening:
            kept.append(line)
            continue
        inside = _up_to_closing(
            numbered,
            AuthorError(
                file, number, f"This {opening['kind']} block isn't closed.", line, _CLOSE_IT
            ),
        )
        block = Block(file, number + 1, "\n".join(inside))
        (lifted.questions if opening["kind"] == "question" else lifted.worked).append(block)
        kept.append(f"\n{WORKED_MARK}\n" if opening["kind"] == "worked" else "")
    return kept


def _up_to_closing(numbered: Iterator[tuple[int, str]], unclosed: AuthorError) -> list[str]:
    """Return a block's lines; raise `unclosed` where the page ends or another block opens."""
    inside: list[str] = []
    for _, line in numbered:
        if line.rstrip() == _CLOSING:
            return inside
        if _OPENING.match(line):
            break
        inside.append(line)
    raise unclosed


class _Figures(Preprocessor):
    """Fills the placeholders, and marks the words that are to be opened."""

    def __init__(self, md: Markdown, file: str, first_line: int, stock: Stock) -> None:
        super().__init__(md)
        self.file, self.first_line, self.stock = file, first_line, stock
        self.notes = Notes()

    def run(self, lines: list[str]) -> list[str]:
        numbered = enumerate(outside_fences(lines), start=self.first_line)
        return [
            self._filled(n, line) if prose and _BRACKETS.search(line) else line
            for n, (line, prose) in numbered
        ]

    def _filled(self, number: int, line: str) -> str:
        # A heading is a link's target, and a box's title stands by itself: no marks there.
        bare = line.lstrip().startswith(("#", "!!!"))

        def put(filled: Filled) -> str:
            notes = (self.notes.note(figure, marked=not bare) for figure in filled.figures)
            return filled.text + "".join(notes)

        try:
            return fill_each(marked(line), self.stock, put)
        except BadPlaceholder as bad:
            raise AuthorError(self.file, number, bad.sentence, bad.text, bad.mend) from bad


class _Blocks(Preprocessor):
    def __init__(self, md: Markdown, file: str, first_line: int, lifted: Lifted) -> None:
        super().__init__(md)
        self.file, self.first_line, self.lifted = file, first_line, lifted

    def run(self, lines: list[str]) -> list[str]:
        kept = lift_blocks(self.file, lines, self.first_line, self.lifted)
        return [kept_together(line) for line in kept]


class _Pictures(Treeprocessor):
    def __init__(self, md: Markdown, file: str, folder: Path, lifted: Lifted) -> None:
        super().__init__(md)
        self.file, self.folder, self.lifted = file, folder, lifted

    def run(self, root: Element) -> None:
        for paragraph in root.iter("p"):
            if len(paragraph) == 1 and paragraph[0].tag == "img" and not paragraph.text:
                self._draw(paragraph, paragraph[0])

    def _draw(self, paragraph: Element, image: Element) -> None:
        source, words = image.get("src", ""), image.get("alt", "")
        self.lifted.pictures.append(source)
        drawing = self._drawing(source)
        paragraph.clear()
        paragraph.tag = "figure"
        paragraph.set("class", "picture")
        stashed = Element("div")
        stashed.text = self.md.htmlStash.store(drawing.strip())
        caption = Element("figcaption")
        caption.text = words
        paragraph.extend([stashed, caption])

    def _drawing(self, source: str) -> str:
        """Return the picture's text; one that is missing or broken is reported elsewhere."""
        path = self.folder / source
        if not source.endswith(".svg") or not path.is_file():
            return ""
        return path.read_text("utf-8", errors="replace")


class _Words(Treeprocessor):
    """Opens the words of the trade, and keeps what is for eyes alone out of attributes."""

    def __init__(self, md: Markdown, glossary: Glossary, notes: Notes, lifted: Lifted) -> None:
        super().__init__(md)
        self.glossary, self.notes, self.lifted = glossary, notes, lifted

    def run(self, root: Element) -> None:
        for image in root.iter("img"):
            image.set("alt", self.notes.without_marks(unmarked(image.get("alt", ""))))
        opener = Opener(self.glossary)
        opener.open_in(root)
        self.lifted.words = opener.opened


class LessonExtension(Extension):
    """Lifts blocks out and draws pictures in; one for each page that is rendered."""

    def __init__(
        self, file: str, first_line: int, folder: Path, known: Known, lifted: Lifted
    ) -> None:
        super().__init__()
        self.file, self.first_line, self.folder = file, first_line, folder
        self.known, self.lifted = known, lifted

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the name that Markdown calls
        """Register the processors."""
        figures = _Figures(md, self.file, self.first_line, self.known.stock)
        # Before lesson_blocks, which forgets how the lines of the file were numbered.
        md.preprocessors.register(figures, "lesson_figures", 28)
        # Before fenced_code, at 25, takes the fences for listings.
        blocks = _Blocks(md, self.file, self.first_line, self.lifted)
        md.preprocessors.register(blocks, "lesson_blocks", 27)
        # After the inline patterns, at 20, have made the img elements.
        pictures = _Pictures(md, self.file, self.folder, self.lifted)
        md.treeprocessors.register(pictures, "lesson_pictures", 5)
        words = _Words(md, self.known.glossary, figures.notes, self.lifted)
        md.treeprocessors.register(words, "lesson_words", 4)
        self.notes = figures.notes


def render(
    file: str, text: str, first_line: int, folder: Path, known: Known = NOTHING_KNOWN
) -> tuple[str, Lifted]:
    """Return the HTML of a lesson's prose, and what was lifted out of it.

    Raises AuthorError for a block that isn't closed, and for a placeholder that nothing fills.
    """
    lifted = Lifted()
    extension = LessonExtension(file, first_line, folder, known, lifted)
    extensions = [*(make() for make in _EXTENSIONS), extension]
    markdown = Markdown(extensions=extensions, output_format="html")
    html = unmarked(markdown.convert(text))
    lifted.figures = extension.notes.figures
    return extension.notes.drawn(html), lifted
