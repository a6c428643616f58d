"""Several layers of mat: their resin, how thick they come out, and what they weigh."""

from dataclasses import replace
from typing import Annotated

from trainer.engine.conversions import G_PER_KG
from trainer.engine.laminate import glass_content_from_ratio, laminate_thickness
from trainer.engine.mat import Allowance, Area, MatWeight, Ratio, glass_in_mat, resin_for_mat
from trainer.engine.materials import ALLOWANCE, MAT_WEIGHT, RESIN_TO_GLASS, TOPCOAT_RATE
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

Layers = Annotated[int, Given("layers of mat", "", 1, 6)]
#: A laminate may be weighed before it has any topcoat.
TopcoatLaid = Annotated[float, replace(TOPCOAT_RATE.given, low=0)]


@calculation
def resin_for_layers(
    area_m2: Area,
    layers: Layers = 1,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    allowance_percent: Allowance = ALLOWANCE.value,
) -> Calculation:
    """Return the kilograms of resin for layers of mat on an area, with the allowance.

    area of all layers = area × layers; then chains glass_in_mat and resin_for_mat.

    Args:
        area_m2: area that is laid, 0.001–500 m².
        layers: layers of mat, 1–6.
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        allowance_percent: on top for deck, bucket and roller, 0–50 %.

    Raises:
        OutOfRange: an argument outside its range.
    """
    area = yield Line(
        "area",
        "area of all layers",
        "m²",
        area_m2 * layers,
        "area * layers",
        {"area": Part(area_m2, "m²", "area"), "layers": Part(layers, "", "layers")},
    )
    glass = yield from glass_in_mat.inside(area, mat_g_per_m2)
    return (yield from resin_for_mat.inside(glass, ratio, allowance_percent))


@calculation
def thickness_of_layers(
    layers: Layers,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
) -> Calculation:
    """Return the thickness of a cured laminate of equal layers in millimetres.

    thickness = one layer × layers. Chains glass_content_from_ratio and laminate_thickness.

    Args:
        layers: layers of mat, 1–6.
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.

    Raises:
        OutOfRange: an argument outside its range.
    """
    content = yield from under("content", glass_content_from_ratio.inside(ratio))
    layer = yield from under("layer", laminate_thickness.inside(mat_g_per_m2, content))
    return (
        yield Line(
            "thickness",
            "thickness of the laminate",
            "mm",
            layer * layers,
            "layer * layers",
            {
                "layer": Part(layer, "mm", "thickness of one layer"),
                "layers": Part(layers, "", "layers"),
            },
        )
    )


@calculation
def weight_per_m2(
    layers: Layers = 1,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    topcoat_kg_per_m2: TopcoatLaid = TOPCOAT_RATE.value,
) -> Calculation:
    """Return the kilograms that a square metre of laminate and topcoat weighs.

    glass = layers × weight of mat; resin = glass × ratio; weight = glass + resin + topcoat. What
    soaks into the deck or stays in the bucket is left out.

    Args:
        layers: layers of mat, 1–6.
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        topcoat_kg_per_m2: topcoat, 0–1.0 kg/m² (common practice: 0.5).

    Raises:
        OutOfRange: an argument outside its range.
    """
    glass = yield Line(
        "glass",
        "glass on a square metre",
        "kg/m²",
        layers * mat_g_per_m2 / G_PER_KG.value,
        "layers * mat / g_per_kg",
        {
            "layers": Part(layers, "", "layers"),
            "mat": Part(mat_g_per_m2, "g/m²", "weight of mat"),
            "g_per_kg": G_PER_KG,
        },
    )
    resin = yield Line(
        "resin",
        "resin on a square metre",
        "kg/m²",
        glass * ratio,
        "glass * ratio",
        {
            "glass": Part(glass, "kg/m²", "glass on a square metre"),
            "ratio": Part(ratio, "", "resin to glass"),
        },
    )
    return (
        yield Line(
            "weight",
            "weight on a square metre",
            "kg/m²",
            glass + resin + topcoat_kg_per_m2,
            "glass + resin + topcoat",
            {
                "glass": Part(glass, "kg/m²", "glass"),
                "resin": Part(resin, "kg/m²", "resin"),
                "topcoat": Part(topcoat_kg_per_m2, "kg/m²", "topcoat"),
            },
        )
    )


@calculation
def weight_of_roof(
    area_m2: Area,
    layers: Layers = 1,
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    ratio: Ratio = RESIN_TO_GLASS.value,
    topcoat_kg_per_m2: TopcoatLaid = TOPCOAT_RATE.value,
) -> Calculation:
    """Return the kilograms that the laminate and topcoat of a roof weigh.

    weight = area × weight on a square metre. Chains weight_per_m2.

    Args:
        area_m2: area that is laid, 0.001–500 m².
        layers: layers of mat, 1–6.
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        ratio: kilograms of resin to one of glass, 1.5–4.
        topcoat_kg_per_m2: topcoat, 0–1.0 kg/m².

    Raises:
        OutOfRange: an argument outside its range.
    """
    square = yield from under(
        "square", weight_per_m2.inside(layers, mat_g_per_m2, ratio, topcoat_kg_per_m2)
    )
    return (
        yield Line(
            "weight",
            "weight of the roof",
            "kg",
            area_m2 * square,
            "area * square",
            {
                "area": Part(area_m2, "m²", "area"),
                "square": Part(square, "kg/m²", "weight on a square metre"),
            },
        )
    )
