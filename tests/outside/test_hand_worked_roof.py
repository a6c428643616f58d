"""A porch worked out by hand, every figure; the plan must come to the same.

The conventions are the trade's (common practice), the formulas those of the published sources
named at each calculation's own check. All arithmetic below was done on paper.

The porch is 3.0 by 1.2 m: a drip edge in front, raised edges at both ends, a wall behind with
the laminate turned up 150 mm. One course of boards, 2440 by 1220 mm, covers it.
It is 20 °C, the deck too, at 50 % humidity. A test cup of the same resin, 2 % by mass, gelled in
25 minutes at 20 °C. Two people lay a kilogram each in ten minutes, from nine o'clock.
"""

import pytest

from trainer.engine.plans.description import Crew, Cup, Edge, Mix, RoofDescription, Sold, Weather
from trainer.engine.plans.gel import GelTimes
from trainer.engine.plans.roof import RoofPlan, plan_roof

NINE = 9 * 60


@pytest.fixture(scope="module")
def porch() -> RoofPlan:
    """The porch's plan."""
    return plan_roof(
        RoofDescription(
            title="Porch",
            corners=((0, 0), (3000, 0), (3000, 1200), (0, 1200)),
            edges=(Edge("drip"), Edge("raised"), Edge("wall", 150), Edge("raised")),
            sold=Sold(
                tape_roll_m=20,
                bandage_roll_m=30,
                mat_roll_mm=1000,
                mat_roll_m=30,
                trim_m=3,
                resin_tin_kg=20,
                catalyst_bottle_ml=500,
                topcoat_tin_kg=20,
            ),
            mix=Mix(product="Own brew"),
            cups=(Cup(25, 20, 2, "Own brew"),),
            crew=Crew(people=2, pace_kg=1, start="09:00"),
            weather=Weather(20, 20, 50, 12, "no", "no", "no", "no"),
        )
    )


def test_deck_and_tape(porch: RoofPlan) -> None:
    """3.0 × 1.2 = 3.6 m²; one joint of 1.2 m between two boards, both ends at an edge."""
    assert porch.deck.area.value == pytest.approx(3.6)
    assert porch.deck.joint_lengths_m == (1.2,)
    assert porch.deck.meeting_ends == 0
    assert porch.tape.length
    assert porch.tape.length.value == pytest.approx(1.2)


def test_trims(porch: RoofPlan) -> None:
    """Drip 3.0 m: one length. Raised 2 × 1.2 m: both from one. Wall 3.0 m: one. No joins."""
    assert [(run.kind, run.cuts.bars) for run in porch.trims.runs] == [
        ("drip", ((3000,),)),
        ("raised", ((1200, 1200),)),
        ("wall", ((3000,),)),
    ]
    assert porch.trims.joins == ()
    assert (porch.trims.mitres, porch.trims.open_ends) == (0, 2)


def test_bandage_in_laying_order(porch: RoofPlan) -> None:
    """The ladder stands in front: the far sides, the joint, the front, then its open ends."""
    assert [(strip.number, strip.name, strip.length_m) for strip in porch.bandage.strips] == [
        (1, "side 2, raised edge", 1.2),
        (2, "side 3, wall", 3.0),
        (3, "side 4, raised edge", 1.2),
        (4, "joint 1", 1.2),
        (5, "side 1, drip edge", 3.0),
        (6, "open end at corner 1", pytest.approx(0.16)),
        (7, "open end at corner 2", pytest.approx(0.16)),
    ]


def test_bandage_and_its_resin(porch: RoofPlan) -> None:
    """1.2 + 3.0 + 1.2 + 1.2 + 3.0 = 9.6 m; × 75 mm = 0.72 m²; 324 g; × 2.5 × 1.1 = 0.891 kg."""
    assert porch.bandage.length.value == pytest.approx(9.6)
    assert porch.bandage.rolls.value == 1
    assert porch.bandage.resin.value == pytest.approx(0.891)


def test_patches(porch: RoofPlan) -> None:
    """60 × 40 mm and 50 all round: 160 × 140 mm, 0.0224 m²; two take 20.16 g and 0.05544 kg."""
    assert porch.bandage.patches == 2
    assert porch.bandage.patch
    assert porch.bandage.patch_resin
    assert porch.bandage.patch.value == pytest.approx(0.0224)
    assert porch.bandage.patch_resin.value == pytest.approx(0.05544)


def test_drops(porch: RoofPlan) -> None:
    """1.2 m from rolls of 1.0 with laps of 50 mm: two; the second is cut to 250 mm."""
    assert [
        (drop.name, drop.length_m, drop.width_mm, drop.trimmed_mm) for drop in porch.mat.drops
    ] == [("1", 3.1, 1000, 0), ("2", 3.1, 250, 750)]
    assert porch.mat.length.value == pytest.approx(6.2)


