"""A plan as lists and as data: what a spreadsheet or another program gets."""

import csv
import json
from collections.abc import Mapping

import pytest
from roofs_cast import garage

from trainer.engine.plans.description import Boards, Crew, Cup, RoofDescription, Weather
from trainer.engine.plans.figure import Figure
from trainer.engine.plans.lists import Table, clock, data_of, lists_of
from trainer.engine.plans.roof import plan_roof
from trainer.engine.units import show

TIMED = garage(
    cups=(Cup(30, 18, 2),), weather=Weather(air_c=18), crew=Crew(pace_kg=2, start="08:00")
)


def lists(roof: RoofDescription) -> Mapping[str, Table]:
    """Return the lists of a roof."""
    return lists_of(plan_roof(roof))


def test_the_lists_come_in_the_order_of_the_work() -> None:
    """Cut lists first, then batches, what to buy, and what it all rests on."""
    assert list(lists(garage())) == [
        *("tape", "bandage", "drops", "turned", "trims"),
        *("batches", "buy", "figures", "assumed"),
    ]


def test_each_row_is_as_wide_as_its_header() -> None:
    """And each cell is a text, a number or nothing."""
    for table in lists(TIMED).values():
        assert table.rows or table.name == "turned"
        for row in table.rows:
            assert len(row) == len(table.columns), table.name
            assert all(each is None or isinstance(each, (str, int, float)) for each in row)


def test_the_tape_of_the_garage() -> None:
    """Each piece with its joint, its metres and how many ends are carried past another joint."""
    rows = lists(garage())["tape"].rows
    assert rows[:3] == ((1, "joint 1", 5.2, 0), (2, "joint 2", 5.2, 0), (3, "joint 3", 1.271, 1))
    assert [row[2] for row in rows[3:]] == [1.271, 1.323, 1.323, 0.506, 0.506]


def test_a_cut_edge_has_no_joint_to_name() -> None:
    """It was measured, and lies nowhere on the drawing."""
    boards = Boards(width_mm=590, edge="tongued", cut_joints_m=(1.8,))
    assert lists(garage(boards=boards))["tape"].rows == ((1, "a cut edge", 1.8, 0),)


def test_a_deck_without_open_joints_has_an_empty_list_of_tape() -> None:
    """The list is there, with nothing in it."""
    tape = lists(garage(boards=Boards(width_mm=590, edge="tongued")))["tape"]
    assert tape.rows == ()
    assert tape.as_csv() == "piece,over,length (m),ends carried on\r\n"


def test_strips_are_numbered_in_laying_order_and_patches_are_of_mat() -> None:
    """The two raised trims of the garage end at its drip edge: two patches, laid last."""
    rows = lists(garage())["bandage"].rows
    assert [row[0] for row in rows] == list(range(1, len(rows) + 1))
    assert [row[1:3] for row in rows[-2:]] == [
        ("open end at corner 1", "mat"),
        ("open end at corner 2", "mat"),
    ]


def test_what_is_cut_from_a_trim_and_what_is_left_is_its_length() -> None:
    """3 m, however it is cut."""
    for _, _, pieces, left in lists(garage())["trims"].rows:
        assert isinstance(left, int)
        assert sum(map(int, str(pieces).split(" and "))) + left == 3000


def test_batches_come_to_the_resin_of_their_stage() -> None:
    """Each row is one bucket, with its grams, its millilitres and its times."""
    plan = plan_roof(TIMED)
    rows = lists_of(plan)["batches"].rows
    for stage in plan.stages:
        own = [row for row in rows if row[0] == stage.title]
        assert [row[1] for row in own] == list(range(1, len(own) + 1))
        assert sum(float(row[2] or 0) for row in own) == pytest.approx(stage.resin.value, rel=5e-4)
    stage, number, kilograms, _, grams, millilitres, mark, *times = rows[0]
    assert (stage, number, times[0]) == ("Bandage and patches", 1, "08:00")
    assert grams == pytest.approx(float(kilograms or 0) * 20, rel=5e-4)
    assert millilitres == pytest.approx(float(grams or 0) / 1.17, rel=5e-4)
    assert mark == round(float(millilitres or 0))


def test_amounts_have_the_digits_that_the_sheet_shows() -> None:
    """Four that matter: nobody weighs a hundredth of a gram in a bucket of kilograms."""
    plan = plan_roof(TIMED)
    rows = lists_of(plan)["batches"].rows
    for stage in plan.stages:
        row = next(row for row in rows if row[0] == stage.title)
        assert [f"{cell:g}" for cell in row[2:7] if isinstance(cell, (int, float))] == [
            show(value, "").replace("\u00a0", "")
            for value in (
                *(stage.share.value, stage.litres.value, stage.catalyst_g or 0),
                *(stage.catalyst.value, stage.mark_ml),
            )
        ]


