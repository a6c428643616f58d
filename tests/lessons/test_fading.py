"""Full working, last line yours, last two yours, all yours."""

import pytest
from lessons_specimens import CHAIN, RESIN, on_four_metres, question

from trainer.lessons import Variant
from trainer.lessons.fading import ALL_YOURS, FULL_WORKING, LAST_TWO_YOURS, LAST_YOURS
from trainer.lessons.marks import Typed, mark_answers

MARGIN = """\
id = "deck-margin"
title = "Is the deck dry?"
calculate = "surface_margin"
ask = "The air has {air_c} and {humidity_percent}, the deck {surface_c}. How much warmer is it?"
skill = "dew"
line = "margin"
unit = "°C"
tolerance = "0.5 °C"
given.air_c = [5, 10]
given.humidity_percent = [71, 80]
given.surface_c = [9, 12]
"""
#: The lines of the working up to what is asked: net resin is 337.5 g, 10 % on top 371.25 g.
LINES = [line.key for line in on_four_metres(RESIN).working().lines]


def test_a_sum_that_is_all_theirs_shows_nothing() -> None:
    """It asks what the author asks."""
    drawn = on_four_metres(CHAIN)
    assert drawn.stage == ALL_YOURS
    assert drawn.asks == drawn.question.asks
    assert (drawn.lines_shown(), drawn.worked_beside(), drawn.all_theirs) == ((), None, True)


@pytest.mark.parametrize("text", [RESIN, CHAIN])
def test_the_last_line_is_theirs_first(text: str) -> None:
    """All lines above it are worked on their own numbers."""
    drawn = on_four_metres(text).at_stage(LAST_YOURS)
    assert [ask.line for ask in drawn.asks] == ["resin"]
    assert [line.key for line in drawn.lines_shown()] == LINES[:-1]
    assert not drawn.all_theirs


def test_then_the_last_two() -> None:
    """A line that nobody asks otherwise is asked in the words of the working."""
    drawn = on_four_metres(RESIN).at_stage(LAST_TWO_YOURS)
    assert [ask.line for ask in drawn.asks] == LINES[-2:]
    net, resin = drawn.asks
    assert (net.unit, net.skill) == ("kg", "resin-for-mat")
    assert net.words
    assert resin.words
    assert [line.key for line in drawn.lines_shown()] == LINES[:-2]


def test_each_of_the_two_is_marked_with_errors_carried_on() -> None:
    """Net resin of 0.4 kg is wrong; with 10 % on top, 440 g is right for that figure."""
    drawn = on_four_metres(RESIN).at_stage(LAST_TWO_YOURS)
    typed = {"net": Typed("0.4", "kg"), "resin": Typed("440", "g")}
    mark = mark_answers(drawn, typed, try_no=1)
    assert [answer.verdict for answer in mark.answers] == ["wrong", "carried"]
    typed = {"net": Typed("0.3375", "kg"), "resin": Typed("371", "g")}
    assert mark_answers(drawn, typed, try_no=1).right


@pytest.mark.parametrize(("dew", "verdict"), [("0", "right"), ("0.6", "right"), ("0.8", "wrong")])
def test_a_temperature_on_the_way_may_be_half_a_degree_off(dew: str, verdict: str) -> None:
    """At 5 °C and 71 % it dews at 0.17 °C, of which one per cent is nothing that anybody reads."""
    givens = {"air_c": 5, "humidity_percent": 71, "surface_c": 9}
    drawn = Variant(question(MARGIN), "seed", 0, givens).at_stage(LAST_TWO_YOURS)
    typed = {"air.dew": Typed(dew, "°C"), "margin": Typed("8.8", "°C")}
    answer, _ = mark_answers(drawn, typed, try_no=1).answers
    assert (answer.verdict, answer.tolerance) == (verdict, "0.5 °C")


def test_a_slip_is_named_at_the_last_line_too() -> None:
    """The allowance left out is 337.5 g, however much is shown."""
    drawn = on_four_metres(RESIN).at_stage(LAST_YOURS)
    mark = mark_answers(drawn, {"resin": Typed("337.5", "g")}, try_no=1)
    assert mark.slip is not None
    assert mark.slip.name == "the allowance left out"
    assert mark.may_retry


def test_at_first_the_full_working_stands_beside_it_on_other_numbers() -> None:
    """Never on their own, which would leave nothing to find."""
    drawn = on_four_metres(RESIN).at_stage(FULL_WORKING)
    beside = drawn.worked_beside()
    assert beside is not None
    assert beside.key != drawn.key
    assert [ask.line for ask in drawn.asks] == ["resin"]
    assert not drawn.all_theirs


def test_a_stage_changes_no_number() -> None:
    """What is sealed in a form draws the same again."""
    drawn = on_four_metres(RESIN)
    for stage in (FULL_WORKING, LAST_YOURS, LAST_TWO_YOURS):
        assert drawn.at_stage(stage).key == drawn.key
        assert drawn.at_stage(stage).at_stage(ALL_YOURS) == drawn
