"""The figures of a plan that questions may be asked on, each under a name of its own.

A roof without a pipe, an open end or a test cup lacks what belongs to them. Figures are rounded
to what a page prints, so that whoever works with what they read is right.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial
from operator import attrgetter
from typing import Literal

from trainer.engine.plans.extents import (
    ALONG,
    UP,
    across_drops_m,
    along_drops_m,
    ell_m,
    extent_m,
    lacking_m,
    rectangle_m,
)
from trainer.engine.plans.fact_readers import (
    MOST_TOLD,
    Reader,
    Value,
    beginners_litres,
    few,
    gel_temperature,
    given,
    hollow,
    joints,
    lap_run,
    longest,
    of_cup,
    of_gel,
    of_stage,
    of_turned,
    paced_minutes,
    sides,
    some,
    strips,
    taped,
    topcoat_area,
    total,
    trim_pieces,
    trimmed,
)
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.units import as_shown

__all__ = ["FACTS", "MOST_TOLD", "Fact", "Facts", "Value", "facts_for_questions"]

Facts = Mapping[str, Value]


@dataclass(frozen=True, slots=True)
class Fact:
    """One figure of a plan: what it is, in which unit, and how it is read off."""

    name: str
    words: str
    unit: str
    read: Reader
    shape: Literal["number", "count", "list"] = "number"


def facts_for_questions(plan: RoofPlan) -> Facts:
    """Return the figures that this plan has, by the names that questions know them under."""
    found = ((name, fact.read(plan)) for name, fact in FACTS.items())
    return {name: _as_printed(value) for name, value in found if value is not None}


def _as_printed(value: Value) -> Value:
    if isinstance(value, tuple):
        return tuple(as_shown(each) for each in value)
    return value if isinstance(value, int) else as_shown(value)


_FACTS = (
    Fact("joints.lengths_m", "open joints one by one", "m", few(joints), "list"),
    Fact("joints.total_m", "open joints in all", "m", total(joints)),
    Fact("joints.longest_m", "longest open joint", "m", longest(joints)),
    Fact(
        "joints.meeting_ends",
        "ends of joints that meet another",
        "",
        some("deck.meeting_ends"),
        "count",
    ),
    Fact("tape.width_mm", "width of the tape", "mm", taped("tape.width_mm")),
    Fact("tape.carry_mm", "tape past a meeting joint", "mm", taped("tape.carry_mm")),
    Fact("tape.roll_m", "roll of tape", "m", taped("sold.tape_roll_m")),
    Fact("sides.lengths_m", "sides of the roof", "m", few(sides), "list"),
    Fact("sides.longest_m", "longest side", "m", longest(sides)),
    Fact("trims.pieces_m", "pieces of the commonest trim", "m", few(trim_pieces), "list"),
    Fact("trims.longest_run_m", "commonest trim", "m", total(trimmed)),
    Fact("trims.stock_m", "length of a trim as sold", "m", given("sold.trim_m")),
    Fact("trims.open_ends", "open ends", "", some("trims.open_ends"), "count"),
    Fact("trims.end_width_mm", "width of an open end", "mm", hollow("trims.end_width_mm")),
    Fact("trims.end_height_mm", "height of an open end", "mm", hollow("trims.end_height_mm")),
    Fact("bandage.straight_m", "strips, laps not counted", "m", total(strips)),
    Fact("bandage.length_m", "bandage to cut", "m", attrgetter("bandage.length.value")),
    Fact("bandage.width_mm", "width of the bandage", "mm", given("bandage.width_mm")),
    Fact("bandage.roll_m", "roll of bandage", "m", given("sold.bandage_roll_m")),
    Fact("deck.area_m2", "area inside the edges", "m²", attrgetter("deck.area.value")),
    Fact("deck.net_m2", "area to laminate", "m²", attrgetter("deck.net.value")),
    Fact("deck.length_m", "reach along the roof", "m", partial(extent_m, axis=ALONG)),
    Fact("deck.width_m", "reach up the roof", "m", partial(extent_m, axis=UP)),
    Fact("rectangle.length_m", "length of a rectangle", "m", partial(rectangle_m, axis=ALONG)),
    Fact("rectangle.width_m", "width of a rectangle", "m", partial(rectangle_m, axis=UP)),
    Fact("ell.length_m", "length of an L", "m", partial(ell_m, axis=ALONG)),
    Fact("ell.width_m", "width of an L", "m", partial(ell_m, axis=UP)),
    Fact("ell.missing_length_m", "length of what an L lacks", "m", partial(lacking_m, axis=ALONG)),
    Fact("ell.missing_width_m", "width of what an L lacks", "m", partial(lacking_m, axis=UP)),
    Fact("mat.run_m", "reach across the drops", "m", across_drops_m),
    Fact("mat.longest_drop_m", "longest drop on the roof", "m", along_drops_m),
    Fact("mat.roll_mm", "width of a roll of mat", "mm", given("sold.mat_roll_mm")),
    Fact("mat.roll_m", "roll of mat", "m", given("sold.mat_roll_m")),
    Fact("mat.lap_mm", "lap of mat on mat", "mm", given("laminate.lap_mm")),
    Fact("mat.g_per_m2", "weight of the mat", "g/m²", given("laminate.mat_g_per_m2")),
    Fact("mat.layers", "layers of mat", "", given("laminate.layers"), "count"),
    Fact("mat.lap_run_m", "laps of all layers end to end", "m", lap_run),
    Fact("mat.laid_m2", "mat laid, laps counted twice", "m²", attrgetter("mat.laid.value")),
    Fact("mat.length_m", "mat off the roll for the drops", "m", attrgetter("mat.length.value")),
    Fact("mix.ratio", "resin to glass", "", given("laminate.ratio")),
    Fact("mix.allowance_percent", "allowance", "%", given("laminate.allowance_percent")),
    Fact("mix.percent", "dose by mass", "%", attrgetter("dose.by_mass.value")),
    Fact("mix.resin_kg_per_l", "density of the resin", "kg/L", given("mix.resin_kg_per_l")),
    Fact(
        "mix.catalyst_kg_per_l", "density of the catalyst", "kg/L", given("mix.catalyst_kg_per_l")
    ),
    Fact("mix.share", "share of the gel time", "", given("mix.share")),
    Fact("mix.mixing_min", "minutes of mixing", "min", given("mix.mixing_min")),
    Fact("stages.bandage_kg", "resin for the bandage", "kg", of_stage("bandage", "resin")),
    Fact("stages.turned_kg", "resin for edges and collars", "kg", of_stage("turned", "resin")),
    Fact("stages.laminate_kg", "resin for the laminate", "kg", of_stage("laminate", "resin")),
    Fact("stages.topcoat_kg", "topcoat", "kg", of_stage("topcoat", "resin")),
    Fact(
        "stages.bandage_batch_kg", "one batch for the bandage", "kg", of_stage("bandage", "share")
    ),
    Fact(
        "stages.laminate_batch_kg", "one batch of the laminate", "kg", of_stage("laminate", "share")
    ),
    Fact(
        "stages.laminate_batch_l", "one batch of the laminate", "L", of_stage("laminate", "litres")
    ),
    Fact("cup.gel_min", "gel time of the cup that the clock goes by", "min", of_cup("minutes")),
    Fact("cup.at_c", "temperature of that cup", "°C", of_cup("air_c")),
    Fact("cup.percent", "dose of that cup by mass", "%", of_cup("percent")),
    Fact("gel.at_c", "temperature that gel is told at", "°C", gel_temperature),
    Fact("gel.short_min", "gel at the soonest", "min", of_gel("short")),
    Fact("gel.working_min", "working time", "min", of_gel("working")),
    Fact("crew.bucket_l", "most in the bucket", "L", given("crew.bucket_l")),
    Fact("crew.beginner_l", "most that a beginner mixes", "L", beginners_litres),
    Fact("crew.working_min", "working time where the pace sets the batch", "min", paced_minutes),
    Fact("crew.people", "hands on the job", "", given("crew.people"), "count"),
    Fact("crew.pace_kg", "resin one lays in ten minutes", "kg", given("crew.pace_kg")),
    Fact("weather.air_c", "air temperature", "°C", given("weather.air_c")),
    Fact("weather.deck_c", "deck temperature", "°C", given("weather.deck_c")),
    Fact("weather.humidity_percent", "humidity", "%", given("weather.humidity_percent")),
    Fact("fall.run_m", "run that the water takes", "m", attrgetter("fall.run_m")),
    Fact("fall.ratio", "fall of one in", "", given("fall.ratio")),
    Fact("fall.measured_mm", "drop as measured", "mm", given("fall.measured_mm")),
    Fact(
        "upstand.length_m", "length of the largest upstand", "m", of_turned("upstand", "length_m")
    ),
    Fact(
        "upstand.height_mm",
        "height of the largest upstand",
        "mm",
        of_turned("upstand", "height_mm"),
    ),
    Fact(
        "turn_down.length_m",
        "length of the largest turn-down",
        "m",
        of_turned("turn-down", "length_m"),
    ),
    Fact(
        "turn_down.turn_mm",
        "height of the largest turn-down",
        "mm",
        of_turned("turn-down", "turn_mm"),
    ),
    Fact(
        "openings.pipe_mm", "diameter of the largest pipe", "mm", of_turned("pipe", "diameter_mm")
    ),
    Fact("openings.pipe_up_mm", "collar up the largest pipe", "mm", of_turned("pipe", "up_mm")),
    Fact(
        "openings.outlet_mm",
        "diameter of the largest outlet",
        "mm",
        of_turned("outlet", "diameter_mm"),
    ),
    Fact(
        "openings.kerb_length_mm",
        "length of the largest rooflight",
        "mm",
        of_turned("rooflight", "length_mm"),
    ),
    Fact(
        "openings.kerb_width_mm",
        "width of the largest rooflight",
        "mm",
        of_turned("rooflight", "width_mm"),
    ),
    Fact(
        "openings.kerb_mm", "kerb of the largest rooflight", "mm", of_turned("rooflight", "up_mm")
    ),
    Fact("topcoat.area_m2", "area to topcoat", "m²", topcoat_area),
    Fact("topcoat.kg_per_m2", "topcoat on a square metre", "kg/m²", given("topcoat.kg_per_m2")),
    Fact("topcoat.percent", "dose of topcoat by mass", "%", given("topcoat.percent")),
)
#: Every fact by its name: what a question may ask for.
FACTS: Mapping[str, Fact] = {fact.name: fact for fact in _FACTS}
