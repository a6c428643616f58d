"""Bandage of a roof: one strip per trim edge and open joint, scraps, and patches."""

from collections import Counter

import pytest
from roofs_cast import SOLD, ell, garage

from trainer.engine.plans.bandage import BandagePlan, bandage_of
from trainer.engine.plans.deck import deck_of
from trainer.engine.plans.description import Bandage, RoofDescription, Sold, Trims
from trainer.engine.plans.openings import Outlet, Pipe, Rooflight
from trainer.engine.plans.sides import corners_of, sides_of
from trainer.engine.plans.trims import trims_of


def bandage(roof: RoofDescription) -> BandagePlan:
    """Return the bandage of a roof."""
    sides = sides_of(roof)
    corners = corners_of(roof, sides)
    return bandage_of(roof, sides, corners, deck_of(roof), trims_of(roof, sides, corners))


def test_what_the_garage_takes() -> None:
    """Four sides, eight joints, two trim joins, two open ends; no mitre."""
    over = Counter(strip.over for strip in bandage(garage()).strips)
    assert over == {"edge": 4, "joint": 8, "trim join": 2, "open end": 2}


def test_the_metres_of_the_garage() -> None:
    """16.2 m of sides, 16.2 m of joints, two scraps of 150 mm: 32.7 m, two rolls of 30 m."""
    plan = bandage(garage())
    assert plan.length.value == pytest.approx(32.7)
    assert plan.rolls.value == 2


def test_strips_are_numbered_as_they_are_laid() -> None:
    """From the ladder round, the joints from far to near, the ladder's own side last."""
    names = [strip.name for strip in bandage(garage()).strips]
    assert names[:4] == [
        "side 2, raised edge",
        "side 3, wall",
        "trim join on side 3",
        "side 4, raised edge",
    ]
    assert names[4:6] == ["joint 7", "joint 8"]
    assert names[-4:] == [
        "side 1, drip edge",
        "trim join on side 1",
        "open end at corner 1",
        "open end at corner 2",
    ]
    numbers = [strip.number for strip in bandage(garage()).strips]
    assert numbers == list(range(1, 17))


def test_the_ladder_may_stand_elsewhere() -> None:
    """Then that side is last, and a corner is covered when both its sides are laid."""
    names = [strip.name for strip in bandage(garage(way_off_edge=3)).strips]
    assert names[0] == "side 4, raised edge"
    assert names[-2:] == ["side 3, wall", "trim join on side 3"]
    assert names.index("open end at corner 1") > names.index("side 1, drip edge")


def test_a_rooflight_has_a_strip_along_each_foot_of_its_kerb() -> None:
    """1.2 by 0.9 m, each strip 50 mm longer, to lap round one corner: two of 1.25, two of 0.95.

    Together 2 × (1.2 + 0.9) + 4 × 0.05 = 4.4 m, which is 0.2 m more than the kerb's 4.2.
    """
    light = garage(openings=(Rooflight(2, 1, 1.2, 0.9),))
    feet = [strip for strip in bandage(light).strips if strip.over == "kerb"]
    assert [(strip.name, strip.length_m) for strip in feet] == [
        ("rooflight 1, upper foot", pytest.approx(1.25)),
        ("rooflight 1, right foot", pytest.approx(0.95)),
        ("rooflight 1, left foot", pytest.approx(0.95)),
        ("rooflight 1, lower foot", pytest.approx(1.25)),
    ]
    ends = {strip.name.split(", ")[1]: (strip.start, strip.end) for strip in feet}
    assert ends["lower foot"] == ((2000, 1000), (3200, 1000))
    assert ends["upper foot"] == ((3200, 1900), (2000, 1900))
    assert sum(strip.length_m for strip in feet) == pytest.approx(4.4)


def test_kerb_strips_take_bandage_and_resin() -> None:
    """4.4 m are in the metres to cut; 4.4 × 0.075 × 0.45 × 2.5 × 1.1 = 0.4084 kg in the resin.

    The joints that end at the kerb are shorter by what lies under it.
    """
    plain, light = garage(), garage(openings=(Rooflight(2, 1, 1.2, 0.9),))
    joints = sum(deck_of(plain).joint_lengths_m) - sum(deck_of(light).joint_lengths_m)
    more = bandage(light).length.value - bandage(plain).length.value
    assert more == pytest.approx(4.4 - joints)
    assert bandage(light).resin.value - bandage(plain).resin.value == pytest.approx(
        (4.4 - joints) * 0.075 * 0.45 * 2.5 * 1.1
    )


def test_a_kerbs_strips_go_on_with_the_joints_from_far_to_near() -> None:
    """One after another, what lies beyond the rooflight before them, what lies nearer after."""
    names = [s.name for s in bandage(garage(openings=(Rooflight(2, 1, 1.2, 0.9),))).strips]
    first = names.index("rooflight 1, upper foot")
    assert all(name.startswith("rooflight 1") for name in names[first : first + 4])
    assert names[first - 1].startswith("joint")
    assert names[first + 4].startswith("joint")


def test_a_pipe_and_an_outlet_have_no_strips_at_their_feet() -> None:
    """Their collars are cut from mat."""
    strips = bandage(garage(openings=(Pipe(2, 1, 110), Outlet(3, 2, 100)))).strips
    assert "kerb" not in {strip.over for strip in strips}


def test_a_run_longer_than_the_roll_is_lapped() -> None:
    """5.2 m from rolls of 5 m: two pieces and a lap of 50 mm, four times over."""
    sold = Sold(SOLD.tape_roll_m, 5, *(getattr(SOLD, n) for n in Sold.__slots__[2:]))
    plan = bandage(garage(sold=sold))
    assert [strip.pieces for strip in plan.strips if strip.length_m == pytest.approx(5.2)] == [
        2
    ] * 4
    assert plan.laps == 4
    assert plan.length.value == pytest.approx(32.7 + 4 * 0.05)


def test_a_patch_wraps_the_open_end() -> None:
    """60 by 40 mm and 50 on to each face: 0.0224 m², whatever is given instead counts."""
    plan = bandage(garage())
    assert plan.patch
    assert (plan.patches, plan.patch.value) == (2, pytest.approx(0.0224))
    larger = bandage(garage(trims=Trims(100, 50), bandage=Bandage(wrap_mm=60)))
    assert larger.patch
    assert larger.patch.value == pytest.approx(0.22 * 0.17)


def test_without_open_ends_there_is_no_patch() -> None:
    """Overruled at both corners in front."""
    plan = bandage(garage(overruled={1: "nothing", 2: "nothing"}))
    assert (plan.patches, plan.patch, plan.patch_resin) == (0, None, None)


@pytest.mark.parametrize("roof", [garage(), ell(), ell(way_off_edge=5)])
def test_runs_come_to_the_length(roof: RoofDescription) -> None:
    """What is cut is what is counted, and every corner and join is covered once."""
    plan = bandage(roof)
    laps = plan.laps * roof.laminate.lap_mm / 1000
    assert sum(plan.runs_m) + laps == pytest.approx(plan.length.value)
    assert len({strip.name for strip in plan.strips if strip.over != "trim join"}) == sum(
        strip.over != "trim join" for strip in plan.strips
    )
