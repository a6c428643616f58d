"""The paper of a drawing: where the roof's millimetres come to lie on it.

One unit of the paper is about half a pixel on a phone and a whole one on a desk.
"""

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from trainer.engine import outline
from trainer.engine.outline import Point
from trainer.web.drawing.lines import Place

#: The width that a phone shows whole, and the one that it pushes sideways.
NARROW, BROAD = 640, 1280
#: A letter's height, as the stylesheet has it.
LETTER = 22.0
#: Left free beside the roof for what is written there.
MARGIN = 54.0
#: Left free besides, where the whole size is written too.
WHOLE_MARGIN = 34.0
#: How much room a number wants, so that numbers don't crowd: units of paper, squared.
_ROOM = 3600.0
#: Numbers may stand this far off the roof.
_AROUND_MM = 1000.0


class Paper(NamedTuple):
    """A drawing's width, its scale, and where the roof's own zero lies."""

    width: int
    #: Units a millimetre.
    scale: float
    left: float
    base: float

    def at(self, place: Place) -> Place:
        """Return where a place of the roof lies, y down."""
        return self.left + place[0] * self.scale, self.base - place[1] * self.scale

    def path(self, places: Iterable[Place], *, shut: bool = True) -> str:
        """Return an outline, or a line, as path data."""
        left, base, scale = self.left, self.base, self.scale
        steps = [f"{left + x * scale:.1f} {base - y * scale:.1f}" for x, y in places]
        return f"M{'L'.join(steps)}{'Z' if shut else ''}"

    def shapes(self, shapes: Iterable[Iterable[Place]]) -> str:
        """Return several outlines as one path."""
        return "".join(map(self.path, shapes))

    def mm(self, units: float) -> float:
        """Return how many millimetres of the roof take up some units of the paper."""
        return units / self.scale

    def at_least(self, mm: float, units: float) -> float:
        """Return a width in millimetres, and no less than can be seen."""
        return max(mm, units / self.scale)


def paper_for(corners: Sequence[Point], numbers: int, *, whole: bool) -> Paper:
    """Return the paper for a roof with so many numbers; broad where they would crowd a narrow one.

    `whole` leaves room for the whole size below and to the left.
    """
    low, high = outline.extent(corners)
    size = (high[0] - low[0], high[1] - low[1])
    left = MARGIN + WHOLE_MARGIN * whole
    width = NARROW
    scale = _fitted(width, left, size)
    if scale < _wanted(corners, numbers):
        width = BROAD
        scale = _fitted(width, left, size)
    spare = width - left - MARGIN - size[0] * scale
    return Paper(width, scale, left + spare / 2 - low[0] * scale, MARGIN + high[1] * scale)


def _fitted(width: int, left: float, size: Point) -> float:
    """Return the scale at which a roof fits on a paper that is no higher than broad."""
    return min((width - left - MARGIN) / size[0], (width - MARGIN) / size[1])


def _wanted(corners: Sequence[Point], numbers: int) -> float:
    """Return the scale at which all numbers find room on the roof and round it."""
    round_it = math.fsum(
        math.dist(*pair) for pair in zip(corners, (*corners[1:], corners[0]), strict=True)
    )
    area = outline.area_mm2((tuple(corners),)) + round_it * _AROUND_MM
    return math.sqrt(numbers * _ROOM / area)
