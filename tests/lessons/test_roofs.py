"""Roofs in files, forms and stored texts: what is read, and what is taken where nothing is given.

The shed is 4 by 2.5 m, so its corners in millimetres are 0, 4000 and 2500.
"""

import hashlib
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from roof_texts import SHED, STOCK, edited, read, with_outline

import trainer
from trainer.engine.plans.deck import deck_of
from trainer.engine.plans.description import Cup, Edge, RoofDescription
from trainer.engine.plans.openings import Outlet, Pipe, Rooflight
from trainer.engine.plans.roof import plan_roof
from trainer.lessons import check_content, read_library
from trainer.lessons.check import check_roof
from trainer.lessons.errors import ContentError
from trainer.lessons.roof_sizes import sold_standing
from trainer.lessons.roofs import (
    NO_FILE,
    SampleRoof,
    read_roof,
    read_roof_file,
    read_sample_roofs,
    roof_digest,
    roof_from_text,
    roof_text,
)
from trainer.lessons.stock import read_stock

ROOT = Path(trainer.__file__).parents[1]
CONTENT = ROOT / "content"
SAMPLES, _ = read_sample_roofs(CONTENT, read_stock(CONTENT))
EVERY_SAMPLE = pytest.mark.parametrize("sample", SAMPLES.values(), ids=list(SAMPLES))
SHED_DATA: dict[str, Any] = {
    "title": "Shed by the gate",
    "outline": {"shape": "rectangle", "length_m": 4, "width_m": 2.5},
    "edge": [{"kind": "drip"}, {"kind": "raised"}, {"kind": "wall"}, {"kind": "raised"}],
}


def typed(**tables: Any) -> RoofDescription:
    """Return the shed with other tables, as a form would give them."""
    return read_roof({**SHED_DATA, **tables}, NO_FILE, STOCK)


# The outline.


def test_a_rectangle_begins_at_the_lower_left() -> None:
    """Its corners go round anticlockwise, so that side 1 is the lower one."""
    assert read(SHED).corners == ((0, 0), (4000, 0), (4000, 2500), (0, 2500))


def test_an_l_lacks_its_upper_right() -> None:
    """5 by 4 m less 2 by 1.5 m: it turns inwards at 3 along and 2.5 up."""
    ell = with_outline(
        'shape = "L"', "length_m = 5", "width_m = 4", "cut_length_m = 2", "cut_width_m = 1.5"
    )
    assert read(ell).corners == (
        *((0, 0), (5000, 0), (5000, 2500)),
        *((3000, 2500), (3000, 4000), (0, 4000)),
    )


def test_corners_stay_as_they_are_listed() -> None:
    """Whole numbers and fractions of a metre, on either side of nought."""
    skew = with_outline(
        'shape = "corners"', "corners_m = [[-0.5, 0], [4, -0.25], [4.1, 2.5], [0, 2.5]]"
    )
    assert read(skew).corners == ((-500, 0), (4000, -250), (4100, 2500), (0, 2500))


def test_corners_may_be_typed_a_line_each() -> None:
    """As a form has them: twelve foot six is 12.5 ft of 0.3048 m, which is 3.81 m."""
    lines = ["0, 0", "12'6\", 0", "12'6\",2.5 m", " -1 m , 250 cm"]
    roof = typed(outline={"shape": "corners", "corners_m": lines})
    assert roof.corners == ((0, 0), (3810, 0), (3810, 2500), (-1000, 2500))


# The sides, the corners, the openings.


def test_mat_goes_up_a_wall_unless_it_is_told_otherwise() -> None:
    """150 mm is common practice; other sides have none, and what is told counts."""
    assert read(SHED).edges == (
        Edge("drip", 0),
        Edge("raised", 0),
        Edge("wall", 150),
        Edge("raised", 60),
    )
    edges = [{"kind": "wall", "turn_mm": 100}, {"kind": "wall"}, *SHED_DATA["edge"][2:]]
    assert [edge.turn_mm for edge in typed(edge=edges).edges] == [100, 150, 150, 0]


def test_a_corner_can_be_overruled() -> None:
    """By its number."""
    assert read(SHED).overruled == {2: "mitre"}


def test_openings_are_of_three_kinds() -> None:
    """Each has the fields of its kind; what isn't given is the kind's own default."""
    outlet = '[[opening]]\nkind = "outlet"\nx_m = 3.5\ny_m = 0.5\ndiameter_mm = 80\n'
    assert read(edited("[boards]", f"{outlet}\n[boards]")).openings == (
        Pipe(1, 1, 110, up_mm=150),
        Rooflight(2, 1, 0.8, 0.6, kerb_mm=150),
        Outlet(3.5, 0.5, 80, flange_mm=100),
    )


# The rest.


