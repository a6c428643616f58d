"""`{name}` and `{name:unit}` in a question's text: the one way to print a given.

A plain number can be printed as a share too: `{share:in words}` is two thirds.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

from trainer.engine import Method
from trainer.engine.measures import convert, units_of_kind
from trainer.engine.schema import Parameter
from trainer.engine.shares import share_in_words
from trainer.lessons.draws import Draw, printed

PLACEHOLDER = re.compile(r"\{(?P<name>\w+)(?::(?P<unit>[^}]+))?\}")
IN_WORDS = "in words"


def fill(
    text: str, method: Method[...], draws: Mapping[str, Draw], givens: Mapping[str, Any]
) -> str:
    """Return a text with each placeholder replaced by its number and unit.

    `draws` say to how many decimals each of the `givens` is printed.
    """
    known = {**method.defaults(), **givens}
    parameters = method.parameters

    def put_in(match: re.Match[str]) -> str:
        name, unit = match["name"], match["unit"]
        value, own = known[name], parameters[name].unit
        given = draws.get(name)
        if unit == IN_WORDS:
            return share_in_words(value)
        if unit:
            return printed(_converted(value, own, unit), unit, None)
        return printed(value, own, given.decimals() if given else None)

    return PLACEHOLDER.sub(put_in, text)


def _converted(value: Any, unit: str, to: str) -> Any:  # noqa: ANN401
    if isinstance(value, tuple):
        return tuple(convert(each, unit, to) for each in value)
    return convert(value, unit, to)


def ways_to_print(parameter: Parameter) -> list[str]:
    """Return what may stand behind the colon of a given: units of its kind, or words."""
    if parameter.unit:
        return units_of_kind(parameter.unit)
    return [IN_WORDS] if parameter.shape == "number" else []


def each_placeholder(text: str, use: Callable[[str, str | None], None]) -> None:
    """Call `use` with the name and the unit, or None, of each placeholder."""
    for match in PLACEHOLDER.finditer(text):
        use(match["name"], match["unit"])
