"""Roofs that tests plan. All are invented; sizes to buy in are too."""

from collections.abc import Sequence
from typing import Any

from trainer.engine.plans.description import Edge, EdgeKind, RoofDescription, Sold

SOLD = Sold(
    tape_roll_m=20,
    bandage_roll_m=30,
    mat_roll_mm=1000,
    mat_roll_m=30,
    trim_m=3,
    resin_tin_kg=20,
    catalyst_bottle_ml=500,
    topcoat_tin_kg=20,
)
DRIP: EdgeKind = "drip"
RAISED: EdgeKind = "raised"
WALL: EdgeKind = "wall"

#: A garage: 5.2 by 2.9 m, a drip edge in front, raised sides, a wall behind.
GARAGE = ((0, 0), (5200, 0), (5200, 2900), (0, 2900))
GARAGE_EDGES = (DRIP, RAISED, WALL, RAISED)
#: An L of 54 m²: 9 by 8 m with a corner of 4.5 by 4 m missing at the upper right.
ELL = ((0, 0), (9000, 0), (9000, 4000), (4500, 4000), (4500, 8000), (0, 8000))
ELL_EDGES = (DRIP, RAISED, WALL, WALL, RAISED, WALL)


def roof(
    corners: Sequence[tuple[int, int]] = GARAGE,
    kinds: Sequence[EdgeKind] | None = None,
    **more: Any,
) -> RoofDescription:
    """Return a roof of this outline; each side is a drip edge unless it is told otherwise."""
    edges = tuple(Edge(kind) for kind in kinds or [DRIP] * len(corners))
    sold = more.pop("sold", SOLD)
    return RoofDescription("A roof of our own", tuple(corners), edges, sold, **more)


def garage(**more: Any) -> RoofDescription:
    """Return the garage."""
    return roof(GARAGE, GARAGE_EDGES, **more)


def ell(**more: Any) -> RoofDescription:
    """Return the L."""
    return roof(ELL, ELL_EDGES, **more)
