"""The band that a gel time lies in, from one test cup, and the dose for a gel time that is wanted.

Nobody knows a resin's own activation energy and order on a roof. So each end of the band takes
whichever of two energies and two orders reaches furthest; a roof is planned with the short end.
"""

from typing import Annotated, Literal

from trainer.engine.cure import (
    CupDose,
    CupTemperature,
    DoseNow,
    GelTime,
    TemperatureNow,
    in_kelvin,
    strength,
    warmth,
)
from trainer.engine.errors import Refused
from trainer.engine.materials import CATALYST_DOSE, HIGH_ENERGY, HIGH_ORDER, LOW_ENERGY, LOW_ORDER
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Reach = Literal["min", "max"]
_REACHES = {"min": min, "max": max}
_BY_TEMPERATURE = "times as long, by temperature"
_BY_DOSE = "times as long, by dose"

_LOW_ENERGY = Part(LOW_ENERGY.value, LOW_ENERGY.unit, LOW_ENERGY.words)
_HIGH_ENERGY = Part(HIGH_ENERGY.value, HIGH_ENERGY.unit, HIGH_ENERGY.words)
_LOW_ORDER = Part(LOW_ORDER.value, LOW_ORDER.unit, LOW_ORDER.words)
_HIGH_ORDER = Part(HIGH_ORDER.value, HIGH_ORDER.unit, HIGH_ORDER.words)


@calculation
def gel_short_end(
    cup_min: GelTime,
    cup_c: CupTemperature,
    cup_percent: CupDose,
    now_c: TemperatureNow,
    now_percent: DoseNow,
) -> Calculation:
    """Return the minutes after which a batch may gel at the soonest, from a test cup.

    temperature = the least factor of Arrhenius at 40 and 82.6 kJ/mol; dose = the least of
    (cup ÷ now) to the powers 0.5 and 1; gel = cup × temperature × dose. 40 is the foot of a
    published band (J. Appl. Polym. Sci. 102, 1870, 2006, abstract); the others are common
    practice and from memory.

    Args:
        cup_min: gel time of the cup, 1–240 min.
        cup_c: temperature of the cup, 5–35 °C.
        cup_percent: dose of the cup, 0.5–6 % by mass.
        now_c: temperature now, 5–35 °C.
        now_percent: dose now, 0.5–6 % by mass.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (yield from _end("min", cup_min, cup_c, cup_percent, now_c, now_percent))


@calculation
def gel_long_end(
    cup_min: GelTime,
    cup_c: CupTemperature,
    cup_percent: CupDose,
    now_c: TemperatureNow,
    now_percent: DoseNow,
) -> Calculation:
    """Return the minutes after which a batch gels at the latest, from a test cup.

    As gel_short_end, with the greatest of the factors. Nothing is planned with it.

    Args:
        cup_min: gel time of the cup, 1–240 min.
        cup_c: temperature of the cup, 5–35 °C.
        cup_percent: dose of the cup, 0.5–6 % by mass.
        now_c: temperature now, 5–35 °C.
        now_percent: dose now, 0.5–6 % by mass.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (yield from _end("max", cup_min, cup_c, cup_percent, now_c, now_percent))


def _end(
    reach: Reach,
    cup_min: float,
    cup_c: float,
    cup_percent: float,
    now_c: float,
    now_percent: float,
) -> Calculation:
    temperature = yield from _temperature(reach, cup_c, now_c)
    low = yield strength(
        "low_order", f"{_BY_DOSE}, least order", _LOW_ORDER, cup_percent, now_percent
    )
    high = yield strength(
        "high_order", f"{_BY_DOSE}, greatest order", _HIGH_ORDER, cup_percent, now_percent
    )
    dose = yield _furthest("dose", _BY_DOSE, reach, low, high)
    return (
        yield Line(
            "gel",
            "gel at the soonest" if reach == "min" else "gel at the latest",
            "min",
            cup_min * temperature * dose,
            "cup * temperature * dose",
            {
                "cup": Part(cup_min, "min", "gel time of the cup"),
                "temperature": Part(temperature, "", _BY_TEMPERATURE),
                "dose": Part(dose, "", _BY_DOSE),
            },
        )
    )


