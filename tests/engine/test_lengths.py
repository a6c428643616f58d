"""Lengths put end to end, and short lengths that come back."""

import pytest

from trainer.engine import Part
from trainer.engine.lengths import joined, repeated


def test_lengths_are_put_end_to_end() -> None:
    """Three boards of 2.4, 3.6 and 1.2 m are 7.2 m, by hand."""
    line = joined("joints", "all open joints", "joint", (2.4, 3.6, 1.2))
    assert line.value == pytest.approx(7.2)
    assert line.in_words() == "joint 1 + joint 2 + joint 3"


def test_a_short_length_comes_back() -> None:
    """Six ends of 50 mm are 0.3 m, by hand."""
    line = repeated("carried", "carried", Part(6, "", "ends"), Part(50, "mm", "carry"))
    assert (line.value, line.unit) == (pytest.approx(0.3), "m")


def test_no_times_are_no_length() -> None:
    """Where no end meets a joint nothing is carried."""
    line = repeated("carried", "carried", Part(0, "", "ends"), Part(50, "mm", "carry"))
    assert line.value == 0
