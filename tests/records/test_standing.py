"""The state of a skill, its reason in one sentence, and how many tries would count today."""

import re
from datetime import timedelta

import pytest
from records_cast import RULES
from skill_days import CURED, GELLED, MONDAY, on, stood, tried

from trainer.records.running import NEVER_TRIED, Progress
from trainer.records.standing import STATES, standing, tries_that_count

SET = tried((0, "rrr"), (1, "rr"), (3, "rw"), (7, "r"))
CURED_DUE = (CURED.due - MONDAY).days if CURED.due else 0

WHERE = {
    "Not started": (NEVER_TRIED, 0),
    "Started": (tried((0, "w")), 0),
    "Gelled": (GELLED, 0),
    "Set": (SET, 7),
    "Cured": (CURED, 14),
    "Due again": (CURED, CURED_DUE + 1),
}


@pytest.mark.parametrize("state", STATES)
def test_each_state_is_reached(state: str) -> None:
    """In the words that people read."""
    progress, day = WHERE[state]
    assert stood(progress, day).state == state


@pytest.mark.parametrize(
    ("progress", "day"),
    [
        *WHERE.values(),
        (tried((0, "rr")), 0),
        (tried((0, "rrr"), (1, "r")), 1),
        (tried((0, "rrr"), (1, "ww")), 1),
        (tried((0, "rrr"), (1, "ww"), (3, "w")), 3),
        (tried((16, "w"), before=CURED), 16),
        (tried((16, "w"), (17, "r"), before=CURED), 17),
    ],
)
def test_a_reason_is_one_sentence_without_figures(progress: Progress, day: int) -> None:
    """Nobody is told where in a run they stand."""
    reason = stood(progress, day).reason
    assert reason.endswith(".")
    assert reason.count(".") == 1
    assert not re.search(r"\d|%", reason)
    assert len(reason.split()) <= 25


def test_a_reason_tells_what_is_lacking() -> None:
    """Another one for each way to stand there."""
    reasons = {
        stood(progress, day).reason
        for progress, day in (
            (tried((0, "w")), 0),
            (tried((0, "r")), 0),
            (GELLED, 0),
            (tried((0, "rrr"), (1, "r")), 1),
            (tried((0, "rrr"), (1, "ww")), 1),
            (tried((0, "rrr"), (1, "ww"), (3, "w")), 3),
            (SET, 7),
            (tried((0, "rrr"), (1, "rr"), (3, "rr"), (7, "rr")), 7),
            (CURED, CURED_DUE + 1),
            (tried((16, "w"), before=CURED), 16),
            (tried((16, "w"), (17, "r"), before=CURED), 17),
        )
    }
    assert len(reasons) == 11


def test_it_is_due_from_its_date_on() -> None:
    """Overdue on the day after it."""
    told = [(stood(GELLED, day).is_due, stood(GELLED, day).is_overdue) for day in (0, 1, 2)]
    assert told == [(False, False), (True, False), (True, True)]


def test_before_it_has_gelled_it_has_no_date() -> None:
    """Any day will do."""
    assert stood(tried((0, "rr")), 0).next_date is None
    assert not stood(tried((0, "rr")), 9).is_due


def test_a_clock_set_back_a_little_changes_no_state() -> None:
    """It is as the last try left it."""
    assert standing(CURED, on(14) - timedelta(days=6), RULES).state == "Cured"


@pytest.mark.parametrize(
    ("progress", "day", "count"),
    [
        (NEVER_TRIED, 0, 3),
        (tried((0, "rr")), 0, 1),
        (GELLED, 0, 0),
        (GELLED, 1, 2),
        (tried((0, "rrr"), (1, "r")), 1, 1),
        (tried((0, "rrr"), (1, "rr")), 1, 0),
        (tried((0, "rrr"), (1, "rr")), 2, 0),
        (tried((0, "rrr"), (1, "rr")), 3, 2),
        (CURED, 14, 0),
        (CURED, CURED_DUE, 1),
        (tried((CURED_DUE, "r"), before=CURED), CURED_DUE, 0),
        (tried((16, "w"), before=CURED), 16, 0),
        (tried((16, "w"), before=CURED), 17, 1),
    ],
)
def test_so_many_tries_would_count(progress: Progress, day: int, count: int) -> None:
    """What Practice offers, and no more."""
    assert tries_that_count(progress, on(day), RULES) == count
