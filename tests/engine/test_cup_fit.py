"""What several cups fit. A fit is shown beside the gel times and never planned with."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import activation_energy as energy_of
from trainer.engine import answer, dose_order, gel_at_dose, gel_at_temperature
from trainer.engine.plans import gel


def made_cup(air_c: float, percent: float, energy: float = 60, order: float = 0.7) -> gel.TestCup:
    """Return a cup of a resin whose energy and order are known: 30 min at 20 °C and 2 %."""
    by_warmth = answer(gel_at_temperature.inside(30, 20, air_c, energy))
    minutes = answer(gel_at_dose.inside(by_warmth, 2, percent, order))
    return gel.TestCup("Harbour 20", minutes, air_c, percent)


@given(st.floats(20, 120), st.floats(0.1, 2))
def test_cups_of_one_law_give_it_back(energy: float, order: float) -> None:
    """Four cups at two temperatures and two doses: energy, order, and nothing off."""
    places = [(15, 1.5), (15, 3), (25, 1.5), (25, 3)]
    fit = gel.fit_cups([made_cup(*place, energy, order) for place in places])
    assert fit is not None
    assert fit.energy_kj_per_mol == pytest.approx(energy, rel=1e-6)
    assert fit.order == pytest.approx(order, rel=1e-6)
    assert fit.off_percent == pytest.approx(0, abs=1e-6)


@given(st.floats(1, 240), st.floats(1, 240))
def test_two_cups_of_one_dose_tell_the_energy_alone(one: float, other: float) -> None:
    """The same figure as the sum for two cups, and no order."""
    cups = (gel.TestCup("Quay 7", one, 15, 2), gel.TestCup("Quay 7", other, 25, 2))
    fit = gel.fit_cups(cups)
    assert fit is not None
    expected = answer(energy_of(one, 15, other, 25))
    assert fit.energy_kj_per_mol == pytest.approx(expected, abs=1e-6)
    assert fit.order is None
    assert fit.off_percent == pytest.approx(0, abs=1e-6)


@given(st.floats(1, 240), st.floats(1, 240))
def test_two_cups_of_one_temperature_tell_the_order_alone(one: float, other: float) -> None:
    """The same figure as the sum for two cups, and no energy."""
    fit = gel.fit_cups((gel.TestCup("Quay 7", one, 18, 1), gel.TestCup("Quay 7", other, 18, 3)))
    assert fit is not None
    assert fit.order == pytest.approx(answer(dose_order(one, 1, other, 3)), abs=1e-6)
    assert fit.energy_kj_per_mol is None


def test_one_cup_fits_nothing() -> None:
    """Nor does none."""
    assert gel.fit_cups([made_cup(20, 2)]) is None
    assert gel.fit_cups([]) is None


def test_temperature_and_dose_that_changed_together_cannot_be_told_apart() -> None:
    """Two cups, the warm one strong: nobody knows which of the two did it."""
    assert gel.fit_cups([made_cup(15, 1.5), made_cup(25, 3)]) is None


def test_cups_alike_tell_only_how_far_they_are_apart() -> None:
    """20 and 45 min have 30 in their middle, on the scale of ratios: each is a half of it off."""
    fit = gel.fit_cups([gel.TestCup("Quay 7", 20, 18, 2), gel.TestCup("Quay 7", 45, 18, 2)])
    assert fit == gel.CupFit(None, None, pytest.approx(50))


def test_how_far_off_is_that_of_the_worst_cup() -> None:
    """Two cups agree and one doesn't: the fit lies between, and says by how much."""
    cups = [made_cup(15, 2), made_cup(20, 2), made_cup(25, 2)]
    slow = gel.TestCup("Harbour 20", cups[1].minutes * 1.3, 20, 2)
    fit = gel.fit_cups([cups[0], slow, cups[2]])
    assert fit is not None
    # A third of the logarithm moves the middle, two thirds stay with the cup itself.
    assert fit.off_percent == pytest.approx((1.3 ** (2 / 3) - 1) * 100, abs=0.1)


@given(st.floats(2, 10))
def test_a_fit_never_moves_the_plan(times: float) -> None:
    """However slow another cup was, the plan goes by the quick one."""
    quick, slow = made_cup(18, 2), gel.TestCup("Harbour 20", 20 * times, 24, 2)
    assume(slow.minutes > 39)
    told = gel.gel_times((quick, slow), "Harbour 20", 18, 2)
    assert isinstance(told, gel.GelTimes)
    assert told.fit is not None
    assert told.short.value == pytest.approx(quick.minutes)
