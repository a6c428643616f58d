"""Every line of every calculation, worked again with pint (a general-purpose units library).

A line shows a formula and the figures that go into it. Here the formula is worked over
quantities made from those figures, units and all, and must come to the line's own value and
unit; and each printed figure must be the figure itself, rounded. So what a trainee is shown
can't part from what was computed.
"""

import math
import re
from collections.abc import Callable
from contextlib import suppress
from decimal import Decimal
from typing import Any

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from trainer.engine import METHODS, Line, Method, Part, Refused, drive
from trainer.engine.drivers import example_working

EVERY_METHOD = pytest.mark.parametrize("method", METHODS.values(), ids=METHODS.keys())
GivensOf = Callable[[Method[...]], st.SearchStrategy[dict[str, Any]]]
UNITS: pint.UnitRegistry[Any] = pint.UnitRegistry()

#: A percentage is a plain number whose formula divides by 100; a count is a plain number too.
COUNTS = ("rolls", "batches", "pieces", "drops", "laps", "lengths", "tins", "bottles")
PLAIN = dict.fromkeys(("", "%", *COUNTS), "")
#: In a sum a Celsius reading is so many degrees above 0 °C: degrees add, and a ratio of them is
#: plain. Where the zero counts too there is one formula, and the library turns the reading itself.
DEGREES = {"°C": "delta_degC"}
TO_KELVIN = "celsius + 273.15"
FUNCTIONS: dict[str, Callable[..., Any]] = {
    "ceil": lambda quantity: math.ceil(UNITS.Quantity(quantity).m_as("")),
    "min": min,
    "max": max,
    "exp": lambda quantity: math.exp(UNITS.Quantity(quantity).m_as("")),
    "ln": lambda quantity: math.log(UNITS.Quantity(quantity).m_as("")),
}
NAME = re.compile(r"[a-z][a-z0-9_]*")
NAME_OR_NUMBER = re.compile(r"[a-z][a-z0-9_]*|\d+(?:\.\d+)?")
PRINTED = re.compile(r"\d{1,3}(?:\u00a0\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?")


def lines_of(method: Method[...], givens: dict[str, Any], times: float = 1) -> list[Line]:
    """Return the lines of a working, as far as it goes where the figures are refused.

    From each line goes on so many times its value.
    """
    lines: list[Line] = []

    def keep(line: Line) -> float:
        lines.append(line)
        return line.value * times

    with suppress(Refused):
        drive(method(**givens), keep)
    return lines


def outside(unit: str) -> str:
    """Return what the units library calls one of our units."""
    return (PLAIN | DEGREES).get(unit, unit)


def quantity(part: Part) -> Any:
    """Return a part as a quantity of the units library."""
    return UNITS.Quantity(part.value, outside(part.unit))


def worked_outside(line: Line) -> Any:
    """Return what the formula of a line comes to over quantities made from its parts."""
    if line.formula == TO_KELVIN:
        return UNITS.Quantity(line.parts["celsius"].value, "degC").m_as(line.unit)
    known = FUNCTIONS | {name: quantity(part) for name, part in line.parts.items()}
    result = eval(line.formula, {"__builtins__": {}}, known)  # noqa: S307 - our own formulas
    return UNITS.Quantity(result).m_as(outside(line.unit))


def rounded(value: float) -> Decimal:
    """Return a figure with four digits that matter, whole digits kept."""
    exact = Decimal(value)
    return exact.quantize(Decimal(10) ** min(exact.adjusted() - 3, 0)) if exact else exact


def printed(text: str) -> list[Decimal]:
    """Return the figures in a drawn line, in order."""
    return [Decimal(found.replace("\u00a0", "")) for found in PRINTED.findall(text)]


@EVERY_METHOD
@settings(max_examples=20)
@given(data=st.data())
def test_every_line_comes_to_its_value_and_unit(
    givens_of: GivensOf, method: Method[...], data: st.DataObject
) -> None:
    """To nine digits, over figures from the whole range; a wrong unit can't be turned at all."""
    for line in lines_of(method, data.draw(givens_of(method))):
        assert worked_outside(line) == pytest.approx(line.value, rel=1e-9, abs=1e-12), line.key


@EVERY_METHOD
@settings(max_examples=20)
@given(data=st.data())
def test_every_printed_figure_is_its_part_rounded(
    givens_of: GivensOf, method: Method[...], data: st.DataObject
) -> None:
    """In the order of the formula: each part, each plain number in full, and what they come to."""
    for line in lines_of(method, data.draw(givens_of(method))):
        tokens = [each for each in NAME_OR_NUMBER.findall(line.formula) if each not in FUNCTIONS]
        parts = {name: abs(rounded(part.value)) for name, part in line.parts.items()}
        expected = [parts[each] if each in parts else Decimal(each) for each in tokens]
        assert printed(line.shown()) == [*expected, abs(rounded(line.value))], line.key


@EVERY_METHOD
@settings(max_examples=5)
@given(data=st.data())
def test_a_formula_uses_each_of_its_parts_and_no_others(
    givens_of: GivensOf, method: Method[...], data: st.DataObject
) -> None:
    """Nothing is shown that doesn't count, and nothing counts that isn't shown."""
    for line in lines_of(method, data.draw(givens_of(method))):
        assert set(NAME.findall(line.formula)) - set(FUNCTIONS) == set(line.parts), line.key


@EVERY_METHOD
@settings(max_examples=10)
@given(data=st.data())
def test_a_carried_figure_is_worked_on_truly(
    givens_of: GivensOf, method: Method[...], data: st.DataObject
) -> None:
    """With another figure sent at a line, every line is still what its own parts come to."""
    givens, times = data.draw(givens_of(method)), data.draw(st.floats(0.5, 2))
    for line in lines_of(method, givens, times):
        assert worked_outside(line) == pytest.approx(line.value, rel=1e-9, abs=1e-12), line.key


@EVERY_METHOD
def test_a_rate_takes_kelvin(method: Method[...]) -> None:
    """The library can't tell a kelvin from a degree, so no power of e has a °C in it."""
    for line in example_working(method).lines:
        degrees = [name for name, part in line.parts.items() if part.unit == "°C"]
        assert "exp(" not in line.formula or degrees == [], line.key


def test_a_reading_that_was_not_turned_to_kelvin_would_be_found() -> None:
    """A zero at 273 instead of 273.15, and a reading that stays in degrees, are both caught."""
    parts = {"celsius": Part(20, "°C", "temperature")}
    turned = Line("now_k", "temperature", "K", 293.15, TO_KELVIN, parts)
    assert worked_outside(turned) == pytest.approx(293.15)
    assert worked_outside(turned) != pytest.approx(20 + 273, rel=1e-9)
    assert worked_outside(turned._replace(unit="°C")) != pytest.approx(293.15, rel=1e-9)


def test_a_line_that_is_wrong_would_be_found() -> None:
    """The net itself holds: a thousand forgotten, or a unit that doesn't fit, is caught."""
    parts = {"resin": Part(1.32, "kg", "resin"), "percent": Part(3, "%", "dose")}
    forgotten = Line("mass", "mass of catalyst", "g", 0.0396, "resin * percent / 100", parts)
    assert worked_outside(forgotten) != pytest.approx(forgotten.value, rel=1e-9)
    with pytest.raises(pint.DimensionalityError):
        worked_outside(forgotten._replace(unit="ml"))
