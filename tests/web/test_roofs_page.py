"""Roofs that are kept: the list, describing one, changing it, removing it, and whose they are."""

import json
from datetime import date

import pytest
from web_bench import Bench, full_disk, id_of, lock
from web_cast import BERTIL, KIT, NOOR, ODA, PASSWORD, RUTH, SAM, Who
from web_page import Page
from web_roof_form import GARAGE, field, planned, summary, verdict
from web_roofs import GARAGE as GARAGE_AS_FILE
from web_roofs import TIMED, keep
from web_visitor import Visitor

from trainer.records import texts, writing
from trainer.records.cups import CupFacts, keep_cup
from trainer.records.roofs import KeptRoof, roof_for, roofs_for

YARD = CupFacts("Yard resin", minutes=28, at_c=18, percent=1.8, dose=1.8, convention="by mass")
PAGES = ("/roofs/{}/change", "/roofs/{}/remove")


def kept(visitor: Visitor, **typed: str) -> Page:
    """Return what comes back when the garage, with this typed besides, is to be kept."""
    blank = visitor.open("/roofs/new").form.fields
    return visitor.post("/roofs/new", {**blank, **GARAGE, **typed, "press": "keep"})


def roofs_of(bench: Bench, who: Who) -> list[KeptRoof]:
    """Return what is kept for somebody, with its texts."""
    with bench.records() as session:
        person_id = id_of(session, who)
        listed = roofs_for(session, person_id, None)
        found = [roof_for(session, person_id, None, each.roof_id) for each in listed]
        return [each for each in found if each]


def keep_cups(bench: Bench, who: Who, *cups: CupFacts, on: date = date(2026, 3, 9)) -> None:
    """Have somebody time test cups."""
    with bench.records() as session:
        writing(session)
        for cup in cups:
            keep_cup(session, id_of(session, who), cup, bench.clock.now, on)
        session.commit()


def test_with_nothing_kept_there_are_examples_to_begin_from(bench: Bench) -> None:
    """The empty list says what to do; each example opens in the form."""
    page = bench.visit(NOOR).open("/roofs")
    assert (page.status, page.heading) == (200, "Roofs")
    assert "You have kept no roof yet" in page.words
    for name, example in bench.library.roofs.items():
        assert f"/roofs/new?example={name}" in page.links()
        assert example.description.title in page.words


def test_without_examples_the_list_promises_none(tiny: Bench) -> None:
    """A firm's own folder may have no roofs in it."""
    words = tiny.visit(NOOR).open("/roofs").words
    assert "You have kept no roof yet" in words
    assert "Example" not in words


def test_an_example_opens_filled_in_and_planned(bench: Bench) -> None:
    """It is the form's own; nothing is kept of it."""
    noor = bench.visit(NOOR)
    page = noor.open("/roofs/new?example=garage")
    example = bench.library.roofs["garage"].description
    assert page.status == 200
    assert page.form.fields["title"] == example.title
    assert verdict(page)
    assert roofs_of(bench, NOOR) == []


def test_an_example_that_is_not_there(bench: Bench) -> None:
    """Not found, nor is a path."""
    noor = bench.visit(NOOR)
    for name in ("castle", "../lessons", ""):
        assert noor.open(f"/roofs/new?example={name}").status == 404


def test_a_roof_is_kept_as_it_was_typed(bench: Bench) -> None:
    """On to its sheet; its text holds what was typed, and no default."""
    noor = bench.visit(NOOR)
    page = noor.go_on(kept(noor, **{"outline.length_m": "17'"}))
    assert (page.status, page.heading) == (200, GARAGE["title"])
    (roof,) = roofs_of(bench, NOOR)
    assert json.loads(roof.text) == {
        "title": GARAGE["title"],
        "outline": {"shape": "rectangle", "length_m": "17'", "width_m": "2.9"},
        "edge": [{"kind": kind} for kind in ("drip", "raised", "wall", "raised")],
    }
    assert roof.local_date == date(2026, 3, 9)
    assert f"/roofs/{roof.roof_id}" in noor.open("/roofs").links()


