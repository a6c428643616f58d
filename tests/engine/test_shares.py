"""Shares in words, as somebody says them who looks at the clock."""

import pytest

from trainer.engine.shares import share_in_words


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (2 / 3, "two thirds"),
        (0.6667, "two thirds"),
        (0.5, "half"),
        (0.75, "three quarters"),
        (0.8, "four fifths"),
        (0.4, "two fifths"),
        (1 / 3, "one third"),
        (5 / 8, "five eighths"),
        (0.7, "seven tenths"),
    ],
)
def test_a_simple_share_is_said_in_words(share: float, words: str) -> None:
    """In the largest parts that it can be said in: two fifths, not four tenths."""
    assert share_in_words(share) == words


@pytest.mark.parametrize(
    ("share", "figure"), [(0.62, "0.62"), (0.667, "0.667"), (1, "1"), (0, "0"), (1.5, "1.5")]
)
def test_any_other_number_stays_a_figure(share: float, figure: str) -> None:
    """Nobody says thirty-one fiftieths; and the whole, or more than it, is no share."""
    assert share_in_words(share) == figure
