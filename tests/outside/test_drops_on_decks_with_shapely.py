"""Drops of mat on random decks against shapely (a general-purpose geometry library).

Cuts on skew sides are rounded to whole millimetres, so areas agree to a millimetre along them.
"""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, unary_union
from test_decks_with_shapely import SOLD, stars

from trainer.engine.outline import Outline
from trainer.engine.plans.deck import deck_of
from trainer.engine.plans.description import Edge, Laminate, RoofDescription
from trainer.engine.plans.mat import MatPlan, mat_of
from trainer.engine.plans.sides import sides_of


def planned(corners: Outline, **laminate: float | str) -> MatPlan:
    """Return the mat of a roof of this outline."""
    edges = tuple(Edge("drip") for _ in corners)
    roof = RoofDescription("Invented", corners, edges, SOLD, laminate=Laminate(**laminate))  # type: ignore[arg-type]
    return mat_of(roof, deck_of(roof), sides_of(roof))


@settings(deadline=None)
@given(stars(), st.sampled_from(["along", "up"]), st.integers(1, 3))
def test_each_layer_covers_the_whole_deck(corners: Outline, run: str, layers: int) -> None:
    """Nothing is left bare, and nothing lies outside."""
    deck = Polygon(corners)
    plan = planned(corners, run=run, layers=layers)
    for layer in range(1, layers + 1):
        shapes = [
            Polygon(piece).buffer(0)
            for drop in plan.drops
            if drop.layer == layer
            for piece in drop.shape
        ]
        covered = unary_union(shapes)
        assert covered.symmetric_difference(deck).area <= deck.length * 2


@settings(deadline=None)
@given(stars(), st.integers(1, 2))
def test_the_mat_laid_is_what_the_drops_come_to(corners: Outline, layers: int) -> None:
    """Laps counted twice: the areas of the drops themselves, added up."""
    plan = planned(corners, layers=layers)
    drops = sum(Polygon(piece).area for drop in plan.drops for piece in drop.shape)
    assert plan.laid.value * 1e6 == pytest.approx(drops, rel=2e-3)


@settings(deadline=None)
@given(stars(), st.sampled_from(["along", "up"]))
def test_a_drop_reaches_over_both_its_ends(corners: Outline, run: str) -> None:
    """50 mm at each end are trimmed off; the roll is never wider than it is."""
    for drop in planned(corners, run=run).drops:
        for piece in drop.shape:
            left, low, right, high = Polygon(piece).bounds
            along, across = (
                (right - left, high - low) if run == "along" else (high - low, right - left)
            )
            assert drop.length_m * 1000 == pytest.approx(along + 100)
            assert across == pytest.approx(drop.width_mm)
            assert drop.width_mm + drop.trimmed_mm == 1000


@settings(deadline=None)
@given(stars())
def test_laps_of_two_layers_never_lie_over_each_other(corners: Outline) -> None:
    """They are shifted by 100 mm or more (FRP ships rules, 301), and no two meet."""
    plan = planned(corners, layers=2)
    assert plan.shift
    assert plan.shift.value >= 100
    laps = [Polygon(piece).buffer(0) for shape in plan.laps for piece in shape]
    for one, other in combinations(laps, 2):
        assert one.intersection(other).area == pytest.approx(0, abs=1)
