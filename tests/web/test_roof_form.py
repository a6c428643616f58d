"""The form of a roof: what it asks, what it takes for a roof, and what it says is wrong."""

from pathlib import Path
from typing import Any

import pytest
from web_bench import Bench
from web_cast import NOOR
from web_roof_form import GARAGE, field, planned, summary, verdict

from trainer.engine.plans.description import PARTS, fields_of
from trainer.lessons.roof_shapes import MEASURED
from trainer.lessons.roofs import NO_FILE, read_roof, read_tables
from trainer.lessons.stock import read_stock
from trainer.web.roof_form import SIDES, changed_in, fields_from, sides_of, tables_from, tidied

CONTENT = Path(__file__).parents[2] / "content"
EXAMPLES = sorted((CONTENT / "roofs").glob("*.toml"))
CORNERS = {"outline.shape": "corners"}
ONE_A_LINE = "Write one corner a line, with a comma, such as 4.2, 0."


@pytest.mark.parametrize("path", EXAMPLES, ids=[each.stem for each in EXAMPLES])
def test_a_form_says_the_same_as_the_file_it_was_filled_from(path: Path) -> None:
    """Every part of the roof comes back from the fields as it went in."""
    stock = read_stock(CONTENT)
    data, block = read_tables(path, path.name)
    there, back = read_roof(data, block, stock), tables_from(fields_from(data))
    again = read_roof(back, NO_FILE, stock)
    for name in there.__dataclass_fields__:
        if name != "given":
            assert getattr(again, name) == getattr(there, name), name


@pytest.mark.parametrize("path", EXAMPLES, ids=[each.stem for each in EXAMPLES])
def test_a_form_that_was_kept_comes_back_as_it_was(path: Path) -> None:
    """Going there and back a second time changes nothing any more."""
    data, _ = read_tables(path, path.name)
    once = tables_from(fields_from(data))
    assert tables_from(fields_from(once)) == once


def test_every_measured_shape_has_a_word_for_each_side() -> None:
    """As many words as the shape has corners."""
    for shape, kind in MEASURED.items():
        sizes = [1.0 if name.startswith("cut") else 2.0 for name in fields_of(kind)]
        assert len(SIDES[shape]) == len(kind(*sizes).corners), shape


@pytest.mark.parametrize(
    ("typed", "sides"),
    [
        ({"outline.shape": "rectangle"}, 4),
        ({"outline.shape": "L"}, 6),
        ({}, 4),
        (CORNERS, 3),
        ({**CORNERS, "outline.corners_m": "0, 0\n4, 0\n\n4, 3\n2, 4\n0, 3\n"}, 5),
        ({**CORNERS, "outline.corners_m": "0, 0\n" * 2000}, 60),
    ],
)
def test_the_outline_says_how_many_sides_there_are(typed: dict[str, str], sides: int) -> None:
    """A line without anything on it is no corner; there are never more rows than a roof has."""
    assert sides_of(typed) == sides


def test_a_default_is_not_written_down() -> None:
    """An empty field, spaces, and a choice that nobody touched say nothing."""
    typed = {**GARAGE, "boards.edge": "square", "weather.damp": "not looked at", "mix.percent": " "}
    assert set(tables_from(typed)) == {"title", "outline", "edge"}
    assert changed_in(typed, "boards") == 0
    assert changed_in({**typed, "boards.edge": "tongued", "boards.gap_mm": "4"}, "boards") == 2


def test_only_the_fields_of_the_chosen_shape_count() -> None:
    """What was typed for an L stays in the form of a rectangle, and out of the roof."""
    typed = tidied({**GARAGE, "outline.cut_length_m": "2"})
    assert typed["outline.cut_length_m"] == "2"
    assert tables_from(typed)["outline"] == {
        "shape": "rectangle",
        "length_m": "5.2",
        "width_m": "2.9",
    }


def test_fields_that_a_roof_does_not_have_are_left_out() -> None:
    """Neither a button's name nor an invented one gets any further."""
    sent = {"press": "plan", "mix.colour": "red", "edge.0.kind": "drip", "edge.1.run": "up", "": ""}
    assert tidied({**GARAGE, **sent}) == GARAGE


def test_empty_openings_are_left_out_and_the_others_numbered_anew() -> None:
    """The first was ticked to go, the second was never filled in, the third is now the first."""
    sent = {
        "opening.1.kind": "pipe",
        "opening.1.gone": "yes",
        "opening.2.x_m": "  ",
        "opening.10.kind": "outlet",
        "opening.10.x_m": "1",
        "opening.10.kerb_mm": "150",
        "cup.1.of": "test cup",
    }
    fields = tidied(sent)
    assert {name: fields[name] for name in ("opening.1.kind", "opening.1.x_m")} == {
        "opening.1.kind": "outlet",
        "opening.1.x_m": "1",
    }
    tables = tables_from(fields)
    assert tables["opening"] == [{"kind": "outlet", "x_m": "1"}]
    assert "cup" not in tables


