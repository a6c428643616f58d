"""Outlines, boards and joints against shapely (a general-purpose geometry library).

The decks are random simple polygons on whole centimetres. Shapely works in floats, our clipper in
whole millimetres: a cut on a skew side may be rounded by a millimetre, so areas agree within a
millimetre along the cut and lengths within a few millimetres.
"""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import LineString, Polygon, box, unary_union

from trainer.engine import outline
from trainer.engine.outline import Outline
from trainer.engine.plans.deck import Deck, deck_of
from trainer.engine.plans.description import Boards, Edge, RoofDescription, Sold
from trainer.engine.plans.openings import Rooflight

SOLD = Sold(20, 30, 1000, 30, 3, 20, 500, 20)
#: What rounding to a millimetre may do to a length that ends on a skew side.
ROUNDED_MM = 3


@st.composite
def stars(draw: st.DrawFn) -> Outline:
    """Return a simple outline: corners at random distances round a middle, anticlockwise."""
    number = draw(st.integers(3, 9))
    reach = [draw(st.integers(100, 600)) for _ in range(number)]
    turns = [2 * math.pi * (step + draw(st.floats(0.05, 0.95))) / number for step in range(number)]
    corners = tuple(
        (round(r * math.cos(turn)) * 10, round(r * math.sin(turn)) * 10)
        for r, turn in zip(reach, turns, strict=True)
    )
    polygon = Polygon(corners)
    assume(polygon.is_valid and polygon.exterior.is_ccw and polygon.area > 1e6)
    assume(len(set(corners)) == number)
    return corners


def decked(corners: Outline, **boards: float | str) -> tuple[RoofDescription, Deck]:
    """Return a roof of this outline and its deck."""
    edges = tuple(Edge("drip") for _ in corners)
    roof = RoofDescription("Invented", corners, edges, SOLD, boards=Boards(**boards))  # type: ignore[arg-type]
    return roof, deck_of(roof)


@given(stars())
def test_area(corners: Outline) -> None:
    """The surveyor's rule, the clipper and shapely give one area."""
    _, deck = decked(corners)
    assert deck.area.value * 1e6 == pytest.approx(Polygon(corners).area, rel=1e-9)
    assert outline.area_mm2((corners,)) == pytest.approx(Polygon(corners).area, rel=1e-9)


@settings(max_examples=200)
@given(st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8)), min_size=3, max_size=7))
def test_what_is_simple(corners: list[tuple[int, int]]) -> None:
    """Coarse random outlines, crossing and touching more often than not: both say the same."""
    assume(len(set(corners)) == len(corners))
    scaled = tuple((x * 1000, y * 1000) for x, y in corners)
    assert outline.is_simple(scaled) == Polygon(scaled).is_valid


@settings(deadline=None)
@given(stars(), st.sampled_from(["along", "up"]))
def test_boards_cover_the_deck_but_for_the_gaps(corners: Outline, run: str) -> None:
    """No board lies over another, none outside, and only gaps between them are left."""
    roof, deck = decked(corners, run=run)
    pieces = [Polygon(piece) for board in deck.boards for piece in board.pieces]
    together = unary_union([piece.buffer(0) for piece in pieces])
    deck_itself = Polygon(corners)
    assert sum(piece.area for piece in pieces) == pytest.approx(together.area, rel=1e-3)
    assert together.difference(deck_itself.buffer(2)).area == pytest.approx(0, abs=1)
    widened = together.buffer(roof.boards.gap_mm + 1, join_style="mitre")
    assert deck_itself.difference(widened).area <= deck_itself.length * 2


@settings(deadline=None)
@given(stars())
def test_joints_between_courses_run_from_edge_to_edge(corners: Outline) -> None:
    """Each level joint is what shapely leaves of a level line inside the deck."""
    _, deck = decked(corners)
    low, high = outline.extent(corners)
    level = [joint for joint in deck.joints if joint.start[1] == joint.end[1]]
    lines = range(low[1] + 1221, high[1], 1223)
    for y in lines:
        cut = LineString([(low[0] - 1, y), (high[0] + 1, y)]).intersection(Polygon(corners))
        ours = sum(j.length.value * 1000 for j in level if j.start[1] == y)
        slivers = 10 * 10  # pieces under ten millimetres are left out
        assert ours == pytest.approx(cut.length, abs=slivers + 2 * ROUNDED_MM * len(corners))
    assert {joint.start[1] for joint in level} <= set(lines)


@settings(deadline=None)
@given(stars())
def test_an_end_that_meets_a_joint_lies_inside_the_deck(corners: Outline) -> None:
    """And one that doesn't lies on the deck's edge, where the tape stops."""
    _, deck = decked(corners)
    edge = Polygon(corners).exterior
    level = [LineString([j.start, j.end]) for j in deck.joints if j.start[1] == j.end[1]]
    for joint in deck.joints:
        for end, meets in zip((joint.start, joint.end), joint.meets, strict=True):
            here = LineString([end, end]).centroid
            if meets:
                assert min(line.distance(here) for line in level) <= ROUNDED_MM
            else:
                assert edge.distance(here) <= ROUNDED_MM * 20


@settings(deadline=None)
@given(stars())
def test_tongued_boards_have_no_open_joint(corners: Outline) -> None:
    """The same joints are there, and closed."""
    _, square = decked(corners, gap_mm=0)
    _, tongued = decked(corners, edge="tongued")
    assert tongued.joints == ()
    assert len(tongued.closed_joints) == len(square.joints)


def test_a_rooflight_parts_boards_and_joints() -> None:
    """4.8 by 3.6 m with a rooflight of 1.2 by 0.9 m over the first joint between courses."""
    corners = ((0, 0), (4800, 0), (4800, 3600), (0, 3600))
    light = Rooflight(1.0, 0.8, 1.2, 0.9)
    edges = tuple(Edge("drip") for _ in corners)
    deck = deck_of(RoofDescription("Invented", corners, edges, SOLD, openings=(light,)))
    left = Polygon(corners).difference(box(1000, 800, 2200, 1700))
    assert deck.net.value * 1e6 == pytest.approx(left.area)
    first = [j for j in deck.joints if j.start[1] == j.end[1] == 1221]
    assert [(j.start[0], j.end[0]) for j in first] == [(0, 1000), (2200, 4800)]
    pieces = unary_union([Polygon(piece) for board in deck.boards for piece in board.pieces])
    assert pieces.difference(left).area == pytest.approx(0, abs=1)
