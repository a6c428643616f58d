"""Rolls, tins and bottles, and the pieces and laps of a run that is longer than the roll.

A lap of mat on mat of at least 50 mm: Rules for Classification of FRP Ships, Iranian
Classification Society, 2014, 301 (published).
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    Method,
    Refused,
    answer,
    bandage_rolls,
    bottles,
    laps_in_run,
    line_keys,
    pieces_in_run,
    tins,
    work,
)

WHOLE = st.integers(1000, 100_000)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(bandage_rolls) == ("rolls",)
    assert line_keys(pieces_in_run) == ("pieces",)
    assert line_keys(laps_in_run) == ("pieces", "laps")
    assert line_keys(tins) == ("tins",)
    assert line_keys(bottles) == ("bottles",)


@pytest.mark.parametrize(
    ("calculation", "needed", "each", "count"),
    [
        (bandage_rolls, 12.9, 10, 2),
        (bandage_rolls, 20, 10, 2),
        (bandage_rolls, 20.001, 10, 3),
        (bandage_rolls, 17.4, 5.8, 3),  # 3.0000000000000004 in floats
        (bandage_rolls, 0.05, 200, 1),
        (tins, 12.5, 5, 3),
        (tins, 15, 5, 3),
        (tins, 15.001, 5, 4),
        (tins, 3.3, 1.1, 3),  # 2.9999999999999996 in floats
        (bottles, 240, 100, 3),
        (bottles, 300, 100, 3),
        (bottles, 301, 100, 4),
    ],
)
def test_what_is_taken_along_is_rounded_up(
    calculation: Method[...], needed: float, each: float, count: int
) -> None:
    """A begun one counts; an exact multiple needs no further one."""
    assert answer(calculation(needed, each)) == count


@given(WHOLE, st.integers(500, 25_000))
def test_tins_are_the_fewest_that_hold_the_resin(mass_g: int, tin_g: int) -> None:
    """That many are enough, and one fewer is not; with tins of twice the size half will do."""
    count = answer(tins(mass_g / 1000, tin_g / 1000))
    assert (count - 1) * tin_g < mass_g <= count * tin_g
    double = answer(tins(mass_g / 1000, 2 * tin_g / 1000))
    assert double <= count <= 2 * double


@pytest.mark.parametrize(
    ("run", "roll", "lap", "pieces"),
    [
        (5, 10, 50, 1),
        (10, 10, 50, 1),  # just the roll
        (10.001, 10, 50, 2),
        (19.95, 10, 50, 2),  # 2 × 9.95 + 0.05
        (19.951, 10, 50, 3),
        (20, 10, 0, 2),
        (0.01, 5, 300, 1),  # shorter than the lap
        (0.3, 5, 300, 1),
    ],
)
def test_pieces_in_a_run(run: float, roll: float, lap: float, pieces: int) -> None:
    """One where it fits; each further one adds the roll less a lap."""
    assert answer(pieces_in_run(run, roll, lap)) == pieces
    assert work(laps_in_run(run, roll, lap)).figures == {"pieces": pieces, "laps": pieces - 1}


@given(st.integers(10, 500_000), st.integers(5000, 200_000), st.integers(0, 300))
def test_the_pieces_are_the_fewest_that_reach(run_mm: int, roll_mm: int, lap_mm: int) -> None:
    """Whole rolls, less what lies double in their laps."""
    pieces = answer(pieces_in_run(run_mm / 1000, roll_mm / 1000, lap_mm))
    assert pieces * roll_mm - (pieces - 1) * lap_mm >= run_mm
    if pieces > 1:
        assert (pieces - 1) * roll_mm - (pieces - 2) * lap_mm < run_mm


def test_a_lap_as_long_as_the_roll_is_refused() -> None:
    """Only a roll that was worked out can be so short; it covers nothing new."""
    with pytest.raises(Refused, match="lap is as large as the roll"):
        work(pieces_in_run.inside(1, 0.05, 50))
