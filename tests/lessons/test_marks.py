"""The mark of an answer: right, wrong, a slip, carried on, or out of the safe band.

All on 4 m of joint under 450 g/m²: 135 g of glass, 371.25 g of resin with the allowance.
"""

import pytest
from lessons_specimens import CHAIN, RESIN, edited, on_four_metres, question

from trainer.engine import OtherKind, Unclear
from trainer.lessons.calculate import Variant
from trainer.lessons.marks import Mark, Typed, mark_answers

GLASS, RESIN_LINE = "bandage.glass", "resin"


def marked(typed: str, *, unit: str | None = None, try_no: int = 1, text: str = RESIN) -> Mark:
    """Return the mark of one figure typed for the resin."""
    return mark_answers(on_four_metres(text), {RESIN_LINE: Typed(typed, unit)}, try_no)


def chained(glass: str, resin: str, drawn: Variant | None = None) -> Mark:
    """Return the mark of both figures of the chain."""
    typed = {GLASS: Typed(glass), RESIN_LINE: Typed(resin)}
    return mark_answers(drawn or on_four_metres(CHAIN), typed, 1)


@pytest.mark.parametrize(
    ("typed", "unit"),
    [
        ("371.25", None),
        ("371 g", None),
        ("0.371 kg", None),
        ("0.371", "kg"),
        ("364", None),  # 2 % below is 363.825
        ("378", None),  # 2 % above is 378.675
        ("13.1 oz", None),  # 371.4 g
    ],
)
def test_a_right_answer_is_right_in_any_unit(typed: str, unit: str | None) -> None:
    """Within 2 %, in the asked unit or another of its kind, typed or picked beside the field."""
    mark = marked(typed, unit=unit)
    assert mark.right
    assert [answer.verdict for answer in mark.answers] == ["right"]
    assert (mark.slip, mark.wrong_line, mark.may_retry, mark.finished) == (None, None, False, True)


@pytest.mark.parametrize("typed", ["363", "379", "371 kg", "0", "3.7125"])
def test_a_wrong_answer_gets_the_working(typed: str) -> None:
    """Wrong at random: no slip, no second try, and the run on these numbers is over."""
    mark = marked(typed)
    assert not mark.right
    assert (mark.slip, mark.wrong_line) == (None, RESIN_LINE)
    assert (mark.may_retry, mark.finished) == (False, True)
    assert mark.working.figures[RESIN_LINE] == pytest.approx(0.37125)


def test_a_mark_says_how_it_was_read() -> None:
    """What was typed, what was understood, and what was right, all in the asked unit."""
    (answer,) = marked(" 0,4 kg ").answers
    assert answer.typed == " 0,4 kg "
    assert answer.read_as.replace("\u00a0", " ") == "0.4 kg"
    assert answer.read_value == pytest.approx(400)
    assert [answer.expected, answer.right] == pytest.approx([371.25, 371.25])


@pytest.mark.parametrize(
    ("typed", "name", "cue"),
    [
        ("4950", "the whole roll, not the strip", "Which width did you put in?"),  # × 1000 ÷ 75
        ("337.5", "the allowance left out", "What stays on the roller?"),
        ("0.34 kg", "the allowance left out", "What stays on the roller?"),
    ],
)
def test_one_slip_is_named_with_its_cue_and_one_retry(typed: str, name: str, cue: str) -> None:
    """The run isn't over: the same numbers are tried once more before the working."""
    mark = marked(typed)
    assert not mark.right
    assert mark.slip is not None
    assert (mark.slip.name, mark.slip.cue) == (name, cue)
    assert (mark.may_retry, mark.finished) == (True, False)


def test_after_a_second_try_comes_the_working() -> None:
    """The same slip again, or another: no third try."""
    for typed in ("4950", "337.5"):
        mark = marked(typed, try_no=2)
        assert mark.slip is not None
        assert (mark.may_retry, mark.finished) == (False, True)


def test_two_matching_slips_are_not_named() -> None:
    """Twice the width and twice the length lead to the same figure: 742.5 g."""
    text = edited(RESIN, "given.width_mm = 1000", "given.width_mm = {times = 2}")
    text = edited(text, 'answer = "net"', "given.length_m = {times = 2}")
    mark = marked("742.5", text=text)
    assert (mark.right, mark.slip, mark.may_retry, mark.finished) == (False, None, False, True)


def test_a_right_chain_is_right_line_by_line() -> None:
    """Both figures, each rounded as people round."""
    mark = chained("135", "371")
    assert mark.right
    assert [answer.skill for answer in mark.answers] == ["bandage-glass", "resin-for-mat"]


def test_a_carried_error_is_charged_once() -> None:
    """150 g of glass is wrong; 412.5 g of resin is right for it, and the mark says so."""
    mark = chained("150", "412.5")
    glass, resin = mark.answers
    assert (glass.verdict, resin.verdict) == ("wrong", "carried")
    assert [resin.expected, resin.right] == pytest.approx([412.5, 371.25])
    assert (mark.wrong_line, mark.right, mark.started_afresh) == (GLASS, False, False)


def test_the_right_figure_after_a_wrong_one_is_right() -> None:
    """Somebody who finds 371 g from a wrong line above has still found it."""
    assert [answer.verdict for answer in chained("150", "371").answers] == ["wrong", "right"]


