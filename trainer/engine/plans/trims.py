"""Trims: what is cut from which length, where trims are joined, and what corners make of them."""

from collections.abc import Iterable
from dataclasses import dataclass

from trainer.engine.conversions import MM_PER_M, rounded_up, whole_mm
from trainer.engine.outline import Point
from trainer.engine.plans.description import EdgeKind, RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.plans.sides import WORDS, Corner, Side
from trainer.engine.plans.stock_cuts import Cuts, cut_from_stock
from trainer.engine.stock import stock_bound
from trainer.engine.totals import total_length

_KINDS: tuple[EdgeKind, ...] = ("drip", "raised", "wall")


@dataclass(frozen=True, slots=True)
class Join:
    """The place on a side where one trim ends and the next begins."""

    side: int
    at: Point


@dataclass(frozen=True, slots=True)
class TrimRun:
    """The trims of one kind."""

    kind: EdgeKind
    sides: tuple[int, ...]
    length: Figure
    pieces_mm: tuple[int, ...]
    #: No fewer lengths than this can do.
    bound: Figure
    cuts: Cuts

    @property
    def name(self) -> str:
        """What these trims are called in lists."""
        return {"drip": "drip trim", "raised": "raised edge trim", "wall": "wall fillet"}[self.kind]


@dataclass(frozen=True, slots=True)
class TrimPlan:
    """All trims of a roof."""

    runs: tuple[TrimRun, ...]
    joins: tuple[Join, ...]
    mitres: int
    open_ends: int


def trims_of(
    roof: RoofDescription, sides: tuple[Side, ...], corners: tuple[Corner, ...]
) -> TrimPlan:
    """Return the trims of each kind, cut from the lengths they are sold in.

    A side that is longer than one length takes whole lengths and a rest, joined end to end.
    """
    stock_mm = whole_mm(roof.sold.trim_m)
    made = [corner.makes for corner in corners]
    return TrimPlan(
        tuple(_run(roof, kind, sides) for kind in _KINDS if any(s.kind == kind for s in sides)),
        tuple(join for side in sides for join in _joins(side, stock_mm)),
        made.count("mitre"),
        made.count("open end"),
    )


def _run(roof: RoofDescription, kind: EdgeKind, sides: Iterable[Side]) -> TrimRun:
    own = [side for side in sides if side.kind == kind]
    stock_mm = whole_mm(roof.sold.trim_m)
    pieces = tuple(piece for side in own for piece in _pieces(side.length_mm, stock_mm))
    metres = tuple(piece / MM_PER_M.value for piece in pieces)
    words = WORDS[kind]
    return TrimRun(
        kind,
        tuple(side.number for side in own),
        worked(
            f"trims.{kind}.length",
            f"trim for the {words}",
            total_length,
            lengths_m=tuple(side.length.value for side in own),
        ),
        pieces,
        worked(
            f"trims.{kind}.bound",
            f"fewest lengths for the {words}",
            stock_bound,
            pieces_m=metres,
            stock_m=roof.sold.trim_m,
        ),
        cut_from_stock(pieces, stock_mm),
    )


def _pieces(length_mm: int, stock_mm: int) -> list[int]:
    whole, rest = divmod(length_mm, stock_mm)
    return [stock_mm] * whole + ([rest] if rest else [])


def _joins(side: Side, stock_mm: int) -> Iterable[Join]:
    for number in range(1, rounded_up(side.length_mm, stock_mm)):
        share = number * stock_mm / side.length_mm
        x, y = (round(a + (b - a) * share) for a, b in zip(side.start, side.end, strict=True))
        yield Join(side.number, (x, y))
