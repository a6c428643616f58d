"""What the lines of a drawing mean, in words, with a bar to measure by."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from trainer.engine import outline, show
from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.plans.sides import WORDS
from trainer.web.drawing.layout import width_of
from trainer.web.drawing.marks import MIDDLE, Layer, Path, Words, unit
from trainer.web.drawing.paper import Paper

#: A line of the legend, the air between its entries, and between a thing and its words.
_ROW, _GAP, _AIR, _EDGE = 34.0, 28.0, 10.0, 10.0
_WIDE = 44.0
#: Lengths of the bar, and the widest that it may be.
_BARS_MM = (10_000, 5_000, 2_000, 1_000, 500, 200, 100)
_WIDEST_BAR = 170.0

_BAND, _BOX = "m0-5h44v10h-44z", "m0-10h44v20h-44z"
#: What each thing looks like, from the left end of its middle line on.
_LOOKS: dict[str, tuple[tuple[str, str], ...]] = {
    "drip edge": (("edge-drip", "h44"),),
    "raised edge": (("edge-raised", "m0-3h44m-44 6h44"),),
    "wall": (("hatch-wall", "m0-8h44v11h-44z"), ("edge-wall", "m0 3h44")),
    "bandage": (("glass", _BAND),),
    "tape under it": (("glass", _BAND), ("tape", "m0-2h44v4h-44z")),
    "patch over an open end": (("patch", "m12-10h20v20h-20z"),),
    "joint that needs no tape": (("joint-closed", "h44"),),
    "ladder": (("ladder", "m2-8h40m-40 16h40m-35 0v-16m10 0v16m10 0v-16m10 0v16"),),
    "mat": (("glass", _BOX),),
}


class Entry(NamedTuple):
    """One thing, and what it is called."""

    words: str
    looks: tuple[tuple[str, str], ...]
    wide: float = _WIDE


def deck_entries(plan: RoofPlan) -> Iterator[Entry]:
    """Yield what the first picture shows."""
    yield _known("bandage")
    if plan.deck.joints:
        yield _known("tape under it")
    if plan.bandage.patches:
        yield _known("patch over an open end")
    if plan.deck.closed_joints:
        yield _known("joint that needs no tape")
    yield from _edges(plan)
    yield _known("ladder")


def mat_entries(plan: RoofPlan) -> Iterator[Entry]:
    """Yield what the second picture shows."""
    yield _known("mat")
    if any(plan.mat.laps):
        lap = show(plan.description.laminate.lap_mm, "mm")
        yield Entry(f"lap of {lap}", (("glass", _BOX), ("hatch-lap", _BOX)))
    for layer in range(2, plan.description.laminate.layers + 1):
        yield Entry(f"layer {layer}", ((f"later later-{layer}", _BOX),))
    yield from _edges(plan)


def _edges(plan: RoofPlan) -> Iterator[Entry]:
    kinds = {side.kind for side in plan.sides}
    yield from (_known(words) for kind, words in WORDS.items() if kind in kinds)


def _known(words: str) -> Entry:
    return Entry(words, _LOOKS[words])


def bar_of(plan: RoofPlan, paper: Paper) -> Entry:
    """Return the bar to measure by: a round length that is no wider than it need be."""
    low, high = outline.extent(plan.description.corners)
    most = min(_WIDEST_BAR, (high[0] - low[0] + high[1] - low[1]) * paper.scale)
    length = next((mm for mm in _BARS_MM if mm * paper.scale <= most), _BARS_MM[-1])
    wide = length * paper.scale
    drawn = f"m0-7v14m0-7h{unit(wide)}m0-7v14"
    return Entry(show(length / MM_PER_M.value, "m"), (("bar", drawn),), wide)


def legend_layer(
    entries: Sequence[Entry], notes: Sequence[str], paper: Paper, top: float
) -> tuple[Layer, float]:
    """Return the entries in lines below the roof, the notes under them, and where they end."""
    paths: list[Path] = []
    words: list[Words] = []
    x, y = _EDGE, top + _ROW / 2
    for entry in entries:
        wide = entry.wide + _AIR + width_of(entry.words)
        if x > _EDGE and x + wide > paper.width - _EDGE:
            x, y = _EDGE, y + _ROW
        paths += (Path(look, f"M{unit(x)} {unit(y)}{d}") for look, d in entry.looks)
        words.append(Words(entry.words, unit(x + entry.wide + _AIR), unit(y + MIDDLE), "start"))
        x += wide + _GAP
    for note in _lines(notes, paper):
        y += _ROW
        words.append(Words(note, unit(_EDGE), unit(y + MIDDLE), "start"))
    return Layer("legend", "What the lines mean", tuple(paths), words=tuple(words)), y + _ROW


def _lines(notes: Sequence[str], paper: Paper) -> Iterator[str]:
    """Yield notes in lines that are no wider than the paper."""
    most = paper.width - 2 * _EDGE
    for note in notes:
        line = ""
        for word in note.split():
            longer = f"{line} {word}".strip()
            if line and width_of(longer) > most:
                yield line
                longer = word
            line = longer
        yield line
