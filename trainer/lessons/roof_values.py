"""One value of a roof: a number in the unit of its name, or a text as people write it."""

from typing import Any

from trainer.engine import EngineError, Parameter, read_quantity
from trainer.engine.errors import NoSuch, NotAFigure, Unclear
from trainer.engine.repeats import repeats_in, shortened

_MINUS = ("-", "−", "–")


def read_value(parameter: Parameter, typed: Any) -> Any:  # noqa: ANN401 - a file may hold anything
    """Return what a typed value means for a field; raise EngineError with a sentence.

    A number is in the field's own unit; a text is read into it: 12'6", 1.5 oz/ft², 68 °F.
    A list may be one text, in which 2.4:3 stands for three of 2.4.
    """
    value = _read(parameter, typed)
    parameter.check(value)
    whole = parameter.shape == "count" and isinstance(value, float)
    return int(value) if whole else value


def _read(parameter: Parameter, typed: Any) -> Any:  # noqa: ANN401
    if parameter.shape in ("choice", "text"):
        return _text(parameter, typed)
    if parameter.shape == "list":
        return _list(parameter, typed)
    return _number(parameter, typed)


def _text(parameter: Parameter, typed: object) -> str:
    if not isinstance(typed, str):
        raise _unlike(parameter, typed, "a text in quotes")
    text = typed.strip()
    if parameter.choices and text not in parameter.choices:
        raise NoSuch(parameter.words, shortened(text), parameter.choices)
    return text


def _list(parameter: Parameter, typed: object) -> tuple[float, ...]:
    if isinstance(typed, str):
        return tuple(
            value for size, many in repeats_in(typed) for value in [_number(parameter, size)] * many
        )
    if not isinstance(typed, (list, tuple)):
        raise _unlike(parameter, typed, "a list of numbers")
    return tuple(_number(parameter, each) for each in typed)


def _number(parameter: Parameter, typed: object) -> float:
    if isinstance(typed, str):
        return _quantity(parameter, typed)
    if isinstance(typed, bool) or not isinstance(typed, (int, float)):
        raise _unlike(parameter, typed, "a number")
    return _finite(parameter, typed)


def _finite(parameter: Parameter, number: float) -> float:
    # A whole number can be too long even to be printed in a sentence.
    try:
        return float(number) if abs(number) > 1e15 else number
    except OverflowError as error:
        raise NotAFigure(parameter.words, "far too long") from error


def _quantity(parameter: Parameter, text: str) -> float:
    """Return a quantity; a place on the roof may lie below zero, a temperature is read whole."""
    tidy = text.strip()
    if tidy.startswith(_MINUS) and parameter.low < 0 and parameter.unit != "°C":
        return -read_quantity(tidy[1:], parameter.unit).value
    return read_quantity(text, parameter.unit).value


def _unlike(parameter: Parameter, typed: object, must: str) -> EngineError:
    more = ""
    if parameter.unit:
        more = f" in {parameter.unit}, or a text with its unit"
    if parameter.choices:
        more = f": {' or '.join(parameter.choices)}"
    return Unclear(shortened(str(typed)), f"The {parameter.words} must be {must}{more}.")
