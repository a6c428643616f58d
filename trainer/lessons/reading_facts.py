"""The givens of a question that are figures of a roof's plan: {plan = "joints.longest_m"}."""

from trainer.engine import Method, Parameter
from trainer.engine.plans.facts import FACTS, Fact
from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean
from trainer.lessons.reading_givens import given_table, is_from_plan, read_method


def read_facts(block: Block) -> dict[str, str]:
    """Return the fact that each given of a block names; raise AuthorError, with a guess."""
    table = block.read()
    method = read_method(block, table)
    named = {
        name: value["plan"]
        for name, value in given_table(block, table).items()
        if is_from_plan(value)
    }
    for name, fact in named.items():
        _check(block, method, name, fact)
    if not named:
        mend = 'Write given.NAME = {plan = "…"}, or ask it in a lesson.'
        raise block.mistake("", "This question takes no figure from the roof.", mend)
    return named


def _check(block: Block, method: Method[...], name: str, fact: object) -> None:
    """Raise AuthorError for a fact that isn't known, or that the given can't take."""
    where = f"given.{name}"
    if name not in method.parameters:
        sentence = f"'{method.name}' takes no '{name}'."
        raise block.mistake(where, sentence, did_you_mean(name, method.parameters))
    if not isinstance(fact, str) or fact not in FACTS:
        sentence = f"A roof's plan has no '{fact}'."
        raise block.mistake(where, sentence, did_you_mean(str(fact), FACTS))
    if not _fits(FACTS[fact], method.parameters[name]):
        sentence = f"'{fact}' is {_told(FACTS[fact])}; '{name}' takes something else."
        raise block.mistake(where, sentence, f"It takes {_told(method.parameters[name])}.")


def _fits(fact: Fact, parameter: Parameter) -> bool:
    """Whether a fact can be given; one figure makes a list of one, a count is a number too."""
    if parameter.unit != fact.unit:
        return False
    taken = {"list": ("list", "number"), "number": ("number", "count")}
    return fact.shape in taken.get(parameter.shape, (parameter.shape,))


def _told(what: Fact | Parameter) -> str:
    kind = {"number": "a figure", "count": "a count", "list": "a list"}.get(what.shape, "a word")
    return f"{kind} in {what.unit}" if what.unit else kind
