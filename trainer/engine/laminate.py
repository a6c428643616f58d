"""The cured laminate: how much of it is glass, and how thick a layer comes out."""

from typing import Annotated

from trainer.engine.conversions import G_PER_KG
from trainer.engine.mat import Glass, MatWeight, glass_in_kilograms
from trainer.engine.materials import (
    CURED_RESIN_DENSITY,
    GLASS_CONTENT,
    GLASS_DENSITY,
    MAT_WEIGHT,
    RESIN_TO_GLASS,
)
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

GlassContent = Annotated[float, GLASS_CONTENT.given]
ResinLaid = Annotated[float, Given("resin laid", "kg", 0.005, 2000)]


def _fraction_of(percent: float) -> Line:
    return Line(
        "fraction",
        "glass as a fraction",
        "",
        percent / 100,
        "content / 100",
        {"content": Part(percent, "%", "glass content")},
    )


@calculation
def ratio_from_glass_content(glass_percent: GlassContent = GLASS_CONTENT.value) -> Calculation:
    """Return the ratio of resin to glass, by mass, from the glass content.

    ratio = (1 − fraction) ÷ fraction.

    Args:
        glass_percent: glass content by mass, 15–45 %.

    Raises:
        OutOfRange: the glass content is outside its range.
    """
    fraction = yield _fraction_of(glass_percent)
    return (
        yield Line(
            "ratio",
            "resin to one of glass",
            "",
            (1 - fraction) / fraction,
            "(1 - fraction) / fraction",
            {"fraction": Part(fraction, "", "glass as a fraction")},
        )
    )


@calculation
def glass_content_from_ratio(
    ratio: Annotated[float, Given("resin to glass, by mass", "", 1.2, 6)] = RESIN_TO_GLASS.value,
) -> Calculation:
    """Return the glass content in percent by mass from the ratio of resin to glass.

    fraction = 1 ÷ (1 + ratio); 2.5 to 1 is 28.57 %.

    Args:
        ratio: kilograms of resin to one of glass, 1.2–6.

    Raises:
        OutOfRange: the ratio is outside its range.
    """
    fraction = yield Line(
        "fraction",
        "glass as a fraction",
        "",
        1 / (1 + ratio),
        "1 / (1 + ratio)",
        {"ratio": Part(ratio, "", "resin to glass")},
    )
    return (
        yield Line(
            "content",
            "glass content",
            "%",
            fraction * 100,
            "fraction * 100",
            {"fraction": Part(fraction, "", "glass as a fraction")},
        )
    )


@calculation
def ratio_laid(glass_g: Glass, resin_kg: ResinLaid) -> Calculation:
    """Return the ratio of resin to glass that a laminate came out at.

    ratio = resin ÷ glass, both by mass.

    Args:
        glass_g: dry glass that was laid, 0.5–250 000 g.
        resin_kg: resin that went into it, 0.005–2000 kg.

    Raises:
        OutOfRange: an argument outside its range.
    """
    glass_kg = yield glass_in_kilograms(glass_g)
    return (
        yield Line(
            "ratio",
            "resin to one of glass",
            "",
            resin_kg / glass_kg,
            "resin / glass",
            {"resin": Part(resin_kg, "kg", "resin"), "glass": Part(glass_kg, "kg", "glass")},
        )
    )


@calculation
def glass_content_laid(glass_g: Glass, resin_kg: ResinLaid) -> Calculation:
    """Return the glass content in percent by mass that a laminate came out at.

    Chains ratio_laid and glass_content_from_ratio.

    Args:
        glass_g: dry glass that was laid, 0.5–250 000 g.
        resin_kg: resin that went into it, 0.005–2000 kg.

    Raises:
        OutOfRange: an argument outside its range.
    """
    ratio = yield from under("laid", ratio_laid.inside(glass_g, resin_kg))
    return (yield from glass_content_from_ratio.inside(ratio))


@calculation
def laminate_thickness(
    mat_g_per_m2: MatWeight = MAT_WEIGHT.value,
    glass_percent: GlassContent = GLASS_CONTENT.value,
    glass_kg_per_l: Annotated[float, GLASS_DENSITY.given] = GLASS_DENSITY.value,
    cured_kg_per_l: Annotated[float, CURED_RESIN_DENSITY.given] = CURED_RESIN_DENSITY.value,
) -> Calculation:
    """Return the thickness of one cured layer of mat in millimetres.

    thickness = w ÷ glass density + w × (1 − ψ) ÷ (ψ × cured resin density), the mass balance of
    dry glass w in kg/m² at glass content ψ. At 2.56 and 1.20 kg/L it is w ÷ 3.072 ×
    (2.56 ÷ ψ − 1.36): ISO 12215-5:2008, Annex C, Eq. C.1 (cited second-hand).

    Args:
        mat_g_per_m2: weight of the mat, 100–1200 g/m².
        glass_percent: glass content by mass, 15–45 %.
        glass_kg_per_l: density of E-glass, 2.4–2.7 kg/L.
        cured_kg_per_l: density of the cured resin, 1.05–1.35 kg/L.

    Raises:
        OutOfRange: an argument outside its range.
    """
    weight = yield Line(
        "glass_kg_per_m2",
        "glass on a square metre",
        "kg/m²",
        mat_g_per_m2 / G_PER_KG.value,
        "mat / g_per_kg",
        {"mat": Part(mat_g_per_m2, "g/m²", "weight of mat"), "g_per_kg": G_PER_KG},
    )
    fraction = yield _fraction_of(glass_percent)
    weight_part = Part(weight, "kg/m²", "glass on a square metre")
    glass = yield Line(
        "glass",
        "thickness of the glass",
        "mm",
        weight / glass_kg_per_l,
        "weight / density",
        {
            "weight": weight_part,
            "density": Part(glass_kg_per_l, "kg/L", GLASS_DENSITY.words),
        },
    )
    resin = yield Line(
        "resin",
        "thickness of the resin",
        "mm",
        weight * (1 - fraction) / (fraction * cured_kg_per_l),
        "weight * (1 - fraction) / (fraction * density)",
        {
            "weight": weight_part,
            "fraction": Part(fraction, "", "glass as a fraction"),
            "density": Part(cured_kg_per_l, "kg/L", CURED_RESIN_DENSITY.words),
        },
    )
    return (
        yield Line(
            "thickness",
            "thickness of the layer",
            "mm",
            glass + resin,
            "glass + resin",
            {
                "glass": Part(glass, "mm", "thickness of the glass"),
                "resin": Part(resin, "mm", "thickness of the resin"),
            },
        )
    )
