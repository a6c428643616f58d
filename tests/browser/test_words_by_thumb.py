"""A word of the trade, opened: on a phone, by the keyboard, on paper, and in an older browser."""

import pytest
from browsing import sign_in
from playwright.sync_api import Page

LESSON = "/lessons/fire-eyes-fumes-dust-waste"
SHOWN = ".word-told:popover-open"


@pytest.fixture
def lesson(phone: Page) -> Page:
    """The first lesson, on a phone."""
    sign_in(phone, "jory")
    phone.goto(LESSON)
    return phone


def test_a_tap_opens_the_sentence_and_another_shuts_it(lesson: Page) -> None:
    """It lies on the screen, clear of the word itself."""
    word = lesson.locator("button.word").first
    word.tap()
    told = lesson.locator(SHOWN)
    assert told.count() == 1
    assert told.get_attribute("id") == word.get_attribute("popovertarget")
    box, own = told.bounding_box(), word.bounding_box()
    assert box is not None
    assert own is not None
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= 360
    assert box["y"] >= own["y"] + own["height"] - 4 or box["y"] + box["height"] <= own["y"] + 4
    word.tap()
    assert lesson.locator(SHOWN).count() == 0


def test_the_keyboard_opens_it_and_escape_shuts_it(lesson: Page) -> None:
    """And one is back at the word."""
    word = lesson.locator("button.word").first
    word.focus()
    lesson.keyboard.press("Enter")
    assert lesson.locator(SHOWN).count() == 1
    lesson.keyboard.press("Escape")
    assert lesson.locator(SHOWN).count() == 0
    assert word.evaluate("each => each === document.activeElement")


def test_without_scripts_it_opens_too(plain_phone: Page) -> None:
    """Nothing here needs one."""
    sign_in(plain_phone, "jory")
    plain_phone.goto(LESSON)
    plain_phone.locator("button.word").first.click()
    assert plain_phone.locator(SHOWN).is_visible()


def test_paper_lists_all_words_of_the_page(lesson: Page) -> None:
    """Where nothing can be tapped they stand at the end, in two columns."""
    lesson.emulate_media(media="print")
    told = lesson.locator(".word-told")
    assert told.count() > 10
    assert all(each.is_visible() for each in told.all())
    lefts = {each.evaluate("each => each.getBoundingClientRect().left") for each in told.all()}
    assert len(lefts) == 2


def test_an_older_browser_shows_them_at_the_foot(lesson: Page) -> None:
    """It knows no popover, so the attribute says nothing to it."""
    told = lesson.locator(".word-told")
    told.evaluate_all("all => all.forEach(each => each.removeAttribute('popover'))")
    assert all(each.is_visible() for each in told.all())


def test_words_leave_the_lines_as_they_are(lesson: Page) -> None:
    """A paragraph with words in it has lines as high as one without."""
    high = lesson.evaluate(
        """() => {
            const paragraph = document.querySelector(".prose p:has(.word)");
            const before = paragraph.getBoundingClientRect().height;
            paragraph.querySelectorAll(".word").forEach(word => word.replaceWith(word.textContent));
            return [before, paragraph.getBoundingClientRect().height];
        }"""
    )
    assert abs(high[0] - high[1]) <= 2
