"""The running rule, try by try: what counts, when it is looked at, and what brings it back."""

from dataclasses import replace
from datetime import date

import pytest
from records_cast import RULES
from skills_cast import CURED, DAY_0, NEARLY, due, on, state, tries, went

from trainer.records.reviews import card_after
from trainer.records.running import NEVER_TRIED, after, on_calendar
from trainer.records.skill_tries import SkillTold

# The first meeting.


def test_without_a_try_it_is_not_started() -> None:
    """Nothing has happened, and there is no date."""
    assert state(went(), 0) == "Not started"
    assert due(went()) is None


@pytest.mark.parametrize("letter", ["r", "w", "R", "W", "n", "x", "N", "X"])
def test_any_try_starts_it(letter: str) -> None:
    """Right or wrong, with help or without, with numbers or without."""
    assert state(went((0, letter)), 0) == "Started"


def test_three_rights_in_a_row_gel_it() -> None:
    """Two don't."""
    assert state(went((0, "rr")), 0) == "Started"
    assert state(went((0, "rrr")), 0) == "Gelled"


def test_a_wrong_one_begins_the_row_anew() -> None:
    """Two rights, a wrong, and two more are no three in a row."""
    assert state(went((0, "rrwrr")), 0) == "Started"
    assert state(went((0, "rrwrrr")), 0) == "Gelled"


def test_tries_with_help_are_no_part_of_the_row() -> None:
    """They neither lengthen it nor break it, right or wrong."""
    assert state(went((0, "rrR")), 0) == "Started"
    assert state(went((0, "rWrRr")), 0) == "Gelled"


def test_help_alone_never_gels_it() -> None:
    """However often it is right."""
    assert state(went((0, "R" * 20), (5, "R" * 20)), 5) == "Started"


def test_the_first_meeting_may_take_several_days() -> None:
    """A right on each of three days is three in a row; its date counts from the last."""
    progress = went((-9, "r"), (-4, "r"), (0, "r"))
    assert state(progress, 0) == "Gelled"
    assert due(progress) == 1


def test_there_is_no_date_before_it_has_gelled() -> None:
    """Any day will do."""
    assert due(went((0, "rwrr"))) is None


def test_tries_without_numbers_count_towards_the_row() -> None:
    """Such a try counts like another."""
    assert state(went((0, "nrn")), 0) == "Gelled"
    assert state(went((0, "rrxr")), 0) == "Started"


# What counts.


def test_nothing_counts_on_the_day_of_gelling() -> None:
    """Neither before it gels nor after, right or wrong."""
    progress = went((0, "wwrrrwwwrr"))
    assert (progress.counted, progress.wrong, progress.runs) == (0, 0, 1)
    assert (state(progress, 0), due(progress)) == ("Gelled", 1)


def test_two_tries_count_on_a_day_when_it_is_due() -> None:
    """The third and those after it don't."""
    assert went((0, "rrr"), (1, "r")).counted == 1
    assert went((0, "rrr"), (1, "rr")).counted == 2
    assert went((0, "rrr"), (1, "rrr")) == replace(went((0, "rrr"), (1, "rr")), day_tries=3)
    late = went((0, "rrr"), (1, "rrwww"))
    assert (late.counted, late.wrong) == (2, 0)


def test_none_count_on_a_day_when_it_is_not_due() -> None:
    """Day 2 lies between the dates: practice there changes neither count nor date."""
    before, progress = went((0, "rrr"), (1, "rr")), went((0, "rrr"), (1, "rr"), (2, "rrww"))
    assert (progress.counted, progress.wrong) == (before.counted, before.wrong)
    assert due(progress) == due(before) == 3


def test_a_late_day_counts_as_well() -> None:
    """Due on day 1 and practised on day 5: it was due as that day began."""
    progress = went((0, "rrr"), (5, "rr"))
    assert (progress.counted, due(progress)) == (2, 7)


def test_the_second_try_counts_though_the_first_moved_the_date() -> None:
    """What decides is whether it was due as the day began."""
    progress = went((0, "rrr"), (1, "w"))
    assert due(progress) == 3
    assert went((1, "r"), since=progress).counted == 2


