"""The signature as the schema: parameters, their shapes, ranges and checks."""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any

import pytest
from engine_cast import overnight_drop, paint_for_edges

from trainer.engine import METHODS, Given, Method, NoSuch, NotAFigure, OutOfRange, Parameter
from trainer.engine.schema import LONGEST_LIST, read_parameters

EVERY_PARAMETER = pytest.mark.parametrize(
    ("method", "parameter"),
    [
        pytest.param(method, parameter, id=f"{method.name}-{parameter.name}")
        for method in METHODS.values()
        for parameter in method.parameters.values()
    ],
)


def test_a_parameter_is_read_from_its_annotation() -> None:
    """Words, unit, range, shape and default all come from the signature."""
    spare = paint_for_edges.parameters["spare_percent"]
    assert spare == Parameter("spare_percent", "spare", "%", 0, 50, "number", 10)
    assert not spare.required


def test_every_shape_of_parameter_is_known() -> None:
    """A tuple is a list, an int a count, a Literal a choice, a float a number."""
    shapes = {name: each.shape for name, each in paint_for_edges.parameters.items()}
    assert shapes == {
        "lengths_m": "list",
        "coats": "count",
        "brush": "choice",
        "spare_percent": "number",
    }
    assert paint_for_edges.parameters["brush"].choices == ("narrow", "wide")


def unannotated(resin: float) -> None:
    """Take a number without a Given."""


def without_hint(resin) -> None:  # type: ignore[no-untyped-def]  # noqa: ANN001
    """Take anything."""


def words_alone(resin: Annotated[float, "resin"]) -> None:
    """Take a number whose annotation is no Given."""


def yes_or_no(resin: Annotated[bool, Given("resin")]) -> None:
    """Take yes or no, which is written as a choice instead."""


@pytest.mark.parametrize("function", [unannotated, without_hint, words_alone, yes_or_no])
def test_a_parameter_without_a_given_or_a_shape_is_a_mistake(function: Callable[..., Any]) -> None:
    """Whoever writes a calculation hears at once which parameter lacks its schema."""
    with pytest.raises(TypeError, match="Parameter 'resin'"):
        read_parameters(function)


@pytest.mark.parametrize("value", [0.0, 10, 50, 49.999])
def test_a_number_inside_its_range_is_accepted(value: float) -> None:
    """Both ends belong to the range; whole numbers are numbers."""
    paint_for_edges.parameters["spare_percent"].check(value)


@pytest.mark.parametrize("value", [-0.001, 50.001, -1e300, 1e300])
def test_a_number_outside_its_range_is_refused(value: float) -> None:
    """The error carries every fact that a page may want to show."""
    with pytest.raises(OutOfRange) as refused:
        paint_for_edges.parameters["spare_percent"].check(value)
    error = refused.value
    assert (error.words, error.value, error.unit) == ("spare", value, "%")
    assert (error.low, error.high) == (0, 50)


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 10**400, True, "10", None, [10]])
def test_what_is_no_finite_number_is_refused(value: Any) -> None:
    """NaN and infinity never get in, and neither do yes and no, text, or a list for a number."""
    parameter = paint_for_edges.parameters["spare_percent"]
    for check in (parameter.check, parameter.check_inside):
        with pytest.raises(NotAFigure, match=r"The spare is .+; it must be a finite number"):
            check(value)


@pytest.mark.parametrize("value", [1.5, math.nan, "2"])
def test_a_count_is_a_whole_number(value: Any) -> None:
    """One and a half coats can't be painted."""
    with pytest.raises(NotAFigure):
        paint_for_edges.parameters["coats"].check(value)


def test_a_whole_number_may_be_written_as_a_float() -> None:
    """A typed 2 comes as 2.0 out of the reader, and is a count all the same."""
    paint_for_edges.parameters["coats"].check(2.0)


@pytest.mark.parametrize("value", [(), [], 3.0, "3.0", {3.0}])
def test_a_list_holds_at_least_one_figure(value: Any) -> None:
    """Nothing, or a bare number, is no list."""
    with pytest.raises(NotAFigure, match="a list of at least one figure"):
        paint_for_edges.parameters["lengths_m"].check(value)


def test_each_figure_of_a_list_is_checked() -> None:
    """The one that is too long is the one that is named."""
    with pytest.raises(OutOfRange, match="The edge is 51 m"):
        paint_for_edges.parameters["lengths_m"].check((2.0, 51.0, 3.0))


