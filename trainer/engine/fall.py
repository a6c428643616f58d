"""The fall of a roof: how far it drops over a run, and what a measured drop comes to."""

from typing import Annotated

from trainer.engine.conversions import MM_PER_M
from trainer.engine.materials import FALL_DESIGN
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Run = Annotated[float, Given("run of the fall", "m", 0.1, 100)]
Ratio = Annotated[float, FALL_DESIGN.given]


@calculation
def fall_drop(run_m: Run, ratio: Ratio = FALL_DESIGN.value) -> Calculation:
    """Return the millimetres that a roof drops over a run, at a fall of one in so many.

    drop = run ÷ ratio. One in 40 is designed, so that the finished roof keeps one in 80:
    NHBC Standards, ch. 7.1 (2004 amendment); BS 6229:2018 (cited second-hand).

    Args:
        run_m: length of the roof the way the water runs, 0.1–100 m.
        ratio: the run that drops by one of its own kind, 10–200.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "drop",
            "drop over the run",
            "mm",
            run_m * MM_PER_M.value / ratio,
            "run * mm_per_m / ratio",
            {
                "run": Part(run_m, "m", "run"),
                "mm_per_m": MM_PER_M,
                "ratio": Part(ratio, "", "fall of one in"),
            },
        )
    )


@calculation
def fall_ratio(
    run_m: Run, drop_mm: Annotated[float, Given("drop over the run", "mm", 1, 5000)]
) -> Calculation:
    """Return the fall, as one in so many, from the drop that was measured over a run.

    ratio = run ÷ drop.

    Args:
        run_m: length of the roof the way the water runs, 0.1–100 m.
        drop_mm: what the level and the spacer show over the whole run, 1–5000 mm.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "ratio",
            "fall of one in",
            "",
            run_m * MM_PER_M.value / drop_mm,
            "run * mm_per_m / drop",
            {
                "run": Part(run_m, "m", "run"),
                "mm_per_m": MM_PER_M,
                "drop": Part(drop_mm, "mm", "drop over the run"),
            },
        )
    )


@calculation
def drop_per_metre(ratio: Ratio = FALL_DESIGN.value) -> Calculation:
    """Return the millimetres that a roof drops in each metre, at a fall of one in so many.

    drop = 1000 mm in a metre ÷ ratio; one in 40 is 25 mm in a metre.

    Args:
        ratio: the run that drops by one of its own kind, 10–200.

    Raises:
        OutOfRange: the ratio is outside its range.
    """
    return (
        yield Line(
            "drop",
            "drop in a metre",
            "mm/m",
            MM_PER_M.value / ratio,
            "mm_per_m / ratio",
            {"mm_per_m": MM_PER_M, "ratio": Part(ratio, "", "fall of one in")},
        )
    )
