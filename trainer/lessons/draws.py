"""What a given of a question may be, and how one is drawn from a seed.

A draw depends on nothing but the seed, the number of redraws and the given's name, so that
a question can be made again exactly as it was asked.
"""

import hashlib
from dataclasses import dataclass, field
from typing import Any

from trainer.engine import show
from trainer.engine.units import figure


@dataclass(frozen=True, slots=True)
class OneOf:
    """One of some values; a fixed given has one."""

    values: tuple[Any, ...]

    @property
    def count(self) -> int:
        """How many values there are."""
        return len(self.values)

    def value(self, step: int) -> Any:  # noqa: ANN401
        """Return the value at a step."""
        return self.values[step]

    def ends(self) -> tuple[Any, ...]:
        """Return the values that a calculation's range must admit."""
        return self.values

    def decimals(self) -> int | None:
        """Return None: each value is printed as it was written."""
        return None


@dataclass(frozen=True, slots=True)
class Steps:
    """Whole steps from a low to a high value, both included."""

    low: float
    high: float
    step: float
    #: How many values there are.
    count: int = field(init=False)
    #: The decimals of the step, with which the given is printed.
    places: int = field(init=False)

    def __post_init__(self) -> None:
        # Worked out once: a question is drawn far more often than it is read.
        object.__setattr__(self, "count", round((self.high - self.low) / self.step) + 1)
        object.__setattr__(self, "places", max(_decimals(self.step), _decimals(self.low)))

    def value(self, step: int) -> float:
        """Return the value at a step, free of the dust of floats."""
        return round(self.low + step * self.step, self.places + 2)

    def ends(self) -> tuple[float, ...]:
        """Return the values that a calculation's range must admit."""
        return (self.low, self.high)

    def decimals(self) -> int:
        """Return the decimals with which the given is printed."""
        return self.places


Draw = OneOf | Steps


def draw(draw: Draw, seed: str, redraws: int, name: str) -> Any:  # noqa: ANN401
    """Return one value, the same for the same seed, number of redraws and name."""
    if draw.count == 1:
        return draw.value(0)
    digest = hashlib.blake2b(f"{seed}|{redraws}|{name}".encode(), digest_size=8).digest()
    return draw.value(int.from_bytes(digest) % draw.count)


def printed(value: Any, unit: str, decimals: int | None) -> str:  # noqa: ANN401
    """Return a given as it stands in a question: "2.4 m", "2.4 m, 3 m and 3.6 m", "2.5"."""
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        each = [show(one, unit, decimals) for one in value]
        return " and ".join(part for part in (", ".join(each[:-1]), each[-1]) if part)
    return show(value, unit, decimals) if unit else figure(value, decimals)


def _decimals(value: float) -> int:
    # Not :g, which writes a ten-thousandth as 1e-05.
    return len(f"{value:.10f}".rstrip("0").partition(".")[2])
