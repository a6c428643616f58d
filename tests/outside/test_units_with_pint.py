"""The sizes of units against pint and against printed tables.

NIST Special Publication 811, Appendix B.8 (cited second-hand), gives the customary units;
pint's registry gives all of them, temperatures too.
"""

from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import Part, conversions, read_quantity
from trainer.engine.measures import UNITS, Unit, convert

REGISTRY: pint.UnitRegistry[Any] = pint.UnitRegistry()

#: What the units library calls those whose symbols are ours.
NAMES = {
    "US gal": "US_liquid_gallon",
    "imp gal": "imperial_gallon",
    "US fl oz": "US_fluid_ounce",
    "imp fl oz": "imperial_fluid_ounce",
    "in": "inch",
    "ft²": "foot ** 2",
    "oz/ft²": "ounce / foot ** 2",
    "oz/yd²": "ounce / yard ** 2",
    "°C": "degC",
    "°F": "degF",
    "%": "percent",
}
MEASURED = [unit for unit in UNITS.values() if unit.symbol and not unit.kind.startswith("count")]


def base_of(unit: Unit) -> str:
    """Return the symbol that the sizes of a kind are measured in."""
    return next(each.symbol for each in MEASURED if each.kind == unit.kind and each.factor == 1)


def outside(value: float, symbol: str, to: str) -> float:
    """Return what the units library turns a value into."""
    quantity = REGISTRY.Quantity(value, NAMES.get(symbol, symbol))
    return float(quantity.m_as(NAMES.get(to, to)))


@pytest.mark.parametrize("unit", MEASURED, ids=lambda unit: unit.symbol)
def test_every_unit_has_its_size(unit: Unit) -> None:
    """One of each, and a thousand, in the base of its kind (pint 0.24 or later)."""
    base = base_of(unit)
    for value in (1, 1000):
        expected = outside(value, unit.symbol, base)
        assert convert(value, unit.symbol, base) == pytest.approx(expected, rel=1e-12)


@given(st.sampled_from(MEASURED), st.sampled_from(MEASURED), st.floats(0.001, 1e6))
def test_any_two_units_of_a_kind(one: Unit, other: Unit, value: float) -> None:
    """Whichever way a figure is turned, the units library turns it so too."""
    if one.kind == other.kind:
        expected = outside(value, one.symbol, other.symbol)
        assert convert(value, one.symbol, other.symbol) == pytest.approx(expected, rel=1e-9)
    else:
        with pytest.raises(ValueError, match="cannot be turned into"):
            convert(value, one.symbol, other.symbol)


@pytest.mark.parametrize(
    ("value", "unit", "to", "printed"),
    [
        (1, "oz/ft²", "g/m²", 305.1517),
        (1.5, "oz/ft²", "g/m²", 457.73),
        (2, "oz/ft²", "g/m²", 610.30),
        (1, "oz/yd²", "g/m²", 33.90575),
        (1, "US gal", "L", 3.785412),
        (1, "imp gal", "L", 4.54609),
        (1, "US fl oz", "ml", 29.57353),
        (1, "imp fl oz", "ml", 28.41306),
        (1, "oz", "g", 28.34952),
        (1, "lb", "kg", 0.4535924),
        (1, "ft", "m", 0.3048),
        (1, "in", "mm", 25.4),
        (1, "ft²", "m²", 0.09290304),
    ],
)
def test_the_printed_table(value: float, unit: str, to: str, printed: float) -> None:
    """NIST SP 811 App. B.8, cited second-hand, to the digits printed: seven, five for the mats."""
    assert convert(value, unit, to) == pytest.approx(printed, rel=2e-7 if value == 1 else 2e-5)


def test_eighteen_ounces_a_square_yard_are_two_a_square_foot() -> None:
    """A square yard is nine square feet: derived."""
    assert convert(18, "oz/yd²", "oz/ft²") == pytest.approx(2)


def test_a_one_and_a_half_ounce_mat_is_no_450() -> None:
    """It is sold as 450 g/m² and is 457.7: what is read is what was typed."""
    assert read_quantity("1.5 oz/ft²", "g/m²").value == pytest.approx(457.73, abs=5e-3)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40), (59, 15)])
def test_fixed_points_of_the_thermometer(fahrenheit: float, celsius: float) -> None:
    """Ice, boiling water, where the scales meet, and a working day: exact by definition."""
    assert convert(fahrenheit, "°F", "°C") == pytest.approx(celsius, abs=1e-9)
    assert convert(celsius, "°C", "°F") == pytest.approx(fahrenheit, abs=1e-9)


@given(st.floats(-40, 150))
def test_fahrenheit_at_every_temperature(fahrenheit: float) -> None:
    """The units library minds the zero of each scale (pint, degF to degC)."""
    expected = outside(fahrenheit, "°F", "°C")
    assert convert(fahrenheit, "°F", "°C") == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    "part",
    [
        conversions.G_PER_KG,
        conversions.ML_PER_L,
        conversions.MM_PER_M,
        conversions.MM2_PER_M2,
        conversions.J_PER_KJ,
    ],
    ids=lambda part: part.unit,
)
def test_a_conversion_changes_nothing_but_the_unit(part: Part) -> None:
    """A thousand grams in a kilogram are one: with its unit, a conversion is the number one."""
    assert REGISTRY.Quantity(part.value, part.unit).m_as("") == pytest.approx(1, rel=1e-12)
