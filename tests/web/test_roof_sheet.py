"""The sheet of a roof that was kept: whose it is, what it says, and what can be taken along."""

import csv
import json
from datetime import timedelta
from typing import Any
from xml.etree import ElementTree as ET

import pytest
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, ODA, RUTH, SAM, Who
from web_page import Element, Page
from web_roofs import GARAGE, TIMED, keep, plan_of, roof

from trainer.engine.plans.figure import Figure
from trainer.engine.plans.lists import lists_of

HOSTILE = '</title><script>alert("1")</script>=1+1 ../..\\"; x'
DOWNLOADS = ("roof.json", "tape.csv", "deck.svg")


def sheet(bench: Bench, data: dict[str, Any] = GARAGE, who: Who = NOOR) -> Page:
    """Return the sheet of a roof that somebody keeps, as they see it."""
    return bench.visit(who).open(f"/roofs/{keep(bench, who, data)}")


def known(page: Page, key: str) -> Element | None:
    """Return the figure of this key, where the page shows it."""
    found = page.main.all(id=f"figure-{key}")
    return found[0] if found else None


def part(page: Page, name: str) -> str:
    """Return the words of one part of the sheet."""
    return page.main.all(id=name)[0].words


def test_a_sheet_has_the_plan_in_the_order_it_is_needed(bench: Bench) -> None:
    """The verdict first, what was assumed last."""
    page = sheet(bench)
    assert (page.status, page.heading) == (200, "Garage behind the yard")
    parts = ("verdict", "drawing", "batches", "cuts", "finished", "buy", "cautions", "assumed")
    order = [each["id"] for each in page.main.walk() if each["id"] in parts]
    assert order == list(parts)


def test_every_figure_opens_its_working(bench: Bench) -> None:
    """Folded under it: each line of the calculation, down to the figure itself."""
    page, plan = sheet(bench, TIMED), plan_of(TIMED, bench)
    shown = 0
    for key, figure in plan.figures().items():
        told = known(page, key)
        if told is None or not isinstance(figure, Figure):
            continue
        shown += 1
        assert told.tag == "details", key
        assert "open" not in told.attributes, key
        answers = [each.words for each in told.all(class_="line-answer")]
        assert len(answers) == len(figure.working.lines), key
        assert answers[-1] == f"= {figure.shown}".replace("\xa0", " "), key
    assert shown > 40


def test_every_figure_of_the_plan_is_on_the_page(bench: Bench) -> None:
    """All but the dose by mass, where the dose was given by mass in the first place."""
    page, plan = sheet(bench, TIMED), plan_of(TIMED, bench)
    left_out = {key for key in plan.figures() if known(page, key) is None}
    assert left_out == {"dose.by_mass"}


def test_a_dose_in_another_convention_is_told_by_mass_too(bench: Bench) -> None:
    """2 % by the millilitre rule is 2.34 % by mass at 1.17 kg/L; both stand there."""
    page = sheet(bench, roof(mix={"convention": "ml per kg"}))
    told = known(page, "dose.by_mass")
    assert told
    assert "2.34 %" in told.words
    assert "by the millilitre rule" in part(page, "batches")


def test_what_was_measured_says_so(bench: Bench) -> None:
    """A joint is read off the drawing, and a count of rolls off the cut list."""
    page = sheet(bench)
    for key, source in (("joints.1", "read off the drawing"), ("buy.mat", "in the cut list")):
        told = known(page, key)
        assert told
        assert told.tag == "p"
        assert source in told.words


def test_the_verdict_comes_with_a_shape_and_its_reasons(bench: Bench) -> None:
    """Damp stops, whatever else is fine; each reason has its word, and its figure."""
    page = sheet(bench, roof(TIMED, weather={**TIMED["weather"], "damp": "yes"}))
    verdict = page.main.all(id="verdict")[0]
    assert verdict.all("h2")[0].words == "Stop"
    assert "mark-wrong" in verdict["class"].split()
    reasons = [each.words for each in verdict.all("ul")[0].all("li")]
    assert reasons[0].startswith("Stop. The deck is damp.")
    assert any(reason.startswith("Fine. The air is at 18 °C.") for reason in reasons)
    own = [each for each in verdict.all("ul")[0].inside if isinstance(each, Element)]
    assert all(each.all("svg", class_="shape") for each in own)


