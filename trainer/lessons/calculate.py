"""The kind `calculate`: a sum on fresh numbers, drawn from a seed and kept clear of its slips."""

import hashlib
import json
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import takewhile
from typing import Any, ClassVar

from trainer.engine import Line, Method, Working, method_named, work
from trainer.engine.errors import UNWORKABLE
from trainer.engine.slips import figure_at
from trainer.lessons.asks import Ask, Slip
from trainer.lessons.draws import Draw, draw
from trainer.lessons.fading import ALL_YOURS, FULL_WORKING, asks_at
from trainer.lessons.placeholders import fill
from trainer.lessons.question import Drawn, Had, Question

MOST_REDRAWS = 50
#: Enough to find the last unseen set of numbers among many, and quickly done.
MOST_DRAWS = 1000
#: How many tolerances must lie between a slip's figure and the right one.
APART = 3


@dataclass(frozen=True, slots=True)
class CalculateQuestion(Question):
    """A question that a calculation makes and marks."""

    kind: ClassVar[str] = "calculate"

    calculate: str
    givens: Mapping[str, Draw]
    asks: tuple[Ask, ...]
    slips: tuple[Slip, ...]

    @property
    def worked_by(self) -> str:
        """The name of its calculation."""
        return self.calculate

    @property
    def method(self) -> Method[...]:
        """The calculation."""
        return method_named(self.calculate)

    @property
    def skills(self) -> tuple[str, ...]:
        """The skill of each asked line; on a roof one may have none."""
        return tuple(ask.skill for ask in self.asks if ask.skill)

    @property
    def leading_skill(self) -> str:
        """The skill of the last asked line, from which the working fades."""
        return self.asks[-1].skill

    def texts(self) -> Iterator[str]:
        """Yield what is asked, at each line too, and the cues of its slips."""
        yield self.text
        yield from (ask.words for ask in self.asks)
        yield from (slip.cue for slip in self.slips)

    def slips_at(self, ask: Ask) -> tuple[Slip, ...]:
        """Return the slips that may explain a wrong answer at this asked line."""
        last = ask.line == self.asks[-1].line
        return tuple(slip for slip in self.slips if slip.speaks_of(ask, last=last))

    def drawn(self, seed: str, redraws: int = 0) -> "Variant":
        """Return the variant of this seed and number of redraws, whether it is fair or not."""
        return variant(self, seed, redraws)

    def next_drawn(self, seed: str, had: Sequence[Had]) -> tuple["Variant", bool]:
        """Return numbers that weren't had; where all were, those that were had longest ago."""
        fresh = fresh_variant(self, seed, {each.variant for each in had})
        if fresh:
            return fresh, False
        oldest = _oldest(self, had)
        return (oldest, True) if oldest else (variant(self, seed), False)


@dataclass(frozen=True, slots=True)
class Variant(Drawn):
    """A sum with its numbers."""

    question: CalculateQuestion
    givens: Mapping[str, Any]
    #: How much of the working is shown; see `fading`.
    stage: int = ALL_YOURS
    #: The lines that are theirs to find at a stage before the last.
    last: tuple[Ask, ...] = ()

    @property
    def key(self) -> str:
        """A short digest of the numbers."""
        numbers = json.dumps(self.givens, sort_keys=True).encode()
        return hashlib.blake2b(numbers, digest_size=10).hexdigest()

    @property
    def asks(self) -> tuple[Ask, ...]:
        """The lines that are theirs to find at this stage."""
        return self.last or self.question.asks

    @property
    def all_theirs(self) -> bool:
        """Whether no line of the working is shown, nor one worked on other numbers."""
        if self.stage in (ALL_YOURS, FULL_WORKING):
            return self.stage == ALL_YOURS
        asked = [ask.line for ask in self.question.asks]
        return [ask.line for ask in self.asks] == asked and not self.lines_shown()

    def at_stage(self, stage: int) -> "Variant":
        """Return the same numbers with as much of the working shown as that stage shows."""
        if stage == self.stage:
            return self
        if stage == ALL_YOURS:
            return replace(self, stage=stage, last=())
        last = asks_at(stage, self.question.asks, self.working().lines)
        return replace(self, stage=stage, last=last)

    def ask_for(self, line: str) -> Ask:
        """Return the ask of this line; raise KeyError."""
        for ask in self.asks:
            if ask.line == line:
                return ask
        raise KeyError(line)

    def numbers(self) -> Mapping[str, Any]:
        """Return the givens."""
        return self.givens

    def text(self, ask: Ask | None = None) -> str:
        """Return the question's text, or one ask's, with the numbers in it."""
        text = ask.words if ask else self.question.text
        return fill(text, self.question.method, self.question.givens, self.givens)

    @property
    def is_workable(self) -> bool:
        """Whether the calculation, as it is today, takes these numbers."""
        try:
            self.working()
        except UNWORKABLE:
            return False
        return True

    def working(self) -> Working:
        """Return the right working on these numbers."""
        return work(self.question.method(**self.givens))

    def lines_shown(self) -> tuple[Line, ...]:
        """Return the lines above the first that is theirs; none where all are theirs."""
        if self.stage == ALL_YOURS:
            return ()
        first = self.asks[0].line
        return tuple(takewhile(lambda line: line.key != first, self.working().lines))

    def worked_beside(self) -> "Variant | None":
        """Return other numbers whose full working stands beside these, at the first stage."""
        if self.stage != FULL_WORKING:
            return None
        return fresh_variant(self.question, f"{self.seed}|worked", {self.key})


