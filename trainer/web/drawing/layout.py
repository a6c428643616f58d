"""What is written on a drawing, each word where it lies on nothing else."""

import math
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import repeat
from typing import NamedTuple

from trainer.web.drawing.lines import Place, between, towards
from trainer.web.drawing.paper import Paper
from trainer.web.drawing.room import Box, Room, box_round

Size = tuple[float, float]

#: How far from its thing the near edge of a word may stand, in units of the paper.
_RINGS = (20.0, 34.0, 54.0, 86.0)
#: Sixteenths of a turn, straight on first, straight back last.
_TURNS = (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8)
#: Two words come no closer than this.
_AIR = 2.0
#: From one box to the next along a skew line, and half the width of a line to a thing.
_STEP, _LEAD = 10.0, 2.0
#: A line to a thing may cross what lies as near to the thing as this.
_AT_THE_FOOT = 12.0


#: How wide letters are in the house's typeface: most of them, and those that aren't.
_WIDE = 13.0
_WIDTHS = dict.fromkeys(" \u00a0.,:ijl", 6.7) | dict.fromkeys("frt", 8.1) | {"m": 19.1, "w": 15.9}


class Tag(NamedTuple):
    """A word on the paper, and where the line from it to its thing ends."""

    words: str
    at: Place
    foot: Place | None = None
    #: Degrees, as a drawing turns: clockwise.
    turn: int = 0


def width_of(words: str) -> float:
    """Return how wide words are, told too wide rather than too narrow."""
    return sum(map(_WIDTHS.get, words, repeat(_WIDE)))


class Layout:
    """A paper on which things are drawn and words find room.

    Level and upright strips are kept apart from the rest: a number may lie on its own strip.
    Places that are kept for a number are left free as long as there are others.
    """

    def __init__(self, paper: Paper) -> None:
        self.paper = paper
        self._words, self._level, self._upright = (Room(paper.width) for _ in range(3))
        self._all, self._kept = Room(paper.width), Room(paper.width)

    def take_outline(self, corners: Sequence[Place], half: float) -> None:
        """Take up the sides of an outline, some units to both hands of it."""
        for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
            self.take(boxes_along(self.paper.at(start), self.paper.at(end), half))

    def take_strip(self, start: Place, end: Place, wide: float) -> None:
        """Take up a level or an upright strip."""
        room = self._level if start[1] == end[1] else self._upright
        for box in boxes_along(self.paper.at(start), self.paper.at(end), wide / 2):
            room.take(box)
            self._all.take(box)

    def take(self, boxes: Iterable[Box]) -> None:
        """Take up boxes for words, or for what no word may hide."""
        for box in boxes:
            self._words.take(box)
            self._all.take(box)

    def keep(self, box: Box) -> None:
        """Keep a box for a number that has to stand there."""
        self._kept.take(box)

    def is_kept(self, box: Box) -> bool:
        """Whether any of a box is kept for a number."""
        return not self._kept.is_free(box)

    @property
    def reach(self) -> tuple[float, float]:
        """The highest and the lowest place that is taken up by words."""
        return self._words.reach

    def is_clear(self, box: Box) -> bool:
        """Whether a box lies on nothing at all."""
        return self._all.is_free(box)

    def is_clear_on(self, box: Box, *, level: bool) -> bool:
        """Whether a box lies on nothing but a strip that runs level, or upright."""
        return self._words.is_free(box) and (self._upright if level else self._level).is_free(box)

    def written(self, tag: Tag, size: Size, clear: float = 0) -> Tag:
        """Take up the place of a word, and of the line from it to its thing; return it."""
        self.take([box_round(*tag.at, *size)])
        if tag.foot:
            self.take(_lead(tag.at, tag.foot, size, clear))
        return tag

    def put_round(self, words: str, foot: Place, way: Place, size: Size, clear: float = 0) -> Tag:
        """Write words near a foot: first the given way, then round it, then further off.

        Best on nothing; then over a strip; then with their line under other words. What lies
        nearer to the foot than is clear belongs to the thing itself.
        """
        at = self._best(around(foot, way, size, clear), foot, size, clear)
        if at is None:
            at = next(around(foot, way, size, clear))
        return self.written(Tag(words, at, foot), size, clear)

    def _best(self, places: Iterable[Place], foot: Place, size: Size, clear: float) -> Place | None:
        """Return the first place that is clear, else the best of the others; None if there is none.

        The line to the foot is looked at last, since that takes longest.
        """
        over_a_strip = crossed = None
        for at in places:
            box = box_round(*at, size[0] + _AIR, size[1] + _AIR)
            is_clear = self._all.is_free(box)
            if not is_clear and (over_a_strip or not self._words.is_free(box)):
                continue
            if not all(map(self._words.is_free, _lead(at, foot, size, clear))):
                crossed = crossed or at
            elif is_clear:
                return at
            else:
                over_a_strip = at
        return over_a_strip or crossed


def around(foot: Place, way: Place, size: Size, clear: float) -> Iterator[Place]:
    """Yield the middles of boxes round a foot, ring by ring, so much further off as is clear."""
    steps = _steps_round(way)
    for ring in _RINGS:
        wide, high = ring + clear + size[0] / 2, ring + clear + size[1] / 2
        for across, down in steps:
            yield foot[0] + across * wide, foot[1] + down * high


@lru_cache(maxsize=64)
def _steps_round(way: Place) -> tuple[Place, ...]:
    """Return steps of length one in sixteen directions, the given one first."""
    begin = math.atan2(way[1], way[0])
    angles = [begin + turn * math.pi / 8 for turn in _TURNS]
    return tuple((math.cos(angle), math.sin(angle)) for angle in angles)


def on_paper(way: Place) -> Place:
    """Return a step of the roof as a step of the paper, whose y runs down."""
    return way[0], -way[1]


def _lead(at: Place, foot: Place, size: Size, clear: float) -> Iterator[Box]:
    """Yield boxes along the line from a word's edge to its foot, but for what lies by the foot."""
    length = math.dist(at, foot)
    across, down = abs(foot[0] - at[0]) / length, abs(foot[1] - at[1]) / length
    inside = min(size[0] / 2 / max(across, 1e-9), size[1] / 2 / max(down, 1e-9))
    reach = inside + _LEAD
    while reach < length - max(0.0, clear) - _AT_THE_FOOT:
        yield box_round(*between(at, foot, reach / length), 2 * _LEAD, 2 * _LEAD)
        reach += _STEP


def boxes_along(start: Place, end: Place, half: float) -> Iterator[Box]:
    """Yield boxes that cover a line; one for a level or an upright line."""
    if start[0] == end[0] or start[1] == end[1]:
        (left, right), (top, bottom) = (sorted(pair) for pair in zip(start, end, strict=True))
        yield Box(left - half, top - half, right + half, bottom + half)
        return
    steps = max(1, round(math.dist(start, end) / _STEP))
    for step in range(steps + 1):
        yield box_round(*between(start, end, step / steps), 2 * half, 2 * half)


def reading(start: Place, end: Place) -> int:
    """Return the turn at which words along a line of the paper are read from below or the right."""
    across, down = towards(start, end)
    degrees = round(math.degrees(math.atan2(down, across)))
    if degrees >= 90:
        return degrees - 180
    return degrees + 180 if degrees < -90 else degrees
