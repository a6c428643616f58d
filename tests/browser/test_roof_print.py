"""A roof on paper: the sheet on two pages of A4 at the most, the mix card on one."""

import os
import re
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Literal

import pytest
from axe_playwright_python.sync_playwright import Axe
from browsing import Served, sign_in
from playwright.sync_api import Browser, Page, expect

from trainer.engine.plans.roof import plan_roof
from trainer.lessons.cautions import ON_A_ROOF
from trainer.lessons.roofs import SampleRoof, roof_digest
from trainer.records import db, writing
from trainer.records.people import Person
from trainer.records.roofs import save_roof
from trainer.records.texts import Text

WORKSHOP = "workshop"
#: Each page is an object of its own in Chromium's files; their list is "/Pages".
PAGE_OBJECTS = re.compile(rb"/Type\s*/Page\b")


def kept_text(roof: SampleRoof) -> Text:
    """Return the text of a roof as it is kept."""
    return Text("roof", roof.description.title, roof.text, roof_digest(roof.text))


@pytest.fixture(scope="module")
def roofs(served: Served) -> dict[str, int]:
    """The roofs that come along, kept by Jory; each by its name."""
    with served.app.app_context():
        writing(db.session)
        jory = db.session.query(Person.id).filter(Person.name == "Jory").scalar()
        now, today = datetime.now(UTC), datetime.now(UTC).date()
        kept = {
            name: save_roof(db.session, jory, kept_text(each), now, today)
            for name, each in served.library.roofs.items()
        }
        db.session.commit()
        return kept


@pytest.fixture(scope="module")
def paper(chromium: Browser, served: Served) -> Iterator[Page]:
    """Jory's browser."""
    context = chromium.new_context(base_url=served.address)
    page = context.new_page()
    sign_in(page, "jory")
    yield page
    context.close()


def pages_of(page: Page, path: str, name: str) -> int:
    """Return how many pages of A4 a page of ours takes on paper."""
    page.goto(path)
    printed = page.pdf(prefer_css_page_size=True)
    folder = os.environ.get("TRAINER_PICTURES")
    if folder:
        (Path(folder) / f"{name}.pdf").write_bytes(printed)
    return len(PAGE_OBJECTS.findall(printed))


def test_every_sheet_fits_on_two_pages(paper: Page, roofs: dict[str, int]) -> None:
    """The L of 60 m² too, with its forty-odd strips and all its batches on the clock."""
    assert WORKSHOP in roofs
    took = {
        name: pages_of(paper, f"/roofs/{kept}", f"sheet-{name}") for name, kept in roofs.items()
    }
    assert {name: pages for name, pages in took.items() if pages > 2} == {}


def test_every_card_fits_on_one_page(paper: Page, roofs: dict[str, int]) -> None:
    """One look, beside the bucket."""
    took = {
        name: pages_of(paper, f"/roofs/{kept}/card", f"card-{name}") for name, kept in roofs.items()
    }
    assert {name: pages for name, pages in took.items() if pages != 1} == {}


def test_paper_has_the_figures_and_not_their_workings(paper: Page, roofs: dict[str, int]) -> None:
    """Marks, cut lists and cautions are printed; workings and what is pressed aren't."""
    paper.goto(f"/roofs/{roofs[WORKSHOP]}")
    paper.emulate_media(media="print")
    for place in ("verdict", "drawing", "batches", "cuts", "finished", "buy", "cautions"):
        expect(paper.locator(f"#{place}")).to_be_visible()
    expect(paper.locator(".reading-chief .known-value").first).to_be_visible()
    for hidden in (".working", "nav", ".button", ".jumps", ".downloads"):
        assert not any(each.is_visible() for each in paper.locator(hidden).all()), hidden
    paper.emulate_media(media="screen")


