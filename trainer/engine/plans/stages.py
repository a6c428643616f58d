"""The stages of laying a roof: their resin, their equal batches, and the clock of each batch."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from trainer.engine.batches import equal_batches
from trainer.engine.layers import resin_for_layers
from trainer.engine.mat import resin_for_area
from trainer.engine.plans.bandage import BandagePlan
from trainer.engine.plans.description import Convention, Mix, RoofDescription
from trainer.engine.plans.dose import Dose, catalyst_for
from trainer.engine.plans.figure import Figure, rests_on, worked
from trainer.engine.plans.gel import GelTimes, NoTimes
from trainer.engine.plans.limits import Limit, limit_of
from trainer.engine.plans.mat import MatPlan
from trainer.engine.resin import resin_litres
from trainer.engine.syringe import syringe_mark
from trainer.engine.topcoat import topcoat_mass
from trainer.engine.totals import total_area, total_mass

Slug = Literal["bandage", "turned", "laminate", "topcoat"]
_TEN_MINUTES = 10
_SETS_FIRST = "The topcoat goes on when the laminate has set, so it has no clock."


@dataclass(frozen=True, slots=True)
class Batch:
    """One bucket; times are minutes after midnight, and None without a gel to go by."""

    number: int
    #: When the catalyst goes in.
    start_min: float | None = None
    #: When laying stops.
    until_min: float | None = None
    #: When it may gel.
    gel_min: float | None = None


@dataclass(frozen=True, slots=True)
class Stage:
    """One stage: all of its resin, shared out in equal batches."""

    slug: Slug
    title: str
    resin: Figure
    #: Of one batch, in kilograms.
    share: Figure
    #: Of one batch.
    litres: Figure
    #: What keeps a batch from being larger.
    limit: Limit
    #: For one batch, in millilitres.
    catalyst: Figure
    #: By how many percent the syringe's nearest mark departs; the mark is in its working.
    mark: Figure
    batches: tuple[Batch, ...]

    @property
    def catalyst_ml(self) -> float:
        """Catalyst for the whole stage."""
        return self.catalyst.value * len(self.batches)

    @property
    def mark_ml(self) -> float:
        """Where the syringe is read, in millilitres; `mark` itself is the error of reading it."""
        return self.mark.working.figures["mark"]

    @property
    def percent(self) -> float:
        """The dose, counted as the catalyst's words say."""
        percent: float = self.catalyst.givens["percent"]
        return percent

    @property
    def no_clock(self) -> str:
        """Why a stage never has a clock, in a sentence; nothing where it may have one."""
        return _SETS_FIRST if self.slug == "topcoat" else ""

    @property
    def catalyst_g(self) -> float | None:
        """Grams of catalyst in one batch, where the dose goes by mass."""
        lines = {line.key: line.value for line in self.catalyst.working.lines}
        return lines.get("mass")


def stages_of(
    roof: RoofDescription, bandage: BandagePlan, mat: MatPlan, dose: Dose, gel: GelTimes | NoTimes
) -> tuple[Stage, ...]:
    """Return the stages in order. The topcoat goes on when the laminate has set: no clock."""
    limit = limit_of(roof, gel, resin=True)
    stages = [
        _stage(roof.mix, *_titles[slug], resin, limit, dose.percent, dose.convention)
        for slug, resin in _resins(roof, bandage, mat)
    ]
    return (*_on_the_clock(roof, stages, gel), _topcoat(roof, mat))


_titles: dict[Slug, tuple[Slug, str]] = {
    "bandage": ("bandage", "Bandage and patches"),
    "turned": ("turned", "Upstands, edges and collars"),
    "laminate": ("laminate", "Main laminate"),
}


