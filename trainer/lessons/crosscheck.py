"""Mistakes that only show when all files of the content are seen together."""

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol
from xml.etree import ElementTree as ET

from trainer.lessons.errors import AuthorError, did_you_mean
from trainer.lessons.lesson import Lesson
from trainer.lessons.roof_questions import NO_ROOF_QUESTIONS, RoofQuestions


class Readable(Protocol):
    """A file that a teacher writes."""

    @property
    def file(self) -> str:
        """What mistakes call it."""

    @property
    def text(self) -> str:
        """All that stands in it."""


@dataclass(frozen=True, slots=True)
class Source:
    """A file and its text, where nothing else of it is needed."""

    file: str
    text: str


class Written(Readable, Protocol):
    """A file of Markdown that asks questions."""

    @property
    def slug(self) -> str:
        """What the records know it under."""

    @property
    def digest(self) -> str:
        """The name under which its text is kept."""


def repeated(
    lessons: Collection[Lesson], on_roofs: RoofQuestions = NO_ROOF_QUESTIONS
) -> Iterator[AuthorError]:
    """Yield each slug of a file and each id of a question that stands in two places."""
    asked: list[tuple[Written, list[str]]] = [
        (lesson, [question.id for question in lesson.questions]) for lesson in lessons
    ]
    asked.append((on_roofs, [each.question.id for each in on_roofs.questions]))
    slugs: dict[str, Written] = {}
    ids: dict[str, Written] = {}
    for written, own in asked:
        if written.slug in slugs:
            sentence = f"Lesson '{written.slug}' stands in {slugs[written.slug].file} too."
            yield _at(written, lines_with(written, "slug", written.slug)[0], sentence)
        slugs[written.slug] = written
        for question_id in own:
            if question_id in ids:
                other = ids[question_id]
                where = "here" if other is written else f"in {other.file}"
                sentence = f"Question '{question_id}' stands {where} too."
                line = lines_with(written, "id", question_id)[-1]
                yield _at(written, line, sentence, "An id is used once for all time.")
            ids[question_id] = written


def unknown_skills(on_roofs: RoofQuestions, skills: Collection[str]) -> Iterator[AuthorError]:
    """Yield each skill that questions on roofs name and its file doesn't have."""
    for skill in sorted({skill for each in on_roofs.questions for skill in each.question.skills}):
        if skills and skill not in skills:
            line = lines_with(on_roofs, "skill", skill)[0]
            sentence = f"There is no skill '{skill}'."
            yield _at(on_roofs, line, sentence, did_you_mean(skill, skills))


def unknown_names(
    lesson: Lesson,
    competencies: Collection[str],
    skills: Collection[str],
    cautions: Collection[str],
) -> Iterator[AuthorError]:
    """Yield each competency, skill and caution that a lesson names and its file doesn't have.

    An empty file was already reported, so that nothing is looked up in it.
    """
    asked = sorted({skill for question in lesson.questions for skill in question.skills})
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


def lines_with(written: Readable, key: str, value: str) -> list[int]:
    """Return the lines on which a key has this value, else those where it stands in a list."""
    lines = list(enumerate(written.text.splitlines(), start=1))
    quoted = f"[\"']{re.escape(value)}[\"']"
    set_here = [n for n, line in lines if re.match(rf"\s*{key}\s*=\s*{quoted}", line)]
    return set_here or [n for n, line in lines if re.search(quoted, line)] or [1]


def mistake_of(
    written: Readable, key: str, value: str, sentence: str, mend: str = ""
) -> AuthorError:
    """Return the error that points at the line on which a key has this value."""
    return _at(written, lines_with(written, key, value)[0], sentence, mend)


def _at(written: Readable, line: int, sentence: str, mend: str = "") -> AuthorError:
    # The text of a file that is missing has no lines.
    lines = written.text.splitlines() or [""]
    return AuthorError(written.file, line, sentence, lines[line - 1], mend)
