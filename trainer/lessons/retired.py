"""content/retired.toml: names that were dropped, and are never given to anything else.

Answers are kept under them for years, so one that comes again would claim the old answers.
"""

from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from trainer.lessons.block import Block
from trainer.lessons.competencies import Competencies
from trainer.lessons.crosscheck import Readable, mistake_of
from trainer.lessons.errors import AuthorError
from trainer.lessons.lesson import Lesson
from trainer.lessons.roof_questions import RoofQuestions

_FILE = "retired.toml"
_KEYS = ("questions", "lessons", "skills", "competencies")
_MEND = "Give it a new name. content/retired.toml lists those that were dropped."


@dataclass(frozen=True, slots=True)
class Retired:
    """The names that were dropped."""

    #: By their ids.
    questions: tuple[str, ...] = ()
    #: By their slugs, as the rest.
    lessons: tuple[str, ...] = ()
    skills: tuple[str, ...] = ()
    competencies: tuple[str, ...] = ()


NOTHING_RETIRED = Retired()


def read_retired(folder: Path) -> Retired:
    """Return what content/retired.toml lists, which a firm need not have; raise AuthorError."""
    file = folder / _FILE
    if not file.exists():
        return NOTHING_RETIRED
    block = Block(f"content/{_FILE}", 1, file.read_text("utf-8"))
    table = block.read()
    block.refuse_unknown(table, _KEYS, "The file")
    return Retired(**{key: block.texts(table, key, "The file") for key in table})


def taken_again(
    retired: Retired,
    lessons: Collection[Lesson],
    on_roofs: RoofQuestions,
    competencies: Competencies,
    source: Readable,
) -> Iterator[AuthorError]:
    """Yield each lesson, question, skill and competency that has a name which was dropped.

    `source` is the file in which the competencies stand.
    """
    slugs = [each.slug for each in competencies.competencies]
    named: list[tuple[Readable, str, str, Iterable[str], tuple[str, ...]]] = [
        (source, "slug", "competency", slugs, retired.competencies),
        (source, "slug", "skill", competencies.skills, retired.skills),
    ]
    for lesson in lessons:
        ids = [question.id for question in lesson.questions]
        named.append((lesson, "slug", "lesson", [lesson.slug], retired.lessons))
        named.append((lesson, "id", "question", ids, retired.questions))
    ids = [each.question.id for each in on_roofs.questions]
    named.append((on_roofs, "id", "question", ids, retired.questions))
    for readable, key, what, names, dropped in named:
        for name in names:
            if name in dropped:
                sentence = f"There was a {what} '{name}' once, and its name isn't used again."
                yield mistake_of(readable, key, name, sentence, _MEND)
