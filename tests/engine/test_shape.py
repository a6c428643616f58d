"""The shape of a deck: area and sides. The surveyor's rule for any outline: from memory."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import (
    Refused,
    answer,
    area_left,
    l_shape_area,
    line_keys,
    outline_area,
    rectangle_area,
    side_length,
    work,
)

METRES = st.floats(0.1, 100)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(rectangle_area) == ("area",)
    assert line_keys(l_shape_area) == ("whole", "missing", "area")
    assert line_keys(outline_area) == ("twice", "area")
    assert line_keys(side_length) == ("length",)
    assert line_keys(area_left) == ("openings", "left")


def test_a_rectangle() -> None:
    """5.2 by 2.9 m is 15.08 m²."""
    assert answer(rectangle_area(5.2, 2.9)) == pytest.approx(15.08)


def test_an_l() -> None:
    """9 by 8 m is 72 m²; 4.5 by 4 m is missing; 54 m² are left."""
    assert work(l_shape_area(9, 8, 4.5, 4)).figures == pytest.approx(
        {"whole": 72, "missing": 18, "area": 54}
    )


def test_an_l_needs_a_corner_smaller_than_itself() -> None:
    """As long as the whole, it would leave a rectangle."""
    with pytest.raises(Refused, match="shorter and narrower"):
        answer(l_shape_area(9, 8, 9, 4))


def test_the_same_l_by_its_corners() -> None:
    """Half of 108 m², the way a surveyor does it."""
    worked = work(outline_area((0, 9, 9, 4.5, 4.5, 0), (0, 0, 4, 4, 8, 8)))
    assert worked.figures == pytest.approx({"twice": 108, "area": 54})


def test_a_triangle_by_its_corners() -> None:
    """Half of base times height: 6 by 4 m is 12 m²."""
    assert answer(outline_area((0, 6, 0), (0, 0, 4))) == pytest.approx(12)


def test_corners_that_go_clockwise_are_refused() -> None:
    """The rule would give an area below zero."""
    with pytest.raises(Refused, match="clockwise"):
        answer(outline_area((0, 0, 6), (0, 4, 0)))


def test_each_corner_has_two_places() -> None:
    """A list that is one short is a slip."""
    with pytest.raises(Refused, match="as many"):
        answer(outline_area((0, 6, 0), (0, 0)))


def test_a_skew_side() -> None:
    """3 m along and 4 m up is 5 m: the oldest example there is."""
    assert answer(side_length(3, 4)) == pytest.approx(5)
    assert answer(side_length(3, 0)) == pytest.approx(3)


def test_openings_are_taken_off() -> None:
    """15.08 m² less 1.08 and 0.5 m² is 13.5 m²."""
    assert answer(area_left(15.08, (1.08, 0.5))) == pytest.approx(13.5)
    with pytest.raises(Refused, match="whole deck"):
        answer(area_left(2, (1, 1)))


@given(METRES, METRES)
def test_a_rectangle_by_its_corners_is_length_times_width(length: float, width: float) -> None:
    """Two ways to the same area."""
    by_corners = answer(outline_area((0, length, length, 0), (0, 0, width, width)))
    assert by_corners == pytest.approx(answer(rectangle_area(length, width)))


@given(METRES, METRES, st.floats(0, 50), st.floats(0, 50))
def test_a_roof_may_be_measured_from_anywhere(
    length: float, width: float, along: float, up: float
) -> None:
    """Moving every corner changes no area."""
    there = (along, along + length, along), (up, up, up + width)
    with_ranges = outline_area.inside(*there)
    assert answer(with_ranges) == pytest.approx(length * width / 2, rel=1e-6, abs=1e-9)
