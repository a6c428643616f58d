"""What holds for every page in a real browser: width, contrast, targets, weight, policy."""

import os
import re
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from browsing import Served, sign_in
from playwright.sync_api import Browser, ConsoleMessage, Page, Response

BUCKET = "resin=1.3&resin_unit=L&dose=4.5&at=18&product=Harbour+20"
PAGES = {
    "sign-in": ("", "/sign-in"),
    "today": ("jory", "/"),
    "lesson": ("jory", "/lessons/wetting-out"),
    "question": ("jory", "/questions/wetting-one-side-chain"),
    "unclear": ("jory", "/questions/wetting-dose-chain"),
    "helped": ("jory", "/questions/roll-pace-batch"),
    "decision": ("jory", "/questions/wetting-still-cloudy"),
    "order": ("jory", "/questions/wetting-stack-to-roller"),
    "place": ("jory", "/questions/wetting-corner"),
    "nothing picked": ("jory", "/questions/roll-streaks"),
    "marked": ("jory", "/questions/fire-first-dose/0/1"),
    "progress": ("jory", "/progress"),
    "roofs": ("jory", "/roofs"),
    "roof form": ("jory", "/roofs/new"),
    "roof form, planned": ("jory", "/roofs/new?example=workshop"),
    "roof form, wrong": ("jory", "/roofs/new"),
    "mix": ("jory", "/mix"),
    "mix, worked out": ("jory", f"/mix?{BUCKET}"),
    "mix, running": ("jory", f"/mix?{BUCKET}&since={datetime.now(UTC):%Y-%m-%dT%H:%M:%SZ}"),
    "mix, unclear": ("jory", "/mix?resin=1%2C300&dose=9&at=-90"),
    "test cups": ("jory", "/mix/cups"),
    "practice": ("jory", "/practice"),
    "practice, first turn": ("jory", "/practice"),
    "season": ("ines", "/season"),
    "season, the office": ("kit", "/season"),
    "used on a job": ("lena", "/uses"),
    "used, nothing said": ("lena", "/uses"),
    "crew": ("bertil", "/crew"),
    "crew before the season": ("bertil", "/season/crew"),
    "predicted and right": ("kit", "/season/compare"),
    "to confirm": ("bertil", "/crew/uses"),
    "cautions": ("", "/cautions"),
    "words": ("", "/words"),
    "help": ("", "/help"),
    "missing": ("jory", "/nothing"),
}
#: Pages that come of pressing a button with nothing typed.
SENT = {
    "used, nothing said": "Note it",
    "unclear": "Check it",
    "nothing picked": "Check it",
    "roof form, wrong": "Keep this roof",
}
#: A page that comes of pressing its button.
BEGUN = {"practice, first turn": re.compile("Begin|Go on")}
SIZES = {"narrow": (320, 640), "phone": (360, 740), "lying": (740, 360), "desk": (1280, 900)}
#: A word of the trade is part of its line, and as high as that.
PRESSED = (
    "button:not(.word), summary, .choice, nav a, .button, .unit, input[type=text], "
    ".questions a, .lessons a"
)
SCHEMES = ("light", "dark")

every_page = pytest.mark.parametrize("name", PAGES)


@pytest.fixture(scope="module", params=SCHEMES)
def scheme(request: pytest.FixtureRequest) -> str:
    """By day and by night."""
    return str(request.param)


@pytest.fixture(scope="module")
def visits(chromium: Browser, served: Served, scheme: str) -> Iterator[dict[str, Page]]:
    """A signed-in page for each of the cast, kept through the module."""
    pages: dict[str, Page] = {}
    for who in {who for who, _ in PAGES.values()}:
        context = chromium.new_context(base_url=served.address, color_scheme=scheme)  # type: ignore[arg-type]
        pages[who] = context.new_page()
        if who:
            sign_in(pages[who], who)
    yield pages
    for page in pages.values():
        page.context.close()


