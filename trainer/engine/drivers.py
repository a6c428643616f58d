"""Five ways to drive a calculation: plan, teach, mark, carry an error, name a slip.

Only drivers send figures into a calculation, and only finite ones.

plan    answer(catalyst_by_mass(1.32, 3))
teach   work(catalyst_by_mass(1.32, 3))
carry   work(catalyst_by_mass.inside(1.32, 3), {"mass": 45.0})
mark    marking.mark(method, givens, asked, answers)
slip    slips.figure_at(line, change, method, givens, own)
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from trainer.engine.errors import NotAFigure
from trainer.engine.working import Calculation, Line, Method

Reply = Callable[[Line], float]
Figures = Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Working:
    """A calculation that has been worked to its end."""

    lines: tuple[Line, ...]
    #: What went on from each line: its own value, or the figure that was sent instead.
    figures: Figures
    value: float

    def line(self, key: str) -> Line:
        """Return the line of this key; raise KeyError."""
        for line in self.lines:
            if line.key == key:
                return line
        raise KeyError(key)


def drive(calculation: Calculation, reply: Reply) -> Working:
    """Work a calculation to its end, sending at each line what `reply` makes of it.

    Raises NotAFigure for a line or a reply that isn't finite, and whatever the calculation raises
    on figures that it can't work with.
    """
    lines: list[Line] = []
    figures: dict[str, float] = {}
    try:
        line = next(calculation)
        while True:
            value = line.value
            # Nearly every line is a plain float, which is quicker to ask than to call.
            if type(value) is not float or not -math.inf < value < math.inf:
                _refuse_unless_finite(line, value)
            lines.append(line)
            sent = reply(line)
            if sent is not value:
                _refuse_unless_finite(line, sent)
            figures[line.key] = sent
            line = calculation.send(sent)
    except StopIteration as end:
        return Working(tuple(lines), figures, float(end.value))


def _refuse_unless_finite(line: Line, figure: float) -> None:
    # The root of a carried figure below zero is complex, whatever the annotations say.
    if isinstance(figure, complex) or not math.isfinite(figure):
        raise NotAFigure(line.words, figure)


def _as_worked(line: Line) -> float:
    return line.value


def answer(calculation: Calculation) -> float:
    """Return what a calculation comes to."""
    return drive(calculation, _as_worked).value


def work(calculation: Calculation, own: Figures | None = None) -> Working:
    """Return the whole working, carrying somebody's own figures on from the lines they name."""
    if not own:
        return drive(calculation, _as_worked)
    return drive(calculation, lambda line: own.get(line.key, line.value))


def line_keys(method: Method[...]) -> tuple[str, ...]:
    """Return the keys of a calculation's lines in order, which never depend on its figures."""
    return tuple(line.key for line in example_working(method).lines)


def example_working(method: Method[...]) -> Working:
    """Return a working on figures from the middle of every range."""
    example = {name: parameter.example() for name, parameter in method.parameters.items()}
    return work(method.inside(**example))
