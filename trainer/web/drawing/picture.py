"""One picture of a roof, ready for its template."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing import deck, mat
from trainer.web.drawing.edges import edges_layer
from trainer.web.drawing.fall import fall_layer
from trainer.web.drawing.ladder import ladder
from trainer.web.drawing.layout import Layout, Tag
from trainer.web.drawing.legend import Entry, bar_of, deck_entries, legend_layer, mat_entries
from trainer.web.drawing.marks import Layer, Path, behind, leads, words
from trainer.web.drawing.numbers import (
    keep_for_joins,
    number_corners,
    number_joins,
    number_joints,
    number_kerbs,
    ways_out,
)
from trainer.web.drawing.openings import name_openings, openings_layer, take_openings
from trainer.web.drawing.paper import NARROW, paper_for
from trainer.web.drawing.sides import SideTag, write_sides
from trainer.web.drawing.whole import is_told, write_height, write_width

TITLES: Mapping[str, str] = {"deck": "Deck, tape and bandage", "mat": "Mat and fall"}
#: Half of what a side takes up, so that nothing is written over its line.
_SIDE = 4.0
_AIR = 14.0


@dataclass(frozen=True, slots=True)
class Picture:
    """Layers on a paper, in the order in which they are drawn."""

    part: str
    layers: tuple[Layer, ...]
    width: int
    top: float
    bottom: float

    @property
    def height(self) -> float:
        """How high the paper is."""
        return round(self.bottom - self.top, 1)

    @property
    def broad(self) -> bool:
        """Whether a phone has to push it sideways."""
        return self.width > NARROW


def picture_of(plan: RoofPlan, part: str) -> Picture:
    """Return the picture of a part; raise KeyError for another than deck and mat."""
    return {"deck": _deck, "mat": _mat}[part](plan)


def _deck(plan: RoofPlan) -> Picture:
    begun = _Begun(plan, len(plan.bandage.strips))
    layout = begun.layout
    ways = ways_out(plan)
    keep_for_joins(plan, ways, layout)
    corners = number_corners(plan, ways, layout)
    stands = ladder(plan, layout)
    sides = write_sides(plan, layout, _side_numbers(plan), turned=False)
    joins = number_joins(plan, ways, layout)
    deck.take_strips(plan, layout)
    kerbs = number_kerbs(plan, layout)
    names = name_openings(plan, layout)
    joints = number_joints(plan, layout)
    along = [side.number for side in sides if side.number]
    layers = (
        deck.boards_layer(plan, begun.paper),
        deck.bandage_layer(plan, ways, begun.paper),
        deck.tape_layer(plan, begun.paper),
        openings_layer(plan, begun.paper, names),
        edges_layer(plan, begun.paper, stands),
        deck.numbers_layer([*kerbs, *joints, *joins, *corners, *along]),
    )
    return begun.finished("deck", layers, sides, deck_entries(plan), _notes(plan))


def _mat(plan: RoofPlan) -> Picture:
    begun = _Begun(plan, len(plan.mat.drops))
    layout = begun.layout
    sides = write_sides(plan, layout, {}, turned=True)
    names = name_openings(plan, layout)
    drops = mat.number_drops(plan, layout)
    layers = (
        mat.mat_layer(plan, begun.paper),
        openings_layer(plan, begun.paper, names),
        edges_layer(plan, begun.paper),
        mat.numbers_layer(drops),
        fall_layer(plan, layout),
    )
    return begun.finished("mat", layers, sides, mat_entries(plan), [])


def _side_numbers(plan: RoofPlan) -> dict[int, str]:
    """Return the numbers of the strips along the sides, by side."""
    by_start = {side.start: side.number for side in plan.sides}
    strips = (each for each in plan.bandage.strips if each.over == "edge" and each.start)
    return {by_start[each.start]: f"{each.number}" for each in strips if each.start}


def _notes(plan: RoofPlan) -> list[str]:
    loose = [f"{each.number}" for each in plan.bandage.strips if not each.start]
    return [f"Over cut joints, wherever they lie: {', '.join(loose)}"] if loose else []


class _Begun:
    """A paper with the roof's outline and openings on it, and its width where no side tells it."""

    def __init__(self, plan: RoofPlan, numbers: int) -> None:
        self.plan = plan
        self.length_is_told, width_is_told = (is_told(plan, axis) for axis in (0, 1))
        self.paper = paper_for(plan.description.corners, numbers, whole=not width_is_told)
        self.layout = Layout(self.paper)
        self.layout.take_outline(plan.description.corners, _SIDE)
        take_openings(plan, self.layout)
        self.ruled = [] if width_is_told else [write_height(plan, self.layout)]

    def finished(
        self,
        part: str,
        layers: tuple[Layer, ...],
        sides: Sequence[SideTag],
        entries: Iterable[Entry],
        notes: Sequence[str],
    ) -> Picture:
        """Return the picture, with all lengths and the legend."""
        if not self.length_is_told:
            self.ruled.append(write_width(self.plan, self.layout))
        top, bottom = self.layout.reach
        bar = bar_of(self.plan, self.paper)
        legend, end = legend_layer([bar, *entries], notes, self.paper, bottom + _AIR)
        everything = (*layers, self._lengths([side.words for side in sides]), legend)
        return Picture(part, everything, self.paper.width, min(0.0, top - _AIR), end)

    def _lengths(self, sides: list[Tag]) -> Layer:
        ruled = tuple(Path("thin", d) for _, d in self.ruled)
        paths = (*ruled, leads(sides), behind(sides))
        tags = [*sides, *(tag for tag, _ in self.ruled)]
        return Layer("dimensions", "Lengths", paths, words=tuple(map(words, tags)))
