"""Words for templates: one-liners over the engine's printing and the installation's zone."""

from datetime import date, datetime

from flask import Flask

from trainer.engine import show
from trainer.engine.plans.lists import clock
from trainer.engine.units import counted
from trainer.web.installation import here
from trainer.web.working_lines import plain_working

#: Days that have a name of their own, by how long ago they are.
_NEAR = {-1: "tomorrow", 0: "today", 1: "yesterday"}


def init_app(app: Flask) -> None:
    """Register them."""
    app.add_template_filter(show, "quantity")
    app.add_template_filter(day, "day")
    app.add_template_filter(in_full, "in_full")
    app.add_template_filter(counted, "counted")
    app.add_template_filter(clock, "clock")
    app.add_template_filter(plain_working, "plain_working")


def day(when: date | datetime | None) -> str:
    """Return a date as people say it: today, tomorrow, 3 November, 3 November 2025."""
    if when is None:
        return "not yet"
    date_ = here().date_of(when) if isinstance(when, datetime) else when
    today = here().today()
    ago = (today - date_).days
    if ago in _NEAR:
        return _NEAR[ago]
    words = in_full(date_)
    return words.removesuffix(f" {today.year}")


def in_full(when: date) -> str:
    """Return a date with its month and year, for a sentence in which "today" can't stand."""
    return f"{when.day} {when:%B} {when.year}"
