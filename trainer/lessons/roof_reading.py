"""One reading of a roof: it goes on after a mistake, so that all of them are found at once."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Any, TypeVar

from trainer.engine import EngineError
from trainer.engine.errors import NoSuch
from trainer.engine.plans.description import fields_of
from trainer.engine.repeats import shortened
from trainer.engine.schema import LONGEST_TEXT, Parameter
from trainer.lessons.block import Block
from trainer.lessons.errors import AuthorError, did_you_mean
from trainer.lessons.roof_values import read_value

T = TypeVar("T")

#: More of anything than a roof has; a longer list is a slip of the keyboard.
MOST = 60
#: Of a line of a file no more than this is repeated.
_SHOWN = 100
#: The matcher of a key such as "mix.percent" or "edge.2.turn_mm".
_KEY = re.compile(r"(?P<name>\w+)(\.(?P<number>[1-9]\d{0,3}))?(\.(?P<field>\w*))?").fullmatch


@dataclass(eq=False)
class RoofMistake(AuthorError):
    """One mistake in a roof, tied to its key: "mix.percent", "edge.2.turn_mm", "opening.1"."""

    key: str = ""

    def __str__(self) -> str:
        where = f"{self.file}:{self.line}: " if self.file else ""
        key = f"{self.key}: " if self.key else ""
        below = "".join(f"\n    {each}" for each in (self.text, self.mend) if each)
        return f"{where}{key}{self.sentence}{below}"


def mistake_at(
    block: Block, key: str, sentence: str, mend: str = "", line_of: str | None = None
) -> RoofMistake:
    """Return the mistake of a key, at its line; `line_of` is the key whose line it is instead."""
    part, within = _place(block, key if line_of is None else line_of)
    found = part.mistake(within, sentence)
    return RoofMistake(found.file, found.line, sentence, printable(found.text), mend, key)


def _place(block: Block, key: str) -> tuple[Block, str]:
    """Return the part of a block in which a key stands, and what it is called there."""
    found = _KEY(key)
    name = found["name"] if found else key
    part = block.part(name, int(found["number"] or 1)) if found else None
    if found and part is not None:
        return part, found["field"] or ""
    return block, key if key in block.text else name


def printable(line: str) -> str:
    """Return a line of a file as it may be shown: one line, not too long, no control signs."""
    shown = "".join(sign if sign.isprintable() else " " for sign in line.strip())
    return shown if len(shown) <= _SHOWN else f"{shown[:_SHOWN]}…"


class RoofReading:
    """Reads the parts of a roof, and keeps what was given and what is wrong."""

    def __init__(self, data: Mapping[str, Any], block: Block) -> None:
        self.data, self.block = data, block
        self.mistakes: list[RoofMistake] = []
        self.given: set[str] = set()

    def wrong(self, key: str, sentence: str, mend: str = "", line_of: str | None = None) -> None:
        """Keep a mistake."""
        self.mistakes.append(mistake_at(self.block, key, sentence, mend, line_of))

    def table(self, name: str) -> Mapping[str, Any]:
        """Return a table of the roof, empty where there is none."""
        table = self.data.get(name, {})
        if isinstance(table, Mapping):
            return table
        self.wrong(name, f"'{name}' must be a table.", f"Begin it with a line [{name}].")
        return {}

    def tables(self, name: str) -> Iterator[tuple[str, Mapping[str, Any]]]:
        """Yield each table of a list with its key: "edge.2"."""
        tables = self.data.get(name, [])
        if not isinstance(tables, list) or not all(isinstance(each, Mapping) for each in tables):
            self.wrong(name, f"'{name}' must be tables.", f"Begin each with a line [[{name}]].")
            return
        if len(tables) > MOST:
            self.wrong(name, f"There are {len(tables)} of '{name}'; {MOST} are the most.")
            return
        yield from ((f"{name}.{number}", table) for number, table in enumerate(tables, 1))

    def refuse_unknown(
        self, key: str, table: Mapping[str, Any], known: Mapping[str, Any], what: str
    ) -> None:
        """Keep a mistake for each key that isn't known, with a guess at what was meant."""
        unknown = (name for name in table if name not in known)
        for name in islice(unknown, MOST):
            where = f"{key}.{shortened(name)}" if key else shortened(name)
            sentence = f"{what} has no key '{shortened(name)}'."
            self.wrong(where, sentence, did_you_mean(shortened(name), known))

    def part(
        self,
        key: str,
        table: Mapping[str, Any],
        kind: type[T],
        what: str,
        assumed: Mapping[str, Any] | None = None,
    ) -> T | None:
        """Return a part of a roof from its table; None where anything in it is wrong.

        `assumed` holds what is taken for fields that the table doesn't give.
        """
        plain: type = kind
        fields, before = fields_of(plain), len(self.mistakes)
        self.refuse_unknown(key, table, fields, what)
        values = {name: value for name, value in (assumed or {}).items() if name not in table}
        for name, field in fields.items():
            if name in table:
                self.given.add(f"{key}.{name}")
                values[name] = self.value(f"{key}.{name}", field, table[name])
            elif field.required and name not in values:
                sentence, mend = f"The {field.words} isn't given.", f"Add a line {name} = …"
                self.wrong(f"{key}.{name}", sentence, mend, line_of=key)
        return kind(**values) if len(self.mistakes) == before else None

    def value(self, key: str, field: Parameter, typed: Any, more: str = "") -> Any:  # noqa: ANN401
        """Return what a typed value means, or None and keep the mistake, with more told of it."""
        try:
            return read_value(field, typed)
        except NoSuch as error:
            self.wrong(key, str(error), "" if error.near else did_you_mean("", field.choices))
        except EngineError as error:
            self.wrong(key, f"{error}{more}")
        return None

    def title(self) -> str:
        """Return the title; keep a mistake where there is none, or one that is no line of text."""
        title = self.data.get("title")
        if "title" not in self.data:
            self.wrong("title", "A roof has no title.", 'Add a line title = "…"', line_of="")
        elif not isinstance(title, str) or not title.strip():
            self.wrong("title", "The title must be a text in quotes.")
        elif len(title) > LONGEST_TEXT or not title.isprintable():
            must = f"one line of {LONGEST_TEXT} letters and signs at the most"
            self.wrong("title", f"The title must be {must}.")
        else:
            return title.strip()
        return ""
