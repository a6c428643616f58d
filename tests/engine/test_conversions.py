"""Rounding up, and counts in whole millimetres and grams."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine.conversions import (
    G_PER_KG,
    ML_PER_L,
    MM2_PER_M2,
    MM_PER_M,
    rounded_up,
    whole_g,
    whole_mm,
)


@pytest.mark.parametrize(
    ("amount", "each", "count"),
    [(0, 10, 0), (1, 10, 1), (9, 10, 1), (10, 10, 1), (11, 10, 2), (30, 10, 3), (31, 10, 4)],
)
def test_rounding_up(amount: int, each: int, count: int) -> None:
    """Thirty need three of ten, thirty-one need four."""
    assert rounded_up(amount, each) == count


def test_nothing_cannot_fill_anything() -> None:
    """However many rolls of no length: there is no answer."""
    with pytest.raises(ZeroDivisionError):
        rounded_up(10, 0)


def test_an_exact_multiple_is_not_rounded_on() -> None:
    """Drops 1.00 m wide with 50 mm of lap cover 2.90 m in exactly three; floats make four."""
    assert rounded_up(whole_mm(2.90) - 50, whole_mm(1.00) - 50) == 3
    assert math.ceil((2.90 - 0.05) / (1.00 - 0.05)) == 4


def test_whole_millimetres_and_grams() -> None:
    """2.9 m is 2900 mm and 1.1 kg three times is 3300 g, whatever floats make of them."""
    assert whole_mm(2.9) == 2900
    assert whole_mm(1.001) == 1001
    assert whole_g(1.1 + 1.1 + 1.1) == 3300
    assert isinstance(whole_mm(2.9), int)


@given(st.integers(0, 10**9), st.integers(1, 10**6))
def test_it_is_the_least_that_is_enough(amount: int, each: int) -> None:
    """That many reach the amount, and one fewer don't."""
    count = rounded_up(amount, each)
    assert (count - 1) * each < amount <= count * each


@given(st.integers(0, 10**7))
def test_whole_millimetres_and_grams_stay_whole(amount: int) -> None:
    """1.001 m is 1000.9999999999999 mm in floats, and 1001 on a tape measure."""
    assert whole_mm(amount / 1000) == whole_g(amount / 1000) == amount


@given(st.integers(1, 500), st.integers(1, 200_000))
def test_multiples_of_whole_millimetres_are_exact(count: int, length_mm: int) -> None:
    """So many pieces of one length, added up in metres, need just so many of it."""
    total_m = sum([length_mm / 1000] * count)
    assert rounded_up(whole_mm(total_m), whole_mm(length_mm / 1000)) == count


def test_the_sizes_of_conversions() -> None:
    """A thousand each, and a million square millimetres in a square metre."""
    assert [part.value for part in (G_PER_KG, ML_PER_L, MM_PER_M)] == [1000, 1000, 1000]
    assert MM2_PER_M2.value == MM_PER_M.value**2