def test_a_roof_with_a_mistake_is_not_kept(bench: Bench) -> None:
    """Not half, and not under another name."""
    noor = bench.visit(NOOR)
    assert kept(noor, **{"mix.percent": "9"}).status == 422
    assert kept(noor, title=" ").status == 422
    assert roofs_of(bench, NOOR) == []


def test_a_form_sent_twice_keeps_one_roof(bench: Bench) -> None:
    """The second press leads to the roof that the first one kept."""
    noor = bench.visit(NOOR)
    first, second = kept(noor), kept(noor)
    assert first.leads_to == second.leads_to
    assert len(roofs_of(bench, NOOR)) == 1
    assert "kept already" in noor.go_on(second).notes


def test_the_same_roof_may_be_two_peoples(bench: Bench) -> None:
    """Each keeps their own."""
    pages = [kept(bench.visit(who)) for who in (NOOR, SAM)]
    assert pages[0].leads_to != pages[1].leads_to


def test_a_change_is_kept_and_what_the_roof_was_stays(bench: Bench) -> None:
    """The form opens as the roof was typed; answers on it go on naming the old text."""
    noor = bench.visit(NOOR)
    kept(noor, **{"outline.length_m": "17'"})
    (was,) = roofs_of(bench, NOOR)
    bench.clock.wait(days=1)
    page = noor.open(f"/roofs/{was.roof_id}/change")
    assert (page.status, page.form.fields["outline.length_m"]) == (200, "17'")
    assert verdict(page)
    sheet = noor.send(page, press="keep", title="Garage, measured again")
    assert sheet.leads_to == f"/roofs/{was.roof_id}"
    (now,) = roofs_of(bench, NOOR)
    assert (now.roof_id, now.title) == (was.roof_id, "Garage, measured again")
    assert now.local_date == date(2026, 3, 10)
    with bench.records() as session:
        assert texts.text_of(session, was.digest) == was.text


def test_planning_a_change_keeps_nothing(bench: Bench) -> None:
    """Until the other button is pressed."""
    noor = bench.visit(NOOR)
    roof_id = keep(bench, NOOR)
    page = noor.open(f"/roofs/{roof_id}/change")
    page = noor.send(page, press="plan", title="Other", **{"outline.length_m": "6"})
    assert (page.status, page.form.action) == (200, f"/roofs/{roof_id}/change")
    assert [each.title for each in roofs_of(bench, NOOR)] == [GARAGE["title"]]


def test_a_change_with_a_mistake_is_not_kept(bench: Bench) -> None:
    """The roof stays as it was, and the form as it was typed."""
    noor = bench.visit(NOOR)
    page = noor.open(f"/roofs/{keep(bench, NOOR)}/change")
    page = noor.send(page, press="keep", **{"mix.percent": "9"})
    assert (page.status, field(page, "mix.percent")["value"]) == (422, "9")
    (roof,) = roofs_of(bench, NOOR)
    assert "mix" not in json.loads(roof.text)


def test_a_roof_that_cannot_be_planned_any_more_opens_to_be_mended(bench: Bench) -> None:
    """Whatever is wrong with it is told by its field."""
    crossing = {"shape": "corners", "corners_m": [[0, 0], [4, 3], [4, 0], [0, 3]]}
    roof_id = keep(bench, NOOR, {**GARAGE_AS_FILE, "outline": crossing})
    page = bench.visit(NOOR).open(f"/roofs/{roof_id}/change")
    assert (page.status, list(summary(page))) == (200, ["outline.corners_m"])
    assert page.form.fields["outline.corners_m"] == "0, 0\n4, 3\n4, 0\n0, 3"


def test_removing_asks_first(bench: Bench) -> None:
    """A page with a button on it; then it is gone from the list."""
    noor = bench.visit(NOOR)
    roof_id = keep(bench, NOOR)
    page = noor.open(f"/roofs/{roof_id}/remove")
    assert (page.status, page.heading) == (200, f"Remove “{GARAGE['title']}”?")
    assert len(roofs_of(bench, NOOR)) == 1
    back = noor.go_on(noor.send(page))
    assert f"“{GARAGE['title']}” was removed." in back.notes
    assert roofs_of(bench, NOOR) == []
    assert noor.send(page).status == 404


