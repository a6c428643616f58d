"""Polygons of a roof in whole millimetres: areas, what lies inside what, and cuts.

Clipping is pyclipper's, which works on whole numbers and so never loses a sliver. It is read
inside each function, since marking an answer needs none of it. A shape is a list of outlines:
an outer one anticlockwise, holes in it clockwise.
"""

from collections.abc import Iterable, Sequence

#: A place in whole millimetres: x to the right, y up.
Point = tuple[int, int]
Outline = tuple[Point, ...]
Shape = tuple[Outline, ...]
Span = tuple[int, int]


def area_mm2(shape: Iterable[Outline]) -> float:
    """Return the area of a shape in square millimetres, its holes taken off."""
    import pyclipper

    return float(sum(pyclipper.Area(outline) for outline in shape))


def box(low: Point, high: Point) -> Outline:
    """Return the rectangle between two corners, anticlockwise."""
    return (low, (high[0], low[1]), high, (low[0], high[1]))


def extent(outline: Sequence[Point]) -> tuple[Point, Point]:
    """Return the lowest and the highest corner of the box round an outline."""
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    return (min(xs), min(ys)), (max(xs), max(ys))


def is_simple(outline: Outline) -> bool:
    """Whether the sides of an outline neither cross nor touch nor run back on each other."""
    import pyclipper

    if any(_turns_back(*corners) for corners in _neighbours(outline)) or _touches(outline):
        return False
    simple = pyclipper.SimplifyPolygon(outline, pyclipper.PFT_EVENODD)
    return len(simple) == 1 and abs(pyclipper.Area(simple[0])) == abs(pyclipper.Area(outline))


def _neighbours(outline: Outline) -> Iterable[tuple[Point, Point, Point]]:
    before, after = (*outline[-1:], *outline[:-1]), (*outline[1:], *outline[:1])
    return zip(before, outline, after, strict=True)


def _turns_back(before: Point, here: Point, after: Point) -> bool:
    """Whether a side runs straight back along the one before it."""
    one = (here[0] - before[0], here[1] - before[1])
    other = (after[0] - here[0], after[1] - here[1])
    straight = one[0] * other[1] == one[1] * other[0]
    return straight and one[0] * other[0] + one[1] * other[1] < 0


def _touches(outline: Outline) -> bool:
    """Whether a corner lies on a side that isn't its own; the clipper lets that pass."""
    return any(
        _lies_on(corner, one, other)
        for one, other in zip(outline, (*outline[1:], outline[0]), strict=True)
        for corner in outline
        if corner not in (one, other)
    )


def _lies_on(point: Point, one: Point, other: Point) -> bool:
    (x, y), (x0, y0), (x1, y1) = point, one, other
    between = min(x0, x1) <= x <= max(x0, x1) and min(y0, y1) <= y <= max(y0, y1)
    return between and (x1 - x0) * (y - y0) == (y1 - y0) * (x - x0)


def contains(shape: Shape, point: Point) -> bool:
    """Whether a point lies inside a shape, not on its edge and not in a hole."""
    import pyclipper

    outer, *holes = shape
    inside: bool = pyclipper.PointInPolygon(point, outer) == 1
    return inside and all(pyclipper.PointInPolygon(point, hole) == 0 for hole in holes)


def common(one: Shape, other: Shape) -> Shape:
    """Return what two shapes have in common."""
    import pyclipper

    return _closed(one, other, pyclipper.CT_INTERSECTION)


def without(one: Shape, other: Shape) -> Shape:
    """Return what is left of a shape when another is cut out of it."""
    import pyclipper

    return _closed(one, other, pyclipper.CT_DIFFERENCE)


def _closed(one: Shape, other: Shape, what: int) -> Shape:
    import pyclipper

    if not (one and other):
        return () if what == pyclipper.CT_INTERSECTION else one
    clipper = pyclipper.Pyclipper()
    clipper.AddPaths(one, pyclipper.PT_SUBJECT, True)
    clipper.AddPaths(other, pyclipper.PT_CLIP, True)
    found = clipper.Execute(what, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
    return tuple(tuple((x, y) for x, y in outline) for outline in found)


def level_spans(shape: Shape, y: int) -> list[Span]:
    """Return where a level line runs inside a shape, as spans of x from left to right.

    Where the line runs along a side of the shape there is nothing on one hand of it: that part
    is left out.
    """
    import pyclipper

    low, high = extent([point for outline in shape for point in outline])
    clipper = pyclipper.Pyclipper()
    clipper.AddPath(((low[0] - 1, y), (high[0] + 1, y)), pyclipper.PT_SUBJECT, False)
    clipper.AddPaths(shape, pyclipper.PT_CLIP, True)
    tree = clipper.Execute2(pyclipper.CT_INTERSECTION, pyclipper.PFT_NONZERO, pyclipper.PFT_NONZERO)
    paths = pyclipper.OpenPathsFromPolyTree(tree)
    spans = sorted((min(x for x, _ in path), max(x for x, _ in path)) for path in paths)
    return _less(spans, _sides_at(shape, y))


def _sides_at(shape: Shape, y: int) -> list[Span]:
    """Return the sides of a shape that lie on a level line."""
    sides = (
        (one, other)
        for outline in shape
        for one, other in zip(outline, (*outline[1:], outline[0]), strict=True)
    )
    return [
        (min(one[0], other[0]), max(one[0], other[0]))
        for one, other in sides
        if one[1] == other[1] == y
    ]


def _less(spans: Iterable[Span], taken: Iterable[Span]) -> list[Span]:
    """Return spans without the parts that others take up."""
    left = list(spans)
    for low, high in taken:
        left = [
            part
            for start, end in left
            for part in ((start, min(end, low)), (max(start, high), end))
            if part[0] < part[1]
        ]
    return left


def turned(shape: Shape) -> Shape:
    """Return a shape with x and y changed over, so that upright lines lie level.

    Its outlines keep their sense of going round.
    """
    return tuple(tuple((y, x) for x, y in reversed(outline)) for outline in shape)
