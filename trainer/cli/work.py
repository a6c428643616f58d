"""`trainer work`: any calculation in a terminal, with its working."""

import json
from collections.abc import Iterator
from typing import Any

import click

from trainer.engine import (
    METHODS,
    EngineError,
    Method,
    Parameter,
    Working,
    cautions_for,
    method_named,
    read_quantity,
    show,
)
from trainer.engine import work as work_out
from trainer.engine.repeats import repeats_in, shortened


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


def read_givens(method: Method[...], given: tuple[str, ...]) -> dict[str, Any]:
    """Return the givens by name from KEY=VALUE words; raise ClickException, naming the key."""
    givens: dict[str, Any] = {}
    for word in given:
        key, equals, text = word.partition("=")
        if not equals:
            raise click.ClickException(
                f"'{shortened(word)}' isn't KEY=VALUE, such as resin_kg=1.3."
            )
        if key not in method.parameters:
            known = ", ".join(method.parameters)
            raise click.ClickException(
                f"'{method.name}' takes no '{shortened(key)}'. It takes {known}."
            )
        if key in givens:
            raise click.ClickException(f"{key}: It is given twice. Leave one of them out.")
        givens[key] = read_value(method.parameters[key], text)
    missing = [p.name for p in method.parameters.values() if p.required and p.name not in givens]
    if missing:
        raise click.ClickException(f"'{method.name}' needs {', '.join(missing)} too.")
    return givens


def read_value(parameter: Parameter, text: str) -> Any:  # noqa: ANN401
    """Return what a typed value means for a parameter; raise ClickException, naming the key."""
    try:
        value = _read(parameter, text)
        parameter.check(value)
    except EngineError as error:
        raise click.ClickException(f"{parameter.name}: {error}") from error
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
