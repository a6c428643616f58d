"""The dose that is in a bucket, from what was poured."""

import pytest

from trainer.engine import Method, answer, percent_by_mass, percent_by_ml_per_kg, percent_by_volume


def test_one_bucket_has_three_doses() -> None:
    """20 ml in 1 kg, which is 1/1.1 L: 2.34 % by mass, 2 by the rule, 2.2 by volume, by hand.

    The densities, 1.17 kg/L from memory and 1.10 kg/L by common practice.
    """
    assert answer(percent_by_mass(1, 20)) == pytest.approx(2.34)
    assert answer(percent_by_ml_per_kg(1, 20)) == pytest.approx(2)
    assert answer(percent_by_volume(1 / 1.1, 20)) == pytest.approx(2.2)


@pytest.mark.parametrize("percent", [percent_by_mass, percent_by_ml_per_kg, percent_by_volume])
def test_twice_the_resin_halves_the_dose(percent: Method[...]) -> None:
    """The same syringe in twice the bucket is half the dose."""
    assert answer(percent(2, 30)) == pytest.approx(answer(percent(1, 30)) / 2)