def test_the_form_asks_for_every_field_there_is(bench: Bench) -> None:
    """Each part's annotated fields, by their words, with their units beside them."""
    page = bench.visit(NOOR).open("/roofs/new")
    for part, kind in PARTS.items():
        for name, each in fields_of(kind).items():
            asked = page.main.all(id=f"{part}.{name}")
            assert len(asked) == 1, (part, name)
            if not each.choices:
                label = page.main.all("label", **{"for": f"{part}.{name}"})[0].words
                assert label.casefold().startswith(each.words.casefold()), name
                assert label.endswith(f", in {each.unit}") == bool(each.unit), name


def test_each_default_stands_with_how_it_is_known(bench: Bench) -> None:
    """Common practice, from memory, published with its source, or invented."""
    page = bench.visit(NOOR).open("/roofs/new")

    def hint(name: str) -> str:
        return field(page, f"{name}-hint").words

    assert hint("boards.gap_mm") == "3 mm unless you say otherwise: common practice."
    assert hint("trims.end_width_mm") == "60 mm unless you say otherwise: from memory."
    assert hint("fall.ratio") == "40 unless you say otherwise: published, NHBC ch. 7.1."
    assert hint("sold.mat_roll_mm") == "1000 mm unless you say otherwise: invented."
    assert hint("weather.air_c") == "Leave it empty if you don't know."
    assert hint("edge.1.turn_mm") == "Left empty: 150 mm at a wall, else none."
    assert page.main.all(id="outline.length_m-hint") == []


def test_a_garage_is_planned_from_outline_and_sides_alone(bench: Bench) -> None:
    """The form comes back with its plan under it, and nothing was kept."""
    noor = bench.visit(NOOR)
    page = planned(noor)
    assert (page.status, summary(page)) == (200, {})
    assert verdict(page) == "Not judged yet"
    assert "15.08 m²" in page.main.all(id="figure-deck.area")[0].words
    assert field(page, "outline.length_m")["value"] == "5.2"
    assert "Nothing is kept yet." in page.words
    assert "You have kept no roof yet" in noor.open("/roofs").words


def test_a_plan_needs_no_name(bench: Bench) -> None:
    """It is asked for when the roof is to be kept."""
    noor = bench.visit(NOOR)
    page = planned(noor, title="")
    assert (page.status, field(page, "title")["value"]) == (200, "")
    page = noor.send(page, press="keep")
    assert (page.status, page.error_of("title")) == (422, "A roof has no title.")


def test_people_type_the_unit_they_measured_in(bench: Bench) -> None:
    """17 feet and 9 inches by 9'6" is 5.41 by 2.896 m; 68 °F are 20 °C."""
    page = planned(
        bench.visit(NOOR),
        **{
            "outline.length_m": "17'9\"",
            "outline.width_m": "9 ft 6 in",
            "weather.air_c": "68 °F",
            "laminate.mat_g_per_m2": "1.5 oz/ft²",
        },
    )
    assert (page.status, summary(page)) == (200, {})
    assert "The air is at 20 °C" in page.words
    assert field(page, "outline.length_m")["value"] == "17'9\""


def test_another_shape_brings_its_sides(bench: Bench) -> None:
    """Sent without scripts, the page comes back with six sides, and with what was typed."""
    page = planned(bench.visit(NOOR), **{"outline.shape": "L", "edge.1.turn_mm": "40"})
    assert page.status == 422
    assert len(page.main.all(class_="side")) == 6
    assert set(summary(page)) == {
        *("outline.cut_length_m", "outline.cut_width_m", "edge.5.kind", "edge.6.kind")
    }
    assert summary(page)["edge.5.kind"] == "Side 5: The kind of edge isn't given."
    assert field(page, "edge.1.turn_mm")["value"] == "40"
    assert page.form.fields["edge.4.kind"] == "raised"


def test_sides_of_a_larger_shape_are_not_forgotten(bench: Bench) -> None:
    """Six sides of an L, a rectangle in between, and the L again: all six are as they were."""
    noor = bench.visit(NOOR)
    ell = {"outline.shape": "L", "outline.cut_length_m": "2", "outline.cut_width_m": "1"}
    page = planned(noor, **ell, **{"edge.5.kind": "drip", "edge.6.kind": "wall"})
    assert page.status == 200
    page = noor.send(page, press="plan", **{"outline.shape": "rectangle"})
    assert len(page.main.all(class_="side")) == 4
    page = noor.send(page, press="plan", **{"outline.shape": "L"})
    assert (page.status, page.form.fields["edge.6.kind"]) == (200, "wall")


