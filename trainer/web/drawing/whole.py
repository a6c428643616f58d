"""The size of the whole roof, where no side tells it."""

from trainer.engine import outline
from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.layout import Layout, Tag
from trainer.web.drawing.marks import line
from trainer.web.drawing.paper import LETTER, MARGIN
from trainer.web.drawing.room import Box
from trainer.web.drawing.sides import BESIDE, metres

#: From the roof to the line along its size, from that to the words, and half a tick at its ends.
_LINE, _WORDS, _TICK = MARGIN + 8, 15.0, 6.0


def is_told(plan: RoofPlan, axis: int) -> bool:
    """Whether a side tells how long (axis 0) or how wide (axis 1) the whole roof is."""
    low, high = outline.extent(plan.description.corners)
    size = high[axis] - low[axis]
    return any(
        abs(side.end[axis] - side.start[axis]) == side.length_mm == size for side in plan.sides
    )


def write_height(plan: RoofPlan, layout: Layout) -> tuple[Tag, str]:
    """Return how wide the whole roof is, to the left of it, and the line to read it by."""
    low, high = outline.extent(plan.description.corners)
    (left, bottom), (_, top) = layout.paper.at(low), layout.paper.at(high)
    x = left - _LINE
    tag = Tag(_whole(low[1], high[1]), (x - _WORDS, (top + bottom) / 2), None, -90)
    layout.take([Box(x - _WORDS - LETTER / 2, top, x + _TICK, bottom)])
    ticks = "".join(line((x - _TICK, y), (x + _TICK, y)) for y in (top, bottom))
    return tag, line((x, top), (x, bottom)) + ticks


def write_width(plan: RoofPlan, layout: Layout) -> tuple[Tag, str]:
    """Return how long the whole roof is, below everything, and the line to read it by."""
    low, high = outline.extent(plan.description.corners)
    (left, bottom), (right, _) = layout.paper.at(low), layout.paper.at(high)
    y = max(bottom + BESIDE, layout.reach[1]) + 2 * _TICK
    tag = Tag(_whole(low[0], high[0]), ((left + right) / 2, y + _WORDS + 2))
    layout.take([Box(left, y - _TICK, right, y + _WORDS + LETTER)])
    ticks = "".join(line((x, y - _TICK), (x, y + _TICK)) for x in (left, right))
    return tag, line((left, y), (right, y)) + ticks


def _whole(low_mm: int, high_mm: int) -> str:
    return f"{metres((high_mm - low_mm) / MM_PER_M.value)} in all"