def test_a_supervisors_roof_is_in_the_crews_list(bench: Bench) -> None:
    """Noor of his crew sees it, with whose it is; she can't change it, nor can Oda see it."""
    roof_id = keep(bench, BERTIL)
    page = bench.visit(NOOR).open("/roofs")
    assert f"/roofs/{roof_id}" in page.links()
    assert "From Bertil" in page.words
    assert "You have kept no roof yet" in page.words
    for who in (ODA, RUTH, KIT):
        assert f"/roofs/{roof_id}" not in bench.visit(who).open("/roofs").links()
    assert "Your crew sees the roofs that you keep." in bench.visit(BERTIL).open("/roofs").words


@pytest.mark.parametrize("path", PAGES)
@pytest.mark.parametrize("who", [NOOR, SAM, ODA, RUTH, KIT])
def test_nobody_changes_or_removes_anothers_roof(bench: Bench, who: Who, path: str) -> None:
    """To others of the crew that may see it, to another crew and to the office it isn't there."""
    roof_id = keep(bench, BERTIL)
    visitor = bench.visit(who)
    token = visitor.open("/roofs/new").form.fields["csrf_token"]
    page = path.format(roof_id)
    assert visitor.open(page).status == 404
    sent = {**GARAGE, "title": "Mine now", "csrf_token": token, "press": "keep"}
    assert visitor.post(page, sent).status == 404
    assert [each.title for each in roofs_of(bench, BERTIL)] == [GARAGE["title"]]


@pytest.mark.parametrize("path", PAGES)
def test_a_number_that_no_roof_has(bench: Bench, path: str) -> None:
    """Not found."""
    assert bench.visit(NOOR).open(path.format(99)).status == 404


def test_what_was_typed_for_a_roof_that_is_gone_can_be_kept_as_a_new_one(bench: Bench) -> None:
    """It was removed in another window while the form stood open."""
    noor = bench.visit(NOOR)
    roof_id = keep(bench, NOOR)
    page = noor.open(f"/roofs/{roof_id}/change")
    noor.send(noor.open(f"/roofs/{roof_id}/remove"))
    page = noor.send(page, press="keep", title="Typed meanwhile")
    assert (page.status, page.form.action) == (404, "/roofs/new")
    assert "keep it as a new one" in page.notes
    noor.go_on(noor.send(page, press="keep"))
    assert [each.title for each in roofs_of(bench, NOOR)] == ["Typed meanwhile"]


def test_wrong_methods_are_refused(bench: Bench) -> None:
    """A list can't be sent to, and nothing is removed by DELETE."""
    noor = bench.visit(NOOR)
    assert noor.post("/roofs", {}).status == 405
    assert Page(noor.client.delete("/roofs/1/remove")).status == 405


def test_a_form_without_its_key_comes_back_as_it_was_typed(bench: Bench) -> None:
    """400, with a new key, and nothing kept."""
    noor = bench.visit(NOOR)
    page = kept(noor, csrf_token="")
    assert (page.status, page.form.fields["title"]) == (400, GARAGE["title"])
    assert "has a new one now" in page.notes
    assert noor.send(page, press="keep").status == 303
    page = noor.open(f"/roofs/{roofs_of(bench, NOOR)[0].roof_id}/change")
    again = noor.send(page, press="keep", csrf_token="", title="Other")
    assert (again.status, again.form.action) == (400, page.form.action)
    assert again.form.fields["title"] == "Other"


def test_signed_out_meanwhile_what_was_typed_is_still_there(bench: Bench) -> None:
    """Signing in leads back to the form, filled in as it was."""
    blank = bench.visit(NOOR).open("/roofs/new").form.fields
    nobody = bench.visit()
    asked = nobody.post("/roofs/new", {**blank, **GARAGE, "press": "keep"})
    assert (asked.status, asked.heading) == (401, "Sign in")
    back = nobody.go_on(nobody.send(asked, name="noor", password=PASSWORD))
    assert "as you typed it" in back.notes
    assert {name: back.form.fields[name] for name in GARAGE} == GARAGE


