"""Lengths, areas and masses added up, each with a working."""

from typing import Annotated

from trainer.engine.conversions import MM_PER_M
from trainer.engine.lengths import joined
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation


@calculation
def total_length(
    lengths_m: Annotated[tuple[float, ...], Given("length", "m", 0.01, 200)],
) -> Calculation:
    """Return the metres of all lengths put end to end.

    total = sum of lengths.

    Args:
        lengths_m: each length, 0.01–200 m.

    Raises:
        OutOfRange: a length outside its range.
    """
    return (yield joined("total", "all of it together", "length", lengths_m))


@calculation
def total_area(
    areas_m2: Annotated[tuple[float, ...], Given("area", "m²", 0.001, 500)],
) -> Calculation:
    """Return the square metres of all areas together.

    total = sum of areas.

    Args:
        areas_m2: each area, 0.001–500 m².

    Raises:
        OutOfRange: an area outside its range.
    """
    return (yield _added("m²", "area", areas_m2))


@calculation
def total_mass(
    masses_kg: Annotated[tuple[float, ...], Given("mass", "kg", 0.001, 2000)],
) -> Calculation:
    """Return the kilograms of all masses together.

    total = sum of masses.

    Args:
        masses_kg: each mass, 0.001–2000 kg.

    Raises:
        OutOfRange: a mass outside its range.
    """
    return (yield _added("kg", "mass", masses_kg))


@calculation
def mat_with_laps(
    area_m2: Annotated[float, Given("area to laminate", "m²", 0.1, 500)],
    lap_run_m: Annotated[float, Given("laps, end to end", "m", 0, 5000)],
    layers: Annotated[int, Given("layers of mat", "", 1, 6)] = 1,
    lap_mm: Annotated[float, Given("lap of mat on mat", "mm", 0, 300)] = 50,
) -> Calculation:
    """Return the square metres of mat on a deck, the laps counted twice, in all layers.

    layers = area × layers; laps = their length × lap; mat = layers + laps.

    Args:
        area_m2: area to laminate, 0.1–500 m².
        lap_run_m: length of all laps in all layers, 0–5000 m.
        layers: layers of mat, 1–6.
        lap_mm: lap of mat on mat, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    single = yield Line(
        "layers",
        "mat in all layers",
        "m²",
        area_m2 * layers,
        "area * layers",
        {"area": Part(area_m2, "m²", "area"), "layers": Part(layers, "", "layers")},
    )
    laps = yield Line(
        "laps",
        "mat that lies double in laps",
        "m²",
        lap_run_m * lap_mm / MM_PER_M.value,
        "laps * lap / mm_per_m",
        {
            "laps": Part(lap_run_m, "m", "length of all laps"),
            "lap": Part(lap_mm, "mm", "lap"),
            "mm_per_m": MM_PER_M,
        },
    )
    return (
        yield Line(
            "mat",
            "mat laid",
            "m²",
            single + laps,
            "layers + laps",
            {"layers": Part(single, "m²", "all layers"), "laps": Part(laps, "m²", "laps")},
        )
    )


def _added(unit: str, each: str, figures: tuple[float, ...]) -> Line:
    parts = {f"{each}_{n}": Part(value, unit, f"{each} {n}") for n, value in enumerate(figures, 1)}
    words = "all of it together"
    return Line("total", words, unit, sum(figures), " + ".join(parts), parts)
