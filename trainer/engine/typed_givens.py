"""What a calculation is given, as people type it: resin_kg=1.3kg, joints_m=2.4:3,3.6."""

from collections.abc import Sequence
from typing import Any

from trainer.engine.errors import EngineError, Unclear
from trainer.engine.repeats import repeats_in, shortened
from trainer.engine.schema import Parameter
from trainer.engine.units import read_quantity
from trainer.engine.working import Method


def read_givens(method: Method[...], words: Sequence[str]) -> dict[str, Any]:
    """Return the givens by name from KEY=VALUE words; raise Unclear, naming the key.

    It is raised too for a key that the calculation doesn't take, that stands there twice, or that
    is missing.
    """
    givens: dict[str, Any] = {}
    for word in words:
        key, equals, text = word.partition("=")
        if not equals:
            raise Unclear(word, f"'{shortened(word)}' isn't KEY=VALUE, such as resin_kg=1.3.")
        if key not in method.parameters:
            known = ", ".join(method.parameters)
            sentence = f"'{method.name}' takes no '{shortened(key)}'. It takes {known}."
            raise Unclear(word, sentence)
        if key in givens:
            raise Unclear(word, f"{key}: It is given twice. Leave one of them out.")
        givens[key] = read_value(method.parameters[key], text)
    missing = [p.name for p in method.parameters.values() if p.required and p.name not in givens]
    if missing:
        raise Unclear("", f"'{method.name}' needs {', '.join(missing)} too.")
    return givens


def read_value(parameter: Parameter, text: str) -> Any:  # noqa: ANN401
    """Return what a typed value means for a parameter; raise Unclear, naming the key."""
    try:
        value = _read(parameter, text)
        parameter.check(value)
    except EngineError as error:
        raise Unclear(text, f"{parameter.name}: {error}") from error
    return value


def _read(parameter: Parameter, text: str) -> Any:  # noqa: ANN401
    if parameter.shape == "choice":
        return shortened(text)
    if parameter.shape == "list":
        return _read_list(parameter, text)
    value = read_quantity(text, parameter.unit).value
    return int(value) if parameter.shape == "count" and value == int(value) else value


def _read_list(parameter: Parameter, text: str) -> tuple[float, ...]:
    return tuple(
        value
        for size, many in repeats_in(text)
        for value in [read_quantity(size, parameter.unit).value] * many
    )
