"""Collars: the mat round a pipe, an outlet and the kerb of a rooflight, in one layer."""

import math
from dataclasses import replace
from typing import Annotated

from trainer.engine.conversions import MM2_PER_M2
from trainer.engine.materials import MAT_LAP, OUTLET_FLANGE, UPSTAND
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Up = Annotated[float, replace(UPSTAND.given, words="mat turned up")]
Lap = Annotated[float, MAT_LAP.given]

_PI = Part(math.pi, "", "π")


def _height(up_mm: float, lap_mm: float) -> Line:
    return Line(
        "height",
        "height of the piece",
        "mm",
        up_mm + lap_mm,
        "up + lap",
        {"up": Part(up_mm, "mm", "turned up"), "lap": Part(lap_mm, "mm", "lap on to the deck")},
    )


def _area(around_mm: float, height_mm: float) -> Line:
    return Line(
        "area",
        "area of mat",
        "m²",
        around_mm * height_mm / MM2_PER_M2.value,
        "around * height / mm2_per_m2",
        {
            "around": Part(around_mm, "mm", "length around"),
            "height": Part(height_mm, "mm", "height of the piece"),
            "mm2_per_m2": MM2_PER_M2,
        },
    )


@calculation
def pipe_collar(
    diameter_mm: Annotated[float, Given("diameter of the pipe", "mm", 20, 600)],
    up_mm: Up = UPSTAND.value,
    lap_mm: Lap = MAT_LAP.value,
) -> Calculation:
    """Return the square metres of mat for the sleeve round a pipe.

    around = π × diameter + lap, since the sleeve laps itself; height = up + lap, the lap cut like
    petals and laid on the deck; area = around × height. 150 mm up is common practice.

    Args:
        diameter_mm: outer diameter of the pipe, 20–600 mm.
        up_mm: mat turned up the pipe, 50–600 mm.
        lap_mm: lap on itself and on to the deck, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    around = yield Line(
        "around",
        "length around",
        "mm",
        math.pi * diameter_mm + lap_mm,
        "pi * diameter + lap",
        {
            "pi": _PI,
            "diameter": Part(diameter_mm, "mm", "diameter"),
            "lap": Part(lap_mm, "mm", "lap on itself"),
        },
    )
    height = yield _height(up_mm, lap_mm)
    return (yield _area(around, height))


@calculation
def outlet_collar(
    diameter_mm: Annotated[float, Given("diameter of the outlet", "mm", 20, 600)],
    flange_mm: Annotated[float, OUTLET_FLANGE.given] = OUTLET_FLANGE.value,
) -> Calculation:
    """Return the square metres of the square of mat that goes round an outlet.

    side = diameter + 2 × flange; area = side × side, the hole included: it is cut from that piece.

    Args:
        diameter_mm: diameter of the outlet, 20–600 mm.
        flange_mm: mat on the deck round it, 50–400 mm (from memory: 100).

    Raises:
        OutOfRange: an argument outside its range.
    """
    side = yield Line(
        "side",
        "side of the square",
        "mm",
        diameter_mm + 2 * flange_mm,
        "diameter + 2 * flange",
        {
            "diameter": Part(diameter_mm, "mm", "diameter"),
            "flange": Part(flange_mm, "mm", "mat on the deck"),
        },
    )
    return (
        yield Line(
            "area",
            "area of the square",
            "m²",
            side * side / MM2_PER_M2.value,
            "side * side / mm2_per_m2",
            {"side": Part(side, "mm", "side of the square"), "mm2_per_m2": MM2_PER_M2},
        )
    )


@calculation
def kerb_collar(
    length_mm: Annotated[float, Given("length of the kerb", "mm", 100, 6000)],
    width_mm: Annotated[float, Given("width of the kerb", "mm", 100, 6000)],
    up_mm: Up = UPSTAND.value,
    lap_mm: Lap = MAT_LAP.value,
) -> Calculation:
    """Return the square metres of mat for the four pieces round a rooflight's kerb.

    around = 2 × (length + width) + 4 × lap, each piece lapped round its corner; height = up +
    lap; area = around × height. 150 mm up is common practice.

    Args:
        length_mm: length of the kerb, outside, 100–6000 mm.
        width_mm: width of the kerb, outside, 100–6000 mm.
        up_mm: mat turned up the kerb, 50–600 mm.
        lap_mm: lap at each corner and on to the deck, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    around = yield Line(
        "around",
        "length around",
        "mm",
        2 * (length_mm + width_mm) + 4 * lap_mm,
        "2 * (length + width) + 4 * lap",
        {
            "length": Part(length_mm, "mm", "length"),
            "width": Part(width_mm, "mm", "width"),
            "lap": Part(lap_mm, "mm", "lap at a corner"),
        },
    )
    height = yield _height(up_mm, lap_mm)
    return (yield _area(around, height))
