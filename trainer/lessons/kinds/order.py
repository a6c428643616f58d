"""The kind `order`: steps to be put in order, and why one that comes too early does harm."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from trainer.lessons.block import Block
from trainer.lessons.kinds.picked import (
    PickedMark,
    PickedQuestion,
    key_of,
    line,
    picked_answer,
    read_between,
    read_common,
    refuse_twice,
    shuffled,
)
from trainer.lessons.question import Drawn

FEWEST, MOST = 4, 7


@dataclass(frozen=True, slots=True)
class Step:
    """One step, and what goes wrong when it is done before those above it."""

    text: str
    #: Nothing for the first, which can't come too early.
    early: str


@dataclass(frozen=True, slots=True)
class OrderQuestion(PickedQuestion):
    """Steps that have one right order."""

    kind: ClassVar[str] = "order"

    #: In the right order.
    steps: tuple[Step, ...]

    def texts(self) -> Iterator[str]:
        """Yield what is asked, each step and why it isn't done earlier."""
        yield self.text
        for step in self.steps:
            yield from filter(None, (step.text, step.early))

    def drawn(self, seed: str, redraws: int = 0) -> "OrderDrawn":
        """Return the steps shuffled by a seed, and never in their right order."""
        order = shuffled(seed, redraws, len(self.steps))
        if order == tuple(range(len(self.steps))):
            order = order[::-1]
        return OrderDrawn(self, seed, redraws, order)


@dataclass(frozen=True, slots=True)
class OrderDrawn(Drawn):
    """Steps as they are first shown; each goes by its place there, from 1, wherever it moves."""

    question: OrderQuestion
    order: tuple[int, ...]

    @property
    def key(self) -> str:
        """A short digest of the order in which they are first shown."""
        return key_of(self.order)

    @property
    def places(self) -> tuple[str, ...]:
        """What each step goes by, as first shown."""
        return tuple(str(place) for place in range(1, len(self.order) + 1))

    def step(self, place: str) -> Step:
        """Return the step that goes by this place."""
        return self.question.steps[self.order[int(place) - 1]]

    def right_places(self) -> tuple[str, ...]:
        """Return the places in the right order."""
        numbers = range(len(self.order))
        return tuple(str(self.order.index(number) + 1) for number in numbers)


def mark_order(drawn: OrderDrawn, put: Sequence[str]) -> PickedMark:
    """Return the mark of the places in the order that somebody put them in."""
    right = drawn.right_places()
    answer = picked_answer(
        drawn.question.skill,
        "order",
        " ".join(put),
        " ".join(f"{row}. {drawn.step(place).text}" for row, place in enumerate(put, start=1)),
        right=tuple(put) == right,
    )
    told = (
        line(place, drawn.step(place).text, drawn.step(place).early, right.index(place) + 1)
        for place in drawn.places
    )
    return PickedMark((answer,), told=tuple(told))


def read_order(block: Block, table: Mapping[str, Any], common: Mapping[str, str]) -> OrderQuestion:
    """Return the question that a block holds; raise AuthorError."""
    text, skill = read_common(block, table, ("steps",), "A question about an order")
    parts = read_between(block, table, "steps", FEWEST, MOST)
    steps = tuple(
        _read_step(part, each, first=number == 0) for number, (part, each) in enumerate(parts)
    )
    refuse_twice(parts, "text", [step.text for step in steps])
    return OrderQuestion(**common, text=text, skill=skill, steps=steps)


def _read_step(part: Block, table: Mapping[str, Any], *, first: bool) -> Step:
    part.refuse_unknown(table, ("text", "early"), "A step")
    if first and "early" in table:
        raise part.mistake("early", "The first step can't come too early.", "Leave 'early' out.")
    early = "" if first else part.want(table, "early", str, "A step after the first")
    return Step(part.want(table, "text", str, "A step"), early)
