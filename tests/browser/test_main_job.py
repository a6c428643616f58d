"""The main job in a real browser, by thumb: sign in, read, answer, slip, see how far one came."""

import re

from browsing import Served, right_answer, sign_in
from playwright.sync_api import Page, expect

FIRST = "Fire, eyes, fumes, dust and waste"
CHAIN = "fire-first-dose"


def test_an_apprentice_reads_answers_and_sees_it_counted(phone: Page, served: Served) -> None:
    """From the sign-in to the progress page, with one slip on the way."""
    sign_in(phone, "tam")
    phone.get_by_role("link", name="Read it").tap()
    expect(phone.get_by_role("heading", level=1)).to_have_text(FIRST)
    phone.get_by_role("button", name="I have read this").tap()
    expect(phone.get_by_role("button", name="Check it")).to_be_visible()

    phone.goto(f"/questions/{CHAIN}?alone=yes")
    drawn = served.sum_on(phone)
    phone.locator("#answer_0").fill(right_answer(drawn, "mass"))
    # The mass taken for the volume: a slip that the question knows.
    phone.locator("#answer_1").fill(right_answer(drawn, "mass"))
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(".mark-slip")).to_be_visible()
    expect(phone.locator(".working")).to_have_count(0)

    assert served.sum_on(phone).givens == drawn.givens
    expect(phone.locator("#answer_1")).to_have_count(0)
    phone.locator("#answer_0").fill(right_answer(drawn, "volume"))
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(".mark-right")).to_be_visible()
    expect(phone.locator(".working .line")).to_have_count(2)

    phone.get_by_role("link", name="Progress").tap()
    expect(phone.get_by_text("1 try, 0 right")).to_be_visible()


def test_the_supervisor_sees_it_in_the_crew_table(desk: Page) -> None:
    """A trainee's row leads to their page; another crew's people aren't there."""
    sign_in(desk, "bertil")
    desk.get_by_role("link", name="Crew table", exact=True).click()
    expect(desk.get_by_role("rowheader", name="Ines")).to_be_visible()
    expect(desk.get_by_role("rowheader", name="Oda")).to_have_count(0)
    desk.get_by_role("link", name="Ines").click()
    expect(desk.get_by_role("heading", level=1)).to_have_text("Ines")
    expect(desk.locator(".part-grey")).not_to_have_count(0)


def test_it_all_works_without_scripts(plain_phone: Page, served: Served) -> None:
    """Signing in, answering and the mark need no script at all."""
    sign_in(plain_phone, "lena")
    plain_phone.goto("/questions/fire-scrap-board")
    drawn = served.sum_on(plain_phone)
    plain_phone.locator("#answer_0").fill(right_answer(drawn, "area"))
    plain_phone.get_by_role("button", name="Check it").click()
    expect(plain_phone.locator(".mark-right")).to_be_visible()


def test_it_all_works_from_the_keyboard(desk: Page, served: Served) -> None:
    """Tab and Enter reach everything that a question needs, in the order it is read."""
    sign_in(desk, "jory")
    desk.goto("/questions/fire-working-time?alone=yes")
    drawn = served.sum_on(desk)
    for _ in range(30):
        desk.keyboard.press("Tab")
        if desk.evaluate("document.activeElement.id") == "answer_0":
            break
    desk.keyboard.type(right_answer(drawn, "working"))
    desk.keyboard.press("Enter")
    expect(desk.locator(".mark-right")).to_be_visible()


def test_a_figure_that_could_mean_two_things_is_asked_about(phone: Page) -> None:
    """What was typed stays in its field, with a sentence above it, and nothing is counted."""
    sign_in(phone, "ines")
    phone.goto("/questions/wetting-strip-resin")
    phone.locator("#answer_0").fill("1,300")
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator("#answer_0")).to_have_value("1,300")
    expect(phone.locator("#answer_0-error")).to_have_text(re.compile(r"1\.300 or 1300"))


def test_an_answer_survives_signing_out(phone: Page, served: Served) -> None:
    """Somebody who was signed out signs in again and finds the answer as it was typed."""
    sign_in(phone, "ines")
    phone.goto("/questions/wetting-strip-resin")
    drawn = served.sum_on(phone)
    phone.locator("#answer_0").fill("0.123")
    phone.context.clear_cookies()
    phone.get_by_role("button", name="Check it").tap()
    phone.get_by_label("Your sign-in name").fill("ines")
    phone.get_by_label("Password").fill("straw-and-amber")
    phone.get_by_role("button", name="Sign in").tap()
    expect(phone.locator("#answer_0")).to_have_value("0.123")
    assert served.sum_on(phone).givens == drawn.givens
