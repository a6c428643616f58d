"""A calculation as a generator: its lines, its checks at the call, smaller ones under it."""

import ast
import math
import re
from collections.abc import Callable, Generator
from pathlib import Path
from typing import Annotated, Any

import pytest
from engine_cast import paint_for_edges
from hypothesis import given, settings
from hypothesis import strategies as st

import trainer.engine
from trainer.engine import (
    METHODS,
    Calculation,
    Given,
    Line,
    Method,
    NoSuch,
    NotAFigure,
    OutOfRange,
    Part,
    Refused,
    answer,
    bare_board,
    calculation,
    catalyst_by_mass,
    drive,
    line_keys,
    method_named,
    resin_for_bandage,
    resin_for_mat,
    tape_length,
    under,
    work,
    working,
)

EVERY_METHOD = pytest.mark.parametrize("method", METHODS.values(), ids=METHODS.keys())
GivensOf = Callable[[Method[...]], st.SearchStrategy[dict[str, Any]]]


def outer(lengths_m: tuple[float, ...]) -> Calculation:
    """Paint under two prefixes, and a line of its own on top."""
    paint = yield from under("north", under("edge", paint_for_edges.inside(lengths_m, 1)))
    return (yield Line("twice", "twice", "kg", 2 * paint, "2 * p", {"p": Part(paint, "kg", "p")}))


def test_a_calculation_yields_lines_and_returns_the_last_one() -> None:
    """1.32 kg at 3 % is 39.6 g, and 39.6 g at 1.17 g/ml is 33.85 ml."""
    worked = work(catalyst_by_mass(1.32, 3))
    assert [line.key for line in worked.lines] == ["mass", "volume"]
    assert worked.lines[0].value == pytest.approx(39.6)
    assert worked.value == worked.lines[-1].value == pytest.approx(39.6 / 1.17)


def test_a_calculation_is_a_generator() -> None:
    """Calling a method works nothing yet: it gives the generator that a driver drives."""
    assert isinstance(catalyst_by_mass(1.32), Generator)


@pytest.mark.parametrize(
    ("call", "error"),
    [
        (lambda: catalyst_by_mass(0.049), OutOfRange),
        (lambda: catalyst_by_mass(1.32, percent=6.1), OutOfRange),
        (lambda: catalyst_by_mass(math.nan), NotAFigure),
        (lambda: catalyst_by_mass(math.inf), NotAFigure),
        (lambda: catalyst_by_mass(-math.inf), NotAFigure),
        (lambda: catalyst_by_mass(10**400), NotAFigure),
        (lambda: catalyst_by_mass("1.32"), NotAFigure),  # type: ignore[arg-type]
        (lambda: catalyst_by_mass(True), NotAFigure),
        (catalyst_by_mass, TypeError),
        (lambda: catalyst_by_mass(1.32, dose=2), TypeError),  # type: ignore[call-arg]
        (lambda: paint_for_edges((2.0, 0.05), 1), OutOfRange),
        (lambda: paint_for_edges((2.0, math.nan), 1), NotAFigure),
        (lambda: paint_for_edges((), 1), NotAFigure),
        (lambda: paint_for_edges((2.0,), 4), OutOfRange),
        (lambda: paint_for_edges((2.0,), 1.5), NotAFigure),  # type: ignore[arg-type]
        (lambda: paint_for_edges((2.0,), 1, "broad"), NoSuch),  # type: ignore[arg-type]
    ],
)
def test_arguments_are_checked_at_the_call(
    call: Callable[[], object], error: type[Exception]
) -> None:
    """What can't be accepted is refused before anything asks for the first line."""
    with pytest.raises(error):
        call()


def test_nothing_is_worked_before_the_first_line_is_asked_for() -> None:
    """Figures that are each in range and refuse each other do so when they are worked."""
    narrow = bare_board(bandage_mm=50, tape_mm=75)
    assert next(narrow).value == pytest.approx(-12.5)
    with pytest.raises(Refused):
        narrow.send(-12.5)


