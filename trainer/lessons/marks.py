"""The mark of an answer: each asked line, the slip if it is one, and what comes next."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from trainer.engine import Marked, Reading, Verdict, Working, mark, read_quantity
from trainer.engine.slips import figure_at
from trainer.lessons.everyday_slips import EverydaySlip, everyday_slips
from trainer.lessons.question import Ask, Question, Slip
from trainer.lessons.variant import Variant

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
class AnswerMark:
    """The mark of one asked line; all figures in the asked unit."""

    ask: Ask
    typed: Typed
    reading: Reading
    expected: float
    right: float
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Mark:
    """The mark of one answer to a question."""

    answers: tuple[AnswerMark, ...]
    working: Working
    #: The slip that the first wrong line matches, when it is exactly one.
    slip: Slip | EverydaySlip | None
    #: The first wrong line's key, or None.
    wrong_line: str | None
    try_no: int
    #: Whether a carried figure couldn't be worked on.
    started_afresh: bool

    @property
    def right(self) -> bool:
        """Whether no asked line is wrong."""
        return self.wrong_line is None

    @property
    def may_retry(self) -> bool:
        """Whether the same numbers are tried once more before the working is shown."""
        return self.slip is not None and self.try_no == 1

    @property
    def finished(self) -> bool:
        """Whether this ends the run on these numbers: the working may be shown."""
        return not self.may_retry


def mark_answers(
    drawn: Variant, typed: Mapping[str, Typed], try_no: int, only: str | None = None
) -> Mark:
    """Return the mark of what was typed, by line; raise Unclear where it can't be read.

    `only` names the one line that a second try asks for.
    """
    question = drawn.question
    asks = question.asks if only is None else (question.ask_for(only),)
    readings = {ask.line: typed[ask.line].read_for(ask) for ask in asks}
    marked = mark(
        question.method,
        drawn.givens,
        [ask.asked() for ask in asks],
        {ask.line: ask.in_line_unit(readings[ask.line].value) for ask in asks},
    )
    answers = tuple(
        AnswerMark(
            ask,
            typed[ask.line],
            readings[ask.line],
            ask.in_asked_unit(line.expected),
            ask.in_asked_unit(line.right),
            line.verdict,
        )
        for ask, line in zip(asks, marked.lines, strict=True)
    )
    wrong = marked.first_wrong.key if marked.first_wrong else None
    slip = _only_slip(drawn, marked) or _everyday_slip(drawn, marked, typed)
    return Mark(answers, marked.working, slip, wrong, try_no, marked.started_afresh)


def _only_slip(drawn: Variant, marked: Marked) -> Slip | None:
    matching = matching_slips(drawn, marked)
    return matching[0] if len(matching) == 1 else None


def _everyday_slip(
    drawn: Variant, marked: Marked, typed: Mapping[str, Typed]
) -> EverydaySlip | None:
    wrong = marked.first_wrong
    if wrong is None or matching_slips(drawn, marked):
        return None
    ask = drawn.question.ask_for(wrong.key)
    line = marked.working.line(wrong.key)
    picked = typed[ask.line].picked(ask)
    return next(everyday_slips(ask, line, wrong.figure, picked), None)


def matching_slips(drawn: Variant, marked: Marked) -> Sequence[Slip]:
    """Return the slips that lead to what was typed at the first wrong line."""
    wrong = marked.first_wrong
    if wrong is None:
        return []
    ask = drawn.question.ask_for(wrong.key)
    earlier = drawn.question.asks[: drawn.question.asks.index(ask)]
    # What stands above the first wrong line is right, and was when a second try asks for it alone.
    above = {each.line: marked.working.figures[each.line] for each in earlier}
    return [
        slip
        for slip in drawn.question.slips_at(ask)
        if _leads_to(slip, ask, drawn.question, drawn, above, wrong.figure)
    ]


def _leads_to(
    slip: Slip,
    ask: Ask,
    question: Question,
    drawn: Variant,
    above: Mapping[str, float],
    typed: float,
) -> bool:
    figure = figure_at(ask.line, slip.change, question.method, drawn.givens, above)
    return figure is not None and ask.tolerance.allows(typed, figure)