def variant(question: CalculateQuestion, seed: str, redraws: int = 0) -> Variant:
    """Return the variant of this seed and number of redraws, whether it is fair or not."""
    givens = {name: draw(each, seed, redraws, name) for name, each in question.givens.items()}
    return Variant(question, seed, redraws, givens)


def fresh_variant(
    question: CalculateQuestion, seed: str, seen: Collection[str] = ()
) -> Variant | None:
    """Return the first fair variant of a seed whose key isn't among `seen`, or None.

    Gives up when MOST_REDRAWS draws came too close to a slip, or when MOST_DRAWS turned up
    nothing unseen.
    """
    unfair = 0
    for redraws in range(MOST_DRAWS):
        drawn = variant(question, seed, redraws)
        if drawn.key in seen:
            continue
        if is_fair(drawn):
            return drawn
        unfair += 1
        if unfair > MOST_REDRAWS:
            break
    return None


def is_fair(drawn: Variant) -> bool:
    """Return whether no slip comes close to the right answer with these numbers."""
    return next(close_slips(drawn), None) is None


def close_slips(drawn: Variant) -> Iterator[tuple[Slip, float]]:
    """Yield each slip that can't be told from the right answer, and how near it comes.

    At an asked line a slip either changes nothing or lies three tolerances away; and each slip
    shows at one asked line at least.
    """
    right = drawn.working().figures
    for slip in drawn.question.slips:
        near = too_near(slip_figures(drawn, slip, right), right)
        if near is not None:
            yield slip, near


def too_near(figures: Iterable[tuple[Ask, float]], right: Mapping[str, float]) -> float | None:
    """Return how near a slip comes that can't be told from right, or None for one that can.

    `figures` is what it leads to at each asked line. It is nothing where it shows at none.
    """
    shows = False
    for ask, figure in figures:
        distance = abs(figure - right[ask.line])
        if distance <= 1e-9 * abs(right[ask.line]):
            continue
        if distance < APART * ask.tolerance.margin(right[ask.line]):
            return distance
        shows = True
    return None if shows else 0.0


def slip_figures(
    drawn: Variant, slip: Slip, right: Mapping[str, float]
) -> Iterator[tuple[Ask, float]]:
    """Yield what a slip leads to at each asked line it may show at, lines above being right."""
    question = drawn.question
    above: dict[str, float] = {}
    for ask in question.asks:
        if slip in question.slips_at(ask):
            figure = figure_at(ask.line, slip.change, question.method, drawn.givens, above)
            if figure is not None:
                yield ask, figure
        above[ask.line] = right[ask.line]


def _oldest(question: CalculateQuestion, had: Sequence[Had]) -> Variant | None:
    """Return the numbers that were last had longest ago, and that the question still draws."""
    last_had = {each.variant: place for place, each in enumerate(had)}
    for place in sorted(last_had.values()):
        drawn = variant(question, had[place].seed, had[place].redraws)
        if drawn.key == had[place].variant:
            return drawn
    return None
