"""A roof's own figures put into the questions that any roof can be practised on."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

from trainer.engine import EngineError
from trainer.engine.errors import UNWORKABLE
from trainer.engine.plans.facts import Facts, facts_for_questions
from trainer.engine.plans.roof import plan_roof
from trainer.lessons.asks import Slip
from trainer.lessons.calculate import CalculateQuestion, close_slips, variant
from trainer.lessons.draws import OneOf
from trainer.lessons.roof_questions import RoofQuestion, RoofQuestions
from trainer.lessons.roofs import Stock, roof_from_text

#: Enough to see whether a slip can be made on this roof, and quickly worked.
_PROBES = 8
#: A slip that comes too close to the right answer in more of them is no slip there.
_MOST_CLOSE = 2


def facts_in(text: str, stock: Stock) -> Facts:
    """Return the facts of the roof in a text that was kept; `stock` has the sizes to buy in.

    Raises ContentError for a text that isn't read any more, and EngineError for a roof that
    can't be planned.
    """
    return facts_for_questions(plan_roof(roof_from_text(text, stock)))


def questions_for(asked: RoofQuestions, facts: Facts) -> tuple[CalculateQuestion, ...]:
    """Return the questions that a roof with these facts can be practised on, in order."""
    bound = (bind(each, facts) for each in asked.questions)
    return tuple(question for question in bound if question is not None)


def bind(asked: RoofQuestion, facts: Facts) -> CalculateQuestion | None:
    """Return a question with a roof's figures in it, or None where it makes no sense there.

    That is where the roof lacks a fact, where a figure is out of the calculation's range, or
    where none of the slips can be made: then there is nothing to get wrong. A slip that
    changes nothing on this roof, such as one patch instead of all where there is one, is left
    out. It depends on the question and the facts alone, so that an old answer is bound as it was.
    """
    question = _filled(asked, facts)
    if question is None:
        return None
    try:
        slips = tuple(_possible(question))
    except UNWORKABLE:
        return None
    return replace(question, slips=slips) if slips else None


def _filled(asked: RoofQuestion, facts: Facts) -> CalculateQuestion | None:
    parameters = asked.question.method.parameters
    givens = dict(asked.question.givens)
    for name, fact in asked.facts.items():
        if fact not in facts:
            return None
        value = facts[fact]
        if parameters[name].shape == "list" and not isinstance(value, tuple):
            value = (value,)
        try:
            parameters[name].check(value)
        except EngineError:
            return None
        givens[name] = OneOf((value,))
    return replace(asked.question, givens=givens)


def _possible(question: CalculateQuestion) -> Iterator[Slip]:
    """Yield the slips that lead somewhere else in nearly all of some draws."""
    probes = [variant(question, f"probe-{number}") for number in range(_PROBES)]
    close = Counter(slip for probe in probes for slip, _ in close_slips(probe))
    yield from (slip for slip in question.slips if close[slip] <= _MOST_CLOSE)
