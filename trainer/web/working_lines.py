"""A working as a page draws it, line by line."""

from collections.abc import Iterable
from dataclasses import dataclass

from trainer.engine import Line, Working, show


@dataclass(frozen=True, slots=True)
class WorkingLine:
    """One line of a working; without an answer it is somebody's to find."""

    words: str
    sum: str
    answer: str
    mark: str = ""
    own: str = ""


def plain_working(working: Working) -> tuple[WorkingLine, ...]:
    """Return a working that nobody was asked about."""
    return plain_lines(working.lines)


def plain_lines(lines: Iterable[Line]) -> tuple[WorkingLine, ...]:
    """Return lines of a working that nobody was asked about."""
    return tuple(
        WorkingLine(line.words, line.in_figures(), show(line.value, line.unit)) for line in lines
    )
