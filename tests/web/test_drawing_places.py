"""Where things are written on a drawing: never on one another, and always on the paper."""

from itertools import combinations
from pathlib import Path

import pytest
from web_drawing import CONTENT, Drawing, ell, garage, outbuilding, planned, skew

from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.lessons.roofs import read_roof_file
from trainer.lessons.stock import read_stock
from trainer.web.drawing.layout import Layout, reading, width_of
from trainer.web.drawing.paper import Paper
from trainer.web.drawing.room import Box, Room, box_round

SAMPLES = sorted((CONTENT / "roofs").glob("*.toml"))
PARTS = ("deck", "mat")
#: A word that stands upright or level; skew ones are looked at in pictures.
Written = tuple[str, Box]


def gutter() -> RoofPlan:
    """The sole of a gutter, where hardly a number finds room on its strip."""
    walls = ("drip", "wall", "wall", "wall")
    return planned(((0, 0), (11000, 0), (11000, 600), (0, 600)), walls)  # type: ignore[arg-type]


def sample(path: Path) -> RoofPlan:
    """The plan of a roof that comes along."""
    return plan_roof(read_roof_file(path, read_stock(CONTENT)))


def written(drawn: Drawing) -> list[Written]:
    """Return the box of every number and of every word that isn't skew."""
    found: list[Written] = []
    for ring in drawn.layer("numbers").iter("circle"):
        x, y, radius = (float(ring.get(name, "")) for name in ("cx", "cy", "r"))
        found.append(("ring", box_round(x, y, 2 * radius, 2 * radius)))
    for plate in drawn.layer("numbers").iter("rect"):
        x, y, wide, high = (float(plate.get(name, "")) for name in ("x", "y", "width", "height"))
        found.append(("plate", Box(x, y, x + wide, y + high)))
    for kind in ("dimensions", "openings", "fall"):
        if any(each.get("class") == kind for each in drawn.root.iter("g")):
            found += words(drawn, kind)
    return found


def words(drawn: Drawing, kind: str) -> list[Written]:
    """Return the boxes of words that are written level or upright, a little less than as high."""
    found: list[Written] = []
    for each in drawn.layer(kind).iter("text"):
        said, turn = each.text or "", each.get("transform", "")
        if not turn:
            x, y = float(each.get("x", "")), float(each.get("y", "")) - 7.5
            found.append((said, box_round(x, y, width_of(said), 18)))
        elif turn.endswith("rotate(-90)"):
            x, y = map(float, turn.removeprefix("translate(").split(")")[0].split())
            found.append((said, box_round(x, y, 18, width_of(said))))
    return found


def lie_on_one_another(one: Box, other: Box) -> bool:
    """Whether two boxes have more than a hair in common."""
    across = min(one.right, other.right) - max(one.left, other.left)
    down = min(one.bottom, other.bottom) - max(one.top, other.top)
    return across > 1 and down > 1


@pytest.mark.parametrize("part", PARTS)
@pytest.mark.parametrize("plan", [garage(), ell(), skew(), outbuilding(), gutter()])
def test_nothing_is_written_on_anything_else(plan: RoofPlan, part: str) -> None:
    """Each number and each word can be read."""
    clashes = clashes_of(Drawing(plan, part))
    assert clashes == []


@pytest.mark.parametrize("part", PARTS)
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_roofs_that_come_along_can_be_read(path: Path, part: str) -> None:
    """Nothing on their drawings lies on anything else, or off the paper."""
    drawn = Drawing(sample(path), part)
    assert clashes_of(drawn) == []
    assert strays_of(drawn) == []


def clashes_of(drawn: Drawing) -> list[tuple[str, str]]:
    """Return which words lie on which."""
    pairs = combinations(written(drawn), 2)
    return [(one[0], other[0]) for one, other in pairs if lie_on_one_another(one[1], other[1])]


@pytest.mark.parametrize("part", PARTS)
@pytest.mark.parametrize("plan", [ell(), skew(), gutter()])
def test_nothing_is_written_off_the_paper(plan: RoofPlan, part: str) -> None:
    """Nor so near its edge that it is cut."""
    assert strays_of(Drawing(plan, part)) == []