def test_a_list_has_an_end() -> None:
    """A list longer than any roof needs is a slip of the keyboard, and is not worked."""
    lengths = paint_for_edges.parameters["lengths_m"]
    lengths.check((1.0,) * LONGEST_LIST)
    with pytest.raises(NotAFigure, match=f"a list of {LONGEST_LIST} at most"):
        lengths.check((1.0,) * (LONGEST_LIST + 1))


def test_a_choice_is_one_of_those_named() -> None:
    """Another word is refused, with the choice that was likely meant."""
    brush = paint_for_edges.parameters["brush"]
    brush.check("wide")
    for value in ("wyde", 3, None, math.nan):
        with pytest.raises(NoSuch):
            brush.check(value)


def test_inside_accepts_any_sign_where_the_range_reaches_below_zero() -> None:
    """A reading of −30 °C is out of range, and still a temperature to work with."""
    evening = overnight_drop.parameters["evening_c"]
    for celsius in (-30, 0, 60):
        evening.check_inside(celsius)
    with pytest.raises(OutOfRange):
        evening.check(-30)
    with pytest.raises(NotAFigure):
        evening.check_inside(math.nan)


@EVERY_PARAMETER
def test_both_ends_of_every_range_are_accepted_and_no_more(
    method: Method[...], parameter: Parameter
) -> None:
    """The least and the greatest are accepted; a hair outside is refused."""
    assert method.parameters[parameter.name] is parameter
    wrapped: Callable[[float], Any] = (
        (lambda v: (v,)) if parameter.shape == "list" else (lambda v: v)
    )
    step = 1 if parameter.shape == "count" else 1e-6
    parameter.check(wrapped(parameter.low))
    parameter.check(wrapped(parameter.high))
    for outside in (parameter.low - step, parameter.high + step):
        with pytest.raises(OutOfRange):
            parameter.check(wrapped(outside))


@EVERY_PARAMETER
def test_every_range_has_an_end_and_the_example_lies_in_it(
    method: Method[...], parameter: Parameter
) -> None:
    """What documentation and checks show as an example is always accepted."""
    assert method.parameters[parameter.name] is parameter
    assert -math.inf < parameter.low < parameter.high < math.inf
    parameter.check(parameter.example())


@EVERY_PARAMETER
def test_the_docstring_gives_the_range_of_the_signature(
    method: Method[...], parameter: Parameter
) -> None:
    """Each argument is told with the range that is checked, so that the two can't part."""
    told = re.search(rf"^ +{parameter.name}: (.+)$", method.__doc__ or "", re.MULTILINE)
    assert told, f"{method.name} says nothing about {parameter.name}"
    ends = re.search(r"(−?\d[\d. ]*)–(−?\d[\d. ]*\d|−?\d)", told[1])
    assert ends, f"{method.name} gives no range for {parameter.name}"
    low, high = (float(end.replace(" ", "").replace("−", "-")) for end in ends.groups())
    assert (low, high) == (parameter.low, parameter.high)


def test_the_example_of_a_choice_is_the_first() -> None:
    """Without a default the first choice stands; with one, the default."""
    choice = Parameter("brush", "brush", "", 0, math.inf, "choice", choices=("narrow", "wide"))
    assert choice.required
    assert choice.example() == "narrow"
    assert paint_for_edges.parameters["brush"].example() == "narrow"


def test_an_endless_range_has_an_example_too() -> None:
    """Without an upper end the example stays near the lower one."""
    assert Parameter("n", "n", "", 2, math.inf, "count").example() == 52
    assert Parameter("n", "n", "", 2, math.inf, "list").example() == (52.0,)


@dataclass(frozen=True)
class Shed:
    """A frozen dataclass whose fields are read as parameters."""

    name: Annotated[str, Given("name of the shed")]
    slope_percent: Annotated[float | None, Given("slope", "%", 0, 50)] = None


def test_the_fields_of_a_dataclass_are_parameters() -> None:
    """A description has the same schema as a calculation; what may be left out has no value."""
    name, slope = read_parameters(Shed).values()
    assert (name.shape, name.required) == ("text", True)
    assert (slope.shape, slope.required, slope.optional) == ("number", False, True)
    slope.check(None)
    with pytest.raises(OutOfRange):
        slope.check(51)


@pytest.mark.parametrize("value", ["", "   ", 3, None, "a\0b", "two\nlines", "x" * 81])
def test_a_text_is_one_short_line(value: Any) -> None:
    """Nothing, a figure, unprintable signs and a page of text are no name."""
    with pytest.raises(NotAFigure, match="a line of 1 to 80"):
        read_parameters(Shed)["name"].check(value)
