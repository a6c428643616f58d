"""The second picture of a roof: drops of mat with their laps, and the way that water runs."""

from collections.abc import Iterator

from trainer.engine import outline
from trainer.engine.outline import Point, Shape
from trainer.engine.plans.mat import Drop
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.layout import Layout, Tag, width_of
from trainer.web.drawing.lines import Place
from trainer.web.drawing.marks import Layer, Path, leads, plate
from trainer.web.drawing.paper import LETTER, Paper
from trainer.web.drawing.room import box_round

#: A drop's number stands in a box of this height.
HIGH = LETTER + 4.0
_AIR = 1.0
#: From the end of a drop to its number, and from one try to the next.
_IN, _STEP = 40.0, 12.0
#: What is left of a drop beyond the last try.
_LEFT = 24.0


def mat_layer(plan: RoofPlan, paper: Paper) -> Layer:
    """Return the first layer's drops with their laps hatched, and later layers' in dashes."""
    between_drops = max(0, round(plan.mat.drops_in_layer[0].value) - 1)
    laps = (piece for shape in plan.mat.laps[:between_drops] for piece in shape)
    paths = [
        Path("glass", paper.shapes(_shapes(plan, 1))),
        Path("hatch-lap", paper.shapes(laps)),
        *(
            Path(f"later later-{layer}", paper.shapes(_shapes(plan, layer)))
            for layer in range(2, plan.description.laminate.layers + 1)
        ),
    ]
    return Layer("mat", "Mat", tuple(path for path in paths if path.d))


def _shapes(plan: RoofPlan, layer: int) -> Iterator[tuple[Point, ...]]:
    for drop in plan.mat.drops:
        if drop.layer == layer:
            yield from drop.shape


def number_drops(plan: RoofPlan, layout: Layout) -> list[tuple[int, Tag]]:
    """Return the numbers of the drops by layer: the first layer's near one end, others' further."""
    return [
        (drop.layer, _numbered(drop, layout, level=plan.mat.run == "along"))
        for drop in plan.mat.drops
    ]


def size_of(words: str) -> tuple[float, float]:
    """Return the size of the box that a drop's number stands in."""
    return width_of(words) + 16.0, HIGH


def _numbered(drop: Drop, layout: Layout, *, level: bool) -> Tag:
    wide, high = size_of(drop.name)
    places = list(_along(drop, layout.paper, level=level))
    for at in places:
        if layout.is_clear(box_round(*at, wide + _AIR, high + _AIR)):
            return layout.written(Tag(drop.name, at), (wide, high))
    way = (0.0, -1.0) if level else (1.0, 0.0)
    return layout.put_round(drop.name, places[0], way, (wide, high))


def _along(drop: Drop, paper: Paper, *, level: bool) -> Iterator[Place]:
    """Yield places along the middle of a drop, from its lower or left end; odd layers begin there.

    Even layers begin at the other end.
    """
    low, high = _widest(drop.shape, level=level)
    start, end = paper.at(low), paper.at(high)
    length = abs(end[0] - start[0]) + abs(end[1] - start[1])
    if drop.layer % 2 == 0:
        start, end = end, start
    steps = max(0, int((length - _IN - _LEFT) // _STEP))
    for step in range(steps + 1):
        share = min(0.5, _IN / length) if not step else (_IN + step * _STEP) / length
        yield start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def _widest(shape: Shape, *, level: bool) -> tuple[Place, Place]:
    """Return the longest line along the middle of a drop that lies on it."""
    lying = shape if level else outline.turned(shape)
    low, high = outline.extent([each for path in lying for each in path])
    middle = (low[1] + high[1]) // 2
    spans = outline.level_spans(lying, middle) or [(low[0], high[0])]
    left, right = max(spans, key=lambda span: span[1] - span[0])
    start, end = (left, middle), (right, middle)
    return (start, end) if level else (start[::-1], end[::-1])


def numbers_layer(tags: list[tuple[int, Tag]]) -> Layer:
    """Return the numbers of the drops; a later layer's stand in dashes."""
    plates = tuple(
        plate(tag, size_of(tag.words), f"number later later-{layer}" if layer > 1 else "number")
        for layer, tag in tags
    )
    return Layer("numbers", "Drops", (leads([tag for _, tag in tags]),), plates=plates)
