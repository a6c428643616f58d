"""What one convention of dosing comes to in another.

The figures follow by arithmetic (derived) from a density of catalyst of 1.17 kg/L, which is from
memory, and of liquid resin of 1.10 kg/L, which is common practice; the millilitre rule, 10 ml to
a kilogram for each percent, is common practice too. No published table was found.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    answer,
    catalyst_by_mass,
    catalyst_by_ml_per_kg,
    catalyst_by_volume,
    percent_by_mass,
    percent_by_ml_per_kg,
    percent_by_volume,
    resin_kilograms,
)


def test_twenty_millilitres_to_a_kilogram() -> None:
    """20 ml × 1.17 g/ml ÷ 1000 g is 2.34 % by mass; the rule calls it 2 %."""
    assert answer(percent_by_mass(1, 20)) == pytest.approx(2.34)
    assert answer(percent_by_ml_per_kg(1, 20)) == pytest.approx(2)


def test_two_percent_by_volume() -> None:
    """20 ml in 1 L: 23.4 g on 1100 g of resin is 2.127 % by mass."""
    assert answer(catalyst_by_volume(1, 2)) == pytest.approx(20)
    assert answer(percent_by_mass(1.10, 20)) == pytest.approx(2.127, abs=5e-4)


def test_forty_millilitres_in_a_litre_and_a_fifth() -> None:
    """Common practice calls it three: 3.03 % by the rule, 3.33 by volume, 3.55 by mass."""
    resin_kg = answer(resin_kilograms(1.2))
    assert resin_kg == pytest.approx(1.32)
    assert answer(percent_by_ml_per_kg(resin_kg, 40)) == pytest.approx(3.03, abs=5e-3)
    assert answer(percent_by_volume(1.2, 40)) == pytest.approx(3.33, abs=5e-3)
    assert answer(percent_by_mass(resin_kg, 40)) == pytest.approx(3.55, abs=5e-3)


def test_four_percent_by_the_rule() -> None:
    """40 ml to a kilogram is already 4.68 % by mass: 40 × 1.17 ÷ 10."""
    assert answer(catalyst_by_ml_per_kg(1, 4)) == pytest.approx(40)
    assert answer(percent_by_mass(1, 40)) == pytest.approx(4.68)


def test_the_most_by_the_rule_stays_under_the_most_by_mass() -> None:
    """5 % by the rule is 5.85 % by mass, and by volume 5.32: both under the 6 that are accepted."""
    by_rule = answer(percent_by_mass(1, answer(catalyst_by_ml_per_kg(1, 5))))
    by_volume = answer(percent_by_mass(1.10, answer(catalyst_by_volume(1, 5))))
    assert by_rule == pytest.approx(5.85)
    assert by_volume == pytest.approx(5.318, abs=5e-4)


@given(st.floats(0.05, 100), st.floats(0.5, 5))
def test_the_rule_is_by_mass_times_the_density(resin_kg: float, percent: float) -> None:
    """It takes 1 ml for 1 g, and a millilitre weighs 1.17 g."""
    by_rule = answer(catalyst_by_ml_per_kg(resin_kg, percent))
    by_mass = answer(catalyst_by_mass(resin_kg, percent))
    assert by_rule / by_mass == pytest.approx(1.17)


@given(st.floats(0.05, 100), st.floats(0.5, 5))
def test_by_volume_is_by_mass_times_both_densities(resin_l: float, percent: float) -> None:
    """Litres for kilograms on both sides: 1.17 ÷ 1.10."""
    by_volume = answer(catalyst_by_volume(resin_l, percent))
    by_mass = answer(catalyst_by_mass(answer(resin_kilograms(resin_l)), percent))
    assert by_volume / by_mass == pytest.approx(1.17 / 1.10)
