"""Bandage, tape and cuts against what common practice and published rules give.

Bandage 75 mm, tape 50 mm, both centred, at least 10 mm of bare board each side, tape carried 50
mm past a meeting joint, 50 mm of wrap on each face: common practice, no published source. A lap
of mat on mat of at least 50 mm: Rules for Classification of FRP Ships, Iranian Classification
Society, 2014, 301 (published). Boards of 2440 by 1220 mm: common practice.
"""

import pytest

from trainer.engine import (
    answer,
    bandage_length,
    bare_board,
    open_end_patch,
    resin_for_bandage,
    tape_length,
    tape_rolls,
)
from trainer.engine.conversions import rounded_up, whole_mm
from trainer.engine.materials import BANDAGE_WIDTH, MAT_LAP, TAPE_WIDTH


def test_fifty_under_seventy_five_leaves_twelve_and_a_half() -> None:
    """Common practice; derived: (75 − 50) ÷ 2 on each side."""
    assert (BANDAGE_WIDTH.value, TAPE_WIDTH.value) == (75, 50)
    assert answer(bare_board()) == pytest.approx(12.5)


def test_the_tape_may_be_two_and_a_half_off_centre() -> None:
    """Common practice: 10 mm must show, and 12.5 − 2.5 is just that."""
    assert answer(bare_board(off_centre_mm=2.5)) == pytest.approx(10)
    assert answer(bare_board(off_centre_mm=2.6)) < 10


def test_tape_for_a_deck_of_six_boards() -> None:
    """Common practice; derived: boards of 2440 by 1220 in two rows of three.

    The long joint runs 3 × 1.22 m. Four short ones of 2.44 m meet it, two from each row, each
    with one end carried 50 mm past it: 3.66 + 4 × 2.44 + 4 × 0.05 is 13.62 m.
    """
    joints = (3.66, 2.44, 2.44, 2.44, 2.44)
    assert answer(tape_length(joints, 4)) == pytest.approx(13.62)
    assert answer(tape_rolls(joints, 4, 10)) == 2


def test_bandage_longer_than_its_roll_is_lapped() -> None:
    """Published lap of 50 mm: two laps in 7.2 m take 7.3 m."""
    assert MAT_LAP.value == 50
    assert answer(bandage_length((7.2,), 2)) == pytest.approx(7.3)


def test_a_bandage_of_ten_metres_takes_about_a_kilogram() -> None:
    """Derived: 0.75 m² × 450 g × 2.5 is 0.844 kg, 0.928 kg with a tenth on top (practice)."""
    assert answer(resin_for_bandage(10)) == pytest.approx(0.928, abs=5e-4)
    assert answer(resin_for_bandage(10, allowance_percent=0)) == pytest.approx(0.844, abs=5e-4)


def test_a_patch_for_an_open_end() -> None:
    """Common practice: (width + 2 × 50) by (height + 2 × 50) mm; 60 by 40 needs 160 by 140."""
    assert answer(open_end_patch(60, 40)) == pytest.approx(0.160 * 0.140)


@pytest.mark.parametrize(
    ("run_m", "roll_m", "lap_mm", "drops"),
    [(2.90, 1.00, 50, 3), (2.91, 1.00, 50, 4), (1.00, 1.00, 50, 1), (3.85, 1.00, 50, 4)],
)
def test_drops_across_a_run(run_m: float, roll_m: float, lap_mm: int, drops: int) -> None:
    """Derived: all but the first cover their width less a lap; (W − o) ÷ (w − o), rounded up."""
    assert rounded_up(whole_mm(run_m) - lap_mm, whole_mm(roll_m) - lap_mm) == drops
