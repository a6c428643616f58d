"""Which stage of the fading somebody is at, from their tries alone."""

from datetime import date, timedelta

import pytest

from trainer.records.fading import SkillTry, stage_after

MONDAY = date(2026, 3, 2)
LAST = 3


def tries(course: str, *, day: int = 0) -> list[SkillTry]:
    """Return tries on one day: r and w with help, R and W without."""
    on = MONDAY + timedelta(days=day)
    return [SkillTry(each in "rR", each.isupper(), on) for each in course]


@pytest.mark.parametrize(
    ("course", "stage"),
    [
        ("", 0),
        ("r", 1),
        ("rr", 2),
        ("rrr", 3),
        ("rrrr", 3),
        ("w", 0),
        ("ww", 0),
        ("rrw", 2),
        ("rrww", 1),
        ("rrwww", 1),
        ("rrwwww", 0),
        ("rrwrw", 3),
        ("rrrWW", 2),
    ],
)
def test_one_on_after_a_right_try_and_one_back_after_two_wrong_running(
    course: str, stage: int
) -> None:
    """A single wrong one leaves it as it is; two more wrong lead back once more."""
    assert stage_after(tries(course), last=LAST) == stage


def test_two_rights_alone_at_the_first_meeting_skip_the_fading() -> None:
    """Whoever can do it isn't led by the hand."""
    assert stage_after(tries("RR"), last=LAST) == LAST
    assert stage_after(tries("RwR"), last=LAST) == LAST
    assert stage_after(tries("R"), last=LAST) == 1


def test_on_a_later_day_each_leads_one_on() -> None:
    """The first meeting is over."""
    assert stage_after(tries("R") + tries("R", day=1), last=LAST) == 2
    assert stage_after(tries("w") + tries("RR", day=1), last=LAST) == 2


def test_who_skipped_it_can_still_be_led_back() -> None:
    """Two wrong running bring two lines back."""
    assert stage_after(tries("RR") + tries("WW", day=1), last=LAST) == LAST - 1
