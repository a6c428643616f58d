"""Tape: its length, the rolls, and the bare board beside it.

Carried 50 mm past each end that meets another joint, and 10 mm of board to show on each side:
common practice, no published source.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import Refused, answer, bare_board, line_keys, tape_length, tape_rolls, work

JOINTS = st.lists(st.floats(0.1, 100), min_size=1, max_size=6).map(tuple)
ENDS = st.integers(0, 500)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(tape_length) == ("joints", "carried", "tape")
    assert line_keys(tape_rolls) == ("tape.joints", "tape.carried", "tape.tape", "rolls")
    assert line_keys(bare_board) == ("side", "narrow")


def test_tape_for_three_joints() -> None:
    """2.44 + 2.44 + 1.22 m is 6.10 m; three ends carried 50 mm are 0.15 m; together 6.25 m."""
    worked = work(tape_length((2.44, 2.44, 1.22), 3))
    assert worked.figures == pytest.approx({"joints": 6.10, "carried": 0.15, "tape": 6.25})


def test_without_meeting_ends_the_tape_is_as_long_as_the_joints() -> None:
    """At a trim or a wall the tape stops at the edge."""
    assert answer(tape_length((2.44, 2.44), 0)) == pytest.approx(4.88)
    assert answer(tape_length((2.44, 2.44), 4, carry_mm=0)) == pytest.approx(4.88)


@given(JOINTS, ENDS)
def test_the_order_of_the_joints_does_not_matter(joints: tuple[float, ...], ends: int) -> None:
    """Whoever measures from the other side of the roof needs the same tape."""
    assert answer(tape_length(joints[::-1], ends)) == pytest.approx(
        answer(tape_length(joints, ends))
    )


@given(JOINTS, ENDS)
def test_twice_the_joints_and_ends_take_twice_the_tape(
    joints: tuple[float, ...], ends: int
) -> None:
    """Two equal roofs take twice what one does."""
    two = answer(tape_length.inside(joints * 2, ends * 2))
    assert two == pytest.approx(2 * answer(tape_length(joints, ends)))


@pytest.mark.parametrize(
    ("joints", "ends", "roll", "rolls"),
    [
        ((2.44, 2.44, 1.22), 3, 5, 2),  # 6.25 m
        ((2.44, 2.44, 1.22), 3, 6.25, 1),  # just enough
        ((2.44, 2.44, 1.22), 3, 6.249, 2),  # a millimetre short
        ((1.1, 1.1, 1.1), 0, 1.1, 3),  # 3.3000000000000003 in floats
        ((2.9,), 0, 1.45, 2),
        ((0.1,), 0, 50, 1),
    ],
)
def test_rolls_are_rounded_up(
    joints: tuple[float, ...], ends: int, roll: float, rolls: int
) -> None:
    """A begun roll is a roll; an exact multiple needs no further one."""
    assert answer(tape_rolls(joints, ends, roll)) == rolls


@given(st.lists(st.integers(100, 100_000), min_size=1, max_size=6), st.integers(1000, 200_000))
def test_the_rolls_are_the_fewest_that_reach(joints_mm: list[int], roll_mm: int) -> None:
    """That many are enough, and one fewer is not."""
    rolls = answer(tape_rolls(tuple(mm / 1000 for mm in joints_mm), 0, roll_mm / 1000))
    assert (rolls - 1) * roll_mm < sum(joints_mm) <= rolls * roll_mm


@given(JOINTS, ENDS, st.integers(1000, 100_000))
def test_a_roll_of_twice_the_length_never_takes_more(
    joints: tuple[float, ...], ends: int, roll_mm: int
) -> None:
    """And never fewer than half of them; a roll is as long as whole millimetres say."""
    rolls = (roll_mm / 1000, 2 * roll_mm / 1000)
    short, long = (answer(tape_rolls(joints, ends, roll)) for roll in rolls)
    assert long <= short <= 2 * long


@pytest.mark.parametrize(
    ("bandage", "tape", "off_centre", "narrow"),
    [(75, 50, 0, 12.5), (75, 50, 5, 7.5), (75, 50, 12.5, 0), (100, 50, 10, 15), (75, 75, 0, 0)],
)
def test_bare_board_beside_the_tape(
    bandage: float, tape: float, off_centre: float, narrow: float
) -> None:
    """Half of what the bandage is wider, less what the tape is off centre."""
    assert answer(bare_board(bandage, tape, off_centre)) == pytest.approx(narrow)


@pytest.mark.parametrize(("bandage", "tape", "off_centre"), [(50, 75, 0), (75, 50, 12.6)])
def test_a_bandage_that_does_not_reach_past_the_tape_is_refused(
    bandage: float, tape: float, off_centre: float
) -> None:
    """Nothing is left for it to hold on at least one side."""
    with pytest.raises(Refused, match="doesn't reach past the tape"):
        work(bare_board(bandage, tape, off_centre))


@given(st.integers(25, 150), st.integers(0, 75), st.integers(0, 75))
def test_both_sides_and_the_tape_make_the_bandage(tape: int, side: int, off_centre: int) -> None:
    """Narrow side, tape and wide side are together as wide as the bandage."""
    off_centre = min(off_centre, side)
    narrow = answer(bare_board(tape + 2 * side, tape, off_centre))
    wide = narrow + 2 * off_centre
    assert narrow + tape + wide == pytest.approx(tape + 2 * side)
