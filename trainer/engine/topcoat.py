"""Topcoat: how much goes on, the litres it fills, and the catalyst in it."""

from typing import Annotated

from trainer.engine.catalyst import catalyst_by_mass
from trainer.engine.materials import (
    CATALYST_DENSITY,
    TOPCOAT_DENSITY,
    TOPCOAT_DOSE,
    TOPCOAT_RATE,
)
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

Area = Annotated[float, Given("area to topcoat", "m²", 0.1, 500)]
Rate = Annotated[float, TOPCOAT_RATE.given]


@calculation
def topcoat_mass(area_m2: Area, kg_per_m2: Rate = TOPCOAT_RATE.value) -> Calculation:
    """Return the kilograms of topcoat on an area.

    mass = area × rate. Half a kilogram on a square metre is common practice.

    Args:
        area_m2: area to topcoat, 0.1–500 m².
        kg_per_m2: topcoat on a square metre, 0.3–1.0 kg/m².

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "mass",
            "topcoat",
            "kg",
            area_m2 * kg_per_m2,
            "area * rate",
            {
                "area": Part(area_m2, "m²", "area"),
                "rate": Part(kg_per_m2, "kg/m²", "topcoat on a square metre"),
            },
        )
    )


@calculation
def topcoat_catalyst(
    area_m2: Area,
    kg_per_m2: Rate = TOPCOAT_RATE.value,
    percent: Annotated[float, TOPCOAT_DOSE.given] = TOPCOAT_DOSE.value,
    catalyst_kg_per_l: Annotated[float, CATALYST_DENSITY.given] = CATALYST_DENSITY.value,
) -> Calculation:
    """Return the millilitres of catalyst in the topcoat of an area, dosed by mass.

    Chains topcoat_mass and catalyst_by_mass. 1 to 3 % by mass is common practice.

    Args:
        area_m2: area to topcoat, 0.1–500 m².
        kg_per_m2: topcoat on a square metre, 0.3–1.0 kg/m².
        percent: grams of catalyst to 100 g of topcoat, 0.5–6.
        catalyst_kg_per_l: density of the catalyst, 1.0–1.3 kg/L (from memory: 1.17).

    Raises:
        OutOfRange: an argument outside its range.
    """
    mass = yield from under("topcoat", topcoat_mass.inside(area_m2, kg_per_m2))
    return (yield from catalyst_by_mass.inside(mass, percent, catalyst_kg_per_l))


@calculation
def topcoat_litres(
    area_m2: Area,
    kg_per_m2: Rate = TOPCOAT_RATE.value,
    topcoat_kg_per_l: Annotated[float, TOPCOAT_DENSITY.given] = TOPCOAT_DENSITY.value,
) -> Calculation:
    """Return the litres of topcoat on an area.

    litres = mass ÷ density, after topcoat_mass.

    Args:
        area_m2: area to topcoat, 0.1–500 m².
        kg_per_m2: topcoat on a square metre, 0.3–1.0 kg/m².
        topcoat_kg_per_l: density of the topcoat, 1.0–1.6 kg/L (from memory: 1.2).

    Raises:
        OutOfRange: an argument outside its range.
    """
    mass = yield from under("topcoat", topcoat_mass.inside(area_m2, kg_per_m2))
    return (
        yield Line(
            "litres",
            "topcoat in litres",
            "L",
            mass / topcoat_kg_per_l,
            "topcoat / density",
            {
                "topcoat": Part(mass, "kg", "topcoat"),
                "density": Part(topcoat_kg_per_l, "kg/L", TOPCOAT_DENSITY.words),
            },
        )
    )
