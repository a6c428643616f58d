"""Cutting from stock lengths against known sets, an integer solver, and a proved bound.

A is the published example of cutting paper rolls, with its published optimum. The optima of all
four sets were proved again with an integer solver. First-fit decreasing never needs more than
11/9 of the fewest and 6/9: Dósa 2007; Dósa, Li, Han & Tuza 2013 (published).
"""

import math
from collections import Counter
from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import highspy
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trainer.engine import answer, stock_bound
from trainer.engine.plans.stock_cuts import cut_counted, cut_from_stock


@dataclass(frozen=True)
class Known:
    """A set of pieces of which the fewest lengths are known."""

    stock: int
    counts: dict[int, int]
    #: By material alone.
    bound: int
    fewest: int


A = Known(
    5600,
    {1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20, 2000: 10}
    | {2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20},
    73,
    73,
)
B = Known(100, {45: 97, 36: 610, 31: 395, 14: 211}, 416, 453)
C = Known(110, {20: 48, 45: 35, 50: 24, 55: 10, 75: 8}, 45, 47)
D = Known(2000, {255: 10, 750: 7, 550: 13}, 8, 9)
EVERY_SET = pytest.mark.parametrize("known", [A, B, C, D], ids="ABCD")
SMALL = st.lists(st.integers(200, 3000), min_size=1, max_size=12)
#: From a few sizes, so that pieces come back as they do on a roof.
ALIKE = st.lists(st.sampled_from((500, 610, 990, 1010, 1220, 1490, 2440)), min_size=1, max_size=12)
#: Two to five in a length, where longest first often takes one too many.
TIGHT = st.lists(st.integers(600, 1500), min_size=8, max_size=12)
SETS = st.one_of(SMALL, ALIKE, TIGHT)


def pieces_of(known: Known) -> list[int]:
    """Return the pieces of a set one by one."""
    return [size for size, count in known.counts.items() for _ in range(count)]


def first_fit_decreasing(pieces: list[int], stock: int) -> int:
    """Return how many lengths the longest-first rule takes, done piece by piece."""
    rooms: list[int] = []
    for piece in sorted(pieces, reverse=True):
        place = next((n for n, room in enumerate(rooms) if room >= piece), None)
        if place is None:
            rooms.append(stock - piece)
        else:
            rooms[place] -= piece
    return len(rooms)


def fewest_by_solver(pieces: list[int], stock: int) -> int:
    """Return the fewest lengths, by an integer solver: which piece lies on which length."""
    most = first_fit_decreasing(pieces, stock)
    solver: Any = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    used = [solver.addBinary() for _ in range(most)]
    lies = [[solver.addBinary() for _ in range(most)] for _ in pieces]
    for places in lies:
        solver.addConstr(sum(places) == 1)
    for n, bar in enumerate(used):
        load = sum(size * places[n] for size, places in zip(pieces, lies, strict=True))
        solver.addConstr(load <= stock * bar)
    for earlier, later in pairwise(used):
        solver.addConstr(earlier >= later)
    solver.minimize(sum(used))
    return round(solver.getInfo().objective_function_value)


@EVERY_SET
def test_the_material_bound_of_a_known_set(known: Known) -> None:
    """All pieces end to end; what the search itself holds for certain is never less."""
    material = sum(size * count for size, count in known.counts.items())
    assert math.ceil(material / known.stock) == known.bound
    assert known.bound <= cut_counted(known.counts, known.stock).bound <= known.fewest


@pytest.mark.parametrize("known", [C, D], ids="CD")
def test_the_calculation_gives_the_same_bound(known: Known) -> None:
    """With a set's sizes taken for hundredths or thousandths of a metre."""
    per_metre = 100 if known is C else 1000
    pieces = tuple(size / per_metre for size in pieces_of(known))
    assert answer(stock_bound(pieces, known.stock / per_metre)) == known.bound


def test_the_waste_of_the_published_plan() -> None:
    """Published: 73 lengths of 5600 leave 0.401 %."""
    material = sum(size * count for size, count in A.counts.items())
    assert 1 - material / (A.fewest * A.stock) == pytest.approx(0.00401, abs=5e-6)


@EVERY_SET
def test_a_known_set_is_never_beaten_and_never_boasted_of(known: Known) -> None:
    """Every piece is cut, no plan has fewer lengths than the fewest, "fewest" is said truly."""
    cuts = cut_counted(known.counts, known.stock)
    assert Counter(piece for bar in cuts.bars for piece in bar) == known.counts
    assert max(map(sum, cuts.bars)) <= known.stock
    assert len(cuts.bars) >= known.fewest
    assert (cuts.verdict == "fewest possible") <= (len(cuts.bars) == known.fewest)
    assert (cuts.verdict == "at most one length over") <= (len(cuts.bars) <= known.fewest + 1)


@pytest.mark.parametrize("known", [C, D], ids="CD")
def test_two_known_sets_are_solved_and_proved(known: Known) -> None:
    """Their fewest lie over the material bound, so that only a search can prove them."""
    cuts = cut_from_stock(pieces_of(known), known.stock)
    assert (len(cuts.bars), cuts.proved) == (known.fewest, True)


@pytest.mark.parametrize(("known", "lengths"), [(A, 82), (B, 485)], ids="AB")
def test_two_known_sets_come_out_better_than_longest_first(known: Known, lengths: int) -> None:
    """Longest first takes 82 and 485; the search lies within one length of the fewest."""
    assert first_fit_decreasing(pieces_of(known), known.stock) == lengths
    assert len(cut_counted(known.counts, known.stock).bars) <= known.fewest + 1


@settings(max_examples=60)
@given(SETS, st.integers(3000, 6000))
def test_small_sets_against_an_integer_solver(pieces: list[int], stock: int) -> None:
    """Never fewer lengths than the solver's, and just as many where it is said to be proved."""
    cuts = cut_from_stock(pieces, stock)
    fewest = fewest_by_solver(pieces, stock)
    assert cuts.bound <= fewest <= len(cuts.bars)
    assert not cuts.proved or len(cuts.bars) == fewest


@settings(max_examples=60)
@given(SETS, st.integers(3000, 6000))
def test_longest_first_keeps_its_published_bound(pieces: list[int], stock: int) -> None:
    """At most 11/9 of the fewest and 6/9 (Dósa 2007), and so do we, who begin with it."""
    cuts = cut_from_stock(pieces, stock)
    if cuts.proved:
        most = 11 / 9 * len(cuts.bars) + 6 / 9
        assert len(cuts.bars) <= first_fit_decreasing(pieces, stock) <= most
