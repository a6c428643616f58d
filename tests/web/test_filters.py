"""Words for templates."""

from collections.abc import Iterator
from datetime import UTC, date, datetime

import pytest
from flask import render_template_string
from web_bench import Bench

from trainer.web.filters import counted, day


@pytest.fixture(autouse=True)
def _request(tiny: Bench) -> Iterator[None]:
    """A request on Monday the 9th of March 2026."""
    with tiny.app.test_request_context("/"):
        yield


@pytest.mark.parametrize(
    ("when", "words"),
    [
        (date(2026, 3, 9), "today"),
        (date(2026, 3, 8), "yesterday"),
        (date(2026, 3, 7), "7 March"),
        (date(2026, 1, 1), "1 January"),
        (date(2025, 12, 31), "31 December 2025"),
        (date(2026, 3, 10), "tomorrow"),
        (date(2026, 3, 11), "11 March"),
        (None, "not yet"),
    ],
)
def test_a_date_is_told_as_people_say_it(when: date | None, words: str) -> None:
    """Today, tomorrow and yesterday; else day and month, and the year where it is another one."""
    assert day(when) == words


def test_an_instant_falls_on_its_local_date() -> None:
    """Half past eleven in the evening UTC is half past midnight here."""
    assert day(datetime(2026, 3, 8, 23, 30, tzinfo=UTC)) == "today"
    assert day(datetime(2026, 3, 8, 22, 30, tzinfo=UTC)) == "yesterday"


@pytest.mark.parametrize(
    ("number", "nouns", "words"),
    [
        (0, ("question",), "0 questions"),
        (1, ("question",), "1 question"),
        (2, ("question",), "2 questions"),
        (1, ("try", "tries"), "1 try"),
        (3, ("try", "tries"), "3 tries"),
    ],
)
def test_a_noun_follows_its_number(number: int, nouns: tuple[str, ...], words: str) -> None:
    """One has the singular, all others the plural."""
    assert counted(number, *nouns) == words


def test_templates_have_them_all() -> None:
    """quantity, day and counted, by these names."""
    text = "{{ 0.5 | quantity('kg') }}; {{ none | day }}; {{ 2 | counted('roll') }}"
    assert render_template_string(text) == "0.5\u00a0kg; not yet; 2 rolls"
