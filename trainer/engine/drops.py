"""Drops of mat across a deck: how many, what the last one is trimmed by, and mat off the roll."""

from typing import Annotated

from trainer.engine.conversions import MM_PER_M, rounded_up, whole_mm
from trainer.engine.errors import Refused
from trainer.engine.materials import MAT_LAP, STAGGER
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Run = Annotated[float, Given("run to cover", "m", 0.1, 100)]
RollWidth = Annotated[float, Given("width of the roll", "mm", 200, 3000)]
Lap = Annotated[float, MAT_LAP.given]


def lapped(key: str, words: str, unit: str, run: Part, roll: Part, lap: Part) -> Line:
    """Return the line that says how many rolls' widths, or lengths, cover a run with laps.

    All three are whole millimetres. Each one after the first adds its size less a lap:
    (run − lap) ÷ (roll − lap), rounded up; one at the least, however short the run.

    Raises Refused where the lap takes up the whole roll.
    """
    if lap.value >= roll.value:
        raise Refused("The lap is as large as the roll, so nothing is gained: take a smaller lap.")
    count = rounded_up(round(run.value - lap.value), round(roll.value - lap.value))
    formula = "ceil((run - lap) / (roll - lap))"
    if count < 1:
        count, formula = 1, f"max(1, {formula})"
    return Line(key, words, unit, count, formula, {"run": run, "lap": lap, "roll": roll})


def _drops(run_m: float, roll_mm: float, lap_mm: float) -> Line:
    return lapped(
        "drops",
        "drops across the run",
        "drops",
        Part(whole_mm(run_m), "mm", "run"),
        Part(round(roll_mm), "mm", "width of the roll"),
        Part(round(lap_mm), "mm", "lap"),
    )


@calculation
def mat_drops(run_m: Run, roll_mm: RollWidth, lap_mm: Lap = MAT_LAP.value) -> Calculation:
    """Return the drops of mat that cover a run, each lapped on to the one before.

    drops = (run − lap) ÷ (roll − lap), in whole millimetres, rounded up. A lap of mat on mat is
    at least 50 mm: Rules for Classification of FRP Ships, Iranian Classification Society, 2014,
    301.

    Args:
        run_m: what the drops cover side by side, 0.1–100 m.
        roll_mm: width of the roll, 200–3000 mm.
        lap_mm: lap of one drop on the next, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the lap is as wide as the roll.
    """
    return (yield _drops(run_m, roll_mm, lap_mm))


@calculation
def last_drop(run_m: Run, roll_mm: RollWidth, lap_mm: Lap = MAT_LAP.value) -> Calculation:
    """Return the millimetres that are trimmed off the width of the last drop.

    covered = drops × (roll − lap) + lap; trimmed = covered − run.

    Args:
        run_m: what the drops cover side by side, 0.1–100 m.
        roll_mm: width of the roll, 200–3000 mm.
        lap_mm: lap of one drop on the next, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the lap is as wide as the roll.
    """
    drops = yield _drops(run_m, roll_mm, lap_mm)
    roll, lap, run = round(roll_mm), round(lap_mm), whole_mm(run_m)
    covered = yield Line(
        "covered",
        "width that all drops cover",
        "mm",
        drops * (roll - lap) + lap,
        "drops * (roll - lap) + lap",
        {
            "drops": Part(drops, "", "drops"),
            "roll": Part(roll, "mm", "width of the roll"),
            "lap": Part(lap, "mm", "lap"),
        },
    )
    return (
        yield Line(
            "trimmed",
            "trimmed off the last drop",
            "mm",
            covered - run,
            "covered - run",
            {
                "covered": Part(covered, "mm", "width that all drops cover"),
                "run": Part(run, "mm", "run"),
            },
        )
    )


