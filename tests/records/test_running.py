"""How a skill gets from one state to the next, try by try."""

from dataclasses import replace

import pytest
from records_cast import RULES
from skill_days import CURED, GELLED, MONDAY, on, stood, told, tried

from trainer.records.running import NEVER_TRIED, Progress, after

# The first meeting.


def test_three_unaided_rights_in_a_row_gel_it() -> None:
    """Two don't."""
    assert tried((0, "rr")).reached == "started"
    assert GELLED.reached == "gelled"


def test_a_wrong_one_breaks_the_row() -> None:
    """It begins again after it."""
    assert tried((0, "rrwrr")).reached == "started"
    assert tried((0, "rrwrrr")).reached == "gelled"


def test_the_first_meeting_may_take_several_days() -> None:
    """A right on each of three is a row too."""
    assert tried((0, "r"), (5, "r"), (30, "r")).reached == "gelled"


def test_a_try_with_help_only_starts_it() -> None:
    """It is no part of the row, and doesn't break it either."""
    assert tried((0, "RRRR")).reached == "started"
    assert tried((0, "rWrRr")).reached == "gelled"


def test_it_is_due_on_the_day_after_gelling() -> None:
    """The first of the gaps."""
    assert GELLED.due == on(1)


# Which tries count.


def test_nothing_counts_on_the_day_of_gelling() -> None:
    """The run begins with the next date."""
    assert tried((0, "rrrrrrrrrr")).counted == 0


def test_nothing_counts_before_its_day() -> None:
    """On the way from Tuesday's date to Thursday's, Wednesday's tries say nothing."""
    assert tried((0, "rrr"), (1, "rr"), (2, "rrww")).counted == 2


def test_the_first_two_tries_of_a_due_day_count() -> None:
    """No others, right or wrong."""
    progress = tried((0, "rrr"), (1, "rwww"))
    assert (progress.counted, progress.wrong) == (2, 1)


def test_a_day_that_comes_late_counts_as_well() -> None:
    """Due on Tuesday, practised on Saturday: the gap then runs from Saturday."""
    progress = tried((0, "rrr"), (5, "rr"))
    assert (progress.counted, progress.due) == (2, on(5 + 2))


def test_a_try_with_help_takes_a_place_of_the_day() -> None:
    """Its working helps whatever comes after it."""
    assert tried((0, "rrr"), (1, "Rrr")).counted == 1
    assert tried((0, "rrr"), (1, "RRr")).counted == 0


def test_the_gaps_grow_with_each_counted_day() -> None:
    """One, two, four, seven and seven days, right or wrong."""
    progress, day, gaps = GELLED, 0, []
    for marks in ("r", "w", "r", "r", "r", "r"):
        assert progress.due is not None
        due = (progress.due - MONDAY).days
        gaps.append(due - day)
        progress, day = tried((due, marks), before=progress), due
    assert gaps == [1, 2, 4, 7, 7, 7]


# Set, Cured, and a run that fails.


def test_a_right_on_each_of_three_later_days_sets_it() -> None:
    """Two rights on one day are one day."""
    assert tried((0, "rrr"), (1, "rr"), (3, "rr")).reached == "gelled"
    assert tried((0, "rrr"), (1, "rr"), (3, "rw"), (7, "r")).reached == "set"


def test_seven_counted_and_none_wrong_cure_it() -> None:
    """All right and practised when due, that is day 14 after gelling, and no day before."""
    almost = tried((0, "rrr"), (1, "rr"), (3, "rr"), (7, "rr"))
    assert almost.reached == "set"
    assert CURED.reached == "cured"
    assert stood(CURED, 14).state == "Cured"


@pytest.mark.parametrize(
    ("marks", "reached"),
    [
        ("rrrrrrr", "cured"),
        ("wrrrrrr", "set"),
        ("wrrrrrrrrrrr", "cured"),
        ("wrrrrrwrrrrr", "set"),
        ("wrrrrrwrrrrrrrrr", "cured"),
        ("rrrrrrwwrrrrrrrr", "cured"),
    ],
    ids=["none of 7", "one of 7", "one of 12", "two of 12", "two of 16", "late ones of 16"],
)
def test_it_is_looked_at_after_7_12_and_16_tries(marks: str, reached: str) -> None:
    """With none, one and two wrong allowed; in between nothing is decided."""
    assert through(marks).reached == reached


@pytest.mark.parametrize("marks", ["www", "rrrrwrrwrrw", "wrrrrrwrrrrrrrrw"])
def test_a_third_wrong_one_starts_the_run_again(marks: str) -> None:
    """At Gelled, never below, and its next date one day on."""
    progress = through(marks)
    assert (progress.reached, progress.runs) == ("gelled", 2)
    assert (progress.counted, progress.wrong, progress.counted_days) == (0, 0, 0)
    assert progress.day is not None
    assert progress.due == progress.day.fromordinal(progress.day.toordinal() + 1)


