"""The bucket in front of somebody: its resin, its catalyst, the syringe's mark, and the gel."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from trainer.engine.cautions import cautions_for
from trainer.engine.dose import percent_by_mass, percent_by_ml_per_kg, percent_by_volume
from trainer.engine.drivers import Working
from trainer.engine.plans.description import Crew, Mix, fields_of
from trainer.engine.plans.dose import catalyst_for
from trainer.engine.plans.figure import Figure, Known, Measured, worked
from trainer.engine.plans.gel import GelTimes, NoTimes, TestCup, gel_of
from trainer.engine.resin import resin_kilograms, resin_litres
from trainer.engine.syringe import syringe_mark
from trainer.engine.units import show

ResinUnit = Literal["kg", "L"]
_USUAL_L: float = fields_of(Crew)["bucket_l"].default


@dataclass(frozen=True, slots=True)
class Bucket:
    """What goes into one bucket; each figure but the resin as it was given opens its working."""

    mix: Mix
    kilograms: Known
    litres: Known
    #: In millilitres, by the dose's own convention.
    catalyst: Figure
    #: The same in grams.
    grams: Figure
    #: By how many percent the syringe's nearest mark departs; the mark is in its working.
    mark: Figure
    #: What the dose is in each convention, in percent; the rule's working has its ml per kg.
    by_mass: Figure
    by_rule: Figure
    by_volume: Figure
    gel: GelTimes | NoTimes
    #: What the dose itself warns of.
    cautions: tuple[str, ...]

    @property
    def mark_ml(self) -> float:
        """Where the syringe is read, in millilitres."""
        return self.mark.working.figures["mark"]

    @property
    def ml_per_kg(self) -> Figure:
        """What the dose is in millilitres per kilogram."""
        return _up_to(self.by_rule, "dose")


def bucket_of(
    mix: Mix, resin: float, unit: ResinUnit, now_c: float | None, cups: Sequence[TestCup] = ()
) -> Bucket:
    """Return what goes into a bucket of so much resin, and when it may gel by these cups.

    `now_c` is the temperature of resin and air in °C. Raises Refused where the syringe is too
    coarse for so little catalyst.
    """
    kilograms, litres = _resin(mix, resin, unit)
    catalyst = catalyst_for(mix, kilograms.value, mix.percent, mix.convention)
    millilitres = {"catalyst_ml": catalyst.value}
    in_kilograms = {"resin_kg": kilograms.value, **millilitres}
    by_mass = worked(
        "dose.by_mass",
        "the same dose by mass",
        percent_by_mass,
        **in_kilograms,
        catalyst_kg_per_l=mix.catalyst_kg_per_l,
    )
    by_rule = worked(
        "dose.by_rule", "the same dose in ml per kg", percent_by_ml_per_kg, **in_kilograms
    )
    by_volume = worked(
        "dose.by_volume",
        "the same dose by volume",
        percent_by_volume,
        resin_l=litres.value,
        **millilitres,
    )
    mark = worked(
        "mark",
        "syringe mark",
        syringe_mark,
        volume_ml=catalyst.value,
        graduation_ml=mix.graduation_ml,
    )
    return Bucket(
        mix,
        kilograms,
        litres,
        catalyst,
        replace(_up_to(catalyst if mix.convention == "by mass" else by_mass, "mass"), key="grams"),
        mark,
        by_mass,
        by_rule,
        by_volume,
        gel_of(mix, by_mass.value, now_c, cups),
        (*cautions_for(by_mass.method, by_mass.givens, by_mass.working), *_size(litres.value)),
    )


def _resin(mix: Mix, resin: float, unit: ResinUnit) -> tuple[Known, Known]:
    """Return the resin in kilograms and in litres, one as it was given."""
    density = {"resin_kg_per_l": mix.resin_kg_per_l}
    if unit == "kg":
        litres = worked("litres", "resin in litres", resin_litres, resin_kg=resin, **density)
        return Measured("kilograms", "resin", resin, "kg"), litres
    kilograms = worked("kilograms", "resin in kilograms", resin_kilograms, resin_l=resin, **density)
    return kilograms, Measured("litres", "resin", resin, "L")


def _up_to(figure: Figure, key: str) -> Figure:
    """Return an earlier line of a working as a figure of its own."""
    keys = [line.key for line in figure.working.lines]
    lines = figure.working.lines[: keys.index(key) + 1]
    figures = {line.key: figure.working.figures[line.key] for line in lines}
    return replace(figure, working=Working(lines, figures, figures[key]))


def _size(litres: float) -> Iterator[str]:
    """Yield what a bucket over the usual size warns of."""
    if litres > _USUAL_L:
        most = show(_USUAL_L, "L")
        yield (
            f"That is more than {most} in one bucket. Share it out in equal batches: "
            "a large one gels sooner and heats itself."
        )
