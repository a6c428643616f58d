"""A lesson to read, and the note that it was read."""

from datetime import date

import pytest
from web_bench import Bench
from web_cast import NOOR, SAM

from trainer.lessons.links import ANCHORS, PAGES
from trainer.web.lessons import FIRST_FIRST

FIRST, MIXING = "/lessons/before-the-lid", "/lessons/mixing"


def test_a_lesson_has_its_story_its_cautions_and_its_questions(tiny: Bench) -> None:
    """Scenario, prose, what can hurt, and each question by its title."""
    page = tiny.visit(NOOR).open(FIRST)
    assert (page.status, page.heading) == (200, "Before the lid")
    for words in ("The tins are in the van.", "Goggles on.", "Eyes first", "The first dose"):
        assert words in page.words
    assert "/questions/first-dose" in page.links()


def test_the_worked_job_shows_every_line(tiny: Bench) -> None:
    """3 kg at 2 % is 60 g of catalyst, and the sum stands beside it."""
    page = tiny.reader(NOOR).open(MIXING)
    worked = page.main.all(class_="worked")[0]
    assert "Worked job: One bucket" in worked.words
    assert worked.all(class_="line-answer")[0].words == "= 60 g"
    assert worked.all(class_="line-sum")[0].words


def test_the_first_lesson_opens_the_others(tiny: Bench) -> None:
    """Before it is read, another lesson leads to it and says why; after it, all are open."""
    noor = tiny.visit(NOOR)
    shut = noor.open(MIXING)
    assert (shut.status, shut.leads_to) == (303, FIRST)
    assert noor.go_on(shut).notes == FIRST_FIRST
    noor.read("before-the-lid")
    assert noor.open(MIXING).status == 200


def test_the_sentence_is_said_once(tiny: Bench) -> None:
    """Loading the page again doesn't repeat why one was sent there."""
    noor = tiny.visit(NOOR)
    noor.go_on(noor.open(MIXING))
    assert noor.open(FIRST).notes == ""


def test_reading_is_noted_by_a_button(tiny: Bench) -> None:
    """Looking is not reading; the button is, and leads to the first question."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    assert "not read yet" in page.words
    assert tiny.lesson_row(NOOR, "before-the-lid") is None
    read = noor.send(page)
    assert (read.status, read.leads_to) == (303, "/questions/first-dose")
    row = tiny.lesson_row(NOOR, "before-the-lid")
    assert row is not None
    assert (row.read_at, row.read_date) == (tiny.clock.now, date(2026, 3, 9))


def test_what_was_read_says_when(tiny: Bench) -> None:
    """The button is gone, and the day stands there."""
    noor = tiny.visit(NOOR)
    noor.read("before-the-lid")
    page = noor.open(FIRST)
    assert "read today" in page.words
    assert not page.has_form
    tiny.clock.wait(days=1)
    assert "read yesterday" in noor.open(FIRST).words


def test_the_local_date_counts(tiny: Bench) -> None:
    """Half past eleven in the evening UTC is the next day here."""
    tiny.clock.wait(hours=15, minutes=45)
    tiny.visit(NOOR).read("before-the-lid")
    row = tiny.lesson_row(NOOR, "before-the-lid")
    assert row is not None
    assert row.read_date == date(2026, 3, 10)


def test_the_first_reading_stands(tiny: Bench) -> None:
    """Sent again days later, the button changes nothing."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    noor.send(page)
    tiny.clock.wait(days=3)
    assert noor.send(page).status == 303
    row = tiny.lesson_row(NOOR, "before-the-lid")
    assert row is not None
    assert row.read_date == date(2026, 3, 9)


def test_a_shut_lesson_cannot_be_said_to_be_read(tiny: Bench) -> None:
    """The button of another lesson, pressed first, leads to the first lesson and notes nothing."""
    noor = tiny.visit(NOOR)
    token = noor.open(FIRST).form.fields["csrf_token"]
    page = noor.post(f"{MIXING}/read", {"csrf_token": token})
    assert (page.status, page.leads_to) == (303, FIRST)
    assert tiny.lesson_row(NOOR, "mixing") is None


def test_one_persons_reading_opens_nothing_for_another(tiny: Bench) -> None:
    """Sam has to read it himself."""
    tiny.visit(NOOR).read("before-the-lid")
    assert tiny.visit(SAM).open(MIXING).leads_to == FIRST


def test_questions_show_how_far_one_has_come(tiny: Bench) -> None:
    """Not tried, then tried."""
    noor = tiny.visit(NOOR)
    assert states(noor.open(FIRST).main.all(class_="questions")) == ["not tried"]
    noor.answer("first-dose", "1")
    assert states(noor.open(FIRST).main.all(class_="questions")) == ["tried"]


def states(lists: list) -> list[str]:  # type: ignore[type-arg]
    """The words of the states in a list of questions."""
    return [each.words for each in lists[0].all(class_="state")]