def test_each_table_fills_its_part() -> None:
    """What the file sets is there."""
    shed = read(SHED)
    assert shed.title == "Shed by the gate"
    assert (shed.boards.length_mm, shed.boards.cut_joints_m) == (2440, (1.2, 0.59))
    assert (shed.mix.product, shed.mix.percent, shed.mix.most_percent) == ("Own brew", 2.5, 3)
    assert shed.cups == (Cup(24, 18, 2),)
    assert (shed.crew.people, shed.crew.start_minute) == (2, 8 * 60 + 30)
    assert (shed.weather.air_c, shed.weather.rain) == (18, "no")
    assert (shed.fall.towards_edge, shed.fall.measured_mm) == (1, 63)


def test_what_is_not_given_is_not_guessed() -> None:
    """No temperature, no pace, nobody looked; the figures of the trade are its defaults."""
    shed = typed()
    assert (shed.weather.air_c, shed.crew.pace_kg, shed.crew.start) == (None, None, None)
    assert (shed.weather.damp, shed.cups, shed.way_off_edge) == ("not looked at", (), 1)
    assert (shed.mix.percent, shed.laminate.ratio, shed.laminate.lap_mm) == (2, 2.5, 50)


def test_what_was_given_is_remembered() -> None:
    """By its key; a default isn't among it."""
    given = read(SHED).given
    assert {"mix.percent", "way_off_edge", "edge.4.turn_mm", "sold.trim_m", "cup.1.at_c"} <= given
    assert not {"mix.convention", "edge.3.turn_mm", "sold.mat_roll_m"} & given


def test_sizes_to_buy_in_come_from_the_stock() -> None:
    """The first width of mat and the largest of everything else, unless the roof says so."""
    sold = read(SHED).sold
    assert (sold.mat_roll_mm, sold.mat_roll_m) == (900, 50)
    assert (sold.tape_roll_m, sold.bandage_roll_m) == (20, 30)
    assert (sold.resin_tin_kg, sold.catalyst_bottle_ml, sold.topcoat_tin_kg) == (25, 300, 15)
    assert sold.trim_m == 3
    assert set(sold_standing(STOCK).values()) == {"invented"}


# How it may be typed.


def test_lengths_may_be_typed_in_other_units() -> None:
    """Eight foot two is 98 in of 25.4 mm; 1.5 oz/ft² is 457.73 g/m² (NIST); 68 °F is 20 °C."""
    shed = typed(
        outline={"shape": "rectangle", "length_m": "8'2\"", "width_m": "150 cm"},
        laminate={"mat_g_per_m2": "1.5 oz/ft²"},
        weather={"air_c": "68 °F", "deck_c": "-2"},
        crew={"pace_kg": "4.4 lb"},
    )
    assert shed.corners[2] == (round(98 * 25.4), 1500)
    assert shed.laminate.mat_g_per_m2 == pytest.approx(457.73, abs=0.005)
    assert shed.weather.air_c == pytest.approx(20)
    assert shed.weather.deck_c == pytest.approx(-2)
    assert shed.crew.pace_kg == pytest.approx(4.4 * 0.45359237)


def test_everything_may_be_typed_as_text() -> None:
    """A form has nothing else; a count stays a whole number."""
    shed = typed(
        way_off_edge="3",
        crew={"people": "2", "start": " 7:05 "},
        fall={"towards_edge": "4"},
        corner=[{"at": "2", "makes": "nothing"}],
        opening=[{"kind": "pipe", "x_m": "1", "y_m": "1,5", "diameter_mm": "4 in"}],
    )
    assert (shed.way_off_edge, shed.crew.people, shed.fall.towards_edge) == (3, 2, 4)
    assert all(type(each) is int for each in (shed.way_off_edge, shed.crew.people))
    assert shed.crew.start_minute == 7 * 60 + 5
    assert shed.overruled == {2: "nothing"}
    assert shed.openings == (Pipe(1, 1.5, pytest.approx(101.6)),)


def test_a_whole_number_may_have_a_point() -> None:
    """TOML tells 2 from 2.0; whoever writes it doesn't."""
    people = typed(crew={"people": 2.0}).crew.people
    assert (people, type(people)) == (2, int)


def test_joints_may_be_counted_with_a_colon() -> None:
    """Three of 2.4 m and one of 12 ft."""
    boards = {"cut_joints_m": "2.4:3, 12 ft"}
    joints = typed(boards=boards).boards.cut_joints_m
    assert joints == pytest.approx((2.4, 2.4, 2.4, 3.6576))


# What is stored.


def test_the_text_is_what_was_typed() -> None:
    """Nothing is filled in, and the order of the keys doesn't matter."""
    text = roof_text(SHED_DATA)
    assert json.loads(text) == SHED_DATA
    assert roof_text(dict(reversed(SHED_DATA.items()))) == text
    assert "\n" not in text
    assert "percent" not in text


def test_the_text_is_read_again() -> None:
    """To the very same roof."""
    assert roof_from_text(roof_text(SHED_DATA), STOCK) == typed()


