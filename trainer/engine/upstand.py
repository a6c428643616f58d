"""Mat that is turned at an edge: up a wall, or down over a face."""

from typing import Annotated

from trainer.engine.conversions import MM_PER_M
from trainer.engine.materials import MAT_LAP
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Length = Annotated[float, Given("length of the edge", "m", 0.05, 200)]
Lap = Annotated[float, Given("lap on to the deck", "mm", MAT_LAP.low, MAT_LAP.high)]


def _strip(length_m: float, width: Part) -> Line:
    return Line(
        "area",
        "area of mat",
        "m²",
        length_m * width.value / MM_PER_M.value,
        "length * width / mm_per_m",
        {"length": Part(length_m, "m", "length"), "width": width, "mm_per_m": MM_PER_M},
    )


@calculation
def upstand_mat(
    length_m: Length,
    height_mm: Annotated[float, Given("height of the upstand", "mm", 10, 1000)],
    lap_mm: Lap = MAT_LAP.value,
) -> Calculation:
    """Return the square metres of mat for an upstand, in one layer.

    up = height + lap; area = length × up. 150 mm above the finished roof is common practice.

    Args:
        length_m: length of the edge, 0.05–200 m.
        height_mm: height above the deck, 10–1000 mm.
        lap_mm: lap on to the deck, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    up = yield Line(
        "up",
        "width of the strip",
        "mm",
        height_mm + lap_mm,
        "height + lap",
        {
            "height": Part(height_mm, "mm", "height"),
            "lap": Part(lap_mm, "mm", "lap on to the deck"),
        },
    )
    return (yield _strip(length_m, Part(up, "mm", "width of the strip")))


@calculation
def turn_down(
    length_m: Length,
    turn_mm: Annotated[float, Given("mat turned down", "mm", 10, 300)],
    lap_mm: Lap = MAT_LAP.value,
) -> Calculation:
    """Return the square metres of mat for an edge where it is turned down over the face.

    down = turn + lap; area = length × down; in one layer.

    Args:
        length_m: length of the edge, 0.05–200 m.
        turn_mm: mat down over the face, 10–300 mm.
        lap_mm: lap on to the deck, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    down = yield Line(
        "down",
        "width of the strip",
        "mm",
        turn_mm + lap_mm,
        "turn + lap",
        {
            "turn": Part(turn_mm, "mm", "turned down"),
            "lap": Part(lap_mm, "mm", "lap on to the deck"),
        },
    )
    return (yield _strip(length_m, Part(down, "mm", "width of the strip")))