def test_busy_records_lose_nothing_typed(bench: Bench) -> None:
    """503 with the form as it was; the next press keeps it."""
    noor = bench.visit(NOOR)
    blank = noor.open("/roofs/new").form.fields
    other = lock(bench)
    page = noor.post("/roofs/new", {**blank, **GARAGE, "press": "keep"})
    other.close()
    assert (page.status, page.form.fields["title"]) == (503, GARAGE["title"])
    assert page.notes
    assert noor.send(page, press="keep").status == 303


def test_a_full_disk_loses_nothing_typed(bench: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """503 with the form as it was, and no roof."""
    noor = bench.visit(NOOR)
    blank = noor.open("/roofs/new").form.fields
    with monkeypatch.context() as broken:
        full_disk(broken)
        page = noor.post("/roofs/new", {**blank, **GARAGE, "press": "keep"})
    assert (page.status, page.form.fields["title"]) == (503, GARAGE["title"])
    assert roofs_of(bench, NOOR) == []


def test_a_script_is_sent_the_plan_and_no_page_round_it(bench: Bench) -> None:
    """While somebody types, nothing is called wrong by its field; what is missing is listed."""
    noor = bench.visit(NOOR)
    blank = noor.open("/roofs/new").form.fields
    answer = noor.client.post("/roofs/new", data={**blank, "press": "sheet"})
    text = answer.get_data(as_text=True)
    assert answer.status_code == 200
    assert "<html" not in text
    assert 'class="error"' not in text
    assert "#edge.4.kind" in text
    answer = noor.client.post("/roofs/new", data={**blank, **GARAGE, "press": "sheet"})
    assert 'id="verdict"' in answer.get_data(as_text=True)
    assert roofs_of(bench, NOOR) == []


def test_own_test_cups_are_offered_and_filled_in(bench: Bench) -> None:
    """One tick: minutes, dose, temperature, resin and age stand in a row of their own."""
    keep_cups(bench, NOOR, YARD, on=date(2026, 3, 7))
    noor = bench.visit(NOOR)
    page = noor.open("/roofs/new")
    (offered,) = [each for each in page.main.all("input") if each["name"].startswith("own_cup.")]
    assert "Yard resin: 28 min at 18 °C, 1.8 % by mass" in page.words.replace("\xa0", " ")
    page = planned(noor, **{offered["name"]: "yes", "weather.air_c": "18"})
    assert page.status == 200
    cup = {name: page.form.fields[f"cup.1.{name}"] for name in ("minutes", "at_c", "percent")}
    assert cup == {"minutes": "28", "at_c": "18", "percent": "1.8"}
    assert (page.form.fields["cup.1.product"], page.form.fields["cup.1.days_old"]) == (
        "Yard resin",
        "2",
    )
    assert page.form.fields["mix.product"] == "Yard resin"
    assert not [each for each in page.main.all("input") if each["name"].startswith("own_cup.")]


def test_nobody_elses_test_cups_are_offered_or_taken(bench: Bench) -> None:
    """Noor's cup is none of Sam's, even if its number is sent."""
    keep_cups(bench, NOOR, YARD)
    sam = bench.visit(SAM)
    assert "Yard resin" not in sam.open("/roofs/new").words
    page = planned(sam, **{"own_cup.1": "yes"})
    assert "Yard resin" not in str(page.form.fields.values())


def test_a_cup_that_is_in_the_form_is_not_offered_again(bench: Bench) -> None:
    """Another one still is."""
    older = CupFacts("Yard resin", 40, 12, 1.8, 1.8, "by mass")
    keep_cups(bench, NOOR, YARD, older)
    page = planned(bench.visit(NOOR), **{"own_cup.1": "yes"})
    offered = [each["name"] for each in page.main.all("input") if "own_cup" in each["name"]]
    assert offered == ["own_cup.2"]


def test_a_roof_with_everything_given_comes_back_whole(bench: Bench) -> None:
    """Kept, opened and kept again, it is the same text."""
    noor = bench.visit(NOOR)
    roof_id = keep(bench, NOOR, TIMED)
    noor.send(noor.open(f"/roofs/{roof_id}/change"), press="keep")
    (once,) = roofs_of(bench, NOOR)
    noor.send(noor.open(f"/roofs/{roof_id}/change"), press="keep")
    (twice,) = roofs_of(bench, NOOR)
    assert once.digest == twice.digest
