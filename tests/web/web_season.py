"""A season before its start, as tests set it and let people fade."""

from datetime import timedelta

from web_begun import gelled
from web_bench import Bench
from web_cast import KIT, NOOR, Who
from web_kinds import answer_right
from web_page import Page
from web_visitor import Visitor

WINTER = 120
"""Days in which nobody answers anything."""


def set_start(visitor: Visitor, starts: str) -> Page:
    """Send the office's form with a day."""
    return visitor.send(visitor.open("/season"), starts=starts)


def in_days(bench: Bench, days: int) -> str:
    """A day so many days from the clock's, as a browser sends it."""
    return (bench.clock.now.date() + timedelta(days=days)).isoformat()


def wintered(bench: Bench, who: Who = NOOR, starts_in: int = 20) -> Visitor:
    """Return somebody who has forgotten over a winter, with the season soon to start."""
    gelled(bench, who)
    bench.clock.wait(days=WINTER)
    set_start(bench.visit(KIT), in_days(bench, starts_in))
    return bench.visit(who)


def card(page: Page) -> str:
    """What the card on top says."""
    return page.main.all(class_="first")[0].words


def begin(visitor: Visitor) -> Page:
    """Press the button, and return the question that it leads to."""
    page = visitor.open("/season")
    form = page.form_to("/season/begin")
    return visitor.go_on(visitor.post(form.action, form.fields))


def sat(bench: Bench, visitor: Visitor) -> Page:
    """Sit the open sitting to its end, all right, and return the page there."""
    page = begin(visitor)
    while not page.path.endswith("/end"):
        mark = answer_right(bench, visitor, page)
        page = visitor.open(mark.main.all("a", class_="primary")[0]["href"])
    return page


def states(page: Page) -> list[str]:
    """Where each sitting stands, in order."""
    rows = page.main.all("ol", class_="questions")[0].all("li")
    return [row.all(class_="row-states")[0].words for row in rows]
