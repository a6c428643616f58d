"""Drivers: planning, teaching, carrying a figure, and what they refuse to send."""

import math

import pytest
from engine_cast import doublings, paint_for_edges, side_of_square

from trainer.engine import (
    NotAFigure,
    answer,
    catalyst_by_mass,
    drive,
    line_keys,
    resin_for_bandage,
    work,
)
from trainer.engine.drivers import example_working


def test_planning_takes_the_answer() -> None:
    """Two coats on 4 m of a 50 mm band at 0.3 kg/m² and a tenth more: 0.132 kg."""
    assert answer(paint_for_edges((3.0, 1.0), 2)) == pytest.approx(0.132)


def test_teaching_keeps_every_line() -> None:
    """4 m, 0.2 m², 0.12 kg, 0.132 kg: each with its key, in order."""
    worked = work(paint_for_edges((3.0, 1.0), 2))
    assert [line.key for line in worked.lines] == ["edges", "area", "paint", "order"]
    assert list(worked.figures.values()) == pytest.approx([4, 0.2, 0.12, 0.132])
    assert worked.value == worked.figures["order"]


def test_a_line_is_found_by_its_key() -> None:
    """A key that the working hasn't is a KeyError."""
    worked = work(paint_for_edges((3.0, 1.0), 2))
    assert worked.line("area").words == "area to paint"
    with pytest.raises(KeyError, match="volume"):
        worked.line("volume")


def test_a_carried_figure_goes_on_from_its_line() -> None:
    """Somebody who had 2 m² for 0.2 m² gets ten times the paint, by their own figure."""
    worked = work(paint_for_edges((3.0, 1.0), 2), {"area": 2.0})
    assert worked.line("area").value == pytest.approx(0.2)
    assert worked.figures == pytest.approx({"edges": 4, "area": 2, "paint": 1.2, "order": 1.32})


def test_a_figure_carried_at_the_last_line_is_the_answer() -> None:
    """What is sent at the last line is what the calculation returns."""
    assert work(paint_for_edges((3.0, 1.0), 2), {"order": 9.0}).value == 9.0


def test_figures_for_other_lines_are_left_alone() -> None:
    """A key that this calculation hasn't changes nothing; no figures, no change."""
    right = work(paint_for_edges((3.0, 1.0), 2))
    assert work(paint_for_edges((3.0, 1.0), 2), {"volume": 2.0}) == right
    assert work(paint_for_edges((3.0, 1.0), 2), {}) == right


@pytest.mark.parametrize("sent", [math.nan, math.inf, -math.inf])
def test_a_driver_sends_only_finite_figures(sent: float) -> None:
    """NaN and infinity stop at the door, with the words of the line they were meant for."""
    with pytest.raises(NotAFigure, match="mass of catalyst"):
        drive(catalyst_by_mass(1.32), lambda _: sent)
    with pytest.raises(NotAFigure):
        work(catalyst_by_mass(1.32), {"volume": sent})


def test_a_line_that_comes_to_infinity_is_refused() -> None:
    """A working that overflows is no working, even where a finite figure is carried on from it."""
    huge = {"length_m": 1e300, "width_mm": 1e300}
    with pytest.raises(NotAFigure, match="area of the bandage is inf"):
        answer(resin_for_bandage.inside(**huge))
    with pytest.raises(NotAFigure, match="area of the bandage is inf"):
        work(resin_for_bandage.inside(**huge), {"bandage.area": 0.3})


def test_a_carried_figure_that_has_no_root_is_refused() -> None:
    """The root of an area below zero is no real number, and is refused as no figure."""
    with pytest.raises(NotAFigure, match="The side is"):
        work(side_of_square(9, 5), {"left": -4.0})


def test_what_the_calculation_raises_comes_through() -> None:
    """A driver hides nothing: the logarithm of nothing is for its caller to catch."""
    with pytest.raises(ValueError, match="math domain"):
        work(doublings(10, 20), {"growth": 0.0})


def test_a_working_can_be_compared() -> None:
    """The same figures give equal workings, so that a page can be worked again later."""
    assert work(resin_for_bandage(4)) == work(resin_for_bandage(4))
    assert work(resin_for_bandage(4)) != work(resin_for_bandage(5))


def test_line_keys_are_read_without_figures() -> None:
    """Whoever writes a question can look up the lines before any figure is drawn."""
    assert line_keys(paint_for_edges) == ("edges", "area", "paint", "order")


def test_an_example_is_worked_on_figures_from_the_middle() -> None:
    """The middle of 0.1 to 50 m is 25.05 m, of one to three coats two."""
    parts = example_working(paint_for_edges).line("paint").parts
    assert parts["coats"].value == 2
    assert example_working(paint_for_edges).figures["edges"] == pytest.approx(25.05)
