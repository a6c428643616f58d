"""Bandage: every strip of a roof in laying order, its metres, rolls and resin."""

from dataclasses import dataclass, replace

from trainer.engine.bandage import bandage_length, resin_for_bandage
from trainer.engine.patch import open_end_patch, resin_for_patches
from trainer.engine.plans.deck import Deck
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.plans.sides import Corner, Side
from trainer.engine.plans.strips import Over, Strip, strips_in_order
from trainer.engine.plans.trims import TrimPlan
from trainer.engine.rolls import bandage_rolls

__all__ = ["BandagePlan", "Over", "Strip", "bandage_of"]


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

    One over each trim edge and open joint and along each foot of a rooflight's kerb, a scrap
    over each mitre and trim join, a patch over each open end: common practice. The side with
    the ladder is laid last.
    """
    loose = strips_in_order(roof, sides, corners, deck, trims)
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
