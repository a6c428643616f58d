"""How the content reads: what `trainer check` says of sentences that are too long."""

from pathlib import Path

from kinds_specimens import CHOOSE
from lessons_specimens import CHAIN, lesson_text

from trainer.lessons.check import check_content
from trainer.lessons.errors import AuthorError
from trainer.lessons.reading_check import line_of

WORDS = " ".join(["strand"] * 24)
LONG = f"Dry **mat** {WORDS}."


def found(content: Path, text: str) -> list[AuthorError]:
    """Return what is said of a lesson's sentences."""
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    return [each for each in check_content(content)[1] if "sentence" in each.sentence.lower()]


def with_paragraph(content: Path, paragraph: str) -> str:
    """Return the tiny lesson with one more paragraph in it."""
    text = (content / "lessons/01-shed.md").read_text("utf-8")
    head, rest = text.split("\n## ", 1)
    return f"{head}\n{paragraph}\n\n## {rest}"


def test_a_long_sentence_is_named_with_its_line(content: Path) -> None:
    """File, line, the sentence itself, and what to do."""
    text = with_paragraph(content, LONG)
    (mistake,) = found(content, text)
    assert mistake.sentence == "This sentence has 26 words; 25 are the most."
    assert text.splitlines()[mistake.line - 1].startswith("Dry **mat**")
    assert mistake.text.startswith("Dry mat strand")
    assert mistake.mend == "Make two sentences of it."


def test_a_question_is_read_too(content: Path) -> None:
    """What is asked stands at its own line, of this question and no other."""
    text = (content / "lessons/01-shed.md").read_text("utf-8")
    wordy = text.replace('ask = "', f'ask = "{WORDS} strand strand. ', 1)
    (mistake,) = found(content, wordy)
    assert wordy.splitlines()[mistake.line - 1].startswith(f'ask = "{WORDS}')


def test_the_same_words_in_two_questions_are_told_apart(content: Path) -> None:
    """Each is found from its own question's line on."""
    text = (content / "lessons/01-shed.md").read_text("utf-8")
    wordy = text.replace('cue = "Which', f'cue = "{WORDS} strand strand. Which')
    lines = [mistake.line for mistake in found(content, wordy)]
    assert len(lines) == len(set(lines)) == wordy.count(WORDS)


def test_what_happens_next_is_read_too(content: Path) -> None:
    """The words after a choice stand at their own line."""
    picked = CHOOSE.replace("left-over", "resin-for-mat")
    picked = picked.replace("It heats through, and smokes under the lid.", LONG)
    text = f"{lesson_text()}\n```question\n{picked}```\n"
    (mistake,) = found(content, text)
    assert text.splitlines()[mistake.line - 1] == f'then = "{LONG}"'


def test_a_lesson_that_is_long_on_average_is_named(content: Path) -> None:
    """Each sentence passes by itself, and all together tire a reader."""
    paragraph = " ".join(f"Mat {' '.join(['strand'] * 20)}." for _ in range(60))
    (mistake,) = found(content, with_paragraph(content, paragraph))
    assert "words on average; 14 are the most" in mistake.sentence
    assert mistake.line == 1
    first, *longest = mistake.mend.splitlines()
    assert first == "Begin with the longest:"
    assert len(longest) == 3
    line = line_of("Mat strand strand strand", with_paragraph(content, paragraph))
    assert longest[0].startswith(f"    content/lessons/01-shed.md:{line}: 21 words: Mat strand")


def test_a_caution_is_read_too(content: Path) -> None:
    """Wherever a teacher writes, a sentence is a sentence."""
    file = content / "cautions.toml"
    text = file.read_text("utf-8")
    file.write_text(text.replace('text = "', f'text = "{WORDS} strand strand. ', 1), "utf-8")
    (mistake,) = [each for each in check_content(content)[1] if "words" in each.sentence]
    assert mistake.file == "content/cautions.toml"


def test_a_sentence_that_is_found_nowhere_stands_at_the_top() -> None:
    """Markdown may have taken it apart."""
    assert line_of("Nothing of the kind.", lesson_text(CHAIN)) == 1
