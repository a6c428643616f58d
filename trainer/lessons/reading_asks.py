"""What a question asks for: lines of the working, units, tolerances and safe bands."""

import re
from collections.abc import Mapping
from typing import Any

from trainer.engine import Method, Tolerance
from trainer.engine.drivers import example_working
from trainer.engine.measures import UNITS, convert
from trainer.lessons.asks import Ask
from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean, did_you_mean_unit

ASK_KEYS = ("line", "unit", "tolerance", "skill", "safe")
_PERCENT = re.compile(r"(\d+(?:\.\d+)?)\s*%")
_AMOUNT = re.compile(r"(\d+(?:\.\d+)?)\s*(\D.*)")


def read_asks(
    block: Block, table: Mapping[str, Any], method: Method[...], *, on_roof: bool = False
) -> tuple[Ask, ...]:
    """Return what a question asks, in the order of the working; raise AuthorError.

    Each names its skill; one `on_roof` may do without, since none counts it.
    """
    units = {line.key: line.unit for line in example_working(method).lines}
    if "asks" not in table:
        return (_read_ask(block, table, units, chained=False, on_roof=on_roof),)
    for key in ASK_KEYS:
        if key in table:
            raise block.mistake(key, f"'{key}' belongs into one of the [[asks]].")
    parts = list(block.tables(table, "asks"))
    asks = tuple(
        _read_ask(part, each, units, chained=True, on_roof=on_roof) for part, each in parts
    )
    if not asks:
        raise block.mistake("asks", "Nothing is asked.", "Add a table [[asks]].")
    order = [list(units).index(ask.line) for ask in asks]
    for (part, _), above, below in zip(parts[1:], order, order[1:], strict=False):
        if below <= above:
            raise part.mistake(
                "line",
                "The asked lines must follow the order of the working.",
                f"The working runs: {', '.join(units)}.",
            )
    return asks


def _read_ask(
    block: Block,
    table: Mapping[str, Any],
    units: Mapping[str, str],
    *,
    chained: bool,
    on_roof: bool,
) -> Ask:
    if chained:
        block.refuse_unknown(table, (*ASK_KEYS, "ask"), "An ask")
    line = block.want(table, "line", str, "What is asked")
    if line not in units:
        raise block.mistake("line", f"The working has no line '{line}'.", did_you_mean(line, units))
    unit = block.want(table, "unit", str, "What is asked")
    _check_unit(block, unit, units[line])
    tolerance, text = _read_tolerance(block, table, unit, units[line])
    return Ask(
        line=line,
        line_unit=units[line],
        unit=unit,
        tolerance=tolerance,
        tolerance_text=text,
        skill=""
        if on_roof and "skill" not in table
        else block.want(table, "skill", str, "What is asked"),
        words=block.want(table, "ask", str, "An ask") if chained else "",
        safe=_read_safe(block, table),
    )


def _check_unit(block: Block, unit: str, line_unit: str) -> None:
    if unit not in UNITS:
        raise block.mistake("unit", f"There is no unit '{unit}'.", did_you_mean_unit(unit, UNITS))
    if UNITS[unit].kind != UNITS[line_unit].kind:
        raise block.mistake(
            "unit",
            f"This line is worked in {line_unit or 'plain numbers'}, "
            f"which can't be turned into {unit}.",
        )


def _read_tolerance(
    block: Block, table: Mapping[str, Any], unit: str, line_unit: str
) -> tuple[Tolerance, str]:
    value = table.get("tolerance")
    if value == 0 and not isinstance(value, (bool, str)):
        return Tolerance(), "0"
    percent = _PERCENT.fullmatch(value.strip()) if isinstance(value, str) else None
    if percent:
        return Tolerance(share=float(percent[1]) / 100), f"{percent[1]} %"
    amount = _AMOUNT.fullmatch(value.strip()) if isinstance(value, str) else None
    if amount and amount[2].strip() == unit:
        size = convert(float(amount[1]), unit, line_unit) - convert(0, unit, line_unit)
        return Tolerance(amount=size), f"{amount[1]} {unit}"
    raise block.mistake(
        "tolerance", "The tolerance can't be read.", f'Write "2 %", 0 for a count, or "0.5 {unit}".'
    )


def _read_safe(block: Block, table: Mapping[str, Any]) -> tuple[float, float] | None:
    if "safe" not in table:
        return None
    safe = table["safe"]
    numbers = isinstance(safe, list) and all(isinstance(v, (int, float)) for v in safe)
    if not numbers or len(safe) != 2 or not 0 <= safe[0] <= 1 <= safe[1]:
        raise block.mistake(
            "safe",
            "The safe band is the lowest and highest multiple of the right figure.",
            "Write safe = [0.5, 1.5].",
        )
    return float(safe[0]), float(safe[1])
