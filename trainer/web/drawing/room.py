"""Room on a paper: which of its squares are taken, so that words don't lie on one another.

All squares are one whole number, a bit for each, row by row: a box is asked about in two steps
of arithmetic, however large it is. Thousands are asked about for one drawing.
"""

from functools import cache
from typing import NamedTuple

#: A square is four units wide and high: a place lies in the square of its units without two bits.
_SHIFT = 2
#: Units of room above the paper's upper edge; nothing is free beyond.
_ABOVE = 256


class Box(NamedTuple):
    """A box on the paper, y down."""

    left: float
    top: float
    right: float
    bottom: float


def box_round(x: float, y: float, wide: float, high: float) -> Box:
    """Return the box of a size round a place."""
    wide, high = wide / 2, high / 2
    return Box(x - wide, y - high, x + wide, y + high)


class Room:
    """The squares of a paper. It is as wide as the paper, and as high as it is wanted."""

    def __init__(self, width: int) -> None:
        self._width = width
        self._columns = (width >> _SHIFT) + 1
        self._taken = 0
        self._top, self._bottom = 0.0, 0.0

    def take(self, box: Box) -> None:
        """Take up a box, or what of it lies on the paper."""
        left, top, right, bottom = box
        left, top, right = max(0.0, left), max(-_ABOVE, top), min(self._width, right)
        if left < right and top < bottom:
            bits, shift = self._bits(left, top, right, bottom)
            self._taken |= bits << shift
            self._top, self._bottom = min(self._top, top), max(self._bottom, bottom)

    def is_free(self, box: Box) -> bool:
        """Whether a box lies on the paper and on nothing that is taken."""
        left, top, right, bottom = box
        if left < 0 or right > self._width or top < -_ABOVE:
            return False
        bits, shift = self._bits(left, top, right, bottom)
        return not self._taken >> shift & bits

    @property
    def reach(self) -> tuple[float, float]:
        """The highest and the lowest place that is taken; the paper's upper edge at the least."""
        return self._top, self._bottom

    def _bits(self, left: float, top: float, right: float, bottom: float) -> tuple[int, int]:
        """Return the squares of a box as seen from its upper left one, and where that lies."""
        first, above = int(left) >> _SHIFT, int(top + _ABOVE) >> _SHIFT
        columns = (int(right) >> _SHIFT) + 1 - first
        rows = (int(bottom + _ABOVE) >> _SHIFT) + 1 - above
        return _block(columns, rows, self._columns), above * self._columns + first


@cache
def _block(columns: int, rows: int, stride: int) -> int:
    """Return a block of so many columns and rows, as bits."""
    row = (1 << columns) - 1
    return sum(row << at * stride for at in range(rows))
