"""What is wrong with a roof: each mistake is one sentence with its file, its line and its key."""

import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from roof_texts import (
    FILE,
    SHED,
    STOCK,
    edited,
    mistake_in,
    mistakes_in,
    mistakes_in_file,
    read,
    with_outline,
)

from trainer.lessons.errors import ContentError
from trainer.lessons.roofs import NO_FILE, plan_mistakes, read_roof, roof_from_text, roof_text


def line_of(text: str, begins: str, nth: int = 1) -> int:
    """Return the number of the nth line of a text that begins so."""
    lines = [n for n, each in enumerate(text.splitlines(), 1) if each.startswith(begins)]
    return lines[nth - 1]


def corners(*places: str) -> str:
    """Return a shed of four sides with this list of corners."""
    return with_outline('shape = "corners"', f"corners_m = [{', '.join(places)}]")


def test_the_shed_is_well() -> None:
    """What is spoilt below is right before."""
    assert mistakes_in(SHED) == ()


def test_a_mistake_is_told_with_file_line_key_sentence_and_text() -> None:
    """An author finds it at once; a form takes the key and the sentence."""
    mistake = mistake_in(edited("percent = 2.5", "percent = 9"))
    assert mistake.key == "mix.percent"
    assert mistake.sentence == "The catalyst is 9 %; it must lie between 0.5 and 6 %."
    assert str(mistake) == (
        f"{FILE}:{line_of(SHED, 'percent = 2.5')}: mix.percent: {mistake.sentence}\n    percent = 9"
    )


# Figures that can't be.


@pytest.mark.parametrize(
    ("old", "new", "key"),
    [
        ("air_c = 18", "air_c = -40", "weather.air_c"),
        ("air_c = 18", "air_c = 70", "weather.air_c"),
        ("humidity_percent = 60", "humidity_percent = 0", "weather.humidity_percent"),
        ("humidity_percent = 60", "humidity_percent = 101", "weather.humidity_percent"),
        ("percent = 2.5", "percent = 0", "mix.percent"),
        ("percent = 2.5", "percent = 9", "mix.percent"),
        ("minutes = 24", "minutes = 0", "cup.1.minutes"),
        ("length_m = 4", "length_m = 1e300", "outline.length_m"),
        ("length_m = 4", "length_m = 0", "outline.length_m"),
        ("turn_mm = 60", "turn_mm = -60", "edge.4.turn_mm"),
        ("diameter_mm = 110", "diameter_mm = 1e9", "opening.1.diameter_mm"),
        ("at = 2", "at = 0", "corner.1.at"),
        ("towards_edge = 1", "towards_edge = 99", "fall.towards_edge"),
        ("way_off_edge = 1", "way_off_edge = 0", "way_off_edge"),
        ("[1.2, 0.59]", "[1.2, 900]", "boards.cut_joints_m"),
        ("trim_m = 3", "trim_m = 300", "sold.trim_m"),
    ],
)
def test_a_figure_out_of_range_is_refused(old: str, new: str, key: str) -> None:
    """Its range stands in the sentence."""
    mistake = mistake_in(edited(old, new))
    assert mistake.key == key
    assert "it must lie between " in mistake.sentence
    assert mistake.line == line_of(SHED, old if not old.startswith("[") else "cut_joints_m")


@pytest.mark.parametrize("number", ["nan", "-nan", "inf", "-inf", "1" * 400])
def test_what_is_no_finite_number_is_refused(number: str) -> None:
    """TOML knows them; no roof does."""
    mistake = mistake_in(edited("air_c = 18", f"air_c = {number}"))
    assert mistake.key == "weather.air_c"
    assert mistake.sentence.endswith("it must be a finite number.")
    assert len(str(mistake)) < 400


@pytest.mark.parametrize(
    "number", ["true", "false", "[]", "[18]", "{}", "2026-03-09", "08:30:00", "{at = 3}"]
)
def test_what_is_no_number_is_refused(number: str) -> None:
    """True is none; the sentence says what will do."""
    mistake = mistake_in(edited("air_c = 18", f"air_c = {number}"))
    assert (mistake.key, mistake.line) == ("weather.air_c", line_of(SHED, "air_c"))
    assert mistake.sentence == (
        "The air temperature must be a number in °C, or a text with its unit."
    )


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("18 kg", "You wrote kg; this is asked in °C."),
        ("warm", "That can't be read as one figure."),
        ("", "Type a figure first"),
        ("9" * 10_000, "That is too long for one figure."),
        ("1,300", "Is that 1.300 or 1300?"),
        ("nan", "That can't be read as one figure."),
    ],
)
def test_a_text_that_is_no_quantity_is_asked_about(text: str, told: str) -> None:
    """In the same sentence as everywhere else."""
    mistake = mistake_in(edited("air_c = 18", f'air_c = "{text}"'))
    assert mistake.key == "weather.air_c"
    assert told in mistake.sentence
    assert len(str(mistake)) < 300