def test_there_is_always_one_more_opening_to_type(bench: Bench) -> None:
    """As many as were typed and one blank; one that is ticked to go is gone."""
    noor = bench.visit(NOOR)
    pipe = {"opening.1.kind": "pipe", "opening.1.x_m": "1", "opening.1.y_m": "1"}
    page = planned(noor, **pipe, **{"opening.1.diameter_mm": "110"})
    assert (page.status, len(page.main.all(class_="opening"))) == (200, 2)
    page = noor.send(page, press="plan", **{"opening.1.gone": "yes"})
    assert (page.status, len(page.main.all(class_="opening"))) == (200, 1)


def test_folded_groups_say_how_much_of_them_was_changed(bench: Bench) -> None:
    """Two fields of the boards; a group with something to mend stands open."""
    page = planned(bench.visit(NOOR), **{"boards.edge": "tongued", "boards.width_mm": "600"})
    assert field(page, "boards").all("summary")[0].words == "Boards 2 fields changed"
    assert field(page, "tape").all("summary")[0].words == "Tape"
    assert "open" not in field(page, "boards").attributes
    page = planned(bench.visit(NOOR), **{"boards.gap_mm": "wide"})
    assert "open" in field(page, "boards").attributes


#: Choices among BAD that no browser sends.
MADE_UP = {"round", "soft", "a bit", "a mess"}
#: What is typed besides the garage, the place that the sentence stands at, and some of its words.
BAD: list[tuple[dict[str, str], str, str]] = [
    ({"title": "x" * 300}, "title", "80 letters"),
    ({"title": "a\0b"}, "title", "80 letters"),
    ({"outline.shape": ""}, "outline.shape", "no shape"),
    ({"outline.shape": "round"}, "outline.shape", "There is no shape 'round'"),
    ({"outline.length_m": ""}, "outline.length_m", "isn't given"),
    ({"outline.length_m": "5,200"}, "outline.length_m", "Is that 5.200 or 5200?"),
    ({"outline.length_m": "nan"}, "outline.length_m", "can't be read"),
    ({"outline.length_m": "inf"}, "outline.length_m", "can't be read"),
    ({"outline.length_m": "0"}, "outline.length_m", "between 0.1 and 100 m"),
    ({"outline.length_m": "5 kg"}, "outline.length_m", "You wrote kg"),
    ({**CORNERS, "outline.corners_m": ""}, "outline.corners_m", "list of places"),
    ({**CORNERS, "outline.corners_m": "0,0\n4,0"}, "outline.corners_m", "2 corners"),
    (
        {**CORNERS, "outline.corners_m": "0,0\n" * 1999 + "0,0"},
        "outline.corners_m",
        "60 are the most",
    ),
    ({**CORNERS, "outline.corners_m": "0,0\n4\n4,3"}, "outline.corners_m", "Corner 2"),
    ({**CORNERS, "outline.corners_m": ""}, "outline.corners_m", ONE_A_LINE),
    ({**CORNERS, "outline.corners_m": "0,0\n4 0\n4,3"}, "outline.corners_m", ONE_A_LINE),
    ({**CORNERS, "outline.corners_m": "0,0\n4,x\n4,3"}, "outline.corners_m", ONE_A_LINE),
    ({**CORNERS, "outline.corners_m": "0,0\n4,x\n4,3"}, "outline.corners_m", "Look at corner 2."),
    ({**CORNERS, "outline.corners_m": "0,0\n4,3\n4,0\n0,3"}, "outline.corners_m", "cross"),
    ({**CORNERS, "outline.corners_m": "0,0\n0,3\n4,3\n4,0"}, "outline.corners_m", "clockwise"),
    ({**CORNERS, "outline.corners_m": "0,0\n4,0\n4,0\n0,3"}, "outline.corners_m", "same place"),
    ({**CORNERS, "outline.corners_m": "0,0\n4,0\n2,0\n1,0"}, "outline.corners_m", "nothing"),
    ({"edge.2.kind": ""}, "edge.2.kind", "isn't given"),
    ({"edge.2.kind": "soft"}, "edge.2.kind", "There is no kind of edge 'soft'"),
    ({"edge.2.turn_mm": "2000"}, "edge.2.turn_mm", "between 0 and 1000 mm"),
    ({"way_off_edge": "5"}, "way_off_edge", "1 to 4"),
    ({"fall.towards_edge": "9"}, "fall.towards_edge", "1 to 4"),
    ({"opening.1.x_m": "1"}, "opening.1.kind", "no kind"),
    ({"opening.1.kind": "pipe"}, "opening.1.x_m", "isn't given"),
    ({"boards.length_mm": "6000", "boards.width_mm": "3000"}, "boards", "larger than the roof"),
    ({"boards.cut_joints_m": "2.4, x"}, "boards.cut_joints_m", "can't be read"),
    ({"laminate.lap_mm": "300", "sold.mat_roll_mm": "250"}, "laminate.lap_mm", "as wide"),
    ({"laminate.layers": "1.5"}, "laminate.layers", "whole number"),
    ({"weather.air_c": "-40"}, "weather.air_c", "between -20 and 50"),
    ({"weather.air_c": "70"}, "weather.air_c", "between -20 and 50"),
    ({"weather.humidity_percent": "0"}, "weather.humidity_percent", "between 1 and 100"),
    ({"weather.humidity_percent": "101"}, "weather.humidity_percent", "between 1 and 100"),
    ({"weather.damp": "a bit"}, "weather.damp", "no damp deck 'a bit'"),
    ({"mix.percent": "0"}, "mix.percent", "between 0.5 and 6"),
    ({"mix.percent": "9"}, "mix.percent", "between 0.5 and 6"),
    ({"mix.least_percent": "3", "mix.most_percent": "2"}, "mix.least_percent", "more than the"),
    ({"cup.1.minutes": "0", "cup.1.at_c": "18"}, "cup.1.minutes", "between 1 and 240"),
    ({"cup.1.minutes": "30"}, "cup.1.at_c", "isn't given"),
    ({"crew.start": "half past"}, "crew.start", "no time of day"),
    ({"corner.2.makes": "a mess"}, "corner.2.makes", "no thing that a corner makes 'a mess'"),
]


