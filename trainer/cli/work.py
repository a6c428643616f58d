"""`trainer work`: any calculation in a terminal, with its working."""

import json
from collections.abc import Iterator
from typing import Any

import click

from trainer.engine import (
    METHODS,
    Method,
    Parameter,
    Working,
    cautions_for,
    method_named,
    show,
)
from trainer.engine import work as work_out
from trainer.engine.repeats import shortened
from trainer.engine.typed_givens import read_givens


@click.command()
@click.argument("name", required=False)
@click.argument("given", nargs=-1, metavar="[KEY=VALUE]...")
@click.option("--json", "as_json", is_flag=True, help="Print JSON instead of sentences.")
def work(name: str | None, given: tuple[str, ...], as_json: bool) -> None:  # noqa: FBT001
    """Work a calculation and show every line of it.

    Without NAME all calculations are listed, with units, ranges and defaults. Each KEY=VALUE
    gives one figure, typed as people type it: resin_kg=1.3kg, length_m=12'6",
    joints_m=2.4:3,3.6 (three joints of 2.4 m and one of 3.6 m).
    """
    if name is None:
        click.echo("\n\n".join(describe(method) for method in METHODS.values()))
        return
    method = method_named(shortened(name))
    givens = read_givens(method, given)
    working = work_out(method(**givens))
    click.echo(as_data(method, givens, working) if as_json else as_text(method, givens, working))


def describe(method: Method[...]) -> str:
    """Return a calculation's name, what it returns, and a line for each parameter."""
    lines = [f"{method.name}", f"    {method.title}"]
    lines += [f"    {_parameter_line(each)}" for each in method.parameters.values()]
    return "\n".join(lines)


def _parameter_line(parameter: Parameter) -> str:
    if parameter.shape == "choice":
        accepted = " or ".join(parameter.choices)
    else:
        low, high = show(parameter.low, ""), show(parameter.high, parameter.unit)
        accepted = f"{low} to {high}".replace("\u00a0", " ")
    many = ", one or more, as 2.4:3,3.6" if parameter.shape == "list" else ""
    standing = f", {parameter.standing}" if parameter.standing else ""
    default = "" if parameter.required else f"; {parameter.default:.4g} if not given{standing}"
    return f"{parameter.name:<18} {parameter.words}, {accepted}{many}{default}"


def as_text(method: Method[...], givens: dict[str, Any], working: Working) -> str:
    """Return a working as lines to read in a terminal, with what it assumed and warns of."""
    blocks = [
        f"{line.words}\n    = {line.in_words()}\n    = {line.shown()}" for line in working.lines
    ]
    result = f"\n{show(working.value, working.lines[-1].unit)}"
    warned = [f"Caution: {each}" for each in cautions_for(method, givens, working)]
    text = "\n".join([*blocks, result, *_assumed(method, givens), *warned])
    # A page keeps figure and unit on one line; in a terminal one searches for "39.6 g".
    return text.replace("\u00a0", " ")


def _assumed(method: Method[...], givens: dict[str, Any]) -> Iterator[str]:
    """Yield the defaults that a working rests on, each with its standing."""
    defaults = [p for p in method.parameters.values() if p.standing and p.name not in givens]
    if defaults:
        yield "\nAssumed, until the data sheet says otherwise:"
    for each in defaults:
        yield f"    {each.words} {show(each.default, each.unit)} ({each.standing})"


def as_data(method: Method[...], givens: dict[str, Any], working: Working) -> str:
    """Return a working as JSON; figures in it are not rounded."""
    known = {**method.defaults(), **givens}
    data = {
        "calculation": method.name,
        "given": {name: known[name] for name in method.parameters},
        "lines": [
            {
                "key": line.key,
                "words": line.words,
                "shown": line.shown(),
                "value": line.value,
                "unit": line.unit,
            }
            for line in working.lines
        ],
        "value": working.value,
        "unit": working.lines[-1].unit,
    }
    return json.dumps(data, ensure_ascii=False, indent=2)
