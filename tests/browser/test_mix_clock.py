"""Mix in a real browser: by thumb, through a reload, without signal, and with scripts off."""

import re

from browsing import sign_in
from playwright.sync_api import Page, expect

BUCKET = "/mix?resin=1.2&resin_unit=kg&dose=2&dose_as=by+mass&at=18&product=Clock+brew"
COUNTED = re.compile(r"^\d+:\d\d$")


def figure(page: Page) -> str:
    """Return what the running clock shows."""
    shown = page.locator("#clock [data-figure]:visible")
    expect(shown).to_have_text(COUNTED)
    return shown.inner_text()


def start(page: Page) -> None:
    """Go to the bucket and press that catalyst is in."""
    page.goto(BUCKET)
    page.get_by_role("button", name="Catalyst in now").click()
    page.wait_for_url(re.compile("since="))


def test_the_clock_counts_and_outlives_a_reload(phone: Page) -> None:
    """The instant stands in the address; a reload changes nothing."""
    sign_in(phone, "jory")
    start(phone)
    first = figure(phone)
    phone.reload()
    expect(phone.locator("#clock [data-figure]:visible")).not_to_have_text(first)
    assert "since=" in phone.url
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360


def test_the_clock_runs_without_signal(phone: Page) -> None:
    """The page comes back from the phone itself, and goes on counting."""
    sign_in(phone, "jory")
    start(phone)
    phone.evaluate("navigator.serviceWorker.ready.then(() => true)")
    phone.reload()
    before = figure(phone)
    phone.context.set_offline(True)
    phone.reload()
    expect(phone.locator("#clock [data-figure]:visible")).not_to_have_text(before)
    expect(phone.get_by_role("heading", level=1)).to_have_text("Mix")


def test_coming_back_to_mix_offers_the_running_clock(phone: Page) -> None:
    """Somebody looked at a lesson meanwhile."""
    sign_in(phone, "jory")
    start(phone)
    figure(phone)
    phone.goto("/mix")
    phone.get_by_role("link", name="Back to that clock").tap()
    figure(phone)


def test_the_next_one_who_signs_in_finds_no_page_of_the_last(phone: Page) -> None:
    """A shared phone: what was kept is gone with whoever signed out."""
    sign_in(phone, "jory")
    start(phone)
    phone.evaluate("navigator.serviceWorker.ready.then(() => true)")
    phone.reload()
    phone.get_by_role("button", name="Sign out").click()
    sign_in(phone, "ines")
    phone.goto("/mix")
    expect(phone.get_by_role("link", name="Back to that clock")).to_be_hidden()
    assert "Clock brew" not in phone.inner_text("main")


def test_without_scripts_the_times_stand_there(plain_phone: Page) -> None:
    """The button and the times of day do without."""
    sign_in(plain_phone, "jory")
    start(plain_phone)
    expect(plain_phone.locator("#clock")).to_contain_text("Catalyst went in at")


def test_a_cup_is_timed_by_thumb_and_the_bucket_goes_by_it(phone: Page) -> None:
    """Its minutes typed, the bucket has a working time."""
    sign_in(phone, "ines")
    phone.goto("/mix/cups")
    phone.get_by_label("Resin's name", exact=True).fill("Thumb brew")
    phone.locator("#at").fill("18")
    phone.get_by_text("Timed already?").tap()
    phone.locator("#minutes").fill("26")
    phone.get_by_role("button", name="Keep these minutes").tap()
    expect(phone.get_by_role("status").first).to_contain_text("gelled after 26")
    phone.goto(BUCKET.replace("Clock+brew", "Thumb+brew"))
    expect(phone.get_by_role("main")).to_contain_text("15 min")