@pytest.mark.parametrize(("typed", "place", "words"), BAD)
def test_a_mistake_is_told_by_its_field_and_nothing_typed_is_lost(
    bench: Bench, typed: dict[str, str], place: str, words: str
) -> None:
    """422, the sentence there, a way to it on top, no plan, and each field as it was typed."""
    page = planned(bench.visit(NOOR), **typed)
    assert page.status == 422
    assert words in page.error_of(place)
    assert words in summary(page)[place]
    assert verdict(page) == ""
    assert set(summary(page)) <= {each["id"] for each in page.main.walk()}
    back = page.form.fields
    # A choice that nobody offered can't come back; somebody made it up.
    kept = {name: text for name, text in typed.items() if text not in MADE_UP}
    assert {name: back.get(name, "") for name in kept} == kept


def test_openings_outside_the_roof_are_told_at_their_row(bench: Bench) -> None:
    """One lies outside, one across the edge, one over the one before it."""
    pipe = {"kind": "pipe", "y_m": "1", "diameter_mm": "110"}
    places = ("9", "0.03", "2", "2.05")
    typed = {
        f"opening.{number}.{name}": text
        for number, x in enumerate(places, start=1)
        for name, text in {**pipe, "x_m": x}.items()
    }
    page = planned(bench.visit(NOOR), **typed)
    assert "outside the roof" in page.error_of("opening.1")
    assert "across an edge" in page.error_of("opening.2")
    assert page.error_of("opening.3") == ""
    assert "over another opening" in page.error_of("opening.4")
    assert set(summary(page)) == {"opening.1", "opening.2", "opening.4"}


def test_mistakes_are_told_all_at_once(bench: Bench) -> None:
    """Three fields of three groups in one go."""
    wrong = {"mix.percent": "9", "crew.people": "none", "weather.air_c": "70"}
    assert set(summary(planned(bench.visit(NOOR), **wrong))) == set(wrong)


def test_a_rule_for_a_corner_goes_by_the_corner_s_number(bench: Bench) -> None:
    """Corner 3 makes nothing; the first corners keep to the rule."""
    page = planned(bench.visit(NOOR), **{"corner.3.makes": "nothing"})
    assert page.status == 200
    assert "Corner 3 makes nothing" in page.words
    assert field(page, "corner").all("summary")[0].words == "Corners 1 field changed"


def test_what_is_typed_is_shown_as_text(bench: Bench) -> None:
    """A tag in a name is no tag on the page."""
    typed: dict[str, Any] = {"title": "<script>alert(1)</script>", "mix.product": '"><b>'}
    page = planned(bench.visit(NOOR), **typed)
    assert page.status == 200
    assert field(page, "title")["value"] == typed["title"]
    assert not any(each.words == "alert(1)" for each in page.root.all("script"))


def test_too_many_fields_are_refused(bench: Bench) -> None:
    """More than any roof has."""
    many = {f"opening.{number}.x_m": "1" for number in range(1, 99)}
    more = {f"cup.{number}.at_c": "18" for number in range(1, 99)}
    page = planned(bench.visit(NOOR), **many, **more)
    assert (page.status, page.heading) == (413, "That is too much for one form")
