"""One set of numbers for a question, drawn from a seed and kept clear of its own slips."""

import hashlib
import json
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from trainer.engine import Working, work
from trainer.engine.slips import figure_at
from trainer.lessons.draws import draw
from trainer.lessons.placeholders import fill
from trainer.lessons.question import Ask, Question, Slip

MOST_REDRAWS = 50
#: Enough to find the last unseen set of numbers among many, and quickly done.
MOST_DRAWS = 1000
#: How many tolerances must lie between a slip's figure and the right one.
APART = 3


@dataclass(frozen=True, slots=True)
class Variant:
    """A question with its numbers."""

    question: Question
    seed: str
    redraws: int
    givens: Mapping[str, Any]

    @property
    def key(self) -> str:
        """A short digest of the numbers, by which the same variant is known again."""
        numbers = json.dumps(self.givens, sort_keys=True).encode()
        return hashlib.blake2b(numbers, digest_size=10).hexdigest()

    def text(self, ask: Ask | None = None) -> str:
        """Return the question's text, or one ask's, with the numbers in it."""
        return fill(ask.words if ask else self.question.text, self.question, self.givens)

    def working(self) -> Working:
        """Return the right working on these numbers."""
        return work(self.question.method(**self.givens))


def variant(question: Question, seed: str, redraws: int = 0) -> Variant:
    """Return the variant of this seed and number of redraws, whether it is fair or not."""
    givens = {name: draw(each, seed, redraws, name) for name, each in question.givens.items()}
    return Variant(question, seed, redraws, givens)


def fresh_variant(question: Question, seed: str, seen: Collection[str] = ()) -> Variant | None:
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
