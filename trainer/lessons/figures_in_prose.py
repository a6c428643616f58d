"""`{wrap}`, `{stock.tape.width_mm}`, `{work catalyst_by_mass …}`: figures that prose doesn't type.

A lesson that types "50 mm" goes wrong when the constant changes; one that writes {wrap} doesn't.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from trainer.engine import EngineError, Method, show, work
from trainer.engine.errors import UNWORKABLE
from trainer.engine.materials import NAMED
from trainer.engine.measures import convert, units_of_kind
from trainer.engine.schema import Parameter
from trainer.engine.shares import share_in_words
from trainer.engine.typed_givens import read_givens
from trainer.engine.working import METHODS
from trainer.lessons.errors import did_you_mean, did_you_mean_unit
from trainer.lessons.placeholders import IN_WORDS
from trainer.lessons.standing import KnownFigure, of_constant, of_parameter, of_stock
from trainer.lessons.stock import Sizes

Stock = Mapping[str, Sizes]
#: A doubled brace, a placeholder, or a brace alone; {: … } gives Markdown's own attributes.
_BRACES = re.compile(r"\{\{|\}\}|\{(?!:)(?P<inside>[^{}\n]*)\}|\{(?!:)")
_AS_WRITTEN = "as-written"
_HOW = ("line", "unit", "decimals")
#: Enough to change any line that a default goes into, and a line that is rounded up.
_NUDGES = (1.01, 1.5)


class BadPlaceholder(ValueError):
    """A placeholder that nothing fills; carries its text, a sentence, and how it is mended."""

    def __init__(self, text: str, sentence: str, mend: str = "") -> None:
        super().__init__(text, sentence, mend)
        self.text, self.sentence, self.mend = text, sentence, mend

    def __str__(self) -> str:
        return f"{self.sentence} {self.mend}".strip()


@dataclass(frozen=True, slots=True)
class Filled:
    """What a placeholder prints, and the defaults that it rests on."""

    text: str
    figures: tuple[KnownFigure, ...] = ()


def fill_prose(text: str, stock: Stock) -> str:
    """Return a text with each placeholder replaced by figure and unit, without notes.

    Raises BadPlaceholder for one that nothing fills.
    """
    return fill_each(text, stock, lambda filled: filled.text)


def fill_each(text: str, stock: Stock, put: Callable[[Filled], str]) -> str:
    """Return a text with each placeholder replaced by what `put` makes of it.

    {{ and }} print a brace. Raises BadPlaceholder.
    """

    def put_in(match: re.Match[str]) -> str:
        if match[0] in ("{{", "}}"):
            return match[0][0]
        if match["inside"] is None:
            raise BadPlaceholder(match[0], "This brace isn't closed.", "Double it to print it.")
        return put(_filled(match[0], match["inside"].strip(), stock))

    return _BRACES.sub(put_in, text) if "{" in text or "}}" in text else text


def without_placeholders(text: str) -> str:
    """Return a text with a blank of the same length for each placeholder."""
    return _BRACES.sub(lambda match: "¤" * len(match[0]), text)


def _filled(whole: str, inside: str, stock: Stock) -> Filled:
    first, _, rest = inside.partition(" ")
    if first == _AS_WRITTEN:
        return Filled(rest.strip())
    try:
        if first == "work":
            return _worked(whole, rest)
        if inside.startswith("stock."):
            return _stocked(whole, inside, stock)
        return _constant(whole, inside)
    except BadPlaceholder:
        raise
    except UNWORKABLE as error:
        sentence = str(error) if isinstance(error, EngineError) else "It can't be worked out."
        raise BadPlaceholder(whole, sentence) from error


def _constant(whole: str, inside: str) -> Filled:
    name, colon, unit = (each.strip() for each in inside.partition(":"))
    if name not in NAMED:
        known = [*NAMED, "work", _AS_WRITTEN]
        raise BadPlaceholder(whole, f"There is no constant '{name}'.", did_you_mean(name, known))
    constant = NAMED[name]
    if unit == IN_WORDS and not constant.unit:
        return Filled(share_in_words(constant.value), (of_constant(constant),))
    to = unit if colon else constant.unit
    shown = show(_in(whole, constant.value, constant.unit, to), to)
    return Filled(shown, (of_constant(constant),))


def _stocked(whole: str, inside: str, stock: Stock) -> Filled:
    known = {f"stock.{name}.{key}" for name, sizes in stock.items() for key in sizes.sizes}
    if inside not in known:
        sentence = f"There are no sizes '{inside}'."
        raise BadPlaceholder(whole, sentence, did_you_mean(inside, known))
    _, material, key = inside.split(".")
    sizes = stock[material]
    figure = of_stock(material, key, sizes)
    return Filled(figure.figure, (figure,))


# Captions tell the figures of their prose again.
@lru_cache(256)
def _worked(whole: str, words: str) -> Filled:
    name, *given = words.split() or [""]
    if name not in METHODS:
        sentence = f"There is no calculation '{name}'."
        raise BadPlaceholder(whole, sentence, did_you_mean(name, METHODS))
    method = METHODS[name]
    how = dict(_how(whole, given))
    givens = read_givens(method, [word for word in given if word.partition("=")[0] not in _HOW])
    working = work(method(**givens))
    keys = [line.key for line in working.lines]
    key = how.get("line", keys[-1])
    if key not in keys:
        raise BadPlaceholder(whole, f"'{name}' has no line '{key}'.", did_you_mean(key, keys))
    line = working.line(key)
    unit = how.get("unit", line.unit)
    value = _in(whole, line.value, line.unit, unit)
    decimals = int(how["decimals"]) if "decimals" in how else None
    rests_on = tuple(map(of_parameter, _defaults_of(method, givens, key, line.value)))
    return Filled(show(value, unit, decimals), rests_on)


def _how(whole: str, given: list[str]) -> Iterator[tuple[str, str]]:
    """Yield what a placeholder says of the line, the unit and the decimals."""
    for word in given:
        name, _, value = word.partition("=")
        if name == "decimals" and value not in set("0123456"):
            raise BadPlaceholder(whole, "The decimals are a whole number from 0 to 6.")
        if name in _HOW:
            yield name, value


def _in(whole: str, value: float, unit: str, to: str) -> float:
    """Return a value in a unit of the same kind; raise BadPlaceholder for any other."""
    same = units_of_kind(unit)
    if to not in same:
        sentence = f"{show(value, unit)} can't be printed in '{to}'."
        raise BadPlaceholder(whole, sentence, did_you_mean_unit(to, same))
    return convert(value, unit, to)


def _defaults_of(
    method: Method[...], givens: Mapping[str, object], key: str, value: float
) -> Iterator[Parameter]:
    """Yield each parameter whose default was taken and goes into the line of this key."""
    for parameter in method.parameters.values():
        if not parameter.standing or parameter.name in givens:
            continue
        if any(_nudged(method, givens, key, parameter, by) != value for by in _NUDGES):
            yield parameter


def _nudged(
    method: Method[...], givens: Mapping[str, object], key: str, parameter: Parameter, by: float
) -> float | None:
    """Return the line as another default leaves it, None where it can't be worked at all."""
    if not parameter.default:
        return None
    try:
        other = {**givens, parameter.name: parameter.default * by}
        return work(method.inside(**other)).line(key).value
    except UNWORKABLE:
        return None
