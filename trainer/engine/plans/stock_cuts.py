"""Pieces cut from lengths as they are sold: which go on which, and whether fewer would do.

First-fit decreasing makes a plan, two bounds say what no plan can beat, and a short search
between them finds a better plan or proves that there is none.
"""

from bisect import bisect_left
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate
from operator import neg

from trainer.engine.conversions import rounded_up
from trainer.engine.errors import Refused
from trainer.engine.units import show

MOST_PIECES = 500
#: What a search may cost for each piece, and at most: some thirty milliseconds.
_EFFORT, _MOST_EFFORT = 400, 40_000


@dataclass(frozen=True, slots=True)
class Cuts:
    """How pieces are cut from stock lengths, all in whole millimetres."""

    #: The pieces of each stock length, longest first.
    bars: tuple[tuple[int, ...], ...]
    #: No fewer lengths than this can do.
    bound: int
    #: Whether it is certain that fewer lengths won't do.
    proved: bool
    stock_mm: int

    @property
    def waste_mm(self) -> int:
        """What is left over of all lengths together."""
        return len(self.bars) * self.stock_mm - sum(map(sum, self.bars))

    @property
    def verdict(self) -> str:
        """How good the plan is, as far as it is known."""
        if self.proved:
            return "fewest possible"
        over = len(self.bars) - self.bound
        return "at most one length over" if over == 1 else f"at most {over} over"


def cut_from_stock(pieces_mm: Sequence[int], stock_mm: int) -> Cuts:
    """Return how to cut the pieces from as few stock lengths as a short search finds.

    Args:
        pieces_mm: each piece in whole millimetres, 1 to 500 of them.
        stock_mm: a length as it is sold, in whole millimetres.

    Raises:
        Refused: no pieces, too many, one of no length, or one longer than a stock length.
    """
    if not pieces_mm:
        raise Refused("There is nothing to cut: give at least one piece.")
    if len(pieces_mm) > MOST_PIECES:
        raise Refused(f"There are over {MOST_PIECES} pieces: plan the cuts in parts.")
    return cut_counted(Counter(pieces_mm), stock_mm)


def cut_counted(counts: Mapping[int, int], stock_mm: int) -> Cuts:
    """Return the same from how many pieces there are of each length, however many.

    Raises Refused where a piece has no length or is longer than a stock length.
    """
    if min(counts) < 1:
        raise Refused("A piece has no length: leave it out, or measure it again.")
    if max(counts) > stock_mm:
        piece, stock = show(max(counts), "mm"), show(stock_mm, "mm")
        raise Refused(f"A piece of {piece} is longer than the {stock} sold: make it of two.")
    # Read where trims and mat are cut: marking an answer needs none of it.
    from trainer.engine.plans.cut_search import Job

    sizes = tuple(sorted(counts, reverse=True))
    wanted = tuple(counts[size] for size in sizes)
    effort = min(sum(wanted) * _EFFORT, _MOST_EFFORT)
    plan, bound = Job(sizes, stock_mm, effort).plan(wanted, fewest_lengths(counts, stock_mm))
    bars = tuple(
        tuple(size for size, times in zip(sizes, bar, strict=True) for _ in range(times))
        for bar in sorted(plan, reverse=True)
    )
    return Cuts(bars, bound, len(bars) == bound, stock_mm)


def fewest_lengths(counts: Mapping[int, int], stock_mm: int) -> int:
    """Return how many stock lengths no plan can do without.

    The greatest of what the material comes to and of Martello and Toth's second bound: pieces
    over half a length never share one, and shorter ones, from any size on, must fit beside those
    that leave room for them or take lengths of their own.
    """
    sizes = sorted(counts, reverse=True)
    pieces = [0, *accumulate(counts[size] for size in sizes)]
    length = [0, *accumulate(counts[size] * size for size in sizes)]
    half = bisect_left(sizes, -stock_mm / 2, key=neg)
    bounds = [rounded_up(length[-1], stock_mm), pieces[half]]
    for kind, least in enumerate(sizes[half:], half + 1):
        alone = bisect_left(sizes, least - stock_mm, key=neg)
        room = (pieces[half] - pieces[alone]) * stock_mm - (length[half] - length[alone])
        beside = length[kind] - length[half] - room
        bounds.append(pieces[half] + max(0, rounded_up(beside, stock_mm)))
    return max(bounds)
