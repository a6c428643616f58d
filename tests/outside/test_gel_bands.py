"""Three bands of gel time, worked by hand (derived), to a tenth of a minute.

They take 40 kJ/mol (foot of a published band: J. Appl. Polym. Sci. 102, 1870–1876, 2006,
abstract), 82.6 kJ/mol (25 min at 20 °C against 45 min at 15 °C: common practice), and orders of
0.5 (free-radical rate law) and 1 (from memory). No published table of gel times was found.
"""

import pytest

from trainer.engine import answer, gel_long_end, gel_short_end
from trainer.engine.plans import gel

#: Cup: minutes, °C, % by mass. Now: °C, % by mass. The band in minutes.
BANDS = [
    ((20, 20, 2), (20, 4), (10.0, 14.1)),
    ((25, 20, 2), (15, 2), (33.2, 45.0)),
    ((30, 18, 2), (26, 1.5), (13.9, 25.7)),
]
EVERY_BAND = pytest.mark.parametrize(("cup", "now", "band"), BANDS)
Cup = tuple[float, float, float]
Now = tuple[float, float]


@EVERY_BAND
def test_both_ends(cup: Cup, now: Now, band: tuple[float, float]) -> None:
    """Twice the dose; five degrees colder; warmer and weaker at once."""
    short, long = band
    assert round(answer(gel_short_end(*cup, *now)), 1) == short
    assert round(answer(gel_long_end(*cup, *now)), 1) == long


@EVERY_BAND
def test_a_plan_shows_the_same_band(cup: Cup, now: Now, band: tuple[float, float]) -> None:
    """From one cup, the plan's ends are the calculations' own, unless too little time is left."""
    told = gel.gel_times((gel.TestCup("Harbour 20", *cup),), "Harbour 20", *now)
    if isinstance(told, gel.NoTimes):
        # Two thirds of 10 min less 2 are 4.7: the first band is too quick to work in.
        assert band[0] * 2 / 3 - 2 < 5
        return
    assert (round(told.short.value, 1), round(told.long.value, 1)) == band