def test_the_edges_of_a_range_are_inside_it() -> None:
    """0.05 kg and 200 kg, 0.5 % and 6 % are accepted."""
    assert answer(catalyst_by_mass(0.05, 0.5, 1.0)) == pytest.approx(0.25)
    assert answer(catalyst_by_mass(200, 6, 1.0)) == pytest.approx(12_000)


def test_inside_accepts_what_lies_outside_the_range() -> None:
    """A roll a metre wide instead of a strip is out of range, and a slip can be worked on it."""
    with pytest.raises(OutOfRange):
        resin_for_bandage(4, width_mm=1000)
    assert answer(resin_for_bandage.inside(4, width_mm=1000)) == pytest.approx(4.95)


@pytest.mark.parametrize("figure", [0, -1, math.nan, math.inf, -math.inf, 10**400, True, "4", None])
def test_inside_refuses_what_no_sum_can_be_done_on(figure: Any) -> None:
    """Not finite, not above zero, or no number at all: refused at the call."""
    with pytest.raises(NotAFigure):
        resin_for_bandage.inside(figure)


def test_inside_accepts_zero_where_the_range_does() -> None:
    """An allowance may be nothing, but not below it."""
    assert answer(resin_for_mat.inside(1000, 2.5, 0)) == pytest.approx(2.5)
    with pytest.raises(NotAFigure, match="zero or more"):
        resin_for_mat.inside(1000, 2.5, -5)


def test_inside_refuses_a_choice_that_nobody_has() -> None:
    """A choice is no figure: an unknown one would silently take another's way."""
    with pytest.raises(NoSuch, match="Did you mean 'wide'"):
        paint_for_edges.inside((2.0,), 1, "wider")  # type: ignore[arg-type]


def test_a_choice_takes_its_own_way() -> None:
    """4 m of a 50 mm band at 0.3 kg/m² is 0.06 kg; a 100 mm band takes twice that."""
    assert answer(paint_for_edges((3.0, 1.0), 1, "narrow", 0)) == pytest.approx(0.06)
    assert answer(paint_for_edges((3.0, 1.0), 1, "wide", 0)) == pytest.approx(0.12)


def test_a_list_may_be_typed_as_a_list_or_a_tuple() -> None:
    """A form makes lists, a calculation names tuples: both come to the same."""
    given_as_list: Any = [3.0, 1.0]
    assert answer(paint_for_edges(given_as_list, 1)) == answer(paint_for_edges((3.0, 1.0), 1))


def test_positions_and_names_are_checked_alike() -> None:
    """A figure is checked whether it was given by its place or by its name."""
    assert answer(catalyst_by_mass(1.32, 3)) == answer(catalyst_by_mass(percent=3, resin_kg=1.32))
    with pytest.raises(OutOfRange, match="catalyst is 7 %"):
        catalyst_by_mass(1.32, 7)


def test_a_prefix_stands_before_the_keys_of_a_smaller_calculation() -> None:
    """Keys become paths, however deep the smaller calculation lies."""
    keys = [line.key for line in work(outer((3.0, 1.0))).lines]
    assert keys == [
        "north.edge.edges",
        "north.edge.area",
        "north.edge.paint",
        "north.edge.order",
        "twice",
    ]


def test_under_forwards_what_is_sent() -> None:
    """Ten times the area, sent at its path, makes ten times the paint all the way up."""
    right = work(outer((3.0, 1.0)))
    carried = work(outer((3.0, 1.0)), {"north.edge.area": 2.0})
    assert right.figures["north.edge.area"] == pytest.approx(0.2)
    assert carried.value == pytest.approx(10 * right.value)
    assert carried.line("north.edge.paint").parts["area"].value == 2.0


def test_under_returns_what_was_sent_at_the_last_line() -> None:
    """The answer of a smaller calculation is the figure that went on from its last line."""
    assert work(outer((3.0, 1.0)), {"north.edge.order": 7.0}).value == 14.0


