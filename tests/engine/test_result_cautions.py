"""What a result warns of.

The usual bands of 1 to 4 % by mass, and 1 to 3 % for topcoat, are common practice.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    Method,
    bare_board,
    catalyst_by_mass,
    catalyst_by_ml_per_kg,
    catalyst_by_volume,
    cautions_for,
    dose_for_gel,
    gel_at_dose,
    percent_by_mass,
    percent_by_volume,
    resin_litres,
    topcoat_catalyst,
    topcoat_litres,
    work,
)


def warned(method: Method[...], **givens: float) -> tuple[str, ...]:
    """Return what a calculation on these figures warns of, with plain spaces."""
    told = cautions_for(method, givens, work(method(**givens)))
    return tuple(each.replace("\u00a0", " ") for each in told)


@pytest.mark.parametrize("percent", [1, 2, 4])
def test_a_usual_dose_needs_no_word(percent: float) -> None:
    """Both ends of the band belong to it."""
    assert warned(catalyst_by_mass, resin_kg=1.0, percent=percent) == ()


def test_too_much_and_too_little_are_told() -> None:
    """33 ml in 0.8 kg is 38.61 g, 4.826 % by mass; half a per cent is too little."""
    (over,) = warned(percent_by_mass, resin_kg=0.8, catalyst_ml=33)
    assert over.startswith("That is 4.826 % by mass, over the usual 4 %.")
    (under,) = warned(catalyst_by_mass, resin_kg=1.0, percent=0.5)
    assert under.startswith("That is 0.5 % by mass, under the usual 1 %.")


def test_every_convention_is_told_by_mass() -> None:
    """4 % by the millilitre rule is 4.68 % by mass; 4.14 % by volume is 4.41 %, by hand."""
    (rule,) = warned(catalyst_by_ml_per_kg, resin_kg=1.0, percent=4)
    assert "4.68 % by mass" in rule
    (volume,) = warned(percent_by_volume, resin_l=0.7, catalyst_ml=29)
    assert "4.406 % by mass" in volume
    assert warned(catalyst_by_volume, resin_l=1.0, percent=2) == ()


@pytest.mark.parametrize("density", [1.0, 1.17, 1.3])
def test_a_dose_is_told_at_its_own_catalyst_s_density(density: float) -> None:
    """4 % by mass is 4 % of any catalyst, and 5 % is told as 5."""
    givens = {"resin_kg": 1.3, "catalyst_kg_per_l": density}
    assert warned(catalyst_by_mass, percent=4, **givens) == ()
    (over,) = warned(catalyst_by_mass, percent=5, **givens)
    assert over.startswith("That is 5 % by mass, over the usual 4 %.")


def test_topcoat_has_a_band_of_its_own() -> None:
    """3.5 % is usual in resin and over the 3 % of topcoat; 0.9 % is under."""
    assert warned(catalyst_by_mass, resin_kg=7.5, percent=3.5) == ()
    (over,) = warned(topcoat_catalyst, area_m2=15, percent=3.5)
    assert over.startswith("That is 3.5 % by mass, over the usual 3 %.")
    (under,) = warned(topcoat_catalyst, area_m2=15, percent=0.9)
    assert under.startswith("That is 0.9 % by mass, under the usual 1 %.")
    assert warned(topcoat_litres, area_m2=15) == ()


@given(st.floats(0.1, 500), st.sampled_from([1, 2, 3]), st.floats(1.0, 1.3))
def test_the_edges_belong_to_the_band_on_any_roof(
    area_m2: float, percent: float, density: float
) -> None:
    """Turning a dose into millilitres and back pushes nothing over the edge."""
    givens = {"area_m2": area_m2, "percent": percent, "catalyst_kg_per_l": density}
    assert warned(topcoat_catalyst, **givens) == ()


def test_a_dose_for_a_gel_time_is_told_too() -> None:
    """From 20 min at 2 %: 8 min take 5 %; a gel time asked at 5 % warns as well."""
    cup = {"cup_min": 20.0, "cup_c": 20.0, "cup_percent": 2.0, "now_c": 20.0}
    (chosen,) = warned(dose_for_gel, wanted_min=8, **cup)
    assert chosen.startswith("That is 5 % by mass, over the usual 4 %.")
    assert warned(dose_for_gel, wanted_min=20, **cup) == ()
    (asked,) = warned(gel_at_dose, gel_min=20, cup_percent=2, now_percent=5)
    assert asked.startswith("That is 5 % by mass")


def test_too_little_bare_board_is_told() -> None:
    """7.5 mm is under the 10 mm that must show (common practice)."""
    (told,) = warned(bare_board, off_centre_mm=5)
    assert told.startswith("Under 10 mm the bandage has too little to hold.")
    assert warned(bare_board) == ()


def test_other_sums_warn_of_nothing() -> None:
    """Litres of resin hurt nobody."""
    assert warned(resin_litres, resin_kg=5) == ()