def test_mat_laid(porch: RoofPlan) -> None:
    """3.6 m² and a lap of 3.0 m by 50 mm: 3.75 m². Turned up the wall: 3.0 × 0.2 = 0.6 m²."""
    assert porch.mat.laid.value == pytest.approx(3.75)
    assert porch.mat.turned_area
    assert porch.mat.turned_area.value == pytest.approx(0.6)
    assert porch.mat.cuts.bars == ((3100, 3100, 600),)


def test_resin_of_each_stage(porch: RoofPlan) -> None:
    """0.891 + 0.05544; 0.6 m² × 450 g × 2.5 × 1.1; 3.75 m² × 450 g × 2.5 × 1.1; 4.2 m² × 0.5."""
    resin = {stage.slug: stage.resin.value for stage in porch.stages}
    assert resin == pytest.approx(
        {"bandage": 0.94644, "turned": 0.7425, "laminate": 4.640625, "topcoat": 2.1}
    )


def test_gel_and_working_time(porch: RoofPlan) -> None:
    """As the cup: 25 minutes; two thirds of it less two minutes are 14⅔."""
    assert isinstance(porch.gel, GelTimes)
    assert porch.gel.short.value == porch.gel.long.value == pytest.approx(25)
    assert porch.gel.working.value == pytest.approx(14 + 2 / 3)


def test_batches(porch: RoofPlan) -> None:
    """14⅔ min at 2 kg in ten lay 2.93 kg: one, one and two equal batches; topcoat fits a bucket."""
    assert [len(stage.batches) for stage in porch.stages] == [1, 1, 2, 1]
    assert porch.stages[2].share.value == pytest.approx(2.3203125)
    assert "2.9\u00a0kg in 14\u00a0min" in porch.stages[2].limit.why
    assert porch.stages[3].litres.value == pytest.approx(1.75)


def test_catalyst_of_one_batch(porch: RoofPlan) -> None:
    """2 % of each batch at 1.17 kg/L: 18.93, 14.85, 46.41 and 42 g; read off to whole ml."""
    grams = [stage.catalyst_g for stage in porch.stages]
    assert grams == pytest.approx([18.9288, 14.85, 46.40625, 42.0])
    assert [stage.catalyst.value for stage in porch.stages] == pytest.approx(
        [16.1785, 12.6923, 39.6635, 35.8974], abs=1e-4
    )
    assert [stage.mark_ml for stage in porch.stages] == [16, 13, 40, 36]


def test_the_clock(porch: RoofPlan) -> None:
    """Two minutes to mix, 4.7322 to lay; each batch begins when the one before it is laid."""
    bandage, turned, laminate, topcoat = porch.stages
    starts = [each.start_min for stage in porch.stages for each in stage.batches]
    assert starts[:4] == pytest.approx([NINE, 546.7322, 552.4447, 566.0463], abs=1e-4)
    first = bandage.batches[0]
    assert (first.until_min, first.gel_min) == pytest.approx((NINE + 16 + 2 / 3, NINE + 25))
    assert len(turned.batches) + len(laminate.batches) == 3
    assert topcoat.batches[0].start_min is None


def test_weather(porch: RoofPlan) -> None:
    """Dew point 9.27 °C, nearly eleven degrees below the deck; nothing speaks against it."""
    assert porch.verdict.word == "go"


def test_fall(porch: RoofPlan) -> None:
    """1.2 m towards the front at 1 in 40 is 30 mm."""
    assert porch.fall.direction == pytest.approx((0, -1))
    assert porch.fall.drop.value == pytest.approx(30)


def test_thickness_and_weight(porch: RoofPlan) -> None:
    """0.45 ÷ 3.072 × (2.56 × 3.5 − 1.36) = 1.1133 mm; 0.45 + 1.125 + 0.5 kg/m², × 3.6 = 7.47 kg."""
    assert porch.thickness.value == pytest.approx(1.1133, abs=1e-4)
    assert porch.weight_per_m2.value == pytest.approx(2.075)
    assert porch.weight.value == pytest.approx(7.47)


def test_what_to_buy(porch: RoofPlan) -> None:
    """One of each: 6.33 kg of resin, 144.1 ml of catalyst and 2.1 kg of topcoat in all."""
    assert {each.what: each.count.value for each in porch.purchases} == {
        "tape, 50\u00a0mm": 1,
        "bandage, 75\u00a0mm": 1,
        "mat, 450\u00a0g/m²": 1,
        "drip trim": 1,
        "raised edge trim": 1,
        "wall fillet": 1,
        "resin": 1,
        "topcoat": 1,
        "catalyst": 1,
    }
    needed = {each.what: each.needed for each in porch.purchases}
    assert needed["resin"] == "6.33\u00a0kg"
    assert needed["catalyst"] == "144.1\u00a0ml"
