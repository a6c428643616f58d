"""The whole plan of a roof: its dose, its warnings, what it assumed, and that it is frozen."""

import dataclasses
import re
from dataclasses import replace
from typing import Any

import pytest
from roofs_cast import SOLD, ell, garage, roof

from trainer.engine import BadRoof
from trainer.engine.plans.description import (
    Boards,
    Cup,
    Edge,
    Mix,
    RoofDescription,
    Topcoat,
    Weather,
)
from trainer.engine.plans.figure import Figure
from trainer.engine.plans.gel import GelTimes, NoTimes
from trainer.engine.plans.openings import Outlet, Pipe, Rooflight
from trainer.engine.plans.roof import RoofPlan, plan_roof

CUPS = (Cup(25, 20, 2, "Own brew"),)
FAIR = Weather(20, 20, 50, 12, "no", "no", "no", "no")
FULL = ell(
    openings=(Rooflight(1, 1, 1.2, 0.9, 120), Pipe(6, 2, 110), Outlet(7, 1, 80)),
    mix=Mix(product="Own brew"),
    cups=CUPS,
    weather=FAIR,
)


def test_a_plan_is_frozen_and_the_same_each_time() -> None:
    """One description, one plan."""
    plan = plan_roof(FULL)
    with pytest.raises(dataclasses.FrozenInstanceError):
        plan.stages = ()  # type: ignore[misc]
    again = plan_roof(FULL)
    assert {key: each.value for key, each in plan.figures().items()} == {
        key: each.value for key, each in again.figures().items()
    }


def test_figures_have_keys_of_their_own() -> None:
    """Nothing is lost when they are gathered by key; each says what it is, with its unit."""
    plan = plan_roof(FULL)
    assert len(list(plan._figures())) == len(plan.figures())
    for key, figure in plan.figures().items():
        assert re.fullmatch(r"[a-z_]+(\.[a-z_0-9]+)+", key), key
        assert figure.words
        assert figure.key == key


def test_every_figure_that_was_worked_opens_its_working() -> None:
    """Its last line is the figure."""
    for figure in plan_roof(FULL).figures().values():
        if isinstance(figure, Figure):
            assert figure.working.lines[-1].value == figure.value


def test_a_roof_that_cannot_be_planned_is_refused() -> None:
    """Before anything is worked out."""
    with pytest.raises(BadRoof):
        plan_roof(replace(garage(), edges=()))


def test_a_syringe_too_coarse_is_told_by_its_field() -> None:
    """The bandage of a dormer takes some ten millilitres, less than half of a mark of 50 ml."""
    dormer = ((0, 0), (1600, 0), (1600, 1250), (0, 1250))
    with pytest.raises(BadRoof, match="finer syringe") as refused:
        plan_roof(roof(dormer, mix=Mix(graduation_ml=50)))
    assert refused.value.where == "mix.graduation_ml"


def test_what_no_sum_can_be_done_on_is_told_of_the_roof() -> None:
    """Trims of half a metre round 500 m² are more pieces than anybody cuts."""
    long = [(0, 0), (99_000, 0), (99_000, 5000), (0, 5000)]
    tiny = roof(long, sold=replace(SOLD, trim_m=0.5, mat_roll_m=5), boards=Boards(300, 100))
    with pytest.raises(BadRoof) as refused:
        plan_roof(tiny)
    assert refused.value.where == "roof"


def test_a_dose_by_the_millilitre_rule_is_told_by_mass() -> None:
    """2 % is 20 ml to a kilogram, 23.4 g: 2.34 % by mass."""
    plan = plan_roof(garage(mix=Mix(convention="ml per kg")))
    assert plan.dose.by_mass.value == pytest.approx(2.34)
    assert plan.dose.words.startswith("2\u00a0% by the millilitre rule")


def test_a_dose_by_volume_is_told_by_mass() -> None:
    """2 % of a kilogram's 909.1 ml is 18.18 ml, 21.27 g: 2.127 % by mass."""
    plan = plan_roof(garage(mix=Mix(convention="by volume")))
    assert plan.dose.by_mass.value == pytest.approx(2.1273, abs=1e-4)


def test_a_dose_is_chosen_for_a_gel_time() -> None:
    """Half the dose gels after 35.4 minutes at the soonest, so 35 takes a little over half."""
    mix = Mix(product="Own brew", wanted_gel_min=35)
    plan = plan_roof(garage(mix=mix, cups=CUPS, weather=FAIR))
    assert plan.dose.chosen
    assert plan.dose.percent == pytest.approx(2 * (25 / 35) ** 2)
    assert isinstance(plan.gel, GelTimes)
    assert plan.gel.short.value == pytest.approx(35)


@pytest.mark.parametrize(
    ("asked", "reason"),
    [
        (garage(mix=Mix(wanted_gel_min=30)), "No air temperature"),
        (garage(mix=Mix(wanted_gel_min=30), weather=FAIR), "no test cup"),
    ],
)
def test_a_gel_time_that_cannot_be_had_keeps_the_dose(asked: RoofDescription, reason: str) -> None:
    """The plan goes on with the dose that was given, and says why."""
    plan = plan_roof(asked)
    assert (plan.dose.percent, plan.dose.chosen) == (2, None)
    assert any(reason in caution for caution in plan.cautions)


