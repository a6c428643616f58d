"""Lengths, areas and masses added up, and mat with its laps."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    answer,
    line_keys,
    mat_with_laps,
    total_area,
    total_length,
    total_mass,
    work,
)

SIZES = st.lists(st.floats(0.01, 100), min_size=1, max_size=8).map(tuple)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(total_length) == line_keys(total_area) == line_keys(total_mass) == ("total",)
    assert line_keys(mat_with_laps) == ("layers", "laps", "mat")


def test_totals_by_hand() -> None:
    """5.2 + 2.9 + 5.2 + 2.9 m is 16.2 m; 1.5 and 0.25 are 1.75 of anything."""
    assert answer(total_length((5.2, 2.9, 5.2, 2.9))) == pytest.approx(16.2)
    assert answer(total_area((1.5, 0.25))) == pytest.approx(1.75)
    assert answer(total_mass((1.5, 0.25))) == pytest.approx(1.75)


def test_mat_with_laps_by_hand() -> None:
    """15.08 m² with two laps of 5.2 m by 50 mm: 0.52 m² lie double; 15.6 m² are laid."""
    figures = work(mat_with_laps(15.08, 10.4)).figures
    assert figures == pytest.approx({"layers": 15.08, "laps": 0.52, "mat": 15.6})


def test_two_layers_are_twice_the_deck() -> None:
    """Each layer has laps of its own, which are told with them."""
    assert answer(mat_with_laps(10, 0, 2)) == pytest.approx(20)


@given(SIZES)
def test_the_order_does_not_matter(sizes: tuple[float, ...]) -> None:
    """Whoever measures from the other end gets the same."""
    assert answer(total_length(sizes)) == pytest.approx(answer(total_length(sizes[::-1])))
