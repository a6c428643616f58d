"""The verdict on a day and a deck. Its limits are common practice, 80 % of humidity published."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, dew_point, surface_margin
from trainer.engine.plans.verdict import Reason, Verdict, judge

FINE: dict[str, Any] = {
    "air_c": 20,
    "surface_c": 22,
    "humidity_percent": 60,
    "deck_damp": False,
    "rain_expected": False,
    "sun_on_deck": False,
    "windy": False,
    "timber_percent": 14,
}


def judged(**changed: Any) -> Verdict:
    """Return the verdict on a fine day with something changed."""
    return judge(**{**FINE, **changed})


def reason(verdict: Verdict, what: str) -> Reason:
    """Return what a verdict says of one thing."""
    (found,) = (each for each in verdict.reasons if each.what == what)
    return found


def test_a_fine_day_is_go() -> None:
    """Everything was looked at, and nothing stands against it."""
    verdict = judged()
    assert verdict.word == "go"
    assert {each.level for each in verdict.reasons} == {"fine"}
    assert verdict.not_judged == ()


@pytest.mark.parametrize(("air_c", "level"), [
    (4.9, "stop"), (5, "care"), (14.9, "care"), (15, "fine"), (25, "fine"),
    (25.1, "care"), (35, "care"), (35.1, "stop"),
])  # fmt: skip
def test_the_limits_of_the_air(air_c: float, level: str) -> None:
    """Below 5 and above 35 °C stop; below 15 and above 25 care; the limits belong to the better."""
    assert reason(judged(air_c=air_c), "air temperature").level == level


@pytest.mark.parametrize(("surface_c", "level"), [
    (4.9, "stop"), (5, "care"), (14.9, "care"), (15, "fine"), (25, "fine"),
    (25.1, "care"), (35, "care"), (35.1, "stop"),
])  # fmt: skip
def test_the_limits_of_the_deck(surface_c: float, level: str) -> None:
    """The same as the air's."""
    assert reason(judged(surface_c=surface_c), "deck temperature").level == level


@pytest.mark.parametrize(("above", "level"), [(2.99, "stop"), (3, "fine"), (3.01, "fine")])
def test_the_deck_above_the_dew_point(above: float, level: str) -> None:
    """Less than 3 °C stops; just 3 doesn't (practice, ascribed to ISO 8502-4, not read)."""
    surface_c = answer(dew_point(20, 60)) + above
    assert reason(judged(surface_c=surface_c), "dew").level == level


@pytest.mark.parametrize(("humidity", "level"), [(80, "fine"), (80.1, "care")])
def test_the_limit_of_humidity(humidity: float, level: str) -> None:
    """80 % itself is fine."""
    assert reason(judged(humidity_percent=humidity, surface_c=25), "humidity").level == level


@pytest.mark.parametrize(("timber", "level"), [(18, "fine"), (18.1, "care")])
def test_the_limit_of_the_timber_meter(timber: float, level: str) -> None:
    """18 % itself is fine."""
    assert reason(judged(timber_percent=timber), "timber moisture").level == level


@pytest.mark.parametrize(
    ("given", "word"),
    [("deck_damp", "stop"), ("rain_expected", "stop"), ("sun_on_deck", "care"), ("windy", "care")],
)
def test_what_is_seen(given: str, word: str) -> None:
    """Damp and rain stop; sun and wind take care."""
    assert judged(**{given: True}).word == word


@pytest.mark.parametrize("given", FINE)
def test_what_nobody_looked_at_is_not_judged(given: str) -> None:
    """With any one thing missing a fine day is no go, and the missing thing is named."""
    verdict = judged(**{given: None})
    assert verdict.word == "not judged yet"
    assert verdict.not_judged
    assert verdict.reasons[0].level == "not judged"


@pytest.mark.parametrize(
    ("missing", "named"),
    [
        ("air_c", ("air temperature", "dew")),
        ("surface_c", ("deck temperature", "dew")),
        ("humidity_percent", ("dew", "humidity")),
        ("deck_damp", ("damp deck",)),
        ("timber_percent", ("timber moisture",)),
    ],
)
def test_the_missing_things_are_named(missing: str, named: tuple[str, ...]) -> None:
    """The dew point takes three figures, and misses each of them."""
    assert judged(**{missing: None}).not_judged == named


def test_nothing_known_is_not_judged() -> None:
    """Nine things to look at, and nobody did."""
    verdict = judge(None, None, None)
    assert verdict.word == "not judged yet"
    assert len(verdict.not_judged) == len(verdict.reasons) == 9


def test_a_stop_stays_a_stop_and_care_stays_care() -> None:
    """Whatever else wasn't judged; and care still names what wasn't."""
    assert judge(None, None, None, deck_damp=True).word == "stop"
    care = judge(None, None, None, windy=True)
    assert care.word == "care"
    assert len(care.not_judged) == 8


def test_reasons_come_worst_first() -> None:
    """A stop is read before what is fine."""
    verdict = judged(deck_damp=True, windy=True, timber_percent=None)
    assert [each.level for each in verdict.reasons[:4]] == ["stop", "care", "not judged", "fine"]


def test_the_dew_opens_its_working() -> None:
    """At 20 °C and 60 % dew falls at 12 °C, 10 below a deck of 22."""
    dew = reason(judged(), "dew")
    assert dew.figure is not None
    assert dew.figure.method is surface_margin
    assert dew.figure.givens == {"air_c": 20, "humidity_percent": 60, "surface_c": 22}
    told = dew.words.replace("\u00a0", " ")
    assert told == "The deck is 10.0 °C above the dew point, which is 12.0 °C."


def test_a_deck_below_the_dew_point_is_told_so() -> None:
    """9 °C under 12: by 3."""
    told = reason(judged(surface_c=9), "dew").words.replace("\u00a0", " ")
    assert told == "The deck is 3.0 °C below the dew point, which is 12.0 °C."


@given(
    st.none() | st.floats(-20, 50),
    st.none() | st.floats(-20, 80),
    st.none() | st.floats(1, 100),
    st.lists(st.none() | st.booleans(), min_size=4, max_size=4),
    st.none() | st.floats(5, 60),
)
def test_go_needs_everything_judged_and_fine(
    air_c: float | None,
    surface_c: float | None,
    humidity: float | None,
    seen: list[bool | None],
    timber: float | None,
) -> None:
    """Over any day: every sentence is short, and nothing unknown or bad is ever go."""
    damp, rain, sun, wind = seen
    verdict = judge(
        air_c,
        surface_c,
        humidity,
        deck_damp=damp,
        rain_expected=rain,
        sun_on_deck=sun,
        windy=wind,
        timber_percent=timber,
    )
    levels = {each.level for each in verdict.reasons}
    assert (verdict.word == "go") is (levels == {"fine"})
    assert (verdict.word == "stop") is ("stop" in levels)
    for each in verdict.reasons:
        sentences = f"{each.words} {each.limit}".split(". ")
        assert all(len(sentence.split()) <= 25 for sentence in sentences)
