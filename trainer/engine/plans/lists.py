"""A plan as lists of plain values, for spreadsheets, other programs, pages and terminals.

Lengths on the roof are whole millimetres, amounts have the digits that the sheet shows; the
list of figures alone has every digit.
"""

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import SimpleNamespace

from trainer.engine.plans.figure import Figure, Known
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.units import as_shown, unit_for

Cell = str | int | float | None
Row = tuple[Cell, ...]

_TO_MM = 3
#: What a spreadsheet would take for the beginning of a formula.
_FORMULA = ("=", "+", "-", "@", "\t", "\r")
_MINUTES_OF_A_DAY = 24 * 60


@dataclass(frozen=True, slots=True)
class Table:
    """One list of a plan: what its columns are called, units included, and its rows."""

    #: For an address or a file: "bandage".
    name: str
    title: str
    columns: tuple[str, ...]
    rows: tuple[Row, ...]

    def as_csv(self) -> str:
        """Return the list as comma-separated text with a header row.

        A text that a spreadsheet would work out as a formula gets an apostrophe before it.
        """
        lines: list[str] = []
        writer = csv.writer(SimpleNamespace(write=lines.append))
        writer.writerow(map(_defused, self.columns))
        writer.writerows(map(_defused, row) for row in self.rows)
        return "".join(lines)


def lists_of(plan: RoofPlan) -> Mapping[str, Table]:
    """Return the lists of a plan by name, in the order of the work; an empty one has no rows."""
    return {table.name: table for table in _tables(plan)}


def clock(minutes: float | None) -> str:
    """Return minutes after midnight as a time of day, never later than it is; "" for None."""
    if minutes is None:
        return ""
    days, minute = divmod(int(minutes), _MINUTES_OF_A_DAY)
    return f"{minute // 60:02}:{minute % 60:02}{' next day' if days else ''}"


def _defused(cell: Cell) -> Cell:
    return f"'{cell}" if isinstance(cell, str) and cell.startswith(_FORMULA) else cell


def _tables(plan: RoofPlan) -> Iterator[Table]:
    for name, title, columns, rows in (
        ("tape", "Tape", ("piece", "over", "length (m)", "ends carried on"), _tape(plan)),
        (
            "bandage",
            "Bandage in laying order",
            ("strip", "over", "cut from", "length (m)", "pieces"),
            _bandage(plan),
        ),
        (
            "drops",
            "Drops of mat",
            ("layer", "drop", "length (m)", "width (mm)", "cut off its width (mm)"),
            _drops(plan),
        ),
        ("turned", "Mat turned up, down and round", ("what", "area (m²)"), _turned(plan)),
        ("trims", "Trims", ("trim", "length", "pieces (mm)", "left over (mm)"), _trims(plan)),
        ("batches", "Batches", _BATCH_COLUMNS, _batches(plan)),
        ("buy", "What to buy", ("what", "needed", "sold in", "count", "of"), _buy(plan)),
        ("figures", "Figures", ("key", "what", "value", "unit", "known by"), _figures(plan)),
        ("assumed", "Assumed", ("key", "what", "value", "standing"), _assumed(plan)),
    ):
        yield Table(name, title, columns, tuple(rows))


_BATCH_COLUMNS = (
    "stage",
    "batch",
    "resin (kg)",
    "resin (L)",
    "catalyst (g)",
    "catalyst (ml)",
    "syringe mark (ml)",
    "catalyst in",
    "laid by",
    "may gel",
)


def _tape(plan: RoofPlan) -> Iterator[Row]:
    for piece in plan.tape.pieces:
        over = f"joint {piece.number}" if piece.start else "a cut edge"
        yield piece.number, over, round(piece.length_m, _TO_MM), piece.carried


def _bandage(plan: RoofPlan) -> Iterator[Row]:
    for strip in plan.bandage.strips:
        source = "mat" if strip.over == "open end" else "bandage"
        yield strip.number, strip.name, source, round(strip.length_m, _TO_MM), strip.pieces


def _drops(plan: RoofPlan) -> Iterator[Row]:
    for drop in plan.mat.drops:
        length = round(drop.length_m, _TO_MM)
        yield drop.layer, drop.name, length, drop.width_mm, drop.trimmed_mm


def _turned(plan: RoofPlan) -> Iterator[Row]:
    for turned in plan.mat.turned:
        yield turned.area.words, as_shown(turned.area.value)


def _trims(plan: RoofPlan) -> Iterator[Row]:
    for run in plan.trims.runs:
        for number, bar in enumerate(run.cuts.bars, 1):
            left = run.cuts.stock_mm - sum(bar)
            yield run.name, number, " and ".join(map(str, bar)), left


def _batches(plan: RoofPlan) -> Iterator[Row]:
    for stage in plan.stages:
        grams = None if stage.catalyst_g is None else as_shown(stage.catalyst_g)
        rest = (stage.catalyst.value, stage.mark_ml)
        amounts = (
            *map(as_shown, (stage.share.value, stage.litres.value)),
            grams,
            *map(as_shown, rest),
        )
        for batch in stage.batches:
            times = map(clock, (batch.start_min, batch.until_min, batch.gel_min))
            yield (stage.title, batch.number, *amounts, *times)


def _buy(plan: RoofPlan) -> Iterator[Row]:
    for each in plan.purchases:
        count = int(each.count.value)
        yield each.what, each.needed, each.each, count, unit_for(count, each.count.unit)


def _figures(plan: RoofPlan) -> Iterator[Row]:
    for key, known in plan.figures().items():
        yield key, known.words, known.value, known.unit, _source(known)


def _source(known: Known) -> str:
    if isinstance(known, Figure):
        return known.method.name
    return "counted in the cut list" if known.key.startswith("buy.") else "read off the drawing"


def _assumed(plan: RoofPlan) -> Iterator[Row]:
    for each in plan.assumptions:
        yield f"{each.part}.{each.field}", each.words, each.shown, each.standing


def data_of(plan: RoofPlan) -> dict[str, object]:
    """Return a plan as plain data, every figure unrounded and with its working."""
    return {
        "title": plan.description.title,
        "verdict": {"word": plan.verdict.word, "reasons": _reasons(plan)},
        "dose": {
            "percent": plan.dose.percent,
            "convention": plan.dose.convention,
            "percent_by_mass": plan.dose.by_mass.value,
        },
        "no_times": list(getattr(plan.gel, "reasons", ())),
        "fall": {"towards_edge": plan.fall.towards, "verdict": plan.fall.verdict},
        "cautions": list(plan.cautions),
        "figures": {key: _figure(known) for key, known in plan.figures().items()},
        "lists": {name: _records(table) for name, table in lists_of(plan).items()},
    }


def _reasons(plan: RoofPlan) -> list[dict[str, str]]:
    return [
        {"level": each.level, "what": each.what, "words": each.words, "limit": each.limit}
        for each in plan.verdict.reasons
    ]


def _figure(known: Known) -> dict[str, object]:
    told: dict[str, object] = {"words": known.words, "value": known.value, "unit": known.unit}
    if not isinstance(known, Figure):
        return {**told, "measured": True}
    lines = [
        {
            "key": line.key,
            "words": line.words,
            "sum": line.in_figures(),
            "value": line.value,
            "unit": line.unit,
        }
        for line in known.working.lines
    ]
    return {**told, "method": known.method.name, "working": lines}


def _records(table: Table) -> list[dict[str, Cell]]:
    return [dict(zip(table.columns, row, strict=True)) for row in table.rows]
