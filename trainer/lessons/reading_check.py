"""What `trainer check` proves of how the content reads: no long sentence, and short ones mostly."""

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import chain

from trainer.lessons.crosscheck import Readable, lines_with
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
#: How many of the longest sentences are named where all together tire a reader.
_NAMED = 3


def check_reading(library: Library) -> Iterator[AuthorError]:
    """Yield each sentence that is too long, by file and line, and each lesson long on average."""
    for lesson in library.lessons:
        yield from check_lesson_reading(lesson)
    on_roofs = library.roof_questions
    for asked in on_roofs.questions:
        yield from _told(on_roofs, asked.question.texts(), "id", asked.question.id)
    cautions = (caution.text for caution in library.cautions.values())
    yield from _told(library.source_of("cautions.toml"), cautions)
    competencies = library.competencies.competencies
    steps = chain.from_iterable((*each.must_steps, *each.why) for each in competencies)
    yield from _told(library.competencies_source, steps)


def check_lesson_reading(lesson: Lesson) -> Iterator[AuthorError]:
    """Yield each sentence of a lesson that is too long, and the lesson if it is so on average."""
    sentences = sentences_on(lesson.opening + lesson.closing)
    for sentence in too_long(sentences):
        yield _long(lesson.file, line_of(sentence, lesson.text), sentence)
    yield from _long_on_average(lesson, sentences)
    yield from _told(lesson, [lesson.scenario])
    if lesson.worked:
        yield from _told(lesson, [lesson.worked.text])
    for question in lesson.questions:
        yield from _told(lesson, question.texts(), "id", question.id)


def _long_on_average(lesson: Lesson, sentences: Sequence[str]) -> Iterator[AuthorError]:
    mean = sum(map(words_of, sentences)) / max(1, len(sentences))
    if mean <= LONGEST_MEAN:
        return
    words = f"Its sentences have {mean:.1f} words on average; {LONGEST_MEAN} are the most."
    longest = sorted(sentences, key=words_of, reverse=True)[:_NAMED]
    named = "\n    ".join(
        f"{lesson.file}:{line_of(each, lesson.text)}: {words_of(each)} words: {each}"
        for each in longest
    )
    yield AuthorError(lesson.file, 1, words, "", f"Begin with the longest:\n    {named}")


def _told(
    source: Readable, texts: Iterable[str], key: str = "", name: str = ""
) -> Iterator[AuthorError]:
    """Yield each sentence that is too long in the texts that stand from a key's line on."""
    first = lines_with(source, key, name)[0] if key else 1
    for sentence in too_long(texts):
        yield _long(source.file, line_of(sentence, source.text, first), sentence)


def _long(file: str, line: int, sentence: str) -> AuthorError:
    many = words_of(sentence)
    told = f"This sentence has {many} words; {LONGEST_SENTENCE} are the most."
    return AuthorError(file, line, told, sentence, _MEND)


def line_of(sentence: str, text: str, first: int = 1) -> int:
    """Return the line of a text on which a sentence begins, from line `first` on.

    Where it isn't found there, that is `first` itself.
    """
    skipped = sum(map(len, text.splitlines(keepends=True)[: first - 1]))
    beginning = map(re.escape, sentence.split()[:_BEGINNING])
    found = re.compile(r"[\s*_]+".join(beginning)).search(text, skipped)
    return text.count("\n", 0, found.start()) + 1 if found else first
