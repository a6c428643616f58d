"""How far somebody has come, as they see it themselves."""

from web_bench import Bench
from web_cast import BERTIL, NOOR, SAM
from web_kinds import SYRINGE, answer_right
from web_page import Element, Page


def sheet(page: Page, title: str) -> Element:
    """The part of the page about one lesson."""
    return next(each for each in page.main.all(class_="sheet") if each.all("h3")[0].words == title)


def facts(element: Element) -> dict[str, str]:
    """Pairs of words and what they are."""
    names, values = element.all("dt"), element.all("dd")
    return {name.words: value.words for name, value in zip(names, values, strict=True)}


def cells(element: Element) -> list[list[str]]:
    """The rows of a table, without its head."""
    rows = element.all("tbody")[0].all("tr")
    return [[cell.words for cell in row.inside if isinstance(cell, Element)] for row in rows]


def test_at_first_nothing_is_done(tiny: Bench) -> None:
    """Every lesson is there, and says that it was not begun."""
    page = tiny.visit(NOOR).open("/progress")
    assert (page.status, page.heading) == (200, "Your progress")
    for title in ("Before the lid", "Mixing a batch"):
        assert "Nothing done here yet." in sheet(page, title).words


def test_a_lesson_tells_its_tries(tiny: Bench) -> None:
    """Three first tries, two of them right, at two of four questions; yesterday was the last."""
    noor = tiny.reader(NOOR)
    noor.read("mixing")
    noor.answer("dose-chain", "40", "32")
    noor.answer("dose-chain", "40", "32")
    noor.answer("two-slips", "1")
    tiny.clock.wait(days=1)
    assert facts(sheet(noor.open("/progress"), "Mixing a batch")) == {
        "Read": "yesterday",
        "First tries": "3 tries, 2 right",
        "Questions": "1 of 4 right at least once",
        "Last seen": "yesterday",
    }


def test_a_question_tells_its_tries(tiny: Bench) -> None:
    """A slip that was put right leaves the first try wrong, and the question right once."""
    noor = tiny.reader(NOOR)
    noor.answer(noor.answer("dose-chain", "4", "32"), "40")
    noor.answer("two-slips", "1")
    assert cells(sheet(noor.open("/progress"), "Mixing a batch")) == [
        ["From the bucket to the syringe", "right", "1", "0", "today"],
        ["A dose for a drum", "not tried", "0", "0", "not yet"],
        ["Tape that wandered", "not tried", "0", "0", "not yet"],
        ["Two ways to go wrong", "tried", "1", "0", "today"],
    ]


def test_questions_can_be_opened_from_here(tiny: Bench) -> None:
    """Each leads to its question."""
    noor = tiny.reader(NOOR)
    noor.read("mixing")
    assert "/questions/dose-chain" in noor.open("/progress").links()


def test_the_roof_is_drawn(tiny: Bench) -> None:
    """With a word beside each part, so that colour isn't needed."""
    page = tiny.visit(NOOR).open("/progress")
    assert page.main.all("svg", class_="picture")
    words = page.main.all(class_="roof-words")[0].words
    assert "Working safely" in words
    assert "not yet" in words


def test_it_is_ones_own(tiny: Bench) -> None:
    """Nothing that Noor did stands on Sam's page."""
    tiny.reader(NOOR).answer("dose-chain", "40", "32")
    page = tiny.visit(SAM).open("/progress")
    assert "Nothing done here yet." in sheet(page, "Mixing a batch").words
    assert "Noor" not in page.html


def test_no_share_and_no_points_are_shown(tiny: Bench) -> None:
    """Counts of questions, and never a percentage."""
    noor = tiny.reader(NOOR)
    noor.answer("dose-chain", "40", "32")
    assert "%" not in noor.open("/progress").words


def test_signed_out_there_is_no_progress(tiny: Bench) -> None:
    """The way to sign in comes instead."""
    assert tiny.visit().open("/progress").leads_to == "/sign-in?then=/progress"


def test_progress_takes_no_forms(tiny: Bench) -> None:
    """It is only read."""
    assert tiny.visit(NOOR).post("/progress", {}).status == 405


def skills(page: Page) -> dict[str, str]:
    """What the page says of each skill, by title."""
    rows = page.main.all("li", class_="skill")
    return {each.all("b")[0].words: each.words for each in rows}


def test_each_skill_tells_where_it_stands_and_why(tiny: Bench) -> None:
    """One was right once without help; nothing was asked of another yet."""
    noor = tiny.reader(NOOR)
    noor.answer("dose-chain", "40", "32")
    told = skills(noor.open("/progress"))
    assert told["Working out a dose"].startswith("Not started")
    assert told["Working out the catalyst"] == (
        "Started Working out the catalyst "
        "It was right without help, but not yet often enough in a row."
    )


def test_a_skill_that_has_gelled_tells_its_date(kinds: Bench) -> None:
    """Right three times in a row, it is asked again tomorrow; the day after it is overdue."""
    noor = kinds.reader(NOOR)
    for _ in range(3):
        answer_right(kinds, noor, noor.alone(SYRINGE))
    told = skills(noor.open("/progress"))["Working out the catalyst"]
    assert told.startswith("Gelled")
    assert told.endswith("Due tomorrow")
    kinds.clock.wait(days=2)
    told = skills(noor.open("/progress"))["Working out the catalyst"]
    assert told.endswith("Due since yesterday")


def test_a_supervisor_sees_the_skills_of_their_trainee(tiny: Bench) -> None:
    """The same words as she does herself."""
    noor = tiny.reader(NOOR)
    noor.answer("dose-chain", "40", "32")
    page = tiny.visit(BERTIL).open("/crew/ref-of-noor")
    assert skills(page) == skills(noor.open("/progress"))
