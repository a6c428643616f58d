"""Heat of curing resin, as an upper bound: nothing is lost to the air, and all of it cures."""

from typing import Annotated

from trainer.engine.conversions import G_PER_KG, J_PER_KJ
from trainer.engine.materials import (
    GLASS_CONTENT,
    GLASS_SPECIFIC_HEAT,
    HEAT_OF_CURING,
    RESIN_DENSITY,
    RESIN_SPECIFIC_HEAT,
)
from trainer.engine.resin import weighed
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

Heat = Annotated[float, HEAT_OF_CURING.given]
SpecificHeat = Annotated[float, RESIN_SPECIFIC_HEAT.given]


@calculation
def adiabatic_rise(
    heat_j_per_g: Heat = HEAT_OF_CURING.value,
    specific_j_per_g_k: SpecificHeat = RESIN_SPECIFIC_HEAT.value,
) -> Calculation:
    """Return the kelvin that neat resin warms by as it cures: an upper bound.

    rise = heat ÷ specific heat; an upper bound, nothing is lost to the air. 398 J/g follows
    from 66 kJ/mol of C=C (Lucas, Borrajo & Williams, Polymer 34(15), 3216, 1993, abstract) at
    45 % styrene.

    Args:
        heat_j_per_g: heat of curing, 300–420 J/g.
        specific_j_per_g_k: specific heat of resin, 1.0–2.5 J/(g·K) (from memory: 1.8).

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "rise",
            "rise at the most",
            "K",
            heat_j_per_g / specific_j_per_g_k,
            "heat / specific",
            {
                "heat": Part(heat_j_per_g, "J/g", HEAT_OF_CURING.words),
                "specific": Part(specific_j_per_g_k, "J/(g·K)", RESIN_SPECIFIC_HEAT.words),
            },
        )
    )


@calculation
def leftover_peak(
    resin_c: Annotated[float, Given("temperature of the resin", "°C", 5, 40)],
    heat_j_per_g: Heat = HEAT_OF_CURING.value,
    specific_j_per_g_k: SpecificHeat = RESIN_SPECIFIC_HEAT.value,
) -> Calculation:
    """Return the °C that resin left in a bucket can reach: an upper bound.

    peak = temperature of the resin + adiabatic rise; an upper bound, nothing is lost to the
    air. Castings were measured at 126 and 162 °C (Polymers 2024, 16(17), 2391).

    Args:
        resin_c: temperature of the resin as it is mixed, 5–40 °C.
        heat_j_per_g: heat of curing, 300–420 J/g.
        specific_j_per_g_k: specific heat of resin, 1.0–2.5 J/(g·K).

    Raises:
        OutOfRange: an argument outside its range.
    """
    rise = yield from under("heat", adiabatic_rise.inside(heat_j_per_g, specific_j_per_g_k))
    return (
        yield Line(
            "peak",
            "peak at the most",
            "°C",
            resin_c + rise,
            "resin + rise",
            {
                "resin": Part(resin_c, "°C", "temperature of the resin"),
                "rise": Part(rise, "K", "rise at the most"),
            },
        )
    )


@calculation
def leftover_heat(
    left_l: Annotated[float, Given("resin left", "L", 0.01, 25)],
    heat_j_per_g: Heat = HEAT_OF_CURING.value,
    resin_kg_per_l: Annotated[float, RESIN_DENSITY.given] = RESIN_DENSITY.value,
) -> Calculation:
    """Return the kilojoules that left-over resin gives off as it cures: an upper bound.

    heat = mass × heat of curing; an upper bound, all of it cures and nothing is lost to the air.

    Args:
        left_l: catalysed resin that is left, 0.01–25 L.
        heat_j_per_g: heat of curing, 300–420 J/g.
        resin_kg_per_l: density of the liquid resin, 0.95–1.30 kg/L.

    Raises:
        OutOfRange: an argument outside its range.
    """
    litres = Part(left_l, "L", "resin left")
    mass = yield weighed("mass", "resin left in kilograms", litres, resin_kg_per_l)
    return (
        yield Line(
            "heat",
            "heat at the most",
            "kJ",
            mass * G_PER_KG.value * heat_j_per_g / J_PER_KJ.value,
            "mass * g_per_kg * heat / j_per_kj",
            {
                "mass": Part(mass, "kg", "resin left"),
                "g_per_kg": G_PER_KG,
                "heat": Part(heat_j_per_g, "J/g", HEAT_OF_CURING.words),
                "j_per_kj": J_PER_KJ,
            },
        )
    )


@calculation
def laminate_rise(
    glass_percent: Annotated[float, GLASS_CONTENT.given] = GLASS_CONTENT.value,
    heat_j_per_g: Heat = HEAT_OF_CURING.value,
    specific_resin_j_per_g_k: SpecificHeat = RESIN_SPECIFIC_HEAT.value,
    specific_glass_j_per_g_k: Annotated[
        float, GLASS_SPECIFIC_HEAT.given
    ] = GLASS_SPECIFIC_HEAT.value,
) -> Calculation:
    """Return the kelvin that a laminate warms by as it cures: an upper bound.

    heat = heat of curing × resin's share; specific heat = glass's and resin's, each by its share;
    rise = heat ÷ specific heat. An upper bound, nothing is lost to the air.

    Args:
        glass_percent: glass content by mass, 15–45 %.
        heat_j_per_g: heat of curing of the resin, 300–420 J/g.
        specific_resin_j_per_g_k: specific heat of resin, 1.0–2.5 J/(g·K) (from memory: 1.8).
        specific_glass_j_per_g_k: specific heat of glass, 0.6–1.0 J/(g·K) (from memory: 0.8).

    Raises:
        OutOfRange: an argument outside its range.
    """
    glass = Part(glass_percent, "%", "glass content")
    heat = yield Line(
        "heat",
        "heat in a gram of laminate",
        "J/g",
        heat_j_per_g * (100 - glass_percent) / 100,
        "heat * (100 - glass) / 100",
        {"heat": Part(heat_j_per_g, "J/g", HEAT_OF_CURING.words), "glass": glass},
    )
    of_glass = specific_glass_j_per_g_k * glass_percent
    of_resin = specific_resin_j_per_g_k * (100 - glass_percent)
    specific = yield Line(
        "specific",
        "specific heat of the laminate",
        "J/(g·K)",
        (of_glass + of_resin) / 100,
        "(glass_heat * glass + resin_heat * (100 - glass)) / 100",
        {
            "glass_heat": Part(specific_glass_j_per_g_k, "J/(g·K)", GLASS_SPECIFIC_HEAT.words),
            "glass": glass,
            "resin_heat": Part(specific_resin_j_per_g_k, "J/(g·K)", RESIN_SPECIFIC_HEAT.words),
        },
    )
    return (
        yield Line(
            "rise",
            "rise at the most",
            "K",
            heat / specific,
            "heat / specific",
            {
                "heat": Part(heat, "J/g", "heat in a gram of laminate"),
                "specific": Part(specific, "J/(g·K)", "specific heat of the laminate"),
            },
        )
    )
