"""Falls against what published standards ask, and against arithmetic.

1:40 in design so that the finished roof keeps 1:80: NHBC Standards, chapter 7.1 (2004 amendment,
published) and BS 6229:2018 (cited second-hand: its text was not read).
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, drop_per_metre, fall_drop, fall_ratio
from trainer.engine.materials import FALL_DESIGN, FALL_FINISHED


def test_the_falls_of_the_standards() -> None:
    """1:40 designed, 1:80 finished; each with its standing."""
    assert (FALL_DESIGN.value, FALL_FINISHED.value) == (40, 80)
    assert "NHBC" in FALL_DESIGN.source
    assert FALL_DESIGN.standing == "published"
    assert "BS 6229" in FALL_FINISHED.source
    assert FALL_FINISHED.standing == "cited second-hand"


@pytest.mark.parametrize(("ratio", "drop"), [(40, 25), (80, 12.5), (60, 50 / 3)])
def test_millimetres_in_a_metre(ratio: float, drop: float) -> None:
    """Derived: a thousand over the ratio."""
    assert answer(drop_per_metre(ratio)) == pytest.approx(drop)


@pytest.mark.parametrize(("run_m", "drop_mm"), [(5, 125), (1, 25), (2.4, 60), (3.2, 80)])
def test_drops_at_one_in_forty(run_m: float, drop_mm: float) -> None:
    """Derived: 5 m drop 125 mm."""
    assert answer(fall_drop(run_m)) == pytest.approx(drop_mm)
    assert answer(fall_ratio(run_m, drop_mm)) == pytest.approx(40)


@given(st.floats(0.1, 100), st.floats(10, 200))
def test_a_fall_is_a_slope(run_m: float, ratio: float) -> None:
    """Trigonometry: one in so many is the tangent of the roof's angle."""
    angle = math.atan2(1, ratio)
    assert answer(fall_drop(run_m, ratio)) == pytest.approx(run_m * 1000 * math.tan(angle))


def test_one_in_forty_in_degrees() -> None:
    """Derived: 1.43°, and 0.72° for one in eighty."""
    assert math.degrees(math.atan(answer(drop_per_metre(40)) / 1000)) == pytest.approx(
        1.43, abs=5e-3
    )
    assert math.degrees(math.atan(answer(drop_per_metre(80)) / 1000)) == pytest.approx(
        0.72, abs=5e-3
    )
