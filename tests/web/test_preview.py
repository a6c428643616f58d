"""One lesson shown while it is being written: every change at once, and nobody signs in."""

import os
from pathlib import Path

import pytest
from web_bench import ZONE
from web_content import DRUM_DOSE, FIRST_DOSE, MIXING, SAFETY, right_grams, write_content
from web_page import Page
from web_visitor import Visitor
from werkzeug.test import Client

from trainer.config import Config
from trainer.web.preview import ALONE, ANEW, NAME, Preview

DRUM = "/questions/drum-dose"
LESSON = "/lessons/mixing"
CONTENT = Path(__file__).resolve().parents[2] / "content"
FACE = "/static/face.css"


class Desk:
    """An author's desk: the files, and a browser in which the lesson is open."""

    def __init__(self, content: Path, instance: Path, file: str = "02-mixing.md") -> None:
        instance.mkdir(exist_ok=True)
        url = f"sqlite:///{instance / 'trainer.sqlite'}"
        self.content = content
        self.preview = Preview(Config(content, instance, url, ZONE), file)
        self.saved = 0

    def browser(self) -> Visitor:
        """Return a browser that has opened nothing yet."""
        return Visitor(Client(self.preview))  # type: ignore[arg-type]

    def save(self, name: str, text: str) -> None:
        """Write a file, later than it was written before."""
        file = self.content / name
        file.write_text(text, "utf-8")
        self.saved += 1
        later = file.stat().st_mtime_ns + self.saved * 1_000_000
        os.utime(file, ns=(later, later))


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """The tiny lessons, with the second one in the browser."""
    return Desk(write_content(tmp_path / "content"), tmp_path / "instance")


def mended(page: Page) -> bool:
    """Return whether a page is the lesson again."""
    return (page.status, page.heading) == (200, "Mixing a batch")


def told(page: Page) -> list[list[str]]:
    """Return the paragraphs of each mistake that a page tells, in their order."""
    return [
        [each.words for each in mistake.all("p")] for mistake in page.main.all(class_="mistake")
    ]


# What is shown.


def test_nobody_signs_in(desk: Desk) -> None:
    """The address alone leads to the lesson."""
    author = desk.browser()
    page = author.go_on(author.open("/"))
    assert mended(page)
    assert page.path == LESSON
    assert NAME in page.root.all(class_="person")[0].words


def test_it_is_the_page_of_a_trainee(desk: Desk) -> None:
    """Prose, worked job and questions; cautions are shut, as in any lesson but the first."""
    page = desk.browser().open(LESSON)
    for words in ("Stir it slowly.", "Worked job: One bucket", "Goggles on before the cap"):
        assert words in page.words
    assert DRUM in page.links()
    assert [each.attributes for each in page.main.all("details")] == [{}]


def test_the_cautions_of_the_first_lesson_are_open(tmp_path: Path) -> None:
    """As a trainee meets them."""
    desk = Desk(write_content(tmp_path / "content"), tmp_path / "instance", "01-safety.md")
    page = desk.browser().open("/lessons/before-the-lid")
    assert [each.attributes for each in page.main.all("details")] == [{"open": ""}]


def test_a_question_is_answered_as_often_as_one_likes(desk: Desk) -> None:
    """Each time on fresh numbers, and marked as for a trainee."""
    author = desk.browser()
    asked = []
    for _ in range(4):
        page = author.open(DRUM)
        asked.append(page.question)
        assert "Right" in author.answer(page, right_grams(page)).words
    assert len(set(asked)) == 4


def test_a_cookie_of_another_server_is_no_matter(desk: Desk) -> None:
    """A browser sends this machine's cookies to every port of it."""
    cookie = "bench=somebody; form=something"
    page = desk.browser().open(LESSON, headers={"Cookie": cookie})
    assert mended(page)
    assert not any(each.startswith(("bench=", "form=")) for each in page.set_cookies)


@pytest.mark.parametrize("path", ["/", "/sign-in", "/sign-out"])
def test_these_ways_lead_to_the_lesson(path: str, desk: Desk) -> None:
    """There is nothing else to begin with, and nobody to sign in or out."""
    assert desk.browser().open(path).leads_to == LESSON


def test_other_lessons_are_not_here(desk: Desk) -> None:
    """The way leads back, and it says why."""
    author = desk.browser()
    assert ALONE in author.go_on(author.open("/lessons/before-the-lid")).notes
    assert author.open("/lessons/mixing/nothing").leads_to == LESSON
    assert author.open("/nothing").status == 404


# What is changed.


def test_a_change_is_there_when_the_page_is_loaded_again(desk: Desk) -> None:
    """In the lesson, its cautions, and its questions."""
    author = desk.browser()
    author.open(LESSON)
    desk.save("lessons/02-mixing.md", MIXING.replace("slowly", "for a minute") + DRUM_DOSE)
    cautions = (desk.content / "cautions.toml").read_text("utf-8")
    desk.save("cautions.toml", cautions.replace("Goggles", "Wrap-around goggles"))
    page = author.open(LESSON)
    assert "Stir it for a minute." in page.words
    assert "Wrap-around goggles on before" in page.words
    assert [link for link in page.links() if "/questions/" in link] == [DRUM]


def test_a_picture_that_is_drawn_anew_is_there(desk: Desk) -> None:
    """Though the text of the lesson is the same."""
    shown = MIXING.replace("Stir it slowly.", "![A stirrer.](pictures/stirrer.svg)")
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg"><title id="stirrer-t">A {}</title>'
        '<desc id="stirrer-d">It stirs.</desc></svg>'
    )
    (desk.content / "pictures").mkdir()
    desk.save("pictures/stirrer.svg", svg.format("stick"))
    desk.save("lessons/02-mixing.md", shown + DRUM_DOSE)
    author = desk.browser()
    assert "A stick" in author.open(LESSON).html
    desk.save("pictures/stirrer.svg", svg.format("paddle"))
    assert "A paddle" in author.open(LESSON).html


