"""A slip: one thing put wrong, so that the figure it leads to can be recognised.

The calculation is run again with that one thing changed; a wrong answer that matches gets
the slip's name instead of a bare "wrong".
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from trainer.engine.drivers import Figures, Working, drive, work
from trainer.engine.errors import UNWORKABLE
from trainer.engine.working import Line, Method, method_named


@dataclass(frozen=True, slots=True)
class GivenSlip:
    """One given misread: another value, a multiple of it, or another given in its place."""

    name: str
    value: Any = None
    times: float | None = None
    same_as: str | None = None

    def work(self, method: Method[...], givens: Mapping[str, Any], own: Figures) -> Working:
        """Return the working with the given misread."""
        return work(method.inside(**{**givens, self.name: self._misread(method, givens)}), own)

    def _misread(self, method: Method[...], givens: Mapping[str, Any]) -> Any:  # noqa: ANN401
        known = {**method.defaults(), **givens}
        if self.same_as is not None:
            return known[self.same_as]
        if self.times is None:
            return self.value
        if isinstance(known[self.name], (list, tuple)):
            return tuple(each * self.times for each in known[self.name])
        return known[self.name] * self.times


@dataclass(frozen=True, slots=True)
class LineSlip:
    """One line put wrong and carried on: a multiple of it, or another line's figure."""

    key: str
    times: float | None = None
    same_as: str | None = None

    def work(self, method: Method[...], givens: Mapping[str, Any], own: Figures) -> Working:
        """Return the working with the line put wrong."""
        seen: dict[str, float] = {}

        def reply(line: Line) -> float:
            figure = own.get(line.key, line.value)
            if line.key == self.key:
                figure = self._misread(line, seen)
            seen[line.key] = figure
            return figure

        return drive(method.inside(**givens), reply)

    def _misread(self, line: Line, seen: Figures) -> float:
        if self.same_as is not None:
            return seen[self.same_as]
        return line.value if self.times is None else line.value * self.times


@dataclass(frozen=True, slots=True)
class Stopped:
    """The figure of an earlier line, given as the answer."""

    key: str

    def work(self, method: Method[...], givens: Mapping[str, Any], own: Figures) -> Working:
        """Return the right working, whose line at `key` was taken for the answer."""
        return work(method.inside(**givens), own)


@dataclass(frozen=True, slots=True)
class OtherMethod:
    """Another calculation done on the same givens."""

    name: str

    def work(self, method: Method[...], givens: Mapping[str, Any], own: Figures) -> Working:
        """Return the other calculation's working on those of the givens that it takes."""
        other = method_named(self.name)
        known = {**method.defaults(), **givens}
        return work(other.inside(**{n: v for n, v in known.items() if n in other.parameters}), own)


Change = GivenSlip | LineSlip | Stopped | OtherMethod


def figure_at(
    key: str, change: Change, method: Method[...], givens: Mapping[str, Any], own: Figures
) -> float | None:
    """Return the figure that a slip leads to at a line, or None where it can't be worked.

    `own` are the person's own figures at lines above, which a slip lower down starts from.
    """
    own = {name: figure for name, figure in own.items() if name != key}
    try:
        working = change.work(method, givens, own)
    except (*UNWORKABLE, KeyError):
        return None
    if isinstance(change, Stopped):
        return working.figures[change.key]
    if isinstance(change, OtherMethod):
        return working.figures.get(key, working.value)
    return working.figures[key]
