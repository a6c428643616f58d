"""Quantities at the edge: printing them, and reading what people type.

A point is always decimal. A comma followed by exactly three digits is asked about, since it
may be a decimal comma or mark thousands. A wrong guess here would spoil a batch of resin, so
whatever could mean two things is asked about and never guessed.
"""

import math
import re
from dataclasses import dataclass
from functools import lru_cache

from trainer.engine.errors import OtherKind, Unclear
from trainer.engine.measures import UNITS, Unit, convert, unit_named, unit_spelled

#: Digits that matter on a building site; more would only pretend.
SIGNIFICANT = 4
LONGEST = 40
_SPACE = "\u00a0"


def figure(value: float, decimals: int | None = None) -> str:
    """Return a number as people read it: 39.6, 0.1215, 1320, 12 350.

    With `decimals` it has just that many; without, four digits that matter, no trailing zeros.
    Groups of three are set apart from 10 000 on.
    """
    if decimals is None:
        text = f"{abs(value):.{_decimals(value)}f}"
        text = text.rstrip("0").rstrip(".") if "." in text else text
    else:
        text = f"{abs(value):.{decimals}f}"
    whole, point, rest = text.partition(".")
    if len(whole) > SIGNIFICANT:
        whole = f"{int(whole):,}".replace(",", _SPACE)
    sign = "−" if value < 0 and float(text) else ""
    return f"{sign}{whole}{point}{rest}"


def _decimals(value: float) -> int:
    if value == 0 or not math.isfinite(value):
        return 0
    return max(0, SIGNIFICANT - 1 - math.floor(math.log10(abs(value))))


def show(value: float, unit: str, decimals: int | None = None) -> str:
    """Return a quantity with its unit, kept on one line: "39.6 g", "1 roll", "2.5"."""
    return _shown(value, unit, decimals)


# The workings of a plan tell the same few hundred quantities again and again.
@lru_cache(4096)
def _shown(value: float, unit: str, decimals: int | None) -> str:
    number = figure(value, decimals)
    if not unit:
        return number
    return f"{number}{_SPACE}{unit_for(value, unit)}"