def _temperature(reach: Reach, cup_c: float, now_c: float) -> Calculation:
    """Yield the lines of the factor by temperature, and return the one that reaches furthest."""
    cup_k = yield in_kelvin("cup_k", "temperature of the cup", cup_c)
    now_k = yield in_kelvin("now_k", "temperature now", now_c)
    words = f"{_BY_TEMPERATURE}, least energy"
    low = yield warmth("low_energy", words, _LOW_ENERGY, cup_k, now_k)
    words = f"{_BY_TEMPERATURE}, greatest energy"
    high = yield warmth("high_energy", words, _HIGH_ENERGY, cup_k, now_k)
    return (yield _furthest("temperature", _BY_TEMPERATURE, reach, low, high, "energy"))


def _furthest(
    key: str, words: str, reach: Reach, low: float, high: float, of: str = "order"
) -> Line:
    parts = {
        "low": Part(low, "", f"that of the least {of}"),
        "high": Part(high, "", f"that of the greatest {of}"),
    }
    return Line(key, words, "", _REACHES[reach](low, high), f"{reach}(low, high)", parts)


@calculation
def dose_for_gel(
    cup_min: GelTime,
    cup_c: CupTemperature,
    cup_percent: CupDose,
    now_c: TemperatureNow,
    wanted_min: Annotated[float, Given("gel time wanted, at the soonest", "min", 5, 180)],
) -> Calculation:
    """Return the percent by mass at which a batch gels no sooner than wanted, from a test cup.

    shortest = cup × the least factor by temperature; share = shortest ÷ wanted; dose = dose of
    the cup × the least of share to the powers 1 ÷ 0.5 and 1 ÷ 1. gel_short_end at that dose is
    the time wanted.

    Args:
        cup_min: gel time of the cup, 1–240 min.
        cup_c: temperature of the cup, 5–35 °C.
        cup_percent: dose of the cup, 0.5–6 % by mass.
        now_c: temperature now, 5–35 °C.
        wanted_min: gel time wanted, 5–180 min.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the dose would lie outside 0.5–6 % by mass.
    """
    temperature = yield from _temperature("min", cup_c, now_c)
    shortest = yield Line(
        "shortest",
        "gel at the soonest, at the dose of the cup",
        "min",
        cup_min * temperature,
        "cup * temperature",
        {
            "cup": Part(cup_min, "min", "gel time of the cup"),
            "temperature": Part(temperature, "", _BY_TEMPERATURE),
        },
    )
    share = yield Line(
        "share",
        "that time in the time wanted",
        "",
        shortest / wanted_min,
        "shortest / wanted",
        {
            "shortest": Part(shortest, "min", "gel at the soonest"),
            "wanted": Part(wanted_min, "min", "gel time wanted"),
        },
    )
    low = yield _times_the_dose("low_order", "least order", _LOW_ORDER, share)
    high = yield _times_the_dose("high_order", "greatest order", _HIGH_ORDER, share)
    times = yield _furthest("times", "times the dose of the cup", "min", low, high)
    # Rounded, so that a time wanted at the very edge isn't refused for the dust of floats.
    if not CATALYST_DOSE.low <= round(cup_percent * times, 9) <= CATALYST_DOSE.high:
        raise Refused(
            f"No dose from {CATALYST_DOSE.low:g} to {CATALYST_DOSE.high:g} % by mass gels then. "
            "Want another time, or take another day."
        )
    return (
        yield Line(
            "dose",
            "dose by mass",
            "%",
            cup_percent * times,
            "cup * times",
            {
                "cup": Part(cup_percent, "%", "dose of the cup"),
                "times": Part(times, "", "times the dose of the cup"),
            },
        )
    )


def _times_the_dose(key: str, words: str, order: Part, share: float) -> Line:
    parts = {"share": Part(share, "", "that time in the time wanted"), "order": order}
    words = f"times the dose of the cup, {words}"
    return Line(key, words, "", share ** (1 / order.value), "share ** (1 / order)", parts)
