"""What comes up through a deck: rooflights with their kerbs, pipes, and outlets with a cross."""

from collections.abc import Iterator

from trainer.engine import outline
from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.checks import opening_outline
from trainer.engine.plans.openings import Opening, Outlet, Pipe
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.layout import Layout, Tag, width_of
from trainer.web.drawing.lines import Place
from trainer.web.drawing.marks import Layer, Path, behind, leads, line, unit, words
from trainer.web.drawing.paper import LETTER, Paper
from trainer.web.drawing.room import Box, box_round

#: The least that can be seen of a pipe, and the width of a kerb as it is drawn.
_LEAST_RADIUS, _KERB = 6.0, 5.0
_AIR = 8.0


def name_of(number: int, opening: Opening) -> str:
    """Return what an opening is called: "pipe 2"."""
    return f"{type(opening).__name__.lower()} {number}"


def take_openings(plan: RoofPlan, layout: Layout) -> None:
    """Take up the places of all openings."""
    for opening in plan.description.openings:
        layout.take([_box(opening, layout.paper, _AIR / 2)])


def name_openings(plan: RoofPlan, layout: Layout) -> list[Tag]:
    """Return the names of all openings: inside where there is room, else beside."""
    numbered = enumerate(plan.description.openings, 1)
    return [_named(name_of(*each), each[1], layout) for each in numbered]


def _named(name: str, opening: Opening, layout: Layout) -> Tag:
    box = _box(opening, layout.paper, 0)
    middle = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    wide, high = width_of(name), LETTER
    if box.right - box.left > wide + 4 * _KERB and box.bottom - box.top > high + 4 * _KERB:
        return Tag(name, middle)
    clear = max(box.right - box.left, box.bottom - box.top) / 2 - _AIR
    return layout.put_round(name, middle, (1.0, 0.0), (wide, high), max(0.0, clear))


def openings_layer(plan: RoofPlan, paper: Paper, names: list[Tag]) -> Layer:
    """Return the openings with their names."""
    paths = tuple(
        path
        for number, opening in enumerate(plan.description.openings, 1)
        for path in _drawn(name_of(number, opening), opening, paper)
    )
    lines = (leads(names), behind(names)) if names else ()
    return Layer("openings", "Openings", (*paths, *lines), words=tuple(map(words, names)))


def _drawn(name: str, opening: Opening, paper: Paper) -> Iterator[Path]:
    if isinstance(opening, Outlet | Pipe):
        yield from _round(name, opening, paper)
        return
    box = _box(opening, paper, 0)
    inner = Box(box.left + _KERB, box.top + _KERB, box.right - _KERB, box.bottom - _KERB)
    yield Path("paper", _rectangle(box), name)
    if inner.left < inner.right and inner.top < inner.bottom:
        yield Path("thin", _rectangle(inner))


def _round(name: str, opening: Outlet | Pipe, paper: Paper) -> Iterator[Path]:
    x, y = _middle(opening, paper)
    radius = _radius(opening, paper)
    size = unit(2 * radius)
    r = unit(radius)
    circle = f"M{unit(x - radius)} {unit(y)}a{r} {r} 0 1 0 {size} 0a{r} {r} 0 1 0 -{size} 0Z"
    if isinstance(opening, Pipe):
        yield Path("steel", circle, name)
        return
    yield Path("water", circle, name)
    level = line((x - radius, y), (x + radius, y))
    yield Path("thin", level + line((x, y - radius), (x, y + radius)))


def _rectangle(box: Box) -> str:
    return (
        f"M{unit(box.left)} {unit(box.top)}H{unit(box.right)}V{unit(box.bottom)}H{unit(box.left)}Z"
    )


def _middle(opening: Outlet | Pipe, paper: Paper) -> Place:
    return paper.at((opening.x_m * MM_PER_M.value, opening.y_m * MM_PER_M.value))


def _box(opening: Opening, paper: Paper, air: float) -> Box:
    """Return the box round an opening on the paper, and some air round it."""
    if isinstance(opening, Outlet | Pipe):
        size = 2 * (_radius(opening, paper) + air)
        return box_round(*_middle(opening, paper), size, size)
    low, high = outline.extent(opening_outline(opening))
    (left, bottom), (right, top) = paper.at(low), paper.at(high)
    return Box(left - air, top - air, right + air, bottom + air)


def _radius(opening: Outlet | Pipe, paper: Paper) -> float:
    return max(_LEAST_RADIUS, opening.diameter_mm / 2 * paper.scale)