def strays_of(drawn: Drawing) -> list[str]:
    """Return which words are cut by the edge of the paper."""
    left, top, wide, high = map(float, (drawn.root.get("viewBox") or "").split())
    return [
        said
        for said, box in written(drawn)
        if box.left < left or box.right > left + wide or box.top < top or box.bottom > top + high
    ]


def test_the_legend_ends_on_the_paper() -> None:
    """Its last line is below nothing."""
    drawn = Drawing(ell(), "deck")
    _, top, _, high = map(float, (drawn.root.get("viewBox") or "").split())
    lowest = max(float(each.get("y", "")) for each in drawn.layer("legend").iter("text"))
    assert lowest < top + high


def test_what_is_taken_is_not_free() -> None:
    """Neither is what touches it; what lies beside it is."""
    room = Room(640)
    room.take(Box(100, 100, 140, 120))
    assert not room.is_free(Box(120, 110, 160, 130))
    assert not room.is_free(Box(110, 105, 112, 107))
    assert room.is_free(Box(144, 100, 180, 120))
    assert room.is_free(Box(100, 124, 140, 140))


def test_nothing_is_free_beside_the_paper() -> None:
    """Above and below it there is room; to the left and right there is none."""
    room = Room(640)
    assert not room.is_free(Box(-1, 0, 20, 20))
    assert not room.is_free(Box(630, 0, 641, 20))
    assert room.is_free(Box(0, -40, 20, -20))
    assert room.is_free(Box(0, 5000, 640, 5020))


def test_a_box_over_the_edge_is_taken_as_far_as_the_paper_goes() -> None:
    """What hangs over is nobody's."""
    room = Room(640)
    room.take(Box(620, 0, 700, 20))
    room.take(Box(-300, 40, -200, 60))
    assert not room.is_free(Box(600, 0, 640, 20))
    assert room.is_free(Box(0, 0, 600, 60))


def test_a_room_knows_how_far_it_is_taken() -> None:
    """From the highest to the lowest, and from the paper's upper edge at the least."""
    room = Room(640)
    assert room.reach == (0, 0)
    room.take(Box(0, -30, 20, -10))
    room.take(Box(0, 700, 20, 720))
    assert room.reach == (-30, 720)


def test_a_number_may_lie_on_its_own_strip_alone() -> None:
    """A level strip's number lies on it, and not where an upright one crosses."""
    layout = Layout(Paper(640, 0.1, 0, 600))
    layout.take_strip((0, 1000), (5000, 1000), 8)
    layout.take_strip((2000, 0), (2000, 3000), 8)
    on_it, on_both = box_round(100, 500, 30, 30), box_round(200, 500, 30, 30)
    assert layout.is_clear_on(on_it, level=True)
    assert not layout.is_clear_on(on_it, level=False)
    assert not layout.is_clear_on(on_both, level=True)
    assert not layout.is_clear(on_it)


def test_a_second_word_for_one_thing_stands_elsewhere() -> None:
    """And so does a third; each has a line to the thing."""
    layout = Layout(Paper(640, 0.1, 0, 600))
    tags = [layout.put_round("9", (300, 300), (0, -1), (32, 32)) for _ in range(3)]
    boxes = [box_round(*tag.at, 32, 32) for tag in tags]
    assert not any(lie_on_one_another(*pair) for pair in combinations(boxes, 2))
    assert tags[0].at == pytest.approx((300, 264))
    assert {tag.foot for tag in tags} == {(300, 300)}


def test_a_word_is_written_even_where_nothing_is_free() -> None:
    """Then it stands where it was wanted."""
    layout = Layout(Paper(640, 0.1, 0, 600))
    layout.take([Box(0, -200, 640, 800)])
    assert layout.put_round("9", (300, 300), (0, -1), (32, 32)).at == pytest.approx((300, 264))


@pytest.mark.parametrize(
    ("end", "turn"),
    [
        ((10, 0), 0),
        ((-10, 0), 0),
        ((0, -10), -90),
        ((0, 10), -90),
        ((10, 10), 45),
        ((10, -10), -45),
    ],
)
def test_words_are_read_from_below_or_from_the_right(end: tuple[int, int], turn: int) -> None:
    """Never upside down, whichever way a side goes."""
    assert reading((0, 0), end) == turn
