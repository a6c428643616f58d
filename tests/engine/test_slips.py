"""Slips: one thing put wrong, worked again to see which figure it leads to.

Catalyst for 1.32 kg at 3 %: 39.6 g, 33.85 ml. Bandage of 4 m: 135 g, 0.37125 kg of resin.
"""

import math
from collections.abc import Mapping
from typing import Annotated, Any

import pytest
from engine_cast import doublings, paint_for_edges

from trainer.engine import (
    METHODS,
    Calculation,
    Given,
    Line,
    Method,
    Part,
    bandage_length,
    catalyst_by_mass,
    open_end_patch,
    resin_for_bandage,
    tape_length,
)
from trainer.engine.slips import Change, GivenSlip, LineSlip, OtherMethod, Stopped, figure_at

DOSE = {"resin_kg": 1.32, "percent": 3}
BANDAGE = {"length_m": 4}


def slipped(
    key: str,
    change: Change,
    method: Method[...] = catalyst_by_mass,
    givens: Mapping[str, Any] = DOSE,
    own: Mapping[str, float] | None = None,
) -> float | None:
    """Return the figure that a slip leads to at a line."""
    return figure_at(key, change, method, givens, own or {})


def test_a_given_may_be_another_value() -> None:
    """The whole roll, a metre wide, instead of the strip: 4 m² and 4.95 kg of resin."""
    slip = GivenSlip("width_mm", value=1000)
    assert slipped("resin", slip, resin_for_bandage, BANDAGE) == pytest.approx(4.95)


def test_a_given_may_be_a_multiple_of_itself() -> None:
    """A decimal place too few in the dose makes a tenth of the catalyst."""
    assert slipped("mass", GivenSlip("percent", times=0.1)) == pytest.approx(3.96)


def test_each_figure_of_a_list_is_multiplied() -> None:
    """Joints of 2.4 m and 3.6 m read as 24 m and 36 m come to 60 m of tape."""
    slip = GivenSlip("joints_m", times=10)
    givens = {"joints_m": (2.4, 3.6), "meeting_ends": 0}
    assert slipped("tape", slip, tape_length, givens) == pytest.approx(60)


def test_a_given_may_be_another_given() -> None:
    """The width taken for the height: 160 by 160 mm instead of 160 by 140."""
    slip = GivenSlip("height_mm", same_as="width_mm")
    givens = {"width_mm": 60, "height_mm": 40}
    assert slipped("area", slip, open_end_patch, givens) == pytest.approx(0.0256)


def test_a_given_may_be_a_default_or_stand_for_one() -> None:
    """The wrap of 50 mm was not given, and can be misread or read for another all the same."""
    givens = {"width_mm": 60, "height_mm": 40}
    for slip, area in (
        (GivenSlip("wrap_mm", times=0.5), 0.0099),  # 110 by 90
        (GivenSlip("height_mm", same_as="wrap_mm"), 0.024),  # 160 by 150
    ):
        assert slipped("area", slip, open_end_patch, givens) == pytest.approx(area)


def test_a_given_may_be_nothing_where_nothing_can_be_worked() -> None:
    """Forgetting the allowance is an allowance of nothing."""
    slip = GivenSlip("allowance_percent", times=0)
    assert slipped("resin", slip, resin_for_bandage, BANDAGE) == pytest.approx(0.3375)


def test_a_line_may_be_a_multiple_of_itself() -> None:
    """Grams taken for kilograms at the glass, a thousandth of the resin at the end."""
    slip = LineSlip("bandage.glass", times=0.001)
    assert slipped("resin", slip, resin_for_bandage, BANDAGE) == pytest.approx(0.00037125)


def test_a_line_left_out_is_nothing_times_itself() -> None:
    """Two laps of 50 mm forgotten: 7.2 m of bandage instead of 7.3."""
    givens = {"lengths_m": (2.4, 3.6, 1.2), "laps": 2}
    slip = LineSlip("laps", times=0)
    assert slipped("bandage", slip, bandage_length, givens) == pytest.approx(7.2)


def test_a_line_may_be_another_line() -> None:
    """Grams drawn up as millilitres: 39.6 ml."""
    assert slipped("volume", LineSlip("volume", same_as="mass")) == pytest.approx(39.6)


def test_an_earlier_line_may_be_given_as_the_answer() -> None:
    """Somebody who stopped at the glass in kilograms answers 0.135."""
    slip = Stopped("glass_kg")
    assert slipped("resin", slip, resin_for_bandage, BANDAGE) == pytest.approx(0.135)


