"""The state of a skill on a day: its word, its reason, its date, and what would still be asked."""

import re
from dataclasses import replace

import pytest
from records_cast import RULES
from skills_cast import CURED, NEARLY, due, on, went

from trainer.records.running import REACHED, Progress
from trainer.records.standing import STATES, Standing, standing, tries_that_count

SET = NEARLY
FAILED = ((0, "rrr"), (1, "rw"), (3, "rw"), (7, "w"))
#: Histories in which each state comes about, with what is said of it and a day to look at it.
TOLD = [
    ((), 0, "Not started", "No question on it has been answered yet."),
    (
        ((0, "w"),),
        0,
        "Started",
        "It was tried, and is still to be right without help, several times in a row.",
    ),
    (
        ((0, "rr"),),
        0,
        "Started",
        "It was right without help, but not yet often enough in a row.",
    ),
    (
        ((0, "rrr"),),
        0,
        "Gelled",
        "It was right several times in a row; later days will show whether it stays.",
    ),
    (
        ((0, "rrr"), (1, "w")),
        1,
        "Gelled",
        "It was right several times in a row, but has not been right on a later day yet.",
    ),
    (
        ((0, "rrr"), (1, "rw")),
        1,
        "Gelled",
        "It was right on a later day, and more later days are to come.",
    ),
    (
        FAILED,
        7,
        "Gelled",
        "There were too many wrong answers on later days, so the later days begin afresh.",
    ),
    (
        (*FAILED, (8, "w")),
        8,
        "Gelled",
        "The later days began afresh, and it has not been right on one of the new ones yet.",
    ),
    (
        SET,
        7,
        "Set",
        "It was right on several later days, and a few more right answers will cure it.",
    ),
    (
        ((0, "rrr"), (1, "wr"), (3, "r"), (7, "r")),
        7,
        "Set",
        "It was right on several later days, but wrong answers among them make it take longer.",
    ),
    (
        CURED,
        14,
        "Cured",
        "It was right on many days, with time in between, and holds until its date is over.",
    ),
    (
        CURED,
        400,
        "Due again",
        "It was Cured and its date has passed; the next right answer brings it back.",
    ),
    (
        (*CURED, (15, "w")),
        15,
        "Due again",
        "It was wrong after it had Cured; right answers on other days bring it back.",
    ),
    (
        (*CURED, (15, "w"), (16, "r")),
        16,
        "Due again",
        "It was wrong after it had Cured; a right answer on one more day brings it back.",
    ),
]
History = tuple[tuple[int, str], ...]


def stands(history: History, day: int) -> Standing:
    """Return where somebody stands on a day after this history."""
    return standing(went(*history), on(day), RULES)


def asked(history: History, day: int) -> int:
    """Return how many tries would still be looked at."""
    return tries_that_count(went(*history), on(day), RULES)


# State and reason.


@pytest.mark.parametrize(("history", "day", "state", "reason"), TOLD)
def test_each_state_has_its_word_and_its_reason(
    history: History, day: int, state: str, reason: str
) -> None:
    """What is said is true of what was done."""
    told = stands(history, day)
    assert (told.state, told.reason) == (state, reason)


def test_all_states_are_told_above() -> None:
    """None is without a reason that a test has seen."""
    assert {state for _, _, state, _ in TOLD} == set(STATES)


def test_reasons_are_one_sentence_without_figures() -> None:
    """Whatever somebody has come to: no digit, one full stop, at most 25 words."""
    every = [
        Progress(reached=reached, in_a_row=rights, runs=runs, counted=counted, wrong=wrong,
                 right_days=rights, owed=owed, slipped=slipped)
        for reached in ("", *REACHED)
        for rights in (0, 1, 3)
        for runs in (1, 2)
        for counted in (0, 4)
        for wrong in (0, 2)
        for owed in (0, 1, 2)
        for slipped in (False, True)
    ]  # fmt: skip
    reasons = {standing(each, on(0), RULES).reason for each in every}
    assert len(reasons) == len(TOLD)
    for reason in reasons:
        assert re.fullmatch(r"[A-Z][^.0-9%]*\.", reason)
        assert len(reason.split()) <= 25


# Its date.


