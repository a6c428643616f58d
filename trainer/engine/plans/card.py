"""The mix card of a roof: gel bands over the day's temperatures and doses, and what to draw up."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from trainer.engine.catalyst import catalyst_by_mass
from trainer.engine.conversions import rounded_up
from trainer.engine.drivers import answer, work
from trainer.engine.errors import Refused
from trainer.engine.plans.description import Mix, RoofDescription
from trainer.engine.plans.gel import GelTimes, TestCup, gel_of
from trainer.engine.plans.roof import RoofPlan, cups_of, plan_roof
from trainer.engine.resin import resin_kilograms
from trainer.engine.syringe import syringe_mark
from trainer.engine.units import show

#: In degrees: no time is told outside of them.
COLDEST, HOTTEST, STEP_C = 5, 35, 5
#: Doses go up by halves of a percent.
STEP_PERCENT = 0.5
#: A time that is whole but for the last digits of a float stays whole.
_NEAR = 1e-9


@dataclass(frozen=True, slots=True)
class GelBand:
    """One cell: from the soonest to the latest gel in whole minutes, or why there is none."""

    short_min: int | None = None
    long_min: int | None = None
    #: Sentences.
    refusal: str = ""

    @property
    def words(self) -> str:
        """The band as it is read: "22 to 29 min", or one figure where both ends are the same."""
        if self.short_min is None or self.long_min is None:
            return "no time"
        long = show(self.long_min, "min")
        return long if self.short_min == self.long_min else f"{self.short_min} to {long}"


@dataclass(frozen=True, slots=True)
class Degrees:
    """One row: the gel bands at a temperature, one for each dose."""

    at_c: float
    #: Whether it is what today's times are told at.
    today: bool
    bands: tuple[GelBand, ...]


@dataclass(frozen=True, slots=True)
class Portion:
    """The catalyst in some resin."""

    grams: float
    millilitres: float
    #: Where the roof's syringe is read; None where that is less than half of one mark.
    mark_ml: float | None

    @property
    def mark_words(self) -> str:
        """The mark as it is read off: "17 ml", or that the syringe is too coarse."""
        return "finer syringe" if self.mark_ml is None else show(self.mark_ml, "ml")


@dataclass(frozen=True, slots=True)
class CardDose:
    """One dose by mass, and its catalyst."""

    percent: float
    #: Whether it is the dose that the roof is planned with.
    today: bool
    in_kilogram: Portion
    in_litre: Portion
    #: In one batch of each stage, in order.
    in_batches: tuple[Portion, ...]


@dataclass(frozen=True, slots=True)
class CardBatch:
    """The batches of one stage, as they are planned for today's dose."""

    title: str
    count: int
    resin_kg: float
    #: Where the syringe is read with today's dose, as the sheet has it.
    mark_ml: float


@dataclass(frozen=True, slots=True)
class MixCard:
    """What hangs by the bucket."""

    plan: RoofPlan
    batches: tuple[CardBatch, ...]
    doses: tuple[CardDose, ...]
    #: None at all where no time can be told, as without a test cup.
    rows: tuple[Degrees, ...]
    #: Each reason for which a time is refused, once, in the order of the rows.
    refusals: tuple[str, ...]

    @property
    def now(self) -> GelBand | None:
        """The cell of today's temperature and today's dose; None where either isn't known."""
        row = next((row for row in self.rows if row.today), None)
        if row is None:
            return None
        return next(b for b, dose in zip(row.bands, self.doses, strict=True) if dose.today)


def card_of(description: RoofDescription) -> MixCard:
    """Return the mix card of a roof; raise BadRoof as plan_roof does.

    Doses are by mass. Temperatures are those of air, resin and mat, which lie at one temperature.
    """
    return card_of_plan(plan_roof(description))


def card_of_plan(plan: RoofPlan) -> MixCard:
    """Return the mix card of a roof that has been planned."""
    roof = plan.description
    # The topcoat has a dose of its own.
    stages = [stage for stage in plan.stages if stage.slug != "topcoat"]
    batches = tuple(CardBatch(s.title, len(s.batches), s.share.value, s.mark_ml) for s in stages)
    today = plan.dose.by_mass.value
    percents = tuple(_percents(roof.mix, today))
    doses = tuple(_dose(roof.mix, each, batches, today) for each in percents)
    rows = tuple(_rows(roof, percents))
    bands = [band for row in rows for band in row.bands]
    refusals = tuple(dict.fromkeys(band.refusal for band in bands if band.refusal))
    told = any(not band.refusal for band in bands)
    return MixCard(plan, batches, doses, rows if told else (), refusals)


def _percents(mix: Mix, today: float) -> list[float]:
    """Return the doses of the band in halves, its ends and today's among them."""
    low, high = mix.least_percent, mix.most_percent
    first = rounded_up(round(low * 1000), round(STEP_PERCENT * 1000))
    halves = [n * STEP_PERCENT for n in range(int(first), math.floor(high / STEP_PERCENT) + 1)]
    return _each_once([low, *halves, high, today])


def _each_once(values: list[float]) -> list[float]:
    """Return values from low to high, without those that are the same but for a float's end."""
    kept: list[float] = []
    for value in sorted(values):
        if not kept or not math.isclose(value, kept[-1]):
            kept.append(value)
    return kept


def _dose(mix: Mix, percent: float, batches: tuple[CardBatch, ...], today: float) -> CardDose:
    litre = answer(resin_kilograms.inside(1.0, mix.resin_kg_per_l))
    in_kilogram, in_litre, *in_batches = (
        _portion(mix, kilograms, percent)
        for kilograms in (1.0, litre, *(batch.resin_kg for batch in batches))
    )
    is_today = math.isclose(percent, today)
    if is_today:
        # Today's dose may be in another convention: a float's last digit moves no mark.
        pairs = zip(in_batches, batches, strict=True)
        in_batches = [replace(portion, mark_ml=batch.mark_ml) for portion, batch in pairs]
    return CardDose(percent, is_today, in_kilogram, in_litre, tuple(in_batches))


def _portion(mix: Mix, resin_kg: float, percent: float) -> Portion:
    working = work(catalyst_by_mass.inside(resin_kg, percent, mix.catalyst_kg_per_l))
    return Portion(working.figures["mass"], working.value, _mark(mix, working.value))


def _mark(mix: Mix, millilitres: float) -> float | None:
    try:
        return work(syringe_mark.inside(millilitres, mix.graduation_ml)).figures["mark"]
    except Refused:
        return None


def _rows(roof: RoofDescription, percents: tuple[float, ...]) -> Iterator[Degrees]:
    cups = cups_of(roof)
    if not cups:
        return
    now_c = roof.weather.gel_c
    steps = [float(each) for each in range(COLDEST, HOTTEST + 1, STEP_C)]
    for at_c in _each_once([*steps, *([] if now_c is None else [now_c])]):
        bands = tuple(_band(roof, cups, at_c, percent) for percent in percents)
        yield Degrees(at_c, now_c is not None and math.isclose(at_c, now_c), bands)


def _band(roof: RoofDescription, cups: tuple[TestCup, ...], at_c: float, percent: float) -> GelBand:
    told = gel_of(roof.mix, percent, at_c, cups)
    if not isinstance(told, GelTimes):
        return GelBand(refusal=" ".join(told.reasons))
    short, long = told.short.value, told.long.value
    return GelBand(math.floor(short + _NEAR), math.ceil(long - _NEAR))
