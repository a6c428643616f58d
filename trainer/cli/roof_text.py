"""The plan of a roof as lines to read in a terminal: the verdict first, then the work in order."""

import textwrap
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

import click

from trainer.cli.columns import columns
from trainer.engine import show
from trainer.engine.errors import NoSuch
from trainer.engine.plans.description import Sold, fields_of
from trainer.engine.plans.figure import Figure, Known
from trainer.engine.plans.gel import GelTimes
from trainer.engine.plans.lists import Table, lists_of
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.units import counted, figure
from trainer.lessons import Caution

_WIDTH = 90
_INDENT = "    "


@dataclass(frozen=True, slots=True)
class Beside:
    """What a plan's text says that the plan itself doesn't know."""

    #: As it was typed.
    file: str
    cautions: tuple[Caution, ...]
    #: How well each size of stock.toml is known, by its field.
    sold: Mapping[str, str]


def plan_text(plan: RoofPlan, beside: Beside) -> str:
    """Return the whole plan as text."""
    sections = (each for each in _sections(plan, beside) if each)
    # A page keeps figure and unit on one line; in a terminal one searches for "39.6 g".
    return "\n\n".join("\n".join(each) for each in sections).replace("\u00a0", " ")


def _sections(plan: RoofPlan, beside: Beside) -> Iterator[list[str]]:
    lists = lists_of(plan)
    yield [plan.description.title, f"{plan.deck.area.shown}, {len(plan.sides)} sides"]
    yield [f"Verdict: {plan.verdict.word}", *_reasons(plan)]
    yield _section("Take along", [*_take(plan), *_sizes(plan, beside.sold)])
    for name in ("tape", "bandage", "drops", "turned"):
        yield _section(lists[name].title, _list(lists[name]))
    yield _section("Trims", [*_list(lists["trims"]), *_trims(plan)])
    yield _section("Batches", [*_stages(plan), *_limits(plan)])
    yield _section("Clock", [*_clock(plan), *_times(lists["batches"])])
    yield _section("Fall", _fall(plan))
    weighed = (plan.thickness, plan.weight_per_m2, plan.weight)
    yield _section("What it comes to", [f"{each.words} {each.shown}" for each in weighed])
    yield _section("Cautions of this roof", _wrapped(plan.cautions))
    for caution in beside.cautions:
        yield _section(caution.title, _wrapped([" ".join(caution.text.split())]))
    yield _section("Assumed, until the data sheet says otherwise", _assumed(plan))
    yield [f"How a figure came about: trainer roof {beside.file} --working bandage.length"]


def _section(title: str, lines: Iterable[str]) -> list[str]:
    lines = [f"{_INDENT}{line}" for line in lines]
    return [title, *lines] if lines else []


def _wrapped(texts: Iterable[str]) -> Iterator[str]:
    for text in texts:
        yield from textwrap.wrap(text, _WIDTH - len(_INDENT))


def _reasons(plan: RoofPlan) -> Iterator[str]:
    for reason in plan.verdict.reasons:
        if reason.level != "fine":
            for line in _wrapped([f"{reason.level}: {reason.words} {reason.limit}"]):
                yield f"{_INDENT}{line}"
    fine = ", ".join(each.what for each in plan.verdict.reasons if each.level == "fine")
    if fine:
        yield f"{_INDENT}fine: {fine}"


def _list(table: Table) -> Iterator[str]:
    return columns(table.columns, table.rows)


def _take(plan: RoofPlan) -> Iterator[str]:
    rows = [(each.what, each.needed, each.each, each.count.shown) for each in plan.purchases]
    return columns(("what", "needed", "sold in", "take"), rows)


def _sizes(plan: RoofPlan, sold: Mapping[str, str]) -> Iterator[str]:
    """Yield the sizes that nobody gave for this roof, by how well they are known."""
    for standing in dict.fromkeys(sold.values()):
        names = [
            f"{field.words} {show(getattr(plan.description.sold, name), field.unit)}"
            for name, field in fields_of(Sold).items()
            if sold.get(name) == standing and f"sold.{name}" not in plan.description.given
        ]
        if names:
            yield from _wrapped([f"Sizes of stock.toml, {standing}: {', '.join(names)}."])


