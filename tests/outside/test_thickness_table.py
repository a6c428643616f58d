"""Thickness of one cured layer against a standard's formula.

ISO 12215-5:2008, Annex C, Eq. C.1 (cited second-hand: read in a public text that cites it):
thickness in mm = w ÷ 3.072 × (2.56 ÷ ψ − 1.36), w in kg/m² of dry glass, ψ the glass content
by mass. The table below is worked from it by hand, to four decimals.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, laminate_thickness
from trainer.engine.materials import CURED_RESIN_DENSITY, GLASS_DENSITY, RESIN_DENSITY

CONTENTS = (25, 28, 30, 33)
TABLE = {
    225: (0.6504, 0.5700, 0.5254, 0.4686),
    300: (0.8672, 0.7600, 0.7005, 0.6248),
    450: (1.3008, 1.1401, 1.0508, 0.9371),
    600: (1.7344, 1.5201, 1.4010, 1.2495),
}
ROWS = [
    (mat, content, thickness)
    for mat, row in TABLE.items()
    for content, thickness in zip(CONTENTS, row, strict=True)
]


@pytest.mark.parametrize(("mat", "content", "thickness"), ROWS)
def test_the_table(mat: float, content: float, thickness: float) -> None:
    """Each mat at each glass content, to the last decimal of the table."""
    assert answer(laminate_thickness(mat, content)) == pytest.approx(thickness, abs=5.1e-5)


@given(st.floats(100, 1200), st.floats(15, 45))
def test_the_mass_balance_is_the_formula_of_the_standard(mat: float, content: float) -> None:
    """At 2.56 and 1.20 kg/L the two are one: 3.072 is their product, 1.36 their difference."""
    formula = mat / 1000 / 3.072 * (2.56 / (content / 100) - 1.36)
    assert answer(laminate_thickness(mat, content)) == pytest.approx(formula)


def test_the_constants_of_the_standard() -> None:
    """Cited second-hand: 2.56 × 1.20 is 3.072, and 2.56 − 1.20 is 1.36."""
    assert GLASS_DENSITY.value * CURED_RESIN_DENSITY.value == pytest.approx(3.072)
    assert GLASS_DENSITY.value - CURED_RESIN_DENSITY.value == pytest.approx(1.36)
    assert {GLASS_DENSITY.standing, CURED_RESIN_DENSITY.standing} == {"cited second-hand"}


def test_the_liquid_density_would_overstate_it() -> None:
    """Resin shrinks as it cures: at 30 % glass 1.10 for 1.20 kg/L is 7.6 % too thick (derived)."""
    cured = answer(laminate_thickness(450, 30))
    liquid = answer(laminate_thickness(450, 30, cured_kg_per_l=RESIN_DENSITY.value))
    assert (liquid / cured - 1) * 100 == pytest.approx(7.6, abs=0.05)
