"""What kinds without numbers share: a shuffle from a seed, one answer, and one explanation."""

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from trainer.lessons.block import Block
from trainer.lessons.question import AnswerMark, Drawn, Had, Mark, Question

_KEYS = ("id", "title", "kind", "ask", "skill")


@dataclass(frozen=True, slots=True)
class PickedQuestion(Question):
    """A question that is answered once, by picking, and explained at once."""

    skill: str

    @property
    def is_numberless(self) -> bool:
        """Always: who has seen the explanation remembers it for a while."""
        return True

    @property
    def skills(self) -> tuple[str, ...]:
        """The one skill that an answer is a try for."""
        return (self.skill,)

    def next_drawn(self, seed: str, had: Sequence[Had]) -> tuple[Drawn, bool]:
        """Return it shuffled by this seed; somebody who had it lately had it in any order."""
        return self.drawn(seed), bool(had)


@dataclass(frozen=True, slots=True)
class PickedMark(Mark):
    """The mark of what was picked; there is no second try."""

    told: tuple[Mapping[str, Any], ...] = field(kw_only=True)

    @property
    def lines(self) -> list[dict[str, Any]]:
        """All that could be picked, as it was shown, each with its explanation."""
        return [dict(line) for line in self.told]


def line(key: str, words: str, shown: str, value: float) -> dict[str, Any]:
    """Return one thing that could be picked, as the records keep it."""
    return {"key": key, "words": words, "shown": shown, "value": value, "unit": ""}


def picked_answer(skill: str, name: str, typed: str, read_as: str, *, right: bool) -> AnswerMark:
    """Return the mark of one's one answer."""
    return AnswerMark(name, skill, typed, read_as, "right" if right else "wrong")


def shuffled(seed: str, redraws: int, many: int) -> tuple[int, ...]:
    """Return the numbers below `many` in an order that rests on the seed and redraws alone."""

    def place(number: int) -> bytes:
        return hashlib.blake2b(f"{seed}|{redraws}|{number}".encode(), digest_size=8).digest()

    return tuple(sorted(range(many), key=place))


def key_of(order: Sequence[object]) -> str:
    """Return a short digest of what was shown, in its order."""
    words = "|".join(map(str, order))
    return hashlib.blake2b(words.encode(), digest_size=10).hexdigest()


def read_common(
    block: Block, table: Mapping[str, Any], own: tuple[str, ...], what: str
) -> tuple[str, str]:
    """Return what is asked and its skill, once no key is unknown; raise AuthorError."""
    block.refuse_unknown(table, (*_KEYS, *own), what)
    text: str = block.want(table, "ask", str, what)
    skill: str = block.want(table, "skill", str, what)
    return text, skill


def read_between(
    block: Block, table: Mapping[str, Any], key: str, least: int, most: int
) -> list[tuple[Block, dict[str, Any]]]:
    """Return the tables of a list that has `least` to `most`; raise AuthorError."""
    parts = list(block.tables(table, key))
    if not least <= len(parts) <= most:
        sentence = f"It has {least} to {most} [[{key}]], and here are {len(parts)}."
        raise block.mistake(key, sentence, f"Begin each with a line [[{key}]].")
    return parts


def read_right(parts: Sequence[tuple[Block, Mapping[str, Any]]], block: Block, key: str) -> int:
    """Return the place of the one table that is right; raise AuthorError for none or several."""
    right = [
        place
        for place, (part, each) in enumerate(parts)
        if "right" in each and part.want(each, "right", bool, "It")
    ]
    if not right:
        sentence = f"None of the [[{key}]] is right."
        raise block.mistake(key, sentence, "Write right = true in one of them.")
    if len(right) > 1:
        part, _ = parts[right[1]]
        raise part.mistake("right", f"Two of the [[{key}]] are right.", "Write right = true once.")
    return right[0]


def refuse_twice(
    parts: Sequence[tuple[Block, Mapping[str, Any]]], key: str, words: Sequence[str]
) -> None:
    """Raise AuthorError at the key of the second of two tables that read the same on a page."""
    for place, (part, _) in enumerate(parts):
        if words[place] in words[:place]:
            sentence = f"'{words[place]}' stands here twice, and nobody can tell which is meant."
            raise part.mistake(key, sentence, "Say it in other words, or leave one out.")