@pytest.mark.parametrize("count", ["2.5", '"2.5"', '"two"', "true", "nan"])
def test_a_count_is_whole(count: str) -> None:
    """Half a hand holds no roller."""
    assert mistake_in(edited("people = 2", f"people = {count}")).key == "crew.people"


@pytest.mark.parametrize("joints", ["[]", "3", "[[1.2]]", '["a"]', '"2.4:0"', '"2.4:x"', '""'])
def test_a_list_of_joints_holds_lengths(joints: str) -> None:
    """At least one."""
    mistake = mistake_in(edited("[1.2, 0.59]", joints))
    assert mistake.key == "boards.cut_joints_m"


@pytest.mark.parametrize(
    ("old", "new", "key", "told"),
    [
        ('rain = "no"', 'rain = "maybe"', "weather.rain", "yes"),
        ('rain = "no"', "rain = false", "weather.rain", "yes or no or not looked at"),
        ('kind = "drip"', 'kind = "dripp"', "edge.1.kind", "Did you mean 'drip'?"),
        ('kind = "drip"', f'kind = "{"d" * 9999}"', "edge.1.kind", "drip, raised, wall"),
        ('makes = "mitre"', 'makes = "miter"', "corner.1.makes", "Did you mean 'mitre'?"),
        ('start = "08:30"', 'start = "25:00"', "crew.start", "Write it like 08:30."),
        ('start = "08:30"', "start = 08:30:00", "crew.start", "a text in quotes"),
        ('product = "Own brew"', 'product = ""', "mix.product", "1 to 80 letters"),
        ('product = "Own brew"', f'product = "{"a" * 300}"', "mix.product", "1 to 80 letters"),
    ],
)
def test_a_word_that_is_not_known_gets_a_guess(old: str, new: str, key: str, told: str) -> None:
    """Or what there is to choose from."""
    mistake = mistake_in(edited(old, new))
    assert mistake.key == key
    assert told in f"{mistake.sentence} {mistake.mend}"
    assert len(str(mistake)) < 400


# Keys and tables.


@pytest.mark.parametrize(
    ("old", "new", "key", "guess"),
    [
        ("percent = 2.5", "percnt = 2.5", "mix.percnt", "Did you mean 'percent'?"),
        ("[weather]", "[whether]", "whether", "Did you mean 'weather'?"),
        ("turn_mm = 60", "turn_m = 60", "edge.4.turn_m", "Did you mean 'turn_mm'?"),
        ("diameter_mm = 110", "diameter_mm = 110\nkerb = 5", "opening.1.kerb", "Known here: "),
        ("width_m = 2.5", "width_m = 2.5\ncut = 1", "outline.cut", "Known here: "),
        ("minutes = 24", "minutes = 24\nminute = 3", "cup.1.minute", "'minutes'"),
    ],
)
def test_an_unknown_key_gets_a_guess(old: str, new: str, key: str, guess: str) -> None:
    """A letter left out is found again, at its own line."""
    text = edited(old, new)
    mistake = mistake_in(text)
    assert mistake.key == key
    assert " has no key " in mistake.sentence
    assert guess in mistake.mend
    assert text.splitlines()[mistake.line - 1] == new.splitlines()[-1]


@pytest.mark.parametrize("name", ["\\u001b[2J", "5", "0:", "a.b", "", "a" * 9_999])
def test_a_strange_key_can_be_named(name: str) -> None:
    """Without what would upset a terminal, and without all of it."""
    text = edited("percent = 2.5", f'"{name}" = 2.5')
    mistake = mistake_in(text)
    assert " has no key " in mistake.sentence
    assert all(sign.isprintable() or sign == "\n" for sign in str(mistake))
    assert len(str(mistake)) < 400


