"""A season before its start, as tests set it and let people fade."""

from datetime import timedelta

from web_begun import gelled
from web_bench import Bench
from web_cast import KIT, NOOR, Who
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
