"""Drops of mat: how many, what is trimmed off, mat off the roll, and laps of several layers.

A lap of mat on mat of at least 50 mm, and laps of adjacent layers at least 100 mm apart: Rules for
Classification of FRP Ships, Iranian Classification Society, 2014, 301 (published).
"""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    Method,
    OutOfRange,
    Refused,
    answer,
    lap_shift,
    last_drop,
    line_keys,
    mat_drops,
    mat_length,
    mat_rolls,
    work,
)

RUNS_MM = st.integers(100, 100_000)
ROLLS_MM = st.integers(400, 3000)
LAPS_MM = st.integers(0, 300)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(mat_drops) == ("drops",)
    assert line_keys(last_drop) == ("drops", "covered", "trimmed")
    assert line_keys(mat_length) == ("drops", "each", "length")
    assert line_keys(mat_rolls) == ("rolls",)
    assert line_keys(lap_shift) == ("pitch", "shift")


@pytest.mark.parametrize(
    ("run_m", "roll_mm", "lap_mm", "drops"),
    [
        (2.90, 1000, 50, 3),  # 3 × 950 + 50 is just 2900
        (2.901, 1000, 50, 4),
        (3.85, 1000, 50, 4),
        (1.0, 1000, 50, 1),
        (1.001, 1000, 50, 2),
        (6, 1200, 0, 5),  # without laps
        (6, 1270, 50, 5),  # 5 × 1220 + 50 is 6150
    ],
)
def test_drops_across_a_run(run_m: float, roll_mm: float, lap_mm: float, drops: int) -> None:
    """All but the first add their width less a lap; an exact fit needs no further one."""
    assert answer(mat_drops(run_m, roll_mm, lap_mm)) == drops


@pytest.mark.parametrize(("run_m", "lap_mm"), [(0.1, 50), (0.1, 100), (0.1, 300), (0.3, 300)])
def test_a_run_of_a_hand_s_width_takes_one_drop(run_m: float, lap_mm: float) -> None:
    """Even where the run is no wider than the lap: never none."""
    worked = work(mat_drops(run_m, 1000, lap_mm))
    assert worked.value == 1
    assert ("the greatest of 1 and" in worked.lines[-1].in_words()) == (run_m * 1000 <= lap_mm)


def test_the_working_of_drops_is_read_as_people_work_it() -> None:
    """Both brackets, in whole millimetres, and what it comes to before it is rounded up."""
    line = work(mat_drops(2.5, 1000)).lines[-1]
    assert line.in_words() == "((run − lap) ÷ (width of the roll − lap)), rounded up"
    assert line.unrounded() == pytest.approx(2450 / 950)


@pytest.mark.parametrize("calculation", [mat_drops, last_drop])
def test_a_lap_as_wide_as_the_roll_is_refused(calculation: Method[...]) -> None:
    """Each further drop would cover nothing new."""
    with pytest.raises(Refused, match="lap is as large as the roll, so nothing is gained"):
        work(calculation(2, 200, 200))
    assert work(calculation(0.2, 200, 199)).figures["drops"] == 1


def test_the_last_drop_is_trimmed() -> None:
    """Across 2.5 m three drops of 1 m cover 2.9 m, so that 400 mm come off the last."""
    figures = work(last_drop(2.5, 1000)).figures
    assert figures == pytest.approx({"drops": 3, "covered": 2900, "trimmed": 400})


@given(RUNS_MM, ROLLS_MM, LAPS_MM)
def test_less_is_trimmed_than_a_drop_adds(run_mm: int, roll_mm: int, lap_mm: int) -> None:
    """Otherwise a drop fewer would do; where one is enough, what is over comes off it."""
    figures = work(last_drop(run_mm / 1000, roll_mm, lap_mm)).figures
    if run_mm > roll_mm:
        assert 0 <= figures["trimmed"] < roll_mm - lap_mm
    else:
        assert figures["trimmed"] == roll_mm - run_mm


def test_mat_off_the_roll_by_hand() -> None:
    """Three drops of 4.2 m with 50 mm over each end: 3 × 4.3 m is 12.9 m."""
    figures = work(mat_length(2.9, 4.2, 1000, 50, 50)).figures
    assert figures == pytest.approx({"drops": 3, "each": 4.3, "length": 12.9})


@given(RUNS_MM, ROLLS_MM, LAPS_MM, st.floats(0.1, 50))
def test_drops_of_twice_the_length_take_twice_the_mat(
    run_mm: int, roll_mm: int, lap_mm: int, drop_m: float
) -> None:
    """As long as nothing goes over the ends."""
    one, two = (
        answer(mat_length(run_mm / 1000, length, roll_mm, lap_mm))
        for length in (drop_m, 2 * drop_m)
    )
    assert two == pytest.approx(2 * one)


@given(RUNS_MM, ROLLS_MM, st.integers(0, 250), st.integers(1, 50))
def test_a_larger_lap_never_takes_fewer_drops(
    run_mm: int, roll_mm: int, lap_mm: int, more_mm: int
) -> None:
    """Nor does a wider run."""
    drops = answer(mat_drops(run_mm / 1000, roll_mm, lap_mm))
    assert answer(mat_drops(run_mm / 1000, roll_mm, lap_mm + more_mm)) >= drops
    assert answer(mat_drops.inside((run_mm + more_mm) / 1000, roll_mm, lap_mm)) >= drops


@pytest.mark.parametrize(
    ("length_m", "roll_m", "rolls"),
    [(12.9, 30, 1), (30, 30, 1), (30.001, 30, 2), (68.7, 22.9, 3), (0.1, 200, 1)],
)
def test_rolls_of_mat_are_rounded_up(length_m: float, roll_m: float, rolls: int) -> None:
    """A begun roll is a roll; an exact multiple needs no further one."""
    assert answer(mat_rolls(length_m, roll_m)) == rolls


def test_laps_of_layers_are_moved_by_their_share() -> None:
    """A lap each 950 mm: 475 mm on for two layers, 316.7 mm for three."""
    assert work(lap_shift(1000, 50, 2)).figures == pytest.approx({"pitch": 950, "shift": 475})
    assert answer(lap_shift(1000, 50, 3)) == pytest.approx(950 / 3)


@given(ROLLS_MM, LAPS_MM, st.integers(2, 6))
def test_no_two_laps_lie_nearer_than_the_rule_allows(
    roll_mm: int, lap_mm: int, layers: int
) -> None:
    """Round the pitch, each layer's lap is a hundred millimetres or more from any other's."""
    pitch = roll_mm - lap_mm
    if pitch < 100 * layers:
        with pytest.raises(Refused, match="under 100 mm apart: take a wider roll"):
            work(lap_shift(roll_mm, lap_mm, layers))
        return
    shift = answer(lap_shift(roll_mm, lap_mm, layers))
    places = [layer * shift for layer in range(layers)] + [pitch]
    assert min(b - a for a, b in pairwise(places)) >= 100 - 1e-9


def test_figures_out_of_range_are_refused() -> None:
    """A roll of 150 mm is bandage, and one layer has no laps to be moved from."""
    with pytest.raises(OutOfRange, match="width of the roll is 150 mm"):
        mat_drops(2, 150)
    with pytest.raises(OutOfRange, match="layers of mat is 1"):
        lap_shift(1000, 50, 1)
