"""Bandage: strips of mat over joints and trim edges, their glass and their resin."""

from typing import Annotated

from trainer.engine.conversions import MM_PER_M
from trainer.engine.lengths import joined, repeated
from trainer.engine.mat import Allowance, MatWeight, Ratio, glass_in_mat, resin_for_mat
from trainer.engine.materials import (
    ALLOWANCE,
    BANDAGE_WIDTH,
    MAT_LAP,
    MAT_WEIGHT,
    RESIN_TO_GLASS,
)
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

Length = Annotated[float, Given("length of bandage", "m", 0.05, 500)]
Width = Annotated[float, BANDAGE_WIDTH.given]


@calculation
def bandage_length(
    lengths_m: Annotated[tuple[float, ...], Given("edge or joint", "m", 0.05, 100)],
    laps: Annotated[int, Given("laps", "", 0, 500)] = 0,
    lap_mm: Annotated[float, MAT_LAP.given] = MAT_LAP.value,
) -> Calculation:
    """Return the metres of bandage to cut from the edges and joints and the laps in them.

    bandage = sum of lengths + laps × lap. A lap of mat on mat is at least 50 mm: Rules for
    Classification of FRP Ships, Iranian Classification Society, 2014, 301.

    Args:
        lengths_m: each edge or joint, 0.05–100 m.
        laps: places where one strip is joined to the next, 0–500.
        lap_mm: lap at such a place, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    straight = yield joined("straight", "edges and joints", "run", lengths_m)
    lapped = yield repeated(
        "laps",
        "length that goes into laps",
        Part(laps, "", "laps"),
        Part(lap_mm, "mm", "lap"),
    )
    return (
        yield Line(
            "bandage",
            "bandage to cut",
            "m",
            straight + lapped,
            "straight + laps",
            {
                "straight": Part(straight, "m", "edges and joints"),
                "laps": Part(lapped, "m", "laps"),
            },
        )
    )


@calculation
def bandage_glass(
    length_m: Length,
    width_mm: Width = BANDAGE_WIDTH.value,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
) -> Calculation:
    """Return the grams of glass in a bandage.

    area = length × width; glass = area × weight of mat.

    Args:
        length_m: length of the bandage, 0.05–500 m.
        width_mm: its width, 25–300 mm (common practice: 75).
        mat_g_per_m2: weight of the mat, 100–1200 g/m².

    Raises:
        OutOfRange: an argument outside its range.
    """
    area = yield Line(
        "area",
        "area of the bandage",
        "m²",
        length_m * width_mm / MM_PER_M.value,
        "length * width / mm_per_m",
        {
            "length": Part(length_m, "m", "length"),
            "width": Part(width_mm, "mm", "width"),
            "mm_per_m": MM_PER_M,
        },
    )
    return (yield from glass_in_mat.inside(area, mat_g_per_m2))


@calculation
def resin_for_bandage(
    length_m: Length,
    width_mm: Width = BANDAGE_WIDTH.value,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    allowance_percent: Allowance = ALLOWANCE.value,
) -> Calculation:
    """Return the kilograms of resin for a bandage, with the allowance on top.

    Chains bandage_glass and resin_for_mat.

    Args:
        length_m: length of the bandage, 0.05–500 m.
        width_mm: its width, 25–300 mm (common practice: 75).
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        allowance_percent: on top for deck, bucket and roller, 0–50 %.

    Raises:
        OutOfRange: an argument outside its range.
    """
    glass = yield from under("bandage", bandage_glass.inside(length_m, width_mm, mat_g_per_m2))
    return (yield from resin_for_mat.inside(glass, ratio, allowance_percent))
