"""The patch over an open end, and resin for several. 50 mm on to each face: common practice."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import answer, line_keys, open_end_patch, resin_for_patches, work

SIDES = st.floats(10, 500)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(open_end_patch) == ("across", "up", "area")
    assert line_keys(resin_for_patches) == (
        "patch.across",
        "patch.up",
        "patch.area",
        "area",
        "glass",
        "glass_kg",
        "net",
        "resin",
    )


def test_a_patch_wraps_on_to_every_face() -> None:
    """60 by 40 mm and 50 mm all round is 160 by 140 mm, 0.0224 m²."""
    assert work(open_end_patch(60, 40)).figures == pytest.approx(
        {"across": 160, "up": 140, "area": 0.0224}
    )


def test_resin_for_three_patches() -> None:
    """0.0672 m², 30.24 g, 0.0756 kg in the laminate, 0.08316 kg with a tenth on top."""
    figures = work(resin_for_patches(60, 40, 3)).figures
    assert figures["area"] == pytest.approx(0.0672)
    assert figures["glass"] == pytest.approx(30.24)
    assert figures["net"] == pytest.approx(0.0756)
    assert figures["resin"] == pytest.approx(0.08316)


@given(SIDES, SIDES)
def test_a_patch_may_be_turned(width_mm: float, height_mm: float) -> None:
    """Width and height can change places."""
    turned = answer(open_end_patch(height_mm, width_mm))
    assert answer(open_end_patch(width_mm, height_mm)) == pytest.approx(turned)


@given(SIDES, SIDES, st.floats(10, 150))
def test_a_patch_is_larger_than_its_end(width_mm: float, height_mm: float, wrap_mm: float) -> None:
    """The end itself, four strips and four corners: nothing else."""
    area_mm2 = answer(open_end_patch(width_mm, height_mm, wrap_mm)) * 1_000_000
    strips = 2 * wrap_mm * (width_mm + height_mm)
    assert area_mm2 == pytest.approx(width_mm * height_mm + strips + 4 * wrap_mm**2)


@given(SIDES, SIDES, st.integers(1, 100))
def test_so_many_patches_take_so_many_times_the_resin(
    width_mm: float, height_mm: float, patches: int
) -> None:
    """Resin is proportional to the number of ends."""
    one = answer(resin_for_patches(width_mm, height_mm))
    assert answer(resin_for_patches(width_mm, height_mm, patches)) == pytest.approx(patches * one)
