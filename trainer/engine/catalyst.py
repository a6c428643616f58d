"""Catalyst in the three conventions that must never be confused: what to draw up for a dose.

*Percent by mass* is grams of catalyst to 100 g of resin; the *millilitre rule* gives 10 ml to a
kilogram for each percent, taking 1 ml for 1 g; *percent by volume* is millilitres to 100 ml.
At 1.17 kg/L, 2 % is 2.00, 2.34 and 2.13 % by mass in turn.
"""

from typing import Annotated

from trainer.engine.conversions import G_PER_KG, ML_PER_L
from trainer.engine.materials import CATALYST_DENSITY, CATALYST_DOSE, ML_PER_KG_FOR_ONE_PERCENT
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

ResinKilograms = Annotated[float, Given("resin", "kg", 0.05, 200)]
ResinLitres = Annotated[float, Given("resin", "L", 0.05, 200)]
Dose = Annotated[float, CATALYST_DOSE.given]
# 5 % by these two is already about 6 % by mass, the most that is accepted.
DoseByRule = Annotated[float, Given("catalyst", "%", 0.5, 5)]
Density = Annotated[float, CATALYST_DENSITY.given]

RULE = Part(ML_PER_KG_FOR_ONE_PERCENT.value, "ml/kg", "millilitres to a kilogram for 1 %")


def resin_in_ml(resin_l: float) -> Line:
    """Return the line that turns litres of resin into millilitres, `resin_ml`."""
    return Line(
        "resin_ml",
        "resin in millilitres",
        "ml",
        resin_l * ML_PER_L.value,
        "resin * ml_per_l",
        {"resin": Part(resin_l, "L", "resin"), "ml_per_l": ML_PER_L},
    )


@calculation
def catalyst_by_mass(
    resin_kg: ResinKilograms,
    percent: Dose = CATALYST_DOSE.value,
    catalyst_kg_per_l: Density = CATALYST_DENSITY.value,
) -> Calculation:
    """Return the millilitres of catalyst for a dose in percent by mass.

    mass = resin × percent ÷ 100; volume = mass ÷ density (1 kg/L is 1 g/ml).
    2 % by mass: Univ. of Southern Mississippi, Polymer Science Learning Center, "Hand lay up".

    Args:
        resin_kg: resin, 0.05–200 kg.
        percent: grams of catalyst to 100 g of resin, 0.5–6.
        catalyst_kg_per_l: density of the catalyst, 1.0–1.3 kg/L (from memory: 1.17).

    Raises:
        OutOfRange: an argument outside its range.
    """
    mass = yield Line(
        "mass",
        "mass of catalyst",
        "g",
        resin_kg * G_PER_KG.value * percent / 100,
        "resin * g_per_kg * percent / 100",
        {
            "resin": Part(resin_kg, "kg", "resin"),
            "g_per_kg": G_PER_KG,
            "percent": Part(percent, "%", "dose by mass"),
        },
    )
    return (
        yield Line(
            "volume",
            "volume of catalyst",
            "ml",
            mass / catalyst_kg_per_l,
            "mass / density",
            {
                "mass": Part(mass, "g", "mass of catalyst"),
                "density": Part(catalyst_kg_per_l, "kg/L", "density of catalyst"),
            },
        )
    )


@calculation
def catalyst_by_ml_per_kg(
    resin_kg: ResinKilograms, percent: DoseByRule = CATALYST_DOSE.value
) -> Calculation:
    """Return the millilitres of catalyst for a dose by the millilitre rule.

    dose = percent × 10 ml per kg; volume = resin × dose. Common practice; it takes 1 ml for 1 g.

    Args:
        resin_kg: resin, 0.05–200 kg.
        percent: the dose as the rule counts it, 0.5–5.

    Raises:
        OutOfRange: an argument outside its range.
    """
    dose = yield Line(
        "dose",
        "dose for a kilogram",
        "ml/kg",
        percent * RULE.value,
        "percent * rule",
        {"percent": Part(percent, "%", "dose"), "rule": RULE},
    )
    return (
        yield Line(
            "volume",
            "volume of catalyst",
            "ml",
            resin_kg * dose,
            "resin * dose",
            {
                "resin": Part(resin_kg, "kg", "resin"),
                "dose": Part(dose, "ml/kg", "dose for a kilogram"),
            },
        )
    )


@calculation
def catalyst_by_volume(
    resin_l: ResinLitres, percent: DoseByRule = CATALYST_DOSE.value
) -> Calculation:
    """Return the millilitres of catalyst for a dose in percent by volume.

    volume = resin in millilitres × percent ÷ 100.

    Args:
        resin_l: resin, 0.05–200 L.
        percent: millilitres of catalyst to 100 ml of resin, 0.5–5.

    Raises:
        OutOfRange: an argument outside its range.
    """
    resin_ml = yield resin_in_ml(resin_l)
    return (
        yield Line(
            "volume",
            "volume of catalyst",
            "ml",
            resin_ml * percent / 100,
            "resin * percent / 100",
            {
                "resin": Part(resin_ml, "ml", "resin"),
                "percent": Part(percent, "%", "dose by volume"),
            },
        )
    )
