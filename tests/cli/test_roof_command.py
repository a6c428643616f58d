"""`trainer roof`: a roof planned in a terminal, as text, JSON, lists, a drawing, a working.

The shed is 4 by 2.5 m under 450 g/m² at 2.5 to 1 with 10 % on top, so a square metre takes
0.45 × 2.5 × 1.1 = 1.2375 kg of resin. Mat of 1 m lapped by 50 mm takes (2500 − 50) ÷ 950, three
drops; two laps of 4 m lie double, which makes 10.4 m² and 12.87 kg. At 5 L of 1.1 kg/L that is
three batches of 4.29 kg, each with 85.8 g or 73.33 ml of catalyst at 2 % and 1.17 kg/L.
"""

import csv
import json
import re
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from cli_terminal import ROOT, refused, said, trainer

from trainer.cli import roof_files

SHED = """\
title = "Shed by the gate"
[outline]
shape = "rectangle"
length_m = 4
width_m = 2.5
[[edge]]
kind = "drip"
[[edge]]
kind = "drip"
[[edge]]
kind = "drip"
[[edge]]
kind = "drip"
[crew]
bucket_l = 5
"""
TIMED = """\
start = "08:00"
[weather]
air_c = 18
[[cup]]
minutes = 20
at_c = 18
"""
SAMPLES = sorted(file.stem for file in (ROOT / "content" / "roofs").glob("*.toml"))
LISTS = ["tape", "bandage", "drops", "turned", "trims", "batches", "buy", "figures", "assumed"]


@pytest.fixture
def shed(tmp_path: Path) -> str:
    """The file of the shed, as it is typed."""
    return write(tmp_path, SHED)


def write(folder: Path, text: str) -> str:
    """Return the name of a file with this text."""
    file = folder / "shed.toml"
    file.write_text(text, "utf-8")
    return str(file)


def data_of(*words: str) -> dict[str, Any]:
    """Return a plan as JSON."""
    read: dict[str, Any] = json.loads(said("roof", *words, "--json"))
    return read


def rows_in(file: Path) -> list[dict[str, str]]:
    """Return the rows of a list by the names of their columns."""
    with file.open(encoding="utf-8", newline="") as opened:
        return list(csv.DictReader(opened))


# As text.


def test_the_verdict_comes_first_and_the_rest_in_the_order_of_the_work(shed: str) -> None:
    """What to take along, what to cut, what to mix and when, what to mind."""
    text = said("roof", shed)
    titles = [line for line in text.splitlines() if line and not line.startswith(" ")]
    assert titles[:2] == ["Shed by the gate", "10 m², 4 sides"]
    assert titles[2:4] == ["Verdict: not judged yet", "Take along"]
    wanted = ["Tape", "Bandage in laying order", "Drops of mat", "Trims", "Batches", "Clock"]
    wanted += ["Fall", "What it comes to", "Eyes first", "Catalyst never meets acetone"]
    assert [title for title in titles if title in wanted] == wanted
    assert "\u00a0" not in text


def test_the_laminate_is_three_batches_of_the_shed(shed: str) -> None:
    """As worked above: resin, catalyst in both measures, the nearest mark of the syringe."""
    line = next(each for each in said("roof", shed).splitlines() if "Main laminate  " in each)
    assert line.split()[2:] == ["3", "4.29", "3.9", "2", "85.8", "73.33", "73"]
    assert "Main laminate: 12.87 kg in all; the bucket holds 5 L." in said("roof", shed)


def test_three_drops_and_all_four_trims_are_cut(shed: str) -> None:
    """Drops have 50 mm to trim off at either end; 13 m of drip trim come off lengths of 3 m."""
    text = said("roof", shed)
    _, _, drops = text.partition("Drops of mat\n")
    rows = [line.split() for line in drops.splitlines()[1:4]]
    assert rows == [
        ["1", "1", "4.1", "1000", "0"],
        ["1", "2", "4.1", "1000", "0"],
        ["1", "3", "4.1", "600", "400"],
    ]
    assert "drip trim: 5 lengths, fewest possible" in text


def test_without_a_cup_there_is_no_clock(shed: str) -> None:
    """It says why, and no time of day stands anywhere."""
    text = said("roof", shed)
    assert "No clock. No temperature was given" in text
    assert "catalyst in" not in text
    assert "may gel" not in text


def test_a_cup_and_a_start_make_a_clock(tmp_path: Path) -> None:
    """20 min at today's dose and air is 20 min; 20 × 2/3 − 2 are 11.33 to lay it in."""
    text = said("roof", write(tmp_path, SHED + TIMED))
    assert "Lay each batch within 13 min of catalyst in, mixing included." in text
    first = next(line for line in text.splitlines() if "  08:00" in line)
    assert first.split()[-3:] == ["08:00", "08:13", "08:20"]