@pytest.mark.parametrize(
    ("old", "key"),
    [
        ("length_m = 4\n", "outline.length_m"),
        ('shape = "rectangle"\n', "outline.shape"),
        ('kind = "drip"\n', "edge.1.kind"),
        ("x_m = 2\n", "opening.2.x_m"),
        ('kind = "rooflight"\n', "opening.2.kind"),
        ("minutes = 24\n", "cup.1.minutes"),
        ("at = 2\n", "corner.1.at"),
    ],
)
def test_what_must_be_given_is_missed(old: str, key: str) -> None:
    """The mistake points at the table that lacks it."""
    text = edited(old, "")
    mistake = mistake_in(text)
    assert mistake.key == key
    table = key.partition(".")[0]
    assert text.splitlines()[mistake.line - 1] in (f"[{table}]", f"[[{table}]]")


@pytest.mark.parametrize(
    "line", ["mix = 3", 'mix = "strong"', "mix = [1]", "mix = [{percent = 2}]"]
)
def test_a_table_is_a_table(line: str) -> None:
    """The way to write one is shown."""
    without = SHED.partition("[mix]")[0]
    mistake = mistake_in(f"{line}\n{without}")
    assert (mistake.key, mistake.line) == ("mix", 1)
    assert "[mix]" in mistake.mend


@pytest.mark.parametrize("name", ["edge", "corner", "opening", "cup"])
@pytest.mark.parametrize("value", ["3", '"drip"', "[1]", "{}"])
def test_a_list_of_tables_is_one(name: str, value: str) -> None:
    """The way to write one is shown, with two brackets."""
    text = f'{name} = {value}\ntitle = "Shed"\n[outline]\nshape = "rectangle"\n'
    mistakes = [each for each in mistakes_in(text) if each.key == name]
    assert [(each.line, each.mend) for each in mistakes] == [
        (1, f"Begin each with a line [[{name}]].")
    ]


@pytest.mark.parametrize("name", ["edge", "opening", "cup", "corner"])
def test_there_is_an_end_to_a_list(name: str) -> None:
    """Nobody cuts two thousand openings."""
    text = SHED + f"\n[[{name}]]\n" * 2_000
    assert name in [each.key for each in mistakes_in(text)]
    assert len(mistakes_in(text)) == 1


def test_a_table_in_one_line_is_found() -> None:
    """TOML may write one so; another table's key of the same name isn't blamed."""
    text = edited("[mix]\n", "[topcoat]\n").replace("least_percent = 1\nmost_percent = 3\n", "")
    text = text.replace('product = "Own brew"\n', "")
    mistake = mistake_in(f"mix = {{percent = 9}}\n{text}")
    assert (mistake.key, mistake.line) == ("mix.percent", 1)


def test_a_dotted_key_is_found() -> None:
    """TOML may write a table so, too."""
    text = SHED.replace("[fall]\ntowards_edge = 1\nmeasured_mm = 63\n", "")
    mistake = mistake_in(f"fall.ratio = 40\nfall.measured_mm = 0\n{text}")
    assert (mistake.key, mistake.line) == ("fall.measured_mm", 2)


def test_all_mistakes_are_found_at_once() -> None:
    """In the order of the file, so that one reading is enough."""
    text = edited("air_c = 18", "air_c = 70", edited("length_m = 4", "length_m = 400"))
    text = edited("percent = 2.5", "percent = 0", edited("Shed by", "Shed\\tby", text))
    assert [each.key for each in mistakes_in(text)] == [
        *("title", "outline.length_m", "mix.percent", "weather.air_c")
    ]


# The title.


@pytest.mark.parametrize(
    "title", ['"' + "a" * 300 + '"', '"Shed\\u0000"', '"a\\nb"', '"\\u202eb"', '""', '" "', "3"]
)
def test_a_title_is_one_line_of_text(title: str) -> None:
    """Not too long, and without signs that nobody can see."""
    mistake = mistake_in(edited('"Shed by the gate"', title))
    assert (mistake.key, mistake.line) == ("title", 1)
    assert len(str(mistake)) < 300


# The shape.


@pytest.mark.parametrize("shape", ['"circle"', '"l"', "3", "[]", f'"{"c" * 9999}"'])
def test_a_shape_is_one_of_three(shape: str) -> None:
    """They are named."""
    mistake = mistake_in(edited('"rectangle"', shape))
    assert mistake.key == "outline.shape"
    assert mistake.mend == "Write rectangle, L or corners."
    assert len(str(mistake)) < 300


