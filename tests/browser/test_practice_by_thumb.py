"""A sitting of practice by thumb: a slip and its second try, left, taken up elsewhere, ended."""

import re

from browsing import Served, answer, right_answer, sign_in
from playwright.sync_api import Browser, Page, expect

from trainer.lessons import Variant
from trainer.lessons.calculate import slip_figures

PLACE = re.compile(r"Practice, question (\d+) of (\d+)")
WIDE = "document.documentElement.scrollWidth"


def place_of(page: Page) -> tuple[int, int]:
    """Return which question of how many a page says it is."""
    found = PLACE.search(page.locator(".back").text_content() or "")
    assert found
    return int(found[1]), int(found[2])


def slip_on(page: Page, served: Served) -> str:
    """Return what somebody types who makes a slip that only one explains, or nothing."""
    drawn = served.asked(page)
    if not isinstance(drawn, Variant) or len(drawn.asks) != 1:
        return ""
    right, ask = drawn.working().figures, drawn.asks[0]
    figures = [
        figure
        for slip in drawn.question.slips
        for at, figure in slip_figures(drawn, slip, right)
        if at.line == ask.line and figure > 0
    ]
    alone = [
        each
        for each in figures
        if sum(abs(each - other) < 0.1 * abs(each) for other in figures) == 1
        and abs(each - right[ask.line]) > 0.1 * abs(right[ask.line])
    ]
    return f"{ask.in_asked_unit(alone[0]):.5f}" if alone else ""


def tap(page: Page, role: str, name: str | re.Pattern[str]) -> None:
    """Tap a link or a button, and wait for the page that it leads to."""
    with page.expect_navigation():
        page.get_by_role(role, name=name).tap()  # type: ignore[arg-type]


def test_a_sitting_by_thumb(phone: Page, chromium: Browser, served: Served) -> None:
    """Nothing runs off the side, and every step is one tap away."""
    sign_in(phone, "oda")
    tap(phone, "link", "Practice")
    expect(phone.get_by_role("heading", name="What it asks, and why")).to_be_visible()
    assert phone.evaluate(WIDE) <= 360
    tap(phone, "button", "Begin")
    while not (slip := slip_on(phone, served)):
        answer(phone, served)
        tap(phone, "link", "Next question")

    # A slip gets its cue and one more try on the same numbers, and no way past it.
    drawn, (position, of) = served.sum_on(phone), place_of(phone)
    phone.locator("#answer_0").fill(slip)
    tap(phone, "button", "Check it")
    expect(phone.locator(".mark-slip")).to_be_visible()
    expect(phone.get_by_role("link", name="Next question")).to_have_count(0)
    assert place_of(phone) == (position, of)
    phone.locator("#answer_0").fill(right_answer(drawn, drawn.asks[0].line))
    tap(phone, "button", "Check it")
    expect(phone.locator(".mark-right")).to_be_visible()
    assert phone.evaluate(WIDE) <= 360

    # Left here, it is gone on with on another phone, at the next question.
    tap(phone, "link", PLACE)
    expect(phone.locator(".first")).to_contain_text(f"{of - position} questions left")
    other = chromium.new_context(
        base_url=served.address,
        viewport={"width": 360, "height": 740},
        has_touch=True,
        is_mobile=True,
    )
    elsewhere = other.new_page()
    sign_in(elsewhere, "oda")
    tap(elsewhere, "link", "Practice")
    tap(elsewhere, "button", "Go on")
    assert place_of(elsewhere) == (position + 1, of)
    answer(elsewhere, served)

    # Enough for today: the end is two taps away, and says what comes next.
    tap(elsewhere, "link", PLACE)
    tap(elsewhere, "link", "See what changed so far")
    tap(elsewhere, "button", "Stop here for today")
    expect(elsewhere.get_by_role("heading", name="What is next")).to_be_visible()
    assert elsewhere.evaluate(WIDE) <= 360
    other.close()
    phone.reload()
    expect(phone.get_by_text("Today's practice is done.")).to_be_visible()
