"""A roof as somebody describes it: everything that its plan is made from, and nothing else.

Each part is a frozen dataclass whose annotated fields are its schema, so that the file, the
form, the ranges and the standing of each default come from here. A field that is None was not
given, and nothing is assumed for it. Corners are whole millimetres.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Annotated, Literal

from trainer.engine.materials import (
    ALLOWANCE,
    BANDAGE_WIDTH,
    BEGINNER_BATCH,
    CATALYST_DENSITY,
    CATALYST_DOSE,
    COLDEST,
    DOSE_BAND,
    MAT_LAP,
    MAT_WEIGHT,
    MIXING_TIME,
    RESIN_DENSITY,
    RESIN_TO_GLASS,
    TAPE_CARRY,
    TAPE_WIDTH,
    WORKING_SHARE,
    WRAP,
)
from trainer.engine.plans.openings import Opening
from trainer.engine.schema import Given, Parameter, read_parameters

#: A corner or any other place on the roof, in whole millimetres: x to the right, y up.
Point = tuple[int, int]
EdgeKind = Literal["drip", "raised", "wall"]
CornerMakes = Literal["mitre", "open end", "nothing"]
Convention = Literal["by mass", "ml per kg", "by volume"]
Looked = Literal["yes", "no", "not looked at"]

_TIME_OF_DAY = re.compile(r"([01]?\d|2[0-3])[:.]([0-5]\d)").fullmatch
_PRACTICE = "common practice"
_MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class Edge:
    """One side of the roof, from its corner to the next one anticlockwise."""

    kind: Annotated[EdgeKind, Given("kind of edge")]
    #: Mat turned up a wall or a raised edge, or turned down over a drip edge.
    turn_mm: Annotated[float, Given("mat turned up or down", "mm", 0, 1000, _PRACTICE)] = 0


@dataclass(frozen=True, slots=True)
class Boards:
    """How the deck is boarded."""

    length_mm: Annotated[float, Given("length of a board", "mm", 300, 6000, _PRACTICE)] = 2440
    width_mm: Annotated[float, Given("width of a board", "mm", 100, 3000, _PRACTICE)] = 1220
    edge: Annotated[Literal["square", "tongued"], Given("edge of the boards")] = "square"
    gap_mm: Annotated[float, Given("gap between boards", "mm", 0, 20, _PRACTICE)] = 3
    run: Annotated[Literal["along", "up"], Given("way the boards run")] = "along"
    #: Cut edges of tongued boards that meet another board, as measured on the deck.
    cut_joints_m: Annotated[
        tuple[float, ...] | None, Given("open joint at a cut edge", "m", 0.1, 100)
    ] = None


@dataclass(frozen=True, slots=True)
class Tape:
    """The tape over open joints."""

    width_mm: Annotated[float, TAPE_WIDTH.given] = TAPE_WIDTH.value
    carry_mm: Annotated[float, TAPE_CARRY.given] = TAPE_CARRY.value


@dataclass(frozen=True, slots=True)
class Bandage:
    """The strips over joints and trim edges."""

    width_mm: Annotated[float, BANDAGE_WIDTH.given] = BANDAGE_WIDTH.value
    #: Over a mitre or a trim join.
    scrap_mm: Annotated[float, Given("length of a scrap", "mm", 50, 600, _MEMORY)] = 150
    wrap_mm: Annotated[float, WRAP.given] = WRAP.value


@dataclass(frozen=True, slots=True)
class Trims:
    """The hollow section of a raised trim, where its end stays open."""

    end_width_mm: Annotated[float, Given("width of an open end", "mm", 10, 500, _MEMORY)] = 60
    end_height_mm: Annotated[float, Given("height of an open end", "mm", 10, 500, _MEMORY)] = 40


@dataclass(frozen=True, slots=True)
class Laminate:
    """The main laminate."""

    mat_g_per_m2: Annotated[float, MAT_WEIGHT.given] = MAT_WEIGHT.value
    layers: Annotated[int, Given("layers of mat", "", 1, 4, _PRACTICE)] = 1
    lap_mm: Annotated[float, MAT_LAP.given] = MAT_LAP.value
    ratio: Annotated[float, RESIN_TO_GLASS.given] = RESIN_TO_GLASS.value
    allowance_percent: Annotated[float, ALLOWANCE.given] = ALLOWANCE.value
    #: The way that a drop is rolled out.
    run: Annotated[Literal["along", "up"], Given("way the drops run")] = "along"
    over_mm: Annotated[float, Given("trimmed off a drop's end", "mm", 0, 300, _MEMORY)] = 50


@dataclass(frozen=True, slots=True)
class Mix:
    """The resin, its catalyst and the dose. The dose band is the data sheet's where it is known."""

    product: Annotated[str | None, Given("resin's name as you write it")] = None
    convention: Annotated[Convention, Given("convention of the dose")] = "by mass"
    percent: Annotated[float, CATALYST_DOSE.given] = CATALYST_DOSE.value
    #: Instead of a dose: the shortest gel time that will do.
    wanted_gel_min: Annotated[float | None, Given("gel time wanted", "min", 5, 180)] = None
    least_percent: Annotated[
        float, Given("least dose by mass", "%", 0.5, 6, DOSE_BAND.told_standing)
    ] = DOSE_BAND.low
    most_percent: Annotated[
        float, Given("most dose by mass", "%", 0.5, 6, DOSE_BAND.told_standing)
    ] = DOSE_BAND.high
    resin_kg_per_l: Annotated[float, RESIN_DENSITY.given] = RESIN_DENSITY.value
    catalyst_kg_per_l: Annotated[float, CATALYST_DENSITY.given] = CATALYST_DENSITY.value
    graduation_ml: Annotated[float, Given("graduation of the syringe", "ml", 0.05, 50)] = 1
    share: Annotated[float, WORKING_SHARE.given] = WORKING_SHARE.value
    mixing_min: Annotated[float, MIXING_TIME.given] = MIXING_TIME.value


