"""Whether the day and the deck are fit for laying: stop, care, go, or not judged yet.

Every limit is common practice but for the humidity of 80 %, which is published for workshops.
"""

from dataclasses import dataclass
from typing import Literal

from trainer.engine.materials import (
    COLDEST,
    COOL,
    DAMP_TIMBER,
    DEW_MARGIN,
    HOTTEST,
    HUMID,
    WARM,
    Constant,
)
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.units import show
from trainer.engine.weather import surface_margin

Level = Literal["stop", "care", "not judged", "fine"]
Word = Literal["stop", "care", "not judged yet", "go"]

# Worst first. What wasn't judged never lets a verdict be go.
_WORDS: dict[Level, Word] = {
    "stop": "stop",
    "care": "care",
    "not judged": "not judged yet",
    "fine": "go",
}
_LEVELS = tuple(_WORDS)


@dataclass(frozen=True, slots=True)
class Reason:
    """One thing that was looked at, how bad it is, and the limit that it was held against."""

    level: Level
    #: "air temperature".
    what: str
    #: The figure with its unit, or what was seen, as a sentence.
    words: str
    limit: str
    #: The working, where the figure was worked out.
    figure: Figure | None = None


@dataclass(frozen=True, slots=True)
class Verdict:
    """One word, and what it rests on, worst first."""

    word: Word
    reasons: tuple[Reason, ...]

    @property
    def not_judged(self) -> tuple[str, ...]:
        """What nobody gave, and so nobody judged."""
        return tuple(each.what for each in self.reasons if each.level == "not judged")


def judge(
    air_c: float | None,
    surface_c: float | None,
    humidity_percent: float | None,
    *,
    deck_damp: bool | None = None,
    rain_expected: bool | None = None,
    sun_on_deck: bool | None = None,
    windy: bool | None = None,
    timber_percent: float | None = None,
) -> Verdict:
    """Return the verdict on a day and a deck; None is something that nobody looked at.

    The worst reason gives the word: a stop stays a stop and care stays care whatever wasn't
    judged, and only with everything judged and fine is it go.
    """
    reasons = (
        _temperature("air temperature", "The air is at", air_c),
        _temperature("deck temperature", "The deck is at", surface_c),
        _dew(air_c, surface_c, humidity_percent),
        _seen(*_DAMP, there=deck_damp),
        _seen(*_RAIN, there=rain_expected),
        _seen(*_SUN, there=sun_on_deck),
        _most("humidity", "The humidity is", humidity_percent, HUMID),
        _seen(*_WIND, there=windy),
        _most("timber moisture", "The timber meter shows", timber_percent, DAMP_TIMBER),
    )
    ordered = tuple(sorted(reasons, key=lambda reason: _LEVELS.index(reason.level)))
    return Verdict(_WORDS[ordered[0].level], ordered)


# What somebody looks for, how bad it is, what is said when it is there and when not, the limit.
Look = tuple[str, Level, tuple[str, str], str]
_DAMP: Look = (
    "damp deck",
    "stop",
    ("The deck is damp.", "The deck is dry."),
    "Nothing is laid on a damp deck.",
)
_RAIN: Look = (
    "rain",
    "stop",
    ("Rain comes before it sets.", "No rain comes before it sets."),
    "Nothing is laid that rain reaches before it sets.",
)
_SUN: Look = (
    "sun",
    "care",
    ("The sun is on the deck.", "No sun is on the deck."),
    "Sun heats the deck, and resin gels early: it takes care.",
)
_WIND: Look = (
    "wind",
    "care",
    ("The wind lifts mat.", "The wind lets mat lie."),
    "Wind that lifts mat takes care.",
)


def _temperature(what: str, words: str, celsius: float | None) -> Reason:
    coldest, hottest = _shown(COLDEST), _shown(HOTTEST)
    limit = (
        f"Nothing is laid below {coldest} or above {hottest}. "
        f"Below {_shown(COOL)} and above {_shown(WARM)} it takes care."
    )
    if celsius is None:
        return _not_judged(what, f"The {what} was not measured.", limit)
    level: Level = "fine"
    if celsius < COOL.value or celsius > WARM.value:
        level = "care"
    if celsius < COLDEST.value or celsius > HOTTEST.value:
        level = "stop"
    return Reason(level, what, f"{words} {show(celsius, '°C')}.", limit)


def _dew(air_c: float | None, surface_c: float | None, humidity_percent: float | None) -> Reason:
    what, limit = "dew", f"The deck must be {_shown(DEW_MARGIN)} above the dew point or more."
    if air_c is None or surface_c is None or humidity_percent is None:
        needs = "It takes the air's temperature, its humidity and the deck's temperature."
        return _not_judged(what, f"The dew point was not worked out. {needs}", limit)
    figure = worked(
        "weather.margin",
        "deck above the dew point",
        surface_margin,
        air_c=air_c,
        humidity_percent=humidity_percent,
        surface_c=surface_c,
    )
    # Rounded, so that floats can't push a deck off the very edge.
    level: Level = "stop" if round(figure.value, 9) < DEW_MARGIN.value else "fine"
    return Reason(level, what, _above_or_below(figure), limit, figure)


def _above_or_below(figure: Figure) -> str:
    side = "above" if figure.value >= 0 else "below"
    dew = show(figure.working.figures["air.dew"], "°C", 1)
    return f"The deck is {show(abs(figure.value), '°C', 1)} {side} the dew point, which is {dew}."


def _most(what: str, words: str, percent: float | None, most: Constant) -> Reason:
    limit = f"Above {_shown(most)} it takes care."
    if percent is None:
        return _not_judged(what, f"The {what} was not measured.", limit)
    level: Level = "care" if percent > most.value else "fine"
    return Reason(level, what, f"{words} {show(percent, '%')}.", limit)


def _seen(
    what: str, level: Level, words: tuple[str, str], limit: str, *, there: bool | None
) -> Reason:
    if there is None:
        return _not_judged(what, f"Nobody has looked: {what}.", limit)
    yes, no = words
    return Reason(level, what, yes, limit) if there else Reason("fine", what, no, limit)


def _not_judged(what: str, words: str, limit: str) -> Reason:
    return Reason("not judged", what, words, limit)


def _shown(constant: Constant) -> str:
    return show(constant.value, constant.unit)
