"""Mistakes that only show when all files of the content are seen together."""

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
            yield _at(
                lesson,
                f'"{lesson.slug}"',
                f"Lesson '{lesson.slug}' stands in {slugs[lesson.slug].file} too.",
            )
        slugs[lesson.slug] = lesson
        for question in lesson.questions:
            if question.id in ids:
                yield _at(
                    lesson,
                    f'"{question.id}"',
                    f"Question '{question.id}' stands in {ids[question.id].file} too.",
                    "An id is used once for all time.",
                )
            ids[question.id] = lesson


def unknown_names(
    lesson: Lesson,
    competencies: Collection[str],
    skills: Collection[str],
    cautions: Collection[str],
) -> Iterator[AuthorError]:
    """Yield each competency, skill and caution that a lesson names and no file has."""
    asked = sorted({ask.skill for question in lesson.questions for ask in question.asks})
    named = [("competency", lesson.competency, competencies)]
    named += [("skill", skill, skills) for skill in asked]
    named += [("caution", caution, cautions) for caution in lesson.cautions]
    for what, name, known in named:
        if name not in known:
            yield _at(
                lesson,
                f'"{name}"',
                f"There is no {what} '{name}'.",
                did_you_mean(str(name), known),
            )


def picture_mistakes(lesson: Lesson, folder: Path) -> Iterator[AuthorError]:
    """Yield what is wrong with the pictures of a lesson below a content folder."""
    for picture in lesson.pictures:
        path = folder / picture
        if picture.endswith(".svg") and path.is_file():
            yield from _drawing_mistakes(path, f"content/{picture}")
            continue
        there = [f"pictures/{file.name}" for file in (folder / "pictures").glob("*.svg")]
        yield _at(
            lesson, picture, f"The picture '{picture}' is missing.", did_you_mean(picture, there)
        )


def _drawing_mistakes(path: Path, file: str) -> Iterator[AuthorError]:
    try:
        root = ET.fromstring(path.read_text("utf-8"))  # noqa: S314 - the firm's own file
    except ET.ParseError as error:
        mend = "Open it in a browser and close what is open."
        yield AuthorError(file, error.position[0], f"This is no drawing: {error}.", "", mend)
        return
    for what, mend, found in _forbidden(root, path.stem):
        if found:
            yield AuthorError(file, 1, f"A picture may not carry {what}.", "", mend)


def _forbidden(root: ET.Element, name: str) -> Iterator[tuple[str, str, bool]]:
    """Yield what a picture may not carry, how that is mended, and whether it does."""
    elements = list(root.iter())
    attributes = [key for each in elements for key in each.attrib]
    tags = {each.tag.rpartition("}")[2] for each in elements if isinstance(each.tag, str)}
    scripted = any(key == "style" or key.startswith("on") for key in attributes)
    yield (
        "scripts, styles or pixels",
        "Use the classes of the stylesheet.",
        scripted or bool(tags & {"script", "style", "foreignObject", "image"}),
    )
    yield (
        "an id that doesn't begin with its own name",
        f"Begin each id with '{name}', since pictures share a page.",
        any(not each.get("id", name).startswith(name) for each in elements),
    )
    yield "links", "Draw it instead.", any(key.endswith("href") for key in attributes)
    yield "no title", "Say in <title> what it shows.", "title" not in tags


def _at(lesson: Lesson, text: str, sentence: str, mend: str = "") -> AuthorError:
    lines = lesson.text.splitlines()
    number = next((n for n, line in enumerate(lines, start=1) if text in line), 1)
    return AuthorError(lesson.file, number, sentence, lines[number - 1], mend)
