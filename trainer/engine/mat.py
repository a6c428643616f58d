"""Chopped strand mat by area: its glass, and the resin that it takes."""

from typing import Annotated

from trainer.engine.conversions import G_PER_KG
from trainer.engine.materials import ALLOWANCE, MAT_WEIGHT, RESIN_TO_GLASS
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Area = Annotated[float, Given("area", "m²", 0.001, 500)]
Glass = Annotated[float, Given("glass", "g", 0.5, 250_000)]
MatWeight = Annotated[float, MAT_WEIGHT.given]
Ratio = Annotated[float, RESIN_TO_GLASS.given]
Allowance = Annotated[float, ALLOWANCE.given]


def glass_in_kilograms(glass_g: float) -> Line:
    """Return the line that turns grams of glass into kilograms, `glass_kg`."""
    return Line(
        "glass_kg",
        "glass in kilograms",
        "kg",
        glass_g / G_PER_KG.value,
        "glass / g_per_kg",
        {"glass": Part(glass_g, "g", "glass"), "g_per_kg": G_PER_KG},
    )


@calculation
def glass_in_mat(area_m2: Area, mat_g_per_m2: MatWeight = MAT_WEIGHT.value) -> Calculation:
    """Return the grams of glass in an area of mat.

    glass = area × weight of mat.

    Args:
        area_m2: area of mat, 0.001–500 m².
        mat_g_per_m2: weight of the mat, 100–1200 g/m² (450 as a rule).

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "glass",
            "glass in the mat",
            "g",
            area_m2 * mat_g_per_m2,
            "area * mat",
            {
                "area": Part(area_m2, "m²", "area"),
                "mat": Part(mat_g_per_m2, "g/m²", "weight of mat"),
            },
        )
    )


@calculation
def resin_for_mat(
    glass_g: Glass,
    ratio: Ratio = RESIN_TO_GLASS.value,
    allowance_percent: Allowance = ALLOWANCE.value,
) -> Calculation:
    """Return the kilograms of resin for a mass of glass, with the allowance on top.

    resin = glass × ratio × (1 + allowance). The ratio by mass: Practical Action, KnO-100378,
    p. 2; the allowance for deck soak, bucket and roller: common practice.

    Args:
        glass_g: dry glass, 0.5–250 000 g.
        ratio: kilograms of resin to one of glass, 1.5–4.
        allowance_percent: on top for deck, bucket and roller, 0–50 %.

    Raises:
        OutOfRange: an argument outside its range.
    """
    glass_kg = yield glass_in_kilograms(glass_g)
    net = yield Line(
        "net",
        "resin in the laminate",
        "kg",
        glass_kg * ratio,
        "glass * ratio",
        {"glass": Part(glass_kg, "kg", "glass"), "ratio": Part(ratio, "", "resin to glass")},
    )
    return (
        yield Line(
            "resin",
            "resin with allowance",
            "kg",
            net * (1 + allowance_percent / 100),
            "net * (1 + allowance / 100)",
            {
                "net": Part(net, "kg", "resin in the laminate"),
                "allowance": Part(allowance_percent, "%", "allowance"),
            },
        )
    )


@calculation
def resin_for_area(
    area_m2: Area,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    allowance_percent: Allowance = ALLOWANCE.value,
) -> Calculation:
    """Return the kilograms of resin for one layer of mat on an area, with the allowance.

    Chains glass_in_mat and resin_for_mat.

    Args:
        area_m2: area of mat, 0.001–500 m².
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        allowance_percent: on top for deck, bucket and roller, 0–50 %.

    Raises:
        OutOfRange: an argument outside its range.
    """
    glass = yield from glass_in_mat.inside(area_m2, mat_g_per_m2)
    return (yield from resin_for_mat.inside(glass, ratio, allowance_percent))
