"""A deck laid out by hand: boards, joints, and which ends meet.

The garage is 5.2 by 2.9 m under boards of 2440 by 1220 mm with gaps of 3 mm. Courses begin at
0, 1223 and 2446 mm; the middle of the gaps between them lies at 1221 and 2444 mm. Joints between
ends lie at 2441 and 4884 mm in the first and third course, and half a board on in the second.
"""

import pytest
from roofs_cast import DRIP, ell, garage, roof

from trainer.engine.plans.deck import deck_of
from trainer.engine.plans.description import Boards
from trainer.engine.plans.openings import Pipe, Rooflight


def test_the_joints_of_the_garage() -> None:
    """Two between courses from edge to edge, then two between ends in each course."""
    joints = [(joint.start, joint.end, joint.meets) for joint in deck_of(garage()).joints]
    assert joints == [
        ((0, 1221), (5200, 1221), (False, False)),
        ((0, 2444), (5200, 2444), (False, False)),
        ((2441, 0), (2441, 1221), (False, True)),
        ((4884, 0), (4884, 1221), (False, True)),
        ((1220, 1221), (1220, 2444), (True, True)),
        ((3663, 1221), (3663, 2444), (True, True)),
        ((2441, 2444), (2441, 2900), (True, False)),
        ((4884, 2444), (4884, 2900), (True, False)),
    ]


def test_the_joints_come_to() -> None:
    """10.4 m between courses, 2.442 + 2.446 + 0.912 m between ends; eight ends meet a joint."""
    deck = deck_of(garage())
    assert sum(deck.joint_lengths_m) == pytest.approx(16.2)
    assert deck.meeting_ends == 8


def test_the_boards_of_the_garage() -> None:
    """Three courses of three; two whole ones in the first, one between the halves of the second."""
    boards = deck_of(garage()).boards
    assert [board.whole for board in boards] == [
        *(True, True, False),
        *(False, True, False),
        *(False, False, False),
    ]


def test_boards_that_run_up() -> None:
    """Turned, the first course is 1220 mm wide from the left, and its joint lies at 2441 mm."""
    joints = deck_of(garage(boards=Boards(run="up"))).joints
    assert (joints[0].start, joints[0].end) == ((1221, 0), (1221, 2900))
    assert ((0, 2441), (1221, 2441)) in [(joint.start, joint.end) for joint in joints]


def test_tongued_boards_have_no_open_joint_but_their_cut_edges() -> None:
    """Cut edges that meet another board are measured on the deck, and count as open."""
    tongued = Boards(width_mm=590, edge="tongued", cut_joints_m=(1.8, 0.59))
    deck = deck_of(garage(boards=tongued))
    assert deck.joints == ()
    assert deck.joint_lengths_m == (1.8, 0.59)
    assert len(deck.closed_joints) == 4 + 10  # between courses, and two in each of five


def test_tongued_boards_lie_without_gaps() -> None:
    """Courses of 590 mm: lines at 590, 1180, 1770, 2360 mm."""
    closed = deck_of(garage(boards=Boards(width_mm=590, edge="tongued"))).closed_joints
    level = [joint.start[1] for joint in closed if joint.start[1] == joint.end[1]]
    assert level == [590, 1180, 1770, 2360]


def test_the_area_of_an_l_less_its_rooflight() -> None:
    """54 m² less 1.2 by 0.9 m is 52.92 m²; a pipe is too small to be taken off."""
    deck = deck_of(ell(openings=(Rooflight(1, 1, 1.2, 0.9), Pipe(6, 2, 110))))
    assert deck.area.value == pytest.approx(54)
    assert deck.net.value == pytest.approx(52.92)


def test_no_joint_lies_along_an_edge() -> None:
    """Boards of 2 by 1 m without gaps on 4 by 2 m: one line, and its ends at half boards."""
    boards = Boards(length_mm=2000, width_mm=1000, gap_mm=0)
    corners = ((0, 0), (4000, 0), (4000, 2000), (0, 2000))
    joints = deck_of(roof(corners, [DRIP] * 4, boards=boards)).joints
    assert [(joint.start, joint.end) for joint in joints] == [
        ((0, 1000), (4000, 1000)),
        ((2000, 0), (2000, 1000)),
        ((1000, 1000), (1000, 2000)),
        ((3000, 1000), (3000, 2000)),
    ]
