"""Lengths as sold: the fewest that could do, by material alone, and what is left over."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import Refused, answer, line_keys, stock_bound, waste_percent, work

PIECES_MM = st.lists(st.integers(10, 3000), min_size=1, max_size=20)
STOCK_MM = st.integers(3000, 12_000)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(stock_bound) == ("total", "lengths")
    assert line_keys(waste_percent) == ("total", "bought", "waste")


@pytest.mark.parametrize(
    ("pieces", "stock", "lengths"),
    [
        ((2.4, 1.8, 1.2), 3, 2),  # 5.4 m
        ((1.1, 1.1, 1.1), 3.3, 1),  # 3.3000000000000003 in floats
        ((3, 3), 3, 2),
        ((3, 3, 0.01), 3, 3),
        ((2, 2, 2), 3, 2),  # though each takes one of its own
        ((0.01,), 12, 1),
    ],
)
def test_no_fewer_lengths_could_do(pieces: tuple[float, ...], stock: float, lengths: int) -> None:
    """All the pieces end to end, over the length as sold, rounded up."""
    assert answer(stock_bound(pieces, stock)) == lengths


def test_what_is_left_over_by_hand() -> None:
    """5.4 m out of three lengths of 3 m: 3.6 m of 9 m are left, 40 %."""
    figures = work(waste_percent((2.4, 1.8, 1.2), 3, 3)).figures
    assert figures == pytest.approx({"total": 5.4, "bought": 9, "waste": 40})


def test_nothing_left_over_is_nothing() -> None:
    """Three times 1.1 m out of 3.3 m leave none, whatever floats make of it."""
    assert answer(waste_percent((1.1, 1.1, 1.1), 3.3, 1)) == 0


@given(PIECES_MM, STOCK_MM)
def test_the_fewest_lengths_hold_the_material(pieces_mm: list[int], stock_mm: int) -> None:
    """That many are long enough together, and one fewer is not; the order doesn't matter."""
    pieces = tuple(mm / 1000 for mm in pieces_mm)
    lengths = answer(stock_bound(pieces, stock_mm / 1000))
    assert (lengths - 1) * stock_mm < sum(pieces_mm) <= lengths * stock_mm
    assert answer(stock_bound(pieces[::-1], stock_mm / 1000)) == lengths


@given(PIECES_MM, STOCK_MM, st.integers(1, 250))
def test_all_that_is_bought_is_used_or_left(
    pieces_mm: list[int], stock_mm: int, lengths: int
) -> None:
    """Twice the pieces out of twice the lengths leave the same share."""
    assume(sum(pieces_mm) <= lengths * stock_mm)
    pieces = tuple(mm / 1000 for mm in pieces_mm)
    waste = answer(waste_percent(pieces, stock_mm / 1000, lengths))
    used = 100 * sum(pieces_mm) / (lengths * stock_mm)
    assert waste + used == pytest.approx(100)
    assert answer(waste_percent(pieces * 2, stock_mm / 1000, lengths * 2)) == pytest.approx(waste)


def test_a_piece_longer_than_a_length_is_refused() -> None:
    """It has to be made of two, and then it is two pieces."""
    for calculation in (stock_bound((1, 3.001), 3), waste_percent((1, 3.001), 3, 2)):
        with pytest.raises(Refused, match=r"A piece of 3\.001\sm is longer than the 3\sm sold"):
            work(calculation)


def test_too_few_lengths_are_refused() -> None:
    """Less than nothing can't be left over."""
    with pytest.raises(Refused, match="buy more lengths"):
        work(waste_percent((2.4, 1.8, 1.2), 3, 1))