@dataclass(frozen=True, slots=True)
class Cup:
    """A test cup, the first batch's own gel, or a data sheet's gel time; the dose is by mass."""

    minutes: Annotated[float, Given("gel time of the cup", "min", 1, 240)]
    at_c: Annotated[float, Given("temperature of the cup", "°C", 5, 35)]
    percent: Annotated[float, Given("dose of the cup by mass", "%", 0.5, 6)] = CATALYST_DOSE.value
    product: Annotated[str | None, Given("resin's name as you write it")] = None
    days_old: Annotated[int, Given("days since the cup", "", 0, 3650)] = 0
    #: The first batch on the roof replaces the cups.
    of: Annotated[Literal["test cup", "first batch", "data sheet"], Given("what gelled")] = (
        "test cup"
    )


@dataclass(frozen=True, slots=True)
class Topcoat:
    """The topcoat."""

    kg_per_m2: Annotated[float, Given("topcoat", "kg/m²", 0.3, 1.0, _PRACTICE)] = 0.5
    percent: Annotated[float, Given("dose of topcoat by mass", "%", 0.5, 6, _PRACTICE)] = 2
    kg_per_l: Annotated[float, Given("density of topcoat", "kg/L", 1.0, 1.6, _MEMORY)] = 1.2


@dataclass(frozen=True, slots=True)
class Crew:
    """Who lays the roof, and what they mix in."""

    people: Annotated[int, Given("hands on the job", "", 1, 12)] = 1
    pace_kg: Annotated[
        float | None, Given("resin that one person lays in ten minutes", "kg", 0.1, 10)
    ] = None
    beginner: Annotated[Literal["yes", "no"], Given("a beginner mixes")] = "no"
    beginner_l: Annotated[float, BEGINNER_BATCH.given] = BEGINNER_BATCH.value
    bucket_l: Annotated[float, Given("most in the bucket", "L", 0.5, 25, _MEMORY)] = 5
    start: Annotated[str | None, Given("start, as 08:30")] = None

    @property
    def start_minute(self) -> int | None:
        """The start in minutes after midnight; raises ValueError where it is no time of day."""
        if self.start is None:
            return None
        found = _TIME_OF_DAY(self.start.strip())
        if not found:
            raise ValueError(f"'{self.start}' is no time of day. Write it like 08:30.")
        return int(found[1]) * 60 + int(found[2])


