"""The figures of a plan that questions may be asked on."""

import math
from dataclasses import replace

import pytest
from roofs_cast import DRIP, RAISED, WALL, ell, garage, roof

from trainer.engine.measures import UNITS
from trainer.engine.plans.description import (
    Boards,
    Crew,
    Cup,
    Edge,
    Fall,
    Laminate,
    Mix,
    RoofDescription,
    Weather,
)
from trainer.engine.plans.extents import missing_mm
from trainer.engine.plans.facts import FACTS, MOST_TOLD, Facts, facts_for_questions
from trainer.engine.plans.openings import Outlet, Pipe, Rooflight
from trainer.engine.plans.roof import plan_roof
from trainer.engine.units import show

#: 2 by 1 m of tongued boards, drip edges all round: it has no joint, no open end, no opening.
DORMER = roof(
    ((0, 0), (2000, 0), (2000, 1000), (0, 1000)),
    boards=Boards(length_mm=2000, width_mm=590, edge="tongued"),
)
#: The L with everything that a roof can have.
WHOLE = replace(
    ell(
        openings=(Rooflight(1, 1, 1, 0.6), Pipe(3, 3, 110), Pipe(6, 3, 50), Outlet(7, 1, 90)),
        weather=Weather(air_c=18, deck_c=17, humidity_percent=60),
        crew=Crew(people=3, pace_kg=1),
        cups=(Cup(25, 18),),
        laminate=Laminate(layers=2),
        fall=Fall(measured_mm=180),
        mix=Mix(percent=2),
    ),
    edges=(Edge(DRIP, 40), *(Edge(kind, 150) for kind in (RAISED, WALL, WALL, RAISED, WALL))),
)


def facts_of(description: RoofDescription) -> Facts:
    """Return the facts of a roof."""
    return facts_for_questions(plan_roof(description))


def test_the_garage_has_the_figures_that_a_tape_measure_gives() -> None:
    """5.2 by 2.9 m: the rectangle, its longest side, and drops that run along it."""
    facts = facts_of(garage())
    assert (facts["rectangle.length_m"], facts["rectangle.width_m"]) == (5.2, 2.9)
    assert (facts["deck.area_m2"], facts["sides.longest_m"]) == (15.08, 5.2)
    assert (facts["mat.longest_drop_m"], facts["mat.run_m"]) == (5.2, 2.9)
    assert facts["sides.lengths_m"] == (5.2, 2.9, 5.2, 2.9)


def test_the_garages_joints_are_those_of_three_courses() -> None:
    """Two run from end to end; two cross each course, all 2.9 m of the roof, and meet them 8 times.

    Worked by hand: 2 × 5.2 + 2 × 2.9 = 16.2 m. The joints of the outer courses meet one long
    joint each, those of the middle course two.
    """
    facts = facts_of(garage())
    assert (facts["joints.total_m"], facts["joints.longest_m"]) == (16.2, 5.2)
    assert facts["joints.meeting_ends"] == 2 + 4 + 2


def test_drops_that_run_up_the_roof_cover_its_length() -> None:
    """The two reaches change places."""
    facts = facts_of(garage(laminate=Laminate(run="up")))
    assert (facts["mat.longest_drop_m"], facts["mat.run_m"]) == (2.9, 5.2)


def test_a_dormer_of_tongued_boards_lacks_what_it_has_not() -> None:
    """No joint, no tape, no open end, no opening, no weather and no cup: no figure of them."""
    facts = facts_of(DORMER)
    lacking = {"joints", "tape", "openings", "upstand", "turn_down", "weather", "gel", "ell"}
    assert {name.partition(".")[0] for name in facts} & lacking == set()
    assert "trims.open_ends" not in facts
    assert facts["rectangle.length_m"] == 2.0


def test_joints_that_were_measured_count_too() -> None:
    """A cut edge of a tongued board is an open joint, wherever it lies."""
    boards = Boards(length_mm=2000, width_mm=590, edge="tongued", cut_joints_m=(0.8, 0.45))
    facts = facts_of(replace(DORMER, boards=boards))
    assert (facts["joints.lengths_m"], facts["joints.longest_m"]) == ((0.8, 0.45), 0.8)
    assert "joints.meeting_ends" not in facts


def test_an_ell_has_the_corner_that_it_lacks() -> None:
    """9 by 8 m without 4.5 by 4 m; it is no rectangle."""
    facts = facts_of(ell())
    names = ("length_m", "width_m", "missing_length_m", "missing_width_m")
    assert [facts[f"ell.{name}"] for name in names] == [9.0, 8.0, 4.5, 4.0]
    assert "rectangle.length_m" not in facts


