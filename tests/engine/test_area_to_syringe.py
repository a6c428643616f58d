"""From an area of mat to the catalyst in one bucket. Dose and batch: common practice."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, catalyst_for_area, equal_batches, line_keys, resin_for_area, work


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(catalyst_for_area) == (
        *("glass", "glass_kg", "net", "resin"),
        *("limit", "batches", "batch"),
        *("mass", "volume"),
    )


def test_six_square_metres_by_hand() -> None:
    """2.7 kg of glass, 6.75 and 7.425 kg of resin; two litres are 2.2 kg: four batches.

    Each 1.85625 kg, at 2 % 37.125 g of catalyst, at 1.17 kg/L 31.731 ml.
    """
    figures = work(catalyst_for_area(6, limit_l=2)).figures
    assert figures["resin"] == pytest.approx(7.425)
    assert (figures["limit"], figures["batches"]) == (pytest.approx(2.2), 4)
    assert figures["batch"] == pytest.approx(1.85625)
    assert figures["mass"] == pytest.approx(37.125)
    assert figures["volume"] == pytest.approx(31.731, abs=5e-4)


@given(st.floats(0.5, 100), st.floats(0.5, 10))
def test_it_is_the_smaller_calculations_one_after_another(area_m2: float, limit_l: float) -> None:
    """A batch is what equal_batches makes of what resin_for_area comes to."""
    batch = answer(equal_batches.inside(answer(resin_for_area(area_m2)), limit_l))
    assert work(catalyst_for_area(area_m2, limit_l=limit_l)).figures["batch"] == batch


@given(st.floats(0.5, 100))
def test_a_batch_never_gets_more_than_its_limit(area_m2: float) -> None:
    """A litre is 1.1 kg; at 2 % that is 22 g, to the gram that batches are counted by."""
    assert work(catalyst_for_area(area_m2)).figures["mass"] <= 22.02
