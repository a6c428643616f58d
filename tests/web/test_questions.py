"""A question on fresh numbers, its answer, and the page of its mark."""

from datetime import date

import pytest
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, Who
from web_content import CHAIN, DRUM, FIRST, right_grams


def test_a_right_answer_is_right_and_shows_the_working(tiny: Bench) -> None:
    """It is marked, each line of the working is there, and the answer counts."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    marked = noor.answer(page, right_grams(page))
    assert (marked.status, marked.heading, marked.mark) == (200, "The first dose", "Right")
    assert [line.words for line in marked.main.all(class_="line-words")] == [
        "mass of catalyst",
        "volume of catalyst",
    ]
    assert f"= {right_grams(page)} g" in marked.words
    row = tiny.question_row(NOOR, "first-dose")
    assert row is not None
    assert (row.tried, row.right, row.finished, row.ever_right) == (1, 1, 1, True)


def test_the_answer_to_a_post_is_a_redirect(tiny: Bench) -> None:
    """303, so that loading the mark again doesn't send the answer again."""
    noor = tiny.visit(NOOR)
    page = noor.send(noor.open(FIRST), answer_0="1")
    assert (page.status, page.leads_to) == (303, "/questions/first-dose/0/1")


def test_a_wrong_answer_without_a_name_shows_the_working_at_once(tiny: Bench) -> None:
    """No second try: what went wrong isn't known, so the whole working is shown."""
    marked = tiny.visit(NOOR).answer("first-dose", "1.5 g")
    assert marked.mark == "Wrong"
    assert marked.main.all(class_="working")
    assert not marked.has_form
    assert "your figure 1.5 g" in marked.words
    row = tiny.question_row(NOOR, "first-dose")
    assert row is not None
    assert (row.tried, row.right, row.finished, row.ever_right) == (1, 0, 1, False)


def test_another_unit_of_the_same_kind_is_converted(tiny: Bench) -> None:
    """0.04 kg is 40 g, whether the unit is typed or picked beside the field."""
    noor = tiny.reader(NOOR)
    assert noor.answer("dose-chain", "0.04 kg", "0.032 L").mark == "Right"
    page = noor.alone(CHAIN)
    picked = noor.send(page, answer_0="0.04", answer_0_unit="kg", answer_1="32")
    assert noor.go_on(picked).mark == "Right"


def test_a_mark_is_kept_with_all_that_it_rests_on(tiny: Bench) -> None:
    """Numbers, lines, what was typed and how it was read can be read back years later."""
    tiny.reader(NOOR).answer("dose-chain", " 0.04 kg", "24 ml")
    kept = tiny.stored(NOOR, "dose-chain")
    assert kept.givens == {"resin_kg": 2, "percent": 2, "catalyst_kg_per_l": 1.25}
    assert [(line["key"], line["unit"], line["value"]) for line in kept.lines] == [
        ("mass", "g", 40),
        ("volume", "ml", 32),
    ]
    assert (kept.lesson, kept.competency, kept.local_date) == ("mixing", "mixing", date(2026, 3, 9))
    assert (kept.unaided, kept.working_shown, kept.sent_later) == (True, False, False)
    mass, volume = kept.answers
    assert (mass.typed, mass.read_value, mass.verdict) == (" 0.04 kg", 40, "right")
    assert (volume.right_value, volume.read_value, volume.verdict) == (32, 24, "wrong")
    assert (mass.tolerance, mass.skill) == ("1 %", "dose")


@pytest.mark.parametrize("who", [BERTIL, KIT])
def test_whoever_is_signed_in_may_answer(tiny: Bench, who: Who) -> None:
    """A supervisor and the office learn by the same questions."""
    assert tiny.visit(who).answer("first-dose", "1").mark == "Wrong"


def test_the_first_lesson_opens_the_other_lessons_questions(tiny: Bench) -> None:
    """Before it is read, a question of another lesson leads to it and says why."""
    noor = tiny.visit(NOOR)
    shut = noor.open(DRUM)
    assert shut.leads_to == "/lessons/before-the-lid"
    assert "Read this one before any other" in noor.go_on(shut).notes


def test_a_question_keeps_to_its_lesson(tiny: Bench) -> None:
    """It leads back to its lesson, and its mark on to the next question there."""
    noor = tiny.reader(NOOR)
    assert "/lessons/mixing#questions" in noor.open(CHAIN).links()
    assert DRUM in noor.answer("dose-chain", "40", "32").links()


def test_the_last_question_leads_back_to_today(tiny: Bench) -> None:
    """After the last of a lesson comes Today, and the same again on fresh numbers."""
    links = tiny.reader(NOOR).answer("two-slips", "40").links()
    assert "/" in links
    assert "/questions/two-slips" in links


def test_the_units_of_its_kind_stand_beside_a_field(tiny: Bench) -> None:
    """Grams and kilograms are buttons, the asked one pressed; the keypad is for figures."""
    page = tiny.visit(NOOR).open(FIRST)
    units = page.main.all("input", name="answer_0_unit")
    assert [(each["type"], each["value"]) for each in units] == [("radio", "g"), ("radio", "kg")]
    assert page.form.fields["answer_0_unit"] == "g"
    field = page.main.all("input", id="answer_0")[0]
    assert (field["type"], field["inputmode"]) == ("text", "decimal")


def test_millimetres_are_typed_on_a_keypad(bench: Bench) -> None:
    """Gloves want large figures; letters come only where feet and inches are asked for."""
    page = bench.reader(NOOR).alone("taping-bare-each-side")
    assert page.main.all("input", id="answer_0")[0]["inputmode"] == "decimal"


def test_the_page_works_without_its_script(tiny: Bench) -> None:
    """The script only notes when the button was pressed; without it nothing is missing."""
    page = tiny.visit(NOOR).open(FIRST)
    assert page.form.fields["pressed"] == ""
    assert [each["src"] for each in page.root.all("script")] == ["/static/answer.js"]