def test_a_lesson_leads_to_the_next(tiny: Bench) -> None:
    """And the last to none."""
    noor = tiny.reader(NOOR)
    assert "Next lesson: Mixing a batch" in noor.open(FIRST).words
    assert "Next lesson" not in noor.open(MIXING).words


def test_a_missing_lesson_is_not_found(tiny: Bench) -> None:
    """404 for its page, and for saying that it was read."""
    noor = tiny.reader(NOOR)
    assert noor.open("/lessons/no-such-lesson").status == 404
    token = noor.open("/help").sign_out_form.fields["csrf_token"]
    assert noor.post("/lessons/no-such-lesson/read", {"csrf_token": token}).status == 404


def test_the_wrong_method_is_refused(tiny: Bench) -> None:
    """Reading is a POST and a lesson is a GET."""
    noor = tiny.visit(NOOR)
    assert noor.open(f"{FIRST}/read").status == 405
    assert noor.post(FIRST, {}).status == 405
    assert tiny.lesson_row(NOOR, "before-the-lid") is None


def test_the_button_takes_its_token(tiny: Bench) -> None:
    """Without it nothing is noted."""
    noor = tiny.visit(NOOR)
    assert noor.post(f"{FIRST}/read", {}).status == 400
    assert tiny.lesson_row(NOOR, "before-the-lid") is None


@pytest.mark.parametrize("path", [FIRST, MIXING])
def test_signed_out_there_is_no_lesson(tiny: Bench, path: str) -> None:
    """The way to sign in comes first, and leads back here."""
    assert tiny.visit().open(path).leads_to == f"/sign-in?then={path}"


def test_every_real_lesson_can_be_read(bench: Bench) -> None:
    """Each has a worked job, its prose's pictures, its cautions, and all of its questions."""
    noor = bench.reader(NOOR)
    for lesson in bench.library.lessons:
        page = noor.open(f"/lessons/{lesson.slug}")
        assert (page.status, page.heading) == (200, lesson.title)
        asked = [name for question in lesson.questions for name in question.pictures]
        assert len(page.main.all("figure")) == len(lesson.pictures) - len(asked)
        assert len(page.main.all(class_="questions")[0].all("li")) == len(lesson.questions)
        assert page.main.all(class_="worked")


def test_a_word_of_the_trade_opens_its_sentence(bench: Bench) -> None:
    """Each button names a sentence that stands once at the foot of the page, and reads it out."""
    page = bench.reader(NOOR).open("/lessons/wetting-out")
    told = {each["id"]: each for each in page.main.all(class_="word-told")}
    buttons = page.main.all("button", class_="word")
    assert {each["popovertarget"] for each in buttons} == set(told)
    assert all(each["aria-describedby"] == each["popovertarget"] for each in buttons)
    binder = next(each for each in buttons if each.words == "binder")
    glossary = {word.slug: word for word in bench.library.glossary.words}
    assert told[binder["popovertarget"]].all("dd")[0].words == glossary["binder"].sentence


def test_a_default_leads_to_where_it_comes_from(bench: Bench) -> None:
    """The first of each has a numbered link to its line at the foot, which leads back."""
    page = bench.reader(NOOR).open("/lessons/wetting-out")
    (lesson,) = (each for each in bench.library.lessons if each.slug == "wetting-out")
    marks = [each.all("a")[0] for each in page.main.all(class_="figure-note")]
    lines = page.main.all(class_="sources")[0].all("li")
    assert [each["href"] for each in marks] == [f"#{line['id']}" for line in lines]
    assert [line.all("a")[0]["href"] for line in lines] == [f"#{mark['id']}" for mark in marks]
    for line, figure in zip(lines, lesson.figures, strict=True):
        assert line.words.startswith(figure.told.replace("\u00a0", " "))


def test_a_page_leads_to_all_words(bench: Bench) -> None:
    """For whoever missed one."""
    page = bench.reader(NOOR).open("/lessons/wetting-out")
    assert "/words" in [link["href"] for link in page.main.all("a")]


def test_a_lesson_without_words_of_the_trade_lists_none(tiny: Bench) -> None:
    """Nor figures, where it has none."""
    page = tiny.reader(NOOR).open(MIXING)
    assert not page.main.all(class_="word-told")
    assert "Where these figures come from" not in page.words


@pytest.mark.parametrize("path", PAGES)
def test_a_page_that_a_lesson_may_link_to_is_there(path: str, tiny: Bench) -> None:
    """Whoever reads a lesson may open it."""
    assert tiny.reader(NOOR).open(path).status == 200


def test_places_that_a_lesson_may_link_to_are_there(tiny: Bench) -> None:
    """On every lesson's page."""
    page = tiny.reader(NOOR).open(MIXING)
    assert [len(page.root.all(id=place)) for place in ANCHORS] == [1] * len(ANCHORS)
