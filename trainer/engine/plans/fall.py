"""The fall of a roof: the drop that is wanted over its run, and what was measured."""

from dataclasses import dataclass

from trainer.engine.conversions import MM_PER_M
from trainer.engine.fall import fall_drop, fall_ratio
from trainer.engine.materials import FALL_FINISHED
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.plans.sides import Side


@dataclass(frozen=True, slots=True)
class FallPlan:
    """The fall towards one side."""

    towards: int
    #: Where water runs, as a step of length one: x to the right, y up.
    direction: tuple[float, float]
    run_m: float
    #: Wanted over the run, in millimetres.
    drop: Figure
    #: The ratio that was measured; None where nobody did.
    measured: Figure | None
    verdict: str


def fall_of(roof: RoofDescription, sides: tuple[Side, ...]) -> FallPlan:
    """Return the fall across the roof's greatest run towards a side, square to it.

    A finished roof keeps 1:80 where it is laid to 1:40 (NHBC Standards, ch. 7.1).
    """
    side = sides[roof.fall.towards_edge - 1]
    out = _out_of(side)
    reach = [x * out[0] + y * out[1] for x, y in roof.corners]
    run_m = (max(reach) - min(reach)) / MM_PER_M.value
    drop = worked("fall.drop", "drop wanted", fall_drop, run_m=run_m, ratio=roof.fall.ratio)
    if roof.fall.measured_mm is None:
        verdict = "Not measured: check it with a level and a spacer before anything is wet."
        return FallPlan(side.number, out, run_m, drop, None, verdict)
    drop_mm = roof.fall.measured_mm
    measured = worked("fall.measured", "fall, one in", fall_ratio, run_m=run_m, drop_mm=drop_mm)
    return FallPlan(side.number, out, run_m, drop, measured, _verdict(measured.value, roof))


def _out_of(side: Side) -> tuple[float, float]:
    """Return the direction out of the roof across a side: right of the way round."""
    (x0, y0), (x1, y1) = side.start, side.end
    return (y1 - y0) / side.length_mm, (x0 - x1) / side.length_mm


def _verdict(ratio: float, roof: RoofDescription) -> str:
    if ratio <= roof.fall.ratio:
        return "The fall is there."
    if ratio <= FALL_FINISHED.value:
        return "Flatter than wanted: nothing is left for boards that sag. Pack it up if you can."
    return "Too flat: water will stand. Put the fall right before anything is laid."