def counted(number: int, one: str, many: str = "") -> str:
    """Return a number with its noun: "1 question", "3 questions"."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def unit_for(value: float, unit: str) -> str:
    """Return a unit as it stands beside a figure: "roll" beside 1, "rolls" beside 2."""
    known = UNITS.get(unit)
    is_one = known and known.kind.startswith("count") and figure(value) == "1"
    return known.spellings[0] if known and is_one else unit


def as_shown(value: float) -> float:
    """Return a number rounded to the digits that people are shown of it."""
    return round(value, _decimals(value))


@dataclass(frozen=True, slots=True)
class Reading:
    """What was understood from a typed answer."""

    #: In the unit that was asked for.
    value: float
    #: As it was understood, before any conversion: "1300 ml".
    read_as: str


# Most answers are just this, so it is read without ado.
_PLAIN = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,9})?")
# A ratio as it is said: 2.5 to 1.
_TO_ONE = re.compile(r"\s*(?:to|:)\s*1$", re.IGNORECASE)
_NUMBER = re.compile(
    r"""
    (?P<sign>[+\-−–]?)\s*
    (?:
        (?:(?P<mixed>\d+)\s+)?(?P<over>\d+)\s*/\s*(?P<under>\d+)   # 3/4, 1 1/2
      | (?P<whole>[1-9]\d{0,2}(?:\ \d{3})+|\d+)?                    # 1300, 1 300
        (?:(?P<point>[.,])(?P<rest>\d*))?                           # 1.3  1,3  .5
    )
    (?:\s*(?P<unit>[a-z%°'"].*))?$
    """,
    re.VERBOSE | re.IGNORECASE,
)
_FEET_AND_INCHES = re.compile(
    r"""
    (?P<feet>\d+(?:\.\d+)?)\s*(?:'|ft|foot|feet)\s*
    (?P<inches>\d+(?:\.\d+)?)\s*(?:"|in|inch|inches)?$
    """,
    re.VERBOSE | re.IGNORECASE,
)
# Phones make curly quotes of feet and inches by themselves.
_QUOTES = str.maketrans({"’": "'", "‘": "'", "′": "'", "”": '"', "“": '"', "″": '"'})
_FRACTIONS = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4"}
_LOOSE_GALLONS = re.compile(r"(gal|gals|gallons?|fl\.? ?oz|fluid ounces?)$", re.IGNORECASE)


def read_quantity(text: str, unit: str, chosen: str | None = None) -> Reading:
    """Return what a typed answer means in `unit`.

    `chosen` is the unit picked beside the field, for a figure typed without one; without it,
    `unit` itself. Raises OtherKind for a unit that measures something else, and Unclear for
    anything that has to be asked about; both say how to write it.
    """
    default = unit_named(unit if chosen is None else chosen)
    if _PLAIN.fullmatch(text) and default.symbol == unit:
        return Reading(float(text), _understood(float(text), default))
    tidy = _tidied(text)
    if not unit:
        tidy = _TO_ONE.sub("", tidy)
    wanted = unit_named(unit)
    value, typed = _feet_and_inches(text, tidy) or _number_and_unit(text, tidy, default, wanted)
    _refuse_other_kind(text, typed, wanted)
    if value < 0 and typed.kind != "temperature":
        raise Unclear(text, "A figure here cannot be below zero. Leave the minus sign out.")
    return Reading(convert(value, typed.symbol, unit), _understood(value, typed))


def _understood(value: float, typed: Unit) -> str:
    """Return a reading in full, without the powers of ten that nobody types."""
    text = f"{value:.10f}".rstrip("0").rstrip(".")
    return f"{text}{_SPACE}{typed.symbol}" if typed.symbol else text


def _tidied(text: str) -> str:
    if not text.strip():
        raise Unclear(text, "Type a figure first, such as 1.3.")
    if len(text.strip()) > LONGEST:
        raise Unclear(text, f"That is too long for one figure. Keep it under {LONGEST} characters.")
    for sign, written in _FRACTIONS.items():
        text = text.replace(sign, written)
    return " ".join(text.translate(_QUOTES).split())


def _feet_and_inches(text: str, tidy: str) -> tuple[float, Unit] | None:
    match = _FEET_AND_INCHES.fullmatch(tidy)
    if not match:
        return None
    inches = float(match["inches"])
    if inches >= 12:  # a slip, or 1'300 for thirteen hundred
        raise Unclear(text, "There are 12 inches to a foot. Write it like 12'6\".")
    return float(match["feet"]) + inches / 12, UNITS["ft"]


def _number_and_unit(text: str, tidy: str, default: Unit, wanted: Unit) -> tuple[float, Unit]:
    match = _NUMBER.fullmatch(tidy) if tidy.isprintable() else None
    if not match or not (match["whole"] or match["rest"] or match["over"]):
        raise Unclear(text, f"That can't be read as one figure. {_written(wanted)}")
    value = _value(text, match)
    below = value and match["sign"] and match["sign"] in "-−–"
    return (-value if below else value), _unit(text, match["unit"], default)


def _written(wanted: Unit) -> str:
    """Return how a figure in a unit is written; a plain number has none, a count no decimals."""
    number = "3" if wanted.kind.startswith("count") else "1.3"
    with_unit = f" or {number} {wanted.symbol}" if wanted.symbol else ""
    return f"Write it like {number}{with_unit}."


def _value(text: str, match: re.Match[str]) -> float:
    if match["over"]:
        if match["mixed"] and int(match["over"]) >= int(match["under"]) > 0:
            raise Unclear(text, "A part of a whole is below one. Write it like 1 1/2.")
        if int(match["under"]) == 0:
            raise Unclear(text, "A fraction can't be over nothing. Write it like 1 1/2.")
        return int(match["mixed"] or 0) + int(match["over"]) / int(match["under"])
    whole, rest = (match["whole"] or "0").replace(" ", ""), match["rest"] or "0"
    if match["point"] == "," and len(rest) == 3 and int(whole):  # a group of three
        raise Unclear(
            text, f"Is that {int(whole)}.{rest} or {int(whole)}{rest}? Write it one of those ways."
        )
    return float(f"{whole}.{rest}")


def _unit(text: str, typed: str | None, default: Unit) -> Unit:
    if not typed or not typed.strip():
        return default
    spelled = unit_spelled(typed)
    if spelled:
        return spelled
    if _LOOSE_GALLONS.match(typed.strip()):
        raise Unclear(text, "US or imperial? Write US gal, imp gal, US fl oz or imp fl oz.")
    raise Unclear(text, f"'{typed.strip()}' is no unit known here. Write the figure and its unit.")


def _refuse_other_kind(text: str, typed: Unit, wanted: Unit) -> None:
    if typed.kind == wanted.kind:
        return
    if not wanted.symbol:
        raise OtherKind(text, f"You wrote {typed.symbol}; this is a plain number. Is that so?")
    raise OtherKind(
        text, f"You wrote {typed.symbol}; this is asked in {wanted.symbol}. Look at it once more."
    )
