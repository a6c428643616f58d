"""Marking: what was typed against each asked line, carrying somebody's own figures on.

A line is right, right for the person's own figure above it, or wrong. Somebody who makes one
mistake is charged for it once, unless their figure could hurt someone.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from trainer.engine.drivers import Working, drive, work
from trainer.engine.errors import UNWORKABLE
from trainer.engine.tolerance import Tolerance
from trainer.engine.working import Line, Method

Verdict = Literal["right", "carried", "wrong"]


@dataclass(frozen=True, slots=True)
class Asked:
    """A line that is asked, how near an answer must come, and what stays safe."""

    key: str
    tolerance: Tolerance
    #: The lowest and highest multiple of the right figure that is still safe.
    safe: tuple[float, float] | None = None

    def judge(self, figure: float, expected: float, right: float) -> Verdict:
        """Return the verdict on a figure, in the line's unit.

        `expected` follows from the person's own figures above, `right` from none of them.
        """
        if self.tolerance.allows(figure, right):
            return "right"
        if self.tolerance.allows(figure, expected) and self._is_safe(figure, right):
            return "carried"
        return "wrong"

    def _is_safe(self, figure: float, right: float) -> bool:
        if self.safe is None:
            return True
        low, high = self.safe
        return low * right <= figure <= high * right


@dataclass(frozen=True, slots=True)
class MarkedLine:
    """The mark of one asked line; all figures in the line's unit."""

    key: str
    figure: float
    #: What was right for the person's own figures above.
    expected: float
    right: float
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Marked:
    """The marks of all asked lines in order."""

    lines: tuple[MarkedLine, ...]
    working: Working
    #: Whether a carried figure couldn't be worked on, so that later lines were marked without it.
    started_afresh: bool = False

    @property
    def first_wrong(self) -> MarkedLine | None:
        """The first line that is wrong, or None."""
        return next((line for line in self.lines if line.verdict == "wrong"), None)


def mark(
    method: Method[...],
    givens: Mapping[str, Any],
    asked: Sequence[Asked],
    answers: Mapping[str, float],
) -> Marked:
    """Return the marks of answers, each in the unit of its line.

    Every asked line must have an answer. From a line that wasn't right the person's own figure
    is carried on, so that later lines are judged by it; where it can't be worked on, they are
    judged by the right figures. Raises EngineError when the givens themselves can't be worked.
    """
    working = work(method(**givens))
    carried, afresh = _expected(method, givens, asked, answers, working)
    lines = tuple(
        _marked_line(line, answers[line.key], carried[line.key], working.figures[line.key])
        for line in asked
    )
    return Marked(lines, working, afresh)


def _marked_line(asked: Asked, figure: float, expected: float, right: float) -> MarkedLine:
    return MarkedLine(asked.key, figure, expected, right, asked.judge(figure, expected, right))


def _expected(
    method: Method[...],
    givens: Mapping[str, Any],
    asked: Sequence[Asked],
    answers: Mapping[str, float],
    working: Working,
) -> tuple[dict[str, float], bool]:
    """Return what each asked line comes to for this person, and whether carrying broke off."""
    right = working.figures
    if all(each.tolerance.allows(answers[each.key], right[each.key]) for each in asked):
        return dict(right), False
    expected: dict[str, float] = {}
    judges = {each.key: each for each in asked}

    def reply(line: Line) -> float:
        judge = judges.get(line.key)
        if judge is None:
            return line.value
        expected[line.key] = line.value
        figure, likely = answers[line.key], (line.value, right[line.key])
        near = (each for each in likely if judge.tolerance.allows(figure, each))
        # What goes on is unrounded where the person only rounded.
        return next(near, figure)

    try:
        drive(method.inside(**givens), reply)
    except UNWORKABLE:
        return {**right, **expected}, True
    return expected, False
