"""A formula as people read it: × for *, ÷ for /, words or figures for the names.

Formulas are written by us in the calculations, as Python expressions over the names of a
line's parts; nobody's input is ever read here.
"""

import ast
import operator
from collections.abc import Callable, Mapping
from functools import cache

_OPERATORS: dict[type[ast.operator], tuple[str, int]] = {
    ast.Add: ("+", 1),
    ast.Sub: ("−", 1),
    ast.Mult: ("×", 2),
    ast.Div: ("÷", 2),
    ast.Pow: ("to the power", 4),
}
_SUMS: dict[type[ast.operator], Callable[[float, float], float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
}
_ATOM = 5
_NEGATION = 3

_FUNCTIONS = {
    "ceil": "{}, rounded up",
    "min": "the least of {}",
    "max": "the greatest of {}",
    "exp": "e to the power {}",
    "ln": "the natural logarithm of {}",
}


@cache
def parse(formula: str) -> ast.expr:
    """Return a formula's expression tree; raise SyntaxError where it is none."""
    return ast.parse(formula, mode="eval").body


@cache
def names(formula: str) -> frozenset[str]:
    """Return the names of the parts that a formula uses."""
    return frozenset(
        node.id
        for node in ast.walk(parse(formula))
        if isinstance(node, ast.Name) and node.id not in _FUNCTIONS
    )


def unrounded(formula: str, values: Mapping[str, float]) -> float | None:
    """Return what a formula that is rounded up comes to before that; None for any other."""
    match parse(formula):
        case ast.Call(func=ast.Name(id="ceil"), args=[inside]):
            return _worked(inside, values)
    return None


def _worked(node: ast.expr, values: Mapping[str, float]) -> float | None:
    """Return what signs, names and numbers come to; None where there is anything else."""
    match node:
        case ast.Name(id=name):
            return values[name]
        case ast.Constant(value=int() | float() as value):
            return value
        case ast.BinOp(left=left, op=op, right=right) if type(op) in _SUMS:
            one, other = _worked(left, values), _worked(right, values)
            return None if one is None or other is None else _SUMS[type(op)](one, other)
    return None


def draw(formula: str, words: Mapping[str, str]) -> str:
    """Return the formula with each name replaced by its words and brackets where needed."""
    return _blank(formula).format_map(words)


@cache
def _blank(formula: str) -> str:
    """Return the formula with a blank for each name, as str.format fills them in.

    Brackets depend on the formula alone, and a plan draws the same few formulas many times.
    """
    return _draw(parse(formula), {name: f"{{{name}}}" for name in names(formula)})[0]


def _draw(node: ast.expr, words: Mapping[str, str]) -> tuple[str, int]:
    """Return the text of a node and how tightly it binds."""
    match node:
        case ast.Name(id=name):
            return words[name], _ATOM
        case ast.Constant(value=int() | float() as value):
            return f"{value}", _ATOM
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return f"−{_bracketed(*_draw(operand, words), _NEGATION)}", _NEGATION
        case ast.BinOp():
            return _draw_chain(node, words)
        case ast.Call(func=ast.Name(id=name), args=arguments):
            inner = " and ".join(_draw(argument, words)[0] for argument in arguments)
            bracketed = len(arguments) == 1 and not isinstance(arguments[0], ast.Name)
            return _FUNCTIONS[name].format(f"({inner})" if bracketed else inner), 0
    raise SyntaxError(f"A formula cannot hold {ast.dump(node)}.")


def _draw_chain(node: ast.expr, words: Mapping[str, str]) -> tuple[str, int]:
    """Draw A + B − C … from its left end, without a call for each: a big roof has many joints."""
    steps: list[ast.BinOp] = []
    while isinstance(node, ast.BinOp):
        steps.append(node)
        node = node.left
    text, own = _draw(node, words)
    for step in reversed(steps):
        sign, binding = _OPERATORS[type(step.op)]
        # Only powers are taken from the right, so (A to the power B) needs its brackets.
        left = _bracketed(text, own, binding + isinstance(step.op, ast.Pow))
        # A − (B − C) and A ÷ (B × C) need their brackets; A + (B + C) is harmless with them.
        right = _bracketed(*_draw(step.right, words), binding + 1)
        text, own = f"{left} {sign} {right}", binding
    return text, own


def _bracketed(text: str, own: int, binding: int) -> str:
    return text if own >= binding else f"({text})"
