"""Tape over the open joints of a deck: pieces, metres and rolls."""

from dataclasses import dataclass

from trainer.engine.conversions import MM_PER_M
from trainer.engine.outline import Point
from trainer.engine.plans.deck import Deck, Joint
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.figure import Figure, worked
from trainer.engine.tape import bare_board, tape_length, tape_rolls


@dataclass(frozen=True, slots=True)
class TapePiece:
    """One piece of tape; one over a joint that was only measured has no place."""

    number: int
    length_m: float
    #: Ends that are carried past a meeting joint.
    carried: int
    start: Point | None = None
    end: Point | None = None


@dataclass(frozen=True, slots=True)
class TapePlan:
    """The tape of a roof; a deck without open joints needs none."""

    pieces: tuple[TapePiece, ...]
    length: Figure | None
    rolls: Figure | None
    #: Bare board beside the tape, for the bandage to hold.
    bare: Figure


def tape_of(roof: RoofDescription, deck: Deck) -> TapePlan:
    """Return the tape of a deck: on past a joint that it meets, stopped at a trim or wall."""
    bare = worked(
        "tape.bare",
        "bare board beside the tape",
        bare_board,
        bandage_mm=roof.bandage.width_mm,
        tape_mm=roof.tape.width_mm,
    )
    if not deck.joint_lengths_m:
        return TapePlan((), None, None, bare)
    joints = {
        "joints_m": deck.joint_lengths_m,
        "meeting_ends": deck.meeting_ends,
        "carry_mm": roof.tape.carry_mm,
    }
    roll_m = roof.sold.tape_roll_m
    return TapePlan(
        _pieces(deck, roof.tape.carry_mm),
        worked("tape.length", "tape over open joints", tape_length, **joints),
        worked("tape.rolls", "rolls of tape", tape_rolls, roll_m=roll_m, **joints),
        bare,
    )


def _pieces(deck: Deck, carry_mm: float) -> tuple[TapePiece, ...]:
    placed = [_over(joint, carry_mm) for joint in deck.joints]
    loose = [
        TapePiece(number, length, 0)
        for number, length in enumerate(deck.extra_joints_m, len(placed) + 1)
    ]
    return (*placed, *loose)


def _over(joint: Joint, carry_mm: float) -> TapePiece:
    """Return the tape over a joint, carried on at each end that meets another."""
    upright = joint.start[0] == joint.end[0]
    carry = round(carry_mm)
    before, after = (carry * meets for meets in joint.meets)
    (x0, y0), (x1, y1) = joint.start, joint.end
    start = (x0, y0 - before) if upright else (x0 - before, y0)
    end = (x1, y1 + after) if upright else (x1 + after, y1)
    length = joint.length.value + joint.meeting_ends * carry_mm / MM_PER_M.value
    return TapePiece(joint.number, length, joint.meeting_ends, start, end)
