"""Mat of a roof: drops, laps, layers, and what is turned up, down and round."""

import math
from dataclasses import replace

import pytest
from roofs_cast import SOLD, ell, garage

from trainer.engine import BadRoof
from trainer.engine.plans.deck import deck_of
from trainer.engine.plans.description import Edge, Laminate, RoofDescription
from trainer.engine.plans.mat import MatPlan, mat_of
from trainer.engine.plans.openings import Outlet, Pipe, Rooflight
from trainer.engine.plans.sides import sides_of


def mat(roof: RoofDescription) -> MatPlan:
    """Return the mat of a roof."""
    return mat_of(roof, deck_of(roof), sides_of(roof))


def test_the_drops_of_the_garage() -> None:
    """2.9 m from rolls of 1.0 m with laps of 50 mm is three drops; floats would say four."""
    plan = mat(garage())
    assert [(drop.name, drop.width_mm, drop.trimmed_mm) for drop in plan.drops] == [
        ("1", 1000, 0),
        ("2", 1000, 0),
        ("3", 1000, 0),
    ]
    assert [drop.length_m for drop in plan.drops] == pytest.approx([5.3] * 3)


def test_mat_laid_counts_laps_twice() -> None:
    """15.08 m² and two laps of 5.2 m by 50 mm: 15.6 m²."""
    assert mat(garage()).laid.value == pytest.approx(15.6)


def test_drops_may_run_up_the_roof() -> None:
    """5.2 m across takes six drops of 2.9 m and what is trimmed off."""
    plan = mat(garage(laminate=Laminate(run="up")))
    assert [drop.length_m for drop in plan.drops] == pytest.approx([3.0] * 6)
    assert [drop.width_mm for drop in plan.drops] == [1000] * 5 + [450]


def test_drops_are_as_long_as_the_roof_is_there() -> None:
    """Five across the L's broad part and four across its narrow one, the last trimmed."""
    plan = mat(ell())
    assert [drop.length_m for drop in plan.drops] == pytest.approx([9.1] * 5 + [4.6] * 4)
    assert plan.drops[-1].trimmed_mm == 600


def test_a_second_layer_is_shifted_by_half_a_drop() -> None:
    """Rolls of 1.0 m with laps of 50 mm: 475 mm, so that no lap lies over another.

    Each layer has four laps of 9 m and four of 4.5 m, 54 m: 5.4 m² lie double in both together.
    """
    plan = mat(ell(laminate=Laminate(layers=2)))
    assert plan.shift
    assert plan.shift.value == pytest.approx(475)
    second = [drop for drop in plan.drops if drop.layer == 2]
    assert (second[0].width_mm, second[1].width_mm) == (525, 1000)
    assert plan.laid.value == pytest.approx(2 * 54 + 5.4)


def test_laps_too_close_are_refused() -> None:
    """Two layers of a roll 200 mm wide with laps of 50 mm: 75 mm is under the rule's 100."""
    with pytest.raises(BadRoof, match="100") as refused:
        mat(garage(laminate=Laminate(layers=2), sold=replace(SOLD, mat_roll_mm=200)))
    assert refused.value.where == "laminate.lap_mm"


def test_a_drop_over_the_whole_rooflight_is_parted() -> None:
    """A rooflight as broad as the second drop leaves one part on each hand of it."""
    light = Rooflight(2.0, 0.9, 1.0, 1.1)
    assert [drop.name for drop in mat(garage(openings=(light,))).drops] == ["1", "2a", "2b", "3"]


def test_what_is_turned() -> None:
    """150 mm up a wall of 5.2 m with 50 on the deck; 40 mm down a drip edge."""
    edges = (Edge("drip", 40), Edge("raised"), Edge("wall", 150), Edge("raised"))
    plan = mat(replace(garage(), edges=edges))
    assert [(each.kind, each.area.value) for each in plan.turned] == [
        ("turn-down", pytest.approx(5.2 * 0.09)),
        ("upstand", pytest.approx(5.2 * 0.2)),
    ]
    assert plan.turned_area
    assert plan.turned_area.value == pytest.approx(5.2 * 0.29)


def test_what_goes_round_openings() -> None:
    """A sleeve that laps itself, a square, and four pieces lapped round their corners."""
    openings = (Pipe(1, 0.6, 110), Outlet(4, 0.5, 80), Rooflight(2, 1.2, 1.2, 0.9))
    areas = [each.area.value for each in mat(garage(openings=openings)).turned]
    assert areas == pytest.approx(
        [
            (math.pi * 110 + 50) * 200 / 1e6,
            0.28**2,
            (2 * (1200 + 900) + 4 * 50) * 200 / 1e6,
        ]
    )


def test_drops_come_off_the_rolls_whole() -> None:
    """Fifteen metres and nine tenths fit one roll of 30 m; drops of 9.1 m three to a roll."""
    assert mat(garage()).cuts.bars == ((5300, 5300, 5300),)
    bars = mat(ell()).cuts.bars
    assert all(sum(bar) <= 30_000 for bar in bars)
    assert sorted(piece for bar in bars for piece in bar) == [4600] * 4 + [9100] * 5


def test_a_drop_longer_than_the_roll_is_lapped() -> None:
    """5.3 m off rolls of 5 m: 5.0 m and 0.35 m, each time."""
    bars = mat(garage(sold=replace(SOLD, mat_roll_m=5))).cuts.bars
    assert sorted(piece for bar in bars for piece in bar) == [350] * 3 + [5000] * 3


def test_without_a_lap_nothing_lies_double() -> None:
    """Butted, the mat laid is the deck itself. It is nobody's practice, and no sum breaks."""
    plan = mat(garage(laminate=Laminate(lap_mm=0)))
    assert plan.laid.value == pytest.approx(15.08)
    assert plan.laps == ()
