"""Lines of a drawing in millimetres of the roof: bands along them, and what lies beside an edge."""

import math
from collections.abc import Sequence

#: A place between whole millimetres: x to the right, y up.
Place = tuple[float, float]

#: An acute corner runs out no further than a corner of about 40 degrees does.
_BLUNT = 0.25


def towards(start: Place, end: Place) -> Place:
    """Return the step of length one from a place to another."""
    across, up = end[0] - start[0], end[1] - start[1]
    length = math.hypot(across, up)
    return across / length, up / length


def outward(start: Place, end: Place) -> Place:
    """Return the step of length one out of the roof, square to a side of it.

    Sides go anticlockwise, so outside is on their right.
    """
    across, up = towards(start, end)
    return up, -across


def between(start: Place, end: Place, share: float) -> Place:
    """Return the place that lies a share of the way from a place to another."""
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def moved(place: Place, step: Place, distance: float) -> Place:
    """Return a place moved some way along a step."""
    return place[0] + step[0] * distance, place[1] + step[1] * distance


def bisectors(corners: Sequence[Place]) -> list[Place]:
    """Return for each corner the way that it moves when all sides move out by one."""
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    after = [outward(start, end) for start, end in sides]
    return [_bisector(*pair) for pair in zip((after[-1], *after[:-1]), after, strict=True)]


def _bisector(one: Place, other: Place) -> Place:
    open_by = max(_BLUNT, 1 + one[0] * other[0] + one[1] * other[1])
    return (one[0] + other[0]) / open_by, (one[1] + other[1]) / open_by


def beside(corners: Sequence[Place], out: float) -> list[Place]:
    """Return the outline with each side moved out by a distance, or in where it is below zero."""
    steps = bisectors(corners)
    return [moved(corner, step, out) for corner, step in zip(corners, steps, strict=True)]


def foot(start: Place, end: Place, width: float) -> list[Place]:
    """Return the outline of a band outside a line, cut at its ends to meet those round corners."""
    out, on = outward(start, end), towards(start, end)
    far_end = moved(moved(end, out, width), on, width)
    return [start, end, far_end, moved(moved(start, out, width), on, -width)]


def band(start: Place, end: Place, width: float) -> list[Place]:
    """Return the outline of a band of some width along a line."""
    out, half = outward(start, end), width / 2
    right = [moved(start, out, half), moved(end, out, half)]
    return [*right, moved(end, out, -half), moved(start, out, -half)]
