"""What an invented person answers: to questions of every kind, rightly or not."""

from pathlib import Path

import pytest

from trainer.cli.demo_answers import answered
from trainer.lessons import Question, read_library

CONTENT = Path(__file__).parents[2] / "content"
EVERY = list(read_library(CONTENT).questions.values())
KINDS = sorted({each.kind for each in EVERY})


def test_the_lessons_ask_every_kind() -> None:
    """So that a demo shows each of them."""
    assert KINDS == ["calculate", "choose", "locate", "order"]


@pytest.mark.parametrize("question", EVERY, ids=lambda each: each.id)
def test_each_question_is_answered_both_ways(question: Question) -> None:
    """Right is right and wrong is wrong, whatever is asked."""
    drawn, _ = question.next_drawn("luck", [])
    assert answered(drawn, right=True).right
    assert not answered(drawn, right=False).right