@pytest.mark.parametrize(("letters", "counted"), [("Rr", 1), ("Wrr", 1), ("RRr", 0), ("rRr", 1)])
def test_a_try_with_help_takes_a_place_on_its_day(letters: str, counted: int) -> None:
    """The working that was shown after it helps whatever follows."""
    assert went((0, "rrr"), (1, letters)).counted == counted


def test_a_try_with_help_counts_for_nothing_else() -> None:
    """A day of help alone leaves count and date as they were, and the memory model unasked."""
    before = went((0, "rrr"))
    progress = went((1, "RW"), since=before)
    assert (progress.counted, due(progress), progress.card) == (0, 1, before.card)


# The gaps.


@pytest.mark.parametrize("letters", ["r", "rw", "wr"])
def test_the_gaps_grow_with_each_counted_day(letters: str) -> None:
    """1, 2, 4, 7 and 7 days: due on days 1, 3, 7, 14 and 21, be it right or wrong."""
    progress, dates = went((0, "rrr")), []
    for day in (1, 3, 7, 14):
        dates.append(due(progress))
        # Not more than two wrong, which would end the run.
        progress = went((day, letters if progress.wrong < 2 else "r"), since=progress)
    assert [*dates, due(progress)] == [1, 3, 7, 14, 21]


def test_the_last_gap_repeats() -> None:
    """With one try on each due day the sixth counted one is followed by seven days too."""
    progress = went((0, "rrr"), *((day, "r") for day in (1, 3, 7, 14, 21, 28)))
    assert (progress.counted, due(progress)) == (6, 35)


def test_a_gap_starts_from_the_counted_day() -> None:
    """Ten days late, the next date is two days after, not in the past."""
    assert due(went((0, "rrr"), (11, "r"))) == 13


def test_a_day_counts_once_for_the_gaps() -> None:
    """Two tries of a day are one step, and what comes after them none."""
    assert due(went((0, "rrr"), (1, "rr"))) == due(went((0, "rrr"), (1, "rrrrr"))) == 3


# Set.


def test_a_right_on_three_later_days_sets_it() -> None:
    """On two it is still Gelled."""
    assert state(went((0, "rrr"), (1, "rr"), (3, "rr")), 3) == "Gelled"
    assert state(went((0, "rrr"), (1, "rr"), (3, "rr"), (7, "r")), 7) == "Set"


def test_a_day_with_a_right_and_a_wrong_counts_for_set() -> None:
    """One right on each day is asked for, whichever of the two it was."""
    assert state(went((0, "rrr"), (1, "rw"), (3, "wr"), (7, "r")), 7) == "Set"


def test_a_day_of_wrongs_alone_does_not_count_for_set() -> None:
    """Its right must be on another day."""
    assert state(went((0, "rrr"), (1, "w"), (3, "r"), (7, "r")), 7) == "Gelled"
    assert state(went((0, "rrr"), (1, "w"), (3, "r"), (7, "r"), (14, "r")), 14) == "Set"


def test_only_counted_rights_count_for_set() -> None:
    """A right on a day when it wasn't due, or as a day's third try, is none."""
    assert state(went((0, "rrr"), (1, "r"), (2, "r"), (3, "r"), (4, "r")), 4) == "Gelled"
    assert state(went((0, "rrr"), (1, "r"), (3, "r"), (7, "RRr")), 7) == "Gelled"


# The looks.


def counted(letters: str, first: int = 1) -> list[tuple[int, str]]:
    """Return days on which these tries count, two a day; each is seven days after the last."""
    pairs = [letters[place : place + 2] for place in range(0, len(letters), 2)]
    return [(first + 7 * number, pair) for number, pair in enumerate(pairs)]


def run(letters: str) -> str:
    """Return what somebody has reached, having gelled, after these counted tries."""
    days = counted(letters)
    progress = went((0, "rrr"), *days)
    assert progress.runs > 1 or progress.counted == len(letters)
    return f"{progress.reached}, run {progress.runs}"


