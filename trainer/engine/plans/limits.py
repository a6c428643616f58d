"""What keeps a batch from being larger: the bucket, a beginner, or what the crew lays in time."""

from dataclasses import dataclass
from typing import Literal

from trainer.engine.batches import batch_for_pace
from trainer.engine.drivers import answer
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.gel import GelTimes, NoTimes
from trainer.engine.resin import resin_litres
from trainer.engine.units import show


@dataclass(frozen=True, slots=True)
class Limit:
    """The most in one batch, in litres, and why."""

    litres: float
    by: Literal["bucket", "beginner", "pace"]
    why: str


def limit_of(roof: RoofDescription, gel: GelTimes | NoTimes, *, resin: bool) -> Limit:
    """Return the least of what the bucket, a beginner and the crew's pace allow."""
    crew, mix = roof.crew, roof.mix
    limits = [Limit(crew.bucket_l, "bucket", f"the bucket holds {show(crew.bucket_l, 'L')}")]
    if crew.beginner == "yes":
        most = show(crew.beginner_l, "L")
        why = f"a beginner mixes {most} at the most"
        limits.append(Limit(crew.beginner_l, "beginner", why))
    if resin and crew.pace_kg is not None and isinstance(gel, GelTimes):
        batch = batch_for_pace.inside(gel.working.value, crew.pace_kg, crew.people)
        kilograms = answer(batch)
        litres = answer(resin_litres.inside(kilograms, mix.resin_kg_per_l))
        time = show(int(gel.working.value), "min")
        why = f"the crew lays {show(kilograms, 'kg', 1)} in {time}"
        limits.append(Limit(litres, "pace", why))
    return min(limits, key=lambda limit: limit.litres)
