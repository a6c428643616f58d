"""The whole way from an area of mat to the catalyst in one bucket."""

from dataclasses import replace
from typing import Annotated

from trainer.engine.batches import equal_batches
from trainer.engine.catalyst import catalyst_by_mass
from trainer.engine.mat import Allowance, MatWeight, Ratio, resin_for_area
from trainer.engine.materials import (
    ALLOWANCE,
    BEGINNER_BATCH,
    CATALYST_DENSITY,
    CATALYST_DOSE,
    MAT_WEIGHT,
    RESIN_DENSITY,
    RESIN_TO_GLASS,
)
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, calculation


@calculation
def catalyst_for_area(
    area_m2: Annotated[float, Given("area", "m²", 0.2, 500)],
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    allowance_percent: Allowance = ALLOWANCE.value,
    limit_l: Annotated[
        float, replace(BEGINNER_BATCH.given, words="most in one batch")
    ] = BEGINNER_BATCH.value,
    percent: Annotated[float, CATALYST_DOSE.given] = CATALYST_DOSE.value,
    resin_kg_per_l: Annotated[float, RESIN_DENSITY.given] = RESIN_DENSITY.value,
    catalyst_kg_per_l: Annotated[float, CATALYST_DENSITY.given] = CATALYST_DENSITY.value,
) -> Calculation:
    """Return the millilitres of catalyst in each of the equal batches for an area of mat.

    Chains resin_for_area, equal_batches and catalyst_by_mass.

    Args:
        area_m2: area of mat, 0.2–500 m².
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        allowance_percent: on top for deck, bucket and roller, 0–50 %.
        limit_l: the most in one batch, 0.1–25 L.
        percent: grams of catalyst to 100 g of resin, 0.5–6.
        resin_kg_per_l: density of the liquid resin, 0.95–1.30 kg/L.
        catalyst_kg_per_l: density of the catalyst, 1.0–1.3 kg/L.

    Raises:
        OutOfRange: an argument outside its range.
    """
    resin = yield from resin_for_area.inside(area_m2, mat_g_per_m2, ratio, allowance_percent)
    batch = yield from equal_batches.inside(resin, limit_l, resin_kg_per_l)
    return (yield from catalyst_by_mass.inside(batch, percent, catalyst_kg_per_l))
