"""Mix in a real browser: by thumb, through a reload, without signal, and with scripts off."""

import re
from datetime import datetime, timedelta
from urllib.parse import unquote

import pytest
from browsing import sign_in
from playwright.sync_api import Error, Page, expect

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


def kept_by_the_worker(page: Page) -> None:
    """Load the page once more, now that there is a worker to keep it."""
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    page.reload()


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
    kept_by_the_worker(phone)
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
    kept_by_the_worker(phone)
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


def test_the_clock_is_started_without_signal(phone: Page) -> None:
    """The button counts where there is none; the page comes back with the clock on it."""
    sign_in(phone, "jory")
    phone.goto(BUCKET)
    kept_by_the_worker(phone)
    phone.context.set_offline(True)
    button = phone.get_by_role("button", name="Catalyst in now")
    assert (button.bounding_box() or {"height": 0})["height"] >= 64
    button.tap()
    before = figure(phone)
    phone.reload()
    expect(phone.locator("#clock [data-figure]:visible")).not_to_have_text(before)
    expect(phone.get_by_role("button", name="Catalyst in now")).to_be_hidden()


def test_what_gelled_without_signal_is_noted_when_there_is_some(phone: Page) -> None:
    """The first press counts: four minutes, though it is pressed again two minutes later."""
    sign_in(phone, "lena")
    phone.clock.install()
    start(phone)
    phone.clock.fast_forward("04:00")
    phone.context.set_offline(True)
    phone.get_by_role("button", name="It has gelled").tap()
    expect(phone.get_by_text("No signal. The minutes are kept here")).to_be_visible()
    phone.clock.fast_forward("02:00")
    phone.get_by_role("button", name="It has gelled").tap()
    since, gelled = (
        phone.locator(f"[data-gelled] [name={name}]").input_value() for name in ("since", "gelled")
    )
    assert gelled in unquote(phone.url)
    gone = datetime.fromisoformat(gelled) - datetime.fromisoformat(since)
    assert timedelta(minutes=4) <= gone < timedelta(minutes=5)


def test_working_time_then_the_gel_then_stop(phone: Page) -> None:
    """A cup of 26 minutes leaves 17 from catalyst in; each turn is a word, and is read aloud."""
    sign_in(phone, "oda")
    phone.goto("/mix/cups")
    phone.locator("#product").fill("Clock brew")
    phone.locator("#at").fill("18")
    phone.get_by_text("Timed already?").tap()
    phone.locator("#minutes").fill("26")
    phone.get_by_role("button", name="Keep these minutes").tap()
    expect(phone.get_by_role("status").first).to_contain_text("gelled after 26")
    phone.clock.install()
    start(phone)
    word, said = phone.locator("#clock .phase-word:visible"), phone.locator("#clock [data-said]")
    expect(word).to_have_text("Working time")
    expect(said).to_contain_text("17 min left to lay")
    phone.clock.fast_forward("18:00")
    expect(word).to_contain_text("Working time is over")
    expect(said).to_contain_text("until a cup gels")
    phone.clock.fast_forward("09:00")
    expect(word).to_have_text("It may gel now. Stop laying; spread what is left thin.")
    phone.clock.fast_forward("45:00")
    hours = phone.locator("#clock [data-figure]:visible")
    expect(hours).to_have_text(re.compile(r"^1:1\d:\d\d$"))
    assert hours.evaluate("each => each.scrollWidth <= each.clientWidth && each.clientHeight < 90")


def test_it_is_read_aloud_once_a_minute(phone: Page) -> None:
    """In twenty seconds nothing is said; in a minute more, once."""
    sign_in(phone, "jory")
    phone.clock.install()
    start(phone)
    phone.locator("#clock [data-said]").evaluate(
        """said => { window.told = 0;
            new MutationObserver(() => window.told++).observe(said, {childList: true}) }"""
    )
    phone.clock.run_for(20_000)
    assert phone.evaluate("window.told") == 0
    phone.clock.run_for(60_000)
    assert phone.evaluate("window.told") == 1


def test_a_cup_is_timed_from_press_to_press(phone: Page) -> None:
    """Started 24 minutes ago by the phone's own clock, and gelled now."""
    sign_in(phone, "ruth")
    phone.goto("/mix/cups")
    phone.locator("#product").fill("Pressed brew")
    phone.locator("#at").fill("18")
    phone.get_by_role("button", name="Start the cup now").tap()
    figure(phone)
    earlier = "field => { field.value = new Date(Date.now() - 24 * 60000).toISOString() }"
    phone.locator("[data-cup] [name=since]").evaluate(earlier)
    phone.get_by_role("button", name="It has gelled").tap()
    expect(phone.locator(".cup-time").first).to_have_text(re.compile("^24"))


def test_a_page_kept_for_one_is_never_shown_to_the_next(phone: Page) -> None:
    """Jory signs out, Ines signs in, and the signal goes: nothing of Jory's comes back."""
    sign_in(phone, "jory")
    phone.goto(BUCKET)
    kept_by_the_worker(phone)
    assert phone.evaluate("caches.keys()")
    phone.get_by_role("button", name="Sign out").click()
    sign_in(phone, "ines")
    phone.get_by_role("heading", name="Today", exact=True).wait_for()
    assert phone.evaluate("caches.keys()") == []
    phone.context.set_offline(True)
    with pytest.raises(Error, match="ERR_INTERNET_DISCONNECTED"):
        phone.goto(BUCKET)