@pytest.mark.parametrize(
    ("changed", "word"),
    [({}, "Go"), ({"wind": "yes"}, "Care"), ({"rain": "not looked at"}, "Not judged yet")],
)
def test_the_verdict_is_the_plans(bench: Bench, changed: dict[str, str], word: str) -> None:
    """Go only with everything judged and fine."""
    page = sheet(bench, roof(TIMED, weather={**TIMED["weather"], **changed}))
    assert page.main.all(id="verdict-word")[0].words == word


def test_without_a_test_cup_there_is_no_clock(bench: Bench) -> None:
    """One sentence instead, and not a single time of day."""
    page = sheet(bench)
    assert "No test cup: no clock. Start a test cup." in part(page, "batches")
    assert not page.main.all(class_="times")
    assert known(page, "gel.short") is None


def test_with_a_cup_and_a_start_each_batch_has_its_times(bench: Bench) -> None:
    """The first goes in at eight; each is laid before it may gel."""
    page, plan = sheet(bench, TIMED), plan_of(TIMED, bench)
    rows = page.main.all(id="stage-laminate")[0].all(class_="times")[0].all("li")
    laminate = next(stage for stage in plan.stages if stage.slug == "laminate")
    assert len(rows) == len(laminate.batches)
    first = page.main.all(id="stage-bandage")[0].all(class_="times")[0].all("li")[0].words
    assert first.startswith("1 in 08:00 laid by 08:")
    assert known(page, "gel.short") is not None


def test_a_cup_grows_older_after_the_roof_is_kept(bench: Bench) -> None:
    """Three days on, the sheet says so: nobody plans with last week's cup as if it were fresh."""
    number = keep(bench, NOOR, TIMED)
    assert "A cup is from" not in bench.visit(NOOR).open(f"/roofs/{number}").words
    bench.clock.now += timedelta(days=3)
    assert "A cup is from 3 days ago" in bench.visit(NOOR).open(f"/roofs/{number}").words


def test_a_cup_without_a_start_counts_from_the_catalyst(bench: Bench) -> None:
    """The band is told, and no time of day."""
    page = sheet(bench, roof(TIMED, crew={}))
    assert "Count from the moment that the catalyst goes in." in part(page, "batches")
    assert known(page, "gel.short") is not None
    assert not page.main.all(class_="times")


def test_the_mark_of_the_syringe_is_the_largest_figure(bench: Bench) -> None:
    """With the dose and its convention beside it, for one batch of each stage."""
    page, plan = sheet(bench), plan_of(GARAGE, bench)
    chief = page.main.all(class_="reading-chief")
    assert len(chief) == len(plan.stages)
    for told, stage in zip(chief, plan.stages, strict=True):
        words = told.all("summary")[0].words
        assert words.endswith(f"2 % by mass {stage.mark_ml:.0f} ml")


def test_strips_are_listed_in_laying_order(bench: Bench) -> None:
    """Numbered as on the drawing."""
    page, plan = sheet(bench), plan_of(GARAGE, bench)
    told = part(page, "cuts")
    assert "Bandage, in laying order" in told
    for strip in plan.bandage.strips:
        assert f"{strip.number} {strip.name}" in told
    assert "a patch of mat 160 by 140 mm" in told


def test_trims_are_cut_from_lengths_as_sold(bench: Bench) -> None:
    """With how good the cutting is, as far as it is known."""
    told = part(sheet(bench), "cuts")
    assert "2 lengths of 3 m: fewest possible. 0.8 m is left over." in told
    assert "2 of 2900 mm 100 mm left" in told


def test_the_cautions_end_with_what_comes_first(bench: Bench) -> None:
    """Computed ones, then what always holds, then who has the last word."""
    told = part(sheet(bench), "cautions")
    assert "Eyes first" in told
    assert told.endswith("The resin's data sheet, local codes and licensed practice come first.")


