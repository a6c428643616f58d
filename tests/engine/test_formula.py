"""Formulas as people read them: signs, words and brackets."""

import ast

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trainer.engine import formula

WORDS = {"a": "apples", "b": "boards", "c": "clips"}
SIGNS = {"×": "*", "÷": "/", "−": "-", "to the power": "**"}


@pytest.mark.parametrize(
    ("written", "drawn"),
    [
        ("a", "apples"),
        ("a * b", "apples × boards"),
        ("a / b", "apples ÷ boards"),
        ("a - b", "apples − boards"),
        ("a + b - c", "apples + boards − clips"),
        ("a ** b", "apples to the power boards"),
        ("-a", "−apples"),
        ("a * b / 100", "apples × boards ÷ 100"),
        ("a + 273.15", "apples + 273.15"),
        ("ceil(a)", "apples, rounded up"),
        ("ceil(a / b)", "(apples ÷ boards), rounded up"),
        ("min(a, b)", "the least of apples and boards"),
        ("max(a, b)", "the greatest of apples and boards"),
        ("exp(a)", "e to the power apples"),
        ("ln(a)", "the natural logarithm of apples"),
    ],
)
def test_a_formula_is_drawn_in_words(written: str, drawn: str) -> None:
    """Names become words, and the signs become those of a school book."""
    assert formula.draw(written, WORDS) == drawn


@pytest.mark.parametrize(
    ("written", "drawn"),
    [
        ("(a + b) * c", "(apples + boards) × clips"),
        ("a + b * c", "apples + boards × clips"),
        ("a - (b - c)", "apples − (boards − clips)"),
        ("a / (b * c)", "apples ÷ (boards × clips)"),
        ("(a / b) * c", "apples ÷ boards × clips"),
        ("(1 - a) / a", "(1 − apples) ÷ apples"),
        ("(a ** b) ** c", "(apples to the power boards) to the power clips"),
        ("a ** (b + 1)", "apples to the power (boards + 1)"),
        ("-(a + b)", "−(apples + boards)"),
        ("ceil(a / b) * c", "((apples ÷ boards), rounded up) × clips"),
    ],
)
def test_brackets_stand_where_they_are_needed(written: str, drawn: str) -> None:
    """Read from left to right, what is drawn means what was written."""
    assert formula.draw(written, WORDS) == drawn


EXPRESSIONS = st.recursive(
    st.sampled_from(["a", "b", "c", "2", "0.5"]),
    lambda inner: st.one_of(
        st.builds("({}) {} ({})".format, inner, st.sampled_from("+-*/"), inner),
        st.builds("({}) ** ({})".format, inner, inner),
        st.builds("-({})".format, inner),
    ),
    max_leaves=8,
)


@given(EXPRESSIONS)
def test_what_is_drawn_can_be_read_back(written: str) -> None:
    """Turned back into signs, a drawing gives the formula it was made from."""
    drawn = formula.draw(written, {name: name for name in "abc"})
    for sign, operator in SIGNS.items():
        drawn = drawn.replace(sign, operator)
    assert ast.dump(_without_brackets(drawn)) == ast.dump(_without_brackets(written))


def _without_brackets(text: str) -> ast.expr:
    return ast.parse(text, mode="eval").body


def test_names_are_those_of_the_parts() -> None:
    """Functions and plain numbers are no parts."""
    assert formula.names("ceil((a - lap) / (b - lap)) + 2 * ln(c)") == {"a", "b", "c", "lap"}


@pytest.mark.parametrize(
    ("written", "before"),
    [
        ("ceil(a / b)", 3.5),
        ("ceil((a - c) / (b - c))", 6),
        ("ceil(a / b + c * 2)", 5.5),
        ("ceil(a)", 7),
        ("ceil(a / b - 0.5) * b", None),
        ("max(1, ceil(a / b))", None),
        ("ceil(exp(a))", None),
        ("a / b", None),
    ],
)
def test_what_is_rounded_up_is_known_before_it_is(written: str, before: float | None) -> None:
    """Of 7, 2 and 1; there is nothing to tell where rounding up isn't the last step."""
    assert formula.unrounded(written, {"a": 7, "b": 2, "c": 1}) == before


def test_a_long_list_of_joints_can_be_drawn() -> None:
    """The joints of the largest roof stand in one sum, however many calls that would take."""
    written = " + ".join(f"joint_{number}" for number in range(500))
    drawn = formula.draw(written, {f"joint_{number}": "1 m" for number in range(500)})
    assert drawn.count("1 m") == 500


@pytest.mark.parametrize("written", ["a.b", "[a]", "a if b else c", "'a'", "a and b"])
def test_what_is_no_formula_is_refused(written: str) -> None:
    """Only names, numbers, the four signs, powers and five functions make a formula."""
    with pytest.raises(SyntaxError, match="A formula cannot hold"):
        formula.draw(written, WORDS)


def test_what_cannot_be_read_is_refused() -> None:
    """A formula with a bracket missing is a mistake of ours, told at once."""
    with pytest.raises(SyntaxError):
        formula.draw("(a + b", WORDS)
