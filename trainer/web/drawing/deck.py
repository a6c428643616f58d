"""The first picture of a roof: its boards, the tape, and the bandage in laying order."""

from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.bandage import Strip
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.layout import Layout, Tag
from trainer.web.drawing.lines import Place, band, beside, foot, moved, outward
from trainer.web.drawing.marks import Layer, Path, disc, leads
from trainer.web.drawing.numbers import Ways, radius_of
from trainer.web.drawing.paper import Paper

#: The least that can be seen of tape, of bandage, and of a scrap's length, in units of the paper.
_TAPE, _BANDAGE, _SCRAP = 3.0, 6.0, 12.0


def boards_layer(plan: RoofPlan, paper: Paper) -> Layer:
    """Return the boards, and the joints that need no tape."""
    shapes = (piece for board in plan.deck.boards for piece in board.pieces)
    closed = (paper.path((each.start, each.end), shut=False) for each in plan.deck.closed_joints)
    paths = (Path("board", paper.shapes(shapes)), Path("joint-closed", "".join(closed)))
    return Layer("deck", "Boards", paths if plan.deck.closed_joints else paths[:1])


def bandage_layer(plan: RoofPlan, ways: Ways, paper: Paper) -> Layer:
    """Return the strips over sides and joints, then the scraps and patches that lap on to them."""
    outline = _Outlines(plan, ways, paper)
    long_first = sorted(plan.bandage.strips, key=lambda each: each.end is None)
    paths = (
        Path(
            "patch" if strip.over == "open end" else "glass",
            paper.path(outline.of(strip, strip.start)),
            f"{strip.number}: {strip.name}",
        )
        for strip in long_first
        if strip.start
    )
    return Layer("bandage", "Bandage", tuple(paths))


def tape_layer(plan: RoofPlan, paper: Paper) -> Layer:
    """Return the tape, drawn over the bandage as it shows through when that is wet."""
    wide = paper.at_least(plan.description.tape.width_mm, _TAPE)
    pieces = (
        band(piece.start, piece.end, wide)
        for piece in plan.tape.pieces
        if piece.start and piece.end
    )
    return Layer("tape", "Tape", (Path("tape", paper.shapes(pieces)),))


class _Outlines:
    """The outlines of strips in millimetres."""

    def __init__(self, plan: RoofPlan, ways: Ways, paper: Paper) -> None:
        self.paper, self.ways = paper, ways
        self.wide = paper.at_least(plan.description.bandage.width_mm, _BANDAGE)
        corners: list[Place] = [side.start for side in plan.sides]
        inner = beside(corners, -self.wide)
        near_and_far = zip(inner, (*inner[1:], inner[0]), strict=True)
        self.inner = dict(zip(corners, near_and_far, strict=True))

    def of(self, strip: Strip, start: Place) -> list[Place]:
        """Return a strip inside its side, along a kerb, over its joint, corner or trim join."""
        if strip.end and strip.over == "edge":
            near, far = self.inner[start]
            return [start, strip.end, far, near]
        if strip.end and strip.over == "kerb":
            return foot(start, strip.end, self.wide)
        if strip.end:
            return band(start, strip.end, self.wide)
        size = self.paper.at_least(strip.length_m * MM_PER_M.value, _SCRAP)
        if strip.over == "open end":
            return band((start[0] - size / 2, start[1]), (start[0] + size / 2, start[1]), size)
        return band(start, moved(start, self.ways[start], -size), self.wide)


def take_strips(plan: RoofPlan, layout: Layout) -> None:
    """Take up the strips over joints and along kerbs."""
    wide_mm = layout.paper.at_least(plan.description.bandage.width_mm, _BANDAGE)
    wide = wide_mm * layout.paper.scale
    for strip in plan.bandage.strips:
        if strip.over == "joint" and strip.start and strip.end:
            layout.take_strip(strip.start, strip.end, wide)
        if strip.over == "kerb" and strip.start and strip.end:
            out = outward(strip.start, strip.end)
            start, end = (moved(each, out, wide_mm / 2) for each in (strip.start, strip.end))
            layout.take_strip(start, end, wide)


def numbers_layer(tags: list[Tag]) -> Layer:
    """Return the numbers, with lines to what they stand beside."""
    discs = tuple(disc(tag, radius_of(tag.words)) for tag in tags)
    return Layer("numbers", "Laying order", (leads(tags),), discs)
