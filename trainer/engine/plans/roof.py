"""The plan of a roof: one frozen plan from one frozen description."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from trainer.engine.errors import BadRoof, NotAFigure, Refused
from trainer.engine.layers import thickness_of_layers, weight_of_roof, weight_per_m2
from trainer.engine.plans.bandage import BandagePlan, bandage_of
from trainer.engine.plans.buying import Purchase, purchases_of
from trainer.engine.plans.checks import check_roof
from trainer.engine.plans.deck import Deck, deck_of
from trainer.engine.plans.description import PARTS, RoofDescription, Weather, fields_of
from trainer.engine.plans.dose import Dose, dose_of
from trainer.engine.plans.fall import FallPlan, fall_of
from trainer.engine.plans.figure import Figure, Known, worked
from trainer.engine.plans.gel import GelTimes, NoTimes, TestCup, gel_of
from trainer.engine.plans.mat import MatPlan, mat_of
from trainer.engine.plans.sides import Corner, Side, corners_of, sides_of
from trainer.engine.plans.stages import Stage, stages_of
from trainer.engine.plans.tape import TapePlan, tape_of
from trainer.engine.plans.trims import TrimPlan, trims_of
from trainer.engine.plans.verdict import Verdict, judge
from trainer.engine.plans.warnings import sooner, warnings_of
from trainer.engine.units import show

_LOOKED = {"yes": True, "no": False, "not looked at": None}


@dataclass(frozen=True, slots=True)
class Assumption:
    """A default that nobody gave, and how it is known."""

    part: str
    field: str
    words: str
    shown: str
    standing: str


@dataclass(frozen=True, slots=True)
class RoofPlan:
    """Everything that must be known before the first lid is opened."""

    description: RoofDescription
    sides: tuple[Side, ...]
    corners: tuple[Corner, ...]
    deck: Deck
    tape: TapePlan
    trims: TrimPlan
    bandage: BandagePlan
    mat: MatPlan
    dose: Dose
    gel: GelTimes | NoTimes
    stages: tuple[Stage, ...]
    verdict: Verdict
    fall: FallPlan
    thickness: Figure
    weight_per_m2: Figure
    weight: Figure
    purchases: tuple[Purchase, ...]
    cautions: tuple[str, ...]
    assumptions: tuple[Assumption, ...]

    def figures(self) -> Mapping[str, Known]:
        """Return every figure of the plan by its key, in the order of the work."""
        return {figure.key: figure for figure in self._figures()}

    def _figures(self) -> Iterator[Known]:
        yield from (side.length for side in self.sides)
        yield from (self.deck.area, self.deck.net)
        yield from (joint.length for joint in self.deck.joints)
        yield from _known(self.tape.length, self.tape.bare)
        for run in self.trims.runs:
            yield from (run.length, run.bound)
        yield from (self.bandage.length, self.bandage.resin)
        yield from _known(self.bandage.patch, self.bandage.patch_resin)
        yield from _known(*self.mat.drops_in_layer, self.mat.shift, self.mat.laid, self.mat.length)
        yield from (each.area for each in self.mat.turned)
        yield from _known(self.mat.turned_area, self.dose.by_mass, self.dose.chosen)
        if isinstance(self.gel, GelTimes):
            yield from (self.gel.short, self.gel.long, self.gel.working)
        for stage in self.stages:
            yield from (stage.resin, stage.share, stage.litres, stage.catalyst, stage.mark)
        yield from _known(self.fall.drop, self.fall.measured)
        yield from _known(*(reason.figure for reason in self.verdict.reasons))
        yield from (self.thickness, self.weight_per_m2, self.weight)
        yield from (purchase.count for purchase in self.purchases)


def _known(*figures: Figure | None) -> Iterator[Figure]:
    yield from (figure for figure in figures if figure is not None)


def plan_roof(roof: RoofDescription) -> RoofPlan:
    """Return the whole plan of a roof; raise BadRoof for one that can't be planned."""
    check_roof(roof)
    try:
        return _planned(roof)
    except (Refused, NotAFigure) as refused:
        raise BadRoof("roof", str(refused)) from refused


def _planned(roof: RoofDescription) -> RoofPlan:
    sides = sides_of(roof)
    corners = corners_of(roof, sides)
    deck = deck_of(roof)
    tape = tape_of(roof, deck)
    trims = trims_of(roof, sides, corners)
    bandage = bandage_of(roof, sides, corners, deck, trims)
    mat = mat_of(roof, deck, sides)
    cups = cups_of(roof)
    dose = dose_of(roof, cups, roof.weather.gel_c)
    gel = _gel(roof, cups, dose)
    stages = stages_of(roof, bandage, mat, dose, gel)
    verdict = _verdict(roof.weather)
    fall = fall_of(roof, sides)
    laminate = {
        "layers": roof.laminate.layers,
        "mat_g_per_m2": roof.laminate.mat_g_per_m2,
        "ratio": roof.laminate.ratio,
    }
    coated = {**laminate, "topcoat_kg_per_m2": roof.topcoat.kg_per_m2}
    return RoofPlan(
        roof,
        sides,
        corners,
        deck,
        tape,
        trims,
        bandage,
        mat,
        dose,
        gel,
        stages,
        verdict,
        fall,
        worked("laminate.thickness", "thickness of the laminate", thickness_of_layers, **laminate),
        worked("laminate.square", "weight on a square metre", weight_per_m2, **coated),
        worked(
            "laminate.weight",
            "weight of the roof",
            weight_of_roof,
            area_m2=deck.net.value,
            **coated,
        ),
        purchases_of(roof, tape, bandage, mat, trims, stages),
        warnings_of(roof, sides, tape, dose, gel),
        tuple(_assumptions(roof)),
    )


def cups_of(roof: RoofDescription) -> tuple[TestCup, ...]:
    """Return a roof's test cups; one without a name is of the roof's own resin."""
    own = roof.mix.product or ""
    return tuple(
        TestCup(
            cup.product or own,
            cup.minutes,
            cup.at_c,
            cup.percent,
            cup.days_old,
            cup.of == "first batch",
            cup.of == "data sheet",
        )
        for cup in roof.cups
    )


def _gel(roof: RoofDescription, cups: tuple[TestCup, ...], dose: Dose) -> GelTimes | NoTimes:
    told = gel_of(roof.mix, dose.by_mass.value, roof.weather.gel_c, cups)
    return replace(
        told, cautions=(*told.cautions, *sooner(roof.weather, timed=isinstance(told, GelTimes)))
    )


def _verdict(weather: Weather) -> Verdict:
    return judge(
        weather.air_c,
        weather.deck_c,
        weather.humidity_percent,
        deck_damp=_LOOKED[weather.damp],
        rain_expected=_LOOKED[weather.rain],
        sun_on_deck=_LOOKED[weather.sun],
        windy=_LOOKED[weather.wind],
        timber_percent=weather.timber_percent,
    )


def _assumptions(roof: RoofDescription) -> Iterator[Assumption]:
    """Yield the defaults that nobody gave, each with its standing."""
    for part, kind in PARTS.items():
        for name, field in fields_of(kind).items():
            value = getattr(getattr(roof, part), name)
            if field.standing and f"{part}.{name}" not in roof.given:
                shown = show(value, field.unit)
                yield Assumption(part, name, field.words, shown, field.standing)
