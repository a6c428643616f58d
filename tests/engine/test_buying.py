"""What to buy for a roof: every count rounded up to whole rolls, lengths, tins and bottles."""

from dataclasses import replace

import pytest
from roofs_cast import SOLD, ell, garage

from trainer.engine.plans.buying import Purchase
from trainer.engine.plans.description import Boards, Edge, RoofDescription
from trainer.engine.plans.roof import plan_roof


def bought(roof: RoofDescription) -> dict[str, Purchase]:
    """Return what to buy by its first word or two."""
    return {each.what.partition(",")[0]: each for each in plan_roof(roof).purchases}


def test_what_the_garage_takes() -> None:
    """16.6 m of tape, 32.7 m of bandage, 15.9 m of mat; two lengths of each trim; 22.4 kg."""
    counts = {what: each.count.value for what, each in bought(garage()).items()}
    assert counts == {
        "tape": 1,
        "bandage": 2,
        "mat": 1,
        "drip trim": 2,
        "raised edge trim": 2,
        "wall fillet": 2,
        "resin": 2,
        "topcoat": 1,
        "catalyst": 2,
    }


def test_what_is_needed_stands_beside_what_is_sold() -> None:
    """So that somebody with a half roll in the van can see what is short."""
    tape = bought(garage())["tape"]
    assert (tape.needed, tape.each) == ("16.6\u00a0m", "20\u00a0m")


def test_a_deck_without_open_joints_needs_no_tape() -> None:
    """Nothing is bought that isn't used."""
    assert "tape" not in bought(garage(boards=Boards(width_mm=590, edge="tongued")))


@pytest.mark.parametrize("roof", [garage(), ell()])
def test_smaller_tins_are_more_tins(roof: RoofDescription) -> None:
    """And never hold less than the roof takes."""
    small = replace(roof, sold=replace(SOLD, resin_tin_kg=5))
    resin = plan_roof(small).stages[:-1]
    tins = bought(small)["resin"].count.value
    needed = sum(stage.resin.value for stage in resin)
    assert needed <= tins * 5 < needed + 5
    assert tins > bought(roof)["resin"].count.value


def test_mat_that_is_turned_is_needed_too() -> None:
    """15.9 m of drops, and 5.2 m up a wall with its lap, 200 mm high: 1.04 m of the roll more."""
    edges = (Edge("drip"), Edge("raised"), Edge("wall", 150), Edge("raised"))
    assert bought(garage())["mat"].needed == "15.9\u00a0m"
    assert bought(replace(garage(), edges=edges))["mat"].needed == "16.94\u00a0m"