def test_without_a_temperature_no_time_is_told() -> None:
    """A cup alone isn't enough."""
    plan = plan_roof(garage(mix=Mix(product="Own brew"), cups=CUPS))
    assert isinstance(plan.gel, NoTimes)
    assert "No temperature was given" in plan.gel.reasons[0]


def test_a_cup_without_a_name_is_of_the_roof_s_resin() -> None:
    """Nobody types the same name twice."""
    plan = plan_roof(garage(mix=Mix(product="Own brew"), cups=(Cup(25, 20),), weather=FAIR))
    assert isinstance(plan.gel, GelTimes)


def test_a_dose_off_its_band_is_warned_of_and_gets_no_time() -> None:
    """Masses are told with a caution, times are refused."""
    mix = Mix(product="Own brew", percent=5)
    plan = plan_roof(garage(mix=mix, cups=CUPS, weather=FAIR))
    assert "The dose is 5\u00a0% by mass, over 4\u00a0%." in plan.cautions
    assert isinstance(plan.gel, NoTimes)
    assert plan.stages[0].catalyst.value > 0


@pytest.mark.parametrize(
    ("warned", "caution"),
    [
        (
            replace(garage(), edges=(*[Edge("drip")] * 3, Edge("wall", 100))),
            "150\u00a0mm is the rule",
        ),
        (FULL, "bandage along its foot here. A fillet isn't sized"),
        (FULL, "kerb of rooflight 1 is under 150\u00a0mm"),
        (garage(topcoat=Topcoat(percent=4)), "Topcoat takes 1 to 3 %"),
        (garage(mix=Mix(product="Own brew"), cups=CUPS, weather=FAIR), "time the first batch"),
    ],
)
def test_what_a_plan_warns_of(warned: RoofDescription, caution: str) -> None:
    """Each in a sentence."""
    assert any(caution in each for each in plan_roof(warned).cautions)


def test_assumptions_are_what_nobody_gave() -> None:
    """Each with its standing; what was given is assumed no more."""
    by_default = {(each.part, each.field) for each in plan_roof(garage()).assumptions}
    assert ("mix", "resin_kg_per_l") in by_default
    assert all(each.standing for each in plan_roof(garage()).assumptions)
    told = plan_roof(replace(garage(), given=frozenset({"mix.resin_kg_per_l"}))).assumptions
    assert by_default - {(each.part, each.field) for each in told} == {("mix", "resin_kg_per_l")}


def test_twice_the_resin_density_changes_litres_and_no_masses() -> None:
    """A limit law: what is weighed doesn't hang on the density."""
    light, heavy = (plan_roof(garage(mix=Mix(resin_kg_per_l=d))) for d in (1.0, 1.2))
    for one, other in zip(light.stages[:-1], heavy.stages[:-1], strict=True):
        assert one.resin.value == pytest.approx(other.resin.value)
        whole = one.litres.value * len(one.batches), other.litres.value * len(other.batches)
        assert whole[0] == pytest.approx(1.2 * whole[1])


def timed(deck_c: float, air_c: float = 18, **looked: Any) -> RoofPlan:
    """Return the plan of a garage on such a day, with a cup of its resin."""
    weather = Weather(air_c, deck_c, 50, 12, **{"sun": "no", **looked})
    return plan_roof(garage(mix=Mix(product="Own brew"), cups=CUPS, weather=weather))


def test_a_warm_deck_shortens_the_clock() -> None:
    """Planning takes the soonest, so times are told at the warmer of air and deck."""
    hot, warm_day = timed(24, 18).gel, timed(24, 24).gel
    assert isinstance(hot, GelTimes)
    assert isinstance(warm_day, GelTimes)
    assert hot.short.value == warm_day.short.value < 25
    assert any("warmer than the air" in caution for caution in hot.cautions)


def test_a_deck_cooler_than_the_air_lengthens_nothing() -> None:
    """The bucket stands in the air."""
    as_warm, cooler = timed(18).gel, timed(10).gel
    assert isinstance(as_warm, GelTimes)
    assert isinstance(cooler, GelTimes)
    assert cooler.short.value == as_warm.short.value


@pytest.mark.parametrize(("deck_c", "air_c"), [(36, 20), (4, 20), (20, 4), (20, 36)])
def test_too_hot_or_too_cold_anywhere_gets_no_time(deck_c: float, air_c: float) -> None:
    """The verdict is stop, and nothing else says otherwise."""
    plan = timed(deck_c, air_c)
    assert plan.verdict.word == "stop"
    assert isinstance(plan.gel, NoTimes)


def test_sun_on_the_deck_is_told_at_the_clock() -> None:
    """No figure says how much sooner, so a sentence does."""
    assert any("Sun is on the deck" in each for each in timed(20, sun="yes").gel.cautions)


def test_a_cold_day_is_warned_of_without_a_cup() -> None:
    """A mix with nothing to go by needs it most."""
    told = plan_roof(garage(weather=Weather(air_c=14))).gel
    assert isinstance(told, NoTimes)
    assert any("gels late" in caution for caution in told.cautions)
