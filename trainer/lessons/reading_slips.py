"""The slips of a question block: one thing put wrong in each."""

from collections.abc import Collection, Mapping
from typing import Any

from trainer.engine import Method, line_keys
from trainer.engine.slips import Change, GivenSlip, LineSlip, OtherMethod, Stopped
from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean
from trainer.lessons.question import Ask, Slip
from trainer.lessons.reading_givens import frozen, read_method

_SLIP_KEYS = ("name", "cue", "on", "given", "line", "answer", "calculate")


def read_slips(
    block: Block, table: Mapping[str, Any], method: Method[...], asks: tuple[Ask, ...]
) -> tuple[Slip, ...]:
    """Return the slips that a question knows; raise AuthorError."""
    return tuple(_read_slip(block, each, method, asks) for each in table.get("slips", ()))


def _read_slip(
    block: Block, table: Mapping[str, Any], method: Method[...], asks: tuple[Ask, ...]
) -> Slip:
    block.refuse_unknown(table, _SLIP_KEYS, "A slip")
    name = block.want(table, "name", str, "A slip")
    on = table.get("on")
    if on is not None and on not in {ask.line for ask in asks}:
        raise block.mistake(
            "on", f"'{on}' isn't asked for.", did_you_mean(str(on), [ask.line for ask in asks])
        )
    change = _read_change(block, table, method, name)
    return Slip(name, block.want(table, "cue", str, "A slip"), change, on)


def _read_change(block: Block, table: Mapping[str, Any], method: Method[...], name: str) -> Change:
    changes = [key for key in ("given", "line", "answer", "calculate") if key in table]
    one = len(changes) == 1
    if one and isinstance(table[changes[0]], dict):
        one = len(table[changes[0]]) == 1
    if not one:
        raise block.mistake(
            name,
            f"The slip '{name}' must change one thing.",
            "One of given.NAME, line.KEY, answer or calculate.",
        )
    keys = line_keys(method)
    match changes[0]:
        case "given":
            return _given_slip(block, table["given"], method)
        case "line":
            return _line_slip(block, table["line"], keys)
        case "answer":
            return Stopped(_known(block, "answer", table["answer"], keys))
        case _:
            return OtherMethod(read_method(block, table).name)


def _given_slip(block: Block, table: Mapping[str, Any], method: Method[...]) -> GivenSlip:
    name, value = next(iter(table.items()))
    _known(block, f"given.{name}", name, method.parameters)
    if isinstance(value, dict) and set(value) == {"times"}:
        return GivenSlip(name, times=float(value["times"]))
    if isinstance(value, dict) and set(value) == {"same_as"}:
        other = _known(block, f"given.{name}", value["same_as"], method.parameters)
        return GivenSlip(name, same_as=other)
    if isinstance(value, dict):
        raise block.mistake(f"given.{name}", "A slip's given is a value, times or same_as.")
    return GivenSlip(name, value=frozen(value))


def _line_slip(block: Block, table: Mapping[str, Any], keys: Collection[str]) -> LineSlip:
    key, value = next(iter(table.items()))
    _known(block, "line", key, keys)
    if isinstance(value, dict) and set(value) == {"times"}:
        return LineSlip(key, times=float(value["times"]))
    if isinstance(value, dict) and set(value) == {"same_as"}:
        return LineSlip(key, same_as=_known(block, "line", value["same_as"], keys))
    raise block.mistake(
        "line",
        "A slip's line is {times = …} or {same_as = …}.",
        'A key with a dot is quoted: line."bandage.glass" = {times = 0.001}.',
    )


def _known(block: Block, key: str, name: Any, known: Collection[str]) -> str:  # noqa: ANN401
    if name not in known:
        raise block.mistake(key, f"There is no '{name}' here.", did_you_mean(str(name), known))
    return str(name)
