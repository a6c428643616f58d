"""The slips of a question: one thing put wrong in each."""

import pytest
from lessons_specimens import CHAIN, RESIN, edited, line_of, mistake_in, question

from trainer.engine.slips import Change, GivenSlip, LineSlip, OtherMethod, Stopped

WIDTH = "given.width_mm = 1000"


@pytest.mark.parametrize(
    ("written", "change"),
    [
        ("given.width_mm = 1000", GivenSlip("width_mm", value=1000)),
        ("given.width_mm = {times = 0.1}", GivenSlip("width_mm", times=0.1)),
        (
            'given.width_mm = {same_as = "mat_g_per_m2"}',
            GivenSlip("width_mm", same_as="mat_g_per_m2"),
        ),
        ("line.net = {times = 0.5}", LineSlip("net", times=0.5)),
        ('line."bandage.glass" = {times = 0.001}', LineSlip("bandage.glass", times=0.001)),
        ('line.resin = {same_as = "net"}', LineSlip("resin", same_as="net")),
        ('answer = "bandage.glass"', Stopped("bandage.glass")),
        ('calculate = "bandage_glass"', OtherMethod("bandage_glass")),
    ],
)
def test_a_slip_changes_one_thing(written: str, change: Change) -> None:
    """A given, a line, where somebody stopped, or the whole method."""
    slip = question(edited(RESIN, WIDTH, written)).slips[0]
    assert (slip.name, slip.change) == ("the whole roll, not the strip", change)
    assert (slip.cue, slip.on) == ("Which width did you put in?", None)


def test_a_slip_may_belong_to_one_line() -> None:
    """In a chain it is looked for at that line alone."""
    read = question(CHAIN)
    assert [[slip.name for slip in read.slips_at(ask)] for ask in read.asks] == [
        ["the whole roll, not the strip"],
        ["the allowance left out"],
    ]


def test_a_slip_of_no_line_may_show_at_any() -> None:
    """But stopping early is a slip of the last line, where no other is named."""
    text = edited(CHAIN, 'on = "bandage.glass"\n', "")
    text = edited(text, 'on = "resin"\n', "")
    read = question(text)
    assert [len(read.slips_at(ask)) for ask in read.asks] == [1, 2]


@pytest.mark.parametrize(
    "written",
    [
        "given.width_mm = 1000\ngiven.ratio = 2",
        'given.width_mm = 1000\nanswer = "net"',
        'line.net = {times = 2}\ncalculate = "bandage_glass"',
        "line = {net = {times = 2}, resin = {times = 2}}",
        "",
    ],
)
def test_a_slip_that_changes_more_or_nothing_is_refused(written: str) -> None:
    """Two things put wrong can't be told from one another by one figure."""
    text = edited(RESIN, WIDTH, written)
    mistake = mistake_in(text)
    assert mistake.sentence == "The slip 'the whole roll, not the strip' must change one thing."
    assert mistake.mend == "One of given.NAME, line.KEY, answer or calculate."
    assert mistake.line == line_of(text, 'name = "the whole roll')


@pytest.mark.parametrize(
    ("written", "sentence", "mend"),
    [
        ("given.width = 1000", "There is no 'width' here.", "Did you mean 'width_mm'?"),
        (
            'given.width_mm = {same_as = "ration"}',
            "There is no 'ration' here.",
            "Did you mean 'ratio'?",
        ),
        ("line.nett = {times = 2}", "There is no 'nett' here.", "Did you mean 'net'?"),
        ('line.net = {same_as = "resins"}', "There is no 'resins' here.", "Did you mean 'resin'?"),
        ('answer = "nett"', "There is no 'nett' here.", "Did you mean 'net'?"),
        (
            'calculate = "bandage_glas"',
            "There is no calculation 'bandage_glas'.",
            "Did you mean 'bandage_glass'?",
        ),
        (
            "line.net = 2",
            "A slip's line is {times = …} or {same_as = …}.",
            'A key with a dot is quoted: line."bandage.glass" = {times = 0.001}.',
        ),
        (
            "given.width_mm = {of = 2}",
            "A slip's given is a value, times or same_as.",
            "",
        ),
        ("given.width_mm = {times = 0}", "'times' must be a number above zero.", ""),
        ('given.width_mm = {times = "2"}', "'times' must be a number above zero.", ""),
        ("line.net = {times = -1}", "'times' must be a number above zero.", ""),
        (
            'calculate = "tape_rolls"',
            "'tape_rolls' takes 'joints_m', which isn't given here.",
            "Name a calculation that works on the same givens.",
        ),
        ("widht = 1000", "A slip has no key 'widht'.", None),
    ],
)
def test_an_unknown_name_in_a_slip_gets_a_guess(
    written: str, sentence: str, mend: str | None
) -> None:
    """Names of givens, lines and calculations are looked up where they belong."""
    text = edited(RESIN, WIDTH, written)
    mistake = mistake_in(text)
    assert (mistake.sentence, mistake.line) == (sentence, line_of(text, written))
    assert mend is None or mistake.mend == mend


@pytest.mark.parametrize("value", ["0", "-75", '"wide"', "[75]", "true"])
def test_a_misread_given_must_be_workable(value: str) -> None:
    """A slip may leave the range, but no sum can be done on nothing or on a word."""
    text = edited(RESIN, WIDTH, f"given.width_mm = {value}")
    assert mistake_in(text).line == line_of(text, "given.width_mm")


def test_a_slip_belongs_to_an_asked_line() -> None:
    """A line that isn't asked has no field to make it in."""
    text = edited(CHAIN, 'on = "resin"', 'on = "resins"')
    mistake = mistake_in(text)
    assert mistake.sentence == "'resins' isn't asked for."
    assert (mistake.mend, mistake.line) == ("Did you mean 'resin'?", line_of(text, 'on = "resins"'))


@pytest.mark.parametrize("key", ["name", "cue"])
def test_a_slip_has_a_name_and_a_cue(key: str) -> None:
    """What is missing in the second slip is missed at the second slip."""
    start = RESIN.rindex("[[slips]]")
    line = next(each for each in RESIN[start:].splitlines() if each.startswith(key))
    text = edited(RESIN, line + "\n", "")
    mistake = mistake_in(text)
    assert mistake.sentence == f"A slip has no '{key}'."
    assert mistake.line == text[: text.rindex("[[slips]]")].count("\n") + 1


def test_a_mistake_in_the_third_slip_points_there() -> None:
    """Two slips before it set the same key; the third is the one that is wrong."""
    third = '[[slips]]\nname = "half"\ncue = "Half of what?"\ngiven.width_mm = "half"\n'
    text = edited(RESIN, 'answer = "net"', "given.width_mm = 500") + third
    mistake = mistake_in(text)
    assert mistake.line == line_of(text, 'given.width_mm = "half"')
    assert mistake.text == 'given.width_mm = "half"'
