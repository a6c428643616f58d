"""One field of a roof's form as its page shows it: words, unit, default and its standing.

All of it comes from the annotations of a description's parts.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from trainer.engine import show
from trainer.engine.plans.description import fields_of
from trainer.engine.schema import Parameter
from trainer.engine.units import counted
from trainer.lessons.roof_parts import OPENINGS
from trainer.lessons.roof_shapes import MEASURED
from trainer.web.described import Described
from trainer.web.roof_form import KIND, ROWS

#: What one row of each list is called.
ROW_WORDS = {"edge": "Side", "opening": "Opening", "cup": "Test cup", "corner": "Corner"}
_NOT_KNOWN = "Leave it empty if you don't know."


@dataclass(frozen=True, slots=True)
class Box:
    """One field: a line to type on, or choices to pick from."""

    name: str
    words: str
    unit: str
    choices: tuple[str, ...]
    value: str
    error: str
    hint: str = ""
    #: Whether nothing but digits is typed there; a place or a temperature may lie below zero.
    digits: bool = False
    #: The shapes or kinds of opening that have it; none where all do.
    only: tuple[str, ...] = ()

    @property
    def field(self) -> str:
        """The last word of its name."""
        return self.name.rpartition(".")[2]


@dataclass(frozen=True, slots=True)
class Group:
    """Fields that stand together under one title, and what is wrong with all of them."""

    name: str
    title: str
    boxes: tuple[Box, ...]
    error: str = ""
    #: How many say something else than their defaults.
    changed: int = 0

    @property
    def changed_words(self) -> str:
        """How many fields were changed, or nothing."""
        return f"{counted(self.changed, 'field')} changed" if self.changed else ""

    @property
    def is_wrong(self) -> bool:
        """Whether there is anything to mend in it."""
        return bool(self.error or any(box.error for box in self.boxes))


@dataclass(frozen=True, slots=True)
class BoxMaker:
    """Makes fields that hold what was typed, and what is wrong with it."""

    described: Described
    quiet: bool = False

    def typed(self, name: str) -> str:
        """Return what stands in a field."""
        return self.described.fields.get(name, "")

    def error(self, name: str) -> str:
        """Return what is wrong with a field, or nothing."""
        return "" if self.quiet else self.described.mistakes.get(name, "")

    def plain(self, name: str, words: str, hint: str = "") -> Box:
        """Return a field of text."""
        return Box(name, words, "", (), self.typed(name), self.error(name), hint)

    def box(
        self, name: str, field: Parameter, hint: str | None = None, only: tuple[str, ...] = ()
    ) -> Box:
        """Return a field by its annotation; a choice stands at its default."""
        default = field.default if field.choices and not field.required else ""
        return Box(
            name,
            capital(words_for(field.name, only) if only else field.words),
            field.unit,
            field.choices,
            self.typed(name) or default,
            self.error(name),
            hint_of(field) if hint is None else hint,
            field.shape in ("number", "count") and field.low >= 0,
            only,
        )

    def row(self, name: str, number: int, words: str = "", turn_hint: str | None = None) -> Group:
        """Return one row of a list: a side, an opening, a test cup."""
        key = f"{name}.{number}"
        boxes = tuple(
            self.box(
                f"{key}.{field.name}",
                field,
                turn_hint if field.name == "turn_mm" else None,
                kinds_with(field.name, OPENINGS) if name == "opening" and field != KIND else (),
            )
            for field in ROWS[name].values()
        )
        title = f"{ROW_WORDS[name]} {number}{f', {words}' if words else ''}"
        return Group(key, title, boxes, self.error(key))


def default_words(value: float, unit: str, standing: str) -> str:
    """Return a default and how it is known: "2 % unless you say otherwise: common practice."."""
    known = f": {standing.replace(': ', ', ', 1)}" if standing else ""
    return f"{show(value, unit)} unless you say otherwise{known}."


def hint_of(field: Parameter) -> str:
    """Return what a field means when it is left empty; nothing where it must be filled in."""
    if field.choices or field.required:
        return ""
    if field.optional:
        return _NOT_KNOWN
    return default_words(field.default, field.unit, field.standing)


def kinds_with(name: str, kinds: Mapping[str, type]) -> tuple[str, ...]:
    """Return the kinds that have a field of this name."""
    return tuple(kind for kind, part in kinds.items() if name in fields_of(part))


def words_for(name: str, kinds: Iterable[str]) -> str:
    """Return what a field is called in these kinds: "diameter of the pipe or the outlet"."""
    parts: Mapping[str, type] = {**MEASURED, **OPENINGS}
    words = list(dict.fromkeys(fields_of(parts[kind])[name].words for kind in kinds))
    first, of, _ = words[0].partition(" of ")
    others = [each.removeprefix(f"{first}{of}") for each in words[1:]]
    return " or ".join((words[0], *others))


def capital(words: str) -> str:
    """Return words as they begin a line."""
    return words[:1].upper() + words[1:]
