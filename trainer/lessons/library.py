"""Everything that teachers write, read once at the start and never half-built."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property, partial
from pathlib import Path
from typing import TypeVar

from trainer.lessons.cautions import Caution, read_cautions
from trainer.lessons.competencies import Competencies, Competency, read_competencies
from trainer.lessons.crosscheck import (
    Source,
    Written,
    picture_mistakes,
    repeated,
    unknown_names,
    unknown_skills,
)
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.glossary import NO_GLOSSARY, Glossary, read_glossary
from trainer.lessons.lesson import Lesson, read_lesson
from trainer.lessons.prose import Known
from trainer.lessons.question import Question
from trainer.lessons.retired import NOTHING_RETIRED, read_retired, taken_again
from trainer.lessons.roof_questions import (
    NO_ROOF_QUESTIONS,
    RoofQuestions,
    read_roof_questions,
)
from trainer.lessons.roofs import SampleRoof, read_sample_roofs
from trainer.lessons.stock import Sizes, read_stock

T = TypeVar("T")
_COMPETENCIES = "competencies.toml"


@dataclass(frozen=True)
class Library:
    """The lessons in order, and what they lean on."""

    folder: Path
    lessons: tuple[Lesson, ...]
    competencies: Competencies
    cautions: Mapping[str, Caution]
    stock: Mapping[str, Sizes]
    #: By the name of its file.
    roofs: Mapping[str, SampleRoof] = field(default_factory=dict)
    #: What any roof can be practised on.
    roof_questions: RoofQuestions = NO_ROOF_QUESTIONS
    #: Whether another lesson, which isn't here, is read before the first of these.
    follows: bool = False
    #: The words of the trade.
    glossary: Glossary = NO_GLOSSARY

    @cached_property
    def by_slug(self) -> dict[str, Lesson]:
        """The lessons by slug."""
        return {lesson.slug: lesson for lesson in self.lessons}

    @cached_property
    def questions(self) -> dict[str, Question]:
        """All questions by id."""
        return {question.id: question for each in self.lessons for question in each.questions}

    @property
    def written(self) -> tuple[Written, ...]:
        """Every file that asks questions: its text is kept for the answers that name it."""
        on_roofs = (self.roof_questions,) if self.roof_questions.questions else ()
        return (*self.lessons, *on_roofs)

    @property
    def competencies_source(self) -> Source:
        """The file that says what a trainee must be able to do."""
        return self.source_of(_COMPETENCIES)

    def source_of(self, name: str) -> Source:
        """Return a file of the folder with its text, for whatever is wrong in it."""
        return source_of(self.folder, name)

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


def read_library(folder: Path, only: str = "") -> Library:
    """Return all the content below a folder; raise ContentError with every mistake in it.

    Of `only` one lesson, by its file's name, no roofs and no other lessons are read.
    """
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
    competencies = attempt(_COMPETENCIES, lambda: read_competencies(folder), nothing)
    cautions: dict[str, Caution] = attempt("cautions.toml", lambda: read_cautions(folder), {})
    stock: dict[str, Sizes] = attempt("stock.toml", lambda: read_stock(folder), {})
    glossary = attempt("glossary.md", lambda: read_glossary(folder, stock), NO_GLOSSARY)
    known = Known(stock, glossary)
    every = sorted((folder / "lessons").glob("*.md"))
    files = [file for file in every if only in ("", file.name)]
    found = [
        attempt(f"lessons/{file.name}", partial(_read_file, file, folder, known), None)
        for file in files
    ]
    lessons = tuple(sorted((each for each in found if each), key=lambda each: each.order))
    # Without the sizes that are sold no roof can be read.
    roofs, wrong = read_sample_roofs(folder, stock) if stock and not only else ({}, [])
    mistakes.extend(wrong)
    retired = attempt("retired.toml", lambda: read_retired(folder), NOTHING_RETIRED)
    asked = NO_ROOF_QUESTIONS
    if not only:
        asked = attempt("roof-questions.md", lambda: _read_roof_questions(folder), asked)
    follows = files != every[: len(files)]
    library = Library(
        folder, lessons, competencies, cautions, stock, roofs, asked, follows, glossary
    )
    if not files:
        mistakes.append(AuthorError("content/lessons", 1, "There are no lessons here."))
    mistakes.extend(repeated(lessons, asked))
    source = source_of(folder, _COMPETENCIES)
    mistakes.extend(taken_again(retired, lessons, asked, competencies, source))
    mistakes.extend(unknown_skills(asked, competencies.skills))
    for lesson in lessons:
        mistakes.extend(unknown_names(lesson, library.by_competency, competencies.skills, cautions))
        mistakes.extend(picture_mistakes(lesson, folder))
    if mistakes:
        raise ContentError(mistakes)
    return library


def _read_file(file: Path, folder: Path, known: Known) -> Lesson:
    return read_lesson(file.read_text("utf-8"), f"content/lessons/{file.name}", folder, known)


def source_of(folder: Path, name: str) -> Source:
    """Return a file of a content folder; one that is missing was reported elsewhere."""
    file = folder / name
    text = file.read_text("utf-8", errors="replace") if file.is_file() else ""
    return Source(f"content/{name}", text)


def _read_roof_questions(folder: Path) -> RoofQuestions:
    """Return what stands in roof-questions.md; a firm's own folder may lack the file."""
    file = folder / "roof-questions.md"
    return read_roof_questions(file.read_text("utf-8")) if file.exists() else NO_ROOF_QUESTIONS
