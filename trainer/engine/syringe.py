"""The syringe: the mark to draw up to, and what reading a mark does to the dose."""

from math import ceil
from typing import Annotated

from trainer.engine.errors import Refused
from trainer.engine.materials import GRADUATION
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation


@calculation
def syringe_mark(
    volume_ml: Annotated[float, Given("volume of catalyst", "ml", 0.1, 10_000)],
    graduation_ml: Annotated[float, GRADUATION.given] = GRADUATION.value,
) -> Calculation:
    """Return the percent by which the nearest mark of a syringe departs from a volume.

    mark = (volume ÷ graduation − 0.5, rounded up) × graduation; error = (mark − volume) ÷
    volume × 100. Halfway between two marks it is the lower one. The error is below zero where
    too little is drawn up.

    Args:
        volume_ml: catalyst wanted, 0.1–10 000 ml.
        graduation_ml: millilitres from one mark to the next, 0.05–50.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the volume is no more than half a graduation, so the nearest mark is nothing.
    """
    marks = ceil(volume_ml / graduation_ml - 0.5)
    if marks < 1:
        raise Refused("That is less than half of one mark. Take a finer syringe.")
    volume = Part(volume_ml, "ml", "volume of catalyst")
    mark = yield Line(
        "mark",
        "nearest mark",
        "ml",
        marks * graduation_ml,
        "ceil(volume / graduation - 0.5) * graduation",
        {"volume": volume, "graduation": Part(graduation_ml, "ml", "one graduation")},
    )
    return (
        yield Line(
            "error",
            "error that the mark makes",
            "%",
            (mark - volume_ml) / volume_ml * 100,
            "(mark - volume) / volume * 100",
            {"mark": Part(mark, "ml", "nearest mark"), "volume": volume},
        )
    )