@pytest.mark.parametrize(
    ("letters", "reached"),
    [
        ("r" * 6, "set, run 1"),
        ("r" * 7, "cured, run 1"),
        # One wrong, wherever it was: nothing is looked at before the twelfth.
        ("w" + "r" * 6, "set, run 1"),
        ("r" * 6 + "w", "set, run 1"),
        ("w" + "r" * 7, "set, run 1"),
        ("r" * 6 + "w" + "r" * 4, "set, run 1"),
        ("r" * 6 + "w" + "r" * 5, "cured, run 1"),
        ("w" + "r" * 10, "set, run 1"),
        ("w" + "r" * 11, "cured, run 1"),
        # Two wrong: the sixteenth.
        ("rrwrrrrrrrrw", "set, run 1"),
        ("ww" + "r" * 10, "set, run 1"),
        ("ww" + "r" * 13, "set, run 1"),
        ("ww" + "r" * 14, "cured, run 1"),
        ("w" + "r" * 10 + "w" + "rrr", "set, run 1"),
        ("w" + "r" * 10 + "w" + "rrrr", "cured, run 1"),
        # A third ends it at once, be it the third try or the sixteenth.
        ("www", "gelled, run 2"),
        ("wrrwrrw", "gelled, run 2"),
        ("ww" + "r" * 9 + "w", "gelled, run 2"),
        ("ww" + "r" * 13 + "w", "gelled, run 2"),
    ],
)
def test_it_is_looked_at_after_seven_twelve_and_sixteen(letters: str, reached: str) -> None:
    """None, one and two may be wrong; between the looks nothing is decided but the third wrong."""
    assert run(letters) == reached


def test_sixteen_that_do_not_pass_begin_the_run_anew() -> None:
    """By rules that let a run live with four wrong, the sixteenth try ends it all the same."""
    rules = replace(RULES, run_ends_at_wrong=5)
    letters = "www" + "r" * 13
    told = [each for day in [(0, "rrr"), *counted(letters)] for each in tries(*day)]
    before, progress = after(NEVER_TRIED, told[:-1], rules), after(NEVER_TRIED, told, rules)
    assert (before.runs, before.counted) == (1, 15)
    assert (progress.reached, progress.runs, progress.counted) == ("gelled", 2, 0)
    assert due(progress) == counted(letters)[-1][0] + 1


# A run that fails.

FAILED = ((0, "rrr"), (1, "rw"), (3, "rr"), (7, "rw"), (14, "w"))


def test_a_third_wrong_begins_the_run_anew_at_gelled() -> None:
    """Set before, it is Gelled now, counts from nothing, and is due one day on."""
    assert state(went(*FAILED[:-1]), 7) == "Set"
    progress = went(*FAILED)
    assert (state(progress, 14), due(progress)) == ("Gelled", 15)
    assert (progress.counted, progress.wrong, progress.right_days, progress.runs) == (0, 0, 0, 2)


def test_a_failed_run_closes_its_day() -> None:
    """The second try of that day doesn't count for the new run."""
    assert went((14, "rr"), since=went(*FAILED)).counted == 0


def test_a_new_run_takes_all_its_days_anew() -> None:
    """Right twice on days 1, 3 and 7 and once on day 14 after it, and not sooner."""
    progress = went((15, "rr"), (17, "rr"), (21, "rr"), since=went(*FAILED))
    assert (state(progress, 21), due(progress)) == ("Set", 28)
    assert state(went((28, "r"), since=progress), 28) == "Cured"


def test_what_has_gelled_never_comes_undone() -> None:
    """However often a run fails: it is no first meeting again."""
    progress = went((0, "rrr"), *((day, "wwww") for day in range(1, 60)))
    assert state(progress, 60) == "Gelled"
    assert progress.runs > 10


# Without numbers.


def test_three_counted_tries_of_a_run_may_be_without_numbers() -> None:
    """A fourth is as if it had not been: its place on the day stays free."""
    progress = went((0, "rrr"), (1, "nn"), (3, "n"))
    assert (progress.counted, progress.numberless) == (3, 3)
    assert went((3, "nnnr"), since=progress).counted == 4
    assert went((3, "xxxr"), since=progress).wrong == 0