@dataclass(frozen=True, slots=True)
class Weather:
    """The day as it was measured and looked at."""

    air_c: Annotated[float | None, Given("air temperature", "°C", -20, 50)] = None
    deck_c: Annotated[float | None, Given("deck temperature", "°C", -20, 60)] = None
    humidity_percent: Annotated[float | None, Given("humidity", "%", 1, 100)] = None
    timber_percent: Annotated[float | None, Given("timber meter", "%", 5, 60)] = None
    damp: Annotated[Looked, Given("damp deck")] = "not looked at"
    rain: Annotated[Looked, Given("rain before it sets")] = "not looked at"
    sun: Annotated[Looked, Given("sun on the deck")] = "not looked at"
    wind: Annotated[Looked, Given("wind that lifts mat")] = "not looked at"

    @property
    def gel_c(self) -> float | None:
        """The temperature that gel times are told at: the warmer of air and deck.

        Planning takes the soonest. Where either is too cold for any time, it is the colder.
        """
        if self.air_c is None:
            return None
        both = (self.air_c, self.air_c if self.deck_c is None else self.deck_c)
        return min(both) if min(both) < COLDEST.value else max(both)


@dataclass(frozen=True, slots=True)
class Fall:
    """The fall, and the edge that water runs to."""

    ratio: Annotated[float, Given("fall of one in", "", 10, 200, "published: NHBC ch. 7.1")] = 40
    towards_edge: Annotated[int, Given("edge that water runs to", "", 1, 60)] = 1
    #: What the level and the spacer showed over the whole run.
    measured_mm: Annotated[float | None, Given("drop as measured", "mm", 1, 5000)] = None


@dataclass(frozen=True, slots=True)
class Sold:
    """The sizes to buy in; stock.toml gives them where the roof doesn't."""

    tape_roll_m: Annotated[float, Given("roll of tape", "m", 5, 200)]
    bandage_roll_m: Annotated[float, Given("roll of bandage", "m", 5, 200)]
    mat_roll_mm: Annotated[float, Given("width of a roll of mat", "mm", 200, 3000)]
    mat_roll_m: Annotated[float, Given("roll of mat", "m", 5, 200)]
    trim_m: Annotated[float, Given("length of a trim", "m", 0.5, 12)]
    resin_tin_kg: Annotated[float, Given("tin of resin", "kg", 0.5, 250)]
    catalyst_bottle_ml: Annotated[float, Given("bottle of catalyst", "ml", 10, 5000)]
    topcoat_tin_kg: Annotated[float, Given("tin of topcoat", "kg", 0.5, 250)]


@dataclass(frozen=True, slots=True)
class RoofDescription:
    """One roof: its shape, and everything that was given or assumed about the day."""

    title: str
    #: Anticlockwise.
    corners: tuple[Point, ...]
    #: One for each corner: the side from it to the next.
    edges: tuple[Edge, ...]
    sold: Sold
    openings: tuple[Opening, ...] = ()
    #: What a corner makes, by its number from 1, where the rule is overruled.
    overruled: Mapping[int, CornerMakes] = field(default_factory=dict)
    #: The edge where the ladder stands, from 1: it is laid last.
    way_off_edge: int = 1
    boards: Boards = Boards()
    tape: Tape = Tape()
    bandage: Bandage = Bandage()
    trims: Trims = Trims()
    laminate: Laminate = Laminate()
    mix: Mix = Mix()
    cups: tuple[Cup, ...] = ()
    topcoat: Topcoat = Topcoat()
    crew: Crew = Crew()
    weather: Weather = Weather()
    fall: Fall = Fall()
    #: The fields that somebody gave, as "mix.percent"; the others are defaults.
    given: frozenset[str] = frozenset()

    def aged(self, days: int) -> "RoofDescription":
        """Return the same roof so many days later: its test cups are that much older."""
        cups = tuple(replace(cup, days_old=cup.days_old + max(0, days)) for cup in self.cups)
        return replace(self, cups=cups)


#: The parts of a description that are tables of a file and groups of a form.
PARTS: dict[str, type] = {
    "boards": Boards,
    "tape": Tape,
    "bandage": Bandage,
    "trims": Trims,
    "laminate": Laminate,
    "mix": Mix,
    "topcoat": Topcoat,
    "crew": Crew,
    "weather": Weather,
    "fall": Fall,
    "sold": Sold,
}


@cache
def fields_of(part: type) -> dict[str, Parameter]:
    """Return the fields of a part of a description, with their words, units and ranges."""
    return read_parameters(part)
