"""The dose of a roof: as it was given, and by mass."""

from dataclasses import dataclass

from trainer.engine.catalyst import catalyst_by_mass, catalyst_by_ml_per_kg, catalyst_by_volume
from trainer.engine.dose import percent_by_mass
from trainer.engine.drivers import answer
from trainer.engine.plans.description import Convention, Mix, RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.plans.gel import NoTimes, TestCup, dose_for_wanted
from trainer.engine.resin import resin_litres
from trainer.engine.units import show

CONVENTIONS: dict[Convention, str] = {
    "by mass": "by mass",
    "ml per kg": "by the millilitre rule, ten to a kilogram for one percent",
    "by volume": "by volume",
}


@dataclass(frozen=True, slots=True)
class Dose:
    """A dose of catalyst in its convention."""

    percent: float
    convention: Convention
    #: As it comes to by mass.
    by_mass: Figure
    #: The working that it was chosen by for a gel time that was wanted.
    chosen: Figure | None = None
    #: Why a gel time that was wanted could not be had.
    unmet: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """The dose with its convention: "2 % by mass"."""
        return f"{show(self.percent, '%')} {CONVENTIONS[self.convention]}"


def dose_of(roof: RoofDescription, cups: tuple[TestCup, ...], now_c: float | None) -> Dose:
    """Return the dose: the one that was given, or the one for the gel time wanted."""
    mix = roof.mix
    if mix.wanted_gel_min is None:
        return _as_given(mix)
    if now_c is None:
        unmet = ("No air temperature was given, so no dose can be chosen for a gel time.",)
        return _as_given(mix, unmet)
    band = (mix.least_percent, mix.most_percent)
    chosen = dose_for_wanted(cups, mix.product or "", now_c, mix.wanted_gel_min, band=band)
    if isinstance(chosen, NoTimes):
        return _as_given(mix, chosen.reasons)
    return Dose(chosen.value, "by mass", dose_by_mass(mix, chosen.value, "by mass"), chosen)


def _as_given(mix: Mix, unmet: tuple[str, ...] = ()) -> Dose:
    by_mass = dose_by_mass(mix, mix.percent, mix.convention)
    return Dose(mix.percent, mix.convention, by_mass, None, unmet)


def dose_by_mass(mix: Mix, percent: float, convention: Convention) -> Figure:
    """Return what a dose of some convention comes to by mass."""
    return worked(
        "dose.by_mass",
        "dose by mass",
        percent_by_mass,
        resin_kg=1,
        catalyst_ml=catalyst_for(mix, 1, percent, convention).value,
        catalyst_kg_per_l=mix.catalyst_kg_per_l,
    )


def catalyst_for(
    mix: Mix, resin_kg: float, percent: float, convention: Convention, key: str = "catalyst"
) -> Figure:
    """Return the millilitres of catalyst in so much resin, by the dose's own convention."""
    words = f"catalyst, {show(percent, '%')} {CONVENTIONS[convention]}"
    if convention == "by mass":
        density = mix.catalyst_kg_per_l
        givens = {"resin_kg": resin_kg, "percent": percent, "catalyst_kg_per_l": density}
        return worked(key, words, catalyst_by_mass, **givens)
    if convention == "ml per kg":
        return worked(key, words, catalyst_by_ml_per_kg, resin_kg=resin_kg, percent=percent)
    litres = answer(resin_litres.inside(resin_kg, mix.resin_kg_per_l))
    return worked(key, words, catalyst_by_volume, resin_l=litres, percent=percent)
