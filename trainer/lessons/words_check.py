"""What `trainer check` proves of the words of the trade: each is explained, and each is met."""

from collections.abc import Iterator

from trainer.lessons.errors import AuthorError, did_you_mean
from trainer.lessons.glossary import Glossary, Word
from trainer.lessons.lesson import Lesson
from trainer.lessons.library import Library
from trainer.lessons.prose_lines import prose_of
from trainer.lessons.sentences import LONGEST_SENTENCE, sentences_in, words_of
from trainer.lessons.words_in_prose import MARK

_FILE = "content/glossary.md"


def check_words(library: Library) -> Iterator[AuthorError]:
    """Yield each [[word]] that isn't explained, each word that no lesson uses, each long one."""
    for lesson in library.lessons:
        yield from unexplained(lesson, library.glossary)
    used = {word for lesson in library.lessons for word in _words_of(lesson, library)}
    for word in library.glossary.words:
        yield from _badly_said(word)
        if word not in used:
            sentence = f"No lesson uses '{word.term}'."
            mend = "Leave it out, or write in 'also:' the form that lessons use."
            yield AuthorError(_FILE, word.line, sentence, word.term, mend)


def unexplained(lesson: Lesson, glossary: Glossary) -> Iterator[AuthorError]:
    """Yield each word that a lesson marks and the glossary lacks, by line."""
    forms = [form for each in glossary.words for form in (each.term, *each.forms)]
    for number, line in enumerate(prose_of(lesson.text).splitlines(), start=1):
        for match in MARK.finditer(line):
            if glossary.named(match["word"]) is None:
                sentence = f"The word '{match['word']}' isn't explained in {_FILE}."
                guess = did_you_mean(match["word"], forms) if forms else ""
                mend = guess if guess.startswith("Did") else "Add it there, with its sentence."
                yield AuthorError(lesson.file, number, sentence, line, mend)


def _words_of(lesson: Lesson, library: Library) -> Iterator[Word]:
    """Yield the words that stand anywhere in a lesson: prose, captions, questions."""
    told = [lesson.title, lesson.scenario, prose_of(lesson.text)]
    told += [lesson.worked.text] if lesson.worked else []
    told += [text for question in lesson.questions for text in question.texts()]
    for text in told:
        yield from (word for _, _, word in library.glossary.found_in(text))


def _badly_said(word: Word) -> Iterator[AuthorError]:
    many = len(sentences_in(word.sentence))
    if many != 1 or not word.sentence.endswith("."):
        sentence = f"'{word.term}' is explained in one sentence, with a full stop."
        yield AuthorError(_FILE, word.line, sentence, word.sentence, "Make one sentence of it.")
    long = words_of(word.sentence)
    if long > LONGEST_SENTENCE:
        sentence = f"This sentence has {long} words; {LONGEST_SENTENCE} are the most."
        yield AuthorError(_FILE, word.line, sentence, word.sentence, "Leave out what can be.")
