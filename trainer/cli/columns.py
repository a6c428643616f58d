"""Rows of values, column under column, for a terminal."""

from collections.abc import Iterable, Iterator, Sequence

from trainer.engine.plans.lists import Cell
from trainer.engine.units import figure

_GAP = "  "


def columns(heading: Sequence[str], rows: Iterable[Sequence[Cell]]) -> Iterator[str]:
    """Yield a heading and its rows; a column without a cell is left out, no rows are nothing.

    Numbers are set to the right and have the digits that matter.
    """
    filled = [
        (name, cells)
        for name, *cells in zip(heading, *rows, strict=True)
        if any(cell not in ("", None) for cell in cells)
    ]
    for line in zip(*(_column(name, cells) for name, cells in filled), strict=True):
        yield _GAP.join(line).rstrip()


def _column(name: str, cells: Sequence[Cell]) -> list[str]:
    texts = [name, *map(_text, cells)]
    width = max(map(len, texts))
    numbers = all(isinstance(cell, (int, float)) for cell in cells)
    return [text.rjust(width) if numbers else text.ljust(width) for text in texts]


def _text(cell: Cell) -> str:
    if cell is None:
        return ""
    return cell if isinstance(cell, str) else figure(cell)
