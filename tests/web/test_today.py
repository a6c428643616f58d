"""Today: one thing plainly first, then the lessons, then the roof."""

import pytest
from web_begun import begin, begun, due, gelled
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, SAM, Who
from web_content import right_grams
from web_page import Element, Page
from web_uses import note_use
from web_visitor import Visitor


def first(page: Page) -> Element:
    """The card on top."""
    return page.main.all(class_="first")[0]


def lead(page: Page) -> str:
    """Where the card on top leads."""
    return first(page).all("a")[0]["href"]


def finish(noor: Visitor, *questions: str) -> None:
    """Answer these questions of the tiny lessons right."""
    several = {"dose-chain": ("40", "32"), "bare-chain": ("25", "20")}
    for question in questions:
        page = noor.alone(question)
        typed = several.get(question) or (right_grams(page),)
        assert noor.answer(page, *typed).mark == "Right"


def test_the_first_thing_is_the_first_lesson(tiny: Bench) -> None:
    """Whoever has done nothing is sent to read it."""
    page = tiny.visit(NOOR).open("/")
    assert (page.status, page.heading) == (200, "Today")
    assert first(page).all("h2")[0].words == "Before the lid"
    assert "The tins are in the van." in first(page).words
    assert lead(page) == "/lessons/before-the-lid"


def test_until_it_is_read_the_others_are_shut(tiny: Bench) -> None:
    """They stand there, without a link."""
    page = tiny.visit(NOOR).open("/")
    rows = page.main.all(class_="lessons")[0].all(class_="row")
    assert [(row.tag, row["href"]) for row in rows] == [
        ("a", "/lessons/before-the-lid"),
        ("div", ""),
    ]
    assert "Mixing a batch" in rows[1].words


def test_after_it_is_read_its_questions_come_first(tiny: Bench) -> None:
    """The card leads to the questions of the lesson, and all lessons are open."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    page = noor.open("/")
    assert lead(page) == "/lessons/before-the-lid#questions"
    assert "Still to do: 1 of its 1 question." in first(page).words
    assert "/lessons/mixing" in page.links()


def test_a_lesson_whose_questions_were_right_makes_way_for_the_next(tiny: Bench) -> None:
    """The next lesson is to be read."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    finish(noor, "first-dose")
    assert lead(noor.open("/")) == "/lessons/mixing"


def test_it_counts_what_is_left(tiny: Bench) -> None:
    """Of four questions one was right: three are to do."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    finish(noor, "first-dose")
    noor.read("mixing")
    finish(noor, "dose-chain")
    assert "Still to do: 3 of its 4 questions." in first(noor.open("/")).words


def test_what_is_still_at_its_first_meeting_comes_after_the_lessons(tiny: Bench) -> None:
    """Every question was right once, and no skill three times in a row: practice is left."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    finish(noor, "first-dose")
    noor.read("mixing")
    finish(noor, "dose-chain", "bare-chain", "two-slips")
    finish(noor, "drum-dose")
    page = noor.open("/")
    assert lead(page) == "/practice"
    assert "on what you have begun" in first(page).words


def test_nothing_is_due_on_the_day_of_gelling(bench: Bench) -> None:
    """The lesson goes on."""
    page = gelled(bench).open("/")
    assert lead(page).startswith("/lessons/")
    assert "Due today" not in page.words


def test_what_is_due_comes_before_the_next_lesson(bench: Bench) -> None:
    """It fades; the lesson doesn't. Four skills want two tries each."""
    page = due(bench, skills=4).open("/")
    assert lead(page) == "/practice"
    assert "4 skills are due today: 8 questions." in first(page).words
    told = [each.words for each in page.main.all("li", class_="skill")]
    assert len(told) == 4
    assert all(words.startswith("Gelled ") for words in told)


def test_a_sitting_that_was_begun_is_gone_on_with(bench: Bench) -> None:
    """It says how much is left."""
    noor = begun(bench)
    told = first(noor.open("/")).words
    assert "You are in the middle of it:" in told
    assert "left" in told


def test_when_all_is_done_it_says_so(tiny: Bench) -> None:
    """Nothing is put first; the day of the next practice is told."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    finish(noor, "first-dose")
    noor.read("mixing")
    finish(noor, "dose-chain", "bare-chain", "two-slips")
    finish(noor, "drum-dose")
    end = begin(noor).path.rpartition("/")[0] + "/end"
    form = noor.open(end).form_to(end)
    noor.post(form.action, form.fields)
    page = noor.open("/")
    assert not page.main.all(class_="first")
    assert "All is done for today." in page.words


def test_what_waits_is_told_on_both_sides(tiny: Bench) -> None:
    """Noor's use waits for Bertil: her page says so, and it is his first thing."""
    noor, bertil = tiny.reader(NOOR), tiny.visit(BERTIL)
    note_use(noor)
    assert "1 use on a job you noted waits for your supervisor." in noor.open("/").words
    page = bertil.open("/")
    assert lead(page) == "/crew/uses"
    assert "1 use on a job waits for you to confirm." in page.words


def test_a_part_of_the_roof_comes_in(tiny: Bench) -> None:
    """Grey when each question of its lesson was right once, and not before."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    assert noor.open("/").main.all(id="roof-guard")[0]["class"] == "part part-none"
    finish(noor, "first-dose")
    page = noor.open("/")
    assert page.main.all(id="roof-guard")[0]["class"] == "part part-grey"
    assert page.main.all(id="roof-bucket")[0]["class"] == "part part-none"


def test_one_persons_day_is_not_anothers(tiny: Bench) -> None:
    """What Noor has read changes nothing for Sam."""
    tiny.visit(NOOR).read("before-the-lid")
    assert lead(tiny.visit(SAM).open("/")) == "/lessons/before-the-lid"


@pytest.mark.parametrize("who", [BERTIL, KIT])
def test_whoever_answers_for_others_looks_at_the_crew_first(tiny: Bench, who: Who) -> None:
    """A supervisor and the office are sent to the crew table; the lessons stand below."""
    page = tiny.visit(who).open("/")
    assert lead(page) == "/crew"
    assert "/lessons/before-the-lid" in page.links()


def test_the_real_lessons_stand_in_order(bench: Bench) -> None:
    """Every lesson has its row with its minutes, the safest first."""
    page = bench.visit(NOOR).open("/")
    rows = page.main.all(class_="lessons")[0].all("li")
    assert [row.all(class_="row-title")[0].words for row in rows] == [
        lesson.title for lesson in bench.library.lessons
    ]
    assert rows[0].all(class_="row-title")[0].words == "Fire, eyes, fumes, dust and waste"
    assert all("minutes" in row.words for row in rows)


def test_signed_out_there_is_no_today(tiny: Bench) -> None:
    """The way to sign in comes instead."""
    assert tiny.visit().open("/").leads_to == "/sign-in?then=/"


def test_today_takes_no_forms(tiny: Bench) -> None:
    """It is only read."""
    assert tiny.visit(NOOR).post("/", {}).status == 405
