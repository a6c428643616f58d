"""The tape of a roof: pieces over joints, carried on where they meet another."""

import pytest
from roofs_cast import garage

from trainer.engine.plans.deck import deck_of
from trainer.engine.plans.description import Bandage, Boards, RoofDescription, Tape
from trainer.engine.plans.tape import TapePlan, tape_of


def tape(roof: RoofDescription) -> TapePlan:
    """Return the tape of a roof."""
    return tape_of(roof, deck_of(roof))


def test_the_tape_of_the_garage() -> None:
    """16.2 m of joints and eight meeting ends of 50 mm: 16.6 m, one roll of 20 m."""
    plan = tape(garage())
    assert plan.length
    assert plan.rolls
    assert plan.length.value == pytest.approx(16.6)
    assert plan.rolls.value == 1


def test_each_piece_is_its_joint_and_what_it_is_carried() -> None:
    """Between two joints 1223 mm and twice 50; at an edge it stops."""
    pieces = tape(garage()).pieces
    assert [piece.length_m for piece in pieces] == pytest.approx(
        [5.2, 5.2, 1.271, 1.271, 1.323, 1.323, 0.506, 0.506]
    )
    assert (pieces[2].start, pieces[2].end) == ((2441, 0), (2441, 1271))
    assert (pieces[4].start, pieces[4].end) == ((1220, 1171), (1220, 2494))


def test_pieces_come_to_the_length() -> None:
    """What is cut is what is counted."""
    for roof in (garage(), garage(boards=Boards(run="up")), garage(tape=Tape(carry_mm=80))):
        plan = tape(roof)
        assert plan.length
        assert sum(piece.length_m for piece in plan.pieces) == pytest.approx(plan.length.value)


def test_a_deck_without_open_joints_takes_no_tape() -> None:
    """Tongued boards whose cut edges all lie at the roof's edge."""
    plan = tape(garage(boards=Boards(width_mm=590, edge="tongued")))
    assert (plan.pieces, plan.length, plan.rolls) == ((), None, None)


def test_a_cut_edge_is_taped_as_it_was_measured() -> None:
    """It has no place in the layout."""
    plan = tape(garage(boards=Boards(width_mm=590, edge="tongued", cut_joints_m=(1.8,))))
    assert [(piece.length_m, piece.start) for piece in plan.pieces] == [(1.8, None)]
    assert plan.length
    assert plan.length.value == pytest.approx(1.8)


def test_bare_board_beside_the_tape() -> None:
    """50 under 75 mm leaves 12.5 mm on each side."""
    assert tape(garage()).bare.value == pytest.approx(12.5)
    assert tape(garage(bandage=Bandage(width_mm=100))).bare.value == pytest.approx(25)
