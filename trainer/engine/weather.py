"""Weather as it bears on a deck: where dew falls, and how far the surface is above that."""

from math import log
from typing import Annotated

from trainer.engine.materials import DEW_SCALE, DEW_SLOPE
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

Air = Annotated[float, Given("air temperature", "°C", -20, 50)]
Humidity = Annotated[float, Given("humidity", "%", 1, 100)]

_SLOPE = Part(DEW_SLOPE.value, DEW_SLOPE.unit, DEW_SLOPE.words)
_SCALE = Part(DEW_SCALE.value, DEW_SCALE.unit, DEW_SCALE.words)


@calculation
def dew_point(air_c: Air, humidity_percent: Humidity) -> Calculation:
    """Return the dew point in °C from the air temperature and the relative humidity.

    gamma = ln(humidity ÷ 100) + 17.625 × air ÷ (243.04 + air);
    dew = 243.04 × gamma ÷ (17.625 − gamma), both temperatures in °C above 0 °C. The Magnus
    form with the figures of Alduchov & Eskridge, 1996 (cited second-hand).

    Args:
        air_c: air temperature, −20–50 °C.
        humidity_percent: relative humidity, 1–100 %.

    Raises:
        OutOfRange: an argument outside its range.
    """
    gamma = yield Line(
        "gamma",
        "moisture in the air, as the formula counts it",
        "",
        _gamma(air_c, humidity_percent),
        "ln(humidity / 100) + slope * air / (scale + air)",
        {
            "humidity": Part(humidity_percent, "%", "humidity"),
            "slope": _SLOPE,
            "scale": _SCALE,
            "air": Part(air_c, "°C", "air temperature"),
        },
    )
    return (
        yield Line(
            "dew",
            "dew point",
            "°C",
            _SCALE.value * gamma / (_SLOPE.value - gamma),
            "scale * gamma / (slope - gamma)",
            {
                "scale": _SCALE,
                "gamma": Part(gamma, "", "moisture in the air"),
                "slope": _SLOPE,
            },
        )
    )


def _gamma(air_c: float, humidity_percent: float) -> float:
    return log(humidity_percent / 100) + _SLOPE.value * air_c / (_SCALE.value + air_c)


@calculation
def surface_margin(
    air_c: Air,
    humidity_percent: Humidity,
    surface_c: Annotated[float, Given("surface temperature", "°C", -20, 80)],
) -> Calculation:
    """Return the °C by which a surface is warmer than the dew point; below zero it is wet.

    margin = surface − dew point. Three degrees at least: common practice, ascribed to
    ISO 8502-4, which is written for steel and was not read.

    Args:
        air_c: air temperature, −20–50 °C.
        humidity_percent: relative humidity, 1–100 %.
        surface_c: temperature of the deck itself, −20–80 °C.

    Raises:
        OutOfRange: an argument outside its range.
    """
    dew = yield from under("air", dew_point.inside(air_c, humidity_percent))
    return (
        yield Line(
            "margin",
            "surface above the dew point",
            "°C",
            surface_c - dew,
            "surface - dew",
            {
                "surface": Part(surface_c, "°C", "surface temperature"),
                "dew": Part(dew, "°C", "dew point"),
            },
        )
    )
