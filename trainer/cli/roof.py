"""`trainer roof`: the plan of a roof that a file describes, to read, to print or to send on."""

import json
from pathlib import Path

import click

from trainer.cli.roof_files import write_all
from trainer.cli.roof_text import Beside, plan_text, working_text
from trainer.config import read_config
from trainer.engine.plans.lists import data_of, lists_of
from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.lessons import ContentError
from trainer.lessons.cautions import ON_A_ROOF, read_cautions
from trainer.lessons.roof_sizes import sold_standing
from trainer.lessons.roofs import (
    SampleRoof,
    Stock,
    plan_mistakes,
    read_roof,
    read_sample_roofs,
    read_tables,
)
from trainer.lessons.stock import read_stock

_FOLDER = click.Path(path_type=Path, file_okay=False)
_FILE = click.Path(path_type=Path, dir_okay=False)
_PARTS = ("deck", "mat")


@click.command()
@click.argument("file", required=False, metavar="[FILE.toml]")
@click.option("--json", "as_json", is_flag=True, help="Print JSON: every figure, unrounded.")
@click.option("--csv", "folder", type=_FOLDER, metavar="DIR", help="Write each list to DIR.")
@click.option("--svg", "picture", type=_FILE, metavar="FILE", help="Write the drawing to FILE.")
@click.option("--part", type=click.Choice(_PARTS), help="What to draw; the deck, if not told.")
@click.option("--working", "key", metavar="KEY", help="Show how a figure came about.")
@click.option("--replace", is_flag=True, help="Write over files that are there already.")
def roof(
    file: str | None,
    as_json: bool,  # noqa: FBT001
    folder: Path | None,
    picture: Path | None,
    part: str | None,
    key: str | None,
    replace: bool,  # noqa: FBT001
) -> None:
    """Plan a roof from the file that describes it.

    It tells what to take along, what to cut, what to mix, and when. FILE.toml may also be the
    name of a roof that comes along; without it those are listed, to copy and begin your own.
    KEY is a figure such as bandage.length, or the beginning of several, such as stages.
    """
    if sum(map(bool, (as_json, folder, picture, key))) > 1:
        raise click.UsageError("Ask for one of --json, --csv, --svg and --working at a time.")
    if part and not picture:
        raise click.UsageError("--part says what --svg draws. Give both.")
    content = read_config().content
    stock = read_stock(content)
    if file is None:
        _refuse_alone(as_json or folder or picture or key)
        click.echo(_samples(content, stock))
        return
    plan = _plan(file, content, stock)
    if folder:
        click.echo(_write_lists(plan, folder, replace=replace))
    elif picture:
        click.echo(_write_drawing(plan, picture, part or _PARTS[0], replace=replace))
    elif as_json:
        click.echo(json.dumps(data_of(plan), ensure_ascii=False, allow_nan=False, indent=2))
    elif key:
        click.echo(working_text(plan, key))
    else:
        cautions = read_cautions(content)
        known = tuple(cautions[slug] for slug in ON_A_ROOF if slug in cautions)
        click.echo(plan_text(plan, Beside(file, known, sold_standing(stock))))


def _refuse_alone(asked: object) -> None:
    if asked:
        raise click.UsageError("Name a roof's file first. 'trainer roof' lists some.")


def _samples(content: Path, stock: Stock) -> str:
    """Return the roofs that come along, each with its title and what it is drawn as."""
    roofs, mistakes = read_sample_roofs(content, stock)
    if mistakes:
        raise ContentError(mistakes)
    listed = "\n".join(_sample(each) for each in roofs.values()) or "    none"
    return (
        f"Roofs that come along, all invented:\n{listed}\n\n"
        f"They are in {content / 'roofs'}. Plan one: trainer roof {next(iter(roofs), 'FILE.toml')}"
    )


def _sample(roof: SampleRoof) -> str:
    return f"    {roof.name:<14} {roof.description.title}"


def _plan(file: str, content: Path, stock: Stock) -> RoofPlan:
    """Return the plan of the roof in a file; raise ContentError with all that is wrong."""
    path = _path_of(file, content)
    data, block = read_tables(path, str(path))
    description = read_roof(data, block, stock)
    mistakes = plan_mistakes(description, block)
    if mistakes:
        raise ContentError(mistakes)
    return plan_roof(description)


def _path_of(file: str, content: Path) -> Path:
    """Return the file that is named, or the roof of this name that comes along."""
    path, along = Path(file), content / "roofs" / f"{file}.toml"
    if path.exists():
        return path
    if file == path.name and along.is_file():
        return along
    raise click.ClickException(
        f"There is no file '{file}'. 'trainer roof' lists the roofs that come along."
    )


def _write_lists(plan: RoofPlan, folder: Path, *, replace: bool) -> str:
    folder.mkdir(parents=True, exist_ok=True)
    files = {folder / f"{name}.csv": table.as_csv() for name, table in lists_of(plan).items()}
    write_all(files, replace=replace)
    return f"{len(files)} lists are in {folder}."


def _write_drawing(plan: RoofPlan, picture: Path, part: str, *, replace: bool) -> str:
    # Drawings are made of the pages' own templates, which no other output needs.
    from trainer.web.drawing import draw_roof  # noqa: PLC0415

    write_all({picture: draw_roof(plan, part, standalone=True)}, replace=replace)
    return f"The drawing is in {picture}."