def test_tries_without_numbers_never_cure_it_alone() -> None:
    """A hundred days of them leave three counted."""
    progress = went((0, "nnn"), *((day, "nn") for day in range(1, 101)))
    assert (progress.counted, state(progress, 60)) == (3, "Gelled")


def test_a_cure_takes_four_with_numbers() -> None:
    """Three without and four with are seven."""
    days = ((0, "nnn"), (1, "nr"), (3, "nr"), (7, "nr"))
    assert state(went(*days), 7) == "Set"
    assert state(went(*days, (14, "n")), 14) == "Set"
    assert state(went(*days, (14, "nr")), 14) == "Cured"


def test_a_wrong_one_without_numbers_counts_as_wrong() -> None:
    """While there is room for it."""
    assert went((0, "rrr"), (1, "x")).wrong == 1


def test_a_new_run_has_room_for_them_again() -> None:
    """The three belong to the run, not to the skill."""
    progress = went((0, "rrr"), (1, "nx"), (3, "xr"), (7, "w"))
    assert (progress.runs, progress.numberless) == (2, 0)
    assert went((8, "nn"), since=progress).numberless == 2


def test_the_model_does_not_hear_what_is_left_out() -> None:
    """Its card stays, and so does the first place: a right after it is the day's outcome."""
    full = went((0, "rrr"), (1, "nn"), (3, "n"))
    assert went((7, "nx"), since=full).card == full.card
    cured = went(*CURED)
    assert went((60, "n"), since=cured).card == cured.card


def test_a_right_without_numbers_does_not_restore_a_cured_one() -> None:
    """Picking is easier than finding; a wrong pick is a wrong try."""
    cured = went(*CURED)
    late = (cured.due or DAY_0).toordinal() - DAY_0.toordinal() + 5
    assert state(went((late, "n"), since=cured), late) == "Due again"
    assert state(went((late, "nr"), since=cured), late) == "Cured"
    assert state(went((15, "x"), since=cured), 15) == "Due again"


# Cured, and Due again.


def test_right_each_time_and_when_due_it_is_cured_on_day_14() -> None:
    """Two weeks after it gelled, with the first try of that day."""
    assert state(went(*NEARLY), 7) == "Set"
    assert state(went(*CURED), 14) == "Cured"


@pytest.mark.parametrize("each_day", [2, 3, 12])
def test_nobody_is_cured_sooner(each_day: int) -> None:
    """Right many times on every single day, it is day 14 too."""
    progress, days = went((0, "rrr")), []
    for day in range(1, 20):
        progress = went((day, "r" * each_day), since=progress)
        days += [day] if progress.reached == "cured" else []
    assert days[0] == 14


def test_from_cured_on_the_model_decides_the_date() -> None:
    """The same outcomes told to the model alone, one a day, give the same date."""
    card = None
    for day in (0, 1, 3, 7, 14):
        card = card_after(card, on(day), RULES, right=True)
    assert card is not None
    assert went(*CURED).due == card.due
    late = went((40, "r"), since=went(*CURED))
    assert late.due == card_after(card, on(40), RULES, right=True).due


def test_it_is_cured_up_to_its_date_and_due_again_after_it() -> None:
    """On the day itself it is due and still Cured."""
    progress = went(*CURED)
    last = due(progress) or 0
    assert last > 14
    assert [state(progress, day) for day in (last - 1, last, last + 1)] == [
        *("Cured", "Cured"),
        "Due again",
    ]


def test_a_try_on_the_date_itself_is_not_late() -> None:
    """A try with help leaves it Cured there, and Due again on the day after."""
    last = due(went(*CURED)) or 0
    assert state(went((last, "R"), since=went(*CURED)), last) == "Cured"
    assert state(went((last + 1, "R"), since=went(*CURED)), last + 1) == "Due again"


