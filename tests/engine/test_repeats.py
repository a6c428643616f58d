"""Lists as people type them, the same in a terminal, in a file and in a form."""

import pytest

from trainer.engine import NotAFigure
from trainer.engine.repeats import repeats_in, shortened


def test_a_size_stands_for_itself_or_for_several() -> None:
    """Three joints of 2.4 m, then one of twelve and a half feet."""
    assert list(repeats_in("2.4:3, 12'6\"")) == [("2.4", 3), (" 12'6\"", 1)]


@pytest.mark.parametrize("text", ["2.4:", "2.4:0", "2.4:-1", "2.4:1.5", "2.4:1000", "2.4:x"])
def test_a_count_is_a_whole_number_from_one_on(text: str) -> None:
    """And of three digits at most: more is a slip of the keyboard."""
    with pytest.raises(NotAFigure, match=r"count after '2\.4:'"):
        list(repeats_in(text))


def test_a_long_text_is_not_repeated_whole() -> None:
    """Nor are signs that can't be seen."""
    assert shortened("x" * 50) == "x" * 40 + "…"
    assert shortened("a\0b") == "a?b"
