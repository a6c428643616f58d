"""What the browser tests do: find what is asked on a page, work it, and sign in."""

from dataclasses import dataclass

from flask import Flask
from playwright.sync_api import Page

from trainer.cli.demo import PASSWORD
from trainer.lessons import (
    ChooseDrawn,
    Drawn,
    Library,
    LocateDrawn,
    OrderDrawn,
    Question,
    Variant,
)
from trainer.web import asking, shown
from trainer.web.installation import Installation


@dataclass(frozen=True)
class Served:
    """The demo crew, served."""

    address: str
    app: Flask

    @property
    def library(self) -> Library:
        """The lessons that are served."""
        installation: Installation = self.app.extensions["installation"]
        return installation.library

    def one_of_kind(self, kind: str) -> Question:
        """Return the first question of a kind in the lessons."""
        return next(each for each in self.library.questions.values() if each.kind == kind)

    def sum_on(self, page: Page) -> Variant:
        """Return the sum that stands on a page, with its numbers."""
        drawn = self.asked(page)
        assert isinstance(drawn, Variant)
        return drawn

    def asked(self, page: Page) -> Drawn:
        """Return the question that stands on a page, as it is drawn."""
        sealed = page.locator("input[name=shown]").get_attribute("value") or ""
        with self.app.test_request_context():
            was = shown.opened(sealed)
            drawn = asking.drawn_as_shown(was) if was else None
        assert drawn is not None
        return drawn


def right_answer(drawn: Variant, line: str) -> str:
    """Return what somebody would type who worked a line rightly, in the asked unit."""
    ask = drawn.ask_for(line)
    return f"{ask.in_asked_unit(drawn.working().figures[line]):.5f}"


def sign_in(page: Page, name: str) -> None:
    """Sign in as one of the demo crew."""
    page.goto("/sign-in")
    page.get_by_label("Your sign-in name").fill(name)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Sign in").click()


def answer(page: Page, served: Served, *, right: bool = True) -> None:
    """Answer the question that stands on a page, of whatever kind, and press."""
    match drawn := served.asked(page):
        case Variant():
            for place, ask in enumerate(drawn.asks):
                figure = right_answer(drawn, ask.line) if right else "0.0001"
                page.locator(f"#answer_{place}").fill(figure)
        case ChooseDrawn():
            places = [place for place, _ in drawn.choices()]
            pick(page, next(each for each in places if (each == drawn.right_place()) is right))
        case OrderDrawn():
            put = drawn.right_places() if right else drawn.places
            hidden = page.locator("input[name=answer_0]")
            hidden.evaluate("(field, put) => { field.value = put }", " ".join(put))
        case LocateDrawn():
            meant = drawn.question.right_name
            names = [each.name for each in drawn.question.regions]
            pick(page, next(each for each in names if (each == meant) is right))
    with page.expect_navigation():
        page.get_by_role("button", name="Check it").click()


def pick(page: Page, value: str) -> None:
    """Pick one of the radio buttons of a question."""
    page.locator(f"input[name=answer_0][value='{value}']").check()