def test_the_digest_is_the_texts() -> None:
    """SHA-256 in hexadecimal."""
    text = roof_text(SHED_DATA)
    assert roof_digest(text) == hashlib.sha256(text.encode("utf-8")).hexdigest()


@pytest.mark.parametrize("text", ["", "shed", "[]", "[" * 100_000, '{"title": '])
def test_another_text_is_no_roof(text: str) -> None:
    """It is refused in a sentence."""
    with pytest.raises(ContentError, match=r"This isn't the text of a roof\."):
        roof_from_text(text, STOCK)


def test_a_text_without_a_file_names_none() -> None:
    """Its mistakes have a key and no line."""
    with pytest.raises(ContentError) as refused:
        roof_from_text(roof_text({**SHED_DATA, "mix": {"percent": 9}}), STOCK)
    assert str(refused.value).startswith("mix.percent: The catalyst is 9 %")


# Files.


def test_a_file_is_read(tmp_path: Path) -> None:
    """With the mark that some editors put first, and with their line ends."""
    (tmp_path / "shed.toml").write_bytes(SHED.replace("\n", "\r\n").encode("utf-8-sig"))
    assert read_roof_file(tmp_path / "shed.toml", STOCK) == read(SHED)


def test_reading_needs_no_clipper() -> None:
    """Nor does the whole library: polygons are cut only where a roof is planned."""
    code = (
        "import sys; from pathlib import Path; from trainer.lessons import read_library; "
        "assert read_library(Path(sys.argv[1])).roofs; assert 'pyclipper' not in sys.modules"
    )
    subprocess.run([sys.executable, "-c", code, CONTENT], check=True, cwd=ROOT)  # noqa: S603


# The roofs that come along.


def test_the_library_has_the_roofs_by_name() -> None:
    """Eight at the least, each named as its file."""
    roofs = read_library(CONTENT).roofs
    assert len(roofs) >= 8
    assert {f"{name}.toml" for name in roofs} == {f.name for f in (CONTENT / "roofs").iterdir()}


@EVERY_SAMPLE
def test_a_sample_can_be_planned(sample: SampleRoof) -> None:
    """Nothing is wrong with it."""
    assert list(check_roof(sample)) == []
    assert plan_roof(sample.description).stages


@EVERY_SAMPLE
def test_a_sample_can_be_stored(sample: SampleRoof) -> None:
    """Its text leads to the same roof."""
    assert roof_from_text(sample.text, read_stock(CONTENT)) == sample.description


def test_the_samples_differ_in_all_that_matters() -> None:
    """Cups or none, cold or hot, tongued or square, a measured fall, each kind of opening."""
    roofs = [sample.description for sample in SAMPLES.values()]
    air = [roof.weather.air_c for roof in roofs]
    assert {bool(roof.cups) for roof in roofs} == {True, False}
    assert min(each for each in air if each is not None) < 10
    assert max(each for each in air if each is not None) > 25
    assert None in air
    assert {roof.boards.edge for roof in roofs} == {"square", "tongued"}
    assert any(roof.fall.measured_mm for roof in roofs)
    assert {type(each) for roof in roofs for each in roof.openings} == {Pipe, Rooflight, Outlet}
    assert {roof.crew.beginner for roof in roofs} == {"yes", "no"}


def test_the_samples_run_from_a_dormer_to_a_workshop() -> None:
    """2 m² to 60 m²; the dormer has no joint, for it is one board."""
    areas = {name: deck_of(each.description).area.value for name, each in SAMPLES.items()}
    assert min(areas.values()) == pytest.approx(2, abs=0.1)
    assert max(areas.values()) == pytest.approx(60)
    assert deck_of(SAMPLES["dormer"].description).joints == ()


def test_a_mistake_in_a_sample_is_found_when_it_is_read(content: Path) -> None:
    """By file and line, among all other mistakes."""
    write_stock(content)
    (content / "roofs").mkdir()
    (content / "roofs" / "shed.toml").write_text(edited("percent = 2.5", "percent = 9"), "utf-8")
    with pytest.raises(ContentError, match=r"^content/roofs/shed\.toml:\d+: mix\.percent: "):
        read_library(content)


def test_a_sample_that_cannot_be_planned_is_found_by_the_check(content: Path) -> None:
    """Its pipe lies outside the roof."""
    write_stock(content)
    (content / "roofs").mkdir()
    (content / "roofs" / "shed.toml").write_text(edited("x_m = 1", "x_m = 9"), "utf-8")
    _, mistakes = check_content(content)
    found = [str(each) for each in mistakes if each.file == "content/roofs/shed.toml"]
    assert len(found) == 1
    assert "opening.1: Opening 1 lies outside the roof." in found[0]


def write_stock(content: Path) -> None:
    """Give a content folder everything that a roof is bought in."""
    text = (CONTENT / "stock.toml").read_text("utf-8")
    (content / "stock.toml").write_text(text, "utf-8")