def test_what_was_assumed_stands_with_how_it_is_known(bench: Bench) -> None:
    """The published dose has its source; what was given isn't listed."""
    told = part(sheet(bench), "assumed")
    assert "Common practice" in told
    assert "catalyst 2 % , Univ. of Southern Mississippi" in told
    assert "catalyst 2 %" not in part(sheet(bench, roof(mix={"percent": 2})), "assumed")


def test_the_drawings_are_told_in_words_too(bench: Bench) -> None:
    """Two pictures, each with a name, and sentences below them."""
    page = sheet(bench)
    drawing = page.main.all(id="drawing")[0]
    assert len(drawing.all("figure")) == 2
    assert all(each["role"] == "img" for each in drawing.all("svg", class_="picture"))
    assert len(drawing.all("details")[0].all("li")) > 3


def test_signed_out_there_is_no_sheet(bench: Bench) -> None:
    """The way to sign in comes instead."""
    number = keep(bench, NOOR)
    for path in (f"/roofs/{number}", *(f"/roofs/{number}/{name}" for name in DOWNLOADS)):
        assert bench.visit().open(path).leads_to == f"/sign-in?then={path}"


@pytest.mark.parametrize("who", [SAM, BERTIL, RUTH, ODA, KIT])
def test_a_trainees_roof_is_not_there_for_others(bench: Bench, who: Who) -> None:
    """Neither in the crew nor out of it, nor what can be taken along of it."""
    number = keep(bench, NOOR)
    for path in ("", *(f"/{name}" for name in DOWNLOADS)):
        assert bench.visit(who).open(f"/roofs/{number}{path}").status == 404


def test_a_supervisors_roof_is_the_crews(bench: Bench) -> None:
    """Noor sees whose it is, and has no way to change it; another crew sees nothing."""
    number = keep(bench, BERTIL)
    page = bench.visit(NOOR).open(f"/roofs/{number}")
    assert page.status == 200
    assert "Described by Bertil for the crew, 9 March 2026." in page.words
    assert f"/roofs/{number}/change" not in page.links()
    assert f"/roofs/{number}/change" in bench.visit(BERTIL).open(f"/roofs/{number}").links()
    assert bench.visit(ODA).open(f"/roofs/{number}").status == 404
    assert bench.visit(NOOR).open(f"/roofs/{number}/tape.csv").status == 200


@pytest.mark.parametrize("number", ["999", "0", "99999999999999999999999", "-1", "garage"])
def test_a_roof_that_is_not_there(bench: Bench, number: str) -> None:
    """404, whatever stands in the address."""
    assert bench.visit(NOOR).open(f"/roofs/{number}/tape.csv").status == 404


@pytest.mark.parametrize("name", ["nails.csv", ".csv", "deck.csv", "tape.svg", "tape.txt"])
def test_a_list_or_drawing_that_is_not_there(bench: Bench, name: str) -> None:
    """404, also for a list's name with a drawing's ending."""
    assert bench.visit(NOOR).open(f"/roofs/{keep(bench, NOOR)}/{name}").status == 404


@pytest.mark.parametrize("name", ["", *(f"/{name}" for name in DOWNLOADS)])
def test_a_sheet_takes_no_forms(bench: Bench, name: str) -> None:
    """It is only read."""
    assert bench.visit(NOOR).post(f"/roofs/{keep(bench, NOOR)}{name}", {}).status == 405


def test_the_sheet_leads_to_all_that_can_be_done_with_it(bench: Bench) -> None:
    """Change, card, practice, and each list that has something in it."""
    number = keep(bench, NOOR, TIMED)
    links = bench.visit(NOOR).open(f"/roofs/{number}").links()
    lists = [name for name, table in lists_of(plan_of(TIMED, bench)).items() if table.rows]
    for name in ("change", "card", "practise", "roof.json", "deck.svg", "mat.svg"):
        assert f"/roofs/{number}/{name}" in links
    assert [link for link in links if link.endswith(".csv")] == [
        f"/roofs/{number}/{name}.csv" for name in lists
    ]


