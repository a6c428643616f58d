"""Bandage: every strip of a roof in laying order, its metres, rolls and resin."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from trainer.engine.bandage import bandage_length, resin_for_bandage
from trainer.engine.conversions import MM_PER_M
from trainer.engine.drivers import answer
from trainer.engine.outline import Point
from trainer.engine.patch import open_end_patch, resin_for_patches
from trainer.engine.plans.deck import Deck, Joint
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.plans.sides import Corner, Side
from trainer.engine.plans.trims import TrimPlan
from trainer.engine.rolls import bandage_rolls, pieces_in_run

Over = Literal["edge", "joint", "mitre", "trim join", "open end"]


@dataclass(frozen=True, slots=True)
class Strip:
    """One strip, or the patch over one open end; a joint that was only measured has no place."""

    number: int
    over: Over
    name: str
    length_m: float
    #: More than one where the run is longer than the roll; they lap.
    pieces: int = 1
    start: Point | None = None
    end: Point | None = None


@dataclass(frozen=True, slots=True)
class BandagePlan:
    """The bandage of a roof. Patches over open ends are cut from mat and counted apart."""

    strips: tuple[Strip, ...]
    laps: int
    length: Figure
    rolls: Figure
    resin: Figure
    patches: int
    #: Area of one patch.
    patch: Figure | None
    patch_resin: Figure | None

    @property
    def runs_m(self) -> tuple[float, ...]:
        """The strips that come off the roll, in metres."""
        return tuple(each.length_m for each in self.strips if each.over != "open end")


def bandage_of(
    roof: RoofDescription,
    sides: tuple[Side, ...],
    corners: tuple[Corner, ...],
    deck: Deck,
    trims: TrimPlan,
) -> BandagePlan:
    """Return the strips in laying order, and what they come to.

    One over each trim edge and open joint, a scrap over each mitre and trim join, a patch over
    each open end: common practice. The side with the ladder is laid last.
    """
    loose = _in_order(roof, sides, corners, deck, trims)
    strips = tuple(replace(each, number=number) for number, each in enumerate(loose, 1))
    laps = sum(each.pieces - 1 for each in strips)
    runs = tuple(each.length_m for each in strips if each.over != "open end")
    length = worked(
        "bandage.length",
        "bandage to cut",
        bandage_length,
        lengths_m=runs,
        laps=laps,
        lap_mm=roof.laminate.lap_mm,
    )
    rolls = worked(
        "bandage.rolls",
        "rolls of bandage",
        bandage_rolls,
        bandage_m=length.value,
        roll_m=roof.sold.bandage_roll_m,
    )
    resin = worked(
        "bandage.resin",
        "resin for the bandage",
        resin_for_bandage,
        length_m=length.value,
        width_mm=roof.bandage.width_mm,
        **_resin(roof),
    )
    return BandagePlan(strips, laps, length, rolls, resin, trims.open_ends, *_patch(roof, trims))


def _resin(roof: RoofDescription) -> dict[str, float]:
    laminate = roof.laminate
    return {
        "mat_g_per_m2": laminate.mat_g_per_m2,
        "ratio": laminate.ratio,
        "allowance_percent": laminate.allowance_percent,
    }


def _patch(roof: RoofDescription, trims: TrimPlan) -> tuple[Figure | None, Figure | None]:
    if not trims.open_ends:
        return None, None
    size = {
        "width_mm": roof.trims.end_width_mm,
        "height_mm": roof.trims.end_height_mm,
        "wrap_mm": roof.bandage.wrap_mm,
    }
    return (
        worked("patch.area", "patch over one open end", open_end_patch, **size),
        worked(
            "patch.resin",
            "resin for the patches",
            resin_for_patches,
            patches=trims.open_ends,
            **size,
            **_resin(roof),
        ),
    )


def _in_order(
    roof: RoofDescription,
    sides: tuple[Side, ...],
    corners: tuple[Corner, ...],
    deck: Deck,
    trims: TrimPlan,
) -> Iterator[Strip]:
    """Yield the sides on from the ladder's, the joints from far to near, and its own side last."""
    first = roof.way_off_edge
    laid: set[int] = set()
    *others, last = (*sides[first:], *sides[:first])
    for side in others:
        yield from _side(roof, side, laid, corners, trims)
    far_first = sorted(deck.joints, key=lambda joint: -_distance(joint, last))
    for joint in far_first:
        yield _strip(roof, "joint", f"joint {joint.number}", joint.length.value, joint)
    for number, length in enumerate(deck.extra_joints_m, 1):
        yield _strip(roof, "joint", f"cut joint {number}", length)
    yield from _side(roof, last, laid, corners, trims)


def _side(
    roof: RoofDescription,
    side: Side,
    laid: set[int],
    corners: tuple[Corner, ...],
    trims: TrimPlan,
) -> Iterator[Strip]:
    """Yield a side's strip, the scraps over its trim joins, then the corners that it completes."""
    laid.add(side.number)
    yield _strip(roof, "edge", side.name, side.length.value, side)
    scrap = roof.bandage.scrap_mm / MM_PER_M.value
    for join in trims.joins:
        if join.side == side.number:
            yield Strip(0, "trim join", f"trim join on side {side.number}", scrap, 1, join.at)
    for corner in corners:
        if side.number not in corner.sides or not laid.issuperset(corner.sides):
            continue
        if corner.makes == "mitre":
            yield Strip(0, "mitre", f"mitre at corner {corner.number}", scrap, 1, corner.at)
        if corner.makes == "open end":
            across = (roof.trims.end_width_mm + 2 * roof.bandage.wrap_mm) / MM_PER_M.value
            name = f"open end at corner {corner.number}"
            yield Strip(0, "open end", name, across, 1, corner.at)


def _strip(
    roof: RoofDescription, over: Over, name: str, length_m: float, along: Side | Joint | None = None
) -> Strip:
    roll_m, lap_mm = roof.sold.bandage_roll_m, roof.laminate.lap_mm
    pieces = int(answer(pieces_in_run.inside(length_m, roll_m, lap_mm))) if length_m > roll_m else 1
    if along is None:
        return Strip(0, over, name, length_m, pieces)
    return Strip(0, over, name, length_m, pieces, along.start, along.end)


def _distance(joint: Joint, side: Side) -> float:
    """Return how far the middle of a joint lies from a side's line, in millimetres."""
    (x0, y0), (x1, y1) = side.start, side.end
    x, y = (sum(ends) / 2 for ends in zip(joint.start, joint.end, strict=True))
    return abs((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)) / side.length_mm