def test_a_run_that_fails_closes_its_day() -> None:
    """The tries after it count for nothing, and the next run begins with its date."""
    progress = through("ww")
    assert progress.due is not None
    due = (progress.due - MONDAY).days
    failed = tried((due, "wrr"), before=progress)
    assert (failed.runs, failed.counted) == (2, 0)
    assert tried((due + 1, "rr"), before=failed).counted == 2


# Without numbers.


def test_three_tries_of_a_run_may_be_without_numbers() -> None:
    """The fourth is left out, and takes no place of its day."""
    progress = tried((0, "rrr"), (1, "pp"), (3, "ppr"))
    assert (progress.counted, progress.numberless) == (4, 3)


def test_picking_alone_never_cures() -> None:
    """However often it is right: its three counted tries fall on two days."""
    progress = GELLED
    for day in range(1, 200):
        progress = tried((day, "ppp"), before=progress)
    assert (progress.reached, progress.counted) == ("gelled", 3)


def test_without_numbers_it_may_gel() -> None:
    """At the first meeting picking counts like working: the run comes after it."""
    assert tried((0, "pprp")).reached == "gelled"


def test_picked_right_once_cured_says_nothing_and_picked_wrong_does() -> None:
    """Recognising isn't recalling; not even recognising is a sign."""
    assert tried((20, "p"), before=CURED) == replace(
        CURED, day=on(20), day_tries=0, day_counted=False, day_right=False, day_open=False
    )
    assert stood(tried((20, "q"), before=CURED), 20).state == "Due again"


# Once Cured.


def test_a_wrong_one_makes_it_due_again() -> None:
    """Whatever the day, and however many came before it on the day."""
    assert stood(tried((16, "w"), before=CURED), 16).state == "Due again"
    assert stood(tried((16, "rrrw"), before=CURED), 16).state == "Due again"


def test_rights_on_two_days_bring_it_back() -> None:
    """The first try of each; one on the day of the wrong one is the working just read."""
    slipped = tried((16, "wr"), before=CURED)
    once = tried((17, "rr"), before=slipped)
    twice = tried((18, "r"), before=once)
    assert [stood(each, 18).state for each in (slipped, once, twice)] == [
        "Due again",
        "Due again",
        "Cured",
    ]


def test_one_right_brings_back_what_is_only_overdue() -> None:
    """Nothing had gone wrong."""
    assert CURED.due is not None
    late = (CURED.due - MONDAY).days + 5
    assert stood(CURED, late).state == "Due again"
    assert stood(tried((late, "r"), before=CURED), late).state == "Cured"


def test_on_its_very_date_it_is_due_and_still_cured() -> None:
    """A date has passed when its day is over."""
    assert CURED.due is not None
    day = (CURED.due - MONDAY).days
    assert (stood(CURED, day).state, stood(CURED, day).is_due) == ("Cured", True)
    assert stood(CURED, day + 1).state == "Due again"


def test_wrong_on_its_date_takes_two_days_to_mend() -> None:
    """Overdue or not."""
    assert CURED.due is not None
    late = (CURED.due - MONDAY).days + 5
    slipped = tried((late, "w"), (late + 1, "r"), before=CURED)
    assert stood(slipped, late + 1).state == "Due again"
    assert stood(tried((late + 2, "r"), before=slipped), late + 2).state == "Cured"


def test_the_dates_grow_with_each_right_one() -> None:
    """By the memory model alone, and never beyond the longest gap."""
    progress, gaps = CURED, []
    for _ in range(8):
        assert progress.due is not None
        day = (progress.due - MONDAY).days
        progress = tried((day, "r"), before=progress)
        assert progress.due is not None
        gaps.append((progress.due - MONDAY).days - day)
    assert gaps == sorted(gaps)
    assert gaps[-1] == RULES.longest_gap_days


# Clocks.


def test_a_try_sent_late_counts_on_the_last_one_s_day() -> None:
    """Two days before it, a phone had been without signal; no date runs backwards."""
    progress = tried((0, "rrr"), (3, "r"), (1, "r"))
    assert (progress.day, progress.counted) == (on(3), 2)


def test_a_clock_that_was_months_ahead_is_put_right_by_the_next_try() -> None:
    """Its dates move back with it, so that nothing stands due next year."""
    ahead = tried((0, "rrr"), (400, "rr"))
    back = tried((4, "r"), before=ahead)
    assert back.day == on(4)
    assert back.due is not None
    assert back.due <= on(4 + 2)


@pytest.mark.parametrize("day", [on(0).min, on(0).max])
def test_a_day_at_the_calendar_s_end_does_no_harm(day: object) -> None:
    """A clock of nonsense makes a date, and no fault."""
    each = replace(told(0, "r")[0], day=day)  # type: ignore[arg-type]
    progress = after(NEVER_TRIED, [each] * 9, RULES)
    assert progress.reached == "gelled"
    assert tried((0, "r"), before=progress).day is not None


def through(marks: str) -> Progress:
    """Return the progress after counted tries, two on each due day."""
    progress = GELLED
    for place in range(0, len(marks), 2):
        assert progress.due is not None
        day = (progress.due - MONDAY).days
        progress = tried((day, marks[place : place + 2]), before=progress)
    return progress
