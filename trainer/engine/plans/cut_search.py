"""The search for a plan of cuts with fewer lengths, or for the proof that there is none.

First-fit decreasing begins it; then ways to fill a length are tried one after another, those that
waste least first, until the effort that was allowed is spent.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, islice
from operator import itemgetter

#: What one step costs, on top of one for each kind of piece that it looks at.
_STEP = 5
#: So many ways to fill a length are put in order before the first is tried.
_IN_ORDER = 100

#: How many of each kind of piece, the longest first.
Counts = tuple[int, ...]


class _GaveUp(Exception):
    """The search has cost as much as it may."""


@dataclass(slots=True)
class Job:
    """Kinds of pieces, longest first, that are cut from one stock length."""

    sizes: tuple[int, ...]
    stock: int
    #: What the search may still cost.
    effort: int

    def plan(self, wanted: Counts, bound: int) -> tuple[list[Counts], int]:
        """Return the best plan found, and the fewest lengths that any plan can have.

        No plan has fewer lengths than `bound`.
        """
        plan = self.first_fit(wanted)
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
