"""Drawings measured with a geometry library: areas to scale, and nothing written twice over."""

import re
from itertools import combinations
from xml.etree.ElementTree import Element, fromstring

import pytest
from shapely.geometry import Point, Polygon
from shapely.ops import unary_union

from trainer.engine.plans.description import Edge, Laminate, RoofDescription, Sold
from trainer.engine.plans.openings import Pipe, Rooflight
from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.web.drawing import draw_roof

CORNERS = ((0, 0), (9000, 0), (8200, 4000), (4500, 4000), (4500, 8000), (0, 8000))
KINDS = ("drip", "raised", "wall", "wall", "raised", "wall")
#: A unit of the paper is about a hundredth of its width, written down to a tenth.
CLOSE = 2e-3


@pytest.fixture(scope="module")
def plan() -> RoofPlan:
    """A skew L of two layers, with a rooflight and a pipe."""
    edges = tuple(Edge(kind) for kind in KINDS)  # type: ignore[arg-type]
    openings = (Rooflight(1.2, 5.6, 1.2, 0.9), Pipe(6.3, 1.9, 110))
    sold = Sold(20, 30, 1000, 30, 3, 20, 500, 20)
    roof = RoofDescription(
        "A skew L", CORNERS, edges, sold, openings=openings, laminate=Laminate(layers=2)
    )
    return plan_roof(roof)


def layer(plan: RoofPlan, part: str, kind: str) -> Element:
    """A layer of a drawing."""
    root = fromstring(re.sub(r' xmlns="[^"]+"', "", draw_roof(plan, part)))  # noqa: S314
    return next(each for each in root.iter("g") if each.get("class") == kind)


def polygons(path: Element) -> list[Polygon]:
    """The outlines of a path; one that goes the other way round is a hole in the first."""
    outlines = path.get("d", "").replace("L", " ").replace("Z", "").split("M")[1:]
    figures = [[float(each) for each in outline.split()] for outline in outlines]
    return [Polygon(zip(each[::2], each[1::2], strict=True)) for each in figures]


def scale_of(plan: RoofPlan) -> float:
    """Units a millimetre: side 1 is nine metres long."""
    drip = next(
        path
        for path in layer(plan, "deck", "edges").iter("path")
        if path.get("class") == "edge-drip"
    )
    x0, _, x1, _ = map(float, re.findall(r"-?[\d.]+", drip.get("d", "")))
    return (x1 - x0) / 9000


def test_boards_cover_the_deck_but_for_its_gaps(plan: RoofPlan) -> None:
    """The area of the outline, less the rooflight, less 3 mm between boards."""
    boards = layer(plan, "deck", "deck").find("path")
    assert boards is not None
    drawn = sum(each.area for each in polygons(boards)) / scale_of(plan) ** 2
    deck = Polygon(CORNERS).area - 1200 * 900
    gaps = 3 * 1000 * sum(plan.deck.joint_lengths_m)
    assert drawn == pytest.approx(deck - gaps, rel=CLOSE)


def test_each_strip_over_a_joint_is_as_long_as_the_joint(plan: RoofPlan) -> None:
    """Its band on the paper is as long as the joint, and lies on the roof."""
    scale, roof = scale_of(plan), outline_on_paper(plan)
    lengths = {f"{each.number}: {each.name}": each.length_m for each in plan.bandage.strips}
    for path in layer(plan, "deck", "bandage").iter("path"):
        title = path.findtext("title") or ""
        if "joint" not in title:
            continue
        [band] = polygons(path)
        longest = max(band.bounds[2] - band.bounds[0], band.bounds[3] - band.bounds[1])
        wide = min(band.bounds[2] - band.bounds[0], band.bounds[3] - band.bounds[1])
        if longest > 2 * wide:
            assert longest == pytest.approx(lengths[title] * 1000 * scale, abs=0.3)
        assert roof.buffer(wide).contains(band)


