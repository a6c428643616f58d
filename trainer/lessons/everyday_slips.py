"""Slips that anybody makes at any question, so that no author has to write them down.

They are named only where none of the question's own slips leads to the same figure.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from trainer.engine import Line
from trainer.engine.measures import convert
from trainer.lessons.asks import Ask

#: Near enough to a figure that wasn't rounded: people give it to a place or two.
_NEAR = 0.02


@dataclass(frozen=True, slots=True)
class EverydaySlip:
    """A slip that no question has to know."""

    name: str
    cue: str


OTHER_UNIT = EverydaySlip(
    "right for another unit than the one picked", "Which unit was picked beside your figure?"
)
NOT_ROUNDED = EverydaySlip("not rounded to a whole one", "Can you take a part of one?")
ROUNDED_DOWN = EverydaySlip("rounded down", "Is there enough for the last of it?")


def everyday_slips(
    ask: Ask, line: Line, figure: float, picked: str | None
) -> Iterator[EverydaySlip]:
    """Yield what a wrong figure for an asked line looks like; the figure is in the line's unit.

    `picked` is the unit that stood beside a bare number, or None where one was typed with it. A
    line that is rounded up may have been left as it came, or cut off.
    """
    if picked is not None and any(_fits(other, ask, line, figure, picked) for other in ask.units):
        yield OTHER_UNIT
    before = line.unrounded()
    if before is None or before == line.value:
        return
    if figure == math.floor(before):
        yield ROUNDED_DOWN
    elif abs(figure - before) <= _NEAR * before:
        yield NOT_ROUNDED


def _fits(other: str, ask: Ask, line: Line, figure: float, picked: str) -> bool:
    """Whether the bare number would have been right with another unit beside it."""
    number = convert(figure, line.unit, picked)
    return ask.tolerance.allows(convert(number, other, line.unit), line.value)
