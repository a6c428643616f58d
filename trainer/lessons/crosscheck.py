"""Mistakes that only show when all files of the content are seen together."""

import re
from collections.abc import Collection, Iterator
from pathlib import Path
from xml.etree import ElementTree as ET

from trainer.lessons.errors import AuthorError, did_you_mean
from trainer.lessons.lesson import Lesson


def repeated(lessons: Collection[Lesson]) -> Iterator[AuthorError]:
    """Yield each slug of a lesson and each id of a question that stands in two places."""
    slugs: dict[str, Lesson] = {}
    ids: dict[str, Lesson] = {}
    for lesson in lessons:
        if lesson.slug in slugs:
            sentence = f"Lesson '{lesson.slug}' stands in {slugs[lesson.slug].file} too."
            yield _at(lesson, lines_with(lesson, "slug", lesson.slug)[0], sentence)
        slugs[lesson.slug] = lesson
        for question in lesson.questions:
            if question.id in ids:
                other = ids[question.id]
                where = "here" if other is lesson else f"in {other.file}"
                sentence = f"Question '{question.id}' stands {where} too."
                line = lines_with(lesson, "id", question.id)[-1]
                yield _at(lesson, line, sentence, "An id is used once for all time.")
            ids[question.id] = lesson


def unknown_names(
    lesson: Lesson,
    competencies: Collection[str],
    skills: Collection[str],
    cautions: Collection[str],
) -> Iterator[AuthorError]:
    """Yield each competency, skill and caution that a lesson names and its file doesn't have.

    An empty file was already reported, so that nothing is looked up in it.
    """
    asked = sorted({ask.skill for question in lesson.questions for ask in question.asks})
    named = [("competency", lesson.competency, competencies)]
    named += [("skill", skill, skills) for skill in asked]
    named += [("caution", caution, cautions) for caution in lesson.cautions]
    for what, name, known in named:
        if known and name not in known:
            line = lines_with(lesson, what, name)[0]
            yield _at(lesson, line, f"There is no {what} '{name}'.", did_you_mean(name, known))


def picture_mistakes(lesson: Lesson, folder: Path) -> Iterator[AuthorError]:
    """Yield what is wrong with the pictures of a lesson below a content folder."""
    for picture in lesson.pictures:
        path = folder / picture
        if picture.endswith(".svg") and path.is_file():
            yield from _drawing_mistakes(path, f"content/{picture}")
            continue
        there = [f"pictures/{file.name}" for file in (folder / "pictures").glob("*.svg")]
        lines = enumerate(lesson.text.splitlines(), start=1)
        line = next((n for n, text in lines if picture in text), 1)
        sentence = f"The picture '{picture}' is missing."
        yield _at(lesson, line, sentence, did_you_mean(picture, there))


def _drawing_mistakes(path: Path, file: str) -> Iterator[AuthorError]:
    try:
        root = ET.fromstring(path.read_bytes())  # noqa: S314 - the firm's own file
    except ET.ParseError as error:
        mend = "Open it in a browser and close what is open."
        yield AuthorError(file, error.position[0], f"This is no drawing: {error}.", "", mend)
        return
    for sentence, mend, found in _forbidden(root, path.stem):
        if found:
            yield AuthorError(file, 1, sentence, "", mend)


def _forbidden(root: ET.Element, name: str) -> Iterator[tuple[str, str, bool]]:
    """Yield each thing that may be wrong with a picture, how that is mended, and whether it is."""
    elements = list(root.iter())
    attributes = [key for each in elements for key in each.attrib]
    tags = {each.tag.rpartition("}")[2] for each in elements if isinstance(each.tag, str)}
    scripted = any(key == "style" or key.startswith("on") for key in attributes)
    yield (
        "A picture carries no scripts, styles or pixels.",
        "Use the classes of the stylesheet.",
        scripted or bool(tags & {"script", "style", "foreignObject", "image"}),
    )
    yield (
        "A picture's ids begin with its own name.",
        f"Begin each id with '{name}', since pictures share a page.",
        any(not each.get("id", name).startswith(name) for each in elements),
    )
    linked = any(key.endswith("href") for key in attributes)
    yield "A picture carries no links.", "Draw it instead.", linked
    yield "A picture has a title.", "Say in <title> what it shows.", "title" not in tags
    yield "A picture has a description.", "Say in <desc> all it shows.", "desc" not in tags


def lines_with(lesson: Lesson, key: str, value: str) -> list[int]:
    """Return the lines on which a key has this value, else those where it stands in a list."""
    lines = list(enumerate(lesson.text.splitlines(), start=1))
    quoted = f"[\"']{re.escape(value)}[\"']"
    set_here = [n for n, line in lines if re.match(rf"\s*{key}\s*=\s*{quoted}", line)]
    return set_here or [n for n, line in lines if re.search(quoted, line)] or [1]


def _at(lesson: Lesson, line: int, sentence: str, mend: str = "") -> AuthorError:
    return AuthorError(lesson.file, line, sentence, lesson.text.splitlines()[line - 1], mend)
