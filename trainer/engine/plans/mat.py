"""Mat: the drops across a deck in each layer, and what is turned up, down and round."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from trainer.engine import outline
from trainer.engine.collar import kerb_collar, outlet_collar, pipe_collar
from trainer.engine.conversions import MM2_PER_M2, MM_PER_M, whole_mm
from trainer.engine.drivers import answer
from trainer.engine.drops import lap_shift, mat_drops
from trainer.engine.outline import Shape, Span
from trainer.engine.plans.deck import Deck, region_of
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.figure import Figure, rests_on, worked
from trainer.engine.plans.openings import Opening, Outlet, Pipe
from trainer.engine.plans.sides import Side
from trainer.engine.plans.stock_cuts import Cuts, cut_from_stock
from trainer.engine.rolls import pieces_in_run
from trainer.engine.totals import mat_with_laps, total_area, total_length
from trainer.engine.upstand import turn_down, upstand_mat

TurnedKind = Literal["upstand", "turn-down", "pipe", "outlet", "rooflight"]


@dataclass(frozen=True, slots=True)
class Drop:
    """One drop of mat, or one part of it where the roof parts it; cut with some to trim off."""

    layer: int
    number: int
    #: "2", or "2a" and "2b" where the roof parts it.
    name: str
    #: What it covers, cut to the roof.
    shape: Shape
    #: From the roll, what is trimmed off its ends included.
    length_m: float
    width_mm: int
    #: Cut off its width.
    trimmed_mm: int


@dataclass(frozen=True, slots=True)
class Turned:
    """Mat that is turned up, down or round; its area in one layer."""

    kind: TurnedKind
    name: str
    area: Figure


@dataclass(frozen=True, slots=True)
class MatPlan:
    """The mat of a roof."""

    run: Literal["along", "up"]
    drops: tuple[Drop, ...]
    #: How many each layer takes.
    drops_in_layer: tuple[Figure, ...]
    #: How far the laps of a layer lie from those of the one below.
    shift: Figure | None
    #: Where two drops of one layer lie double.
    laps: tuple[Shape, ...]
    #: In all layers, laps counted twice.
    laid: Figure
    #: Off the roll, for the drops.
    length: Figure
    cuts: Cuts
    turned: tuple[Turned, ...]
    turned_area: Figure | None


def mat_of(roof: RoofDescription, deck: Deck, sides: tuple[Side, ...]) -> MatPlan:
    """Return the drops of each layer, the laps, and the mat round edges and openings.

    Laps of adjacent layers are shifted so that none lies over another (FRP Ships rules, 301).
    """
    region = region_of(roof)
    bands = _Bands(roof, outline.turned(region) if roof.laminate.run == "up" else region)
    drops = tuple(bands.drops())
    laps = tuple(bands.laps())
    lap_mm = roof.laminate.lap_mm
    lap_area = sum(map(outline.area_mm2, laps)) / MM2_PER_M2.value
    laid = worked(
        "mat.laid",
        "mat laid on the deck",
        mat_with_laps,
        area_m2=deck.net.value,
        lap_run_m=lap_area * MM_PER_M.value / lap_mm if lap_mm else 0.0,
        layers=roof.laminate.layers,
        lap_mm=lap_mm,
    )
    turned = tuple(_turned(roof, sides))
    areas = tuple(each.area.value for each in turned)
    return MatPlan(
        roof.laminate.run,
        drops,
        bands.counts,
        bands.shift,
        laps,
        laid,
        worked(
            "mat.length",
            "mat off the roll",
            total_length,
            lengths_m=tuple(each.length_m for each in drops),
        ),
        _cuts(roof, drops, sum(areas) * roof.laminate.layers),
        turned,
        worked("mat.turned", "mat turned up, down and round", total_area, areas_m2=areas)
        if areas
        else None,
    )


class _Bands:
    """Bands as wide as a roll across a shape, laid along x, from its lowest edge upwards."""

    def __init__(self, roof: RoofDescription, region: Shape) -> None:
        self.laminate, self.region = roof.laminate, region
        self.turn = roof.laminate.run == "up"
        self.roll, self.lap = round(roof.sold.mat_roll_mm), round(roof.laminate.lap_mm)
        (_, self.low), (_, self.high) = outline.extent([each for path in region for each in path])
        self.shift = self._shift() if roof.laminate.layers > 1 else None
        self.counts = tuple(self._count(layer) for layer in range(roof.laminate.layers))

    def _shift(self) -> Figure:
        givens = {"roll_mm": self.roll, "lap_mm": self.lap, "layers": self.laminate.layers}
        words = "shift of the laps from layer to layer"
        with rests_on("laminate.lap_mm"):
            return worked("mat.shift", words, lap_shift, **givens)

    def _down(self, layer: int) -> int:
        """Return how far below the roof's edge a layer's first drop begins."""
        return round(self.shift.value * layer) if self.shift else 0

    def _count(self, layer: int) -> Figure:
        run_m = (self.high - self.low + self._down(layer)) / MM_PER_M.value
        key, words = f"mat.drops.{layer + 1}", f"drops in layer {layer + 1}"
        givens = {"run_m": run_m, "roll_mm": self.roll, "lap_mm": self.lap}
        return worked(key, words, mat_drops, **givens)

    def bands(self, layer: int) -> Iterator[Span]:
        """Yield the lower and upper edge of each drop, as the roll is wide."""
        first = self.low - self._down(layer)
        for number in range(int(self.counts[layer].value)):
            bottom = first + number * (self.roll - self.lap)
            yield bottom, bottom + self.roll

    def drops(self) -> Iterator[Drop]:
        """Yield the drops layer by layer."""
        for layer in range(self.laminate.layers):
            for number, (bottom, top) in enumerate(self.bands(layer), 1):
                yield from self._parts(layer + 1, number, bottom, top)

    def _parts(self, layer: int, number: int, bottom: int, top: int) -> Iterator[Drop]:
        pieces = [each for each in self._cut(bottom, top) if outline.area_mm2((each,)) > 0]
        over = 2 * round(self.laminate.over_mm)
        for letter, piece in zip("abcdefghijkl", pieces, strict=False):
            (left, under), (right, above) = outline.extent(piece)
            name = f"{number}{letter}" if len(pieces) > 1 else f"{number}"
            length_m = (right - left + over) / MM_PER_M.value
            trimmed = self.roll - (above - under)
            yield Drop(layer, number, name, self._back((piece,)), length_m, above - under, trimmed)

    def laps(self) -> Iterator[Shape]:
        """Yield where two drops of a layer lie double, cut to the roof."""
        for layer in range(self.laminate.layers):
            bottoms = [bottom for bottom, _ in self.bands(layer)]
            for bottom in bottoms[1:] if self.lap else ():
                yield self._back(self._cut(bottom, bottom + self.lap))

    def _cut(self, bottom: int, top: int) -> Shape:
        (left, _), (right, _) = outline.extent(self.region[0])
        return outline.common((outline.box((left, bottom), (right, top)),), self.region)

    def _back(self, shape: Shape) -> Shape:
        return outline.turned(shape) if self.turn else shape


def _cuts(roof: RoofDescription, drops: Sequence[Drop], turned_m2: float) -> Cuts:
    """Return how drops come off the rolls; a drop that is longer than a roll is lapped.

    Mat that is turned takes as much of a roll as its area does.
    """
    roll_mm = whole_mm(roof.sold.mat_roll_m)
    turned_m = turned_m2 * MM_PER_M.value / roof.sold.mat_roll_mm
    lengths = [*(drop.length_m for drop in drops), *([turned_m] if turned_m else [])]
    pieces = [piece for each in lengths for piece in _lapped(roof, whole_mm(each), roll_mm)]
    return cut_from_stock(pieces, roll_mm)


def _lapped(roof: RoofDescription, length_mm: int, roll_mm: int) -> Iterator[int]:
    lap_mm = round(roof.laminate.lap_mm)
    pieces = pieces_in_run.inside(length_mm / MM_PER_M.value, roof.sold.mat_roll_m, lap_mm)
    number = int(answer(pieces))
    yield from [roll_mm] * (number - 1)
    yield max(1, length_mm - (number - 1) * (roll_mm - lap_mm))


def _turned(roof: RoofDescription, sides: tuple[Side, ...]) -> Iterator[Turned]:
    for side in sides:
        if side.turn_mm:
            yield _turned_side(side, roof.laminate.lap_mm)
    for number, opening in enumerate(roof.openings, 1):
        yield _collar(number, opening, roof.laminate.lap_mm)


def _turned_side(side: Side, lap_mm: float) -> Turned:
    key, length_m = f"mat.side.{side.number}", side.length.value
    if side.kind == "drip":
        words = f"mat turned down over {side.name}"
        givens = {"length_m": length_m, "turn_mm": side.turn_mm, "lap_mm": lap_mm}
        return Turned("turn-down", side.name, worked(key, words, turn_down, **givens))
    words = f"mat turned up at {side.name}"
    givens = {"length_m": length_m, "height_mm": side.turn_mm, "lap_mm": lap_mm}
    return Turned("upstand", side.name, worked(key, words, upstand_mat, **givens))


def _collar(number: int, opening: Opening, lap_mm: float) -> Turned:
    key = f"mat.opening.{number}"
    if isinstance(opening, Pipe):
        words = f"collar round pipe {number}"
        givens = {"diameter_mm": opening.diameter_mm, "up_mm": opening.up_mm, "lap_mm": lap_mm}
        return Turned("pipe", f"pipe {number}", worked(key, words, pipe_collar, **givens))
    if isinstance(opening, Outlet):
        words = f"mat round outlet {number}"
        givens = {"diameter_mm": opening.diameter_mm, "flange_mm": opening.flange_mm}
        return Turned("outlet", f"outlet {number}", worked(key, words, outlet_collar, **givens))
    words = f"mat up the kerb of rooflight {number}"
    givens = {
        "length_mm": opening.length_m * MM_PER_M.value,
        "width_mm": opening.width_m * MM_PER_M.value,
        "up_mm": opening.kerb_mm,
        "lap_mm": lap_mm,
    }
    return Turned("rooflight", f"rooflight {number}", worked(key, words, kerb_collar, **givens))
