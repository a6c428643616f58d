"""A roof in sentences: each count and each size that the drawing shows."""

import re

import pytest
from web_drawing import Drawing, ell, garage, outbuilding, planned, skew

from trainer.engine.plans.description import Edge, Fall
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing import describe_roof

EVERY = [garage(), ell(), skew(), outbuilding()]


def told(plan: RoofPlan) -> str:
    """All sentences, with plain spaces."""
    return " ".join(describe_roof(plan)).replace("\u00a0", " ")


@pytest.mark.parametrize("plan", EVERY)
def test_sentences_are_short(plan: RoofPlan) -> None:
    """None over 25 words, and 14 at the most on average."""
    lengths = [len(sentence.split()) for sentence in describe_roof(plan)]
    assert max(lengths) <= 25
    assert sum(lengths) / len(lengths) <= 14


@pytest.mark.parametrize("plan", EVERY)
def test_each_is_one_whole_sentence(plan: RoofPlan) -> None:
    """It begins with a capital or a figure, and ends with a full stop."""
    for sentence in describe_roof(plan):
        assert re.fullmatch(r"[A-Z0-9][^!?]*\.", sentence)
        assert "  " not in sentence


def test_a_garage_is_told_from_edge_to_fall() -> None:
    """Worked by hand: 5.2 by 2.9 m, boards of 2440 by 1220 mm, mat a metre wide."""
    edges = (Edge("drip"), Edge("raised"), Edge("wall", 150), Edge("raised"))
    assert told(garage(edges=edges, fall=Fall(60))).split(". ") == [
        "The roof is 5.2 m long and 2.9 m wide, and has 4 sides",
        "The area inside its edges is 15.08 m²",
        "Side 1 is a drip edge, 5.2 m long",
        "Side 2 is a raised edge, 2.9 m long",
        "Side 3 is a wall, 5.2 m long",
        "At side 3 mat is turned up by 150 mm",
        "Side 4 is a raised edge, 2.9 m long",
        "The ladder stands at side 1, which is laid last",
        "Open ends lie at corners 1 and 2",
        "9 boards lie along the roof; 3 of them are whole",
        "8 open joints are taped",
        "Bandage is numbered from 1 to 16, in laying order",
        "It has 4 strips along sides",
        "It has 2 scraps over trim joins",
        "It has 8 strips over open joints",
        "It has 2 patches over open ends",
        "Mat lies in 1 layer; its drops run along the roof",
        "Layer 1 takes 3 drops",
        "Each drop laps 50 mm on to the one before",
        "Water runs to side 1, at a fall of 1:60.",
    ]


def test_sides_are_told_one_by_one() -> None:
    """A skew side to the millimetre that its corners are given to."""
    for side in skew().sides:
        assert f"Side {side.number} is a" in told(skew())


def test_openings_are_told_with_their_place_from_the_lower_left() -> None:
    """Wherever the corners are counted from."""
    assert "Rooflight 1 is 1.2 m by 0.9 m, with a kerb of 150 mm." in told(ell())
    assert "Its lower left corner lies 1.2 m from the far left and 5.6 m from the bottom." in told(
        ell()
    )
    assert "Pipe 2 is 110 mm across. Its middle lies 6.3 m from the far left" in told(ell())


def test_cut_joints_that_were_measured_are_told_apart() -> None:
    """They are taped like others, and not drawn."""
    assert "2 open joints are taped. 2 of them are cut joints, and not drawn." in told(
        outbuilding()
    )


def test_layers_and_trimmed_drops_are_told() -> None:
    """With how far laps are shifted."""
    said = told(ell())
    assert "Mat lies in 2 layers; its drops run along the roof." in said
    assert "Layer 1 takes 9 drops. Layer 2 takes 9 drops." in said
    assert "Laps are shifted by 475 mm from layer to layer." in said
    assert "Drop 9 of layer 1 has 600 mm cut off its width." in said


def test_a_roof_of_one_drop_laps_nowhere() -> None:
    """Nothing is said of laps where there are none."""
    plan = planned(((0, 0), (4000, 0), (4000, 900), (0, 900)), ["drip"] * 4)
    assert "laps" not in told(plan)


@pytest.mark.parametrize(
    ("part", "own", "others"), [("deck", "Bandage", "Layer 1"), ("mat", "Layer 1", "Bandage")]
)
def test_a_picture_is_described_by_what_it_shows(part: str, own: str, others: str) -> None:
    """Its size, and its own counts."""
    desc = Drawing(ell(), part).find("desc")
    assert desc.startswith("The roof is 9\u00a0m long and 8\u00a0m wide")
    assert own in desc
    assert others not in desc
