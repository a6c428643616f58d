"""Catalyst in three conventions, there and back.

The density of MEKP solution, 1.17 kg/L, is from memory; the millilitre rule is common practice.
"""

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    OutOfRange,
    answer,
    catalyst_by_mass,
    catalyst_by_ml_per_kg,
    catalyst_by_volume,
    line_keys,
    percent_by_mass,
    percent_by_ml_per_kg,
    percent_by_volume,
    resin_kilograms,
    work,
)

BUCKETS = st.floats(0.05, 100)
DOSES = st.floats(0.5, 5)
DENSITIES = st.floats(1.0, 1.3)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(catalyst_by_mass) == ("mass", "volume")
    assert line_keys(catalyst_by_ml_per_kg) == ("dose", "volume")
    assert line_keys(catalyst_by_volume) == ("resin_ml", "volume")
    assert line_keys(percent_by_mass) == ("mass", "percent")
    assert line_keys(percent_by_ml_per_kg) == ("dose", "percent")
    assert line_keys(percent_by_volume) == ("resin_ml", "percent")


def test_three_percent_by_mass() -> None:
    """3 % of 1320 g is 39.6 g, and at 1.17 g/ml that is 33.85 ml."""
    figures = work(catalyst_by_mass(1.32, 3)).figures
    assert figures["mass"] == pytest.approx(39.6)
    assert figures["volume"] == pytest.approx(33.846, abs=5e-4)


def test_three_percent_by_the_millilitre_rule() -> None:
    """30 ml for each kilogram: 39.6 ml for 1.32 kg."""
    assert work(catalyst_by_ml_per_kg(1.32, 3)).figures == pytest.approx(
        {"dose": 30, "volume": 39.6}
    )


def test_three_percent_by_volume() -> None:
    """3 ml for each 100 ml: 36 ml for 1.2 L."""
    assert work(catalyst_by_volume(1.2, 3)).figures == pytest.approx(
        {"resin_ml": 1200, "volume": 36}
    )


def test_the_three_conventions_never_agree() -> None:
    """For the same bucket at the same percent the rule gives most, by mass least."""
    litres, kilograms = 1.2, answer(resin_kilograms(1.2))
    by_mass, by_volume, by_rule = (
        answer(each)
        for each in (
            catalyst_by_mass(kilograms, 2),
            catalyst_by_volume(litres, 2),
            catalyst_by_ml_per_kg(kilograms, 2),
        )
    )
    assert by_mass == pytest.approx(22.564, abs=5e-4)
    assert by_volume == pytest.approx(24)
    assert by_rule == pytest.approx(26.4)


@given(BUCKETS, DOSES, DENSITIES)
def test_by_mass_there_and_back(resin_kg: float, percent: float, density: float) -> None:
    """The millilitres of a dose are that dose again, at any density."""
    volume = answer(catalyst_by_mass(resin_kg, percent, density))
    assert answer(percent_by_mass.inside(resin_kg, volume, density)) == pytest.approx(percent)


@given(BUCKETS, DOSES)
def test_by_the_rule_there_and_back(resin_kg: float, percent: float) -> None:
    """The millilitres of a dose by the rule are that dose by the rule again."""
    volume = answer(catalyst_by_ml_per_kg(resin_kg, percent))
    assert answer(percent_by_ml_per_kg.inside(resin_kg, volume)) == pytest.approx(percent)


@given(BUCKETS, DOSES)
def test_by_volume_there_and_back(resin_l: float, percent: float) -> None:
    """The millilitres of a dose by volume are that dose by volume again."""
    volume = answer(catalyst_by_volume(resin_l, percent))
    assert answer(percent_by_volume.inside(resin_l, volume)) == pytest.approx(percent)


@given(BUCKETS, DOSES)
def test_twice_the_bucket_takes_twice_the_catalyst(resin: float, percent: float) -> None:
    """In every convention, and so does twice the dose."""
    for method in (catalyst_by_mass, catalyst_by_ml_per_kg, catalyst_by_volume):
        volume = answer(method.inside(resin, percent))
        assert answer(method.inside(2 * resin, percent)) == pytest.approx(2 * volume)
        assert answer(method.inside(resin, 2 * percent)) == pytest.approx(2 * volume)


@given(BUCKETS, DOSES)
def test_a_millilitre_of_one_gram_makes_the_rule_true(resin_kg: float, percent: float) -> None:
    """At 1 kg/L the millilitre rule and percent by mass are the same."""
    by_mass = answer(catalyst_by_mass(resin_kg, percent, 1.0))
    assert answer(catalyst_by_ml_per_kg(resin_kg, percent)) == pytest.approx(by_mass)


@pytest.mark.parametrize(
    "refused",
    [
        lambda: catalyst_by_mass(1, 6.1),
        lambda: catalyst_by_mass(1, 0.4),
        lambda: catalyst_by_ml_per_kg(1, 5.1),
        lambda: catalyst_by_volume(1, 5.1),
    ],
)
def test_a_dose_outside_the_band_is_refused(refused: Callable[[], object]) -> None:
    """Under 0.5 % or over 6 % by mass no catalyst is counted out: common practice."""
    with pytest.raises(OutOfRange, match="The catalyst is"):
        refused()
