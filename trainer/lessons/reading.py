"""A question block's TOML to a Question, with every mistake pointed at by line."""

import re
from collections.abc import Mapping
from typing import Any

from trainer.engine import Method
from trainer.engine.measures import UNITS
from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean
from trainer.lessons.placeholders import each_placeholder
from trainer.lessons.question import Question
from trainer.lessons.reading_asks import ASK_KEYS, read_asks
from trainer.lessons.reading_givens import read_givens, read_method
from trainer.lessons.reading_slips import read_slips

_QUESTION_KEYS = ("id", "title", "kind", "calculate", "ask", "given", "asks", "slips")
_LONGEST_TITLE = 60
_SLUG = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


def read_question(block: Block, lesson: str, *, on_roof: bool = False) -> Question:
    """Return the question that a block holds; raise AuthorError.

    One that is asked `on_roof` still lacks the givens that come from a plan, and needs no skill.
    """
    table = block.read()
    block.refuse_unknown(table, (*_QUESTION_KEYS, *ASK_KEYS), "A question")
    slug = block.want(table, "id", str, "A question")
    if not _SLUG.fullmatch(slug):
        raise block.mistake("id", "An id is small letters, digits and single hyphens.")
    if table.get("kind", "calculate") != "calculate":
        raise block.mistake("kind", "This kind of question isn't known.", "Known here: calculate.")
    method = read_method(block, table)
    asks = read_asks(block, table, method, on_roof=on_roof)
    question = Question(
        id=slug,
        lesson=lesson,
        title=_read_title(block, table),
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
        if unit and (
            unit not in UNITS or UNITS[unit].kind != UNITS[method.parameters[name].unit].kind
        ):
            raise block.mistake(where, f"{{{name}}} can't be printed in {unit}.")

    each_placeholder(text, check)
