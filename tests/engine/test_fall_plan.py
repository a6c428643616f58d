"""The fall of a roof: 1:40 by design so that 1:80 is kept (NHBC Standards ch. 7.1)."""

import pytest
from roofs_cast import ell, garage, roof

from trainer.engine.plans.description import Fall, RoofDescription
from trainer.engine.plans.fall import FallPlan, fall_of
from trainer.engine.plans.sides import sides_of


def fall(description: RoofDescription) -> FallPlan:
    """Return the fall of a roof."""
    return fall_of(description, sides_of(description))


def test_the_fall_of_the_garage() -> None:
    """2.9 m towards the front at 1:40 is 72.5 mm."""
    plan = fall(garage())
    assert (plan.towards, plan.run_m) == (1, pytest.approx(2.9))
    assert plan.direction == pytest.approx((0, -1))
    assert plan.drop.value == pytest.approx(72.5)


def test_the_fall_to_one_side() -> None:
    """5.2 m towards the right is 130 mm."""
    plan = fall(garage(fall=Fall(towards_edge=2)))
    assert plan.direction == pytest.approx((1, 0))
    assert plan.drop.value == pytest.approx(130)


def test_water_runs_square_to_a_skew_side() -> None:
    """Towards the side from (6, 0) to (3, 4): four fifths right, three fifths up."""
    triangle = roof(((0, 0), (6000, 0), (3000, 4000)), fall=Fall(towards_edge=2))
    assert fall(triangle).direction == pytest.approx((0.8, 0.6))
    assert fall(triangle).run_m == pytest.approx(4.8)


def test_the_run_is_the_longest_there_is() -> None:
    """An L's far wall lies eight metres from its front."""
    assert fall(ell()).run_m == pytest.approx(8)


@pytest.mark.parametrize(
    ("measured_mm", "ratio", "verdict"),
    [
        (72.5, 40, "The fall is there."),
        (90, 32.2222, "The fall is there."),
        (50, 58, "Flatter than wanted"),
        (36.25, 80, "Flatter than wanted"),
        (30, 96.6667, "Too flat"),
    ],
)
def test_what_was_measured(measured_mm: float, ratio: float, verdict: str) -> None:
    """At 1:80 exactly the finished roof's own limit is met, and nothing is left."""
    plan = fall(garage(fall=Fall(measured_mm=measured_mm)))
    assert plan.measured
    assert plan.measured.value == pytest.approx(ratio, abs=1e-4)
    assert plan.verdict.startswith(verdict)


def test_what_was_not_measured_is_told() -> None:
    """A plan can't know it."""
    assert fall(garage()).measured is None
    assert "Not measured" in fall(garage()).verdict
