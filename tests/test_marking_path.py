"""What marking an answer reads: neither the polygon clipper nor the search for cuts."""

import subprocess
import sys

#: Everything that a mark is made of, read in an interpreter of its own.
MARKING = "import trainer.engine.marking, trainer.lessons.marks, trainer.lessons.calculate"
HEAVY = ("pyclipper", "trainer.engine.plans.cut_search")


def imported_for(code: str) -> set[str]:
    """Return the modules that are read for a piece of code, as `-X importtime` lists them."""
    command = [sys.executable, "-X", "importtime", "-c", code]
    told = subprocess.run(command, capture_output=True, text=True, check=True).stderr  # noqa: S603
    return {line.rpartition("|")[2].strip() for line in told.splitlines() if "|" in line}


def test_marking_reads_no_clipper_and_no_search() -> None:
    """They are for planning a roof; a trainee's answer doesn't wait for them."""
    names = imported_for(MARKING)
    assert "trainer.engine.marking" in names
    assert names.isdisjoint(HEAVY)


def test_planning_a_roof_reads_both() -> None:
    """The net holds: whoever plans a roof does read them."""
    code = (
        "from trainer.engine import outline as o; from trainer.engine.plans import stock_cuts as s"
    )
    code += "; o.area_mm2(()); s.cut_from_stock([1200], 3000)"
    assert imported_for(code).issuperset(HEAVY)
