"""Sides, and what corners make of the trims that meet there: common practice, no source."""

import pytest
from roofs_cast import DRIP, RAISED, WALL, ell, garage, roof

from trainer.engine.plans.description import CornerMakes, EdgeKind, RoofDescription
from trainer.engine.plans.sides import corners_of, sides_of


def makes(description: RoofDescription) -> list[CornerMakes]:
    """Return what the corners make, in order."""
    return [corner.makes for corner in corners_of(description, sides_of(description))]


def test_sides_run_from_corner_to_corner() -> None:
    """The last one back to the first."""
    sides = sides_of(garage())
    assert [side.length.value for side in sides] == pytest.approx([5.2, 2.9, 5.2, 2.9])
    assert (sides[3].start, sides[3].end) == ((0, 2900), (0, 0))
    assert [side.name for side in sides] == [
        "side 1, drip edge",
        "side 2, raised edge",
        "side 3, wall",
        "side 4, raised edge",
    ]


def test_a_skew_side_is_as_long_as_it_is() -> None:
    """3 m along and 4 m up is 5 m."""
    sides = sides_of(roof(((0, 0), (6000, 0), (3000, 4000))))
    assert [side.length_mm for side in sides] == [6000, 5000, 5000]


@pytest.mark.parametrize(
    ("one", "other", "made"),
    [
        (DRIP, DRIP, "mitre"),
        (RAISED, RAISED, "mitre"),
        (WALL, WALL, "mitre"),
        (DRIP, RAISED, "open end"),
        (RAISED, DRIP, "open end"),
        (RAISED, WALL, "nothing"),
        (WALL, DRIP, "nothing"),
    ],
)
def test_what_a_corner_makes(one: EdgeKind, other: EdgeKind, made: CornerMakes) -> None:
    """Two of one kind a mitre, a raised one that ends at a drip edge an open end; a wall none."""
    assert makes(roof(kinds=[one, other, WALL, WALL]))[1] == made


def test_the_corners_of_the_garage() -> None:
    """The raised sides end open at the drip edge in front, and at the wall behind."""
    assert makes(garage()) == ["open end", "open end", "nothing", "nothing"]


def test_a_corner_can_be_overruled() -> None:
    """Somebody saw what the rule can't know."""
    corners = corners_of(garage(overruled={3: "open end"}), sides_of(garage()))
    assert [corner.makes for corner in corners] == ["open end"] * 3 + ["nothing"]
    assert [corner.overruled for corner in corners] == [False, False, True, False]
    assert corners[2].why == "as you said"


def test_the_corners_of_an_l() -> None:
    """Walls meet walls in mitres of their fillets."""
    assert makes(ell()) == ["nothing", "open end", "nothing", "mitre", "nothing", "nothing"]
