"""Resin in litres and kilograms, and what to do with what is left of it."""

from typing import Annotated

from trainer.engine.errors import Refused
from trainer.engine.materials import RESIN_DENSITY
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Kilograms = Annotated[float, Given("resin", "kg", 0.005, 2000)]
Litres = Annotated[float, Given("resin", "L", 0.005, 2000)]
Density = Annotated[float, RESIN_DENSITY.given]


def weighed(key: str, words: str, litres: Part, resin_kg_per_l: float) -> Line:
    """Return the line that turns litres of liquid resin into kilograms: litres × density."""
    density = Part(resin_kg_per_l, "kg/L", "density of liquid resin")
    mass = litres.value * resin_kg_per_l
    return Line(key, words, "kg", mass, "resin * density", {"resin": litres, "density": density})


@calculation
def resin_litres(resin_kg: Kilograms, resin_kg_per_l: Density = RESIN_DENSITY.value) -> Calculation:
    """Return the litres that a mass of liquid resin fills.

    litres = mass ÷ density.

    Args:
        resin_kg: resin, 0.005–2000 kg.
        resin_kg_per_l: density of the liquid resin, 0.95–1.30 kg/L (common practice: 1.10).

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "litres",
            "resin in litres",
            "L",
            resin_kg / resin_kg_per_l,
            "resin / density",
            {
                "resin": Part(resin_kg, "kg", "resin"),
                "density": Part(resin_kg_per_l, "kg/L", "density of liquid resin"),
            },
        )
    )


@calculation
def resin_kilograms(resin_l: Litres, resin_kg_per_l: Density = RESIN_DENSITY.value) -> Calculation:
    """Return the kilograms that a volume of liquid resin weighs.

    mass = litres × density.

    Args:
        resin_l: resin, 0.005–2000 L.
        resin_kg_per_l: density of the liquid resin, 0.95–1.30 kg/L (common practice: 1.10).

    Raises:
        OutOfRange: an argument outside its range.
    """
    litres = Part(resin_l, "L", "resin")
    return (yield weighed("resin", "resin in kilograms", litres, resin_kg_per_l))


@calculation
def resin_left(
    mixed_l: Annotated[float, Given("resin mixed", "L", 0.05, 25)],
    laid_l: Annotated[float, Given("resin laid", "L", 0.01, 25)],
) -> Calculation:
    """Return the litres left in the bucket from what was mixed and what was laid.

    left = mixed − laid.

    Args:
        mixed_l: resin mixed, 0.05–25 L.
        laid_l: resin laid, 0.01–25 L.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: more was laid than mixed.
    """
    if laid_l > mixed_l:
        raise Refused("More was laid than mixed. Look at both figures again.")
    return (
        yield Line(
            "left",
            "left in the bucket",
            "L",
            mixed_l - laid_l,
            "mixed - laid",
            {"mixed": Part(mixed_l, "L", "mixed"), "laid": Part(laid_l, "L", "laid")},
        )
    )


@calculation
def spread_board(
    left_l: Annotated[float, Given("resin left", "L", 0.01, 25)],
    film_mm: Annotated[float, Given("thickness of the film", "mm", 0.5, 5)],
) -> Calculation:
    """Return the square metres of scrap board on which left-over resin lies thin.

    area = volume ÷ thickness; a litre covers a square metre one millimetre thick.

    Args:
        left_l: catalysed resin that is left and still liquid, 0.01–25 L.
        film_mm: how thick it is spread, 0.5–5 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "area",
            "scrap board to spread it on",
            "m²",
            left_l / film_mm,
            "left / film",
            {
                "left": Part(left_l, "L", "resin left"),
                "film": Part(film_mm, "mm", "thickness of the film"),
            },
        )
    )
