"""What one try says about each skill that it asked for."""

from dataclasses import replace
from datetime import UTC, date, datetime

from records_cast import ANSWER, TRY

from trainer.records.skill_tries import SkillTold, told_by

MASS = replace(ANSWER, line="mass", skill="dose", verdict="right")
VOLUME = replace(ANSWER, line="volume", skill="syringe", verdict="right")
CHAIN = replace(TRY, local_date=date(2026, 3, 9), unaided=True, right=True, answers=(MASS, VOLUME))


def test_each_skill_that_was_asked_has_its_say() -> None:
    """Once, on the local date, with whether it was unaided."""
    right = SkillTold(date(2026, 3, 9), right=True, unaided=True)
    assert told_by(CHAIN) == {"dose": right, "syringe": right}


def test_another_skill_s_line_doesn_t_matter() -> None:
    """The mass was wrong; the volume was right for their own figure."""
    lines = (replace(MASS, verdict="wrong"), replace(VOLUME, verdict="carried"))
    told = told_by(replace(CHAIN, right=False, answers=lines))
    assert (told["dose"].right, told["syringe"].right) == (False, True)


def test_a_skill_asked_twice_is_right_when_both_lines_are() -> None:
    """One wrong line is enough."""
    lines = (MASS, replace(VOLUME, skill="dose", verdict="wrong"))
    assert not told_by(replace(CHAIN, answers=lines))["dose"].right


def test_a_second_try_says_nothing() -> None:
    """It comes after a cue."""
    assert told_by(replace(CHAIN, try_no=2)) == {}


def test_practice_on_a_roof_says_nothing() -> None:
    """It never counts for a skill's state."""
    assert told_by(replace(CHAIN, roof="digest")) == {}


def test_help_is_told() -> None:
    """The running rule leaves such a try out."""
    assert not told_by(replace(CHAIN, unaided=False))["dose"].unaided


def test_what_was_picked_is_told_as_such() -> None:
    """A run takes only a few of those."""
    assert told_by(replace(CHAIN, kind="choose"))["dose"].numberless


def test_no_try_counts_for_a_day_that_nowhere_has_come() -> None:
    """A phone a year ahead: the latest date anywhere, when it came in, is a day on from UTC's."""
    ahead = replace(
        CHAIN, sent_at=datetime(2026, 3, 9, 12, tzinfo=UTC), local_date=date(2027, 3, 9)
    )
    assert told_by(ahead)["dose"].day == date(2026, 3, 10)