def test_every_caution_is_on_paper(paper: Page, roofs: dict[str, int], served: Served) -> None:
    """Those of the roof's own figures, and the general ones; the data sheet's is a sentence."""
    plan = plan_roof(served.library.roofs["rooflight"].description)
    paper.goto(f"/roofs/{roofs['rooflight']}")
    paper.emulate_media(media="print")
    seen = [each.inner_text() for each in paper.locator(".plan .note:visible").all()]
    assert sorted(seen) == sorted(set(plan.cautions))
    titles = [each.inner_text() for each in paper.locator(".plan-cautions summary:visible").all()]
    assert sorted(titles) == sorted(
        served.library.cautions[slug].title for slug in ON_A_ROOF if slug != "data-sheet"
    )
    last = paper.locator("#cautions > p > b")
    expect(last).to_have_text(
        "The resin's data sheet, local codes and licensed practice come first."
    )
    expect(last).to_be_visible()
    paper.emulate_media(media="screen")


def test_times_on_paper_say_what_they_are(paper: Page, roofs: dict[str, int]) -> None:
    """Catalyst in, laid by, gel: each beside its time."""
    paper.goto(f"/roofs/{roofs['rooflight']}")
    paper.emulate_media(media="print")
    first = paper.locator("#stage-bandage .times li").first
    assert first.inner_text().split() == [
        "1",
        *["in", "11:00", "laid", "by", "11:08", "gel", "11:12"],
    ]
    assert all(each.is_visible() for each in first.locator("i").all())
    paper.emulate_media(media="screen")


@pytest.mark.parametrize("end", ["", "/card"])
def test_no_border_lies_on_the_edge_of_the_paper(
    paper: Page, roofs: dict[str, int], end: str
) -> None:
    """190 mm lie between the margins; what has a border stays a pixel clear of their right end."""
    paper.set_viewport_size({"width": 718, "height": 1000})
    paper.goto(f"/roofs/{roofs['rooflight']}{end}")
    paper.emulate_media(media="print")
    for each in paper.locator(".mark, .reading, .card, .readings > div").all():
        box = each.bounding_box()
        assert box is None or box["x"] + box["width"] <= 718 - 1
    paper.emulate_media(media="screen")


def test_a_figure_opens_its_working_by_a_tap(phone: Page, roofs: dict[str, int]) -> None:
    """Folded at first; tapped, the lines stand under it, ending in the figure itself."""
    sign_in(phone, "jory")
    phone.goto(f"/roofs/{roofs[WORKSHOP]}")
    figure = phone.locator("[id='figure-tape.length']")
    expect(figure.locator(".working")).not_to_be_visible()
    figure.locator("summary").tap()
    expect(figure.locator(".working")).to_be_visible()
    told = figure.locator(".known-value").inner_text()
    assert figure.locator(".line-answer").last.inner_text() == f"= {told}"


@pytest.mark.parametrize("wide", [320, 360, 740, 1280])
def test_nothing_is_cut_off_at_the_side(paper: Page, roofs: dict[str, int], wide: int) -> None:
    """Sheet and card are no wider than their window, with every working open too."""
    paper.set_viewport_size({"width": wide, "height": 740})
    for path in (f"/roofs/{roofs[WORKSHOP]}", f"/roofs/{roofs[WORKSHOP]}/card"):
        paper.goto(path)
        paper.evaluate("document.querySelectorAll('details').forEach(each => each.open = true)")
        assert paper.evaluate("document.documentElement.scrollWidth") <= wide


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_on_sheet_and_card(
    paper: Page, roofs: dict[str, int], scheme: Literal["light", "dark"]
) -> None:
    """The axe rules for WCAG 2.2 AA are at zero by day and at night, with every working open."""
    options = {"runOnly": ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]}
    paper.set_viewport_size({"width": 360, "height": 740})
    paper.emulate_media(color_scheme=scheme)
    for path in (f"/roofs/{roofs[WORKSHOP]}", f"/roofs/{roofs[WORKSHOP]}/card"):
        paper.goto(path)
        paper.evaluate("document.querySelectorAll('details').forEach(each => each.open = true)")
        found = Axe().run(paper, options=options)
        assert not found.response["violations"], found.generate_report()
