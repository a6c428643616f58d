"""How far from the right figure an answer may lie and still be right."""

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Tolerance:
    """A share of the right figure, or an amount in the unit of its line; both nothing: exact."""

    share: float = 0.0
    amount: float = 0.0

    def __post_init__(self) -> None:
        sizes = (self.share, self.amount)
        if not all(0 <= size < math.inf for size in sizes) or all(sizes):
            raise ValueError("A tolerance is a share or an amount, finite and not below zero.")

    def margin(self, right: float) -> float:
        """Return how far an answer may lie from this right figure.

        Exact answers are allowed the dust that floats leave behind.
        """
        return max(self.share * abs(right), self.amount, 1e-9 * abs(right))

    def allows(self, figure: float, right: float) -> bool:
        """Return whether a figure is right, both in the same unit and unrounded."""
        return abs(figure - right) <= self.margin(right) * (1 + 1e-9)
