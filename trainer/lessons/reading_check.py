"""What `trainer check` proves of how the content reads: no long sentence, and short ones mostly."""

import re
from collections.abc import Iterable, Iterator
from itertools import chain

from trainer.lessons.crosscheck import lines_with
from trainer.lessons.errors import AuthorError
from trainer.lessons.lesson import Lesson
from trainer.lessons.library import Library
from trainer.lessons.sentences import (
    LONGEST_MEAN,
    LONGEST_SENTENCE,
    sentences_on,
    too_long,
    words_of,
)

_MEND = "Make two sentences of it."
#: Enough words to find a sentence again in the Markdown that it came from.
_BEGINNING = 4


def check_reading(library: Library) -> Iterator[AuthorError]:
    """Yield each sentence that is too long, by file and line, and each lesson long on average."""
    for lesson in library.lessons:
        yield from _lesson(lesson)
    for asked in library.roof_questions.questions:
        yield from _told(library.roof_questions.file, 1, asked.question.texts())
    cautions = (caution.text for caution in library.cautions.values())
    yield from _told("content/cautions.toml", 1, cautions)
    competencies = library.competencies.competencies
    steps = chain.from_iterable((*each.must_steps, *each.why) for each in competencies)
    yield from _told("content/competencies.toml", 1, steps)


def _lesson(lesson: Lesson) -> Iterator[AuthorError]:
    sentences = sentences_on(lesson.opening + lesson.closing)
    for sentence in too_long(sentences):
        yield _long(lesson.file, line_of(sentence, lesson.text), sentence)
    counts = list(map(words_of, sentences))
    mean = sum(counts) / max(1, len(counts))
    if mean > LONGEST_MEAN:
        words = f"Its sentences have {mean:.1f} words on average; {LONGEST_MEAN} are the most."
        yield AuthorError(lesson.file, 1, words, "", "Begin with the longest ones.")
    yield from _told(lesson.file, 1, [lesson.scenario])
    if lesson.worked:
        yield from _told(lesson.file, 1, [lesson.worked.text])
    for question in lesson.questions:
        line = lines_with(lesson, "id", question.id)[0]
        yield from _told(lesson.file, line, question.texts())


def _told(file: str, line: int, texts: Iterable[str]) -> Iterator[AuthorError]:
    yield from (_long(file, line, sentence) for sentence in too_long(texts))


def _long(file: str, line: int, sentence: str) -> AuthorError:
    many = words_of(sentence)
    told = f"This sentence has {many} words; {LONGEST_SENTENCE} are the most."
    return AuthorError(file, line, told, sentence, _MEND)


def line_of(sentence: str, text: str) -> int:
    """Return the line of a lesson's text on which a sentence begins; 1 where it isn't found."""
    beginning = map(re.escape, sentence.split()[:_BEGINNING])
    found = re.search(r"[\s*_]+".join(beginning), text)
    return text.count("\n", 0, found.start()) + 1 if found else 1