@pytest.mark.parametrize(("cut", "key"), [((5, 1), "cut_length_m"), ((1, 4.5), "cut_width_m")])
def test_the_missing_piece_is_smaller_than_the_whole(cut: tuple[float, float], key: str) -> None:
    """Otherwise nothing would be left of the L."""
    sizes = ("length_m = 5", "width_m = 4", f"cut_length_m = {cut[0]}", f"cut_width_m = {cut[1]}")
    assert mistake_in(with_outline('shape = "L"', *sizes)).key == f"outline.{key}"


@pytest.mark.parametrize(
    ("places", "told"),
    [
        (("[0, 0]", "[4, 2]", "[4, 0]", "[0, 3]"), "crosses or touches itself"),
        (("[0, 0]", "[4, 2]", "[4, 0]", "[0, 2]"), "or its sides cross"),
        (("[0, 0]", "[1, 0]", "[2, 0]", "[3, 0]"), "encloses nothing"),
        (("[0, 0]", "[4, 0]", "[4, 0]", "[0, 2]"), "Corners 2 and 3 lie in the same place."),
        (("[0, 0]", "[0, 2]", "[4, 2]", "[4, 0]"), "The corners go clockwise."),
        (("[0, 0]", "[4, 0]"), "The outline has 2 corners"),
        (("[0, 0]", "[4, 0]", "[4, 2]", "[0, 2]") * 500, "The outline has 2000 corners"),
        (("[0, 0]", "[4, 0]", "[4]", "[0, 2]"), "Corner 3 must be two lengths"),
        (("[0, 0]", "[4, 0]", "4", "[0, 2]"), "Corner 3 must be two lengths"),
        (("[0, 0]", "[4, 0]", '"4,2,1"', "[0, 2]"), "Corner 3 must be two lengths"),
        (("[0, 0]", "[4, nan]", "[4, 2]", "[0, 2]"), "of corner 2 is nan"),
        (("[0, 0]", "[4, 0]", "[4, inf]", "[0, 2]"), "of corner 3 is inf"),
        (("[0, 0]", "[true, 0]", "[4, 2]", "[0, 2]"), "of corner 2 must be a number in m"),
        (("[0, 0]", "[400, 0]", "[4, 2]", "[0, 2]"), "of corner 2 is 400 m"),
        ((), "The corners must be a list of places."),
    ],
)
def test_a_list_of_corners_encloses_a_roof(places: tuple[str, ...], told: str) -> None:
    """Each is told by its number."""
    text = corners(*places)
    mistake = mistakes_in(text)[0]
    assert mistake.key == "outline.corners_m"
    assert told in mistake.sentence
    assert mistake.line == line_of(text, "corners_m")
    assert len(str(mistake)) < 400


def test_there_is_a_side_for_each_pair_of_corners() -> None:
    """Four sides are described where the outline has three."""
    mistake = mistake_in(corners("[0, 0]", "[4, 0]", "[4, 3]"))
    assert mistake.key == "edge"
    assert "The outline has 3 sides, and 4 are described." in mistake.sentence


# What lies on the roof.


@pytest.mark.parametrize(
    ("old", "new", "key", "told"),
    [
        ("x_m = 1", "x_m = 9", "opening.1", "lies outside the roof"),
        ("x_m = 1", "x_m = 0.02", "opening.1", "lies across an edge"),
        ("x_m = 1\ny_m = 1", "x_m = 2.2\ny_m = 1.2", "opening.2", "lies over another opening"),
        (
            "lap_mm = 50",
            "lap_mm = 300\n[sold]\nmat_roll_mm = 250\n[tape]",
            "laminate.lap_mm",
            "lap",
        ),
        ("least_percent = 1", "least_percent = 3.5", "mix.least_percent", "The least dose is more"),
        ("towards_edge = 1", "towards_edge = 5", "fall.towards_edge", "There is no number 5"),
        ("way_off_edge = 1", "way_off_edge = 5", "way_off_edge", "There is no number 5"),
        ("at = 2", "at = 5", "corner.1.at", "There is no number 5"),
        ("length_m = 4\nwidth_m = 2.5", "length_m = 2\nwidth_m = 1", "boards", "larger than"),
    ],
)
def test_what_does_not_fit_the_roof_is_refused(old: str, new: str, key: str, told: str) -> None:
    """At the line of its table or its key."""
    text = edited(old, new)
    if "[sold]" in new:
        text = text.replace("\n[sold]\ntrim_m = 3\n", "")
    mistake = next(each for each in mistakes_in(text) if each.key == key)
    assert told in mistake.sentence
    assert mistake.file == FILE
    table = key.rpartition(".")[0] if key[-1].isdigit() else key.rpartition(".")[2]
    assert table in text.splitlines()[mistake.line - 1]


