"""What the check proves of questions on roofs, by working them on the sample roofs."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from lessons_specimens import edited, line_of

from trainer.lessons import AuthorError, Library, read_library
from trainer.lessons.roof_check import FEWEST_ON_A_ROOF, check_on_roofs
from trainer.lessons.roof_questions import RoofQuestions, read_roof_questions

CONTENT = Path(__file__).parents[2] / "content"
TEXT = (CONTENT / "roof-questions.md").read_text("utf-8")
HALF_SHIFT = "given.off_centre_mm = {times = 0.5}"


@pytest.fixture(scope="module")
def library() -> Library:
    """The real content, whose sample roofs are worked on."""
    return read_library(CONTENT)


def mistakes(library: Library, asked: RoofQuestions, *roofs: str) -> Iterator[AuthorError]:
    """Return what is wrong with some questions on some of the sample roofs."""
    return check_on_roofs(asked, {name: library.roofs[name] for name in roofs})


def only(question_id: str, text: str = TEXT) -> RoofQuestions:
    """Return the file with one of its questions alone."""
    front, _, _ = text.partition("\n## ")
    blocks = text.split("```question\n")[1:]
    block = next(each for each in blocks if f'id = "{question_id}"' in each)
    return read_roof_questions(f"{front}\n```question\n{block.partition('```')[0]}```\n")


def test_a_roof_gets_enough_questions(library: Library) -> None:
    """One alone is no evening's practice."""
    first, *_ = mistakes(library, only("roof-fall"), "garage")
    assert first.sentence == "The roof 'garage' can be asked 1 questions alone."
    assert first.mend == f"It takes {FEWEST_ON_A_ROOF} at least."


def test_a_question_that_no_roof_is_asked_is_named(library: Library) -> None:
    """A garage has no pipe; the line is the one on which the question begins."""
    asked = only("roof-pipe-collar")
    *_, last = mistakes(library, asked, "garage")
    assert last.sentence == "Question 'roof-pipe-collar': no sample roof can be asked it."
    assert last.line == line_of(asked.text, 'id = "roof-pipe-collar"')


def test_a_slip_that_no_roof_lets_happen_is_named(library: Library) -> None:
    """One that shifts the tape by nothing explains nobody's figure."""
    text = edited(TEXT, HALF_SHIFT, "given.off_centre_mm = {times = 1}")
    *_, last = mistakes(library, only("roof-bare-board", text), "garage")
    assert last.sentence == (
        "Question 'roof-bare-board': the slip 'half the shift taken off' "
        "can be made on no sample roof."
    )


def test_slips_that_are_not_told_apart_are_named_with_their_roof(library: Library) -> None:
    """Both halve the shift."""
    twin = f'{HALF_SHIFT}\n[[slips]]\nname = "a twin"\ncue = "Which?"\non = "narrow"\n{HALF_SHIFT}'
    asked = only("roof-bare-board", edited(TEXT, HALF_SHIFT, twin))
    sentences = [each.sentence for each in mistakes(library, asked, "garage")]
    assert sentences[1].startswith(
        "Question 'roof-bare-board' on the roof 'garage': "
        "the slip 'half the shift taken off' is told from the others in only 0 of "
    )
    assert len(sentences) == 3


def test_a_question_takes_two_slips(library: Library) -> None:
    """As in a lesson, before any is left out on a roof."""
    start = TEXT.index('[[slips]]\nname = "half the shift taken off"')
    end = TEXT.index("```", start)
    asked = only("roof-bare-board", TEXT[:start] + TEXT[end:])
    *_, last = mistakes(library, asked, "garage")
    assert last.sentence == ("Question 'roof-bare-board': it takes 2 slips at least, and knows 1.")


def test_without_questions_or_roofs_there_is_nothing_to_find(library: Library) -> None:
    """A firm's folder may lack either."""
    assert list(mistakes(library, library.roof_questions)) == []
    assert (
        list(check_on_roofs(read_roof_questions(TEXT.partition("\n## ")[0]), library.roofs)) == []
    )
