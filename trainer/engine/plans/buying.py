"""What to buy for a roof, in the sizes that it is sold in."""

from collections.abc import Iterator
from dataclasses import dataclass

from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.bandage import BandagePlan
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.figure import Known, Measured, worked
from trainer.engine.plans.mat import MatPlan
from trainer.engine.plans.stages import Stage
from trainer.engine.plans.tape import TapePlan
from trainer.engine.plans.trims import TrimPlan
from trainer.engine.rolls import bottles, tins
from trainer.engine.totals import total_mass
from trainer.engine.units import show


@dataclass(frozen=True, slots=True)
class Purchase:
    """One thing to buy."""

    what: str
    #: How much of it the roof takes.
    needed: str
    #: The size that it is sold in.
    each: str
    count: Known


def purchases_of(
    roof: RoofDescription,
    tape: TapePlan,
    bandage: BandagePlan,
    mat: MatPlan,
    trims: TrimPlan,
    stages: tuple[Stage, ...],
) -> tuple[Purchase, ...]:
    """Return what to buy, every count rounded up."""
    return (
        *_rolls(roof, tape, bandage, mat),
        *_trims(roof, trims),
        *_resin(roof, stages),
    )


def _rolls(
    roof: RoofDescription, tape: TapePlan, bandage: BandagePlan, mat: MatPlan
) -> Iterator[Purchase]:
    sold = roof.sold
    if tape.length and tape.rolls:
        width = show(roof.tape.width_mm, "mm")
        yield Purchase(f"tape, {width}", tape.length.shown, show(sold.tape_roll_m, "m"), tape.rolls)
    width = show(roof.bandage.width_mm, "mm")
    each = show(sold.bandage_roll_m, "m")
    yield Purchase(f"bandage, {width}", bandage.length.shown, each, bandage.rolls)
    weight = show(roof.laminate.mat_g_per_m2, "g/m²")
    each = f"{show(sold.mat_roll_mm, 'mm')} by {show(sold.mat_roll_m, 'm')}"
    rolls = Measured("buy.mat", "rolls of mat", len(mat.cuts.bars), "rolls")
    # With the mat that is turned up, down and round, and the laps of drops longer than a roll.
    needed_m = sum(map(sum, mat.cuts.bars)) / MM_PER_M.value
    yield Purchase(f"mat, {weight}", show(needed_m, "m"), each, rolls)


def _trims(roof: RoofDescription, trims: TrimPlan) -> Iterator[Purchase]:
    for run in trims.runs:
        count = len(run.cuts.bars)
        lengths = Measured(f"buy.{run.kind}", f"lengths of {run.name}", count, "lengths")
        yield Purchase(run.name, run.length.shown, show(roof.sold.trim_m, "m"), lengths)


def _resin(roof: RoofDescription, stages: tuple[Stage, ...]) -> Iterator[Purchase]:
    sold = roof.sold
    *resin, topcoat = stages
    masses = tuple(stage.resin.value for stage in resin)
    all_resin = worked("buy.resin", "all the resin", total_mass, masses_kg=masses)
    for what, mass, tin_kg in (
        ("resin", all_resin, sold.resin_tin_kg),
        ("topcoat", topcoat.resin, sold.topcoat_tin_kg),
    ):
        key, words = f"buy.{what}.tins", f"tins of {what}"
        count = worked(key, words, tins, mass_kg=mass.value, tin_kg=tin_kg)
        yield Purchase(what, mass.shown, show(tin_kg, "kg"), count)
    volume = sum(stage.catalyst_ml for stage in stages)
    count = worked(
        "buy.catalyst",
        "bottles of catalyst",
        bottles,
        volume_ml=volume,
        bottle_ml=sold.catalyst_bottle_ml,
    )
    yield Purchase("catalyst", show(volume, "ml"), show(sold.catalyst_bottle_ml, "ml"), count)
