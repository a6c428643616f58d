"""The arrow along which water runs, and the fall beside it."""

from collections.abc import Iterator

from trainer.engine import outline
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.units import figure
from trainer.web.drawing.layout import Layout, Tag, on_paper, width_of
from trainer.web.drawing.lines import Place, between, moved
from trainer.web.drawing.marks import Layer, Path, arrow, behind, line, words
from trainer.web.drawing.paper import LETTER
from trainer.web.drawing.room import box_round

_LENGTH, _HEAD, _AIR = 90.0, 9.0, 6.0
#: From one place that is tried to the next.
_STEP = 20.0


def fall_layer(plan: RoofPlan, layout: Layout) -> Layer:
    """Return the arrow with its words, where nothing else lies, as near the middle as can be."""
    told = f"fall 1:{figure(plan.description.fall.ratio)}"
    way = on_paper(plan.fall.direction)
    upright = abs(way[1]) > abs(way[0])
    across = abs(way[0]) * _LENGTH + abs(way[1]) * 2 * _HEAD
    down = abs(way[1]) * _LENGTH + abs(way[0]) * 2 * _HEAD
    wide, high = width_of(told), LETTER
    size = (wide + across, max(high, down)) if upright else (max(wide, across), high + down)
    at = _free(plan, layout, (size[0] + _AIR, size[1] + _AIR))
    layout.take([box_round(*at, *size)])
    if upright:
        middle, place = (at[0] - wide / 2, at[1]), (at[0] + across / 2, at[1])
    else:
        middle, place = (at[0], at[1] + high / 2), (at[0], at[1] - down / 2)
    start, end = moved(middle, way, -_LENGTH / 2), moved(middle, way, _LENGTH / 2)
    tag = Tag(told, place, place)
    shaft = Path(
        "fall-arrow", line(start, end) + arrow(start, end, _HEAD), "The way that water runs"
    )
    return Layer("fall", "Fall", (behind([tag]), shaft), words=(words(tag),))


def _free(plan: RoofPlan, layout: Layout, size: tuple[float, float]) -> Place:
    """Return the place nearest the roof's middle where a box lies on the roof and on nothing else.

    Where the roof has none it lies beside it.
    """
    shape, beside = (plan.description.corners,), None
    low, high = outline.extent(plan.description.corners)
    middle = layout.paper.at(between(low, high, 0.5))
    rings = int(max(high[0] - low[0], high[1] - low[1]) * layout.paper.scale / 2 / _STEP) + 9
    for across, down in _rings(rings):
        at = middle[0] + across * _STEP, middle[1] + down * _STEP
        if layout.is_clear(box_round(*at, *size)):
            if outline.contains(shape, _on_roof(layout, at)):
                return at
            beside = beside or at
    return beside or middle


def _rings(most: int) -> Iterator[tuple[int, int]]:
    """Yield steps across and down, square ring by square ring, the middle first."""
    yield 0, 0
    for ring in range(1, most):
        for along in range(-ring, ring + 1):
            yield from ((along, -ring), (along, ring))
        for along in range(1 - ring, ring):
            yield from ((-ring, along), (ring, along))


def _on_roof(layout: Layout, at: Place) -> tuple[int, int]:
    paper = layout.paper
    return round((at[0] - paper.left) / paper.scale), round((paper.base - at[1]) / paper.scale)
