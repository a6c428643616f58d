"""Markdown to a lesson's page: blocks of TOML lifted out, pictures drawn in.

```question and ```worked blocks are taken out before Markdown sees them; a worked job leaves
a mark behind, at which the page draws it. A picture that stands in a paragraph of its own
becomes a figure with its words below.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.extensions.abbr import AbbrExtension
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

_OPENING = re.compile(r"```(?P<kind>question|worked)\s*$")
_CLOSING = "```"
WORKED_MARK = "<!--worked-->"
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
    AbbrExtension,
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


def lift_blocks(file: str, lines: list[str], first_line: int, lifted: Lifted) -> list[str]:
    """Return the lines without their blocks, which go to `lifted` with their line numbers."""
    kept: list[str] = []
    numbered = iter(enumerate(lines, start=first_line))
    for number, line in numbered:
        opening = _OPENING.match(line)
        if not opening:
            kept.append(line)
            continue
        inside: list[str] = []
        for _, each in numbered:
            if each.rstrip() == _CLOSING:
                break
            inside.append(each)
        else:
            raise AuthorError(
                file,
                number,
                f"This {opening['kind']} block isn't closed.",
                line,
                "End it with a line of three back quotes.",
            )
        block = Block(file, number + 1, "\n".join(inside))
        (lifted.questions if opening["kind"] == "question" else lifted.worked).append(block)
        kept.append(f"\n{WORKED_MARK}\n" if opening["kind"] == "worked" else "")
    return kept


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


class LessonExtension(Extension):
    """Lifts blocks out and draws pictures in; one for each page that is rendered."""

    def __init__(self, file: str, first_line: int, folder: Path, lifted: Lifted) -> None:
        super().__init__()
        self.file, self.first_line, self.folder, self.lifted = file, first_line, folder, lifted

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the name that Markdown calls
        """Register both processors."""
        # Before fenced_code, at 25, takes the fences for listings.
        blocks = _Blocks(md, self.file, self.first_line, self.lifted)
        md.preprocessors.register(blocks, "lesson_blocks", 27)
        # After the inline patterns, at 20, have made the img elements.
        pictures = _Pictures(md, self.file, self.folder, self.lifted)
        md.treeprocessors.register(pictures, "lesson_pictures", 5)


def render(file: str, text: str, first_line: int, folder: Path) -> tuple[str, Lifted]:
    """Return the HTML of a lesson's prose, and what was lifted out of it."""
    lifted = Lifted()
    extension = LessonExtension(file, first_line, folder, lifted)
    extensions = [*(make() for make in _EXTENSIONS), extension]
    markdown = Markdown(extensions=extensions, output_format="html")
    return markdown.convert(text), lifted
