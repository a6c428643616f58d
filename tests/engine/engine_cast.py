"""Small sums for tests of the protocol. None of them is registered.

Paint for edges has every shape of parameter: a list, a count, a choice and a number.
Doublings and the side of a square can't be worked on every figure that may be carried in.
"""

import math
from typing import Annotated, Literal

from trainer.engine import Calculation, Given, Line, Method, Part
from trainer.engine.conversions import MM_PER_M

WIDTHS = {"narrow": 50.0, "wide": 100.0}
SPREAD = Part(0.3, "kg/m²", "paint on a square metre")


@Method
def paint_for_edges(
    lengths_m: Annotated[tuple[float, ...], Given("edge", "m", 0.1, 50)],
    coats: Annotated[int, Given("coats", "", 1, 3)],
    brush: Annotated[Literal["narrow", "wide"], Given("brush")] = "narrow",
    spare_percent: Annotated[float, Given("spare", "%", 0, 50)] = 10,
) -> Calculation:
    """Return the kilograms of paint for a band along each edge."""
    parts = {f"edge_{n}": Part(m, "m", f"edge {n}") for n, m in enumerate(lengths_m, start=1)}
    edges = yield Line("edges", "all edges", "m", sum(lengths_m), " + ".join(parts), parts)
    width = Part(WIDTHS[brush], "mm", "width of the brush")
    area = yield Line(
        "area",
        "area to paint",
        "m²",
        edges * width.value / MM_PER_M.value,
        "edges * width / mm_per_m",
        {"edges": Part(edges, "m", "all edges"), "width": width, "mm_per_m": MM_PER_M},
    )
    paint = yield Line(
        "paint",
        "paint on the edges",
        "kg",
        area * coats * SPREAD.value,
        "area * coats * spread",
        {"area": Part(area, "m²", "area"), "coats": Part(coats, "", "coats"), "spread": SPREAD},
    )
    return (
        yield Line(
            "order",
            "paint to order",
            "kg",
            paint * (1 + spare_percent / 100),
            "paint * (1 + spare / 100)",
            {"paint": Part(paint, "kg", "paint"), "spare": Part(spare_percent, "%", "spare")},
        )
    )


@Method
def doublings(
    first_g: Annotated[float, Given("first reading", "g", 1, 1000)],
    last_g: Annotated[float, Given("last reading", "g", 1, 1000)],
) -> Calculation:
    """Return how often a mass has doubled between two readings."""
    growth = yield Line(
        "growth",
        "growth",
        "",
        last_g / first_g,
        "last / first",
        {"last": Part(last_g, "g", "last"), "first": Part(first_g, "g", "first")},
    )
    return (
        yield Line(
            "doublings",
            "times doubled",
            "",
            math.log(growth) / math.log(2),
            "ln(growth) / ln(2)",
            {"growth": Part(growth, "", "growth")},
        )
    )


@Method
def side_of_square(
    area_m2: Annotated[float, Given("area", "m²", 1, 100)],
    hole_m2: Annotated[float, Given("hole", "m²", 0.1, 100)],
) -> Calculation:
    """Return the side of the square that is left of an area beside its hole."""
    left = yield Line(
        "left",
        "area left",
        "m²",
        area_m2 - hole_m2,
        "area - hole",
        {"area": Part(area_m2, "m²", "area"), "hole": Part(hole_m2, "m²", "hole")},
    )
    return (
        yield Line(
            "side", "side", "m", left**0.5, "left ** 0.5", {"left": Part(left, "m²", "area left")}
        )
    )


@Method
def overnight_drop(
    evening_c: Annotated[float, Given("evening", "°C", -20, 40)],
    morning_c: Annotated[float, Given("morning", "°C", -20, 40)],
) -> Calculation:
    """Return how far the temperature fell in a night; both readings may be below zero."""
    return (
        yield Line(
            "drop",
            "drop",
            "°C",
            evening_c - morning_c,
            "evening - morning",
            {
                "evening": Part(evening_c, "°C", "evening"),
                "morning": Part(morning_c, "°C", "morning"),
            },
        )
    )