@EVERY_METHOD
@settings(max_examples=15)
@given(data=st.data())
def test_keys_never_depend_on_the_figures(
    givens_of: GivensOf, method: Method[...], data: st.DataObject
) -> None:
    """Whatever is given, a working has the same lines, or ends early where it is refused."""
    keys: list[str] = []
    refused = False

    def keep(line: Line) -> float:
        keys.append(line.key)
        return line.value

    try:
        drive(method(**data.draw(givens_of(method))), keep)
    except Refused:
        refused = True
    assert tuple(keys) == line_keys(method)[: len(keys)]
    assert refused or len(keys) == len(line_keys(method))


@EVERY_METHOD
def test_every_line_can_be_named_and_drawn(method: Method[...]) -> None:
    """Keys are slugs or paths of slugs and never repeat; words, figures and units are there."""
    worked = work(method.inside(**{n: p.example() for n, p in method.parameters.items()}))
    keys = [line.key for line in worked.lines]
    assert len(set(keys)) == len(keys)
    for line in worked.lines:
        assert re.fullmatch(r"[a-z][a-z0-9_]*(\.[a-z][a-z0-9_]*)*", line.key)
        assert line.words
        assert isinstance(line.value, (int, float))
        assert math.isfinite(line.value)
        assert " = " in line.shown()
        assert all(part.words in line.in_words() for part in line.parts.values())


@EVERY_METHOD
def test_every_calculation_says_what_comes_out_of_what(method: Method[...]) -> None:
    """The first line of its docstring is one sentence that can stand on a page."""
    assert re.fullmatch(r"Return .+[^.]\.", method.title)
    assert len(method.title.split()) <= 25


def test_only_drivers_send() -> None:
    """Nothing in the engine sends into a generator but the drivers, and `under` passing on."""
    senders = set()
    for path in Path(trainer.engine.__file__).parent.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute) and node.attr == "send":
                senders.add(path.stem)
    assert senders == {"drivers", "working"}


def test_a_line_is_drawn_in_words_and_in_figures() -> None:
    """The words of the trade with × and ÷, then the figures put in and what they come to."""
    mass = next(catalyst_by_mass(1.32, 3))
    assert mass.in_words() == "resin × grams in a kilogram × dose by mass ÷ 100"
    assert mass.in_figures().replace("\u00a0", " ") == "1.32 kg × 1000 g/kg × 3 % ÷ 100"
    assert mass.shown().replace("\u00a0", " ") == "1.32 kg × 1000 g/kg × 3 % ÷ 100 = 39.6 g"


def test_what_is_drawn_follows_the_carried_figure() -> None:
    """Somebody who had 45 g sees 45 g in the line below."""
    carried = work(catalyst_by_mass(1.32, 3), {"mass": 45.0})
    assert carried.line("volume").in_figures().replace("\u00a0", " ") == "45 g ÷ 1.17 kg/L"


def test_calculation_registers_under_its_own_name(monkeypatch: pytest.MonkeyPatch) -> None:
    """The decorator is all it takes; the function's name, docstring and type stay."""
    monkeypatch.setattr(working, "METHODS", {})

    @calculation
    def buckets(litres: Annotated[float, Given("resin", "L", 1, 100)]) -> Calculation:
        """Return the buckets."""
        return (yield Line("b", "buckets", "", litres / 5, "l / 5", {"l": Part(litres, "L", "l")}))

    assert list(working.METHODS) == ["buckets"]
    assert method_named("buckets") is buckets
    assert (buckets.name, buckets.title) == ("buckets", "Return the buckets.")
    assert answer(buckets(10)) == 2


def test_the_registry_holds_methods_under_their_names() -> None:
    """Every registered calculation is found by the name it carries."""
    assert all(method_named(name) is method for name, method in METHODS.items())
    assert "paint_for_edges" not in METHODS


def test_an_unknown_calculation_is_refused_with_a_guess() -> None:
    """A slip of the keyboard gets the name that was likely meant."""
    with pytest.raises(NoSuch, match="Did you mean 'tape_length'"):
        method_named("tape_lenght")


def test_defaults_are_the_parameters_that_need_not_be_given() -> None:
    """A length of tape needs its joints and its ends; the carry is 50 mm unless given."""
    assert tape_length.defaults() == {"carry_mm": 50}
    assert [name for name, each in tape_length.parameters.items() if each.required] == [
        "joints_m",
        "meeting_ends",
    ]
