"""Figures for any calculation, drawn from the ranges that its signature gives."""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import settings
from hypothesis import strategies as st

from trainer.engine import Method, Parameter

Givens = st.SearchStrategy[dict[str, Any]]

# No deadline: a slow machine is no fault of a sum.
settings.register_profile("house", deadline=None, max_examples=40)
settings.load_profile("house")


def _drawn(parameter: Parameter) -> st.SearchStrategy[Any]:
    if parameter.shape == "choice":
        return st.sampled_from(parameter.choices)
    if parameter.shape == "count":
        return st.integers(int(parameter.low), int(parameter.high))
    figures = st.floats(parameter.low, parameter.high, allow_subnormal=False)
    if parameter.shape == "list":
        return st.lists(figures, min_size=1, max_size=6).map(tuple)
    return figures


@pytest.fixture(scope="session")
def givens_of() -> Callable[[Method[...]], Givens]:
    """Return how to draw the givens of a calculation, each inside its range."""

    def draw(method: Method[...]) -> Givens:
        return st.fixed_dictionaries(
            {name: _drawn(parameter) for name, parameter in method.parameters.items()}
        )

    return draw
