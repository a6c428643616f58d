"""The constants of the trade: value, range and standing of each, and where it is used."""

import math

import pytest

from trainer.engine import METHODS
from trainer.engine.materials import CONSTANTS, Constant

EVERY_CONSTANT = pytest.mark.parametrize("constant", CONSTANTS, ids=lambda each: each.words)

# Words, default, least, greatest, unit, standing.
TABLE = [
    ("density of liquid resin", 1.10, 0.95, 1.30, "kg/L", "common practice"),
    ("density of cured resin", 1.20, 1.05, 1.35, "kg/L", "cited second-hand"),
    ("density of E-glass", 2.56, 2.4, 2.7, "kg/L", "cited second-hand"),
    ("density of catalyst", 1.17, 1.0, 1.3, "kg/L", "from memory"),
    ("weight of mat", 450, 100, 1200, "g/m²", "published"),
    ("resin to glass, by mass", 2.5, 1.5, 4, "", "published"),
    ("glass content", 30, 15, 45, "%", "cited second-hand"),
    ("allowance for deck, bucket and roller", 10, 0, 50, "%", "common practice"),
    ("catalyst", 2, 0.5, 6, "%", "published"),
    ("width of bandage", 75, 25, 300, "mm", "common practice"),
    ("width of tape", 50, 25, 300, "mm", "common practice"),
    ("lap of mat on mat", 50, 0, 300, "mm", "published"),
    ("least shift of laps from layer to layer", 100, 100, 100, "mm", "published"),
    ("upstand above the finished roof", 150, 50, 600, "mm", "common practice"),
    ("mat on the deck round an outlet", 100, 50, 400, "mm", "from memory"),
    ("wrap on to each face", 50, 10, 150, "mm", "common practice"),
    ("beginner's batch", 1, 0.1, 25, "L", "common practice"),
    ("most that a beginner mixes", 2, 2, 2, "L", "common practice"),
    ("width of a brush", 50, 50, 50, "mm", "common practice"),
    ("warmest water that drums stand in", 30, 30, 30, "°C", "common practice"),
    ("deepest that left-over resin is spread", 2, 2, 2, "mm", "common practice"),
    ("gap between square-edged boards", 3, 3, 3, "mm", "common practice"),
    ("most that tape turns on to a face", 10, 10, 10, "mm", "common practice"),
    ("coarsest grit for a shiny face", 40, 40, 40, "", "common practice"),
    ("finest grit for a shiny face", 60, 60, 60, "", "common practice"),
    ("peak measured in a casting", 126, 126, 126, "°C", "published"),
    ("peak measured in a hotter casting", 162, 162, 162, "°C", "published"),
    ("British limit for styrene over eight hours", 100, 100, 100, "ppm", "published"),
    ("British limit for styrene over fifteen minutes", 250, 250, 250, "ppm", "published"),
    ("flash point of acetone", -20, -20, -20, "°C", "cited second-hand"),
    ("flash point of styrene", 30, 30, 30, "°C", "cited second-hand"),
    ("share of the gel time", 2 / 3, 0.4, 0.8, "", "common practice"),
    ("time to mix", 2, 0, 5, "min", "common practice"),
    ("least working time", 5, 5, 5, "min", "common practice"),
    ("slope of the dew-point formula", 17.625, 17.625, 17.625, "", "cited second-hand"),
    ("scale of the dew-point formula", 243.04, 243.04, 243.04, "°C", "cited second-hand"),
    ("least surface above the dew point", 3, 3, 3, "°C", "common practice"),
    ("coldest that resin is laid", 5, 5, 5, "°C", "common practice"),
    ("hottest that resin is laid", 35, 35, 35, "°C", "common practice"),
    ("most humidity that needs no care", 80, 80, 80, "%", "published"),
    ("most on a timber meter that needs no care", 18, 18, 18, "%", "common practice"),
    ("fall designed, of one in", 40, 10, 200, "", "published"),
    ("fall that a finished roof keeps, of one in", 80, 10, 200, "", "cited second-hand"),
    ("topcoat on a square metre", 0.5, 0.3, 1.0, "kg/m²", "common practice"),
    ("density of topcoat", 1.2, 1.0, 1.6, "kg/L", "from memory"),
    ("catalyst in topcoat", 2, 0.5, 6, "%", "common practice"),
    ("usual dose of topcoat by mass", 2, 1, 3, "%", "common practice"),
    ("heat of curing", 398, 300, 420, "J/g", "published"),
    ("specific heat of resin", 1.8, 1.0, 2.5, "J/(g·K)", "from memory"),
    ("specific heat of glass", 0.8, 0.6, 1.0, "J/(g·K)", "from memory"),
    ("gas constant", 8.314462618, 8.314462618, 8.314462618, "J/(mol·K)", "exact"),
    ("activation energy", 52.9, 20, 120, "kJ/mol", "published"),
    ("least activation energy", 40, 40, 40, "kJ/mol", "published"),
    ("greatest activation energy", 82.6, 82.6, 82.6, "kJ/mol", "common practice"),
    ("order of the dose", 0.5, 0.1, 2, "", "from memory"),
    ("least order of the dose", 0.5, 0.5, 0.5, "", "from memory"),
    ("greatest order of the dose", 1, 1, 1, "", "from memory"),
    ("graduation of the syringe", 1, 0.05, 50, "ml", "common practice"),
]


@pytest.mark.parametrize(("words", "value", "low", "high", "unit", "standing"), TABLE)
def test_the_figures_are_those_of_the_sources(
    words: str, value: float, low: float, high: float, unit: str, standing: str
) -> None:
    """Published, cited second-hand, common practice or from memory: as each constant says."""
    constant = next(each for each in CONSTANTS if each.words == words)
    assert (constant.value, constant.low, constant.high) == (value, low, high)
    assert (constant.unit, constant.standing) == (unit, standing)


@EVERY_CONSTANT
def test_every_constant_says_where_it_comes_from(constant: Constant) -> None:
    """A published figure names its source; no figure is without standing."""
    assert constant.source
    if constant.standing in ("published", "cited second-hand"):
        assert constant.source != "no published source"


@EVERY_CONSTANT
def test_every_constant_can_be_a_parameter(constant: Constant) -> None:
    """What a calculation accepts in its place has its words, unit and range."""
    given = constant.given
    assert (given.words, given.unit) == (constant.words, constant.unit)
    assert (given.low, given.high) == (constant.low, constant.high)
    assert given.standing.startswith(constant.standing)


@pytest.mark.parametrize("value", [0.9, 1.4, math.nan, math.inf])
def test_a_constant_outside_its_own_range_is_refused(value: float) -> None:
    """A slip in the table stops the program at its birth."""
    with pytest.raises(ValueError, match="density of liquid resin lies outside its own range"):
        Constant("density of liquid resin", value, "kg/L", 0.95, 1.30, "common practice", "none")


def test_no_words_are_used_twice() -> None:
    """Each constant stands once."""
    assert len({constant.words for constant in CONSTANTS}) == len(CONSTANTS)


def test_every_default_of_a_calculation_is_a_constant() -> None:
    """No bare figure of the trade stands in a signature; none of something, or one of it, may."""
    defaults = {
        parameter.default
        for method in METHODS.values()
        for parameter in method.parameters.values()
        if not parameter.required
    }
    assert defaults - {0, 1} <= {constant.value for constant in CONSTANTS}