def _resins(
    roof: RoofDescription, bandage: BandagePlan, mat: MatPlan
) -> Iterator[tuple[Slug, Figure]]:
    laminate = roof.laminate
    resin = {
        "mat_g_per_m2": laminate.mat_g_per_m2,
        "ratio": laminate.ratio,
        "allowance_percent": laminate.allowance_percent,
    }
    masses = [bandage.resin.value, *([bandage.patch_resin.value] if bandage.patch_resin else [])]
    words = "resin for bandage and patches"
    yield "bandage", worked("stages.bandage", words, total_mass, masses_kg=tuple(masses))
    if mat.turned_area:
        yield (
            "turned",
            worked(
                "stages.turned",
                "resin for upstands, edges and collars",
                resin_for_layers,
                area_m2=mat.turned_area.value,
                layers=laminate.layers,
                **resin,
            ),
        )
    area = mat.laid.value
    words = "resin for the main laminate"
    yield "laminate", worked("stages.laminate", words, resin_for_area, area_m2=area, **resin)


def _stage(
    mix: Mix,
    slug: Slug,
    title: str,
    resin: Figure,
    limit: Limit,
    percent: float,
    convention: Convention,
) -> Stage:
    share = worked(
        f"stages.{slug}.batch",
        "resin in each batch",
        equal_batches,
        resin_kg=resin.value,
        limit_l=limit.litres,
        resin_kg_per_l=mix.resin_kg_per_l,
    )
    catalyst = catalyst_for(mix, share.value, percent, convention, f"stages.{slug}.catalyst")
    count = round(resin.value / share.value)
    return Stage(
        slug,
        title,
        resin,
        share,
        worked(
            f"stages.{slug}.litres",
            "litres in each batch",
            resin_litres,
            resin_kg=share.value,
            resin_kg_per_l=mix.resin_kg_per_l,
        ),
        limit,
        catalyst,
        _mark(mix, slug, catalyst),
        tuple(Batch(number) for number in range(1, count + 1)),
    )


def _mark(mix: Mix, slug: Slug, catalyst: Figure) -> Figure:
    with rests_on("mix.graduation_ml"):
        return worked(
            f"stages.{slug}.mark",
            "error that the mark makes",
            syringe_mark,
            volume_ml=catalyst.value,
            graduation_ml=mix.graduation_ml,
        )


def _topcoat(roof: RoofDescription, mat: MatPlan) -> Stage:
    turned = (mat.turned_area.value,) if mat.turned_area else ()
    area = worked(
        "topcoat.area",
        "area to topcoat",
        total_area,
        areas_m2=(mat.laid.givens["area_m2"], *turned),
    )
    mass = worked(
        "stages.topcoat",
        "topcoat",
        topcoat_mass,
        area_m2=area.value,
        kg_per_m2=roof.topcoat.kg_per_m2,
    )
    limit = limit_of(roof, NoTimes(()), resin=False)
    mix = Mix(
        resin_kg_per_l=roof.topcoat.kg_per_l,
        catalyst_kg_per_l=roof.mix.catalyst_kg_per_l,
        graduation_ml=roof.mix.graduation_ml,
    )
    return _stage(mix, "topcoat", "Topcoat", mass, limit, roof.topcoat.percent, "by mass")


def _on_the_clock(
    roof: RoofDescription, stages: Sequence[Stage], gel: GelTimes | NoTimes
) -> Iterator[Stage]:
    """Yield the stages with their batches' times, one batch after the other from the start."""
    start = roof.crew.start_minute
    if start is None or not isinstance(gel, GelTimes):
        yield from stages
        return
    now = float(start)
    for stage in stages:
        busy = roof.mix.mixing_min + _laying(roof, stage, gel.working.value)
        yield _timed(stage, now, busy, gel.lay_by, gel.short.value)
        now += busy * len(stage.batches)


def _laying(roof: RoofDescription, stage: Stage, working_min: float) -> float:
    """Return the minutes that a batch takes to lay: at the crew's pace, else all there are."""
    if roof.crew.pace_kg is None:
        return working_min
    return stage.share.value / (roof.crew.pace_kg * roof.crew.people) * _TEN_MINUTES


def _timed(stage: Stage, first: float, busy: float, until: float, gel: float) -> Stage:
    starts = [first + busy * number for number in range(len(stage.batches))]
    batches = [
        Batch(number, start, start + until, start + gel) for number, start in enumerate(starts, 1)
    ]
    return replace(stage, batches=tuple(batches))
