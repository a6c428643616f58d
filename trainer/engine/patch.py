"""The patch over the open end of a raised trim: its size, and resin for a number of them."""

from typing import Annotated

from trainer.engine.conversions import MM2_PER_M2
from trainer.engine.mat import Allowance, MatWeight, Ratio, glass_in_mat, resin_for_mat
from trainer.engine.materials import ALLOWANCE, MAT_WEIGHT, RESIN_TO_GLASS, WRAP
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

Width = Annotated[float, Given("width of the open end", "mm", 10, 500)]
Height = Annotated[float, Given("height of the open end", "mm", 10, 500)]
Wrap = Annotated[float, WRAP.given]


@calculation
def open_end_patch(width_mm: Width, height_mm: Height, wrap_mm: Wrap = WRAP.value) -> Calculation:
    """Return the area of mat for the patch that closes one open end, in square metres.

    across = width + 2 × wrap; up = height + 2 × wrap; area = across × up. The patch is a
    rectangle with a snip at each corner; 50 mm on to every face is common practice.

    Args:
        width_mm: width of the hollow section, 10–500 mm.
        height_mm: its height, 10–500 mm.
        wrap_mm: mat on to each face, 10–150 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    wrap = Part(wrap_mm, "mm", "wrap")
    across = yield Line(
        "across",
        "patch across",
        "mm",
        width_mm + 2 * wrap_mm,
        "width + 2 * wrap",
        {"width": Part(width_mm, "mm", "width"), "wrap": wrap},
    )
    up = yield Line(
        "up",
        "patch up and down",
        "mm",
        height_mm + 2 * wrap_mm,
        "height + 2 * wrap",
        {"height": Part(height_mm, "mm", "height"), "wrap": wrap},
    )
    return (
        yield Line(
            "area",
            "area of one patch",
            "m²",
            across * up / MM2_PER_M2.value,
            "across * up / mm2_per_m2",
            {
                "across": Part(across, "mm", "across"),
                "up": Part(up, "mm", "up and down"),
                "mm2_per_m2": MM2_PER_M2,
            },
        )
    )


@calculation
def resin_for_patches(
    width_mm: Width,
    height_mm: Height,
    patches: Annotated[int, Given("patches", "", 1, 100)] = 1,
    wrap_mm: Wrap = WRAP.value,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    allowance_percent: Allowance = ALLOWANCE.value,
) -> Calculation:
    """Return the kilograms of resin for a number of equal open-end patches.

    Chains open_end_patch, glass_in_mat and resin_for_mat.

    Args:
        width_mm: width of the hollow section, 10–500 mm.
        height_mm: its height, 10–500 mm.
        patches: how many ends are closed, 1–100.
        wrap_mm: mat on to each face, 10–150 mm.
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        allowance_percent: on top for deck, bucket and roller, 0–50 %.

    Raises:
        OutOfRange: an argument outside its range.
    """
    one = yield from under("patch", open_end_patch.inside(width_mm, height_mm, wrap_mm))
    area = yield Line(
        "area",
        "area of all patches",
        "m²",
        one * patches,
        "one * patches",
        {"one": Part(one, "m²", "area of one patch"), "patches": Part(patches, "", "patches")},
    )
    glass = yield from glass_in_mat.inside(area, mat_g_per_m2)
    return (yield from resin_for_mat.inside(glass, ratio, allowance_percent))
