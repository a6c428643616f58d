"""The kind `choose`: a decision, and what happens next after each way of taking it."""

from collections.abc import Iterator, Mapping
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
    read_right,
    refuse_twice,
    shuffled,
)
from trainer.lessons.question import Drawn

FEWEST, MOST = 4, 6


@dataclass(frozen=True, slots=True)
class Choice:
    """One way of deciding, and what comes of it."""

    text: str
    then: str


@dataclass(frozen=True, slots=True)
class ChooseQuestion(PickedQuestion):
    """A decision with one right way out."""

    kind: ClassVar[str] = "choose"

    choices: tuple[Choice, ...]
    #: The place of the right one, from 0.
    right: int

    def texts(self) -> Iterator[str]:
        """Yield what is asked, each choice and what comes of it."""
        yield self.text
        for choice in self.choices:
            yield from (choice.text, choice.then)

    def drawn(self, seed: str, redraws: int = 0) -> "ChooseDrawn":
        """Return the choices shuffled by a seed."""
        order = shuffled(seed, redraws, len(self.choices))
        return ChooseDrawn(self, seed, redraws, order)


@dataclass(frozen=True, slots=True)
class ChooseDrawn(Drawn):
    """A decision as it is shown; what is picked goes by its place on the page, from 1."""

    question: ChooseQuestion
    order: tuple[int, ...]

    @property
    def key(self) -> str:
        """A short digest of the order of the choices."""
        return key_of(self.order)

    def choices(self) -> list[tuple[str, Choice]]:
        """Return each choice with its place, as it is shown."""
        choices = (self.question.choices[number] for number in self.order)
        return [(str(place), choice) for place, choice in enumerate(choices, start=1)]

    def right_place(self) -> str:
        """Return the place of the right choice."""
        return str(self.order.index(self.question.right) + 1)


def mark_choice(drawn: ChooseDrawn, picked: str) -> PickedMark:
    """Return the mark of the choice at a place on the page; raise KeyError for no such place."""
    choices, right = dict(drawn.choices()), drawn.right_place()
    answer = picked_answer(
        drawn.question.skill, "choice", picked, choices[picked].text, right=picked == right
    )
    told = (
        line(place, choice.text, choice.then, float(place == right))
        for place, choice in choices.items()
    )
    return PickedMark((answer,), told=tuple(told))


def read_choose(
    block: Block, table: Mapping[str, Any], common: Mapping[str, str]
) -> ChooseQuestion:
    """Return the question that a block holds; raise AuthorError."""
    what = "A question that lets one choose"
    text, skill = read_common(block, table, ("choices",), what)
    parts = read_between(block, table, "choices", FEWEST, MOST)
    right = read_right(parts, block, "choices")
    choices = tuple(_read_choice(part, each) for part, each in parts)
    refuse_twice(parts, "text", [choice.text for choice in choices])
    return ChooseQuestion(**common, text=text, skill=skill, choices=choices, right=right)


def _read_choice(part: Block, table: Mapping[str, Any]) -> Choice:
    part.refuse_unknown(table, ("text", "then", "right"), "A choice")
    return Choice(
        part.want(table, "text", str, "A choice"), part.want(table, "then", str, "A choice")
    )
