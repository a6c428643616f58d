"""The sides of a roof as they are drawn: told apart by their line, and only then by colour."""

from collections.abc import Iterator, Mapping, Sequence

from trainer.engine.plans.roof import RoofPlan
from trainer.engine.plans.sides import Side
from trainer.web.drawing.lines import Place, beside
from trainer.web.drawing.marks import Layer, Path
from trainer.web.drawing.paper import Paper

#: How far outside a raised edge's second line lies, and a wall's hatched band reaches.
_OUT = {"raised": 6.0, "wall": 11.0}


def edges_layer(plan: RoofPlan, paper: Paper, *more: Path) -> Layer:
    """Return the sides: long dashes, a double line, or a line with a hatched band outside it."""
    corners = [side.start for side in plan.sides]
    outer = {kind: beside(corners, paper.mm(out)) for kind, out in _OUT.items()}
    drawn = (path for side in plan.sides for path in _drawn(side, outer, paper))
    return Layer("edges", "Edges", (*drawn, *more))


def _drawn(side: Side, outer: Mapping[str, Sequence[Place]], paper: Paper) -> Iterator[Path]:
    along = (side.start, side.end)
    if side.kind in outer:
        far = outer[side.kind]
        away = (far[side.number - 1], far[side.number % len(far)])
        if side.kind == "wall":
            yield Path("hatch-wall", paper.path((*along, *reversed(away))))
        else:
            yield Path("edge-raised", paper.path(away, shut=False))
    yield Path(f"edge-{side.kind}", paper.path(along, shut=False), side.name)
