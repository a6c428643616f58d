"""The mark of a sum: each asked line, the slip if it is one, and what comes next."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from trainer.engine import Marked, MarkedLine, Reading, Working, mark, read_quantity
from trainer.engine.slips import figure_at
from trainer.lessons.asks import Ask, Slip
from trainer.lessons.calculate import Variant
from trainer.lessons.everyday_slips import EverydaySlip, everyday_slips
from trainer.lessons.question import AnswerMark, Mark

_BARE = re.compile(r"[\d\s.,/½¼¾]+")


@dataclass(frozen=True, slots=True)
class Typed:
    """What stood in one field: the text, and the unit picked beside it."""

    text: str
    unit: str | None = None

    def picked(self, ask: Ask) -> str | None:
        """Return the unit that stood beside a bare number, or None where one was typed with it."""
        return (self.unit or ask.unit) if _BARE.fullmatch(self.text) else None

    def read_for(self, ask: Ask) -> Reading:
        """Return what it means in the asked unit; raise Unclear or OtherKind."""
        return read_quantity(self.text, ask.unit, self.unit)


@dataclass(frozen=True, slots=True)
class CalculateMark(Mark):
    """The mark of a sum."""

    working: Working = field(kw_only=True)

    @property
    def lines(self) -> list[dict[str, Any]]:
        """The right working, line by line."""
        return [
            {
                "key": line.key,
                "words": line.words,
                "shown": line.in_figures(),
                "value": line.value,
                "unit": line.unit,
            }
            for line in self.working.lines
        ]


def mark_answers(
    drawn: Variant, typed: Mapping[str, Typed], try_no: int, only: str | None = None
) -> CalculateMark:
    """Return the mark of what was typed, by line; raise Unclear where it can't be read.

    `only` names the one line that a second try asks for.
    """
    asks = drawn.asks if only is None else (drawn.ask_for(only),)
    readings = {ask.line: typed[ask.line].read_for(ask) for ask in asks}
    marked = mark(
        drawn.question.method,
        drawn.givens,
        [ask.asked() for ask in asks],
        {ask.line: ask.in_line_unit(readings[ask.line].value) for ask in asks},
    )
    answers = tuple(
        _answer(ask, typed[ask.line], readings[ask.line], line)
        for ask, line in zip(asks, marked.lines, strict=True)
    )
    slip = _only_slip(drawn, marked) or _everyday_slip(drawn, marked, typed)
    return CalculateMark(answers, try_no, slip, marked.started_afresh, working=marked.working)


def _answer(ask: Ask, typed: Typed, reading: Reading, line: MarkedLine) -> AnswerMark:
    return AnswerMark(
        line=ask.line,
        skill=ask.skill,
        typed=typed.text,
        read_as=reading.read_as,
        verdict=line.verdict,
        unit=ask.unit,
        tolerance=ask.tolerance_text,
        read_value=reading.value,
        right=ask.in_asked_unit(line.right),
        expected=ask.in_asked_unit(line.expected),
    )


def _only_slip(drawn: Variant, marked: Marked) -> Slip | None:
    matching = matching_slips(drawn, marked)
    return matching[0] if len(matching) == 1 else None


def _everyday_slip(
    drawn: Variant, marked: Marked, typed: Mapping[str, Typed]
) -> EverydaySlip | None:
    wrong = marked.first_wrong
    if wrong is None or matching_slips(drawn, marked):
        return None
    ask = drawn.ask_for(wrong.key)
    line = marked.working.line(wrong.key)
    picked = typed[ask.line].picked(ask)
    return next(everyday_slips(ask, line, wrong.figure, picked), None)


def matching_slips(drawn: Variant, marked: Marked) -> Sequence[Slip]:
    """Return the slips that lead to what was typed at the first wrong line."""
    wrong = marked.first_wrong
    if wrong is None:
        return []
    ask = drawn.ask_for(wrong.key)
    earlier = drawn.asks[: drawn.asks.index(ask)]
    # What stands above the first wrong line is right, and was when a second try asks for it alone.
    above = {each.line: marked.working.figures[each.line] for each in earlier}
    return [
        slip
        for slip in drawn.question.slips_at(ask)
        if _leads_to(slip, ask, drawn, above, wrong.figure)
    ]


def _leads_to(
    slip: Slip, ask: Ask, drawn: Variant, above: Mapping[str, float], typed: float
) -> bool:
    figure = figure_at(ask.line, slip.change, drawn.question.method, drawn.givens, above)
    return figure is not None and ask.tolerance.allows(typed, figure)
