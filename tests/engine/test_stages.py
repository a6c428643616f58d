"""Stages of laying a roof: equal batches, what limits them, and the clock of each."""

from dataclasses import replace
from itertools import pairwise

import pytest
from roofs_cast import garage

from trainer.engine.plans.description import (
    Crew,
    Cup,
    Edge,
    Laminate,
    Mix,
    RoofDescription,
    Weather,
)
from trainer.engine.plans.gel import GelTimes
from trainer.engine.plans.roof import plan_roof
from trainer.engine.plans.stages import Stage

MIX = Mix(product="Own brew")
CUPS = (Cup(30, 20, 2, "Own brew"),)
FAIR = Weather(20, 20, 50, 12, "no", "no", "no", "no")


def stages(roof: RoofDescription) -> dict[str, Stage]:
    """Return the stages of a roof's plan by their slug."""
    return {stage.slug: stage for stage in plan_roof(roof).stages}


def test_a_plain_roof_has_three_stages() -> None:
    """Nothing is turned where no edge says so."""
    assert list(stages(garage())) == ["bandage", "laminate", "topcoat"]


def test_what_is_turned_is_a_stage_of_its_own() -> None:
    """Upstands are laid before the drop that meets them."""
    edges = (Edge("drip"), Edge("raised"), Edge("wall", 150), Edge("raised"))
    assert list(stages(replace(garage(), edges=edges))) == [
        "bandage",
        "turned",
        "laminate",
        "topcoat",
    ]


def test_the_bucket_limits_a_batch() -> None:
    """15.6 m² take 19.305 kg, 17.55 L: four equal batches out of a bucket of five litres."""
    laminate = stages(garage())["laminate"]
    assert laminate.resin.value == pytest.approx(19.305)
    assert len(laminate.batches) == 4
    assert laminate.share.value == pytest.approx(19.305 / 4)
    assert laminate.limit.why == "the bucket holds 5\u00a0L"


def test_a_beginner_limits_a_batch() -> None:
    """One litre, 1.1 kg: eighteen batches, never one small one at the end."""
    laminate = stages(garage(crew=Crew(beginner="yes")))["laminate"]
    assert len(laminate.batches) == 18
    assert laminate.limit.why == "a beginner mixes 1\u00a0L at the most"


def test_the_pace_limits_a_batch() -> None:
    """30 min of gel leave 18 to work: one person at 1 kg in ten lays 1.8 kg; eleven batches."""
    laminate = stages(garage(mix=MIX, cups=CUPS, weather=FAIR, crew=Crew(1, 1.0)))["laminate"]
    assert len(laminate.batches) == 11
    assert laminate.limit.why == "the crew lays 1.8\u00a0kg in 18\u00a0min"


def test_batches_of_a_stage_are_equal_and_come_to_it() -> None:
    """Whatever limits them."""
    for crew in (Crew(), Crew(beginner="yes"), Crew(bucket_l=3)):
        for stage in stages(garage(crew=crew)).values():
            assert stage.share.value * len(stage.batches) == pytest.approx(stage.resin.value)


def test_without_a_cup_there_is_no_clock() -> None:
    """A start alone tells nobody when a batch gels."""
    for stage in stages(garage(crew=Crew(start="08:00"))).values():
        assert {batch.start_min for batch in stage.batches} == {None}


def test_without_a_start_there_is_no_clock() -> None:
    """The gel is known, and the hour isn't."""
    for stage in stages(garage(mix=MIX, cups=CUPS, weather=FAIR)).values():
        assert {batch.gel_min for batch in stage.batches} == {None}


def test_batches_follow_each_other() -> None:
    """Without a pace each takes its mixing and its whole working time: 2 and 18 minutes."""
    planned = stages(garage(mix=MIX, cups=CUPS, weather=FAIR, crew=Crew(start="08:00")))
    batches = [*planned["bandage"].batches, *planned["laminate"].batches]
    assert [batch.start_min for batch in batches] == pytest.approx([480 + 20 * n for n in range(5)])
    assert all(
        batch.until_min == pytest.approx(batch.start_min + 20)
        and batch.gel_min == pytest.approx(batch.start_min + 30)
        for batch in batches
    )


def test_topcoat_waits_for_the_laminate() -> None:
    """It has its own dose and density, and no clock: nobody knows when the laminate has set."""
    planned = stages(garage(mix=MIX, cups=CUPS, weather=FAIR, crew=Crew(start="08:00")))
    topcoat = planned["topcoat"]
    assert topcoat.resin.value == pytest.approx(15.08 * 0.5)
    assert topcoat.batches[0].start_min is None


@pytest.mark.parametrize(
    ("convention", "millilitres"),
    [
        ("by mass", 2 / 100 * 1000 / 1.17),
        ("ml per kg", 20.0),
        ("by volume", 2 / 100 * 1000 / 1.10),
    ],
)
def test_catalyst_for_a_kilogram_in_each_convention(convention: str, millilitres: float) -> None:
    """2 %: 17.09 ml by mass, 20 by the millilitre rule, 18.18 by volume."""
    mix = Mix(convention=convention)  # type: ignore[arg-type]
    bandage = stages(garage(mix=mix))["bandage"]
    assert bandage.catalyst.value / bandage.share.value == pytest.approx(millilitres)


def test_an_edge_between_two_batches_never_gels_first() -> None:
    """The next batch's catalyst is in before the last one's gel, with its mixing done too."""
    plan = plan_roof(garage(mix=MIX, cups=CUPS, weather=FAIR, crew=Crew(start="08:00")))
    assert isinstance(plan.gel, GelTimes)
    *resin, _ = plan.stages
    times = [batch for stage in resin for batch in stage.batches]
    for before, after in pairwise(times):
        assert after.start_min is not None
        assert before.gel_min is not None
        assert after.start_min + 2 < before.gel_min


def test_two_layers_take_twice_the_resin() -> None:
    """And the second layer's own laps."""
    one = stages(garage())["laminate"].resin.value
    two = stages(garage(laminate=Laminate(layers=2)))["laminate"].resin.value
    assert two == pytest.approx(2 * one, rel=0.02)