@calculation
def mat_length(
    run_m: Run,
    drop_m: Annotated[float, Given("length of a drop on the roof", "m", 0.1, 100)],
    roll_mm: RollWidth,
    lap_mm: Lap = MAT_LAP.value,
    over_mm: Annotated[float, Given("mat over each end of a drop", "mm", 0, 300)] = 0,
) -> Calculation:
    """Return the metres of mat off the roll for a rectangle of equal drops.

    each = drop + 2 × over; length = drops × each.

    Args:
        run_m: what the drops cover side by side, 0.1–100 m.
        drop_m: length of a drop on the roof, 0.1–100 m.
        roll_mm: width of the roll, 200–3000 mm.
        lap_mm: lap of one drop on the next, 0–300 mm.
        over_mm: turned or trimmed at each end of a drop, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the lap is as wide as the roll.
    """
    drops = yield _drops(run_m, roll_mm, lap_mm)
    each = yield Line(
        "each",
        "length of one drop",
        "m",
        drop_m + 2 * over_mm / MM_PER_M.value,
        "drop + 2 * over / mm_per_m",
        {
            "drop": Part(drop_m, "m", "drop on the roof"),
            "over": Part(over_mm, "mm", "over each end"),
            "mm_per_m": MM_PER_M,
        },
    )
    return (
        yield Line(
            "length",
            "mat off the roll",
            "m",
            drops * each,
            "drops * each",
            {"drops": Part(drops, "", "drops"), "each": Part(each, "m", "length of one drop")},
        )
    )


@calculation
def mat_rolls(
    length_m: Annotated[float, Given("mat off the roll", "m", 0.1, 5000)],
    roll_m: Annotated[float, Given("length of a roll", "m", 5, 200)],
) -> Calculation:
    """Return the rolls of mat for a length of it, rounded up.

    rolls = length ÷ roll, in whole millimetres, rounded up. Drops that must each be of one piece
    may take a roll more.

    Args:
        length_m: mat off the roll, 0.1–5000 m.
        roll_m: length of one roll, 5–200 m.

    Raises:
        OutOfRange: an argument outside its range.
    """
    length, roll = whole_mm(length_m), whole_mm(roll_m)
    return (
        yield Line(
            "rolls",
            "rolls of mat",
            "rolls",
            rounded_up(length, roll),
            "ceil(length / roll)",
            {
                "length": Part(length, "mm", "mat off the roll"),
                "roll": Part(roll, "mm", "length of a roll"),
            },
        )
    )


@calculation
def lap_shift(
    roll_mm: RollWidth,
    lap_mm: Lap = MAT_LAP.value,
    layers: Annotated[int, Given("layers of mat", "", 2, 6)] = 2,
) -> Calculation:
    """Return the millimetres that laps of each layer are moved from those of the layer below.

    pitch = roll − lap; shift = pitch ÷ layers, so that the laps of all layers lie evenly.
    At least 100 mm between the centre lines of laps in adjacent layers: Rules for Classification
    of FRP Ships, Iranian Classification Society, 2014, 301.

    Args:
        roll_mm: width of the roll, 200–3000 mm.
        lap_mm: lap of one drop on the next, 0–300 mm.
        layers: layers of mat, 2–6.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the laps of two layers would come too close.
    """
    pitch = yield Line(
        "pitch",
        "from one lap to the next",
        "mm",
        roll_mm - lap_mm,
        "roll - lap",
        {
            "roll": Part(roll_mm, "mm", "width of the roll"),
            "lap": Part(lap_mm, "mm", "lap"),
        },
    )
    if pitch / layers < STAGGER.value:
        raise Refused(
            f"The laps of two layers would lie under {STAGGER.value:g} mm apart: "
            "take a wider roll or fewer layers."
        )
    return (
        yield Line(
            "shift",
            "shift of the laps from layer to layer",
            "mm",
            pitch / layers,
            "pitch / layers",
            {
                "pitch": Part(pitch, "mm", "from one lap to the next"),
                "layers": Part(layers, "", "layers"),
            },
        )
    )