@pytest.mark.parametrize(
    "corners",
    [
        pytest.param(((0, 0), (4, 0), (4, 3), (0, 3)), id="rectangle"),
        pytest.param(((0, 0), (4, 0), (4, 2), (3, 3), (0, 3)), id="skew corner"),
        pytest.param(((0, 0), (4, 0), (4, 1), (2, 2), (2, 3), (0, 3)), id="skew ell"),
        pytest.param(
            ((0, 0), (6, 0), (6, 3), (4, 3), (4, 1), (2, 1), (2, 3), (0, 3)), id="a notch"
        ),
    ],
)
def test_only_an_ell_lacks_a_corner(corners: tuple[tuple[int, int], ...]) -> None:
    """Six square corners, one of them inside the box: nothing else is asked about as an L."""
    assert missing_mm(corners) is None


@pytest.mark.parametrize("turns", range(4))
def test_an_ell_lacks_its_corner_whichever_way_it_lies(turns: int) -> None:
    """Turned by quarters, 4.5 by 4 m are missing along and up by turns."""
    corners = ell().corners
    for _ in range(turns):
        corners = tuple((-y, x) for x, y in corners)
    assert missing_mm(corners) == ((4500, 4000), (4000, 4500))[turns % 2]


def test_the_largest_opening_of_its_kind_is_asked_about() -> None:
    """Of a pipe of 110 mm and one of 50 mm it is the first."""
    facts = facts_of(WHOLE)
    assert (facts["openings.pipe_mm"], facts["openings.outlet_mm"]) == (110, 90)
    assert (facts["openings.kerb_length_mm"], facts["openings.kerb_width_mm"]) == (1000, 600)


def test_the_cup_is_the_one_that_the_clock_goes_by() -> None:
    """25 minutes at 18 °C and 2 %, laid at 18; without a cup none of its figures is there."""
    cup = {"cup.gel_min": 25, "cup.at_c": 18, "cup.percent": 2, "gel.at_c": 18}
    assert cup.items() <= facts_of(WHOLE).items()
    assert not {name for name in facts_of(garage()) if name.startswith(("cup.", "gel."))}


def test_a_pace_is_asked_about_where_it_sets_the_batch() -> None:
    """Three who lay 1 kg in ten minutes fill no bucket of 5 L in time; at 3 kg each they would."""
    assert facts_of(WHOLE)["crew.working_min"] == facts_of(WHOLE)["gel.working_min"]
    quick = replace(WHOLE, crew=Crew(people=3, pace_kg=3))
    assert "crew.working_min" not in facts_of(quick)


def test_a_beginner_mixes_no_more_than_the_bucket_holds() -> None:
    """A litre as a rule, and half a litre where that is the bucket."""
    assert facts_of(garage())["crew.beginner_l"] == 1
    assert facts_of(garage(crew=Crew(bucket_l=0.5)))["crew.beginner_l"] == 0.5


def test_many_lengths_are_told_in_all_and_not_one_by_one() -> None:
    """The L has more joints than can be read on a phone."""
    facts = facts_of(ell())
    assert "joints.lengths_m" not in facts
    assert "joints.total_m" in facts
    lists = [each for each in facts_of(garage()).values() if isinstance(each, tuple)]
    assert max(map(len, lists)) <= MOST_TOLD


def test_a_fact_is_what_a_page_prints() -> None:
    """A side of √(1 + 3.5²) m is 3.64 m, to the four digits that are shown."""
    skew = roof(((0, 0), (6000, 0), (5000, 3500), (0, 3500)))
    facts = facts_of(skew)
    assert facts["sides.lengths_m"] == (6.0, round(math.sqrt(1 + 3.5**2), 3), 5.0, 3.5)
    for name, value in facts.items():
        for each in value if isinstance(value, tuple) else (value,):
            printed = show(each, "").replace("−", "-").replace("\u00a0", "")
            assert float(printed) == each, name


def test_every_fact_is_had_by_some_roof() -> None:
    """A name that no roof fills would only mislead whoever writes questions."""
    had = {name for each in (WHOLE, garage(), DORMER) for name in facts_of(each)}
    assert set(FACTS) - had == set()


def test_a_fact_has_the_shape_that_it_says() -> None:
    """Counts are whole, lists have members, and nothing is nothing."""
    for description in (WHOLE, garage(), DORMER):
        for name, value in facts_of(description).items():
            kind = {"count": int, "list": tuple, "number": (int, float)}[FACTS[name].shape]
            assert isinstance(value, kind), name
            assert value, name


@pytest.mark.parametrize("name", FACTS)
def test_a_facts_name_tells_its_unit(name: str) -> None:
    """As parameters' names do: `_m` in metres, `_kg_per_l` in kg/L."""
    endings = {
        "_m": "m", "_mm": "mm", "_m2": "m²", "_kg": "kg", "_l": "L", "_c": "°C",
        "_min": "min", "_percent": "%", ".percent": "%", "_kg_per_l": "kg/L",
        "_kg_per_m2": "kg/m²", ".kg_per_m2": "kg/m²", "_g_per_m2": "g/m²", ".g_per_m2": "g/m²",
    }  # fmt: skip
    fitting = [ending for ending in endings if name.endswith(ending)]
    unit = endings[max(fitting, key=len)] if fitting else ""
    assert FACTS[name].unit == unit
    assert unit in UNITS
    assert FACTS[name].words
