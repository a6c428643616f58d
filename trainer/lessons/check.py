"""What `trainer check` proves of the whole content, with every question worked many times over."""

import re
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

from trainer.engine.errors import UNWORKABLE
from trainer.engine.plans.roof import plan_roof
from trainer.lessons.coverage import check_coverage
from trainer.lessons.crosscheck import lines_with
from trainer.lessons.errors import AuthorError, did_you_mean, in_order
from trainer.lessons.figures_check import check_figures, typed_figures
from trainer.lessons.lesson import Lesson
from trainer.lessons.library import Library, read_library
from trainer.lessons.links import link_mistakes, slugs_of_lessons
from trainer.lessons.question_check import check_question
from trainer.lessons.reading_check import check_lesson_reading, check_reading
from trainer.lessons.roof_check import check_on_roofs
from trainer.lessons.roofs import SampleRoof, plan_mistakes
from trainer.lessons.words_check import check_words, unexplained

FEWEST_QUESTIONS = 5
FEWEST_PICTURES = 2
#: The boxes that have a look of their own; any other would be drawn as if it were nothing.
BOXES = ("caution", "decide", "right", "wrong")
_BOX = re.compile(r"!!! *(?P<kind>\S*)")


def check_content(folder: Path) -> tuple[Library, list[AuthorError]]:
    """Return the library and the mistakes that show only when it is worked, by file and line.

    Raises ContentError where it can't even be read.
    """
    library = read_library(folder)
    slugs = slugs_of_lessons(folder)
    mistakes = [mistake for lesson in library.lessons for mistake in _lesson(lesson)]
    for lesson in library.lessons:
        mistakes += link_mistakes(lesson, library, slugs)
    mistakes += [mistake for roof in library.roofs.values() for mistake in check_roof(roof)]
    mistakes += check_on_roofs(library.roof_questions, library.roofs)
    mistakes += check_coverage(library)
    mistakes += check_reading(library)
    mistakes += check_words(library)
    mistakes += check_figures(library)
    return library, in_order(mistakes)


def check_lesson(library: Library, lesson: Lesson) -> list[AuthorError]:
    """Return the mistakes of one lesson that show only when it is worked, by line."""
    links = link_mistakes(lesson, library, slugs_of_lessons(library.folder))
    prose = [*unexplained(lesson, library.glossary), *typed_figures(lesson)]
    return in_order([*_lesson(lesson), *links, *prose, *check_lesson_reading(lesson)])


def _lesson(lesson: Lesson) -> Iterator[AuthorError]:
    if len(lesson.questions) < FEWEST_QUESTIONS:
        yield AuthorError(lesson.file, 1, f"A lesson asks {FEWEST_QUESTIONS} questions at least.")
    if len(set(lesson.pictures)) < FEWEST_PICTURES:
        yield AuthorError(lesson.file, 1, f"A lesson has {FEWEST_PICTURES} pictures at least.")
    yield from _outdented(lesson)
    yield from _unknown_boxes(lesson)
    if lesson.worked is None:
        yield AuthorError(lesson.file, 1, "A lesson has one worked job.")
    for question in lesson.sums:
        yield from check_question(question, lesson.file, lines_with(lesson, "id", question.id)[0])


def check_roof(roof: SampleRoof) -> Iterator[AuthorError]:
    """Yield why a roof of content/roofs can't be planned."""
    found = plan_mistakes(roof.description, roof.block)
    yield from found
    if found:
        return
    try:
        plan_roof(roof.description)
    except UNWORKABLE as error:
        yield roof.block.mistake("", f"This roof can't be planned. {error}")


def _outdented(lesson: Lesson) -> Iterator[AuthorError]:
    """Yield each line that falls out of the box it was meant for, because it isn't indented."""
    lines = lesson.text.splitlines()
    inside = False
    for number, (above, line) in enumerate(pairwise(lines), start=2):
        inside = above.startswith("!!! ") or (inside and above.startswith("    "))
        if inside and line.strip() and not line.startswith("    "):
            mend = "Indent it by four spaces, or leave a line empty above it."
            yield AuthorError(lesson.file, number, "This line falls out of its box.", line, mend)


def _unknown_boxes(lesson: Lesson) -> Iterator[AuthorError]:
    """Yield each box of a kind that doesn't exist, as in a mistyped !!! cuation."""
    for number, line in enumerate(lesson.text.splitlines(), start=1):
        found = _BOX.match(line)
        if found and (kind := found["kind"]) not in BOXES:
            mend = did_you_mean(kind, BOXES)
            yield AuthorError(lesson.file, number, f"There is no box '{kind}'.", line, mend)
