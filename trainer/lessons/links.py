"""Links in a lesson's prose: each must lead somewhere, and safely."""

import difflib
import re
from collections.abc import Collection, Iterator
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

from trainer.lessons.errors import AuthorError
from trainer.lessons.lesson import Lesson
from trainer.lessons.library import Library

#: Pages that anybody who reads a lesson may open, whatever stands in the content.
PAGES = (
    *("/", "/cautions", "/help", "/mix", "/mix/cups", "/progress"),
    *("/roofs", "/roofs/new", "/words"),
)
#: The anchors that every lesson's page has besides its headings.
ANCHORS = ("main", "questions")
_FORMS = (
    "Write #anchor for a place on this page, slug for a lesson, /page for a page of ours, "
    "or https://… for one of others."
)
_slug = re.compile(r"^slug\s*=\s*[\"']([^\"']+)[\"']", re.MULTILINE)


def link_mistakes(
    lesson: Lesson, library: Library, slugs: Collection[str]
) -> Iterator[AuthorError]:
    """Yield each link in a lesson's prose that leads nowhere, with a guess at what was meant.

    `slugs` are those of all lessons, whether they are in the library or not.
    """
    page = _Page(lesson.opening + lesson.closing)
    pages = [*PAGES, *(f"/lessons/{slug}" for slug in slugs)]
    pages += [f"/questions/{question_id}" for question_id in library.questions]
    # The page draws the list of figures, to which the marks in the prose lead.
    listed = [f"figure-{number}" for number, _ in enumerate(lesson.figures, start=1)]
    for href in dict.fromkeys(page.links):
        wrong = _wrong(href, {*page.anchors, *ANCHORS, *listed}, slugs, pages)
        if wrong:
            line, text = _place_of(lesson.text, href)
            yield AuthorError(lesson.file, line, wrong[0], text, wrong[1])


def slugs_of_lessons(folder: Path) -> list[str]:
    """Return the slug of every lesson of a content folder, even where one can't be read."""
    return list(filter(None, map(slug_in, sorted((folder / "lessons").glob("*.md")))))


def slug_in(file: Path) -> str:
    """Return the slug that stands in a lesson's file, or nothing."""
    found = _slug.search(file.read_text("utf-8", errors="replace"))
    return found[1] if found else ""


def _wrong(
    href: str, anchors: Collection[str], slugs: Collection[str], pages: Collection[str]
) -> tuple[str, str] | None:
    """Return what is wrong with a link and how it is mended, or None."""
    try:
        parts = urlsplit(href)
    except ValueError:
        return f"The link '{href}' can't be read.", _FORMS
    if parts.scheme or parts.netloc:
        return _outside(href, parts.scheme, parts.netloc)
    path = unquote(parts.path)
    if not path:
        return _nowhere("place on this page", "#", unquote(parts.fragment), anchors)
    # A browser finds a slug beside this lesson, as it finds a page from the root.
    known = pages if path.startswith("/") else slugs
    return _nowhere("page" if known is pages else "lesson", "", path, known)


def _outside(href: str, scheme: str, host: str) -> tuple[str, str] | None:
    if scheme == "https" and "." in host:
        return None
    if scheme == "http":
        return f"The link '{href}' isn't https.", f"Write https{href.removeprefix('http')}."
    return f"The link '{href}' leads to no page.", _FORMS


def _nowhere(what: str, mark: str, name: str, known: Collection[str]) -> tuple[str, str] | None:
    if name in known:
        return None
    # Somebody may have written the name of a lesson's file, as for a link between files.
    bare = re.sub(r"^\d+-|\.md$", "", name)
    near = difflib.get_close_matches(bare, known, n=1)
    mend = f"Did you mean '{mark}{near[0]}'?" if near else _FORMS
    return f"There is no {what} '{mark}{name}'.", mend


def _place_of(text: str, href: str) -> tuple[int, str]:
    """Return the line on which a link stands, and what it says; the first where none is found."""
    for number, line in enumerate(text.splitlines(), start=1):
        if href in line:
            return number, line
    return 1, ""


class _Page(HTMLParser):
    """Where the links of a page lead, and which places it has."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.links: list[str] = []
        self.anchors: set[str] = set()
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note where a link leads, and the place that an element is."""
        named = dict(attrs)
        if tag == "a":
            self.links.append(named.get("href") or "")
        if named.get("id"):
            self.anchors.add(str(named["id"]))
