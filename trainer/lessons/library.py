"""Everything that teachers write, read once at the start and never half-built."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property, partial
from pathlib import Path
from typing import TypeVar

from trainer.lessons.cautions import Caution, read_cautions
from trainer.lessons.competencies import Competencies, Competency, read_competencies
from trainer.lessons.crosscheck import picture_mistakes, repeated, unknown_names
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.lesson import Lesson, read_lesson
from trainer.lessons.question import Question
from trainer.lessons.stock import Sizes, read_stock

T = TypeVar("T")


@dataclass(frozen=True)
class Library:
    """The lessons in order, and what they lean on."""

    folder: Path
    lessons: tuple[Lesson, ...]
    competencies: Competencies
    cautions: Mapping[str, Caution]
    stock: Mapping[str, Sizes]

    @cached_property
    def by_slug(self) -> dict[str, Lesson]:
        """The lessons by slug."""
        return {lesson.slug: lesson for lesson in self.lessons}

    @cached_property
    def questions(self) -> dict[str, Question]:
        """All questions by id."""
        return {question.id: question for each in self.lessons for question in each.questions}

    @cached_property
    def by_competency(self) -> dict[str, Competency]:
        """The competencies by slug."""
        return {each.slug: each for each in self.competencies.competencies}

    @property
    def first(self) -> Lesson:
        """The lesson that is read before any other opens."""
        return self.lessons[0]

    def next_after(self, lesson: Lesson) -> Lesson | None:
        """Return the lesson that follows, or None after the last."""
        later = self.lessons[self.lessons.index(lesson) + 1 :]
        return later[0] if later else None


def read_library(folder: Path) -> Library:
    """Return all the content below a folder; raise ContentError with every mistake in it."""
    mistakes: list[AuthorError] = []

    def attempt(name: str, read: Callable[[], T], fallback: T) -> T:
        try:
            return read()
        except AuthorError as error:
            mistakes.append(error)
        except FileNotFoundError:
            mistakes.append(AuthorError(f"content/{name}", 1, "This file is missing."))
        except UnicodeDecodeError as error:
            line = error.object.count(b"\n", 0, error.start) + 1
            sentence, mend = "This isn't UTF-8 text.", "Save the file again as UTF-8."
            mistakes.append(AuthorError(f"content/{name}", line, sentence, "", mend))
        return fallback

    nothing = Competencies((), {})
    competencies = attempt("competencies.toml", lambda: read_competencies(folder), nothing)
    cautions: dict[str, Caution] = attempt("cautions.toml", lambda: read_cautions(folder), {})
    stock: dict[str, Sizes] = attempt("stock.toml", lambda: read_stock(folder), {})
    files = sorted((folder / "lessons").glob("*.md"))
    found = [
        attempt(f"lessons/{file.name}", partial(_read_file, file, folder), None) for file in files
    ]
    lessons = tuple(sorted((each for each in found if each), key=lambda each: each.order))
    library = Library(folder, lessons, competencies, cautions, stock)
    if not files:
        mistakes.append(AuthorError("content/lessons", 1, "There are no lessons here."))
    mistakes.extend(repeated(lessons))
    for lesson in lessons:
        mistakes.extend(unknown_names(lesson, library.by_competency, competencies.skills, cautions))
        mistakes.extend(picture_mistakes(lesson, folder))
    if mistakes:
        raise ContentError(mistakes)
    return library


def _read_file(file: Path, folder: Path) -> Lesson:
    return read_lesson(file.read_text("utf-8"), f"content/lessons/{file.name}", folder)
