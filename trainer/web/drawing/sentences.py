"""The drawing of a roof in sentences, for whoever can't see it."""

from collections import Counter
from collections.abc import Iterator, Sequence

from trainer.engine import outline, show
from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.openings import Opening, Outlet, Pipe
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.plans.sides import Side
from trainer.engine.units import counted, figure
from trainer.web.drawing.openings import name_of

#: No sentence lists more numbers than this.
_MOST = 12
_KINDS = {"drip": "a drip edge", "raised": "a raised edge", "wall": "a wall"}
_PIECES = {
    "edge": "strip along a side,strips along sides",
    "joint": "strip over an open joint,strips over open joints",
    "kerb": "strip along the foot of a kerb,strips along feet of kerbs",
    "mitre": "scrap over a mitre,scraps over mitres",
    "trim join": "scrap over a trim join,scraps over trim joins",
    "open end": "patch over an open end,patches over open ends",
}


def describe_roof(plan: RoofPlan) -> list[str]:
    """Return both pictures in sentences, each side, corner and opening told by itself."""
    return [
        *_size(plan),
        *(sentence for side in plan.sides for sentence in _side(side)),
        f"The ladder stands at side {plan.description.way_off_edge}, which is laid last.",
        *_corners(plan),
        *_deck(plan),
        *_openings(plan),
        *_mat(plan),
        *_trimmed(plan),
        *_fall(plan),
    ]


def summary_of(plan: RoofPlan, part: str) -> str:
    """Return one picture in few sentences: what it shows, and how many of each."""
    own = _deck(plan) if part == "deck" else (*_mat(plan), *_fall(plan))
    return " ".join([*_size(plan), *own])


def _size(plan: RoofPlan) -> Iterator[str]:
    low, high = outline.extent(plan.description.corners)
    length, width = (_metres(high[axis] - low[axis]) for axis in (0, 1))
    yield f"The roof is {length} long and {width} wide, and has {len(plan.sides)} sides."
    yield f"The area inside its edges is {plan.deck.area.shown}."


def _side(side: Side) -> Iterator[str]:
    yield f"Side {side.number} is {_KINDS[side.kind]}, {side.length.shown} long."
    if side.turn_mm:
        way = "down" if side.kind == "drip" else "up"
        yield f"At side {side.number} mat is turned {way} by {show(side.turn_mm, 'mm')}."


def _corners(plan: RoofPlan) -> Iterator[str]:
    for makes in ("mitre", "open end"):
        numbers = [corner.number for corner in plan.corners if corner.makes == makes]
        for some in _dozens(numbers):
            noun = ("A mitre lies", "An open end lies")[makes == "open end"]
            many = ("Mitres lie", "Open ends lie")[makes == "open end"]
            yield f"{noun if len(some) == 1 else many} at {_at(some, 'corner')}."


def _deck(plan: RoofPlan) -> Iterator[str]:
    deck = plan.deck
    whole = sum(board.whole for board in deck.boards)
    pieces = counted(len(deck.boards), "board lies", "boards lie")
    yield f"{pieces} {plan.description.boards.run} the roof; {whole} of them are whole."
    if deck.closed_joints:
        tongued = counted(len(deck.closed_joints), "tongued joint needs", "tongued joints need")
        yield f"{tongued} no tape."
    yield f"{counted(len(plan.tape.pieces), 'open joint is', 'open joints are')} taped."
    if deck.extra_joints_m:
        cut = counted(len(deck.extra_joints_m), "of them is a cut joint", "of them are cut joints")
        yield f"{cut}, and not drawn."
    yield from _bandage(plan)


def _bandage(plan: RoofPlan) -> Iterator[str]:
    yield f"Bandage is numbered from 1 to {len(plan.bandage.strips)}, in laying order."
    for over, number in Counter(strip.over for strip in plan.bandage.strips).items():
        yield f"It has {counted(number, *_PIECES[over].split(','))}."


def _openings(plan: RoofPlan) -> Iterator[str]:
    (left, bottom), _ = outline.extent(plan.description.corners)
    for number, opening in enumerate(plan.description.openings, 1):
        name = name_of(number, opening).capitalize()
        across, up = opening.x_m - left / MM_PER_M.value, opening.y_m - bottom / MM_PER_M.value
        place = f"{show(across, 'm')} from the far left and {show(up, 'm')} from the bottom"
        yield f"{name} is {_opening_size(opening)}."
        yield f"Its {_opening_place(opening)} lies {place}."


def _opening_size(opening: Opening) -> str:
    if isinstance(opening, Outlet | Pipe):
        return f"{show(opening.diameter_mm, 'mm')} across"
    length, width = show(opening.length_m, "m"), show(opening.width_m, "m")
    return f"{length} by {width}, with a kerb of {show(opening.kerb_mm, 'mm')}"


def _opening_place(opening: Opening) -> str:
    return "middle" if isinstance(opening, Outlet | Pipe) else "lower left corner"


def _mat(plan: RoofPlan) -> Iterator[str]:
    layers = plan.description.laminate.layers
    yield f"Mat lies in {counted(layers, 'layer')}; its drops run {plan.mat.run} the roof."
    for layer, drops in enumerate(plan.mat.drops_in_layer, 1):
        yield f"Layer {layer} takes {drops.shown}."
    if any(plan.mat.laps):
        yield f"Each drop laps {show(plan.description.laminate.lap_mm, 'mm')} on to the one before."
    if plan.mat.shift:
        yield f"Laps are shifted by {plan.mat.shift.shown} from layer to layer."


def _trimmed(plan: RoofPlan) -> Iterator[str]:
    for drop in plan.mat.drops:
        if drop.trimmed_mm:
            off = show(drop.trimmed_mm, "mm")
            yield f"Drop {drop.name} of layer {drop.layer} has {off} cut off its width."


def _fall(plan: RoofPlan) -> Iterator[str]:
    ratio = figure(plan.description.fall.ratio)
    yield f"Water runs to side {plan.fall.towards}, at a fall of 1:{ratio}."


def _metres(mm: int) -> str:
    return show(mm / MM_PER_M.value, "m")


def _dozens(numbers: Sequence[int]) -> Iterator[Sequence[int]]:
    for start in range(0, len(numbers), _MOST):
        yield numbers[start : start + _MOST]


def _at(numbers: Sequence[int], noun: str) -> str:
    """Return numbers as they are said: "corner 2", "corners 1, 2 and 4"."""
    *most, last = (f"{number}" for number in numbers)
    return f"{noun}s {', '.join(most)} and {last}" if most else f"{noun} {last}"