def test_a_question_that_waits_for_a_second_try_is_the_new_one(desk: Desk) -> None:
    """An author who has changed it wants to see the change, and no mark of the old one."""
    desk.preview.file = "01-safety.md"
    author = desk.browser()
    page = author.open("/questions/first-dose")
    mark = author.answer(page, f"{10 * float(right_grams(page)):g}")
    assert "Once more, with the same numbers" in mark.words
    desk.save("lessons/01-safety.md", SAFETY + FIRST_DOSE.replace("You mix", "You stir"))
    again = author.go_on(author.open(mark.path))
    assert "You stir" in again.question
    assert again.notes == ANEW


def test_what_was_made_before_a_change_is_put_away(desk: Desk) -> None:
    """An author saves some hundred times a day, and a process may open so many files."""
    author = desk.browser()
    for word in ("slowly", "calmly", "well"):
        desk.save("lessons/02-mixing.md", MIXING.replace("slowly", word) + DRUM_DOSE)
        author.answer(author.open(DRUM), "1")
    files = {each.name.partition(".")[0] for each in desk.preview.config.instance.iterdir()}
    assert files == {"preview-3", "secret"}


# What is to mend.


def test_a_mistake_is_shown_with_its_place_and_goes_when_it_is_mended(desk: Desk) -> None:
    """File, line, text and mend, at every address; the page looks again by itself."""
    author = desk.browser()
    text = (desk.content / "lessons/02-mixing.md").read_text("utf-8")
    desk.save("lessons/02-mixing.md", text.replace('"mixing"\nminutes', '"mixin"\nminutes'))
    for path in ("/", LESSON, DRUM):
        page = author.open(path)
        assert page.status == 503
        assert told(page) == [
            [
                "There is no competency 'mixin'.",
                "content/lessons/02-mixing.md:4",
                'competency = "mixin"',
                "Did you mean 'mixing'?",
            ]
        ]
        assert page.root.all("meta", **{"http-equiv": "refresh"})
    assert author.open("/static/face.css").status == 200
    desk.save("lessons/02-mixing.md", text)
    assert mended(author.open(LESSON))


def test_what_is_sent_meanwhile_gets_the_mistake_too(desk: Desk) -> None:
    """And the question anew afterwards."""
    author = desk.browser()
    form = author.open(DRUM)
    text = (desk.content / "lessons/02-mixing.md").read_text("utf-8")
    desk.save("lessons/02-mixing.md", text.replace("+++", "", 1))
    assert "A lesson begins with a line of +++." in author.send(form, answer_0="1").words
    desk.save("lessons/02-mixing.md", text.replace("A drum", "A keg"))
    assert "A keg" in author.send(form, answer_0="1").question


def test_a_mistake_of_another_lesson_is_no_matter(desk: Desk) -> None:
    """Somebody else may be writing that one."""
    desk.save("lessons/01-safety.md", "Nothing yet.")
    assert mended(desk.browser().open(LESSON))


def test_a_mistake_that_shows_only_in_working_stands_above_the_text(desk: Desk) -> None:
    """The lesson can be read, and `trainer check` would not pass it."""
    page = desk.browser().open(LESSON)
    file = "content/lessons/02-mixing.md"
    assert ["A lesson asks 5 questions at least.", f"{file}:1"] in told(page)
    assert "Question 'drum-dose': it takes 2 slips at least, and knows 0." in page.words
    assert page.words.index("5 questions at least") < page.words.index("Stir it slowly.")


def test_a_mistake_is_trouble_and_no_good_news(desk: Desk) -> None:
    """In the box of what a form got wrong, with its mark, and not among the messages."""
    page = desk.browser().open(LESSON)
    (box,) = page.main.all(class_="errors")
    assert box.all("h2")[0].words == "These things need mending."
    assert len(box.all(class_="error")) == len(told(page)) > 1
    assert page.notes == ""


def test_a_mend_of_several_lines_keeps_them(desk: Desk) -> None:
    """The longest sentences are named one below the other."""
    text = (desk.content / "lessons/02-mixing.md").read_text("utf-8")
    wordy = " ".join(f"Mat {' '.join(['strand'] * 20)}." for _ in range(60))
    desk.save("lessons/02-mixing.md", text.replace("Stir it slowly.", wordy))
    page = desk.browser().open(LESSON)
    (mend,) = (each for each in page.main.all("p") if "Begin with the longest" in each.words)
    assert mend["class"] == "mistake-mend"
    assert ".mistake-mend { white-space: pre-line; }" in desk.browser().open(FACE).html
    assert len(mend.words_as_typed.splitlines()) == 4


def test_a_lesson_with_nothing_to_mend_has_no_box(tmp_path: Path) -> None:
    """One of the lessons that come along, which the check passes."""
    taping = Desk(CONTENT, tmp_path / "instance", "04-taping-open-joints.md")
    page = taping.browser().open("/lessons/taping-open-joints")
    assert page.status == 200
    assert page.main.all(class_="errors") == []


def test_a_lesson_that_is_gone_is_told(desk: Desk) -> None:
    """Renamed, perhaps; it comes back when it is there again."""
    file = desk.content / "lessons/02-mixing.md"
    file.rename(file.with_name("03-mixing.md"))
    page = desk.browser().open("/")
    assert "There are no lessons here." in page.words
    file.with_name("03-mixing.md").rename(file)
    assert mended(desk.browser().open(LESSON))
