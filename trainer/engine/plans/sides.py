"""The sides of a roof, and what its corners make of the trims that meet there."""

from dataclasses import dataclass
from itertools import pairwise

from trainer.engine.conversions import MM_PER_M
from trainer.engine.outline import Point
from trainer.engine.plans.description import CornerMakes, EdgeKind, RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.shape import side_length

WORDS: dict[EdgeKind, str] = {"drip": "drip edge", "raised": "raised edge", "wall": "wall"}


@dataclass(frozen=True, slots=True)
class Side:
    """One side of the roof, from its corner to the next one anticlockwise."""

    number: int
    kind: EdgeKind
    start: Point
    end: Point
    turn_mm: float
    #: In metres.
    length: Figure

    @property
    def name(self) -> str:
        """What the side is called in lists: "side 2, raised edge"."""
        return f"side {self.number}, {WORDS[self.kind]}"

    @property
    def length_mm(self) -> int:
        """The length in whole millimetres."""
        return round(self.length.value * MM_PER_M.value)


@dataclass(frozen=True, slots=True)
class Corner:
    """One corner of the roof: the end of the side before it and the beginning of its own."""

    number: int
    at: Point
    makes: CornerMakes
    why: str
    overruled: bool
    #: The numbers of the two sides that meet there.
    sides: tuple[int, int]


def sides_of(roof: RoofDescription) -> tuple[Side, ...]:
    """Return the sides in order; side 1 runs from corner 1 to corner 2."""
    ends = pairwise((*roof.corners, roof.corners[0]))
    return tuple(
        Side(number, edge.kind, start, end, edge.turn_mm, _length(number, start, end))
        for number, ((start, end), edge) in enumerate(zip(ends, roof.edges, strict=True), 1)
    )


def _length(number: int, start: Point, end: Point) -> Figure:
    along, up = (abs(end[axis] - start[axis]) / MM_PER_M.value for axis in (0, 1))
    key, words = f"sides.{number}", f"length of side {number}"
    return worked(key, words, side_length, along_m=along, up_m=up)


def corners_of(roof: RoofDescription, sides: tuple[Side, ...]) -> tuple[Corner, ...]:
    """Return what each corner makes: a mitre, an open end, or nothing.

    Common practice: two trims of one kind make a mitre; a raised trim that ends at a drip edge
    makes an open end; a trim that meets a wall makes neither. Each can be overruled.
    """
    before = (sides[-1], *sides[:-1])
    return tuple(_corner(roof, *pair) for pair in zip(before, sides, strict=True))


def _corner(roof: RoofDescription, before: Side, after: Side) -> Corner:
    makes, why = _rule(before.kind, after.kind)
    number, at = after.number, after.start
    overruled = roof.overruled.get(number)
    if overruled:
        makes, why = overruled, "as you said"
    return Corner(number, at, makes, why, overruled is not None, (before.number, after.number))


def _rule(one: EdgeKind, other: EdgeKind) -> tuple[CornerMakes, str]:
    if one == other:
        return "mitre", "two trims of one kind meet"
    if "wall" in (one, other):
        return "nothing", "a trim ends at a wall"
    return "open end", "a raised trim ends at a drip edge"
