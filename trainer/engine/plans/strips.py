"""The strips of bandage in the order in which they are laid: far ones first, the way off last."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from trainer.engine.conversions import MM_PER_M
from trainer.engine.drivers import answer
from trainer.engine.outline import Outline, Point
from trainer.engine.plans.checks import opening_outline
from trainer.engine.plans.deck import Deck, Joint
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.openings import Rooflight
from trainer.engine.plans.sides import Corner, Side
from trainer.engine.plans.trims import TrimPlan
from trainer.engine.rolls import pieces_in_run

Over = Literal["edge", "joint", "kerb", "mitre", "trim join", "open end"]
#: The feet of a rooflight's kerb as its outline goes round, the lower one first.
_FEET = ("lower", "right", "upper", "left")


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip, or the patch over one open end; a joint that was only measured has no place."""

    number: int
    over: Over
    name: str
    length_m: float
    #: More than one where the run is longer than the roll; they lap.
    pieces: int = 1
    start: Point | None = None
    end: Point | None = None


def strips_in_order(
    roof: RoofDescription,
    sides: tuple[Side, ...],
    corners: tuple[Corner, ...],
    deck: Deck,
    trims: TrimPlan,
) -> Iterator[Strip]:
    """Yield the sides on from the ladder's, then joints and kerbs, and the ladder's side last.

    Joints and kerbs go from far to near, so that nobody kneels on wet work; the strips round one
    kerb follow one another. None has a number yet.
    """
    first = roof.way_off_edge
    laid: set[int] = set()
    *others, last = (*sides[first:], *sides[:first])
    for side in others:
        yield from _side(roof, side, laid, corners, trims)
    runs = [[_joint(roof, joint)] for joint in deck.joints] + list(_kerbs(roof, last))
    for run in sorted(runs, key=lambda strips: -_distance(strips, last)):
        yield from run
    for number, length in enumerate(deck.extra_joints_m, 1):
        yield _strip(roof, "joint", f"cut joint {number}", length)
    yield from _side(roof, last, laid, corners, trims)


def _side(
    roof: RoofDescription,
    side: Side,
    laid: set[int],
    corners: tuple[Corner, ...],
    trims: TrimPlan,
) -> Iterator[Strip]:
    """Yield a side's strip, the scraps over its trim joins, then the corners that it completes."""
    laid.add(side.number)
    yield _strip(roof, "edge", side.name, side.length.value, (side.start, side.end))
    scrap = roof.bandage.scrap_mm / MM_PER_M.value
    for join in trims.joins:
        if join.side == side.number:
            yield Strip(0, "trim join", f"trim join on side {side.number}", scrap, 1, join.at)
    for corner in corners:
        if side.number not in corner.sides or not laid.issuperset(corner.sides):
            continue
        if corner.makes == "mitre":
            yield Strip(0, "mitre", f"mitre at corner {corner.number}", scrap, 1, corner.at)
        if corner.makes == "open end":
            across = (roof.trims.end_width_mm + 2 * roof.bandage.wrap_mm) / MM_PER_M.value
            name = f"open end at corner {corner.number}"
            yield Strip(0, "open end", name, across, 1, corner.at)


def _joint(roof: RoofDescription, joint: Joint) -> Strip:
    name = f"joint {joint.number}"
    return _strip(roof, "joint", name, joint.length.value, (joint.start, joint.end))


def _kerbs(roof: RoofDescription, last: Side) -> Iterator[list[Strip]]:
    """Yield the strips along the feet of each rooflight's kerb, the far one first."""
    for number, opening in enumerate(roof.openings, 1):
        if isinstance(opening, Rooflight):
            feet = _feet(roof, number, opening_outline(opening))
            yield sorted(feet, key=lambda foot: -_distance([foot], last))


def _feet(roof: RoofDescription, number: int, kerb: Outline) -> Iterator[Strip]:
    """Yield a strip for each foot, as much longer as it laps round one corner of the kerb."""
    ends = pairwise((*kerb, kerb[0]))
    for side, (start, end) in zip(_FEET, ends, strict=True):
        length_m = (math.dist(start, end) + roof.laminate.lap_mm) / MM_PER_M.value
        name = f"rooflight {number}, {side} foot"
        yield _strip(roof, "kerb", name, length_m, (start, end))


def _strip(
    roof: RoofDescription,
    over: Over,
    name: str,
    length_m: float,
    ends: tuple[Point, Point] | tuple[None, None] = (None, None),
) -> Strip:
    roll_m, lap_mm = roof.sold.bandage_roll_m, roof.laminate.lap_mm
    pieces = int(answer(pieces_in_run.inside(length_m, roll_m, lap_mm))) if length_m > roll_m else 1
    return Strip(0, over, name, length_m, pieces, *ends)


def _distance(strips: Sequence[Strip], side: Side) -> float:
    """Return how far the middle of some strips lies from a side's line, in millimetres."""
    (x0, y0), (x1, y1) = side.start, side.end
    ends = [place for strip in strips for place in (strip.start, strip.end) if place]
    x, y = (sum(place[axis] for place in ends) / len(ends) for axis in (0, 1))
    return abs((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / side.length_mm
