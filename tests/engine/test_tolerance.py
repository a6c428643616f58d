"""Tolerances: a share of the right figure, an amount, or exact."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import Tolerance

RIGHT = st.floats(1e-3, 1e6)
SHARES = st.floats(1e-4, 0.5)


@pytest.mark.parametrize(
    ("tolerance", "right", "margin"),
    [
        (Tolerance(share=0.02), 50, 1),
        (Tolerance(share=0.02), -50, 1),
        (Tolerance(amount=5), 1000, 5),
        (Tolerance(amount=5), 1, 5),
    ],
)
def test_a_margin_is_a_share_or_an_amount(
    tolerance: Tolerance, right: float, margin: float
) -> None:
    """2 % of 50 is 1; 5 mm are 5 mm whatever they are measured against."""
    assert tolerance.margin(right) == pytest.approx(margin)


@pytest.mark.parametrize(
    ("figure", "allowed"), [(39.6, True), (40, True), (40.392, True), (38.808, True), (40.4, False)]
)
def test_an_answer_within_two_percent_is_right(figure: float, allowed: bool) -> None:  # noqa: FBT001
    """Around 39.6 the band runs from 38.808 to 40.392, its ends included."""
    assert Tolerance(share=0.02).allows(figure, 39.6) is allowed


def test_a_count_is_exact() -> None:
    """Three rolls are three rolls."""
    assert Tolerance().allows(3, 3)
    assert not Tolerance().allows(4, 3)
    assert not Tolerance().allows(2.999, 3)


def test_exact_forgives_the_dust_of_floats() -> None:
    """0.1 + 0.2 is 0.3 on a building site."""
    assert Tolerance().allows(0.1 + 0.2, 0.3)
    assert Tolerance().allows(0, 0)


@pytest.mark.parametrize("figure", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("tolerance", [Tolerance(), Tolerance(share=0.5), Tolerance(amount=1e9)])
def test_nan_and_infinity_are_never_right(tolerance: Tolerance, figure: float) -> None:
    """No tolerance is wide enough for what is no figure."""
    assert not tolerance.allows(figure, 39.6)


@pytest.mark.parametrize(
    ("share", "amount"),
    [(0.02, 5), (-0.02, 0), (0, -5), (math.nan, 0), (0, math.nan), (math.inf, 0), (0, math.inf)],
)
def test_a_tolerance_checks_itself(share: float, amount: float) -> None:
    """Both at once, below zero, or no figure: refused at birth."""
    with pytest.raises(ValueError, match="A tolerance is a share or an amount"):
        Tolerance(share, amount)


@given(RIGHT, SHARES, st.floats(-1, 1))
def test_all_within_the_share_is_right(right: float, share: float, part: float) -> None:
    """Any figure inside the band is right, wherever in it."""
    assert Tolerance(share=share).allows(right * (1 + part * share), right)


@given(RIGHT, SHARES, st.sampled_from([-1, 1]))
def test_just_outside_the_share_is_wrong(right: float, share: float, side: int) -> None:
    """A hundredth of the band further is outside it, on either side."""
    assert not Tolerance(share=share).allows(right * (1 + side * share * 1.01), right)