def test_another_calculation_may_have_been_done() -> None:
    """By the millilitre rule 1.32 kg at 3 % takes 39.6 ml."""
    assert slipped("volume", OtherMethod("catalyst_by_ml_per_kg")) == pytest.approx(39.6)


def test_another_calculation_takes_what_it_knows() -> None:
    """The density of catalyst means nothing to the millilitre rule, and is left out."""
    givens = {**DOSE, "catalyst_kg_per_l": 1.2}
    slip = OtherMethod("catalyst_by_ml_per_kg")
    assert slipped("volume", slip, givens=givens) == pytest.approx(39.6)


def test_another_calculation_takes_the_defaults_too(monkeypatch: pytest.MonkeyPatch) -> None:
    """The spare of a tenth was not given, and counts as given for the other calculation."""

    @Method
    def spare_alone(
        coats: Annotated[int, Given("coats", "", 1, 3)],
        spare_percent: Annotated[float, Given("spare", "%", 0, 50)],
    ) -> Calculation:
        """Return the spare of all coats."""
        parts = {"c": Part(coats, "", "coats"), "s": Part(spare_percent, "%", "spare")}
        return (yield Line("order", "spare", "%", coats * spare_percent, "c * s", parts))

    monkeypatch.setitem(METHODS, "spare_alone", spare_alone)
    givens = {"lengths_m": (4.0,), "coats": 2}
    assert slipped("order", OtherMethod("spare_alone"), paint_for_edges, givens) == 20


def test_another_calculation_without_the_line_gives_its_answer() -> None:
    """Asked for the mass, somebody who worked the rule answers with its millilitres."""
    assert slipped("mass", OtherMethod("catalyst_by_ml_per_kg")) == pytest.approx(39.6)


@pytest.mark.parametrize(
    ("slip", "figure"),
    [
        (LineSlip("volume", same_as="mass"), 45),
        (LineSlip("volume", times=2), 90 / 1.17),
        (GivenSlip("catalyst_kg_per_l", value=1.0), 45),
        (Stopped("mass"), 45),
    ],
)
def test_a_slip_starts_from_the_persons_own_figures(slip: Change, figure: float) -> None:
    """Below a wrong 45 g a slip leads to what 45 g come to."""
    assert slipped("volume", slip, own={"mass": 45}) == pytest.approx(figure)


def test_the_persons_figure_at_the_line_itself_is_no_start() -> None:
    """What was answered there is what the slip is to be compared with."""
    assert slipped("volume", GivenSlip("percent", value=2), own={"volume": 12}) == pytest.approx(
        26.4 / 1.17
    )


@pytest.mark.parametrize(
    "slip",
    [
        GivenSlip("resin_kg", value=0),
        GivenSlip("resin_kg", value=-1),
        GivenSlip("resin_kg", value=math.nan),
        GivenSlip("resin_kg", value="1.32"),
        GivenSlip("resin_kg", times=math.inf),
        GivenSlip("resin_kg", same_as="bucket"),
        LineSlip("mass", times=math.nan),
        LineSlip("mass", same_as="volume"),
        OtherMethod("catalyst_by_guess"),
    ],
)
def test_a_slip_that_cannot_be_worked_leads_nowhere(slip: Change) -> None:
    """No figure, then; never an error in the middle of marking."""
    assert slipped("volume", slip) is None


def test_a_slip_without_a_logarithm_leads_nowhere() -> None:
    """Nothing has no logarithm."""
    slip = LineSlip("growth", times=0)
    assert slipped("doublings", slip, doublings, {"first_g": 10, "last_g": 40}) is None


def test_a_slip_of_a_choice() -> None:
    """The wide brush taken for the narrow one doubles the paint; a brush nobody has, nothing."""
    givens = {"lengths_m": (4.0,), "coats": 1, "spare_percent": 0}
    assert slipped("order", GivenSlip("brush", "wide"), paint_for_edges, givens) == pytest.approx(
        0.12
    )
    assert slipped("order", GivenSlip("brush", "broad"), paint_for_edges, givens) is None


def test_a_slip_of_a_count_stays_a_count() -> None:
    """Half of two coats is one; half of one coat is none that can be worked."""
    slip = GivenSlip("coats", times=0.5)
    givens = {"lengths_m": (4.0,), "spare_percent": 0}
    assert slipped("order", slip, paint_for_edges, {**givens, "coats": 2}) == pytest.approx(0.06)
    assert slipped("order", slip, paint_for_edges, {**givens, "coats": 1}) is None


def test_ranges_do_not_bind_a_slip() -> None:
    """A slip is out of range as often as not: ten times 4 % is no dose that is accepted."""
    assert slipped("mass", GivenSlip("percent", value=40)) == pytest.approx(528)
