"""What no plan can be made from: each said in a sentence, with the place in the description."""

import math
from collections.abc import Iterator

from trainer.engine import outline
from trainer.engine.conversions import whole_mm
from trainer.engine.errors import BadRoof
from trainer.engine.outline import Outline, Shape
from trainer.engine.plans.description import RoofDescription
from trainer.engine.plans.openings import Opening, Rooflight
from trainer.engine.units import show

MOST_CORNERS = 60
#: Longer or larger than any roof that is laid by hand in a day or two.
_LONGEST_MM = 100_000
_LARGEST_MM2 = 500_000_000
#: A circle is looked at as a polygon of this many sides.
_ROUND = 32


def check_roof(roof: RoofDescription) -> None:
    """Refuse a roof that can't be planned, at the first thing found; raise BadRoof."""
    for mistake in roof_mistakes(roof):
        raise mistake


def roof_mistakes(roof: RoofDescription) -> Iterator[BadRoof]:
    """Yield what is wrong with a description, the outline first.

    Nothing that rests on the outline is looked at while the outline itself is wrong.
    """
    wrong = next(_outline_mistakes(roof.corners), None)
    if wrong:
        yield wrong
        return
    yield from _number_mistakes(roof)
    yield from _opening_mistakes(roof)
    yield from _size_mistakes(roof)


def _outline_mistakes(corners: Outline) -> Iterator[BadRoof]:
    if not 3 <= len(corners) <= MOST_CORNERS:
        yield BadRoof(
            "outline", f"The outline has {len(corners)} corners; it needs 3 to {MOST_CORNERS}."
        )
    if len(set(corners)) < len(corners):
        place = next(each for each in corners if corners.count(each) > 1)
        numbers = [n for n, each in enumerate(corners, 1) if each == place]
        yield BadRoof(
            "outline",
            f"Corners {numbers[0]} and {numbers[1]} lie in the same place. Leave one of them out.",
        )
    low, high = outline.extent(corners)
    if max(high[0] - low[0], high[1] - low[1]) > _LONGEST_MM:
        yield BadRoof("outline", "The roof is over 100 m long. Look at the unit of the corners.")
    area = outline.area_mm2((corners,))
    if area == 0:
        yield BadRoof(
            "outline",
            "The outline encloses nothing: its corners lie on a line, or its sides cross.",
        )
    if not outline.is_simple(corners):
        yield BadRoof(
            "outline", "The outline crosses or touches itself. Look at the corners again."
        )
    if area < 0:
        yield BadRoof("outline", "The corners go clockwise. List them anticlockwise.")
    if area > _LARGEST_MM2:
        yield BadRoof("outline", "The roof is over 500 m². Plan it in parts.")


def _number_mistakes(roof: RoofDescription) -> Iterator[BadRoof]:
    sides = len(roof.corners)
    if len(roof.edges) != sides:
        yield BadRoof(
            "edge",
            f"The outline has {sides} sides, and {len(roof.edges)} are described. "
            "Describe each side once, in order.",
        )
    for where, number in (
        ("fall.towards_edge", roof.fall.towards_edge),
        ("way_off_edge", roof.way_off_edge),
        *((f"corner {each}", each) for each in roof.overruled),
    ):
        if not 1 <= number <= sides:
            yield BadRoof(where, f"There is no number {number}: the roof has 1 to {sides}.")


def opening_outline(opening: Opening) -> Outline:
    """Return the outline of an opening, anticlockwise; a round one has many short sides."""
    x, y = whole_mm(opening.x_m), whole_mm(opening.y_m)
    if isinstance(opening, Rooflight):
        return outline.box((x, y), (x + whole_mm(opening.length_m), y + whole_mm(opening.width_m)))
    radius = opening.diameter_mm / 2
    turns = [2 * math.pi * step / _ROUND for step in range(_ROUND)]
    return tuple(
        (x + round(radius * math.cos(turn)), y + round(radius * math.sin(turn))) for turn in turns
    )


def _opening_mistakes(roof: RoofDescription) -> Iterator[BadRoof]:
    shapes: list[Shape] = []
    for number, opening in enumerate(roof.openings, 1):
        shape = (opening_outline(opening),)
        inside = outline.area_mm2(outline.common(shape, (roof.corners,)))
        where = f"opening {number}"
        if not inside:
            yield BadRoof(where, f"Opening {number} lies outside the roof. Look at its place.")
        elif not all(outline.contains((roof.corners,), corner) for corner in shape[0]):
            yield BadRoof(where, f"Opening {number} lies across an edge of the roof. Move it in.")
        if any(outline.common(shape, other) for other in shapes):
            yield BadRoof(where, f"Opening {number} lies over another opening. Move one of them.")
        shapes.append(shape)


def _size_mistakes(roof: RoofDescription) -> Iterator[BadRoof]:
    if _is_larger(roof):
        length, width = (show(size, "mm") for size in (roof.boards.length_mm, roof.boards.width_mm))
        yield BadRoof(
            "boards",
            f"A board of {length} by {width} is larger than the roof. Give the size it is cut to.",
        )
    lap, roll = roof.laminate.lap_mm, roof.sold.mat_roll_mm
    if lap >= roll:
        yield BadRoof(
            "laminate.lap_mm",
            f"A lap of {show(lap, 'mm')} is as wide as the roll of {show(roll, 'mm')}. "
            "Take a smaller lap.",
        )
    if roof.mix.least_percent > roof.mix.most_percent:
        yield BadRoof("mix.least_percent", "The least dose is more than the most. Change one.")
    if roof.bandage.width_mm < roof.tape.width_mm:
        yield BadRoof(
            "bandage.width_mm", "The bandage is narrower than the tape: it would hold nothing."
        )


def _is_larger(roof: RoofDescription) -> bool:
    """Whether one board would cover the whole roof and more, whichever way it lies."""
    low, high = outline.extent(roof.corners)
    extent = sorted((high[0] - low[0], high[1] - low[1]))
    board = sorted((roof.boards.length_mm, roof.boards.width_mm))
    covers = all(size >= side for size, side in zip(board, extent, strict=True))
    return covers and board != extent
