"""Cutting pieces from stock lengths: every piece once, none too many on a length, said truly."""

from collections import Counter
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import Refused
from trainer.engine.plans.stock_cuts import (
    MOST_PIECES,
    Cuts,
    cut_counted,
    cut_from_stock,
    fewest_lengths,
)

#: Trims for a garage roof: four sides and a piece round a chimney, sold in 3 m.
GARAGE = (2700, 2700, 1800, 1800, 1200, 600, 300)
PIECES = st.lists(st.integers(1, 3000), min_size=1, max_size=60)
STOCK = st.integers(3000, 9000)


def test_trims_for_a_garage() -> None:
    """11.1 m take four lengths of 3 m at least; four hold them, with 0.9 m left."""
    cuts = cut_from_stock(GARAGE, 3000)
    assert cuts.bars == ((2700, 300), (2700,), (1800, 1200), (1800, 600))
    assert (cuts.bound, cuts.proved, cuts.waste_mm) == (4, True, 900)
    assert cuts.verdict == "fewest possible"


def test_longest_first_may_be_a_length_too_many() -> None:
    """Longest first leaves 200 and 2 × 100 mm and a third length; 600 + 2 × 200 fills one."""
    cuts = cut_from_stock((600, 500, 300, 200, 200, 200), 1000)
    assert cuts.bars == ((600, 200, 200), (500, 300, 200))
    assert cuts.proved


def test_pieces_over_half_a_length_take_one_each() -> None:
    """Five of 1600 mm are 8 m, and still five lengths of 3 m are the fewest: it is proved."""
    cuts = cut_from_stock((1600,) * 5, 3000)
    assert (len(cuts.bars), cuts.bound, cuts.proved) == (5, 5, True)


@pytest.mark.parametrize(
    ("counts", "bound"),
    [
        ({1600: 5}, 5),  # 2.67 lengths of material
        ({1600: 5, 1400: 5}, 5),  # each fits beside one
        ({1600: 5, 1401: 5}, 8),  # none does: 5, and 7005 mm take three more
        ({2000: 2, 900: 4}, 3),  # two beside, 1600 mm over
        ({1000: 7}, 3),
    ],
)
def test_what_no_plan_can_do_without(counts: dict[int, int], bound: int) -> None:
    """Material, or long pieces and what fits beside them; lengths of 3 m."""
    assert fewest_lengths(counts, 3000) == bound


@given(PIECES, STOCK)
def test_every_piece_is_cut_once_and_every_length_holds_its_pieces(
    pieces: list[int], stock_mm: int
) -> None:
    """What is left over is what was bought less what is needed."""
    cuts = cut_from_stock(pieces, stock_mm)
    assert Counter(piece for bar in cuts.bars for piece in bar) == Counter(pieces)
    assert all(0 < sum(bar) <= stock_mm for bar in cuts.bars)
    assert cuts.waste_mm == len(cuts.bars) * stock_mm - sum(pieces)


@given(PIECES, STOCK)
def test_a_plan_lies_between_the_material_and_first_fit(pieces: list[int], stock_mm: int) -> None:
    """Never fewer lengths than the bound, never more than first-fit decreasing by hand."""
    by_hand: list[int] = []
    for piece in sorted(pieces, reverse=True):
        fits = next((n for n, used in enumerate(by_hand) if used + piece <= stock_mm), None)
        if fits is None:
            by_hand.append(piece)
        else:
            by_hand[fits] += piece
    cuts = cut_from_stock(pieces, stock_mm)
    assert -(-sum(pieces) // stock_mm) <= cuts.bound <= len(cuts.bars) <= len(by_hand)
    assert cuts.proved == (len(cuts.bars) == cuts.bound)


@given(PIECES, STOCK, st.randoms(use_true_random=False))
def test_the_order_of_the_pieces_does_not_matter(
    pieces: list[int], stock_mm: int, chance: Random
) -> None:
    """The same pieces give the same plan, bar by bar, whoever lists them."""
    mixed = list(pieces)
    chance.shuffle(mixed)
    assert cut_from_stock(mixed, stock_mm) == cut_from_stock(pieces, stock_mm)


@given(PIECES, STOCK)
def test_pieces_and_lengths_stand_longest_first(pieces: list[int], stock_mm: int) -> None:
    """On each length, and from one length to the next."""
    bars = cut_from_stock(pieces, stock_mm).bars
    assert all(list(bar) == sorted(bar, reverse=True) for bar in bars)
    assert list(bars) == sorted(bars, reverse=True)


@given(PIECES, STOCK, st.integers(2, 10))
def test_another_unit_gives_the_same_plan(pieces: list[int], stock_mm: int, times: int) -> None:
    """Everything so many times as long is cut in the same way."""
    cuts = cut_from_stock(pieces, stock_mm)
    larger = cut_from_stock([piece * times for piece in pieces], stock_mm * times)
    assert larger.bars == tuple(tuple(piece * times for piece in bar) for bar in cuts.bars)
    assert larger.proved == cuts.proved


@pytest.mark.parametrize(
    ("bound", "verdict"),
    [(3, "fewest possible"), (2, "at most one length over"), (1, "at most 2 over")],
)
def test_a_plan_says_how_good_it_is(bound: int, verdict: str) -> None:
    """No more than is known: the fewest, or so many over the bound."""
    assert Cuts(((9,), (9,), (9,)), bound, bound == 3, 10).verdict == verdict


def test_one_piece_of_the_whole_length() -> None:
    """It fits, and nothing is left."""
    cuts = cut_from_stock((3000,), 3000)
    assert (cuts.bars, cuts.waste_mm, cuts.proved) == (((3000,),), 0, True)


@pytest.mark.parametrize(
    ("pieces", "sentence"),
    [
        ((), "There is nothing to cut: give at least one piece."),
        ((1000,) * (MOST_PIECES + 1), "There are over 500 pieces: plan the cuts in parts."),
        ((1000, 0), "A piece has no length: leave it out, or measure it again."),
    ],
)
def test_what_cannot_be_cut_is_refused(pieces: tuple[int, ...], sentence: str) -> None:
    """One sentence, with what to do."""
    with pytest.raises(Refused) as refused:
        cut_from_stock(pieces, 3000)
    assert str(refused.value) == sentence


def test_a_piece_longer_than_the_stock_is_refused() -> None:
    """Whether pieces are listed or counted."""
    with pytest.raises(Refused, match=r"A piece of 3001\smm is longer than the 3000\smm"):
        cut_from_stock((1000, 3001), 3000)
    with pytest.raises(Refused, match="make it of two"):
        cut_counted({3001: 1}, 3000)


def test_as_many_pieces_as_are_taken() -> None:
    """500 pieces of six in a length: 83 and a third, so 84."""
    cuts = cut_from_stock((500,) * MOST_PIECES, 3000)
    assert (len(cuts.bars), cuts.proved) == (84, True)
