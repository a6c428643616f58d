"""Drops of mat laid as strips with shapely (a general-purpose geometry library).

So many strips with laps cover the run, and one fewer doesn't.
"""

import pytest
import shapely
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import answer, last_drop, mat_drops, pieces_in_run

DECK_MM = 4000


def laid(count: int, roll_mm: int, lap_mm: int) -> shapely.Geometry:
    """Return what so many strips cover, side by side from the edge, each lapped on the last."""
    lefts = [number * (roll_mm - lap_mm) for number in range(count)]
    return shapely.union_all([shapely.box(left, 0, left + roll_mm, DECK_MM) for left in lefts])


def test_whole_millimetres_and_not_floats() -> None:
    """2.90 m from a roll of 1.00 m with 50 mm laps take 3 drops, where floats give 4."""
    assert answer(mat_drops(2.90, 1000, 50)) == 3
    assert -(-(2.90 - 0.05) // (1.00 - 0.05)) == 4


@given(st.integers(100, 20_000), st.integers(310, 3000), st.integers(0, 300))
def test_drops_cover_the_run_and_one_fewer_does_not(run_mm: int, roll_mm: int, lap_mm: int) -> None:
    """The union of the strips, against the run as a rectangle."""
    assume(run_mm / (roll_mm - lap_mm) < 200)
    run = shapely.box(0, 0, run_mm, DECK_MM)
    drops = round(answer(mat_drops(run_mm / 1000, roll_mm, lap_mm)))
    assert shapely.covers(laid(drops, roll_mm, lap_mm), run)
    assert not shapely.covers(laid(drops - 1, roll_mm, lap_mm), run)


@given(st.integers(100, 20_000), st.integers(400, 3000), st.integers(0, 300))
def test_what_is_trimmed_is_what_lies_over_the_edge(run_mm: int, roll_mm: int, lap_mm: int) -> None:
    """The strips less the run, by area, over the length of a drop."""
    drops = round(answer(mat_drops(run_mm / 1000, roll_mm, lap_mm)))
    over = laid(drops, roll_mm, lap_mm).difference(shapely.box(0, 0, run_mm, DECK_MM))
    trimmed = answer(last_drop(run_mm / 1000, roll_mm, lap_mm))
    assert trimmed == pytest.approx(over.area / DECK_MM)


@given(st.integers(10, 100_000), st.integers(5000, 50_000), st.integers(0, 300))
def test_pieces_of_a_roll_reach_along_a_run_and_one_fewer_does_not(
    run_mm: int, roll_mm: int, lap_mm: int
) -> None:
    """Strips end to end, lapped, are the same sum another way round."""
    run = shapely.box(0, 0, run_mm, DECK_MM)
    pieces = round(answer(pieces_in_run(run_mm / 1000, roll_mm / 1000, lap_mm)))
    assert shapely.covers(laid(pieces, roll_mm, lap_mm), run)
    assert not shapely.covers(laid(pieces - 1, roll_mm, lap_mm), run)
