"""Outlines of roofs as people give them: a rectangle, an L, or a list of corners."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from trainer.engine.conversions import whole_mm
from trainer.engine.plans.description import Point
from trainer.engine.schema import Given

#: Longer than any roof that is laid by hand.
_LONGEST_M = 100


@dataclass(frozen=True, slots=True)
class Place:
    """One corner of a list of corners."""

    x_m: Annotated[float, Given("place along the roof", "m", -_LONGEST_M, _LONGEST_M)]
    y_m: Annotated[float, Given("place up the roof", "m", -_LONGEST_M, _LONGEST_M)]


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A rectangle; corner 1 is the lower left, so side 1 is the lower one."""

    length_m: Annotated[float, Given("length along the roof", "m", 0.1, _LONGEST_M)]
    width_m: Annotated[float, Given("width up the roof", "m", 0.1, _LONGEST_M)]

    @property
    def corners(self) -> tuple[Point, ...]:
        """The corners anticlockwise, in whole millimetres."""
        right, top = whole_mm(self.length_m), whole_mm(self.width_m)
        return ((0, 0), (right, 0), (right, top), (0, top))


@dataclass(frozen=True, slots=True)
class Ell:
    """An L: a rectangle with a piece missing at the upper right; corner 1 is the lower left."""

    length_m: Annotated[float, Given("length along the roof", "m", 0.1, _LONGEST_M)]
    width_m: Annotated[float, Given("width up the roof", "m", 0.1, _LONGEST_M)]
    cut_length_m: Annotated[float, Given("length of the missing piece", "m", 0.1, _LONGEST_M)]
    cut_width_m: Annotated[float, Given("width of the missing piece", "m", 0.1, _LONGEST_M)]

    @property
    def corners(self) -> tuple[Point, ...]:
        """The corners anticlockwise, in whole millimetres."""
        right, top = whole_mm(self.length_m), whole_mm(self.width_m)
        inner_x, inner_y = right - whole_mm(self.cut_length_m), top - whole_mm(self.cut_width_m)
        return ((0, 0), (right, 0), (right, inner_y), (inner_x, inner_y), (inner_x, top), (0, top))

    @property
    def too_long(self) -> str:
        """The field by which the missing piece is as large as the whole; "" where none is."""
        if self.cut_length_m >= self.length_m:
            return "cut_length_m"
        return "cut_width_m" if self.cut_width_m >= self.width_m else ""


#: The shapes that are measured by their sides, by what a file or a form calls them.
MEASURED: Mapping[str, type[Rectangle] | type[Ell]] = {"rectangle": Rectangle, "L": Ell}
#: The shape that is a list of corners.
CORNERS = "corners"
SHAPES = (*MEASURED, CORNERS)
