"""The dose that is in a bucket, in each of the three conventions: catalyst.py turned round."""

from typing import Annotated

from trainer.engine.catalyst import RULE, Density, ResinKilograms, ResinLitres, resin_in_ml
from trainer.engine.conversions import G_PER_KG
from trainer.engine.materials import CATALYST_DENSITY
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Millilitres = Annotated[float, Given("catalyst", "ml", 0.1, 10_000)]


@calculation
def percent_by_mass(
    resin_kg: ResinKilograms,
    catalyst_ml: Millilitres,
    catalyst_kg_per_l: Density = CATALYST_DENSITY.value,
) -> Calculation:
    """Return the percent by mass that went in, from the millilitres of catalyst.

    mass = volume × density; percent = mass ÷ resin × 100.

    Args:
        resin_kg: resin, 0.05–200 kg.
        catalyst_ml: catalyst that went in, 0.1–10 000 ml.
        catalyst_kg_per_l: density of the catalyst, 1.0–1.3 kg/L (from memory: 1.17).

    Raises:
        OutOfRange: an argument outside its range.
    """
    mass = yield Line(
        "mass",
        "mass of catalyst",
        "g",
        catalyst_ml * catalyst_kg_per_l,
        "catalyst * density",
        {
            "catalyst": Part(catalyst_ml, "ml", "volume of catalyst"),
            "density": Part(catalyst_kg_per_l, "kg/L", "density of catalyst"),
        },
    )
    return (
        yield Line(
            "percent",
            "percent by mass",
            "%",
            mass / (resin_kg * G_PER_KG.value) * 100,
            "mass / (resin * g_per_kg) * 100",
            {
                "mass": Part(mass, "g", "mass of catalyst"),
                "resin": Part(resin_kg, "kg", "resin"),
                "g_per_kg": G_PER_KG,
            },
        )
    )


@calculation
def percent_by_ml_per_kg(resin_kg: ResinKilograms, catalyst_ml: Millilitres) -> Calculation:
    """Return the percent that the millilitre rule counts, from the millilitres of catalyst.

    dose = volume ÷ resin; percent = dose ÷ 10 ml per kg. Common practice.

    Args:
        resin_kg: resin, 0.05–200 kg.
        catalyst_ml: catalyst that went in, 0.1–10 000 ml.

    Raises:
        OutOfRange: an argument outside its range.
    """
    dose = yield Line(
        "dose",
        "dose for a kilogram",
        "ml/kg",
        catalyst_ml / resin_kg,
        "catalyst / resin",
        {
            "catalyst": Part(catalyst_ml, "ml", "volume of catalyst"),
            "resin": Part(resin_kg, "kg", "resin"),
        },
    )
    return (
        yield Line(
            "percent",
            "percent by the millilitre rule",
            "%",
            dose / RULE.value,
            "dose / rule",
            {"dose": Part(dose, "ml/kg", "dose for a kilogram"), "rule": RULE},
        )
    )


@calculation
def percent_by_volume(resin_l: ResinLitres, catalyst_ml: Millilitres) -> Calculation:
    """Return the percent by volume that went in, from the millilitres of catalyst.

    percent = catalyst ÷ resin in millilitres × 100.

    Args:
        resin_l: resin, 0.05–200 L.
        catalyst_ml: catalyst that went in, 0.1–10 000 ml.

    Raises:
        OutOfRange: an argument outside its range.
    """
    resin_ml = yield resin_in_ml(resin_l)
    return (
        yield Line(
            "percent",
            "percent by volume",
            "%",
            catalyst_ml / resin_ml * 100,
            "catalyst / resin * 100",
            {
                "catalyst": Part(catalyst_ml, "ml", "volume of catalyst"),
                "resin": Part(resin_ml, "ml", "resin"),
            },
        )
    )
