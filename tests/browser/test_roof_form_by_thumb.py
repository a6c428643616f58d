"""Describing a roof in a real browser: by thumb, with the plan keeping up, and without scripts."""

import re
from collections.abc import Iterator

import pytest
from browsing import Served, sign_in
from playwright.sync_api import Page, expect

from trainer.records import db, writing
from trainer.records.database import table_of
from trainer.records.roofs import Roof

SIDES = ("drip", "raised", "wall", "raised")
AREA = "[id='figure-deck.area'] .known-value"


@pytest.fixture(autouse=True)
def no_roofs_left(served: Served) -> Iterator[None]:
    """What is kept here is gone for the tests of other files."""
    before = _numbers(served)
    yield
    with served.app.app_context():
        writing(db.session)
        table = table_of(Roof)
        db.session.execute(table.delete().where(table.c.id.not_in(before)))
        db.session.commit()


def _numbers(served: Served) -> list[int]:
    with served.app.app_context():
        return list(db.session.scalars(table_of(Roof).select()))


def box(name: str) -> str:
    """Return the selector of a field, by the key of what is typed in it."""
    return f"[id='{name}']"


def pick(page: Page, name: str, choice: str) -> None:
    """Pick a choice as a thumb does: anywhere on its button."""
    page.locator(f"label.unit:has(input[name='{name}'][value='{choice}'])").click()


def describe_garage(page: Page) -> None:
    """Type what a plan can't do without: 5.2 by 2.9 m, which is 15.08 m²."""
    page.goto("/roofs/new")
    page.fill(box("title"), "Garage by thumb")
    page.fill(box("outline.length_m"), "5.2")
    page.fill(box("outline.width_m"), "2.9")
    for number, kind in enumerate(SIDES, start=1):
        pick(page, f"edge.{number}.kind", kind)


def test_a_garage_is_described_by_thumb_while_its_plan_keeps_up(phone: Page) -> None:
    """Typed, seen, kept, opened again and changed; the fields that matter fill the phone."""
    sign_in(phone, "jory")
    describe_garage(phone)
    told = phone.get_by_role("status").filter(has_text="Plan brought up to date.")
    expect(told).to_be_visible()
    expect(phone.locator(AREA)).to_have_text(re.compile("15.08"))
    phone.fill(box("outline.length_m"), "6")
    expect(phone.locator(AREA)).to_have_text(re.compile("17.4"))
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360

    phone.locator("form").get_by_role("button", name="Keep this roof").tap()
    expect(phone.get_by_role("heading", level=1)).to_have_text("Garage by thumb")
    phone.reload()
    expect(phone.locator(AREA)).to_have_text(re.compile("17.4"))
    phone.get_by_role("link", name="Change it").tap()
    expect(phone.locator(box("outline.length_m"))).to_have_value("6")
    phone.fill(box("outline.length_m"), "5.2")
    expect(phone.locator(AREA)).to_have_text(re.compile("15.08"))
    phone.locator("form").get_by_role("button", name="Keep this roof").tap()
    expect(phone.get_by_role("heading", level=1)).to_have_text("Garage by thumb")
    expect(phone.locator(AREA)).to_have_text(re.compile("15.08"))


def test_rows_come_with_what_is_typed_and_nothing_is_lost(phone: Page) -> None:
    """An L has six sides and a pipe is followed by a blank opening; the focus stays where it is."""
    sign_in(phone, "jory")
    describe_garage(phone)
    pick(phone, "outline.shape", "L")
    expect(phone.locator(".side")).to_have_count(6)
    expect(phone.locator("input[name='edge.3.kind'][value='wall']")).to_be_checked()
    expect(phone.locator("#plan")).to_contain_text("Side 6: The kind of edge isn't given.")
    expect(phone.locator("#edge .error")).to_have_count(0)
    pick(phone, "outline.shape", "rectangle")
    expect(phone.locator(".side")).to_have_count(4)

    expect(phone.locator(box("opening.1.x_m"))).not_to_be_visible()
    pick(phone, "opening.1.kind", "pipe")
    expect(phone.locator(".opening")).to_have_count(2)
    expect(phone.locator(box("opening.1.kerb_mm"))).not_to_be_visible()
    for name in ("x_m", "y_m"):
        phone.fill(box(f"opening.1.{name}"), "1")
    phone.fill(box("opening.1.diameter_mm"), "110")
    expect(phone.locator("#plan")).to_contain_text("Opening 1")
    assert phone.evaluate("document.activeElement.id") == "opening.1.diameter_mm"


