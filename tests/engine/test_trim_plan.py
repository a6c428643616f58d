"""Trims of a roof: pieces, joins, and the lengths they are cut from."""

import pytest
from roofs_cast import ell, garage

from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.sides import corners_of, sides_of
from trainer.engine.plans.trims import TrimPlan, trims_of


def trims(roof: RoofDescription) -> TrimPlan:
    """Return the trims of a roof."""
    sides = sides_of(roof)
    return trims_of(roof, sides, corners_of(roof, sides))


def test_the_trims_of_the_garage() -> None:
    """5.2 m takes a length of 3.0 and 2.2 m more; two raised sides of 2.9 m take a length each."""
    assert [(run.kind, run.pieces_mm, len(run.cuts.bars)) for run in trims(garage()).runs] == [
        ("drip", (3000, 2200), 2),
        ("raised", (2900, 2900), 2),
        ("wall", (3000, 2200), 2),
    ]


def test_what_no_plan_can_beat() -> None:
    """5.8 m of raised trim out of 3 m is two lengths, whoever cuts."""
    runs = trims(garage()).runs
    assert [run.bound.value for run in runs] == [2, 2, 2]
    assert [run.length.value for run in runs] == pytest.approx([5.2, 5.8, 5.2])
    assert [run.cuts.verdict for run in runs] == ["fewest possible"] * 3


def test_a_join_lies_where_a_length_ends() -> None:
    """Three metres from the side's own corner, on the wall behind from right to left."""
    joins = [(join.side, join.at) for join in trims(garage()).joins]
    assert joins == [(1, (3000, 0)), (3, (2200, 2900))]


def test_a_side_of_just_one_length_has_no_join() -> None:
    """The L's short sides of 4.0 and 4.5 m have one each, the long ones of 9 and 8 m two."""
    joins = trims(ell()).joins
    assert [sum(join.side == side for join in joins) for side in range(1, 7)] == [2, 1, 1, 1, 1, 2]


def test_corners_are_counted() -> None:
    """Two open ends in front of the garage; the L's walls meet in a mitre."""
    assert (trims(garage()).mitres, trims(garage()).open_ends) == (0, 2)
    assert (trims(ell()).mitres, trims(ell()).open_ends) == (1, 1)