def test_a_list_comes_as_a_spreadsheet_takes_it(bench: Bench) -> None:
    """As a file, in UTF-8, with a header row and the plan's own rows."""
    number = keep(bench, NOOR)
    sent = bench.visit(NOOR).open(f"/roofs/{number}/bandage.csv")
    assert sent.headers["Content-Type"] == "text/csv; charset=utf-8"
    assert sent.headers["Content-Disposition"] == (
        'attachment; filename="garage-behind-the-yard-bandage.csv"'
    )
    rows = list(csv.reader(sent.html.splitlines()))
    table = lists_of(plan_of(GARAGE, bench))["bandage"]
    assert rows[0] == list(table.columns)
    assert rows[1:] == [[str(cell) for cell in row] for row in table.rows]


def test_data_comes_for_other_programs(bench: Bench) -> None:
    """Every figure unrounded, with its working, as a file."""
    sent = bench.visit(NOOR).open(f"/roofs/{keep(bench, NOOR)}/roof.json")
    assert sent.headers["Content-Type"] == "application/json"
    assert sent.headers["Content-Disposition"].endswith('filename="garage-behind-the-yard.json"')
    told = json.loads(sent.html)
    assert told["figures"]["deck.area"]["value"] == pytest.approx(5.2 * 2.9)
    assert told["figures"]["deck.area"]["working"]


@pytest.mark.parametrize("part_", ["deck", "mat"])
def test_a_drawing_comes_by_itself(bench: Bench, part_: str) -> None:
    """As an SVG file that can be parsed."""
    sent = bench.visit(NOOR).open(f"/roofs/{keep(bench, NOOR)}/{part_}.svg")
    assert sent.headers["Content-Type"].startswith("image/svg+xml")
    assert sent.headers["Content-Disposition"].endswith(f'yard-{part_}.svg"')
    assert ET.fromstring(sent.html).tag == "{http://www.w3.org/2000/svg}svg"  # noqa: S314 - ours


def test_a_hostile_title_does_nothing(bench: Bench) -> None:
    """It is text on the page and in the drawing, and letters alone in the name of a file."""
    number = keep(bench, NOOR, roof(title=HOSTILE))
    noor = bench.visit(NOOR)
    page = noor.open(f"/roofs/{number}")
    assert page.heading == " ".join(HOSTILE.split())
    assert page.unclosed == []
    assert not [each for each in page.root.all("script") if not each["src"]]
    for name, kind in (("tape.csv", "csv"), ("deck.svg", "svg"), ("roof.json", "json")):
        sent = noor.open(f"/roofs/{number}/{name}")
        assert "<script" not in sent.html or kind == "json"
        disposition = sent.headers["Content-Disposition"]
        assert disposition.startswith('attachment; filename="title-script-alert-1-script-1-1-x')
        assert disposition.count('"') == 2
    assert json.loads(noor.open(f"/roofs/{number}/roof.json").html)["title"] == HOSTILE


@pytest.mark.parametrize(
    ("title", "name"),
    [("Vikář's dílna", "vikar-s-dilna"), ("屋根", "roof"), ("=1+1", "1-1"), ("a" * 80, "a" * 40)],
)
def test_a_file_is_named_by_plain_letters(bench: Bench, title: str, name: str) -> None:
    """Whatever the title is written in."""
    sent = bench.visit(NOOR).open(f"/roofs/{keep(bench, NOOR, roof(title=title))}/tape.csv")
    assert sent.headers["Content-Disposition"] == f'attachment; filename="{name}-tape.csv"'


def test_a_roof_that_cant_be_planned_any_more_says_why(bench: Bench) -> None:
    """An older text may be refused by today's rules: the page says so and leads to the form."""
    crossing = {"shape": "corners", "corners_m": [[0, 0], [4, 3], [4, 0], [0, 3]]}
    number = keep(bench, NOOR, roof(outline=crossing))
    for path in ("", "/card", "/tape.csv"):
        page = bench.visit(NOOR).open(f"/roofs/{number}{path}")
        assert page.status == 409
        assert page.notes
        assert f"/roofs/{number}/change" in page.links()
