"""One figure of a plan, with the calculation that it came out of."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from trainer.engine.drivers import Working, work
from trainer.engine.errors import BadRoof, Refused
from trainer.engine.units import show
from trainer.engine.working import Method


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure that opens its working: what it is, and how it came about."""

    #: What it is called in exports and by questions: "tape.length".
    key: str
    words: str
    method: Method[...]
    givens: Mapping[str, Any]
    working: Working

    @property
    def value(self) -> float:
        """The figure itself, unrounded."""
        return self.working.value

    @property
    def unit(self) -> str:
        """The unit of the figure."""
        return self.working.lines[-1].unit

    @property
    def shown(self) -> str:
        """The figure with its unit, as people read it."""
        return show(self.value, self.unit)


@dataclass(frozen=True, slots=True)
class Measured:
    """A figure that was read off the layout, and so has no working."""

    key: str
    words: str
    value: float
    unit: str

    @property
    def shown(self) -> str:
        """The figure with its unit, as people read it."""
        return show(self.value, self.unit)


Known = Figure | Measured


@contextmanager
def rests_on(field: str) -> Iterator[None]:
    """Have a sum that is refused inside say which field of the description to change."""
    try:
        yield
    except Refused as refused:
        raise BadRoof(field, str(refused)) from refused


def worked(key: str, words: str, method: Method[...], **givens: Any) -> Figure:  # noqa: ANN401
    """Return a figure, worked on givens that a plan has checked or worked out itself.

    Raises NotAFigure and Refused as the calculation does.
    """
    return Figure(key, words, method, givens, work(method.inside(**givens)))
