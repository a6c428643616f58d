"""The parts of a roof that take more than their own fields: outline, sides, openings, sizes."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Any

from trainer.engine.conversions import whole_mm
from trainer.engine.materials import UPSTAND
from trainer.engine.plans.description import CornerMakes, Crew, Cup, Edge, Point, fields_of
from trainer.engine.plans.openings import Opening, Outlet, Pipe, Rooflight
from trainer.engine.repeats import shortened
from trainer.engine.schema import Given
from trainer.lessons.roof_reading import MOST, RoofReading
from trainer.lessons.roof_shapes import CORNERS, MEASURED, SHAPES, Ell, Place

#: What an opening may be, by its kind.
OPENINGS: Mapping[str, type[Opening]] = {"rooflight": Rooflight, "pipe": Pipe, "outlet": Outlet}
_SHAPE_MEND = f"Write {', '.join(SHAPES[:-1])} or {SHAPES[-1]}."
CORNERS_KEY = "outline.corners_m"
_ONE_A_LINE = "Write one corner a line, with a comma, such as 4.2, 0."
_PAIR_MEND = "Write it as a pair, such as [4.2, 0]."
_KIND_MEND = "Write rooflight, pipe or outlet."


@dataclass(frozen=True, slots=True)
class CornerRule:
    """What one corner makes, where somebody overrules the rule."""

    at: Annotated[int, Given("number of the corner", "", 1, 60)]
    makes: Annotated[CornerMakes, Given("thing that a corner makes")]


@dataclass(frozen=True, slots=True)
class Ladder:
    """Where people get off the roof."""

    way_off_edge: Annotated[int, Given("side with the ladder", "", 1, 60)] = 1


def read_outline(reading: RoofReading) -> tuple[Point, ...]:
    """Return the corners of a roof, anticlockwise; none where the outline is wrong."""
    table = reading.table("outline")
    shape = table.get("shape")
    if shape is None:
        reading.wrong("outline.shape", "The roof has no shape.", _SHAPE_MEND, line_of="outline")
    elif shape == CORNERS:
        return _corner_list(reading, table)
    elif not isinstance(shape, str) or shape not in MEASURED:
        sentence = f"There is no shape '{shortened(str(shape))}'."
        reading.wrong("outline.shape", sentence, _SHAPE_MEND)
    else:
        return _measured(reading, table, shape)
    return ()


def _measured(reading: RoofReading, table: Mapping[str, Any], shape: str) -> tuple[Point, ...]:
    sides = {name: value for name, value in table.items() if name != "shape"}
    found = reading.part("outline", sides, MEASURED[shape], f"The shape '{shape}'")
    if found is None:
        return ()
    if isinstance(found, Ell) and found.too_long:
        sentence = "The missing piece is as large as the roof. Give a smaller one."
        reading.wrong(f"outline.{found.too_long}", sentence)
        return ()
    return found.corners


def _corner_list(reading: RoofReading, table: Mapping[str, Any]) -> tuple[Point, ...]:
    before = len(reading.mistakes)
    known = dict.fromkeys(("shape", "corners_m"))
    reading.refuse_unknown("outline", table, known, "The shape 'corners'")
    corners = table.get("corners_m")
    if not isinstance(corners, list) or not corners:
        mend = "Write corners_m = [[0, 0], [4, 0], [4, 2.5]], going anticlockwise."
        sentence = f"The corners must be a list of places.{'' if corners else f' {_ONE_A_LINE}'}"
        reading.wrong(CORNERS_KEY, sentence, mend)
    elif len(corners) > MOST:
        sentence = f"The outline has {len(corners)} corners; {MOST} are the most."
        reading.wrong(CORNERS_KEY, sentence)
    else:
        reading.given.add(CORNERS_KEY)
        places = [_place(reading, number, each) for number, each in enumerate(corners, 1)]
        return tuple(places) if len(reading.mistakes) == before else ()
    return ()


def _place(reading: RoofReading, number: int, typed: object) -> Point:
    """Return one corner from [2.4, 0], or from a text such as "2.4, 0"."""
    both = typed.split(",") if isinstance(typed, str) else typed
    axes = fields_of(Place).values()
    if not isinstance(both, (list, tuple)) or len(both) != len(axes):
        sentence = f"Corner {number} must be two lengths: along the roof, and up it."
        written = _ONE_A_LINE if isinstance(typed, str) else ""
        reading.wrong(CORNERS_KEY, f"{sentence} {written}".strip(), "" if written else _PAIR_MEND)
        return 0, 0
    before = len(reading.mistakes)
    more = f" Look at corner {number}. {_ONE_A_LINE}" if isinstance(typed, str) else ""
    words = [f"{axis.words} of corner {number}" for axis in axes]
    x, y = (
        reading.value(CORNERS_KEY, replace(axis, words=its), each, more)
        for axis, its, each in zip(axes, words, both, strict=True)
    )
    return (whole_mm(x), whole_mm(y)) if len(reading.mistakes) == before else (0, 0)


def read_edges(reading: RoofReading) -> tuple[Edge, ...]:
    """Return the sides in order; mat is turned up a wall unless a side says otherwise."""
    edges = (
        reading.part(key, table, Edge, "A side", _turned_up(table))
        for key, table in reading.tables("edge")
    )
    return tuple(edge for edge in edges if edge is not None)


def _turned_up(table: Mapping[str, Any]) -> dict[str, float]:
    return {"turn_mm": UPSTAND.value} if table.get("kind") == "wall" else {}


def read_openings(reading: RoofReading) -> tuple[Opening, ...]:
    """Return the openings in order."""
    openings = (_opening(reading, key, table) for key, table in reading.tables("opening"))
    return tuple(opening for opening in openings if opening is not None)


def _opening(reading: RoofReading, key: str, table: Mapping[str, Any]) -> Opening | None:
    kind = table.get("kind")
    fields = {name: value for name, value in table.items() if name != "kind"}
    if kind is None:
        reading.wrong(f"{key}.kind", "The opening has no kind.", _KIND_MEND, line_of=key)
    elif not isinstance(kind, str) or kind not in OPENINGS:
        sentence = f"There is no opening of kind '{shortened(str(kind))}'."
        reading.wrong(f"{key}.kind", sentence, _KIND_MEND)
    else:
        return reading.part(key, fields, OPENINGS[kind], f"An opening of kind '{kind}'")
    return None


def read_corner_rules(reading: RoofReading) -> dict[int, CornerMakes]:
    """Return what corners make, by number, where the rule is overruled."""
    rules: dict[int, CornerMakes] = {}
    for key, table in reading.tables("corner"):
        rule = reading.part(key, table, CornerRule, "A corner")
        if rule is not None and rule.at in rules:
            reading.wrong(f"{key}.at", f"Corner {rule.at} stands here twice. Leave one out.")
        elif rule is not None:
            rules[rule.at] = rule.makes
    return rules


def read_cups(reading: RoofReading) -> tuple[Cup, ...]:
    """Return the test cups in order."""
    cups = (reading.part(key, table, Cup, "A test cup") for key, table in reading.tables("cup"))
    return tuple(cup for cup in cups if cup is not None)


def read_crew(reading: RoofReading) -> Crew | None:
    """Return the crew, whose start must be a time of day."""
    crew = reading.part("crew", reading.table("crew"), Crew, "[crew]")
    try:
        _ = crew and crew.start_minute
    except ValueError as error:
        reading.wrong("crew.start", str(error))
    return crew


def read_way_off(reading: RoofReading) -> int:
    """Return the number of the side where the ladder stands."""
    ((name, field),) = fields_of(Ladder).items()
    if name not in reading.data:
        return int(field.default)
    reading.given.add(name)
    return reading.value(name, field, reading.data[name]) or 0
