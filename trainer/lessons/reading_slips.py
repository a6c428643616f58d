"""The slips of a question block: one thing put wrong in each."""

import math
from collections.abc import Collection, Mapping
from typing import Any

from trainer.engine import EngineError, Method, Parameter, line_keys
from trainer.engine.slips import Change, GivenSlip, LineSlip, OtherMethod, Stopped
from trainer.lessons.asks import Ask, Slip
from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean
from trainer.lessons.reading_givens import frozen, read_method

_SLIP_KEYS = ("name", "cue", "on", "given", "line", "answer", "calculate")


def read_slips(
    block: Block, table: Mapping[str, Any], method: Method[...], asks: tuple[Ask, ...]
) -> tuple[Slip, ...]:
    """Return the slips that a question knows; raise AuthorError."""
    slips = block.tables(table, "slips")
    return tuple(_read_slip(part, each, method, asks) for part, each in slips)


def _read_slip(
    block: Block, table: Mapping[str, Any], method: Method[...], asks: tuple[Ask, ...]
) -> Slip:
    block.refuse_unknown(table, _SLIP_KEYS, "A slip")
    name = block.want(table, "name", str, "A slip")
    asked = [ask.line for ask in asks]
    on = table.get("on")
    if on is not None and on not in asked:
        raise block.mistake("on", f"'{on}' isn't asked for.", did_you_mean(str(on), asked))
    change = _read_change(block, table, method, name)
    return Slip(name, block.want(table, "cue", str, "A slip"), change, on)


def _read_change(block: Block, table: Mapping[str, Any], method: Method[...], name: str) -> Change:
    changes = [key for key in ("given", "line", "answer", "calculate") if key in table]
    if len(changes) != 1 or (isinstance(table[changes[0]], dict) and len(table[changes[0]]) != 1):
        raise block.mistake(
            name,
            f"The slip '{name}' must change one thing.",
            "One of given.NAME, line.KEY, answer or calculate.",
        )
    keys = line_keys(method)
    match changes[0]:
        case "given":
            return _given_slip(block, block.want(table, "given", dict, "A slip"), method)
        case "line":
            return _line_slip(block, block.want(table, "line", dict, "A slip"), keys)
        case "answer":
            return Stopped(_known(block, "answer", table["answer"], keys))
        case _:
            return _other_method(block, read_method(block, table), method)


def _given_slip(block: Block, table: Mapping[str, Any], method: Method[...]) -> GivenSlip:
    name, value = next(iter(table.items()))
    where = f"given.{name}"
    _known(block, where, name, method.parameters)
    if isinstance(value, dict) and set(value) == {"times"}:
        return GivenSlip(name, times=_times(block, where, value["times"]))
    if isinstance(value, dict) and set(value) == {"same_as"}:
        return GivenSlip(name, same_as=_known(block, where, value["same_as"], method.parameters))
    if isinstance(value, dict):
        raise block.mistake(where, "A slip's given is a value, times or same_as.")
    return GivenSlip(name, value=_misread(block, where, frozen(value), method.parameters[name]))


def _misread(block: Block, where: str, value: Any, parameter: Parameter) -> Any:  # noqa: ANN401
    try:
        parameter.check_inside(value)
    except EngineError as error:
        raise block.mistake(where, str(error)) from error
    return value


def _line_slip(block: Block, table: Mapping[str, Any], keys: Collection[str]) -> LineSlip:
    key, value = next(iter(table.items()))
    _known(block, "line", key, keys)
    if isinstance(value, dict) and set(value) == {"times"}:
        return LineSlip(key, times=_times(block, "line", value["times"]))
    if isinstance(value, dict) and set(value) == {"same_as"}:
        return LineSlip(key, same_as=_known(block, "line", value["same_as"], keys))
    raise block.mistake(
        "line",
        "A slip's line is {times = …} or {same_as = …}.",
        'A key with a dot is quoted: line."bandage.glass" = {times = 0.001}.',
    )


def _other_method(block: Block, other: Method[...], method: Method[...]) -> OtherMethod:
    required = (name for name, parameter in other.parameters.items() if parameter.required)
    lacking = next((name for name in required if name not in method.parameters), None)
    if lacking:
        raise block.mistake(
            "calculate",
            f"'{other.name}' takes '{lacking}', which isn't given here.",
            "Name a calculation that works on the same givens.",
        )
    return OtherMethod(other.name)


def _known(block: Block, key: str, name: Any, known: Collection[str]) -> str:  # noqa: ANN401
    if not isinstance(name, str) or name not in known:
        raise block.mistake(key, f"There is no '{name}' here.", did_you_mean(str(name), known))
    return name


def _times(block: Block, where: str, value: Any) -> float:  # noqa: ANN401
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not 0 < value < math.inf:
        raise block.mistake(where, "'times' must be a number above zero.")
    return float(value)