def test_one_right_restores_what_only_fell_due() -> None:
    """The next date lies ahead again."""
    progress = went(*CURED)
    late = (due(progress) or 0) + 30
    restored = went((late, "r"), since=progress)
    assert (state(progress, late), state(restored, late)) == ("Due again", "Cured")
    assert (due(restored) or 0) > late


def test_help_does_not_restore_it() -> None:
    """Nor does it make it worse; the right without help after it does, as the first unaided one."""
    progress = went(*CURED)
    late = (due(progress) or 0) + 1
    helped = went((late, "RW"), since=progress)
    assert state(helped, late) == "Due again"
    assert state(went((late, "r"), since=helped), late) == "Cured"


@pytest.mark.parametrize("day", [14, 15, 20, 300])
@pytest.mark.parametrize("before", ["", "r", "rrrr", "RR"])
def test_any_wrong_try_makes_a_cured_one_due_again(day: int, before: str) -> None:
    """On the day of the cure or later, due or not, first of its day or fifth."""
    assert state(went((day, before + "w"), since=went(*CURED)), day) == "Due again"


def test_a_wrong_try_with_help_does_not() -> None:
    """Only unaided tries say anything."""
    assert state(went((15, "W"), since=went(*CURED)), 15) == "Cured"


def test_rights_on_two_days_restore_it_after_a_wrong_one() -> None:
    """One day isn't enough, however many rights it has."""
    wrong = went((16, "w"), since=went(*CURED))
    one = went((17, "rrrr"), since=wrong)
    two = went((18, "r"), since=one)
    assert [state(each, 18) for each in (wrong, one, two)] == ["Due again", "Due again", "Cured"]


def test_a_right_on_the_day_of_the_wrong_one_helps_nothing() -> None:
    """The working has just been read: two other days are still asked for, before it or after."""
    assert state(went((16, "wrr"), (17, "r"), since=went(*CURED)), 17) == "Due again"
    assert state(went((16, "rw"), (17, "r"), since=went(*CURED)), 17) == "Due again"
    assert state(went((16, "rw"), (17, "r"), (18, "r"), since=went(*CURED)), 18) == "Cured"


def test_another_wrong_one_asks_for_two_days_again() -> None:
    """One day was done; it is done anew."""
    progress = went((16, "w"), (17, "r"), (18, "w"), (19, "r"), since=went(*CURED))
    assert state(progress, 19) == "Due again"
    assert state(went((20, "r"), since=progress), 20) == "Cured"


def test_a_wrong_one_after_the_date_has_passed_asks_for_two_days() -> None:
    """What had only fallen due has now been wrong."""
    progress = went((400, "w"), (401, "r"), since=went(*CURED))
    assert state(progress, 401) == "Due again"
    assert state(went((402, "r"), since=progress), 402) == "Cured"


def test_a_date_that_passes_while_one_day_is_owed_asks_for_no_more() -> None:
    """One right brings it back, long after."""
    progress = went((16, "w"), (17, "r"), since=went(*CURED))
    assert state(went((500, "r"), since=progress), 500) == "Cured"


def test_a_date_that_passes_takes_nothing_off_what_is_owed() -> None:
    """Wrong once and then left for a year: two days are asked for, as before."""
    progress = went((16, "w"), (400, "r"), since=went(*CURED))
    assert state(progress, 400) == "Due again"
    assert state(went((401, "r"), since=progress), 401) == "Cured"


def test_a_wrong_one_that_was_not_the_first_brings_the_date_to_tomorrow() -> None:
    """The model heard the right before it, and would have waited longer."""
    progress = went((15, "rw"), since=went(*CURED))
    assert due(progress) == 16
    assert (went((15, "r"), since=went(*CURED)).due or DAY_0) > on(16)


def test_a_wrong_one_never_puts_the_date_off() -> None:
    """Where the date had come already, it stays."""
    cured = went(*CURED)
    first = went((15, "w"), since=cured)
    assert went((15, "w"), since=first).due == min(first.due or DAY_0, on(16))


