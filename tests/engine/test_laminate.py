"""The cured laminate: ratio, glass content, thickness."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    answer,
    glass_content_from_ratio,
    glass_content_laid,
    laminate_thickness,
    line_keys,
    ratio_from_glass_content,
    ratio_laid,
    resin_for_mat,
    work,
)

CONTENTS = st.floats(15, 45)
WEIGHTS = st.floats(100, 600)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(ratio_from_glass_content) == ("fraction", "ratio")
    assert line_keys(glass_content_from_ratio) == ("fraction", "content")
    assert line_keys(ratio_laid) == ("glass_kg", "ratio")
    assert line_keys(glass_content_laid) == ("laid.glass_kg", "laid.ratio", "fraction", "content")
    assert line_keys(laminate_thickness) == (
        "glass_kg_per_m2",
        "fraction",
        "glass",
        "resin",
        "thickness",
    )


def test_a_quarter_of_glass_is_three_to_one() -> None:
    """25 % glass leaves 75 % resin: three to one, and back."""
    assert answer(ratio_from_glass_content(25)) == pytest.approx(3)
    assert answer(glass_content_from_ratio(3)) == pytest.approx(25)


def test_what_a_laminate_came_out_at() -> None:
    """0.3375 kg of resin on 135 g of glass is 2.5 to 1, two sevenths of it glass."""
    assert answer(ratio_laid(135, 0.3375)) == pytest.approx(2.5)
    assert answer(glass_content_laid(135, 0.3375)) == pytest.approx(200 / 7)


@given(st.floats(1, 250_000), st.floats(1.5, 4))
def test_resin_for_mat_comes_out_at_its_ratio(glass_g: float, ratio: float) -> None:
    """Without an allowance the ratio that was planned is the ratio that was laid."""
    resin_kg = answer(resin_for_mat(glass_g, ratio, 0))
    assert answer(ratio_laid.inside(glass_g, resin_kg)) == pytest.approx(ratio)


@given(st.floats(1, 250_000), st.floats(0.01, 1000))
def test_glass_content_is_glass_over_everything(glass_g: float, resin_kg: float) -> None:
    """By mass, whatever way round it is worked."""
    content = answer(glass_content_laid(glass_g, resin_kg))
    assert content == pytest.approx(100 * glass_g / (glass_g + 1000 * resin_kg))


def test_the_thickness_of_a_layer() -> None:
    """450 g at 30 %: 0.1758 mm of glass and 0.875 mm of resin, 1.0508 mm together."""
    figures = work(laminate_thickness()).figures
    assert figures["glass"] == pytest.approx(0.45 / 2.56)
    assert figures["resin"] == pytest.approx(0.875)
    assert figures["thickness"] == pytest.approx(1.0508, abs=5e-5)


@given(WEIGHTS, CONTENTS)
def test_twice_the_mat_is_twice_as_thick(mat: float, content: float) -> None:
    """Thickness is proportional to the weight of the mat."""
    one = answer(laminate_thickness(mat, content))
    assert answer(laminate_thickness(2 * mat, content)) == pytest.approx(2 * one)


@given(WEIGHTS, st.floats(15, 44))
def test_more_glass_in_it_makes_it_thinner(mat: float, content: float) -> None:
    """The same mat with less resin is a thinner layer, and never thinner than its glass."""
    rich, lean = (work(laminate_thickness(mat, each)) for each in (content, content + 1))
    assert lean.value < rich.value
    assert lean.value > lean.figures["glass"] == pytest.approx(mat / 1000 / 2.56)


@given(WEIGHTS, CONTENTS, st.floats(2.4, 2.7), st.floats(1.05, 1.35))
def test_a_layer_weighs_what_went_into_it(
    mat: float, content: float, glass_density: float, cured_density: float
) -> None:
    """Glass and resin, each at its density, weigh together what the glass content says."""
    figures = work(laminate_thickness(mat, content, glass_density, cured_density)).figures
    weight = figures["glass"] * glass_density + figures["resin"] * cured_density
    assert weight == pytest.approx(mat / 1000 / (content / 100))