def test_a_rounded_figure_is_not_carried() -> None:
    """137 g is right within 2 %, so that the resin is expected from the unrounded 135 g."""
    mark = chained("137", "371")
    assert mark.right
    assert mark.answers[1].expected == pytest.approx(371.25)


def test_outside_the_safe_band_is_always_wrong() -> None:
    """Twice the glass carried on is twice the resin, more than one and a half times the right."""
    mark = chained("270", "742.5")
    assert [answer.verdict for answer in mark.answers] == ["wrong", "wrong"]
    assert mark.answers[1].expected == pytest.approx(742.5)


def test_inside_the_safe_band_is_carried() -> None:
    """1.4 times the glass is 519.75 g of resin, still below 556.875."""
    assert [answer.verdict for answer in chained("189", "519.75").answers] == ["wrong", "carried"]


def test_a_slip_is_named_at_the_first_wrong_line() -> None:
    """The whole roll's glass is 1800 g; what follows from it isn't named."""
    mark = chained("1800", "337.5")
    assert mark.slip is not None
    assert (mark.slip.name, mark.wrong_line) == ("the whole roll, not the strip", GLASS)
    assert mark.may_retry


def test_a_slip_below_a_right_line_is_named_there() -> None:
    """The allowance left out shows at the bucket, with the glass right."""
    mark = chained("135", "337.5")
    assert mark.slip is not None
    assert (mark.slip.name, mark.wrong_line) == ("the allowance left out", RESIN_LINE)


def test_a_slip_of_another_line_is_not_named() -> None:
    """The glass of the whole roll typed for the resin is no slip that belongs there."""
    mark = chained("135", "1800")
    assert (mark.slip, mark.wrong_line, mark.finished) == (None, RESIN_LINE, True)


def test_a_slip_starts_from_the_persons_own_figures_above() -> None:
    """With the glass right, the width can't have been misread any more at the resin."""
    drawn = on_four_metres(edited(CHAIN, 'on = "bandage.glass"\n', ""))
    mark = chained("135", "4950", drawn)
    assert (mark.slip, mark.wrong_line) == (None, RESIN_LINE)
    named = chained("1800", "371", drawn).slip
    assert named is not None
    assert named.name == "the whole roll, not the strip"


def test_on_a_second_try_the_lines_above_are_right() -> None:
    """The whole roll's resin can't be the slip of somebody whose glass was right before."""
    drawn = on_four_metres(edited(CHAIN, 'on = "bandage.glass"\n', ""))
    again = {name: {RESIN_LINE: Typed(name)} for name in ("4950", "337.5")}
    slips = {
        name: mark_answers(drawn, typed, 2, only=RESIN_LINE).slip for name, typed in again.items()
    }
    assert slips["4950"] is None
    assert slips["337.5"] == drawn.question.slips[1]


def test_a_second_try_asks_one_line_only() -> None:
    """Only the line that was wrong is marked; those above count as right."""
    mark = mark_answers(on_four_metres(CHAIN), {RESIN_LINE: Typed("371")}, 2, only=RESIN_LINE)
    assert [answer.line for answer in mark.answers] == [RESIN_LINE]
    assert (mark.right, mark.finished, mark.try_no) == (True, True, 2)
    wrong = mark_answers(on_four_metres(CHAIN), {RESIN_LINE: Typed("412.5")}, 2, only=RESIN_LINE)
    assert [answer.verdict for answer in wrong.answers] == ["wrong"]
    assert (wrong.wrong_line, wrong.finished) == (RESIN_LINE, True)


def test_a_figure_that_cant_be_carried_starts_afresh() -> None:
    """Nothing can be worked on no glass, so that the resin is marked by the right figure."""
    mark = chained("0", "371")
    assert [answer.verdict for answer in mark.answers] == ["wrong", "right"]
    assert mark.started_afresh


@pytest.mark.parametrize("typed", ["", "about 370", "1,250", "370-380", "-371", "371 gal"])
def test_what_cant_be_read_is_not_marked(typed: str) -> None:
    """It is asked about; no try is spent on it."""
    with pytest.raises(Unclear):
        marked(typed)


@pytest.mark.parametrize(("typed", "unit"), [("0.37 L", None), ("0.37", "L"), ("371 mm", None)])
def test_a_unit_of_another_kind_is_asked_about(typed: str, unit: str | None) -> None:
    """Litres are no kilograms, and whoever types them meant something."""
    with pytest.raises(OtherKind):
        marked(typed, unit=unit)


def test_one_unclear_line_keeps_all_from_being_marked() -> None:
    """A chain is marked whole or not at all."""
    with pytest.raises(Unclear):
        chained("135", "some")


@pytest.mark.parametrize(("typed", "right"), [("3", True), ("3 rolls", True), ("2.9", False)])
def test_a_count_is_exact(typed: str, *, right: bool) -> None:
    """52 m of tape is three rolls of 20 m, and nothing else."""
    text = """\
id = "shed-rolls"
title = "Rolls for the shed"
calculate = "tape_rolls"
ask = "{joints_m} of joints, {meeting_ends} ends, rolls of {roll_m}. How many rolls?"
skill = "tape-rolls"
line = "rolls"
unit = "rolls"
tolerance = 0
given.joints_m = [51.0]
given.meeting_ends = 20
given.roll_m = 20
"""
    givens = {"joints_m": (51.0,), "meeting_ends": 20, "roll_m": 20}
    rolls = Variant(question(text), "seed", 0, givens)
    assert mark_answers(rolls, {"rolls": Typed(typed)}, 1).right is right