def test_there_is_no_date_until_it_has_gelled() -> None:
    """It isn't due and can't be overdue."""
    for history in [(), ((0, "rr"),)]:
        told = stands(history, 30)
        assert (told.next_date, told.is_due, told.is_overdue) == (None, False, False)


def test_it_is_due_from_its_date_and_overdue_from_the_day_after() -> None:
    """Gelled on day 0, its date is day 1."""
    told = [stands(((0, "rrr"),), day) for day in (0, 1, 2)]
    assert {each.next_date for each in told} == {on(1)}
    assert [each.is_due for each in told] == [False, True, True]
    assert [each.is_overdue for each in told] == [False, False, True]


def test_the_run_is_there_to_sort_by() -> None:
    """How many tries have counted."""
    assert stands(SET, 7).counted == 6


def test_a_day_before_the_last_try_changes_nothing() -> None:
    """It is as that try left it, as long as no clock was wrong."""
    assert stands((*CURED, (15, "w")), 10).state == "Due again"
    assert stands(CURED, 8).state == "Cured"


def test_a_wrong_clock_is_seen_through() -> None:
    """Gelled by a clock in 2030, it is due the day after today, not in four years."""
    told = stands(((1400, "rrr"),), 0)
    assert (told.state, told.next_date) == ("Gelled", on(1))


# What would still be looked at.


@pytest.mark.parametrize(("letters", "lacking"), [("", 3), ("r", 2), ("rr", 1), ("rrw", 3)])
def test_before_it_has_gelled_what_is_lacking_in_the_row(letters: str, lacking: int) -> None:
    """On any day: that one, and a later one."""
    history = ((0, letters),) if letters else ()
    assert [asked(history, 0), asked(history, 9)] == [lacking, lacking]


def test_none_on_the_day_of_gelling_and_before_its_date() -> None:
    """Day 2 lies between the dates."""
    assert asked(((0, "rrr"),), 0) == 0
    assert asked(((0, "rrr"), (1, "rr")), 2) == 0


def test_two_on_a_day_when_it_is_due_and_on_later_ones() -> None:
    """Until it is practised."""
    assert [asked(((0, "rrr"),), day) for day in (1, 2, 50)] == [2, 2, 2]


@pytest.mark.parametrize(
    ("letters", "left"), [("r", 1), ("R", 1), ("rr", 0), ("rR", 0), ("rrr", 0)]
)
def test_what_is_left_of_a_due_day(letters: str, left: int) -> None:
    """A try with help has taken a place."""
    assert asked(((0, "rrr"), (1, letters)), 1) == left


def test_a_left_out_try_takes_no_place() -> None:
    """The run has no room for a fourth without numbers."""
    assert asked(((0, "rrr"), (1, "nn"), (3, "n"), (7, "n")), 7) == 2


def test_none_on_a_day_on_which_a_run_has_failed() -> None:
    """It goes on tomorrow."""
    assert [asked(FAILED, 7), asked(FAILED, 8)] == [0, 2]


def test_a_cured_one_is_asked_once_when_it_is_due() -> None:
    """Not before its date, and not again on a day that has been heard."""
    last = due(went(*CURED)) or 0
    assert [asked(CURED, day) for day in (14, last - 1, last, last + 9)] == [0, 0, 1, 1]
    assert asked((*CURED, (last, "r")), last) == 0


def test_one_that_was_wrong_is_asked_once_a_day_until_it_is_back() -> None:
    """Not again on the day of the wrong one."""
    wrong = (*CURED, (15, "w"))
    assert [asked(wrong, 15), asked(wrong, 16)] == [0, 1]
    assert asked((*wrong, (16, "r")), 17) == 1
    assert asked((*wrong, (16, "r"), (17, "r")), 18) == 0


def test_what_it_promises_is_what_counts() -> None:
    """Where so many tries are looked at, as many more change what is counted, and one more not."""
    before = went((0, "rrr"), (1, "rr"))
    wanted = tries_that_count(before, on(3), RULES)
    enough, more = (
        went((3, "r" * wanted), since=before),
        went((3, "r" * wanted + "w"), since=before),
    )
    assert enough.counted == before.counted + wanted
    # The working fades by it all the same.
    more = replace(more, fading=enough.fading)
    assert replace(more, day_tries=0) == replace(enough, day_tries=0)
