"""What a result warns of. The usual band of 1 to 4 % by mass is common practice."""

import pytest

from trainer.engine import (
    Method,
    bare_board,
    catalyst_by_mass,
    catalyst_by_ml_per_kg,
    catalyst_by_volume,
    cautions_for,
    percent_by_mass,
    percent_by_volume,
    resin_litres,
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


def test_too_little_bare_board_is_told() -> None:
    """7.5 mm is under the 10 mm that must show (common practice)."""
    (told,) = warned(bare_board, off_centre_mm=5)
    assert told.startswith("Under 10 mm the bandage has too little to hold.")
    assert warned(bare_board) == ()


def test_other_sums_warn_of_nothing() -> None:
    """Litres of resin hurt nobody."""
    assert warned(resin_litres, resin_kg=5) == ()
