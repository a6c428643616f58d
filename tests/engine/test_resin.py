"""Resin in litres and kilograms, and the board for what is left.

1.10 kg/L for liquid resin: common practice, no published source.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    Refused,
    answer,
    line_keys,
    resin_kilograms,
    resin_left,
    resin_litres,
    spread_board,
    work,
)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(resin_litres) == ("litres",)
    assert line_keys(resin_kilograms) == ("resin",)
    assert line_keys(resin_left) == ("left",)
    assert line_keys(spread_board) == ("area",)


def test_litres_and_kilograms() -> None:
    """1.32 kg at 1.10 kg/L fill 1.2 L, and 1.2 L weigh 1.32 kg."""
    assert answer(resin_litres(1.32)) == pytest.approx(1.2)
    assert answer(resin_kilograms(1.2)) == pytest.approx(1.32)


def test_at_one_kilogram_a_litre_they_are_the_same() -> None:
    """Where a litre weighs a kilogram the figure doesn't change."""
    assert answer(resin_litres(7, 1.0)) == answer(resin_kilograms(7, 1.0)) == 7


@given(st.floats(0.01, 1500), st.floats(0.95, 1.30))
def test_litres_and_kilograms_there_and_back(resin_kg: float, density: float) -> None:
    """Into litres and back again is what one started with, at any density."""
    litres = answer(resin_litres(resin_kg, density))
    assert answer(resin_kilograms.inside(litres, density)) == pytest.approx(resin_kg)


def test_what_is_left_in_the_bucket() -> None:
    """1.2 L mixed and 0.9 L laid leave 0.3 L; all laid leaves nothing."""
    assert answer(resin_left(1.2, 0.9)) == pytest.approx(0.3)
    assert answer(resin_left(1.2, 1.2)) == 0


def test_more_laid_than_mixed_is_refused() -> None:
    """Each figure is in range; together they can't be."""
    with pytest.raises(Refused, match="More was laid than mixed"):
        work(resin_left(0.9, 1.2))


def test_a_litre_covers_a_square_metre_a_millimetre_thick() -> None:
    """0.3 L spread 2 mm thick needs 0.15 m²."""
    assert answer(spread_board(1, 1)) == pytest.approx(1)
    assert answer(spread_board(0.3, 2)) == pytest.approx(0.15)


@given(st.floats(0.01, 25), st.floats(1, 5))
def test_half_the_thickness_needs_twice_the_board(left_l: float, film_mm: float) -> None:
    """Thin is wide: board times thickness stays the litres that are left."""
    board = answer(spread_board(left_l, film_mm))
    assert answer(spread_board(left_l, film_mm / 2)) == pytest.approx(2 * board)
    assert board * film_mm == pytest.approx(left_l)