def test_the_clock_says_which_cup_it_goes_by(tmp_path: Path) -> None:
    """Today's one at 18 °C gels sooner than yesterday's; both stand there."""
    older = "[[cup]]\nminutes = 40\nat_c = 18\ndays_old = 1\n"
    text = said("roof", write(tmp_path, SHED + TIMED + older))
    assert "The clock goes by the cup of today: 20 min at 18 °C, 2 % by mass." in text
    assert "Timed too: the cup of yesterday: 40 min at 18 °C, 2 % by mass." in text


def test_a_data_sheets_gel_time_is_told_as_one(tmp_path: Path) -> None:
    """It makes a clock, with the advice to time a cup."""
    text = said("roof", write(tmp_path, SHED + TIMED + 'of = "data sheet"\n'))
    assert "The clock goes by the data sheet: 20 min at 18 °C, 2 % by mass." in text
    assert "of no cup of yours. Time a cup today." in text


def test_a_dose_that_was_chosen_says_why() -> None:
    """The extension wants a gel time, and its dose follows from the cups."""
    assert re.search(
        r"Dose: [\d.]+ % by mass, chosen for the gel time wanted\.", said("roof", "extension")
    )
    assert "chosen" not in said("roof", "garage")


def test_without_a_clock_no_time_is_spoken_of() -> None:
    """The porch's deck is warmer than its air, and nobody has timed a cup."""
    assert "times are told" not in said("roof", "porch")
    assert "times are told for its 19 °C." in said("roof", "garage")


def test_topcoat_has_its_own_dose_and_no_clock(tmp_path: Path) -> None:
    """1.5 % stands in its row, 2 % in the laminate's; a sentence says why it has no times."""
    own = "[topcoat]\npercent = 1.5\n"
    text = said("roof", write(tmp_path, SHED + TIMED + own))
    doses = {
        line.split("  ")[2]: line.split()[-4]
        for line in text.split("\nBatches\n")[1].splitlines()[1:4]
    }
    assert doses == {"Bandage and patches": "2", "Main laminate": "2", "Topcoat": "1.5"}
    assert "Dose of the topcoat: 1.5 % by mass." in text
    assert "The topcoat goes on when the laminate has set, so it has no clock." in text


def test_one_of_anything_is_told_as_one() -> None:
    """One mitre, one open end, one roll."""
    text = said("roof", "rooflight")
    assert "4 trim joins, 1 mitre, 1 open end" in text
    for name in SAMPLES:
        assert not re.search(
            r"\b1 (lengths|rolls|batches|tins|bottles|mitres|trim joins|open ends|sides|drops)\b",
            said("roof", name),
        ), name


def test_assumptions_have_their_standing(shed: str) -> None:
    """So have the sizes of the stock; what the roof gives isn't assumed."""
    text = " ".join(said("roof", shed).split())
    assert "density of catalyst 1.17 kg/L (from memory)" in text
    assert "Sizes of stock.toml, invented: roll of tape 50 m" in text
    assert "most in the bucket" not in text


def test_a_size_that_the_roof_gives_is_no_longer_the_stocks(tmp_path: Path) -> None:
    """The others still are."""
    text = " ".join(said("roof", write(tmp_path, SHED + "[sold]\ntape_roll_m = 20\n")).split())
    assert "Sizes of stock.toml, invented: roll of bandage 90 m" in text


def test_another_convention_is_told_by_mass_too(tmp_path: Path) -> None:
    """2 % by the millilitre rule is 20 ml a kilogram, and 20 × 1.17 g are 2.34 %."""
    mix = '[mix]\nconvention = "ml per kg"\npercent = 2\n'
    assert "which is 2.34 % by mass." in said("roof", write(tmp_path, SHED + mix))


# The roofs that come along.


def test_alone_it_lists_the_roofs_that_come_along() -> None:
    """By name and title, and where they are."""
    text = said("roof")
    listed = [line.split()[0] for line in text.splitlines() if line.startswith("    ")]
    assert listed == SAMPLES
    assert str(ROOT / "content" / "roofs") in text


@pytest.mark.parametrize("name", SAMPLES)
def test_a_roof_that_comes_along_is_planned_by_its_name(name: str) -> None:
    """In every form of output, and every figure opens its working."""
    assert "Verdict: " in said("roof", name)
    for key in data_of(name)["figures"]:
        assert said("roof", name, "--working", key).startswith(f"{key}: ")


