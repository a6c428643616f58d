"""A roof as somebody describes it in the form: its plan, or a sentence for each wrong field."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from trainer.engine import EngineError, show
from trainer.engine.errors import BadRoof
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.lessons import AuthorError, ContentError
from trainer.lessons.roof_reading import RoofMistake
from trainer.lessons.roofs import NO_FILE, plan_mistakes, read_roof
from trainer.records.cups import KeptCup
from trainer.web.filters import day
from trainer.web.installation import here
from trainer.web.roof_form import Fields, rows_of, tables_from

UNNAMED = "A roof without a name"
#: Where a mistake stands that belongs to no field.
WHOLE = "roof-form"
_OWN_CUP = "own_cup."


@dataclass(frozen=True, slots=True)
class Described:
    """What a form says, and what comes of it: a plan, or mistakes by the names of fields."""

    fields: Fields
    data: Mapping[str, Any]
    plan: RoofPlan | None = None
    mistakes: Mapping[str, str] = field(default_factory=dict)


def describe(fields: Fields, *, named: bool = False) -> Described:
    """Return the plan of what was typed, or everything that is wrong with it.

    `named` asks for a title; without it the plan needs none.
    """
    data = tables_from(fields)
    if not named:
        data.setdefault("title", UNNAMED)
    try:
        roof = read_roof(data, NO_FILE, here().library.stock)
    except ContentError as error:
        return Described(fields, data, mistakes=_by_field(error.mistakes, data))
    try:
        return Described(fields, data, plan_roof(roof))
    except EngineError as error:
        return Described(fields, data, mistakes=_unplanned(roof, error, data))


def _unplanned(
    roof: RoofDescription, error: EngineError, data: Mapping[str, Any]
) -> dict[str, str]:
    found = plan_mistakes(roof, NO_FILE) if isinstance(error, BadRoof) else ()
    return _by_field(found, data) or {WHOLE: str(error)}


def _by_field(mistakes: Iterable[AuthorError], data: Mapping[str, Any]) -> dict[str, str]:
    told: dict[str, list[str]] = {}
    for each in mistakes:
        key = each.key if isinstance(each, RoofMistake) else WHOLE
        told.setdefault(_field_of(key, data), []).append(each.sentence)
    return {name: " ".join(dict.fromkeys(sentences)) for name, sentences in told.items()}


def _field_of(key: str, data: Mapping[str, Any]) -> str:
    """Return the name of a key's field; a rule for a corner goes by the corner's own number."""
    name, _, rest = key.partition(".")
    if name != "corner" or not rest:
        return key
    number = int(rest.partition(".")[0])
    return f"corner.{data['corner'][number - 1]['at']}.makes"


@dataclass(frozen=True, slots=True)
class OfferedCup:
    """One of somebody's own test cups, to be ticked."""

    name: str
    words: str


def with_own_cups(fields: Fields, sent: Fields, cups: Iterable[KeptCup], today: date) -> Fields:
    """Return the fields with a row filled in for each own cup that was ticked.

    The first one's resin is taken for the roof's where none was typed.
    """
    filled = dict(fields)
    for cup in cups:
        if sent.get(f"{_OWN_CUP}{cup.cup_id}"):
            row = _row_of(cup, today)
            number = rows_of(filled, "cup") + 1
            filled |= {f"cup.{number}.{name}": text for name, text in row.items()}
            if not filled.get("mix.product", "").strip():
                filled["mix.product"] = cup.facts.product
    return filled


def offered(fields: Fields, cups: Iterable[KeptCup], today: date) -> Iterator[OfferedCup]:
    """Yield those of somebody's own cups that aren't in the form yet."""
    numbers = range(1, rows_of(fields, "cup") + 1)
    for cup in cups:
        row = _row_of(cup, today)
        if not any(_is_in(fields, number, row) for number in numbers):
            yield OfferedCup(f"{_OWN_CUP}{cup.cup_id}", _words(cup))


def _is_in(fields: Fields, number: int, row: Fields) -> bool:
    return all(fields.get(f"cup.{number}.{name}", "") == text for name, text in row.items())


def _row_of(cup: KeptCup, today: date) -> dict[str, str]:
    facts = cup.facts
    return {
        "minutes": f"{facts.minutes:.10g}",
        "at_c": f"{facts.at_c:.10g}",
        "percent": f"{facts.percent:.10g}",
        "product": facts.product,
        "days_old": str(cup.days_old(today)),
        "of": "first batch" if facts.from_batch else "test cup",
    }


def _words(cup: KeptCup) -> str:
    facts = cup.facts
    gelled = f"{show(facts.minutes, 'min')} at {show(facts.at_c, '°C')}"
    dose = f"{show(facts.percent, '%')} by mass"
    return f"{facts.product}: {gelled}, {dose}, {day(cup.local_date)}"
