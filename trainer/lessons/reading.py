"""A question block's TOML to a Question, with every mistake pointed at by line."""

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from trainer.engine import Method
from trainer.lessons.block import Block
from trainer.lessons.calculate import CalculateQuestion
from trainer.lessons.errors import did_you_mean, did_you_mean_unit
from trainer.lessons.figures_in_prose import BadPlaceholder, Stock, fill_prose
from trainer.lessons.kinds.choose import read_choose
from trainer.lessons.kinds.locate import read_locate
from trainer.lessons.kinds.order import read_order
from trainer.lessons.placeholders import each_placeholder, ways_to_print
from trainer.lessons.question import Question
from trainer.lessons.reading_asks import ASK_KEYS, read_asks
from trainer.lessons.reading_givens import read_givens, read_method
from trainer.lessons.reading_slips import read_slips

_KINDS = ("calculate", "choose", "order", "locate")
_SUM_KEYS = ("id", "title", "kind", "calculate", "ask", "given", "asks", "slips")
_LONGEST_TITLE = 60
NOTHING_SOLD: Stock = {}
_SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def read_question(block: Block, lesson: str, folder: Path, stock: Stock = NOTHING_SOLD) -> Question:
    """Return the question that a block holds; raise AuthorError.

    Pictures that it asks about lie below `folder`; its texts may name sizes of `stock`, unless
    it is a sum, whose placeholders are its own.
    """
    table = block.read()
    kind = table.get("kind", "calculate")
    if kind in _KINDS[1:]:
        table = _filled(block, table, stock)
    common = _read_common(block, table, lesson)
    match kind:
        case "calculate":
            return _read_sum(block, table, common)
        case "choose":
            return read_choose(block, table, common)
        case "order":
            return read_order(block, table, common)
        case "locate":
            return read_locate(block, table, common, folder)
        case other:
            guess = did_you_mean(str(other), _KINDS)
            raise block.mistake("kind", f"There is no kind of question '{other}'.", guess)


def _filled(block: Block, value: Any, stock: Stock) -> Any:  # noqa: ANN401
    """Return what stands in a block with every text filled; raise AuthorError."""
    if isinstance(value, dict):
        return {key: _filled(block, each, stock) for key, each in value.items()}
    if isinstance(value, list):
        return [_filled(block, each, stock) for each in value]
    if not isinstance(value, str):
        return value
    try:
        return fill_prose(value, stock)
    except BadPlaceholder as bad:
        raise block.mistake(bad.text, bad.sentence, bad.mend) from bad


def read_sum(block: Block, lesson: str) -> CalculateQuestion:
    """Return the sum on a roof that a block holds; raise AuthorError.

    It still lacks the givens that come from a plan, and needs no skill.
    """
    table = block.read()
    if table.get("kind", "calculate") != "calculate":
        raise block.mistake("kind", "On a roof only sums are asked.", "Ask it in a lesson.")
    return _read_sum(block, table, _read_common(block, table, lesson), on_roof=True)


def _read_common(block: Block, table: Mapping[str, Any], lesson: str) -> dict[str, str]:
    slug = block.want(table, "id", str, "A question")
    if not _SLUG.fullmatch(slug):
        raise block.mistake("id", "An id is small letters, digits and single hyphens.")
    return {"id": slug, "lesson": lesson, "title": _read_title(block, table)}


def _read_sum(
    block: Block, table: Mapping[str, Any], common: Mapping[str, str], *, on_roof: bool = False
) -> CalculateQuestion:
    block.refuse_unknown(table, (*_SUM_KEYS, *ASK_KEYS), "A question")
    method = read_method(block, table)
    asks = read_asks(block, table, method, on_roof=on_roof)
    question = CalculateQuestion(
        **common,
        calculate=method.name,
        text=block.want(table, "ask", str, "A question"),
        givens=read_givens(block, table, method, on_roof=on_roof),
        asks=asks,
        slips=read_slips(block, table, method, asks),
    )
    check_placeholders(block, question.text, method)
    for ask in asks:
        check_placeholders(block, ask.words, method)
    return question


def _read_title(block: Block, table: Mapping[str, Any]) -> str:
    title: str = block.want(table, "title", str, "A question")
    if not 0 < len(title) <= _LONGEST_TITLE:
        raise block.mistake("title", f"A title has 1 to {_LONGEST_TITLE} characters.")
    return title


def check_placeholders(block: Block, text: str, method: Method[...]) -> None:
    """Raise AuthorError for a placeholder that no parameter fills, or in a unit of another kind."""

    def check(name: str, unit: str | None) -> None:
        where = f"{{{name}:{unit}}}" if unit else f"{{{name}}}"
        if name not in method.parameters:
            raise block.mistake(
                where, f"Nothing fills {{{name}}}.", did_you_mean(name, method.parameters)
            )
        ways = ways_to_print(method.parameters[name])
        if unit and unit not in ways:
            mend = did_you_mean_unit(unit, ways)
            raise block.mistake(where, f"{{{name}}} can't be printed in '{unit}'.", mend)

    each_placeholder(text, check)
