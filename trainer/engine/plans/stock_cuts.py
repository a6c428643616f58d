"""Pieces cut from lengths as they are sold: which go on which, and whether fewer would do.

First-fit decreasing makes a plan, two bounds say what no plan can beat, and a short search
between them finds a better plan or proves that there is none.
"""

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import accumulate, chain, islice
from operator import itemgetter, neg

from trainer.engine.conversions import rounded_up
from trainer.engine.errors import Refused
from trainer.engine.units import show

MOST_PIECES = 500
#: What a search may cost for each piece, and at most: some thirty milliseconds.
_EFFORT, _MOST_EFFORT = 400, 40_000
#: What one step of it costs, on top of one for each kind of piece that it looks at.
_STEP = 5
#: So many ways to fill a length are put in order before the first is tried.
_IN_ORDER = 100

#: How many of each kind of piece, the longest first.
Counts = tuple[int, ...]


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
    sizes = tuple(sorted(counts, reverse=True))
    wanted = tuple(counts[size] for size in sizes)
    effort = min(sum(wanted) * _EFFORT, _MOST_EFFORT)
    plan, bound = _Job(sizes, stock_mm, effort).plan(wanted)
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


class _GaveUp(Exception):
    """The search has cost as much as it may."""


@dataclass(slots=True)
class _Job:
    """Kinds of pieces, longest first, that are cut from one stock length."""

    sizes: tuple[int, ...]
    stock: int
    #: What the search may still cost.
    effort: int

    def plan(self, wanted: Counts) -> tuple[list[Counts], int]:
        """Return the best plan found, and the fewest lengths that any plan can have."""
        plan = self.first_fit(wanted)
        bound = fewest_lengths(dict(zip(self.sizes, wanted, strict=True)), self.stock)
        try:
            while bound < len(plan):
                better = self.fit(wanted, len(plan) - 1)
                if better is None:
                    return plan, len(plan)
                plan = better
        except _GaveUp:
            pass
        return plan, bound

    def total(self, counts: Counts) -> int:
        """Return the length of all pieces together."""
        return sum(map(int.__mul__, self.sizes, counts))

    def first_fit(self, left: Counts) -> list[Counts]:
        """Return the plan that gives each length the longest piece that still fits, and so on."""
        plan: list[Counts] = []
        while any(left):
            bar = [0] * len(left)
            self._fill(bar, left, 0, self.stock)
            times = min(count // taken for count, taken in zip(left, bar, strict=True) if taken)
            plan += [tuple(bar)] * times
            left = tuple(c - times * taken for c, taken in zip(left, bar, strict=True))
        return plan

    def _fill(self, bar: list[int], left: Counts, start: int, room: int) -> int:
        """Put on a bar what fits of the kinds from `start` on; return the room that is left."""
        for kind in range(start, len(left)):
            size = self.sizes[kind]
            if size <= room and left[kind]:
                bar[kind] = take = min(left[kind], room // size)
                room -= take * size
        return room

    def _fillings(self, left: Counts, spare: int) -> Iterator[tuple[int, Counts]]:
        """Yield the room left and the bar, for each that is worth trying.

        It holds one of the longest pieces that are left, wastes no more than may be spared, and
        none of its pieces can be changed for a longer one: whatever plan has such a bar can be
        turned into one without, of as many lengths.
        """
        kinds = [kind for kind, count in enumerate(left) if count]
        first, last = kinds[0], kinds[-1]
        bar, start, room = [0] * len(left), first, self.stock
        while True:
            self.effort -= len(left) - start + _STEP
            if self.effort < 0:
                raise _GaveUp
            room = self._fill(bar, left, start, room)
            if room <= spare and not self._can_change(bar, left, room):
                yield room, tuple(bar)
            # What stands last is shortest: one fewer of it only wastes. So the one before it.
            room += bar[last] * self.sizes[last]
            bar[last] = 0
            kind = next((kind for kind in range(last - 1, first, -1) if bar[kind]), first)
            if kind == first and bar[first] <= 1:
                return
            bar[kind] -= 1
            room, start = room + self.sizes[kind], kind + 1

    def _can_change(self, bar: Sequence[int], left: Counts, room: int) -> bool:
        """Whether one piece, or none, can be changed for a longer one that is left."""
        longer = 2 * self.stock
        for size, taken, count in zip(self.sizes, bar, left, strict=True):
            if taken and longer - size <= room:
                return True
            if count > taken:
                longer = size
        return longer <= room

    def fit(self, wanted: Counts, lengths: int) -> list[Counts] | None:
        """Return a plan of at most so many lengths, or None where there is none.

        Raises _GaveUp where that can't be told with the effort that is left.
        """
        failed: dict[Counts, int] = {}
        plan: list[Counts] = []
        lefts, spares = [wanted], [lengths * self.stock - self.total(wanted)]
        branches = [self._branches(wanted, spares[0])]
        while branches:
            room, bar = next(branches[-1], (0, None))
            if bar is None:
                branches.pop()
                spares.pop()
                failed[lefts.pop()] = lengths - len(branches)
                plan = plan[:-1]
                continue
            left = tuple(map(int.__sub__, lefts[-1], bar))
            self.effort -= len(left) + _STEP
            if not any(left):
                return [*plan, bar]
            if failed.get(left, -1) < lengths - len(branches):
                plan.append(bar)
                lefts.append(left)
                spares.append(spares[-1] - room)
                branches.append(self._branches(left, spares[-1]))
        return None

    def _branches(self, left: Counts, spare: int) -> Iterator[tuple[int, Counts]]:
        """Yield the fillings, those that waste least first."""
        fillings = self._fillings(left, spare)
        return chain(sorted(islice(fillings, _IN_ORDER), key=itemgetter(0)), fillings)
