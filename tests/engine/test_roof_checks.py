"""Descriptions that no plan can be made from: each is one sentence, with its place."""

import pytest
from roofs_cast import ELL, GARAGE, SOLD, ell, garage, roof

from trainer.engine import BadRoof
from trainer.engine.plans.checks import check_roof, roof_mistakes
from trainer.engine.plans.description import Bandage, Boards, Fall, Laminate, Mix, RoofDescription
from trainer.engine.plans.openings import Opening, Outlet, Pipe, Rooflight

ROUND = tuple((n * 10, n * n) for n in range(2000))


@pytest.mark.parametrize(
    ("description", "where", "sentence"),
    [
        (roof(GARAGE[:2]), "outline", "has 2 corners; it needs 3 to 60"),
        (roof(ROUND), "outline", "has 2000 corners"),
        (roof((*GARAGE, GARAGE[1])), "outline", "Corners 2 and 5 lie in the same place"),
        (roof(GARAGE[::-1]), "outline", "go clockwise"),
        (roof(((0, 0), (3000, 0), (6000, 0))), "outline", "encloses nothing"),
        (roof(((0, 0), (3000, 3000), (3000, 0), (0, 3000))), "outline", "its sides cross"),
        (roof(((0, 0), (3000, 3000), (3000, 0), (0, 2000))), "outline", "crosses or touches"),
        (roof(((0, 0), (200_000, 0), (0, 2000))), "outline", "over 100 m long"),
        (roof(((0, 0), (90_000, 0), (90_000, 90_000))), "outline", "over 500 m²"),
        (roof(kinds=["drip"] * 3), "edge", "has 4 sides, and 3 are described"),
        (garage(fall=Fall(towards_edge=5)), "fall.towards_edge", "There is no number 5"),
        (garage(way_off_edge=9), "way_off_edge", "There is no number 9"),
        (garage(overruled={7: "mitre"}), "corner 7", "There is no number 7"),
        (garage(boards=Boards(6000, 3000)), "boards", "larger than the roof"),
        (
            garage(
                laminate=Laminate(lap_mm=300), sold=SOLD.__class__(20, 30, 300, 30, 3, 20, 500, 20)
            ),
            "laminate.lap_mm",
            "as wide as the roll",
        ),
        (
            garage(mix=Mix(least_percent=3, most_percent=2)),
            "mix.least_percent",
            "more than the most",
        ),
        (garage(bandage=Bandage(width_mm=40)), "bandage.width_mm", "narrower than the tape"),
    ],
)
def test_what_cannot_be_planned(description: RoofDescription, where: str, sentence: str) -> None:
    """The place says which field to mend, the sentence how."""
    with pytest.raises(BadRoof, match=sentence) as refused:
        check_roof(description)
    assert refused.value.where == where


@pytest.mark.parametrize(
    ("openings", "sentence"),
    [
        ((Rooflight(6, 1, 1, 1),), "lies outside"),
        ((Rooflight(4.5, 1, 1, 1),), "across an edge"),
        ((Pipe(5.16, 1, 110),), "across an edge"),
        ((Outlet(-3, 1, 80),), "lies outside"),
        ((Rooflight(0, 1, 1, 1),), "across an edge"),
        ((Pipe(1, 1, 110), Rooflight(0.9, 0.9, 1, 1)), "over another opening"),
    ],
)
def test_openings_lie_inside_and_apart(openings: tuple[Opening, ...], sentence: str) -> None:
    """None outside, across an edge, on it, or over another."""
    with pytest.raises(BadRoof, match=sentence) as refused:
        check_roof(garage(openings=openings))
    assert refused.value.where == f"opening {len(openings)}"


def test_an_opening_may_not_lie_in_the_missing_corner() -> None:
    """Inside the box round an L, and still outside the roof."""
    with pytest.raises(BadRoof, match="lies outside"):
        check_roof(ell(openings=(Pipe(7, 6, 110),)))


def test_all_that_is_wrong_is_told_at_once() -> None:
    """A form can show every mistake by its field."""
    description = garage(way_off_edge=9, openings=(Pipe(9, 9, 100),), boards=Boards(6000, 3000))
    assert [mistake.where for mistake in roof_mistakes(description)] == [
        "way_off_edge",
        "opening 1",
        "boards",
    ]


@pytest.mark.parametrize("description", [garage(), ell(), roof(ELL), roof(GARAGE)])
def test_sound_roofs_pass(description: RoofDescription) -> None:
    """Nothing is found where nothing is wrong."""
    check_roof(description)


def test_a_board_that_is_cut_to_the_roof_is_no_mistake() -> None:
    """A dormer under one board of its own size."""
    small = ((0, 0), (1600, 0), (1600, 1250), (0, 1250))
    check_roof(roof(small, boards=Boards(1600, 1250)))
