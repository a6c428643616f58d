"""What the check proves of the glossary: each marked word is explained, and each word is met."""

from pathlib import Path

import pytest
from lessons_specimens import edited, lesson_text, line_of

from trainer.lessons.check import check_content
from trainer.lessons.errors import AuthorError

CLOUD = "The cloud is coming up over the hill."
STRIP = "strip\nalso: strips\n: A narrow piece of mat.\n"


def mistakes(content: Path, glossary: str, prose: str = CLOUD) -> list[AuthorError]:
    """Return what is wrong with the tiny content, given these words and this prose."""
    (content / "glossary.md").write_text(glossary, "utf-8")
    text = edited(lesson_text(), CLOUD, prose)
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    return check_content(content)[1]


def test_a_word_that_is_used_is_well(content: Path) -> None:
    """Once is enough, in a caption or a question too."""
    assert mistakes(content, STRIP) == []
    assert mistakes(content, STRIP, "The [[strip]] waits, and two [[strips]].") == []


def test_a_marked_word_must_be_explained(content: Path) -> None:
    """The line is named, and a word that is nearly it."""
    prose = "The [[stripp]] waits."
    (mistake,) = mistakes(content, STRIP, prose)
    line = line_of(edited(lesson_text(), CLOUD, prose), prose)
    assert (mistake.file, mistake.line, mistake.text) == ("content/lessons/01-shed.md", line, prose)
    assert mistake.sentence == "The word 'stripp' isn't explained in content/glossary.md."
    assert mistake.mend == "Did you mean 'strip'?"


def test_a_marked_word_far_from_all_others_is_to_be_added(content: Path) -> None:
    """No guess is better than a wild one."""
    (mistake,) = mistakes(content, STRIP, "The [[theodolite]] waits.")
    assert mistake.mend == "Add it there, with its sentence."


def test_a_word_that_no_lesson_uses_is_named(content: Path) -> None:
    """By its line in the glossary."""
    (mistake,) = mistakes(content, f"{STRIP}\ntheodolite\n: What surveyors look through.\n")
    assert (mistake.file, mistake.line) == ("content/glossary.md", 5)
    assert mistake.sentence == "No lesson uses 'theodolite'."
    assert mistake.text == "theodolite"
    assert mistake.mend


@pytest.mark.parametrize(
    ("said", "sentence"),
    [
        ("A narrow piece. Of mat.", "'strip' is explained in one sentence, with a full stop."),
        ("A narrow piece", "'strip' is explained in one sentence, with a full stop."),
        ("A " + "narrow " * 24 + "piece.", "This sentence has 26 words; 25 are the most."),
    ],
)
def test_a_word_has_one_short_sentence(content: Path, said: str, sentence: str) -> None:
    """Not two, none without a full stop, and at most 25 words."""
    (mistake,) = mistakes(content, f"strip\n: {said}\n")
    assert (mistake.line, mistake.sentence, mistake.text) == (1, sentence, said)
