"""The bucket in front of somebody, by hand: densities of 1.1 and 1.2 kg/L make plain figures."""

import pytest

from trainer.engine import Refused
from trainer.engine.plans import gel
from trainer.engine.plans.bucket import Bucket, bucket_of
from trainer.engine.plans.description import Mix
from trainer.engine.plans.gel import NO_TEMPERATURE, GelTimes, NoTimes

MIX = Mix(product="Own brew", resin_kg_per_l=1.1, catalyst_kg_per_l=1.2)
CUP = gel.TestCup("Own brew", 30, 18, 2)


def bucket(mix: Mix = MIX, now_c: float | None = None, *cups: gel.TestCup) -> Bucket:
    """Return a bucket of 3 kg."""
    return bucket_of(mix, 3, "kg", now_c, cups)


def test_by_mass_the_grams_come_first() -> None:
    """2 % of 3 kg is 60 g, and 50 ml at 1.2 kg/L; the grams open the one line that makes them."""
    made = bucket()
    assert (made.grams.value, made.catalyst.value) == pytest.approx((60, 50))
    assert [line.key for line in made.grams.working.lines] == ["mass"]


@pytest.mark.parametrize(
    ("convention", "millilitres", "grams"),
    [("ml per kg", 60, 72), ("by volume", 3000 / 1.1 * 0.02, 3000 / 1.1 * 0.02 * 1.2)],
)
def test_the_other_conventions_are_weighed_afterwards(
    convention: str, millilitres: float, grams: float
) -> None:
    """20 ml to each kilogram, or 2 ml to 100 ml of resin; grams are millilitres × density."""
    mix = Mix(convention=convention, resin_kg_per_l=1.1, catalyst_kg_per_l=1.2)  # type: ignore[arg-type]
    made = bucket(mix)
    assert (made.catalyst.value, made.grams.value) == pytest.approx((millilitres, grams))


def test_one_dose_is_three_figures() -> None:
    """50 ml in 3 kg: 2 % by mass, 16.67 ml per kg, and 50 in 2727 ml of resin."""
    made = bucket()
    told = (made.by_mass.value, made.ml_per_kg.value, made.by_volume.value)
    assert told == pytest.approx((2, 50 / 3, 50 / (3000 / 1.1) * 100))
    assert made.ml_per_kg.unit == "ml/kg"


def test_the_usual_three_percent_of_the_trade_is_more_by_mass() -> None:
    """40 ml in 1.2 L of resin: the rule counts 3.03 %, by mass it is 3.55 % at 1.17 kg/L."""
    mix = Mix(percent=40 / (1.2 * 1.1 * 10), convention="ml per kg")
    made = bucket_of(mix, 1.2, "L", None)
    assert made.catalyst.value == pytest.approx(40)
    assert made.by_mass.value == pytest.approx(3.55, abs=0.005)


@pytest.mark.parametrize("unit", ["kg", "L"])
def test_resin_as_it_was_given_has_no_working(unit: str) -> None:
    """The other unit has one."""
    made = bucket_of(MIX, 2.2, unit, None)  # type: ignore[arg-type]
    given, other = (made.kilograms, made.litres) if unit == "kg" else (made.litres, made.kilograms)
    assert given.value == 2.2
    assert not hasattr(given, "working")
    assert other.value == pytest.approx(2 if unit == "kg" else 2.42)


def test_the_mark_is_read_and_its_error_told() -> None:
    """50.4 ml by marks of 2 ml is read at 50, too little by 0.4 in 50.4."""
    mix = Mix(percent=2.016, catalyst_kg_per_l=1.2, graduation_ml=2)
    made = bucket(mix)
    assert made.mark_ml == 50
    assert made.mark.value == pytest.approx(-0.4 / 50.4 * 100)


def test_a_syringe_can_be_too_coarse() -> None:
    """Half a millilitre can't be read where marks are 5 ml apart."""
    with pytest.raises(Refused, match="finer syringe"):
        bucket_of(Mix(graduation_ml=5), 0.05, "kg", None)


def test_without_a_temperature_no_gel_is_told() -> None:
    """Whatever cups there are."""
    assert bucket(MIX, None, CUP).gel == NoTimes((NO_TEMPERATURE,))


def test_the_gel_goes_by_the_dose_by_mass() -> None:
    """On the cup's own day 2 % gels as the cup did; 2 % by the rule is more, and gels sooner."""
    by_mass, by_rule = bucket(MIX, 18, CUP).gel, None
    assert isinstance(by_mass, GelTimes)
    assert by_mass.short.value == by_mass.long.value == pytest.approx(30)
    by_rule = bucket(Mix("Own brew", "ml per kg"), 18, CUP).gel
    assert isinstance(by_rule, GelTimes)
    assert by_rule.long.value < 30


def test_a_dose_off_the_band_is_warned_of_by_mass() -> None:
    """4 % by the rule is 4.68 % by mass; 3.9 % by mass is still usual."""
    (caution,) = bucket(Mix(percent=4, convention="ml per kg")).cautions
    assert "4.68\u00a0% by mass" in caution
    assert bucket(Mix(percent=3.9)).cautions == ()


def test_a_bucket_over_the_usual_size_is_warned_of() -> None:
    """130 L in one bucket is nobody's batch; five litres, 5.5 kg here, are the most."""
    assert any("Share it out" in each for each in bucket_of(MIX, 130, "L", 18).cautions)
    assert not any("Share it out" in each for each in bucket_of(MIX, 5, "L", 18).cautions)
