"""Polygons of a roof in whole millimetres: areas, cuts and level lines."""

import pytest
from roofs_cast import ELL, GARAGE

from trainer.engine import outline
from trainer.engine.outline import Outline

HOLE = outline.box((1000, 1000), (2200, 1900))


def test_a_hole_is_taken_off() -> None:
    """15.08 m² less 1.2 by 0.9 m is 14 m²."""
    left = outline.without((GARAGE,), (HOLE,))
    assert outline.area_mm2(left) == 15_080_000 - 1_080_000


def test_what_two_shapes_have_in_common() -> None:
    """A metre across the garage is 5.2 m²; beside it there is nothing."""
    band = outline.box((-500, 0), (9000, 1000))
    assert outline.area_mm2(outline.common((band,), (GARAGE,))) == 5_200_000
    assert outline.common((outline.box((6000, 0), (7000, 1000)),), (GARAGE,)) == ()


def test_nothing_taken_off_leaves_all() -> None:
    """A roof without openings is its outline."""
    assert outline.without((GARAGE,), ()) == (GARAGE,)
    assert outline.common((GARAGE,), ()) == ()


def test_a_level_line_runs_from_edge_to_edge_and_round_a_hole() -> None:
    """Left of the hole and right of it."""
    shape = outline.without((GARAGE,), (HOLE,))
    assert outline.level_spans(shape, 1500) == [(0, 1000), (2200, 5200)]
    assert outline.level_spans(shape, 500) == [(0, 5200)]


def test_a_line_along_an_edge_has_nothing_on_one_hand() -> None:
    """At 4 m the L's line runs inside for 4.5 m, then along its edge; there is no joint there."""
    assert outline.level_spans((ELL,), 4000) == [(0, 4500)]
    assert outline.level_spans((ELL,), 0) == []
    assert outline.level_spans((ELL,), 8000) == []


def test_a_point_on_an_edge_or_in_a_hole_is_not_inside() -> None:
    """A tape's end there stops; it meets no joint."""
    shape = outline.without((GARAGE,), (HOLE,))
    assert outline.contains(shape, (500, 500))
    for point in ((0, 500), (1500, 1500), (1000, 1500), (6000, 0)):
        assert not outline.contains(shape, point)


def test_a_turned_shape_is_turned_back() -> None:
    """Twice turned is as it was, and its area stays above zero."""
    once = outline.turned((ELL,))
    assert outline.area_mm2(once) == outline.area_mm2((ELL,)) == 54_000_000
    assert outline.turned(once) == (ELL,)


@pytest.mark.parametrize(
    "corners",
    [
        ((0, 0), (3000, 3000), (3000, 0), (0, 2000)),  # crossing
        ((0, 0), (3000, 0), (3000, 2000), (1500, 0), (0, 2000)),  # a corner on another side
        ((2000, 0), (0, 1000), (1000, 0), (0, 0), (0, 2000)),  # a side through a corner
        ((0, 0), (3000, 0), (2000, 0), (3000, 2000), (0, 2000)),  # back along itself
        ((0, 0), (3000, 0), (6000, 0)),  # on a line
    ],
)
def test_an_outline_that_is_not_simple(corners: Outline) -> None:
    """Its sides cross, touch or run back on each other."""
    assert not outline.is_simple(corners)


@pytest.mark.parametrize("corners", [GARAGE, ELL, ((0, 0), (3000, 0), (6000, 0), (0, 4000))])
def test_an_outline_that_is_simple(corners: Outline) -> None:
    """A corner in the middle of a straight side does no harm."""
    assert outline.is_simple(corners)
