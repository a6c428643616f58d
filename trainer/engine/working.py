"""A calculation that yields its working line by line and returns its answer.

Whoever drives the generator decides what happens at a line (see drivers.py), so one
text of a formula serves planning, teaching, marking, carried errors and slips.
"""

from collections.abc import Callable, Generator, Mapping
from typing import Any, Generic, NamedTuple, ParamSpec

from trainer.engine import formula
from trainer.engine.errors import NoSuch
from trainer.engine.schema import Parameter, read_parameters
from trainer.engine.units import show

P = ParamSpec("P")


class Part(NamedTuple):
    """One figure that goes into a line, with full precision."""

    value: float
    unit: str
    words: str


class Line(NamedTuple):
    """One line of a working: what it is, its value, and how it came about.

    A named tuple, since thousands are made for a page of roofs and a frozen dataclass costs
    four times as much at birth.
    """

    key: str
    #: What the line gives, in the words of the trade: "mass of catalyst".
    words: str
    unit: str
    value: float
    #: Names, + - * / ** and ceil min max exp ln, over the names in `parts`.
    formula: str
    parts: Mapping[str, Part]

    def in_words(self) -> str:
        """Return the formula in words: "resin × grams in a kilogram × catalyst ÷ 100"."""
        return formula.draw(self.formula, {name: part.words for name, part in self.parts.items()})

    def in_figures(self) -> str:
        """Return the formula with the figures put in: "1.32 kg × 1000 g/kg × 3 % ÷ 100"."""
        figures = {name: show(part.value, part.unit) for name, part in self.parts.items()}
        return formula.draw(self.formula, figures)

    def unrounded(self) -> float | None:
        """Return what the line comes to before it is rounded up, or None where it isn't."""
        values = {name: part.value for name, part in self.parts.items()}
        return formula.unrounded(self.formula, values)

    def shown(self) -> str:
        """Return the figures put in and what they come to."""
        return f"{self.in_figures()} = {show(self.value, self.unit)}"


Calculation = Generator[Line, float, float]


def under(prefix: str, smaller: Calculation) -> Calculation:
    """Yield a smaller calculation's lines with `prefix.` before their keys; return its answer.

    What is sent at a line goes on to the smaller calculation.
    """
    try:
        line = next(smaller)
        while True:
            figure = yield Line(f"{prefix}.{line.key}", *line[1:])
            line = smaller.send(figure)
    except StopIteration as end:
        return float(end.value)


class Method(Generic[P]):
    """A registered calculation: call it with figures to get its generator.

    Called plainly it checks every argument against its range, at the call. `inside` checks
    only that figures are finite and above zero (or not below zero, where the range admits
    zero): for use under another calculation, in slips, and where an error is carried.
    """

    def __init__(self, function: Callable[P, Calculation]) -> None:
        self.function = function
        self.name: str = function.__name__
        self.parameters: dict[str, Parameter] = read_parameters(function)
        self.__doc__ = function.__doc__

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> Calculation:
        """Return the calculation on these figures; raise OutOfRange, NotAFigure or TypeError."""
        calculation = self.function(*args, **kwargs)
        for parameter, value in zip(self.parameters.values(), args, strict=False):
            parameter.check(value)
        for name, value in kwargs.items():
            self.parameters[name].check(value)
        return calculation

    def inside(self, *args: P.args, **kwargs: P.kwargs) -> Calculation:
        """Return the calculation on figures that came out of another one; raise NotAFigure."""
        calculation = self.function(*args, **kwargs)
        for parameter, value in zip(self.parameters.values(), args, strict=False):
            parameter.check_inside(value)
        for name, value in kwargs.items():
            self.parameters[name].check_inside(value)
        return calculation

    @property
    def title(self) -> str:
        """The first sentence of the docstring: what comes out of what."""
        return (self.__doc__ or self.name).strip().splitlines()[0]

    def defaults(self) -> dict[str, Any]:
        """Return the parameters that need not be given, with their values."""
        return {
            name: parameter.default
            for name, parameter in self.parameters.items()
            if not parameter.required
        }


METHODS: dict[str, Method[...]] = {}


def calculation(function: Callable[P, Calculation]) -> Method[P]:
    """Register a generator function under its name and return it as a Method.

    Raises ValueError where the name is taken: a lesson would be marked by the wrong sum.
    """
    method = Method(function)
    if method.name in METHODS:
        raise ValueError(f"There is a calculation '{method.name}' already.")
    METHODS[method.name] = method
    return method


def method_named(name: str) -> Method[...]:
    """Return the registered calculation of this name; raise NoSuch with a guess."""
    if name not in METHODS:
        raise NoSuch("calculation", name, METHODS)
    return METHODS[name]
