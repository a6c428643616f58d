"""Several layers of mat: resin, thickness and weight.

Resin to glass 2.5 to 1: Practical Action, KnO-100378, p. 2 (published). A tenth more for deck,
bucket and roller, and half a kilogram of topcoat on a square metre: common practice.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    OutOfRange,
    answer,
    laminate_thickness,
    line_keys,
    resin_for_area,
    resin_for_layers,
    thickness_of_layers,
    weight_of_roof,
    weight_per_m2,
    work,
)

LAYERS = st.integers(1, 6)
MATS = st.floats(100, 1200)
RATIOS = st.floats(1.5, 4)
AREAS = st.floats(0.001, 80)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(resin_for_layers) == ("area", "glass", "glass_kg", "net", "resin")
    assert line_keys(thickness_of_layers) == (
        "content.fraction",
        "content.content",
        "layer.glass_kg_per_m2",
        "layer.fraction",
        "layer.glass",
        "layer.resin",
        "layer.thickness",
        "thickness",
    )
    assert line_keys(weight_per_m2) == ("glass", "resin", "weight")
    assert line_keys(weight_of_roof) == ("square.glass", "square.resin", "square.weight", "weight")


def test_resin_for_two_layers_by_hand() -> None:
    """12 m² twice is 24 m², 10.8 kg of glass, 27 kg of resin, 29.7 kg with a tenth on top."""
    figures = work(resin_for_layers(12, 2)).figures
    assert figures == pytest.approx(
        {"area": 24, "glass": 10_800, "glass_kg": 10.8, "net": 27, "resin": 29.7}
    )


@given(AREAS, LAYERS, MATS, RATIOS)
def test_so_many_layers_take_so_many_times_the_resin(
    area: float, layers: int, mat: float, ratio: float
) -> None:
    """One layer is resin for an area; each further one takes as much again."""
    one = answer(resin_for_area(area, mat, ratio))
    assert answer(resin_for_layers(area, layers, mat, ratio)) == pytest.approx(layers * one)


def test_the_thickness_of_two_layers_by_hand() -> None:
    """450 g/m² at 2.5 to 1: 0.45 ÷ 2.56 and 1.125 ÷ 1.20 mm make 1.1133 mm; twice is 2.2266."""
    figures = work(thickness_of_layers(2)).figures
    assert figures["content.content"] == pytest.approx(100 / 3.5)
    assert figures["layer.thickness"] == pytest.approx(1.1133, abs=5e-5)
    assert figures["thickness"] == pytest.approx(2.2266, abs=1e-4)


@given(LAYERS, MATS, RATIOS)
def test_layers_are_as_thick_as_so_many_single_ones(layers: int, mat: float, ratio: float) -> None:
    """And as one mat of their weight together."""
    content = 100 / (1 + ratio)
    thickness = answer(thickness_of_layers(layers, mat, ratio))
    assert thickness == pytest.approx(layers * answer(laminate_thickness.inside(mat, content)))
    assert thickness == pytest.approx(answer(thickness_of_layers.inside(1, layers * mat, ratio)))


def test_the_weight_of_a_square_metre_by_hand() -> None:
    """0.45 kg of glass, 1.125 kg of resin and 0.5 kg of topcoat are 2.075 kg; two layers 3.65."""
    figures = work(weight_per_m2()).figures
    assert figures == pytest.approx({"glass": 0.45, "resin": 1.125, "weight": 2.075})
    assert answer(weight_per_m2(2)) == pytest.approx(3.65)


@given(LAYERS, MATS, RATIOS)
def test_a_laminate_may_be_weighed_without_topcoat(layers: int, mat: float, ratio: float) -> None:
    """Then it is glass and its share of resin, and nothing else."""
    bare = answer(weight_per_m2(layers, mat, ratio, topcoat_kg_per_m2=0))
    assert bare == pytest.approx(layers * mat / 1000 * (1 + ratio))
    assert answer(weight_per_m2(layers, mat, ratio, 0.7)) == pytest.approx(bare + 0.7)


def test_the_weight_of_a_roof_by_hand() -> None:
    """15 m² at 2.075 kg is 31.125 kg."""
    assert answer(weight_of_roof(15)) == pytest.approx(31.125)


@given(AREAS, LAYERS, MATS, RATIOS)
def test_twice_the_roof_weighs_twice_as_much(
    area: float, layers: int, mat: float, ratio: float
) -> None:
    """Weight is proportional to area."""
    one = answer(weight_of_roof(area, layers, mat, ratio))
    assert answer(weight_of_roof(2 * area, layers, mat, ratio)) == pytest.approx(2 * one)


def test_figures_out_of_range_are_refused() -> None:
    """Seven layers make a boat."""
    with pytest.raises(OutOfRange, match="layers of mat is 7"):
        resin_for_layers(1, 7)
    with pytest.raises(OutOfRange, match="topcoat on a square metre is"):
        weight_per_m2(topcoat_kg_per_m2=1.1)