def test_a_sentence_goes_when_its_field_is_mended(phone: Page) -> None:
    """The others stay, by their fields and where the plan will be."""
    sign_in(phone, "jory")
    describe_garage(phone)
    phone.fill(box("weather.air_c"), "70")
    phone.fill(box("weather.humidity_percent"), "101")
    phone.locator("form").get_by_role("button", name="Keep this roof").tap()
    expect(phone.locator(box("weather.air_c-error"))).to_be_visible()
    phone.fill(box("weather.air_c"), "17")
    expect(phone.locator(box("weather.air_c-error"))).to_have_count(0)
    expect(phone.locator(box("weather.humidity_percent-error"))).to_be_visible()
    expect(phone.locator(".waiting")).to_contain_text("The humidity is 101 %")


def test_an_opened_working_stays_open(desk: Page) -> None:
    """While the figures around it change."""
    sign_in(desk, "jory")
    desk.goto("/roofs/new?example=garage")
    figure = desk.locator("[id='figure-tape.length']")
    figure.locator("summary").click()
    before = figure.locator(".known-value").inner_text()
    desk.fill(box("outline.length_m"), "9")
    expect(figure.locator(".known-value")).not_to_have_text(before)
    expect(figure.locator(".working")).to_be_visible()


def test_without_signal_a_sentence_says_so_and_nothing_is_lost(phone: Page) -> None:
    """The plan stays as it was and follows when there is signal again."""
    sign_in(phone, "jory")
    describe_garage(phone)
    expect(phone.locator(AREA)).to_have_text(re.compile("15.08"))
    phone.context.set_offline(True)
    phone.fill(box("outline.length_m"), "6")
    expect(phone.get_by_role("status").filter(has_text="No signal.")).to_be_visible()
    expect(phone.locator(AREA)).to_have_text(re.compile("15.08"))
    expect(phone.locator(box("outline.length_m"))).to_have_value("6")
    phone.context.set_offline(False)
    phone.fill(box("outline.width_m"), "3")
    expect(phone.locator(AREA)).to_have_text(re.compile("18"))


def test_it_all_works_without_scripts(plain_phone: Page) -> None:
    """The button plans, another shape comes back with its sides, and the roof is kept."""
    sign_in(plain_phone, "jory")
    describe_garage(plain_phone)
    plain_phone.get_by_role("button", name="Plan it now").click()
    expect(plain_phone.locator(AREA)).to_have_text(re.compile("15.08"))
    assert plain_phone.url.endswith("/roofs/new#plan")

    pick(plain_phone, "outline.shape", "L")
    plain_phone.fill(box("outline.cut_length_m"), "2")
    plain_phone.fill(box("outline.cut_width_m"), "1")
    plain_phone.get_by_role("button", name="Plan it now").click()
    expect(plain_phone.locator(".side")).to_have_count(6)
    expect(plain_phone.get_by_role("alert")).to_contain_text("Side 5: The kind of edge")
    pick(plain_phone, "edge.5.kind", "raised")
    pick(plain_phone, "edge.6.kind", "raised")
    plain_phone.locator("form").get_by_role("button", name="Keep this roof").click()
    expect(plain_phone.get_by_role("heading", level=1)).to_have_text("Garage by thumb")
    expect(plain_phone.locator(AREA)).to_have_text(re.compile("13.08"))

    plain_phone.get_by_role("link", name="Change it").click()
    plain_phone.get_by_role("link", name="Remove it").click()
    plain_phone.get_by_role("button", name="Remove it").click()
    expect(plain_phone.get_by_role("status")).to_contain_text("was removed")
    expect(plain_phone.get_by_text("You have kept no roof yet")).to_be_visible()
