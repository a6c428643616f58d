"""The deck: its area, its boards course by course, and the joints that are open."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from trainer.engine import outline
from trainer.engine.conversions import MM2_PER_M2, MM_PER_M
from trainer.engine.outline import Point, Shape
from trainer.engine.plans.checks import opening_outline
from trainer.engine.plans.description import Boards, RoofDescription
from trainer.engine.plans.figure import Figure, Known, Measured, worked
from trainer.engine.plans.openings import Rooflight
from trainer.engine.shape import area_left, outline_area, rectangle_area

#: A sliver of a joint, or of a board, shorter than this is lost in the saw cut.
_SLIVER_MM = 10


@dataclass(frozen=True, slots=True)
class Board:
    """One board of the layout, cut to the roof; in two or more pieces where an opening parts it."""

    pieces: Shape
    whole: bool


@dataclass(frozen=True, slots=True)
class Joint:
    """A straight joint between boards."""

    number: int
    start: Point
    end: Point
    #: Whether its start and its end meet another joint; otherwise they stop at an edge.
    meets: tuple[bool, bool]
    length: Measured

    @property
    def meeting_ends(self) -> int:
        """How many of its ends meet another joint."""
        return sum(self.meets)


@dataclass(frozen=True, slots=True)
class Deck:
    """A deck as it is boarded."""

    #: Inside the edges.
    area: Figure
    #: What is laminated: the area less its rooflights. Pipes and outlets are too small to count.
    net: Known
    boards: tuple[Board, ...]
    #: Open ones, which are taped and bandaged.
    joints: tuple[Joint, ...]
    #: Joints of tongued boards, which need neither.
    closed_joints: tuple[Joint, ...]
    #: Open joints at cut edges that were measured and have no place in the layout.
    extra_joints_m: tuple[float, ...]

    @property
    def joint_lengths_m(self) -> tuple[float, ...]:
        """All open joints in metres."""
        return (*(joint.length.value for joint in self.joints), *self.extra_joints_m)

    @property
    def meeting_ends(self) -> int:
        """How many ends of open joints meet another joint."""
        return sum(joint.meeting_ends for joint in self.joints)


def region_of(roof: RoofDescription) -> Shape:
    """Return the deck as a shape: the outline, less the rooflights that pass through it."""
    holes = tuple(opening_outline(each) for each in roof.openings if isinstance(each, Rooflight))
    return outline.without((roof.corners,), holes)


def deck_of(roof: RoofDescription) -> Deck:
    """Return the deck's area, boards and joints.

    Boards lie in courses from the lowest, leftmost corner of the box round the roof; every other
    course begins with half a board. Square edges and cut edges are open joints.
    """
    up = roof.boards.run == "up"
    region = region_of(roof)
    layout = _Layout(roof.boards, outline.turned(region) if up else region)
    boards = tuple(_turned_board(each) if up else each for each in layout.boards())
    joints = tuple(_turned_joint(each) if up else each for each in layout.joints())
    square = roof.boards.edge == "square"
    area = _area(roof)
    return Deck(
        area,
        _net(roof, area),
        boards,
        joints if square else (),
        () if square else joints,
        roof.boards.cut_joints_m or (),
    )


def _area(roof: RoofDescription) -> Figure:
    low, high = outline.extent(roof.corners)
    if {*roof.corners} == {*outline.box(low, high)}:
        length, width = ((high[axis] - low[axis]) / MM_PER_M.value for axis in (0, 1))
        return worked(
            "deck.area", "area of the deck", rectangle_area, length_m=length, width_m=width
        )
    across, up = (
        tuple((each[axis] - low[axis]) / MM_PER_M.value for each in roof.corners) for axis in (0, 1)
    )
    return worked("deck.area", "area of the deck", outline_area, across_m=across, up_m=up)


def _net(roof: RoofDescription, area: Figure) -> Known:
    openings = tuple(
        outline.area_mm2((opening_outline(each),)) / MM2_PER_M2.value
        for each in roof.openings
        if isinstance(each, Rooflight)
    )
    if not openings:
        return Measured("deck.net", "area to laminate", area.value, area.unit)
    return worked(
        "deck.net", "area to laminate", area_left, area_m2=area.value, openings_m2=openings
    )


class _Layout:
    """Boards that run along x, in courses from the bottom of the box round a shape."""

    def __init__(self, boards: Boards, region: Shape) -> None:
        self.region = region
        self.low, self.high = outline.extent([point for each in region for point in each])
        self.length, self.width = round(boards.length_mm), round(boards.width_mm)
        self.gap = round(boards.gap_mm) if boards.edge == "square" else 0

    def courses(self) -> Iterator[tuple[int, int, int]]:
        """Yield each course's lower and upper edge, and where its first board begins."""
        half = (self.length + self.gap) // 2
        for number, bottom in enumerate(range(self.low[1], self.high[1], self.width + self.gap)):
            yield bottom, bottom + self.width, self.low[0] - half * (number % 2)

    def boards(self) -> Iterator[Board]:
        """Yield each board with what is left of it inside the shape."""
        for bottom, top, first in self.courses():
            for left in range(first, self.high[0], self.length + self.gap):
                board = outline.box((left, bottom), (left + self.length, top))
                pieces = outline.common((board,), self.region)
                if pieces:
                    whole = outline.area_mm2(pieces) == self.length * self.width
                    yield Board(pieces, whole)

    def joints(self) -> Iterator[Joint]:
        """Yield the joints between courses from below, then those between ends of boards."""
        number = 0
        for start, end, meets in (*self._level(), *self._upright()):
            if max(end[0] - start[0], end[1] - start[1]) >= _SLIVER_MM:
                number += 1
                yield _joint(number, start, end, meets)

    def _level(self) -> Iterator[tuple[Point, Point, tuple[bool, bool]]]:
        for y in self._lines():
            for left, right in outline.level_spans(self.region, y):
                yield (left, y), (right, y), (False, False)

    def _lines(self) -> list[int]:
        """Return where the middle of the gap between two courses lies."""
        tops = [top for _, top, _ in self.courses()]
        return [top + self.gap // 2 for top in tops[:-1]]

    def _upright(self) -> Iterator[tuple[Point, Point, tuple[bool, bool]]]:
        """Yield the joints between ends, from one line between courses to the next.

        An end that reaches such a line inside the shape meets the joint there.
        """
        region = outline.turned(self.region)
        lines = [self.low[1], *self._lines(), self.high[1]]
        for (bottom, top), (_, _, first) in zip(pairwise(lines), self.courses(), strict=True):
            step = self.length + self.gap
            for x in range(first + self.length + self.gap // 2, self.high[0], step):
                for low, high in outline.level_spans(region, x):
                    start, end = (x, max(low, bottom)), (x, min(high, top))
                    if start[1] < end[1]:
                        yield start, end, (self._meets(start, bottom), self._meets(end, top))

    def _meets(self, end: Point, line: int) -> bool:
        """Whether an end lies on the line of its course, with the deck on both hands of it."""
        return end[1] == line and outline.contains(self.region, end)


def _joint(number: int, start: Point, end: Point, meets: tuple[bool, bool]) -> Joint:
    length = max(end[0] - start[0], end[1] - start[1]) / MM_PER_M.value
    words = f"length of joint {number}"
    return Joint(number, start, end, meets, Measured(f"joints.{number}", words, length, "m"))


def _turned_board(board: Board) -> Board:
    return Board(outline.turned(board.pieces), board.whole)


def _turned_joint(joint: Joint) -> Joint:
    start, end = joint.start[::-1], joint.end[::-1]
    return Joint(joint.number, start, end, joint.meets, joint.length)
