"""What the givens of a question may be, and what their calculation accepts."""

import pytest
from lessons_specimens import RESIN, edited, line_of, mistake_in, question

from trainer.lessons.draws import Draw, OneOf, Steps

LENGTH = "given.length_m = {from = 2.4, to = 6.0, step = 0.4}"
TAPE = """\
id = "shed-tape"
title = "Tape for the shed"
calculate = "tape_length"
ask = "The joints measure {joints_m}; {meeting_ends} ends meet another. How much tape?"
skill = "tape-length"
line = "tape"
unit = "m"
tolerance = "0.02 m"
given.joints_m = [3.6, 2.4]
given.meeting_ends = 2
"""


def drawn(given: str) -> Draw:
    """Return what the length of the joint may be, when it is given so."""
    return question(edited(RESIN, LENGTH, f"given.length_m = {given}")).givens["length_m"]


@pytest.mark.parametrize(
    ("given", "draw"),
    [
        ("3.6", OneOf((3.6,))),
        ("[2.4, 3.6]", OneOf((2.4, 3.6))),
        ("{one_of = [2.4, 3.6]}", OneOf((2.4, 3.6))),
        ("{from = 2.4, to = 6.0, step = 0.1}", Steps(2.4, 6.0, 0.1)),
    ],
)
def test_a_given_is_fixed_picked_or_stepped(given: str, draw: Draw) -> None:
    """A number, a list to pick from, or a range in whole steps."""
    assert drawn(given) == draw


@pytest.mark.parametrize(
    ("given", "values"),
    [
        ("[3.6, 2.4]", ((3.6, 2.4),)),
        ("[[3.6, 2.4], [1.2]]", ((3.6, 2.4), (1.2,))),
        ("{one_of = [[3.6, 2.4], [1.2]]}", ((3.6, 2.4), (1.2,))),
    ],
)
def test_a_list_can_be_a_given(given: str, values: tuple[tuple[float, ...], ...]) -> None:
    """Joints are a list themselves: a flat one is fixed, several are picked from."""
    read = question(edited(TAPE, "[3.6, 2.4]", given)).givens["joints_m"]
    values_read = read.values if isinstance(read, OneOf) else ()
    assert tuple(tuple(each) for each in values_read) == values


@pytest.mark.parametrize("given", ["{from = 2, to = 4, step = 1}", "[2.0, 3.0, 4.0]", "[2, 3, 4]"])
def test_counts_are_whole(given: str) -> None:
    """Ends are counted, so that nobody is asked about 3.0 of them."""
    read = question(edited(TAPE, "meeting_ends = 2", f"meeting_ends = {given}"))
    values = [read.givens["meeting_ends"].value(step) for step in range(3)]
    assert [repr(value) for value in values] == ["2", "3", "4"]


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ("{from = 2.4, to = 6.1, step = 0.4}", "The range isn't a whole number of steps."),
        ("{from = 6.0, to = 2.4, step = 0.4}", "A range runs upwards in steps above zero."),
        ("{from = 2.4, to = 6.0, step = 0}", "A range runs upwards in steps above zero."),
        ("{from = 2.4, to = 6.0, step = -0.4}", "A range runs upwards in steps above zero."),
        ("{from = 2.4, to = inf, step = 0.4}", "A range runs upwards in steps above zero."),
        ("{from = nan, to = 6.0, step = 0.4}", "A range runs upwards in steps above zero."),
        ("{from = 2.4, to = 6.0, step = inf}", "A range runs upwards in steps above zero."),
        ("{from = 2.4, to = 6.0}", "A range has from, to and step."),
        ("{from = 2.4, to = 6.0, stop = 0.4}", "A range has from, to and step."),
        ('{from = 2.4, to = "6 m", step = 0.4}', "From, to and step are numbers."),
        ("{from = 2.4, to = 6.0, step = true}", "From, to and step are numbers."),
    ],
)
def test_a_range_that_is_none_is_refused(given: str, sentence: str) -> None:
    """It stops at the line of the given, with a range that would do."""
    text = edited(RESIN, LENGTH, f"given.length_m = {given}")
    mistake = mistake_in(text)
    assert (mistake.sentence, mistake.line) == (sentence, line_of(text, "given.length_m"))
    assert mistake.mend == "Write {from = 2.4, to = 6.0, step = 0.1}."


@pytest.mark.parametrize("given", ["[]", "{one_of = []}", "{one_of = 3}"])
def test_there_must_be_something_to_pick_from(given: str) -> None:
    """An empty list draws nothing."""
    mistake = mistake_in(edited(RESIN, LENGTH, f"given.length_m = {given}"))
    assert mistake.sentence == "There is nothing to pick from."


@pytest.mark.parametrize(
    ("given", "figure"),
    [
        ("{from = 400, to = 600, step = 10}", "600 m"),
        ("{from = 0, to = 6, step = 1}", "0 m"),
        ("[2.4, 501]", "501 m"),
        ("501", "501 m"),
    ],
)
def test_what_the_calculation_refuses_is_refused(given: str, figure: str) -> None:
    """A bandage is 0.05 to 500 m long; the sentence carries the figure and both ends."""
    text = edited(RESIN, LENGTH, f"given.length_m = {given}")
    mistake = mistake_in(text)
    assert mistake.sentence == (
        f"The length of bandage is {figure}; it must lie between 0.05 and 500 m."
    )
    assert (mistake.line, mistake.text) == (
        line_of(text, "given.length_m"),
        f"given.length_m = {given}",
    )


@pytest.mark.parametrize(
    ("text", "old", "new"),
    [
        (RESIN, LENGTH, 'given.length_m = "3.6 m"'),
        (RESIN, LENGTH, "given.length_m = true"),
        (RESIN, LENGTH, "given.length_m = [[2.4], [3.6]]"),
        (TAPE, "given.meeting_ends = 2", "given.meeting_ends = 2.5"),
        (TAPE, "given.joints_m = [3.6, 2.4]", "given.joints_m = 3.6"),
        (TAPE, "given.joints_m = [3.6, 2.4]", "given.joints_m = [[3.6, 200]]"),
    ],
)
def test_a_given_of_another_shape_is_refused(text: str, old: str, new: str) -> None:
    """A text is no figure, half an end is no count, and one joint is a list of one."""
    wrong = edited(text, old, new)
    assert (mistake_in(wrong).line, mistake_in(wrong).text) == (line_of(wrong, new), new)


def test_an_unknown_parameter_gets_a_guess() -> None:
    """The calculation's own names are offered."""
    text = edited(RESIN, "given.ratio", "given.ration")
    mistake = mistake_in(text)
    assert mistake.sentence == "'resin_for_bandage' takes no 'ration'."
    assert (mistake.mend, mistake.line) == ("Did you mean 'ratio'?", line_of(text, "given.ration"))


def test_every_parameter_without_a_default_is_given() -> None:
    """The length has none, so that a question without it can't be worked."""
    mistake = mistake_in(edited(RESIN, LENGTH + "\n", ""))
    assert mistake.sentence == "'length_m' isn't given."
    assert mistake.mend == "Add a line given.length_m = …"
