"""Batches: how long there is, how much can be laid in it, and how to share the resin out."""

from dataclasses import replace
from typing import Annotated

from trainer.engine.conversions import rounded_up, whole_g
from trainer.engine.errors import Refused
from trainer.engine.materials import (
    BEGINNER_BATCH,
    LEAST_WORKING_TIME,
    MIXING_TIME,
    RESIN_DENSITY,
    WORKING_SHARE,
)
from trainer.engine.resin import weighed
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

_TEN_MINUTES = Part(10, "min", "ten minutes")


@calculation
def equal_batches(
    resin_kg: Annotated[float, Given("resin", "kg", 0.05, 2000)],
    limit_l: Annotated[
        float, replace(BEGINNER_BATCH.given, words="most in one batch")
    ] = BEGINNER_BATCH.value,
    resin_kg_per_l: Annotated[float, RESIN_DENSITY.given] = RESIN_DENSITY.value,
) -> Calculation:
    """Return the kilograms in each of the fewest equal batches that keep under a limit.

    batches = resin ÷ limit, in whole grams, rounded up; batch = resin ÷ batches. Equal ones
    leave no small remainder at the end. One litre for a beginner is common practice.

    Args:
        resin_kg: all the resin, 0.05–2000 kg.
        limit_l: the most in one batch, 0.1–25 L.
        resin_kg_per_l: density of the liquid resin, 0.95–1.30 kg/L.

    Raises:
        OutOfRange: an argument outside its range.
    """
    most = Part(limit_l, "L", "most in one batch")
    limit = yield weighed("limit", "most in one batch", most, resin_kg_per_l)
    resin_g, limit_g = whole_g(resin_kg), whole_g(limit)
    batches = yield Line(
        "batches",
        "number of batches",
        "batches",
        rounded_up(resin_g, limit_g),
        "ceil(resin / limit)",
        {
            "resin": Part(resin_g, "g", "all the resin"),
            "limit": Part(limit_g, "g", "most in one batch"),
        },
    )
    return (
        yield Line(
            "batch",
            "resin in each batch",
            "kg",
            resin_kg / batches,
            "resin / batches",
            {
                "resin": Part(resin_kg, "kg", "all the resin"),
                "batches": Part(batches, "", "number of batches"),
            },
        )
    )


@calculation
def working_time(
    gel_min: Annotated[float, Given("gel time", "min", 11, 180)],
    share: Annotated[float, WORKING_SHARE.given] = WORKING_SHARE.value,
    mixing_min: Annotated[float, MIXING_TIME.given] = MIXING_TIME.value,
) -> Calculation:
    """Return the minutes in which a batch can be laid, from its gel time.

    usable = gel time × share; working = usable − mixing. Common practice: two thirds of the
    short gel time, less two minutes of mixing.

    Args:
        gel_min: gel time from adding the catalyst, the short one of a band, 11–180 min.
        share: the part of it that is used, 0.4–0.8.
        mixing_min: time to stir and set out, 0–5 min.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: under five minutes are left.
    """
    usable = yield Line(
        "usable",
        "usable part of the gel time",
        "min",
        gel_min * share,
        "gel * share",
        {
            "gel": Part(gel_min, "min", "gel time"),
            "share": Part(share, "", "share of it"),
        },
    )
    if usable - mixing_min < LEAST_WORKING_TIME.value:
        raise Refused(
            f"Under {LEAST_WORKING_TIME.value:g} minutes would be left to work. "
            "Take a smaller dose or another day."
        )
    return (
        yield Line(
            "working",
            "working time",
            "min",
            usable - mixing_min,
            "usable - mixing",
            {
                "usable": Part(usable, "min", "usable part"),
                "mixing": Part(mixing_min, "min", "mixing"),
            },
        )
    )


@calculation
def batch_for_pace(
    working_min: Annotated[float, Given("working time", "min", 5, 180)],
    pace_kg: Annotated[float, Given("pace for each person in ten minutes", "kg", 0.1, 10)],
    people: Annotated[int, Given("people laying", "", 1, 12)] = 1,
) -> Calculation:
    """Return the kilograms that a crew lays and consolidates in the working time.

    spells = working time ÷ ten minutes; batch = spells × pace × people. The pace is timed on
    the first batch: there is no default.

    Args:
        working_min: working time, 5–180 min.
        pace_kg: resin that one person lays and consolidates in ten minutes, 0.1–10 kg.
        people: hands on the roller, 1–12.

    Raises:
        OutOfRange: an argument outside its range.
    """
    spells = yield Line(
        "spells",
        "spells of ten minutes",
        "",
        working_min / _TEN_MINUTES.value,
        "working / ten_minutes",
        {"working": Part(working_min, "min", "working time"), "ten_minutes": _TEN_MINUTES},
    )
    return (
        yield Line(
            "batch",
            "resin that can be laid in time",
            "kg",
            spells * pace_kg * people,
            "spells * pace * people",
            {
                "spells": Part(spells, "", "spells of ten minutes"),
                "pace": Part(pace_kg, "kg", "pace for each person"),
                "people": Part(people, "", "people"),
            },
        )
    )
