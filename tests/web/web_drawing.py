"""Roofs to draw, and a reader of drawings."""

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import Element, fromstring

from trainer.engine.plans.description import Boards, Edge, EdgeKind, Laminate, RoofDescription, Sold
from trainer.engine.plans.openings import Outlet, Pipe, Rooflight
from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.web.drawing import draw_roof

FACE = Path(__file__).parents[2] / "trainer" / "web" / "static" / "face.css"
CONTENT = Path(__file__).parents[2] / "content"
Spot = tuple[float, float]

_SOLD = Sold(20, 30, 1000, 30, 3, 20, 500, 20)
#: 5.2 by 2.9 m: a drip edge in front, raised sides, a wall behind.
_GARAGE = ((0, 0), (5200, 0), (5200, 2900), (0, 2900))
#: 54 m²: 9 by 8 m, the upper right corner of 4.5 by 4 m missing.
_ELL = ((0, 0), (9000, 0), (9000, 4000), (4500, 4000), (4500, 8000), (0, 8000))


def planned(corners: Sequence[tuple[int, int]], kinds: Sequence[EdgeKind], **more: Any) -> RoofPlan:
    """Return the plan of a roof with an outline, and one kind of edge for each side."""
    title = more.pop("title", "A roof of our own")
    edges = more.pop("edges", tuple(Edge(kind) for kind in kinds))
    return plan_roof(RoofDescription(title, tuple(corners), edges, _SOLD, **more))


def garage(**more: Any) -> RoofPlan:
    """Return the plan of a garage; side 1 is its drip edge."""
    return planned(_GARAGE, ("drip", "raised", "wall", "raised"), **more)


def ell(**more: Any) -> RoofPlan:
    """Return the plan of an L, with a rooflight, a pipe and an outlet, in two layers."""
    openings = (Rooflight(1.2, 5.6, 1.2, 0.9), Pipe(6.3, 1.9, 110), Outlet(8.4, 0.5, 100))
    kinds: tuple[EdgeKind, ...] = ("drip", "raised", "wall", "wall", "raised", "wall")
    return planned(_ELL, kinds, **{"openings": openings, "laminate": Laminate(layers=2), **more})


def skew(**more: Any) -> RoofPlan:
    """Return the plan of a roof whose whole size no side tells."""
    corners = ((0, 0), (6200, 0), (5400, 3300), (2500, 3900), (0, 3300))
    return planned(corners, ("drip", "raised", "wall", "wall", "raised"), **more)


def outbuilding(**more: Any) -> RoofPlan:
    """Return the plan of a roof of tongued boards, with two cut joints that were measured."""
    boards = Boards(edge="tongued", width_mm=590, cut_joints_m=(2.1, 3.0))
    return garage(boards=boards, **more)


class Drawing:
    """A drawing as a reader of XML finds it."""

    def __init__(self, plan: RoofPlan, part: str, *, standalone: bool = False) -> None:
        self.text = draw_roof(plan, part, standalone=standalone)
        self.root = fromstring(self.text)  # noqa: S314 - our own drawing
        for each in self.root.iter():
            each.tag = each.tag.rpartition("}")[2]

    def layer(self, kind: str) -> Element:
        """Return the group of a kind."""
        return next(each for each in self.root.iter("g") if each.get("class") == kind)

    def paths(self, kind: str, look: str) -> list[Element]:
        """Return the paths in a layer that have a class."""
        return [
            each for each in self.layer(kind).iter("path") if look in each.get("class", "").split()
        ]

    def words(self, kind: str) -> list[str]:
        """Return what is written in a layer."""
        return [each.text or "" for each in self.layer(kind).iter("text")]

    def find(self, name: str) -> str:
        """Return the text of an element that stands once under the root."""
        return self.root.findtext(name) or ""

    @property
    def scale(self) -> float:
        """Units a millimetre, read off the bar."""
        bar = self.layer("legend").find("path[@class='bar']")
        assert bar is not None
        metres = float(self.words("legend")[0].removesuffix("\u00a0m"))
        return float(bar.get("d", "").split("h")[1].split("m")[0]) / (1000 * metres)

    @property
    def classes(self) -> set[str]:
        """All classes that are used."""
        return {name for each in self.root.iter() for name in each.get("class", "").split() if name}


def spots(path: Element) -> list[list[Spot]]:
    """Return the outlines of a path that is drawn in straight lines from place to place."""
    return [
        [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", outline)]
        for outline in path.get("d", "").split("M")[1:]
    ]


def extent(path: Element) -> tuple[Spot, Spot]:
    """Return the upper left and the lower right corner of the box round a path."""
    places = [place for outline in spots(path) for place in outline]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return (min(xs), min(ys)), (max(xs), max(ys))
