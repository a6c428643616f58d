"""The calculation that a block names, and what each of its givens may be."""

import math
from collections.abc import Mapping
from typing import Any

from trainer.engine import EngineError, Method, NoSuch, method_named
from trainer.lessons.block import Block
from trainer.lessons.draws import Draw, OneOf, Steps
from trainer.lessons.errors import did_you_mean


def read_method(block: Block, table: Mapping[str, Any]) -> Method[...]:
    """Return the calculation that a block names; raise AuthorError with a guess."""
    name = block.want(table, "calculate", str, "A question")
    try:
        return method_named(name)
    except NoSuch as error:
        mend = f"Did you mean '{error.near}'?" if error.near else "'trainer work' lists them."
        raise block.mistake("calculate", f"There is no calculation '{name}'.", mend) from error


def read_givens(
    block: Block, table: Mapping[str, Any], method: Method[...], *, on_roof: bool = False
) -> dict[str, Draw]:
    """Return what each given may be; raise AuthorError for one that the calculation refuses.

    Of a question `on_roof`, those that come from a plan are left out.
    """
    draws: dict[str, Draw] = {}
    for name, value in given_table(block, table).items():
        if name not in method.parameters:
            raise block.mistake(
                f"given.{name}",
                f"'{method.name}' takes no '{name}'.",
                did_you_mean(name, method.parameters),
            )
        if not (on_roof and is_from_plan(value)):
            draws[name] = _read_draw(block, name, value, method)
    given = given_table(block, table)
    missing = [n for n, p in method.parameters.items() if p.required and n not in given]
    if missing:
        raise block.mistake(
            "calculate", f"'{missing[0]}' isn't given.", f"Add a line given.{missing[0]} = …"
        )
    return draws


def given_table(block: Block, table: Mapping[str, Any]) -> dict[str, Any]:
    """Return the givens of a block as they are written; raise AuthorError."""
    givens: dict[str, Any] = {}
    if "given" in table:
        givens = block.want(table, "given", dict, "A question")
    return givens


def is_from_plan(value: object) -> bool:
    """Whether a given, as it is written, is a figure of a roof's plan: {plan = "…"}."""
    return isinstance(value, dict) and set(value) == {"plan"}


def _read_draw(block: Block, name: str, value: Any, method: Method[...]) -> Draw:  # noqa: ANN401
    parameter = method.parameters[name]
    where = f"given.{name}"
    if parameter.shape == "list" and _is_flat(value):
        value = {"one_of": [value]}
    draw = _draw_from(block, where, value)
    if parameter.shape == "count":
        draw = _whole(draw)
    for end in draw.ends():
        try:
            parameter.check(end)
        except EngineError as error:
            raise block.mistake(where, str(error)) from error
    return draw


def _draw_from(block: Block, where: str, value: Any) -> Draw:  # noqa: ANN401
    if is_from_plan(value):
        mend = "Ask it in roof-questions.md, or write the figure here."
        raise block.mistake(where, "A lesson has no roof to take this from.", mend)
    if isinstance(value, dict) and set(value) == {"one_of"}:
        return OneOf(tuple(frozen(each) for each in _some(block, where, value["one_of"])))
    if isinstance(value, dict):
        return _steps(block, where, value)
    if isinstance(value, list):
        return OneOf(tuple(_some(block, where, value)))
    return OneOf((value,))


def _is_flat(value: Any) -> bool:  # noqa: ANN401
    return isinstance(value, list) and not any(isinstance(each, list) for each in value)


def _some(block: Block, where: str, values: Any) -> list[Any]:  # noqa: ANN401
    if not isinstance(values, list) or not values:
        raise block.mistake(where, "There is nothing to pick from.", "Give a list of values.")
    return values


def frozen(value: Any) -> Any:  # noqa: ANN401
    """Return a TOML list as a tuple, and anything else as it is."""
    return tuple(value) if isinstance(value, list) else value


def _steps(block: Block, where: str, table: Mapping[str, Any]) -> Steps:
    mend = "Write {from = 2.4, to = 6.0, step = 0.1}."
    if set(table) != {"from", "to", "step"}:
        raise block.mistake(where, "A range has from, to and step.", mend)
    if any(isinstance(v, bool) or not isinstance(v, (int, float)) for v in table.values()):
        raise block.mistake(where, "From, to and step are numbers.", mend)
    low, high, step = table["from"], table["to"], table["step"]
    if not (0 < step < math.inf and -math.inf < low < high < math.inf):
        raise block.mistake(where, "A range runs upwards in steps above zero.", mend)
    whole = (high - low) / step
    if abs(whole - round(whole)) > 1e-6:
        raise block.mistake(where, "The range isn't a whole number of steps.", mend)
    return Steps(low, high, step)


def _whole(draw: Draw) -> Draw:
    """Return counts as whole numbers where the author wrote 3.0."""
    if isinstance(draw, OneOf):
        return OneOf(
            tuple(int(v) if isinstance(v, float) and v.is_integer() else v for v in draw.values)
        )
    values = tuple(draw.value(step) for step in range(draw.count))
    return OneOf(tuple(int(v) if float(v).is_integer() else v for v in values))
