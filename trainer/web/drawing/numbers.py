"""Where the numbers of strips stand: on their strip where there is room, else beside it."""

from collections.abc import Iterator, Mapping

from trainer.engine.plans.bandage import Strip
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.layout import Layout, Tag, on_paper
from trainer.web.drawing.lines import Place, between, bisectors, moved, outward, towards
from trainer.web.drawing.room import box_round

#: The step that leads out, by the corner or trim join that it leads from.
Ways = Mapping[Place, Place]
#: Half the size of a number's disc; one of three digits is wider.
RADIUS = 16.0
_WIDE_RADIUS = 21.0
#: Nothing comes closer to a disc than this, and it moves on by such a step.
_AIR, _STEP = 2.0, 10.0
#: A strip up to this long is numbered in its middle.
_SHORT = 5 * RADIUS
#: A trim join's disc stands nearer to it than others do, in a row with what is said of its side.
_NEARER = -4.0
_STRAIGHT_OUT = 32.0


def radius_of(words: str) -> float:
    """Return the radius of a number's disc."""
    return RADIUS if len(words) < 3 else _WIDE_RADIUS


def ways_out(plan: RoofPlan) -> Ways:
    """Return the step of length one that leads out at each corner and each trim join."""
    corners = [corner.at for corner in plan.corners]
    ways: dict[Place, Place] = {
        corner: towards((0, 0), way)
        for corner, way in zip(corners, bisectors(corners), strict=True)
    }
    for join in plan.trims.joins:
        side = plan.sides[join.side - 1]
        ways.setdefault(join.at, outward(side.start, side.end))
    return ways


def number_corners(plan: RoofPlan, ways: Ways, layout: Layout) -> list[Tag]:
    """Return the numbers of the scraps and patches over corners, outside them."""
    return _outside(plan, {"mitre", "open end"}, ways, layout, 0.0)


def number_joins(plan: RoofPlan, ways: Ways, layout: Layout) -> list[Tag]:
    """Return the numbers of the scraps over trim joins, outside them."""
    return _outside(plan, {"trim join"}, ways, layout, _NEARER)


def keep_for_joins(plan: RoofPlan, ways: Ways, layout: Layout) -> None:
    """Keep the places straight out from the trim joins for their numbers."""
    for join in plan.trims.joins:
        at = moved(layout.paper.at(join.at), on_paper(ways[join.at]), _STRAIGHT_OUT)
        layout.keep(box_round(*at, 3 * RADIUS, 3 * RADIUS))


def _outside(plan: RoofPlan, over: set[str], ways: Ways, layout: Layout, clear: float) -> list[Tag]:
    tags = []
    for strip in plan.bandage.strips:
        if strip.over in over and strip.start:
            words, way = f"{strip.number}", on_paper(ways[strip.start])
            size = 2 * radius_of(words)
            foot = layout.paper.at(strip.start)
            tags.append(layout.put_round(words, foot, way, (size, size), clear))
    return tags


def number_joints(plan: RoofPlan, layout: Layout) -> list[Tag]:
    """Return the numbers of the strips round kerbs, and of those over joints.

    Short strips have the fewest places, and begin. Joints that were only measured have none.
    """
    feet = [_beside_kerb(each, layout) for each in plan.bandage.strips if each.over == "kerb"]
    strips = [each for each in plan.bandage.strips if each.over == "joint" and each.start]
    strips.sort(key=lambda each: each.length_m)
    return feet + [_on_strip(each, layout) for each in strips]


def _beside_kerb(strip: Strip, layout: Layout) -> Tag:
    """Return the number of a strip along a kerb, straight out from it where there is room."""
    start, end = strip.start or (0, 0), strip.end or (0, 0)
    words = f"{strip.number}"
    size = 2 * radius_of(words)
    middle = layout.paper.at(between(start, end, 0.5))
    return layout.put_round(words, middle, on_paper(outward(start, end)), (size, size), _NEARER)


def _on_strip(strip: Strip, layout: Layout) -> Tag:
    start, end = layout.paper.at(strip.start or (0, 0)), layout.paper.at(strip.end or (0, 0))
    words, level = f"{strip.number}", start[1] == end[1]
    size = 2 * radius_of(words)
    for at in _along(start, end):
        if layout.is_clear_on(box_round(*at, size + _AIR, size + _AIR), level=level):
            return layout.written(Tag(words, at), (size, size))
    way = (0.0, -1.0) if level else (1.0, 0.0)
    return layout.put_round(words, between(start, end, 0.5), way, (size, size))


def _along(start: Place, end: Place) -> Iterator[Place]:
    """Yield places on a strip: a level one's from the left on, so that numbers stand in columns.

    The middle of a short one, and of an upright one, comes first.
    """
    length = abs(end[0] - start[0]) + abs(end[1] - start[1])
    steps = int((length - 2 * RADIUS) // _STEP)
    places = [RADIUS + 2 + step * _STEP for step in range(steps + 1)]
    if start[0] == end[0] or length < _SHORT:
        places = sorted((length / 2, *places), key=lambda place: abs(place - length / 2))
    for place in places if steps >= 0 else ():
        yield between(start, end, place / length)