def test_what_was_cured_is_never_gelled_again() -> None:
    """Whatever goes wrong, it is Due again, and comes back by two days."""
    progress = went(*CURED, *((day, "wwww") for day in range(15, 60)))
    assert state(progress, 60) == "Due again"
    assert state(went((61, "r"), (62, "r"), since=progress), 62) == "Cured"


def test_the_model_hears_one_outcome_a_day() -> None:
    """The first unaided try; what comes after it on that day changes nothing in its card."""
    first = went((15, "w"), since=went(*CURED)).card
    assert went((15, "wrrr"), since=went(*CURED)).card == first
    assert went((15, "Rwrr"), since=went(*CURED)).card == first


# Clocks.


def test_a_try_sent_later_counts_on_the_last_ones_day() -> None:
    """It was typed three days before, and comes after: dates don't run backwards."""
    progress = went((0, "rrr"), (1, "r"))
    assert went((-2, "r"), since=progress) == went((1, "r"), since=progress)
    assert went((0, "rr"), (-6, "r"), since=NEVER_TRIED) == went((0, "rrr"))


def test_a_week_back_is_believed_and_no_more() -> None:
    """Seven days: sent later. Eight: a clock was wrong, and the dates move back with it."""
    progress = went((0, "rrr"))
    assert due(on_calendar(progress, on(-7), RULES)) == 1
    assert due(on_calendar(progress, on(-8), RULES)) == -7


def test_a_clock_set_back_keeps_nobody_waiting() -> None:
    """Gelled in 2030 by a wrong clock: on the right day it is due on the next, and goes on."""
    wrong = went((1400, "rrr"))
    assert (state(wrong, 0), due(on_calendar(wrong, on(0), RULES))) == ("Gelled", 1)
    assert went((0, "r"), (1, "rr"), (3, "rr"), since=wrong).counted == 4


def test_a_clock_set_back_moves_a_cured_one_too() -> None:
    """Its date and its card come as far back as its last try."""
    wrong = went(*((day + 1400, letters) for day, letters in CURED))
    progress, plain = on_calendar(wrong, on(14), RULES), went(*CURED)
    assert (progress.due, progress.card) == (plain.due, plain.card)


def test_a_clock_that_changed_nothing_moves_nothing() -> None:
    """A try with help in 2030 leaves date and card of the right days as they were."""
    plain = went((0, "rrr"), (1, "rr"))
    wrong = went((1400, "R"), since=plain)
    progress = on_calendar(wrong, on(2), RULES)
    assert (progress.day, progress.due, progress.card) == (on(2), plain.due, plain.card)


def test_all_that_a_wrong_clock_brought_about_moves() -> None:
    """Gelled in 2030 and helped there two days later: back on day 0, it was due yesterday."""
    wrong = went((1400, "rrr"), (1402, "R"))
    progress = on_calendar(wrong, on(0), RULES)
    assert progress.card is not None
    assert (progress.day, progress.card.heard, due(progress)) == (on(0), on(-2), -1)


@pytest.mark.parametrize("day", [date.min, date(1969, 12, 31), date(9000, 1, 2), date.max])
def test_a_clock_set_to_nonsense_is_no_fault(day: date) -> None:
    """At either end of the calendar tries are taken, and what comes after them too."""
    told = SkillTold(day, right=True, unaided=True)
    progress = after(went((0, "rrr")), [told] * 3, RULES)
    assert after(progress, tries(1, "rr"), RULES).reached
    assert after(NEVER_TRIED, [told] * 3, RULES).reached == "gelled"


# One step at a time.


def test_a_history_may_be_folded_in_any_pieces() -> None:
    """In one go, or cut anywhere: it comes to the same."""
    days = (*CURED, (16, "w"), (17, "Rr"), (400, "nwr"), (401, "r"))
    told = [each for day in days for each in tries(*day)]
    whole = after(NEVER_TRIED, told, RULES)
    for cut in range(len(told) + 1):
        assert after(after(NEVER_TRIED, told[:cut], RULES), told[cut:], RULES) == whole


def test_no_tries_change_nothing() -> None:
    """What somebody has come to stays."""
    assert went(since=went(*CURED)) == went(*CURED)
