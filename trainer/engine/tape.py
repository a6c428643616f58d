"""Tape over open joints: how much, how many rolls, and what must stay bare beside it."""

from typing import Annotated

from trainer.engine.conversions import rounded_up, whole_mm
from trainer.engine.errors import Refused
from trainer.engine.lengths import joined, repeated
from trainer.engine.materials import BANDAGE_WIDTH, TAPE_CARRY, TAPE_WIDTH
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation, under

JointLengths = Annotated[tuple[float, ...], Given("open joint", "m", 0.1, 100)]
MeetingEnds = Annotated[int, Given("ends that meet another joint", "", 0, 500)]
Carry = Annotated[float, TAPE_CARRY.given]


@calculation
def tape_length(
    joints_m: JointLengths,
    meeting_ends: MeetingEnds,
    carry_mm: Carry = TAPE_CARRY.value,
) -> Calculation:
    """Return the metres of tape from the open joints and the ends that meet another joint.

    Tape runs on past each meeting end and stops at a trim or wall.
    tape = sum of joints + meeting ends × carry.

    Args:
        joints_m: each open joint, 0.1–100 m.
        meeting_ends: ends of joints that meet another joint, 0–500.
        carry_mm: tape carried past such an end, 0–300 mm (common practice: 50).

    Raises:
        OutOfRange: an argument outside its range.
    """
    joints = yield joined("joints", "all open joints", "joint", joints_m)
    carried = yield repeated(
        "carried",
        "carried past meeting ends",
        Part(meeting_ends, "", "meeting ends"),
        Part(carry_mm, "mm", "carry"),
    )
    return (
        yield Line(
            "tape",
            "length of tape",
            "m",
            joints + carried,
            "joints + carried",
            {
                "joints": Part(joints, "m", "all open joints"),
                "carried": Part(carried, "m", "carried past meeting ends"),
            },
        )
    )


@calculation
def tape_rolls(
    joints_m: JointLengths,
    meeting_ends: MeetingEnds,
    roll_m: Annotated[float, Given("length of a roll", "m", 1, 200)],
    carry_mm: Carry = TAPE_CARRY.value,
) -> Calculation:
    """Return the rolls of tape to take along, rounded up, from the open joints.

    rolls = tape ÷ roll, in whole millimetres, rounded up.

    Args:
        joints_m: each open joint, 0.1–100 m.
        meeting_ends: ends of joints that meet another joint, 0–500.
        roll_m: length of one roll, 1–200 m.
        carry_mm: tape carried past a meeting end, 0–300 mm (common practice: 50).

    Raises:
        OutOfRange: an argument outside its range.
    """
    tape = yield from under("tape", tape_length.inside(joints_m, meeting_ends, carry_mm))
    tape_mm, roll_mm = whole_mm(tape), whole_mm(roll_m)
    return (
        yield Line(
            "rolls",
            "rolls to take",
            "rolls",
            rounded_up(tape_mm, roll_mm),
            "ceil(tape / roll)",
            {
                "tape": Part(tape_mm, "mm", "length of tape"),
                "roll": Part(roll_mm, "mm", "length of a roll"),
            },
        )
    )


@calculation
def bare_board(
    bandage_mm: Annotated[float, BANDAGE_WIDTH.given] = BANDAGE_WIDTH.value,
    tape_mm: Annotated[float, TAPE_WIDTH.given] = TAPE_WIDTH.value,
    off_centre_mm: Annotated[float, Given("how far the tape is off centre", "mm", 0, 100)] = 0,
) -> Calculation:
    """Return the bare board left for the bandage to hold, on the narrow side of the tape.

    side = (bandage − tape) ÷ 2; narrow = side − off centre. Common practice wants 10 mm to show.

    Args:
        bandage_mm: width of the bandage, centred on the joint, 25–300 mm.
        tape_mm: width of the tape, 25–300 mm.
        off_centre_mm: how far the tape's middle lies off the joint, 0–100 mm.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the bandage doesn't reach past the tape.
    """
    side = yield Line(
        "side",
        "bare board each side, centred",
        "mm",
        (bandage_mm - tape_mm) / 2,
        "(bandage - tape) / 2",
        {
            "bandage": Part(bandage_mm, "mm", "width of bandage"),
            "tape": Part(tape_mm, "mm", "width of tape"),
        },
    )
    if side < off_centre_mm:
        raise Refused("The bandage doesn't reach past the tape: nothing is left for it to hold.")
    return (
        yield Line(
            "narrow",
            "bare board on the narrow side",
            "mm",
            side - off_centre_mm,
            "side - off_centre",
            {
                "side": Part(side, "mm", "bare board each side"),
                "off_centre": Part(off_centre_mm, "mm", "off centre"),
            },
        )
    )
