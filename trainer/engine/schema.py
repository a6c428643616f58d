"""The signature is the schema: what a calculation takes, read from its annotations.

The web form, the command line, the check of a lesson's question and the documentation
all come from here; nothing about a calculation is written down twice.
"""

import inspect
import math
import sys
from collections.abc import Callable
from dataclasses import dataclass
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, get_args, get_origin, get_type_hints

from trainer.engine.errors import NoSuch, NotAFigure, OutOfRange

_NUMBERS = (float, int)
_LARGEST = sys.float_info.max
#: More edges or joints than any roof has; a longer list is a slip of the keyboard.
LONGEST_LIST = 500
#: The most characters of a name that people type.
LONGEST_TEXT = 80
Shape = Literal["number", "count", "choice", "list", "text"]


@dataclass(frozen=True, slots=True)
class Given:
    """What an annotated parameter is: its words, unit, and the range people may give."""

    words: str
    unit: str = ""
    low: float = 0.0
    high: float = math.inf
    #: Where a default comes from: "common practice", or a published source.
    standing: str = ""


@dataclass(frozen=True, slots=True)
class Parameter:
    """One parameter of a calculation, as people give it."""

    name: str
    words: str
    unit: str
    low: float
    high: float
    shape: Shape
    default: Any = inspect.Parameter.empty
    choices: tuple[str, ...] = ()
    #: Where the default comes from.
    standing: str = ""

    @property
    def required(self) -> bool:
        """Whether it must be given, because it has no default."""
        return self.default is inspect.Parameter.empty

    @property
    def optional(self) -> bool:
        """Whether nothing at all may be given, and then nothing is assumed either."""
        return self.default is None

    def check(self, value: Any) -> None:  # noqa: ANN401 - whatever people give is checked here
        """Refuse a value that is no figure (NotAFigure), out of range, or no choice (NoSuch)."""
        # The usual case first, since marking checks many.
        plain = self.shape == "number" and type(value) in _NUMBERS
        if plain and self.low <= value <= self.high <= _LARGEST:
            return
        if self._is_told(value):
            return
        for figure in self._figures(value):
            if not self.low <= figure <= self.high:
                raise OutOfRange(self.words, figure, self.unit, self.low, self.high)

    def check_inside(self, value: Any) -> None:  # noqa: ANN401
        """Refuse only what no sum can be done on: not finite, or not above zero."""
        plain = self.shape == "number" and type(value) in _NUMBERS
        if plain and 0 < value <= _LARGEST:
            return
        if self._is_told(value):
            return
        for figure in self._figures(value):
            if figure <= 0 < self.low:
                raise NotAFigure(self.words, figure, "above zero")
            if figure < 0 == self.low:
                raise NotAFigure(self.words, figure, "zero or more")

    def _is_told(self, value: Any) -> bool:  # noqa: ANN401
        """Whether it is no figure and right as it is; refuse a wrong choice or text."""
        if value is None and self.optional:
            return True
        if self.shape == "choice":
            if value not in self.choices:
                raise NoSuch(self.words, str(value), self.choices)
            return True
        if self.shape == "text":
            _check_text(self.words, value)
            return True
        return False

    def _figures(self, value: Any) -> tuple[float, ...]:  # noqa: ANN401
        if self.shape != "list":
            return (self._figure(value),)
        if not isinstance(value, (list, tuple)) or not value:
            raise NotAFigure(self.words, value, "a list of at least one figure")
        if len(value) > LONGEST_LIST:
            many = f"a list of {len(value)}"
            raise NotAFigure(self.words, many, f"a list of {LONGEST_LIST} at most")
        return tuple(self._figure(each) for each in value)

    def _figure(self, value: Any) -> float:  # noqa: ANN401
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise NotAFigure(self.words, value)
        if not _is_finite(value):
            raise NotAFigure(self.words, value)
        if self.shape == "count" and value != int(value):
            raise NotAFigure(self.words, value, "a whole number")
        return value

    def example(self) -> Any:  # noqa: ANN401
        """Return a value that is always accepted: the default, else the middle of the range."""
        if not self.required:
            return self.default
        if self.shape == "choice":
            return self.choices[0]
        middle = (self.low + min(self.high, self.low + 100)) / 2
        if self.shape == "list":
            return (middle,)
        return round(middle) if self.shape == "count" else middle


def _check_text(words: str, value: object) -> None:
    must = f"a line of 1 to {LONGEST_TEXT} letters and signs"
    if not isinstance(value, str) or not value.strip():
        raise NotAFigure(words, value, must)
    if len(value) > LONGEST_TEXT or not value.isprintable():
        raise NotAFigure(words, f"{value[:LONGEST_TEXT]}…", must)


def _is_finite(value: float) -> bool:
    """Whether a float can hold a number: it is neither NaN, nor infinite, nor too big an int."""
    return -_LARGEST <= value <= _LARGEST


def read_parameters(function: Callable[..., Any]) -> dict[str, Parameter]:
    """Return the parameters of a function, or the fields of a frozen dataclass, by name.

    Raises TypeError where one has no Given.
    """
    hints = get_type_hints(function, include_extras=True)
    signature = inspect.signature(function)
    return {
        name: _parameter(name, hints.get(name), parameter.default)
        for name, parameter in signature.parameters.items()
    }


def _parameter(name: str, hint: Any, default: Any) -> Parameter:  # noqa: ANN401
    kind, given = get_args(hint)[:2] if get_origin(hint) is Annotated else (hint, None)
    if not isinstance(given, Given):
        raise TypeError(f"Parameter '{name}' must be Annotated with a Given.")
    shape, choices = _shape(name, kind)
    return Parameter(
        name,
        given.words,
        given.unit,
        given.low,
        given.high,
        shape,
        default,
        choices,
        given.standing,
    )


def _shape(name: str, kind: Any) -> tuple[Shape, tuple[str, ...]]:  # noqa: ANN401
    if isinstance(kind, UnionType):
        kind = next(each for each in get_args(kind) if each is not NoneType)
    if kind is str:
        return "text", ()
    if kind is float:
        return "number", ()
    if kind is int:
        return "count", ()
    if get_origin(kind) is Literal:
        return "choice", get_args(kind)
    if get_origin(kind) is tuple:
        return "list", ()
    raise TypeError(f"Parameter '{name}' is no number, count, choice, list or text.")
