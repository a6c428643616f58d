"""The dew point against a library, printed tables and a published rule of thumb.

The library is psychrolib 2.5 (equations of the ASHRAE Handbook). Below 0 °C it takes the curve
over ice, so nothing is compared there.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, dew_point, surface_margin
from trainer.engine.materials import DEW_MARGIN

#: Air in °C, humidity in %, and what psychrolib 2.5 gave for them.
OF_THE_LIBRARY = [
    (20, 50, 9.272),
    (10, 80, 6.713),
    (5, 90, 3.498),
    (15, 70, 9.579),
    (25, 60, 16.701),
    (30, 45, 16.777),
]


@pytest.mark.parametrize(("air_c", "humidity", "dew_c"), OF_THE_LIBRARY)
def test_what_the_library_gave(air_c: float, humidity: float, dew_c: float) -> None:
    """GetTDewPointFromRelHum of psychrolib 2.5, written down: within 0.035 K."""
    assert answer(dew_point(air_c, humidity)) == pytest.approx(dew_c, abs=0.035)


def test_what_the_library_gives() -> None:
    """The same call over 0 to 40 °C and 30 to 100 %, wherever the dew point isn't below 0 °C."""
    psychrolib = pytest.importorskip("psychrolib")
    psychrolib.SetUnitSystem(psychrolib.SI)
    compared = 0
    for air_c in range(41):
        for humidity in range(30, 101, 5):
            expected = psychrolib.GetTDewPointFromRelHum(air_c, humidity / 100)
            if expected >= 0:
                assert answer(dew_point(air_c, humidity)) == pytest.approx(expected, abs=0.035)
                compared += 1
    assert compared > 400


@pytest.mark.parametrize(
    ("air_c", "humidity", "dew_c", "least_c"), [(20, 70, 14.4, 17.4), (10, 90, 8.4, 11.4)]
)
def test_printed_tables(air_c: float, humidity: float, dew_c: float, least_c: float) -> None:
    """Tables in use on site give the dew point and the least surface, 3 °C more.

    Common practice, ascribed to ISO 8502-4, which was not read.
    """
    assert answer(dew_point(air_c, humidity)) == pytest.approx(dew_c, abs=0.05)
    margin = answer(surface_margin(air_c, humidity, least_c))
    assert margin == pytest.approx(DEW_MARGIN.value, abs=0.05)


@given(st.floats(0, 30), st.floats(50, 100))
def test_the_rule_of_thumb(air_c: float, humidity: float) -> None:
    """A degree lower for each 5 % under 100, over 50 %: M. G. Lawrence (2005), published.

    Bull. Amer. Meteorol. Soc. 86, 225–233. Within 1.5 K but for a corner by 30 °C and 50 %,
    where it is 1.55 K.
    """
    rule = air_c - (100 - humidity) / 5
    corner = air_c > 29 and humidity < 50.5
    assert answer(dew_point(air_c, humidity)) == pytest.approx(rule, abs=1.56 if corner else 1.5)
