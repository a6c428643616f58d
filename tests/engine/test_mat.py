"""Mat by area: its glass, and resin for it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, glass_in_mat, line_keys, resin_for_area, resin_for_mat, work

AREAS = st.floats(0.001, 250)
RATIOS = st.floats(1.5, 4)
ALLOWANCES = st.floats(0, 50)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(glass_in_mat) == ("glass",)
    assert line_keys(resin_for_mat) == ("glass_kg", "net", "resin")
    assert line_keys(resin_for_area) == ("glass", "glass_kg", "net", "resin")


@pytest.mark.parametrize(
    ("area", "mat", "glass"), [(1, 450, 450), (20, 450, 9000), (0.3, 300, 90), (12.5, 600, 7500)]
)
def test_glass_is_area_times_weight(area: float, mat: float, glass: float) -> None:
    """A square metre of 450 g mat holds 450 g of glass."""
    assert answer(glass_in_mat(area, mat)) == pytest.approx(glass)


def test_resin_for_twenty_square_metres() -> None:
    """9 kg of glass at 2.5 to 1 take 22.5 kg, and a tenth on top makes 24.75 kg."""
    assert work(resin_for_area(20)).figures == pytest.approx(
        {"glass": 9000, "glass_kg": 9, "net": 22.5, "resin": 24.75}
    )


def test_without_an_allowance_there_is_only_the_laminate() -> None:
    """1000 g at 2.5 to 1 is 2.5 kg; half as much again is 3.75 kg."""
    assert answer(resin_for_mat(1000, 2.5, 0)) == pytest.approx(2.5)
    assert answer(resin_for_mat(1000, 2.5, 50)) == pytest.approx(3.75)


@given(AREAS, RATIOS, ALLOWANCES)
def test_twice_the_area_takes_twice_the_glass_and_resin(
    area_m2: float, ratio: float, allowance: float
) -> None:
    """Every line doubles with the area."""
    one = work(resin_for_area(area_m2, 450, ratio, allowance))
    two = work(resin_for_area(2 * area_m2, 450, ratio, allowance))
    assert two.figures == pytest.approx({key: 2 * each for key, each in one.figures.items()})


@given(st.floats(0.5, 250_000), RATIOS, ALLOWANCES)
def test_the_allowance_is_a_share_of_the_laminate(
    glass_g: float, ratio: float, allowance: float
) -> None:
    """What is on top, over what is in the laminate, is the allowance."""
    figures = work(resin_for_mat(glass_g, ratio, allowance)).figures
    on_top = (figures["resin"] - figures["net"]) / figures["net"]
    assert on_top * 100 == pytest.approx(allowance, abs=1e-9)


@given(AREAS, st.floats(100, 1200), RATIOS, ALLOWANCES)
def test_the_two_steps_come_to_the_chain(
    area_m2: float, mat: float, ratio: float, allowance: float
) -> None:
    """Glass first and resin from it is the same as both at once."""
    glass = answer(glass_in_mat(area_m2, mat))
    steps = answer(resin_for_mat.inside(glass, ratio, allowance))
    assert answer(resin_for_area(area_m2, mat, ratio, allowance)) == steps