def _trims(plan: RoofPlan) -> Iterator[str]:
    for run in plan.trims.runs:
        lengths = show(len(run.cuts.bars), "lengths")
        yield f"{run.name}: {lengths}, {run.cuts.verdict}"
    joins, mitres = len(plan.trims.joins), plan.trims.mitres
    made = (counted(joins, "trim join"), counted(mitres, "mitre"))
    yield f"{', '.join(made)}, {counted(plan.trims.open_ends, 'open end')}"


def _stages(plan: RoofPlan) -> Iterator[str]:
    rows = [
        (
            stage.title,
            len(stage.batches),
            stage.share.value,
            stage.litres.value,
            stage.percent,
            stage.catalyst_g,
            stage.catalyst.value,
            stage.mark_ml,
        )
        for stage in plan.stages
    ]
    each = ("stage", "batches", "each (kg)", "(L)")
    return columns((*each, "dose (%)", "catalyst (g)", "(ml)", "syringe mark (ml)"), rows)


def _limits(plan: RoofPlan) -> Iterator[str]:
    for stage in plan.stages:
        yield f"{stage.title}: {stage.resin.shown} in all; {stage.limit.why}."
    dose = plan.dose
    also = "" if dose.convention == "by mass" else f", which is {dose.by_mass.shown} by mass"
    chosen = ", chosen for the gel time wanted" if dose.chosen else ""
    yield f"Dose: {dose.words}{also}{chosen}."
    yield f"Dose of the topcoat: {show(plan.description.topcoat.percent, '%')} by mass."


def _times(table: Table) -> Iterator[str]:
    """Yield when each batch begins, is laid and may gel; a batch without a clock is left out."""
    names = ("stage", "batch", "catalyst in", "laid by", "may gel")
    places = [table.columns.index(name) for name in names]
    rows = [tuple(row[place] for place in places) for row in table.rows]
    return columns(names, [row for row in rows if row[-1]])


def _clock(plan: RoofPlan) -> Iterator[str]:
    """Yield when a batch may gel, or why nobody can tell."""
    if not isinstance(plan.gel, GelTimes):
        yield from _wrapped([f"No clock. {' '.join(plan.gel.reasons)}", *plan.gel.cautions])
        return
    gel = plan.gel
    lay_by, short = show(int(gel.lay_by), "min"), show(gel.whole_minutes["short"], "min")
    yield f"A cup gels after {short} at the soonest, and a full bucket may be sooner."
    yield f"Lay each batch within {lay_by} of catalyst in, mixing included."
    yield f"The clock goes by {gel.goes_by.words}."
    yield from (f"Timed too: {cup.words}." for cup in gel.used if cup is not gel.goes_by)
    yield from _wrapped(gel.cautions)
    yield from _wrapped(gel.refused)
    if plan.description.crew.start is None:
        yield "No start was given: count from when the catalyst goes in."
    yield from (stage.no_clock for stage in plan.stages if stage.no_clock)


def _fall(plan: RoofPlan) -> Iterator[str]:
    fall = plan.fall
    ratio = figure(plan.description.fall.ratio)
    yield f"{fall.drop.shown} over {show(fall.run_m, 'm')} to side {fall.towards}, for 1:{ratio}"
    if fall.measured:
        yield f"measured 1:{figure(fall.measured.value)}"
    yield fall.verdict


def _assumed(plan: RoofPlan) -> Iterator[str]:
    for each in plan.assumptions:
        yield f"{each.words} {each.shown} ({each.standing})"


def working_text(plan: RoofPlan, key: str) -> str:
    """Return how a figure came about, or each figure whose key begins with these words.

    Raises NoSuch, with a guess, and ClickException where nothing comes near.
    """
    figures = plan.figures()
    wanted = [each for name, each in figures.items() if name == key or name.startswith(f"{key}.")]
    if not wanted:
        unknown = NoSuch("figure", key[:80], figures)
        groups = ", ".join(dict.fromkeys(name.partition(".")[0] for name in figures))
        raise click.ClickException(f"{unknown} They begin with {groups}.")
    return "\n\n".join(map(_working, wanted)).replace("\u00a0", " ")


def _working(known: Known) -> str:
    head = f"{known.key}: {known.words} {known.shown}"
    if not isinstance(known, Figure):
        return f"{head}\n{_INDENT}read off the drawing"
    lines = (
        f"{_INDENT}{line.words}\n{_INDENT * 2}= {line.in_words()}\n{_INDENT * 2}= {line.shown()}"
        for line in known.working.lines
    )
    return "\n".join([head, *lines])
