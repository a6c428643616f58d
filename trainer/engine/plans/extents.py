"""How far a roof reaches along and up, and what of that is a rectangle or an L."""

from trainer.engine import outline
from trainer.engine.conversions import MM_PER_M
from trainer.engine.outline import Outline
from trainer.engine.plans.roof import RoofPlan

#: Along the roof, up the roof.
ALONG, UP = 0, 1
_CORNERS_OF_AN_ELL = 6


def extent_m(plan: RoofPlan, axis: int) -> float:
    """Return how far a roof reaches along or up, in metres."""
    low, high = outline.extent(plan.description.corners)
    return (high[axis] - low[axis]) / MM_PER_M.value


def across_drops_m(plan: RoofPlan) -> float:
    """Return what the drops of mat cover side by side, in metres."""
    return extent_m(plan, UP if plan.mat.run == "along" else ALONG)


def along_drops_m(plan: RoofPlan) -> float:
    """Return how far the longest drop reaches on the roof, in metres."""
    return extent_m(plan, ALONG if plan.mat.run == "along" else UP)


def rectangle_m(plan: RoofPlan, axis: int) -> float | None:
    """Return one extent of a rectangular roof, in metres; None for any other."""
    corners = plan.description.corners
    is_box = {*corners} == {*outline.box(*outline.extent(corners))}
    return extent_m(plan, axis) if is_box else None


def ell_m(plan: RoofPlan, axis: int) -> float | None:
    """Return one extent of an L with the corner that it lacks, in metres; None for any other."""
    return None if missing_mm(plan.description.corners) is None else extent_m(plan, axis)


def lacking_m(plan: RoofPlan, axis: int) -> float | None:
    """Return one extent of the corner that an L lacks, in metres; None for any other roof."""
    missing = missing_mm(plan.description.corners)
    return None if missing is None else missing[axis] / MM_PER_M.value


def missing_mm(corners: Outline) -> tuple[int, int] | None:
    """Return how large the corner is that an L lacks, along and up; None for any other outline."""
    low, high = outline.extent(corners)
    ends = zip(corners, (*corners[1:], corners[0]), strict=True)
    square = all(here[ALONG] == there[ALONG] or here[UP] == there[UP] for here, there in ends)
    gone = [each for each in outline.box(low, high) if each not in corners]
    inner = [
        each
        for each in corners
        if low[ALONG] < each[ALONG] < high[ALONG] and low[UP] < each[UP] < high[UP]
    ]
    if not square or len(corners) != _CORNERS_OF_AN_ELL or len(gone) != 1 or len(inner) != 1:
        return None
    return abs(inner[0][ALONG] - gone[0][ALONG]), abs(inner[0][UP] - gone[0][UP])
