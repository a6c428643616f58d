"""The units that people use here: what each measures, and its size in the base of its kind.

Sizes of customary units: NIST Special Publication 811, Appendix B.8 (cited second-hand);
tests/outside checks each against a general-purpose units library.
"""

from dataclasses import dataclass

from trainer.engine.errors import NoSuch


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: its symbol, what it measures, and how many base units it holds."""

    symbol: str
    kind: str
    #: One of this unit is `factor` base units; the base of each kind has factor 1.
    factor: float
    #: Other ways to write it, in lower case; for a count, the first is the singular.
    spellings: tuple[str, ...] = ()
    #: Base units at zero: only temperatures have one.
    offset: float = 0.0
    #: Whether it stands beside an answer field for its kind.
    offered: bool = False


_FOOT = 0.3048
_INCH = 0.0254
_OUNCE = 28.349523125
_POUND = 453.59237
_YARD = 0.9144

_UNITS = (
    Unit("g", "mass", 1, ("gram", "grams", "gramme", "grammes", "gr", "gm"), offered=True),
    Unit("kg", "mass", 1000, ("kilo", "kilos", "kilogram", "kilograms", "kgs"), offered=True),
    Unit("lb", "mass", _POUND, ("lbs", "pound", "pounds")),
    Unit("oz", "mass", _OUNCE, ("ounce", "ounces")),
    Unit(
        "ml",
        "volume",
        1,
        ("millilitre", "millilitres", "milliliter", "milliliters", "cc", "mls"),
        offered=True,
    ),
    Unit(
        "L",
        "volume",
        1000,
        ("l", "litre", "litres", "liter", "liters", "ltr", "ltrs"),
        offered=True,
    ),
    Unit("US gal", "volume", 3785.411784, ("us gallon", "us gallons", "us gals")),
    Unit(
        "imp gal",
        "volume",
        4546.09,
        (
            "imperial gal",
            "imperial gallon",
            "imperial gallons",
            "imp gallon",
            "imp gallons",
            "uk gal",
            "uk gallon",
            "uk gallons",
        ),
    ),
    Unit("US fl oz", "volume", 29.5735295625, ("us fluid ounce", "us fluid ounces")),
    Unit(
        "imp fl oz",
        "volume",
        28.4130625,
        ("imperial fl oz", "imperial fluid ounce", "imperial fluid ounces", "uk fl oz"),
    ),
    Unit("m", "length", 1, ("metre", "metres", "meter", "meters", "mtr", "mtrs"), offered=True),
    Unit(
        "mm",
        "length",
        0.001,
        # No "mil": people say it for millimetres, millilitres and thousandths of an inch.
        ("millimetre", "millimetres", "millimeter", "millimeters"),
        offered=True,
    ),
    Unit("cm", "length", 0.01, ("centimetre", "centimetres", "centimeter", "centimeters")),
    Unit("ft", "length", _FOOT, ("foot", "feet", "'")),
    Unit("in", "length", _INCH, ("inch", "inches", '"')),
    Unit(
        "m²",
        "area",
        1,
        ("m2", "sq m", "sqm", "square metre", "square metres", "square meter", "square meters"),
        offered=True,
    ),
    Unit("mm²", "area", 1e-6, ("mm2", "sq mm", "square millimetres")),
    Unit("cm²", "area", 1e-4, ("cm2", "sq cm", "square centimetres")),
    Unit("ft²", "area", _FOOT**2, ("ft2", "sq ft", "square foot", "square feet")),
    Unit("g/m²", "weight of area", 1, ("g/m2", "gsm", "g per m2", "g per m²"), offered=True),
    Unit("kg/m²", "weight of area", 1000, ("kg/m2", "kg per m2", "kg per m²"), offered=True),
    Unit("oz/ft²", "weight of area", _OUNCE / _FOOT**2, ("oz/ft2", "oz per sq ft")),
    Unit("oz/yd²", "weight of area", _OUNCE / _YARD**2, ("oz/yd2", "oz per sq yd")),
    Unit("min", "time", 1, ("mins", "minute", "minutes"), offered=True),
    Unit("s", "time", 1 / 60, ("sec", "secs", "second", "seconds")),
    Unit("h", "time", 60, ("hr", "hrs", "hour", "hours")),
    Unit("°C", "temperature", 1, ("c", "degc", "deg c", "celsius", "° c"), offered=True),
    Unit(
        "°F", "temperature", 5 / 9, ("f", "degf", "deg f", "fahrenheit", "° f"), offset=-32 * 5 / 9
    ),
    # Above absolute zero, or as a rise: a kind of its own, since neither is a reading in °C.
    Unit("K", "kelvin", 1, ("kelvin", "kelvins"), offered=True),
    Unit("kJ", "heat", 1, ("kilojoule", "kilojoules"), offered=True),
    Unit("%", "percent", 1, ("percent", "per cent", "pc"), offered=True),
    Unit("ppm", "parts in the air", 1, ("parts per million",)),
    Unit("ml/kg", "dose", 1, ("ml per kg", "ml a kilo", "ml per kilo"), offered=True),
    Unit("kg/L", "density", 1, ("kg/l", "kg per litre", "g/ml"), offered=True),
    Unit("", "plain number", 1),
    Unit("rolls", "count of rolls", 1, ("roll",)),
    Unit("batches", "count of batches", 1, ("batch",)),
    Unit("pieces", "count of pieces", 1, ("piece",)),
    Unit("drops", "count of drops", 1, ("drop",)),
    Unit("laps", "count of laps", 1, ("lap",)),
    Unit("lengths", "count of lengths", 1, ("length",)),
    Unit("tins", "count of tins", 1, ("tin",)),
    Unit("bottles", "count of bottles", 1, ("bottle",)),
    Unit("J/g", "heat of a mass", 1, ("j per g",)),
    Unit("J/(g·K)", "specific heat", 1, ("j/g/k", "j/(g k)")),
    Unit("kJ/mol", "energy of a mole", 1, ("kj per mol",)),
    Unit("J/(mol·K)", "heat of a mole and a kelvin", 1, ("j/mol/k", "j/(mol k)")),
    # Only inside workings: the sizes that conversions are made with.
    Unit("g/kg", "mass in a mass", 1),
    Unit("ml/L", "volume in a volume", 1),
    Unit("mm/m", "length in a length", 1),
    Unit("mm²/m²", "area in an area", 1),
    Unit("J/kJ", "heat in a heat", 1),
)

UNITS: dict[str, Unit] = {unit.symbol: unit for unit in _UNITS}

_SPELLINGS: dict[str, Unit] = {
    **{spelling: unit for unit in _UNITS for spelling in unit.spellings},
    **{unit.symbol.lower(): unit for unit in _UNITS if unit.symbol},
}


def unit_named(symbol: str) -> Unit:
    """Return the unit of this exact symbol; raise NoSuch with a guess."""
    if symbol not in UNITS:
        raise NoSuch("unit", symbol, UNITS)
    return UNITS[symbol]


def units_of_kind(unit: str) -> list[str]:
    """Return the symbols of all that measure what `unit` does, itself among them."""
    kind = unit_named(unit).kind
    return [each.symbol for each in _UNITS if each.kind == kind]


def unit_spelled(text: str) -> Unit | None:
    """Return the unit that people mean by this text, in any of its spellings, or None."""
    return _SPELLINGS.get(" ".join(text.lower().rstrip(".").split()))


def convert(value: float, unit: str, to: str) -> float:
    """Return a value in another unit of the same kind.

    base = value × factor + offset, for both units; raises NoSuch for an unknown unit and
    ValueError where the two measure different things.
    """
    if unit == to:
        return value
    one, other = unit_named(unit), unit_named(to)
    if one.kind != other.kind:
        raise ValueError(f"{unit or 'A plain number'} cannot be turned into {to}.")
    return (value * one.factor + one.offset - other.offset) / other.factor


def units_beside(unit: str) -> tuple[str, ...]:
    """Return the units that stand beside an answer field whose answer is wanted in `unit`."""
    kind = unit_named(unit).kind
    offered = tuple(each.symbol for each in _UNITS if each.kind == kind and each.offered)
    return offered if unit in offered else (*offered, unit)
