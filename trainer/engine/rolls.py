"""Rolls, tins and bottles to take along, and the pieces that a long run is laid in."""

from typing import Annotated

from trainer.engine.conversions import rounded_up, whole_g, whole_mm
from trainer.engine.drops import lapped
from trainer.engine.materials import MAT_LAP
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

RollLength = Annotated[float, Given("length of a roll", "m", 5, 200)]
Run = Annotated[float, Given("run to lay", "m", 0.01, 500)]
Lap = Annotated[float, MAT_LAP.given]


@calculation
def bandage_rolls(
    bandage_m: Annotated[float, Given("bandage to cut", "m", 0.05, 5000)], roll_m: RollLength
) -> Calculation:
    """Return the rolls of bandage to take along, rounded up.

    rolls = bandage ÷ roll, in whole millimetres, rounded up.

    Args:
        bandage_m: bandage to cut, 0.05–5000 m.
        roll_m: length of one roll, 5–200 m.

    Raises:
        OutOfRange: an argument outside its range.
    """
    bandage, roll = whole_mm(bandage_m), whole_mm(roll_m)
    return (
        yield Line(
            "rolls",
            "rolls to take",
            "rolls",
            rounded_up(bandage, roll),
            "ceil(bandage / roll)",
            {
                "bandage": Part(bandage, "mm", "bandage to cut"),
                "roll": Part(roll, "mm", "length of a roll"),
            },
        )
    )


def _pieces(run_m: float, roll_m: float, lap_mm: float) -> Line:
    return lapped(
        "pieces",
        "pieces in the run",
        "pieces",
        Part(whole_mm(run_m), "mm", "run"),
        Part(whole_mm(roll_m), "mm", "length of a roll"),
        Part(round(lap_mm), "mm", "lap"),
    )


@calculation
def pieces_in_run(run_m: Run, roll_m: RollLength, lap_mm: Lap = MAT_LAP.value) -> Calculation:
    """Return the pieces of a run that may be longer than the roll.

    pieces = (run − lap) ÷ (roll − lap), in whole millimetres, rounded up; a run that fits is one.
    A lap of mat on mat is at least 50 mm: Rules for Classification of FRP Ships, Iranian
    Classification Society, 2014, 301.

    Args:
        run_m: length to cover, 0.01–500 m.
        roll_m: length of one roll, 5–200 m.
        lap_mm: lap of one piece on the next, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the lap is as long as the roll.
    """
    return (yield _pieces(run_m, roll_m, lap_mm))


@calculation
def laps_in_run(run_m: Run, roll_m: RollLength, lap_mm: Lap = MAT_LAP.value) -> Calculation:
    """Return the laps in a run that may be longer than the roll.

    laps = pieces − 1.

    Args:
        run_m: length to cover, 0.01–500 m.
        roll_m: length of one roll, 5–200 m.
        lap_mm: lap of one piece on the next, 0–300 mm.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the lap is as long as the roll.
    """
    pieces = yield _pieces(run_m, roll_m, lap_mm)
    parts = {"pieces": Part(pieces, "", "pieces in the run")}
    return (yield Line("laps", "laps in the run", "laps", pieces - 1, "pieces - 1", parts))


@calculation
def tins(
    mass_kg: Annotated[float, Given("resin to take", "kg", 0.01, 5000)],
    tin_kg: Annotated[float, Given("resin in a tin", "kg", 0.5, 250)],
) -> Calculation:
    """Return the tins of resin or topcoat to take along, rounded up.

    tins = mass ÷ tin, in whole grams, rounded up.

    Args:
        mass_kg: resin or topcoat, 0.01–5000 kg.
        tin_kg: what one tin holds, 0.5–250 kg.

    Raises:
        OutOfRange: an argument outside its range.
    """
    mass, tin = whole_g(mass_kg), whole_g(tin_kg)
    parts = {"mass": Part(mass, "g", "resin to take"), "tin": Part(tin, "g", "resin in a tin")}
    return (
        yield Line("tins", "tins to take", "tins", rounded_up(mass, tin), "ceil(mass / tin)", parts)
    )


@calculation
def bottles(
    volume_ml: Annotated[float, Given("catalyst to take", "ml", 1, 200_000)],
    bottle_ml: Annotated[float, Given("catalyst in a bottle", "ml", 10, 25_000)],
) -> Calculation:
    """Return the bottles of catalyst to take along, rounded up.

    bottles = volume ÷ bottle, in whole millilitres, rounded up.

    Args:
        volume_ml: catalyst, 1–200 000 ml.
        bottle_ml: what one bottle holds, 10–25 000 ml.

    Raises:
        OutOfRange: an argument outside its range.
    """
    volume, bottle = round(volume_ml), round(bottle_ml)
    return (
        yield Line(
            "bottles",
            "bottles to take",
            "bottles",
            rounded_up(volume, bottle),
            "ceil(volume / bottle)",
            {
                "volume": Part(volume, "ml", "catalyst to take"),
                "bottle": Part(bottle, "ml", "catalyst in a bottle"),
            },
        )
    )