def test_one_of_a_thing_to_buy_is_told_as_one() -> None:
    """One roll, and two lengths."""
    rows = lists(garage())["buy"].rows
    assert {row[4] for row in rows if row[3] == 1} >= {"roll", "tin"}
    assert not {row[4] for row in rows if row[3] == 1} & {"rolls", "tins", "bottles", "lengths"}
    assert {row[4] for row in rows if row[3] != 1} <= {"rolls", "tins", "bottles", "lengths"}


def test_without_a_clock_the_times_are_empty() -> None:
    """Nobody has timed a cup, so nobody is told a time."""
    assert {row[-3:] for row in lists(garage())["batches"].rows} == {("", "", "")}


def test_every_figure_of_the_plan_is_listed_unrounded() -> None:
    """With its unit, and the calculation that it came out of."""
    plan = plan_roof(TIMED)
    rows = {row[0]: row for row in lists_of(plan)["figures"].rows}
    assert list(rows) == list(plan.figures())
    for key, known in plan.figures().items():
        assert rows[key][2:4] == (known.value, known.unit)
    assert rows["tape.length"][4] == "tape_length"
    assert rows["joints.1"][4] == "read off the drawing"
    assert rows["buy.mat"][4] == "counted in the cut list"


def test_every_assumption_is_listed_with_its_standing() -> None:
    """A dose that nobody gave is a published one; one that somebody gave is not assumed."""
    rows = {row[0]: row for row in lists(garage())["assumed"].rows}
    assert str(rows["mix.percent"][3]).startswith("published: ")
    assert rows["crew.bucket_l"][3] == "from memory"
    assert "mix.percent" not in {
        row[0] for row in lists(garage(given=frozenset({"mix.percent"})))["assumed"].rows
    }


def test_csv_can_be_read_again() -> None:
    """A header row, then a row for each, whatever commas and quotes are in it."""
    table = Table("x", "X", ("what", "length (m)"), (('2, "raised"', 1.5), ("line\nbreak", None)))
    rows = list(csv.reader(table.as_csv().splitlines(keepends=True)))
    assert rows == [["what", "length (m)"], ['2, "raised"', "1.5"], ["line\nbreak", ""]]


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"])
def test_a_text_that_looks_like_a_formula_is_defused(text: str) -> None:
    """It gets an apostrophe, so that no spreadsheet works it out."""
    table = Table("x", "X", ("what",), ((text,),))
    assert next(csv.reader(table.as_csv().splitlines(keepends=True)[1:]))[0][:2] == f"'{text[0]}"


def test_a_number_below_zero_stays_a_number() -> None:
    """Only texts can be formulas."""
    assert (
        Table("x", "X", ("error (%)",), ((-1.5,), (-2,))).as_csv() == "error (%)\r\n-1.5\r\n-2\r\n"
    )


@pytest.mark.parametrize(
    ("minutes", "told"),
    [
        (0, "00:00"),
        (510, "08:30"),
        (510.99, "08:30"),
        (1439.5, "23:59"),
        (1450, "00:10 next day"),
        (None, ""),
    ],
)
def test_a_time_of_day_is_never_told_later_than_it_is(minutes: float | None, told: str) -> None:
    """Part of a minute is left off: resin doesn't wait for it."""
    assert clock(minutes) == told


def test_data_is_plain_and_complete() -> None:
    """It goes into JSON as it is, each figure with the lines of its working."""
    plan = plan_roof(TIMED)
    told = json.loads(json.dumps(data_of(plan), allow_nan=False))
    assert told["title"] == "A roof of our own"
    assert told["verdict"]["word"] == plan.verdict.word
    assert set(told["lists"]) == set(lists_of(plan))
    assert list(told["figures"]) == list(plan.figures())
    for key, known in plan.figures().items():
        figure = told["figures"][key]
        assert (figure["value"], figure["unit"]) == (known.value, known.unit)
        if isinstance(known, Figure):
            assert figure["working"][-1]["value"] == known.value
            assert len(figure["working"]) == len(known.working.lines)
        else:
            assert figure["measured"] is True


def test_data_tells_why_there_are_no_times() -> None:
    """Sentences where nobody timed a cup; none where somebody did."""
    assert data_of(plan_roof(garage()))["no_times"]
    assert data_of(plan_roof(TIMED))["no_times"] == []