def test_a_corner_is_overruled_once() -> None:
    """Two rules for one corner contradict each other."""
    text = edited('makes = "mitre"\n', 'makes = "mitre"\n[[corner]]\nat = 2\nmakes = "nothing"\n')
    mistake = mistake_in(text)
    assert (mistake.key, mistake.line) == ("corner.2.at", line_of(text, "at = 2", 2))


def test_a_size_that_nobody_sells_must_be_given() -> None:
    """Where stock.toml lacks a list, the roof has to say it."""
    stock = {name: sizes for name, sizes in STOCK.items() if name != "tape"}
    with pytest.raises(ContentError, match=r"sold\.tape_roll_m: The roll of tape isn't given\."):
        read_roof({"title": "Shed"}, NO_FILE, stock)


def test_a_dose_off_the_data_sheets_band_is_no_mistake() -> None:
    """The plan warns of it."""
    assert read(edited("most_percent = 3", "most_percent = 2")).mix.percent == 2.5


# Files.


@pytest.mark.parametrize(
    ("raw", "line", "told"),
    [
        (b'title = "f\xfcnf"\n', 1, "This isn't UTF-8 text."),
        (b"a = 1\nb = \xff\n", 2, "This isn't UTF-8 text."),
        (SHED.encode("utf-16"), 1, "This isn't UTF-8 text."),
        (b'a = 1\ntitle = "Shed\n', 2, "This is not TOML: "),
        (b'title = "a\x00b"\n', 1, "This is not TOML: "),
        (b"\x1b[2J\n", 1, "This is not TOML: "),
        (b"<html>", 1, "This is not TOML: "),
        (b"a = " + b"9" * 9_000, 1, "beyond all measure"),
        (b"a = " + b"[" * 9_000, 1, "beyond all measure"),
        (b"#" * 300_000, 1, "The file is over 200 kB."),
    ],
)
def test_a_file_that_is_no_toml_is_refused(
    raw: bytes, line: int, told: str, tmp_path: Path
) -> None:
    """At its line, in a sentence that can be printed."""
    (tmp_path / "shed.toml").write_bytes(raw)
    (mistake,) = mistakes_in_file(tmp_path / "shed.toml")
    assert (mistake.file, mistake.line) == (FILE, line)
    assert told in mistake.sentence
    assert all(sign.isprintable() or sign == "\n" for sign in str(mistake))
    assert len(str(mistake)) < 400


def test_an_empty_file_lacks_title_and_shape() -> None:
    """And nothing else is complained of."""
    assert [each.key for each in mistakes_in("")] == ["title", "outline.shape"]
    assert [each.line for each in mistakes_in("")] == [1, 1]


# Anything at all.

_WORDS = st.sampled_from(["rectangle", "L", "corners", "wall", "pipe", "no", "2.4:3", "3 m", "-1"])
_LEAVES = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=9) | _WORDS
_ANYTHING = st.recursive(
    _LEAVES,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=6,
)
Way = tuple[str | int, ...]


def paths_in(value: Any) -> Iterator[Way]:
    """Yield the way to each value of a file's tables, and to the tables themselves."""
    items = value.items() if isinstance(value, dict) else enumerate(value)
    for key, each in items:
        yield (key,)
        if isinstance(each, (dict, list)):
            yield from ((key, *rest) for rest in paths_in(each))


@settings(max_examples=200, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(list(paths_in(tomllib.loads(SHED)))), _ANYTHING)))
def test_whatever_is_given_ends_in_sentences(spoilt: list[tuple[Way, Any]]) -> None:
    """Any value in any place of the shed: a roof that can be looked at, or sentences."""
    data = tomllib.loads(SHED)
    for way, value in spoilt:
        put(data, way, value)
    try:
        roof = read_roof(data, NO_FILE, STOCK)
    except ContentError as error:
        for mistake in error.mistakes:
            assert mistake.sentence.endswith((".", "?"))
            assert len(str(mistake)) < 1_000
    else:
        assert roof_from_text(roof_text(data), STOCK) == roof
        for mistake in plan_mistakes(roof, NO_FILE):
            assert mistake.key


def put(data: Any, way: Way, value: Any) -> None:
    """Put a value in a place, unless the place has been spoilt already."""
    *before, last = way
    try:
        for step in before:
            data = data[step]
        data[last] = value
    except (TypeError, KeyError, IndexError):
        return