def test_strips_round_a_kerb_lie_outside_it(plan: RoofPlan) -> None:
    """Four bands as wide as the bandage close round the rooflight, and none lies over it.

    Round 1200 by 900 mm, as wide as can be seen: 2 × (1200 + 900) × wide + 4 × wide², and the
    paper has tenths.
    """
    bands = [
        polygons(path)[0]
        for path in layer(plan, "deck", "bandage").iter("path")
        if "foot" in (path.findtext("title") or "")
    ]
    ring = unary_union(bands)
    wide = (ring.bounds[2] - ring.bounds[0]) / scale_of(plan) - 1200
    area = 2 * (1200 + 900) * wide / 2 + 4 * (wide / 2) ** 2
    assert len(bands) == 4
    assert wide / 2 >= 75
    assert ring.area == pytest.approx(area * scale_of(plan) ** 2, rel=1e-2)
    assert Polygon(ring.interiors[0]).area == pytest.approx(
        1200 * 900 * scale_of(plan) ** 2, rel=1e-2
    )


def outline_on_paper(plan: RoofPlan) -> Polygon:
    """The roof's outline, joined from its sides as drawn."""
    ends = {}
    for path in layer(plan, "deck", "edges").iter("path"):
        title = path.findtext("title") or ""
        if title.startswith("side"):
            x, y, *_ = map(float, re.findall(r"-?[\d.]+", path.get("d", "")))
            ends[int(title.split()[1].rstrip(","))] = (x, y)
    return Polygon([ends[number] for number in sorted(ends)])


def test_sides_close_to_the_outline_of_the_roof(plan: RoofPlan) -> None:
    """Its area is the roof's, to scale."""
    area = outline_on_paper(plan).area / scale_of(plan) ** 2
    assert area == pytest.approx(Polygon(CORNERS).area, rel=CLOSE)


def test_drops_of_a_layer_cover_the_deck_and_lie_double_at_laps(plan: RoofPlan) -> None:
    """Together they are the deck; what they have in common is what is hatched."""
    paths = list(layer(plan, "mat", "mat").iter("path"))
    drops, laps = (polygons(path) for path in paths[:2])
    deck = (Polygon(CORNERS).area - 1200 * 900) * scale_of(plan) ** 2
    assert unary_union(drops).area == pytest.approx(deck, rel=CLOSE)
    double = unary_union([one & other for one, other in combinations(drops, 2)])
    assert double.area == pytest.approx(unary_union(laps).area, rel=2e-2)


def test_discs_keep_apart(plan: RoofPlan) -> None:
    """No number's disc meets another's."""
    discs = [
        Point(float(each.get("cx", "")), float(each.get("cy", ""))).buffer(float(each.get("r", "")))
        for each in layer(plan, "deck", "numbers").iter("circle")
    ]
    assert len(discs) == len(plan.bandage.strips)
    assert not any(one.intersects(other) for one, other in combinations(discs, 2))


def test_a_disc_on_a_strip_lies_on_its_own(plan: RoofPlan) -> None:
    """The middle of each disc without a line to its thing lies in the band of that strip."""
    bands = {
        (path.findtext("title") or "").split(":")[0]: polygons(path)[0]
        for path in layer(plan, "deck", "bandage").iter("path")
    }
    numbers = layer(plan, "deck", "numbers")
    leads = numbers.find("path")
    led = set(re.findall(r"M(-?[\d.]+ -?[\d.]+)L", leads.get("d", "") if leads is not None else ""))
    on_strips = 0
    for ring, word in zip(numbers.iter("circle"), numbers.iter("text"), strict=True):
        place = (ring.get("cx", ""), ring.get("cy", ""))
        strip = bands[word.text or ""]
        beside_its_side = " ".join(place) not in led
        if beside_its_side and "edge" not in kind_of(plan, word.text or ""):
            assert strip.buffer(0.2).contains(Point(*map(float, place)))
            on_strips += 1
    assert on_strips > 10


def kind_of(plan: RoofPlan, number: str) -> str:
    """What a strip lies over."""
    return plan.bandage.strips[int(number) - 1].over
