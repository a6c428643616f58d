"""When a batch may gel, from test cups of the same product; or the reasons why nobody can tell.

A roof is planned with the short end of the band: the soonest that any cup speaks of.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import Any

from trainer.engine.band import dose_for_gel, gel_long_end, gel_short_end
from trainer.engine.batches import working_time
from trainer.engine.errors import Refused
from trainer.engine.materials import COLDEST, COOL, DOSE_BAND, HOTTEST, MIXING_TIME, WORKING_SHARE
from trainer.engine.plans.cup_fit import CupFit, TestCup, fit_cups
from trainer.engine.plans.description import Mix
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.units import show

__all__ = [
    "CupFit",
    "GelTimes",
    "NoTimes",
    "TestCup",
    "dose_for_wanted",
    "fit_cups",
    "gel_of",
    "gel_times",
]

Band = tuple[float, float]
USUAL_BAND: Band = (DOSE_BAND.low, DOSE_BAND.high)
NO_TEMPERATURE = "No temperature was given, so no gel time can be told."
_BUCKET = "A full bucket gels sooner than a cup, and a film on the roof later."
# What a dose may lie off an edge of its band, having been turned to millilitres and back.
_DUST = 1e-9


@dataclass(frozen=True, slots=True)
class GelTimes:
    """The band that a gel time lies in, and how long a batch can be worked."""

    #: The soonest that any cup speaks of: the roof is planned with it.
    short: Figure
    #: The latest that any cup speaks of.
    long: Figure
    #: Minutes to lay the batch in, from the short end.
    working: Figure
    cautions: tuple[str, ...]
    used: tuple[TestCup, ...]
    #: Sentences on cups that were not used, because they are of another product.
    refused: tuple[str, ...]
    #: What the cups fit, shown beside the times and never planned with.
    fit: CupFit | None

    @property
    def goes_by(self) -> TestCup:
        """The cup whose short end is the soonest: the clock goes by it."""
        return next(cup for cup in self.used if _of(cup).items() <= self.short.givens.items())

    @property
    def whole_minutes(self) -> dict[str, int]:
        """Working time and soonest gel rounded down, the latest up: never more than is known."""
        return {
            "working": floor(self.working.value + _DUST),
            "short": floor(self.short.value + _DUST),
            "long": ceil(self.long.value - _DUST),
        }

    @property
    def lay_by(self) -> float:
        """Minutes from catalyst in to when laying stops: the working time, and mixing before it."""
        return self.working.working.figures["usable"]


@dataclass(frozen=True, slots=True)
class NoTimes:
    """No gel time can be told, and why: sentences for whoever asked."""

    reasons: tuple[str, ...]
    #: What the temperature warns of all the same.
    cautions: tuple[str, ...] = ()


def gel_of(
    mix: Mix, percent: float, now_c: float | None, cups: Sequence[TestCup]
) -> GelTimes | NoTimes:
    """Return when resin mixed so may gel, at a dose by mass; no times without a temperature."""
    if now_c is None:
        return NoTimes((NO_TEMPERATURE,))
    return gel_times(
        cups,
        mix.product or "",
        now_c,
        percent,
        band=(mix.least_percent, mix.most_percent),
        share=mix.share,
        mixing_min=mix.mixing_min,
    )


def gel_times(
    cups: Sequence[TestCup],
    product: str,
    now_c: float,
    percent: float,
    *,
    band: Band = USUAL_BAND,
    share: float = WORKING_SHARE.value,
    mixing_min: float = MIXING_TIME.value,
) -> GelTimes | NoTimes:
    """Return when a batch at so many °C and percent by mass may gel, or why nobody can tell.

    Short is the least of the cups' short ends, long the greatest of their long ends, and the
    working time is taken from the short one. The usual dose of 1 to 4 % and the temperatures
    of 5 and 35 °C are common practice; `band` is the data sheet's where it is known.
    """
    used = cups_to_go_by(cups, product)
    reasons = (*_no_cup(used, product), *_no_weather(now_c), *_no_dose(percent, band))
    if reasons:
        return NoTimes(reasons, tuple(_cool(now_c)))
    now = {"now_c": now_c, "now_percent": percent}
    short, long = _short(used, now), _long(used, now)
    try:
        working = worked(
            "gel.working",
            "working time",
            working_time,
            gel_min=short.value,
            share=share,
            mixing_min=mixing_min,
        )
    except Refused as refused:
        return NoTimes((str(refused),), tuple(_cool(now_c)))
    cautions = tuple(_cautions(used, now_c))
    refused_cups = tuple(_of_another_product(cups, product))
    return GelTimes(short, long, working, cautions, used, refused_cups, fit_cups(used))


def dose_for_wanted(
    cups: Sequence[TestCup],
    product: str,
    now_c: float,
    wanted_min: float,
    band: Band = USUAL_BAND,
) -> Figure | NoTimes:
    """Return the dose by mass at which a batch gels no sooner than wanted, or why there is none.

    It is the least of the doses that the cups speak of, and lies within the band.
    """
    used = cups_to_go_by(cups, product)
    reasons = (*_no_cup(used, product), *_no_weather(now_c))
    if reasons:
        return NoTimes(reasons)
    least, most = (_short(used, {"now_c": now_c, "now_percent": dose}).value for dose in band)
    if least < wanted_min:
        return NoTimes((_too_soon(band[0], least),))
    if most > wanted_min:
        return NoTimes((_too_late(band[1], most),))
    # A cup that would want more than the most in the band sets no limit within it.
    limiting = [
        cup
        for cup in used
        if _short((cup,), {"now_c": now_c, "now_percent": band[1]}).value <= wanted_min
    ]
    doses = [_dose(cup, now_c, wanted_min) for cup in limiting]
    return min(doses, key=lambda dose: dose.value)


def cups_to_go_by(cups: Sequence[TestCup], product: str) -> tuple[TestCup, ...]:
    """Return the cups of this product; a batch's own gel replaces whatever is no younger.

    It replaces a data sheet's gel time too, however long ago.
    """
    own = tuple(cup for cup in cups if cup.is_of(product))
    batches = [cup.days_old for cup in own if cup.from_batch]
    if not batches:
        return own
    last = min(batches)
    return tuple(
        cup
        for cup in own
        if (cup.days_old < last and not cup.from_sheet) or (cup.from_batch and cup.days_old == last)
    )


def _short(cups: Sequence[TestCup], now: dict[str, float]) -> Figure:
    words = "gel of a cup at the soonest"
    ends = [worked("gel.short", words, gel_short_end, **_of(cup), **now) for cup in cups]
    return min(ends, key=lambda end: end.value)


def _long(cups: Sequence[TestCup], now: dict[str, float]) -> Figure:
    words = "gel of a cup at the latest"
    ends = [worked("gel.long", words, gel_long_end, **_of(cup), **now) for cup in cups]
    return max(ends, key=lambda end: end.value)


def _dose(cup: TestCup, now_c: float, wanted_min: float) -> Figure:
    words = "dose for the gel time wanted"
    return worked(
        "dose.chosen", words, dose_for_gel, **_of(cup), now_c=now_c, wanted_min=wanted_min
    )


def _of(cup: TestCup) -> dict[str, Any]:
    return {"cup_min": cup.minutes, "cup_c": cup.air_c, "cup_percent": cup.percent}


def _no_cup(used: Sequence[TestCup], product: str) -> Iterator[str]:
    if not used:
        name = f" of {product.strip()}" if product.strip() else ""
        yield f"There is no test cup{name} to go by. Start a test cup."


def _no_weather(now_c: float) -> Iterator[str]:
    now, coldest, hottest = (show(each, "°C") for each in (now_c, COLDEST.value, HOTTEST.value))
    if now_c < COLDEST.value:
        yield f"It is {now}. No gel time is told below {coldest}: wait for a warmer day."
    if now_c > HOTTEST.value:
        yield f"It is {now}. No gel time is told above {hottest}: wait for a cooler hour."


def _no_dose(percent: float, band: Band) -> Iterator[str]:
    least, most = band
    if not least - _DUST <= percent <= most + _DUST:
        dose, low, high = (show(each, "%") for each in (percent, least, most))
        yield f"The dose is {dose} by mass. No gel time is told outside {low} to {high}."


def _too_soon(percent: float, minutes: float) -> str:
    dose, time = show(percent, "%"), show(round(minutes), "min")
    return f"Even at {dose} by mass it may gel after {time}. Want less time, or another day."


def _too_late(percent: float, minutes: float) -> str:
    dose, time = show(percent, "%"), show(round(minutes), "min")
    return f"Even at {dose} by mass it takes {time} or more. Want more time, or another day."


def _cautions(used: Sequence[TestCup], now_c: float) -> Iterator[str]:
    oldest = max(used, key=_days_old)
    if _days_old(oldest):
        yield f"A cup is from {oldest.age}. Time a new one today."
    if all(cup.from_sheet for cup in used):
        yield "The gel time is a data sheet's, and of no cup of yours. Time a cup today."
    yield from _cool(now_c)
    yield _BUCKET


def _days_old(cup: TestCup) -> int:
    return 0 if cup.from_sheet else cup.days_old


def _cool(now_c: float) -> Iterator[str]:
    if COLDEST.value <= now_c < COOL.value:
        coldest, cool = show(COLDEST.value, "°C"), show(COOL.value, "°C")
        yield f"Between {coldest} and {cool} resin gels late and cures slowly. Take care."


def _of_another_product(cups: Sequence[TestCup], product: str) -> Iterator[str]:
    others = dict.fromkeys(cup.product.strip() for cup in cups if not cup.is_of(product))
    for name in others:
        yield f"The cup of {name or 'a resin without a name'} is another product. It tells nothing."