def opened(visits: dict[str, Page], name: str) -> Page:
    """Return a page, opened on a phone."""
    who, path = PAGES[name]
    page = visits[who]
    width, height = SIZES["phone"]
    page.set_viewport_size({"width": width, "height": height})
    page.goto(path)
    if name in {**SENT, **BEGUN}:
        page.get_by_role("button", name={**SENT, **BEGUN}[name]).click()
    return page


@every_page
def test_nothing_is_cut_off_at_the_side(visits: dict[str, Page], name: str) -> None:
    """A page is no wider than its window, from 320 px on and both ways up."""
    page = opened(visits, name)
    too_wide = []
    for size, (width, height) in SIZES.items():
        page.set_viewport_size({"width": width, "height": height})
        if page.evaluate("document.documentElement.scrollWidth") > width:
            too_wide.append(size)
        keep_picture(page, f"{name}-{size}")
    assert too_wide == []


@every_page
def test_axe_finds_nothing(visits: dict[str, Page], name: str) -> None:
    """The axe rules for WCAG 2.2 AA are at zero, contrast and target size among them."""
    page = opened(visits, name)
    options = {"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]}
    found = Axe().run(page, options=options)
    assert not found.response["violations"], found.generate_report()


@every_page
def test_targets_are_large_enough_for_a_glove(visits: dict[str, Page], name: str) -> None:
    """What is pressed is 48 px high at least, answer fields and their units 64."""
    page = opened(visits, name)
    small = page.evaluate(
        """pressed => [...document.querySelectorAll(pressed)]
            .filter(each => each.offsetParent !== null)
            .map(each => [each.outerHTML.slice(0, 80), each.getBoundingClientRect().height,
                          each.matches(".answer .unit, .answer input[type=text]") ? 64 : 48])
            .filter(([, high, least]) => high < least - 0.5)""",
        PRESSED,
    )
    assert small == []


@every_page
def test_the_strict_policy_holds_and_the_console_is_silent(
    visits: dict[str, Page], name: str
) -> None:
    """No page runs into its own content policy, and no file it asks for is missing."""
    said: list[str] = []

    def note(message: ConsoleMessage) -> None:
        said.append(message.text)

    who, path = PAGES[name]
    page = visits[who].context.new_page()  # so that no other page's words come late
    page.on("console", note)
    page.goto(path)
    if name in SENT:
        page.get_by_role("button", name=SENT[name]).click()
        page.get_by_role("alert").wait_for()
    if name in BEGUN:
        with page.expect_navigation():
            page.get_by_role("button", name=BEGUN[name]).click()
    page.close()
    # The 404 and the 422 themselves.
    expected = 1 if name in {"missing", "mix, unclear", *SENT} else 0
    assert len(said) <= expected, said


def test_the_first_page_is_light(chromium: Browser, served: Served) -> None:
    """At most 100 kB and ten requests, for the line on a building site."""
    context = chromium.new_context(base_url=served.address)
    page = context.new_page()
    answers: list[Response] = []

    def note(answer: Response) -> None:
        answers.append(answer)

    page.on("response", note)
    page.goto("/sign-in", wait_until="networkidle")
    weight = sum(answer.request.sizes()["responseBodySize"] for answer in answers)
    context.close()
    assert len(answers) <= 10
    assert weight <= 100_000


def test_letters_twice_as_large_still_fit(visits: dict[str, Page]) -> None:
    """At 200 % a question's form still fits a phone and can be sent."""
    page = opened(visits, "question")
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    assert page.get_by_role("button", name="Check it").is_visible()


def keep_picture(page: Page, name: str) -> None:
    """Keep a screenshot to look at, where TRAINER_PICTURES names a folder."""
    folder = os.environ.get("TRAINER_PICTURES")
    if folder:
        scheme = page.evaluate("matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : ''")
        page.screenshot(path=Path(folder) / f"{name}{scheme}.png", full_page=True)
