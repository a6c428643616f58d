"""What is written of each side of a roof, outside it: the number of its strip, and its length."""

import math
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from trainer.engine import show
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.plans.sides import Side
from trainer.web.drawing.layout import Layout, Tag, boxes_along, on_paper, reading, width_of
from trainer.web.drawing.lines import Place, between, moved, outward
from trainer.web.drawing.numbers import RADIUS, radius_of
from trainer.web.drawing.paper import Paper
from trainer.web.drawing.room import Box

#: From a side to the middle of what is written there; further off where it is crowded.
BESIDE = 32.0
_FURTHER = BESIDE + 30
#: What is tried: in short or in full, in which row, and whether numbers keep their places.
_ORDER = (
    *((False, BESIDE, True), (True, BESIDE, True), (False, _FURTHER, True)),
    *((False, BESIDE, False), (True, BESIDE, False), (True, _FURTHER, False)),
)
#: From one place that is tried to the next.
_STEP = 16.0
#: Words may run out over the ends of their side by so much in all.
_OVER = 24.0
#: Between a side's number and its words.
_GAP = 6.0


class SideTag(NamedTuple):
    """What is written of a side, and the number of the strip along it before that."""

    words: Tag
    number: Tag | None


class _Line(NamedTuple):
    """A side as it lies on the paper: the way that words along it run, and the way out of it."""

    middle: Place
    length: float
    turn: int
    way: Place
    out: Place


def write_sides(
    plan: RoofPlan, layout: Layout, numbers: Mapping[int, str], *, turned: bool
) -> list[SideTag]:
    """Return what is written of the sides.

    `numbers` are those of the strips along them. `turned` adds what mat is turned there.
    """
    longest_first = sorted(plan.sides, key=lambda side: -side.length_mm)
    return [
        _beside(
            _line(side, layout.paper),
            _told(side, turned=turned),
            numbers.get(side.number, ""),
            layout,
        )
        for side in longest_first
    ]


def _told(side: Side, *, turned: bool) -> tuple[str, str]:
    """Return what is said of a side, in full and in short."""
    told = metres(side.length.value)
    if turned and side.turn_mm:
        told += f", {'down' if side.kind == 'drip' else 'up'} {show(side.turn_mm, 'mm')}"
    return f"side {side.number}: {told}", told


def metres(length_m: float) -> str:
    """Return a length to the millimetre."""
    return show(round(length_m, 3), "m")


def _line(side: Side, paper: Paper) -> _Line:
    start, end = paper.at(side.start), paper.at(side.end)
    turn = reading(start, end)
    out = on_paper(outward(side.start, side.end))
    return _Line(between(start, end, 0.5), math.dist(start, end), turn, _way(turn), out)


def _way(turn: int) -> Place:
    """Return the step along words that are turned."""
    angle = math.radians(turn)
    return round(math.cos(angle), 9), round(math.sin(angle), 9)


def _beside(side: _Line, told: tuple[str, str], number: str, layout: Layout) -> SideTag:
    """Return what is said along a side; where nothing fits, level and further off."""
    lead = 2 * radius_of(number) + _GAP if number else 0.0
    wide = [width_of(words) + lead for words in told]
    for short, row, keeps in _ORDER:
        tag = _along(side, told[short], wide[short], row, layout, keeps=keeps)
        if tag:
            return _parted(tag, number, wide[short])
    tag = layout.put_round(told[True], side.middle, side.out, (wide[True], 2 * RADIUS))
    return _parted(tag, number, wide[True])


def _along(
    side: _Line, told: str, wide: float, row: float, layout: Layout, *, keeps: bool
) -> Tag | None:
    """Return words in a row along a side, as near its middle as they fit; None where they don't.

    Those that keep leave the places free where a number has to stand.
    """
    for shift in _shifts((side.length + _OVER - wide) / 2):
        foot = moved(side.middle, side.way, shift)
        at = moved(foot, side.out, row)
        boxes = _boxes(at, side.way, wide)
        if keeps and any(map(layout.is_kept, boxes)):
            continue
        if all(map(layout.is_clear, boxes)):
            layout.take(boxes)
            return Tag(told, at, foot if row > BESIDE else None, side.turn)
    return None


def _shifts(spare: float) -> Iterator[float]:
    """Yield how far words are moved from the middle, none first; nothing where they don't fit."""
    if spare >= 0:
        yield 0.0
    for step in range(1, int(spare // _STEP) + 1):
        yield step * _STEP
        yield -step * _STEP


def _boxes(at: Place, way: Place, wide: float) -> list[Box]:
    """Return boxes that cover words written along a way."""
    reach = wide / 2 - RADIUS
    return list(boxes_along(moved(at, way, -reach), moved(at, way, reach), RADIUS))


def _parted(tag: Tag, number: str, wide: float) -> SideTag:
    """Return the words with the number in front of them, both together in the middle."""
    if not number:
        return SideTag(tag, None)
    way, radius = _way(tag.turn), radius_of(number)
    words = tag._replace(at=moved(tag.at, way, radius + _GAP / 2))
    return SideTag(words, Tag(number, moved(tag.at, way, radius - wide / 2)))
