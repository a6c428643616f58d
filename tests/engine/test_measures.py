"""The units: how each is spelled, what it turns into, which ones stand beside a field."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import METHODS, NoSuch
from trainer.engine.drivers import example_working
from trainer.engine.measures import UNITS, convert, unit_named, unit_spelled, units_beside

PAIRS = [
    (one.symbol, other.symbol)
    for one in UNITS.values()
    for other in UNITS.values()
    if one.kind == other.kind
]


def test_a_unit_is_known_by_its_symbol() -> None:
    """The symbol is exact: a capital makes another name."""
    assert unit_named("kg").kind == "mass"
    with pytest.raises(NoSuch, match="There is no unit 'KG'"):
        unit_named("KG")
    with pytest.raises(NoSuch, match="Did you mean 'g/m²'"):
        unit_named("g/m2")


@pytest.mark.parametrize(
    ("text", "symbol"),
    [
        ("KG", "kg"),
        (" kilos ", "kg"),
        ("Litres", "L"),
        ("l", "L"),
        ("ML", "ml"),
        ("cc", "ml"),
        ("mm.", "mm"),
        ("sq  m", "m²"),
        ("m2", "m²"),
        ("gsm", "g/m²"),
        ("oz/ft2", "oz/ft²"),
        ("'", "ft"),
        ('"', "in"),
        ("US Gallons", "US gal"),
        ("uk gal", "imp gal"),
        ("imperial fl oz", "imp fl oz"),
        ("mins", "min"),
        ("° C", "°C"),
        ("deg f", "°F"),
        ("per cent", "%"),
        ("ml per kg", "ml/kg"),
        ("roll", "rolls"),
    ],
)
def test_people_spell_units_in_many_ways(text: str, symbol: str) -> None:
    """Capitals, spaces, a full stop, the plural: all of them are understood."""
    unit = unit_spelled(text)
    assert unit is not None
    assert unit.symbol == symbol


@pytest.mark.parametrize("text", ["", "gal", "gallon", "fl oz", "mil", "pt", "stone", "kgg", "m³"])
def test_what_could_mean_two_units_means_none(text: str) -> None:
    """Gallons without US or imperial, and a mil of anything, are for the reader to ask about."""
    assert unit_spelled(text) is None


def test_no_spelling_means_two_units() -> None:
    """Every symbol and every spelling belongs to one unit alone."""
    owners: dict[str, set[str]] = {}
    for unit in UNITS.values():
        for spelling in {unit.symbol.lower(), *unit.spellings}:
            owners.setdefault(spelling, set()).add(unit.symbol)
    assert {spelling: units for spelling, units in owners.items() if len(units) > 1} == {}


@pytest.mark.parametrize("unit", [each for each in UNITS.values() if each.symbol])
def test_every_unit_is_understood_by_its_symbol(unit: object) -> None:
    """What the project prints, the project reads."""
    symbol = getattr(unit, "symbol")  # noqa: B009
    assert unit_spelled(symbol) is unit


def test_each_kind_has_one_base() -> None:
    """One unit of each kind has the size of one and begins at nothing."""
    for kind in {unit.kind for unit in UNITS.values()}:
        units = [unit for unit in UNITS.values() if unit.kind == kind]
        assert [unit.offset for unit in units if unit.factor == 1] == [0]


@pytest.mark.parametrize(
    ("value", "unit", "to", "converted"),
    [
        (1.3, "kg", "g", 1300),
        (2440, "mm", "m", 2.44),
        (8, "ft", "mm", 2438.4),
        (1, "kg/m²", "g/m²", 1000),
        (90, "s", "min", 1.5),
        (32, "°F", "°C", 0),
        (212, "°F", "°C", 100),
        (-40, "°C", "°F", -40),
        (0, "°C", "°F", 32),
        (3, "rolls", "rolls", 3),
    ],
)
def test_converting(value: float, unit: str, to: str, converted: float) -> None:
    """Sizes of one kind turn into each other; temperatures mind their zero."""
    assert convert(value, unit, to) == pytest.approx(converted, abs=1e-9)


@pytest.mark.parametrize(
    ("unit", "to"), [("kg", "L"), ("", "%"), ("ml/kg", "%"), ("rolls", "batches"), ("g/kg", "mm/m")]
)
def test_units_of_two_kinds_do_not_convert(unit: str, to: str) -> None:
    """Litres of resin are no kilograms, and rolls no batches."""
    with pytest.raises(ValueError, match="cannot be turned into"):
        convert(1, unit, to)


def test_an_unknown_unit_does_not_convert() -> None:
    """The guess comes from the list of units."""
    with pytest.raises(NoSuch):
        convert(1, "kilogram", "g")


@given(st.sampled_from(PAIRS), st.floats(-1e6, 1e6))
def test_there_and_back(pair: tuple[str, str], value: float) -> None:
    """Every conversion undoes its opposite."""
    one, other = pair
    assert convert(convert(value, one, other), other, one) == pytest.approx(
        value, rel=1e-12, abs=1e-9
    )


@pytest.mark.parametrize(
    ("unit", "beside"),
    [
        ("kg", ("g", "kg")),
        ("ml", ("ml", "L")),
        ("m", ("m", "mm")),
        ("ft", ("m", "mm", "ft")),
        ("oz/ft²", ("g/m²", "kg/m²", "oz/ft²")),
        ("rolls", ("rolls",)),
        ("", ("",)),
    ],
)
def test_units_beside_a_field(unit: str, beside: tuple[str, ...]) -> None:
    """Those in use on a roof, and the one that is asked for."""
    assert units_beside(unit) == beside


def test_every_unit_of_a_working_is_known() -> None:
    """No line, part or parameter speaks of a unit that can't be printed and read."""
    used = {
        unit
        for method in METHODS.values()
        for line in example_working(method).lines
        for unit in (line.unit, *(part.unit for part in line.parts.values()))
    }
    used |= {p.unit for method in METHODS.values() for p in method.parameters.values()}
    assert used <= set(UNITS)