def test_a_file_of_ones_own_goes_before_one_that_comes_along(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whoever has a file of that name means it."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "garage").write_text(SHED, "utf-8")
    assert said("roof", "garage").startswith("Shed by the gate\n")


def test_a_firms_own_roofs_are_listed(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Those of the folder that TRAINER_CONTENT names; there may be none."""
    monkeypatch.setenv("TRAINER_CONTENT", str(content))
    for file in (content / "roofs").iterdir():
        file.unlink()
    assert "none" in said("roof")
    (content / "roofs" / "shed.toml").write_text(SHED, "utf-8")
    assert "    shed           Shed by the gate" in said("roof")
    (content / "roofs" / "shed.toml").write_text(SHED.replace("4", "400"), "utf-8")
    assert "content/roofs/shed.toml:4: outline.length_m: " in refused("roof")


# For programs.


def test_json_has_every_figure_in_full(shed: str) -> None:
    """With its value, unit and words, and with the lines of its working."""
    plan = data_of(shed)
    laminate = plan["figures"]["stages.laminate"]
    assert plan["title"] == "Shed by the gate"
    assert (laminate["words"], laminate["unit"]) == ("resin for the main laminate", "kg")
    assert laminate["value"] == pytest.approx(12.87)
    assert laminate["working"][-1]["value"] == laminate["value"]
    catalyst = plan["figures"]["stages.laminate.catalyst"]
    assert catalyst["value"] == pytest.approx(85.8 / 1.17, rel=1e-12)


def test_json_has_the_lists(shed: str) -> None:
    """Each a list of rows by the names of their columns."""
    lists = data_of(shed)["lists"]
    assert list(lists) == LISTS
    assert len(lists["drops"]) == 3
    assert lists["drops"][0]["length (m)"] == pytest.approx(4.1)


def test_lists_are_written_to_a_folder(shed: str, tmp_path: Path) -> None:
    """One file each, made with its folder, with a row of headings."""
    folder = tmp_path / "out" / "lists"
    assert said("roof", shed, "--csv", str(folder)) == f"{len(LISTS)} lists are in {folder}.\n"
    assert sorted(file.name for file in folder.iterdir()) == sorted(f"{n}.csv" for n in LISTS)
    drops = rows_in(folder / "drops.csv")
    assert [float(row["width (mm)"]) for row in drops] == [1000, 1000, 600]
    figures = {row["key"]: row for row in rows_in(folder / "figures.csv")}
    assert float(figures["deck.area"]["value"]) == pytest.approx(10)


def test_nothing_is_written_over_unasked(shed: str, tmp_path: Path) -> None:
    """One file that is there keeps all from being written; asked for, they are replaced."""
    (tmp_path / "lists").mkdir()
    kept = tmp_path / "lists" / "trims.csv"
    kept.write_text("mine")
    told = refused("roof", shed, "--csv", str(tmp_path / "lists"))
    assert told == f"{kept} is there already. Add --replace to write over what is there."
    assert [file.name for file in kept.parent.iterdir()] == ["trims.csv"]
    assert kept.read_text() == "mine"
    said("roof", shed, "--csv", str(tmp_path / "lists"), "--replace")
    assert len(list(kept.parent.iterdir())) == len(LISTS)
    assert kept.read_text() != "mine"


def test_a_list_is_never_there_by_half(
    shed: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """When the disk is full, what was there stays as it was, and no scrap is left."""
    folder = tmp_path / "lists"
    said("roof", shed, "--csv", str(folder))
    before = {file.name: file.read_bytes() for file in folder.iterdir()}
    write_one, written = roof_files._write, []

    def fill(draft: Path, text: str) -> None:
        write_one(draft, text[: len(text) // 2])
        written.append(draft)
        if len(written) == 4:
            raise OSError(28, "No space left on device", str(draft))

    monkeypatch.setattr(roof_files, "_write", fill)
    told = refused("roof", shed, "--csv", str(folder), "--replace")
    assert "can't be used (No space left on device)" in told
    assert {file.name: file.read_bytes() for file in folder.iterdir()} == before


# The drawing.


@pytest.mark.parametrize("part", [(), ("--part", "deck"), ("--part", "mat")])
def test_the_drawing_is_written_to_a_file(part: tuple[str, ...], shed: str, tmp_path: Path) -> None:
    """It stands alone: its style is in it."""
    picture = tmp_path / "shed.svg"
    told = said("roof", shed, "--svg", str(picture), *part)
    assert told == f"The drawing is in {picture}.\n"
    root = ET.fromstring(picture.read_text("utf-8"))  # noqa: S314 - our own drawing
    assert root.tag == "{http://www.w3.org/2000/svg}svg"
    assert root.find("{http://www.w3.org/2000/svg}style") is not None
    assert "--replace" in refused("roof", shed, "--svg", str(picture))


def test_a_title_is_no_markup(tmp_path: Path) -> None:
    """Whatever somebody calls a roof is text."""
    name = write(tmp_path, SHED.replace("Shed by the gate", "</title><script>alert(1)</script>"))
    said("roof", name, "--svg", str(tmp_path / "shed.svg"))
    root = ET.fromstring((tmp_path / "shed.svg").read_text("utf-8"))  # noqa: S314
    assert not [each for each in root.iter() if each.tag.endswith("script")]
    assert said("roof", name).startswith("</title><script>")


def test_a_drawing_needs_a_folder_to_lie_in(shed: str, tmp_path: Path) -> None:
    """A slip of the keyboard makes no folders."""
    nowhere = tmp_path / "nowhere"
    told = refused("roof", shed, "--svg", str(nowhere / "shed.svg"))
    assert told == f"There is no folder {nowhere}. Make it first."
    assert not nowhere.exists()


# The working.


def test_a_figure_opens_its_working(shed: str) -> None:
    """Line by line, in words and in figures."""
    assert said("roof", shed, "--working", "deck.area").splitlines() == [
        "deck.area: area of the deck 10 m²",
        "    area of the deck",
        "        = length × width",
        "        = 4 m × 2.5 m = 10 m²",
    ]


def test_a_figure_that_was_measured_has_no_working(shed: str) -> None:
    """It says so instead."""
    told = said("roof", shed, "--working", "joints.1").splitlines()
    assert told == ["joints.1: length of joint 1 4 m", "    read off the drawing"]


def test_the_beginning_of_keys_opens_several(shed: str) -> None:
    """All stages, or the drops of each layer."""
    keys = [line for line in said("roof", shed, "--working", "stages").splitlines() if line]
    opened = [line.partition(":")[0] for line in keys if not line.startswith(" ")]
    assert {"stages.bandage", "stages.laminate.catalyst", "stages.topcoat.mark"} <= set(opened)
    assert all(key.startswith("stages.") for key in opened)


def test_an_unknown_figure_gets_a_guess(shed: str) -> None:
    """And what keys begin with."""
    told = refused("roof", shed, "--working", "bandage.lenght")
    assert told.startswith("There is no figure 'bandage.lenght'. Did you mean 'bandage.length'?")
    assert "bandage, mat" in told
    assert len(refused("roof", shed, "--working", "a" * 9_999)) < 400


# What is refused.


def test_all_mistakes_are_told_at_once(tmp_path: Path) -> None:
    """With the file as it was typed, line, key and text."""
    name = write(tmp_path, SHED.replace("= 4", "= 400").replace("bucket_l", "bucket"))
    told = refused("roof", name)
    assert f"{name}:4: outline.length_m: The length along the roof is 400 m" in told
    assert f"{name}:15: crew.bucket: [crew] has no key 'bucket'." in told
    assert "Did you mean 'bucket_l'?" in told


def test_what_only_clipping_finds_has_its_line_too(tmp_path: Path) -> None:
    """An outlet beyond the edge."""
    outlet = '[[opening]]\nkind = "outlet"\nx_m = 4\ny_m = 1\ndiameter_mm = 80\n'
    name = write(tmp_path, SHED + outlet)
    assert f"{name}:16: opening.1: Opening 1 lies across an edge" in refused("roof", name)


def test_a_file_that_is_not_there_is_named() -> None:
    """And where others are listed."""
    assert refused("roof", "nowhere.toml") == (
        "There is no file 'nowhere.toml'. 'trainer roof' lists the roofs that come along."
    )
    assert "There is no file '../roofs/garage'" in refused("roof", "../roofs/garage")


def test_a_folder_is_no_roof(tmp_path: Path) -> None:
    """It can't be read."""
    assert refused("roof", str(tmp_path)) == f"{tmp_path} can't be used (Is a directory)."


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--json", "--working", "tape"), "one of --json, --csv, --svg and --working at a time"),
        (("--part", "mat"), "--part says what --svg draws."),
        (("--svg", "x.svg", "--part", "roof"), "'roof' is not one of"),
    ],
)
def test_options_that_contradict_each_other_are_refused(
    words: tuple[str, ...], told: str, shed: str
) -> None:
    """One thing at a time."""
    assert told in refused("roof", shed, *words)


@pytest.mark.parametrize("words", [("--json",), ("--csv", "x"), ("--working", "tape")])
def test_an_output_wants_a_roof(words: tuple[str, ...]) -> None:
    """Nobody knows which of them is meant."""
    assert "Name a roof's file first." in refused("roof", *words)


def test_a_list_needs_a_folder(shed: str) -> None:
    """A file is none."""
    assert "is a file" in refused("roof", shed, "--csv", shed)
    assert "can't be used" in trainer("roof", shed, "--csv", f"{shed}/lists").stderr


# What the README shows.


def test_the_roof_of_the_readme_can_be_planned(tmp_path: Path) -> None:
    """Copied as it stands there."""
    readme = (ROOT / "README.md").read_text("utf-8")
    (text,) = re.findall(r"^```toml\n(.*?)^```$", readme, re.DOTALL | re.MULTILINE)
    assert "Verdict: " in said("roof", write(tmp_path, text))
