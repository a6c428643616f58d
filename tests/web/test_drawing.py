"""The drawing of a roof: to scale, each thing once, each edge in its own line."""

import re
from xml.etree.ElementTree import Element

import pytest
from web_drawing import FACE, Drawing, ell, extent, garage, outbuilding, planned, skew

from trainer.engine.plans.description import Edge, Fall, Laminate
from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing import TITLES, draw_roof

HOSTILE = "<script>alert('x')</script> & \"quoted\" --> ]]> \x0b\ufffe"
PARTS = pytest.mark.parametrize("part", ["deck", "mat"])
KINDS = {"drip": "drip edge", "raised": "raised edge", "wall": "wall"}
ROOFS = {"garage": garage, "ell": ell, "skew": skew, "outbuilding": outbuilding}


@pytest.fixture(scope="module", params=ROOFS)
def roof(request: pytest.FixtureRequest) -> RoofPlan:
    """One roof of the cast after another."""
    plan: RoofPlan = ROOFS[request.param]()
    return plan


@PARTS
def test_a_drawing_is_an_image_with_a_name_and_a_description(part: str) -> None:
    """A screen reader hears both, and those of two drawings on one page are told apart."""
    drawn = Drawing(garage(), part)
    assert drawn.root.get("role") == "img"
    named = [each.get("id") for each in drawn.root if each.tag in {"title", "desc"}]
    assert (drawn.root.get("aria-labelledby") or "").split() == named
    assert all(f"-{part}-" in (name or "") for name in named)
    assert drawn.find("title") == f"A roof of our own: {TITLES[part]}"
    assert "5.2\u00a0m long and 2.9\u00a0m wide" in drawn.find("desc")


@PARTS
def test_a_drawing_has_no_styles_and_no_scripts_of_its_own(roof: RoofPlan, part: str) -> None:
    """The content policy of the pages forbids both."""
    text = draw_roof(roof, part)
    assert not re.search(r"\sstyle=|<style|<script|\son[a-z]+=|javascript:|href", text)


@PARTS
def test_every_class_of_a_drawing_has_a_rule(roof: RoofPlan, part: str) -> None:
    """But for those that only group, or are filled in the drawing itself.

    The second layer has the dashes of all later ones.
    """
    drawn = Drawing(roof, part)
    layers = {each.get("class") or "" for each in drawn.root.iter("g")}
    rules = set(re.findall(r"\.([a-z][\w-]*)", FACE.read_text(encoding="utf-8")))
    assert drawn.classes - layers - {"hatch-wall", "hatch-lap", "later-2"} <= rules


@PARTS
def test_every_hatching_is_in_its_own_drawing(part: str) -> None:
    """Two drawings stand on one page, and neither borrows from the other."""
    drawn = Drawing(ell(), part)
    called = {each.get("fill", "")[5:-1] for each in drawn.root.iter("path") if each.get("fill")}
    assert called == {each.get("id") for each in drawn.root.iter("pattern")} - (
        {"roof-deck-lap"} if part == "deck" else set()
    )


@PARTS
def test_a_hostile_title_is_only_text(part: str) -> None:
    """Titles are typed by people. What XML can't hold at all is left out."""
    drawn = Drawing(garage(title=HOSTILE), part)
    assert drawn.find("title").startswith("<script>alert('x')</script> & \"quoted\" --> ]]>")
    assert not list(drawn.root.iter("script"))


def test_there_are_two_pictures() -> None:
    """Another one is refused."""
    assert set(TITLES) == {"deck", "mat"}
    with pytest.raises(KeyError):
        draw_roof(garage(), "topcoat")


def test_a_millimetre_is_as_long_across_as_it_is_up(roof: RoofPlan) -> None:
    """And as long as the bar says: the boards cover the whole deck."""
    drawn = Drawing(roof, "deck")
    [boards] = drawn.paths("deck", "board")
    (left, top), (right, bottom) = extent(boards)
    xs, ys = zip(*roof.description.corners, strict=True)
    assert right - left == pytest.approx((max(xs) - min(xs)) * drawn.scale, abs=0.3)
    assert bottom - top == pytest.approx((max(ys) - min(ys)) * drawn.scale, abs=0.3)


def test_both_pictures_of_a_roof_have_one_scale_and_place() -> None:
    """Side by side they can be compared."""
    deck, mat = Drawing(ell(), "deck"), Drawing(ell(), "mat")
    assert deck.scale == mat.scale
    assert extent(deck.paths("edges", "edge-drip")[0]) == extent(mat.paths("edges", "edge-drip")[0])


def test_up_on_the_roof_is_up_on_the_paper() -> None:
    """The drip edge, side 1, is drawn lowest and the wall, side 3, highest."""
    drawn = Drawing(garage(), "deck")
    [drip], [wall] = drawn.paths("edges", "edge-drip"), drawn.paths("edges", "edge-wall")
    [boards] = drawn.paths("deck", "board")
    (_, top), (_, bottom) = extent(boards)
    assert {y for _, y in (*extent(drip), *extent(wall))} == {top, bottom}
    assert extent(drip)[0][1] == bottom


def test_each_side_is_drawn_in_the_line_of_its_kind(roof: RoofPlan) -> None:
    """And says which it is to whoever points at it."""
    drawn = Drawing(roof, "mat")
    for side in roof.sides:
        told = [path.findtext("title") for path in drawn.paths("edges", f"edge-{side.kind}")]
        assert told.count(f"side {side.number}, {KINDS[side.kind]}") == 1


def test_a_raised_edge_and_a_wall_reach_outside_the_roof() -> None:
    """The second line and the hatched band lie beyond the boards."""
    drawn = Drawing(garage(), "deck")
    (left, top), (right, _) = extent(drawn.paths("deck", "board")[0])
    outside = {
        round(x)
        for path in drawn.paths("edges", "edge-raised")
        for (x, _) in extent(path)
        if path.find("title") is None
    }
    assert outside == {round(left - 6), round(right + 6)}
    [band] = drawn.paths("edges", "hatch-wall")
    assert extent(band)[0][1] == pytest.approx(top - 11, abs=0.1)


def test_each_strip_has_its_number_once(roof: RoofPlan) -> None:
    """One over a joint that was only measured has no place, and is named under the legend."""
    drawn = Drawing(roof, "deck")
    note = [each for each in drawn.words("legend") if each.startswith("Over cut joints")]
    loose = re.findall(r"\d+", "".join(note))
    numbers = sorted(map(int, [*drawn.words("numbers"), *loose]))
    assert numbers == list(range(1, len(roof.bandage.strips) + 1))
    assert len(loose) == len(roof.deck.extra_joints_m)


def test_each_strip_is_drawn_with_its_name(roof: RoofPlan) -> None:
    """Whoever points at it is told the number and what it lies over."""
    told = [path.findtext("title") for path in Drawing(roof, "deck").layer("bandage").iter("path")]
    named = [f"{each.number}: {each.name}" for each in roof.bandage.strips if each.start]
    assert sorted(told, key=str) == sorted(named)


def test_tape_is_as_wide_as_it_is() -> None:
    """50 mm of it on a roof of 2.44 m, and 75 mm of bandage under it."""
    plan = planned(((0, 0), (2440, 0), (2440, 1830), (0, 1830)), ["drip"] * 4)
    drawn = Drawing(plan, "deck")
    assert thickness(drawn.paths("tape", "tape")[0]) == pytest.approx(50 * drawn.scale, abs=0.2)
    strip = next(
        path
        for path in drawn.paths("bandage", "glass")
        if "joint 1" in (path.findtext("title") or "")
    )
    assert thickness(strip) == pytest.approx(75 * drawn.scale, abs=0.2)


def test_tape_can_be_seen_on_a_large_roof_too() -> None:
    """There it is three units wide, which is more than its own width."""
    drawn = Drawing(ell(), "deck")
    assert 50 * drawn.scale < 3
    assert thickness(drawn.paths("tape", "tape")[0]) == pytest.approx(3, abs=0.2)


def thickness(path: Element) -> float:
    """The width of a path's first band, which runs level or upright."""
    first = path.get("d", "").split("Z")[0]
    numbers = [float(each) for each in re.findall(r"-?[\d.]+", first)]
    xs, ys = numbers[::2], numbers[1::2]
    return min(max(xs) - min(xs), max(ys) - min(ys))


def test_tongued_joints_are_dotted_and_have_no_tape() -> None:
    """Nothing is laid over them."""
    drawn = Drawing(outbuilding(), "deck")
    assert len(drawn.paths("deck", "joint-closed")) == 1
    assert drawn.paths("tape", "tape") == []
    assert "joint that needs no tape" in drawn.words("legend")


def test_each_drop_has_its_number_once() -> None:
    """Those of the second layer stand in dashes."""
    plan = ell()
    drawn = Drawing(plan, "mat")
    assert sorted(drawn.words("numbers")) == sorted(drop.name for drop in plan.mat.drops)
    dashed = [each for each in drawn.layer("numbers").iter("rect") if "later" in classes(each)]
    assert len(dashed) == sum(drop.layer == 2 for drop in plan.mat.drops)


def classes(each: Element) -> list[str]:
    """The classes of an element."""
    return each.get("class", "").split()


def test_laps_are_hatched_where_drops_lie_double() -> None:
    """Three drops of a metre over 2.9 m lap twice, by 50 mm, along the whole garage."""
    drawn = Drawing(garage(), "mat")
    [laps] = drawn.paths("mat", "hatch-lap")
    assert laps.get("d", "").count("M") == 2
    assert thickness(laps) == pytest.approx(50 * drawn.scale, abs=0.2)
    assert "lap of 50\u00a0mm" in drawn.words("legend")


def test_one_drop_has_no_lap_in_drawing_or_legend() -> None:
    """A gutter's sole under a metre wide takes one."""
    plan = planned(((0, 0), (4000, 0), (4000, 900), (0, 900)), ["drip"] * 4)
    drawn = Drawing(plan, "mat")
    assert drawn.paths("mat", "hatch-lap") == []
    assert not any("lap of" in each for each in drawn.words("legend"))


@pytest.mark.parametrize(("towards", "across", "down"), [(1, 0, 1), (2, 1, 0), (3, 0, -1)])
def test_the_arrow_points_where_water_runs(towards: int, across: int, down: int) -> None:
    """Side 1 is below, side 2 on the right, side 3 above."""
    drawn = Drawing(garage(fall=Fall(60, towards)), "mat")
    shaft = drawn.paths("fall", "fall-arrow")[0].get("d", "").split("M")[1]
    (x0, y0), (x1, y1) = (map(float, place.split()) for place in shaft.split("L"))
    length = max(abs(x1 - x0), abs(y1 - y0))
    assert ((x1 - x0) / length, (y1 - y0) / length) == pytest.approx((across, down))
    assert drawn.words("fall") == ["fall 1:60"]


def test_every_side_has_its_length_outside() -> None:
    """The garage's in full."""
    assert Drawing(garage(), "deck").words("dimensions") == [
        "side 1: 5.2\u00a0m",
        "side 3: 5.2\u00a0m",
        "side 2: 2.9\u00a0m",
        "side 4: 2.9\u00a0m",
    ]


def test_mat_that_is_turned_is_told_at_its_side() -> None:
    """Up a wall, down over a drip edge."""
    edges = (Edge("drip", 50), Edge("raised"), Edge("wall", 150), Edge("raised"))
    written = Drawing(garage(edges=edges), "mat").words("dimensions")
    assert "side 1: 5.2\u00a0m, down 50\u00a0mm" in written
    assert "side 3: 5.2\u00a0m, up 150\u00a0mm" in written


def test_the_whole_size_is_written_where_no_side_tells_it() -> None:
    """Side 1 is as long as the skew roof; nothing is as high, from the drip edge to its tip."""
    assert [each for each in Drawing(skew(), "deck").words("dimensions") if "all" in each] == [
        "3.9\u00a0m in all"
    ]
    assert not any("all" in each for each in Drawing(ell(), "deck").words("dimensions"))


@PARTS
def test_openings_are_drawn_and_named(part: str) -> None:
    """A rooflight with its kerb, a pipe, and an outlet with a cross."""
    drawn = Drawing(ell(), part)
    assert drawn.words("openings") == ["rooflight 1", "pipe 2", "outlet 3"]
    looks = [path.get("class") for path in drawn.layer("openings").iter("path")]
    assert looks[:5] == ["paper", "thin", "steel", "water", "thin"]


def test_the_legend_tells_the_edges_that_there_are() -> None:
    """A roof with drip edges alone has no wall in its legend."""
    plan = planned(((0, 0), (3000, 0), (3000, 2000), (0, 2000)), ["drip"] * 4)
    written = Drawing(plan, "deck").words("legend")
    assert "drip edge" in written
    assert not {"wall", "raised edge"} & set(written)
    assert {"drip edge", "wall", "raised edge"} <= set(Drawing(garage(), "deck").words("legend"))


def test_the_ladder_stands_outside_its_side() -> None:
    """Below side 1, which is laid last."""
    drawn = Drawing(garage(), "deck")
    [ladder] = drawn.paths("edges", "ladder")
    (_, _), (_, bottom) = extent(drawn.paths("deck", "board")[0])
    assert extent(ladder)[0][1] > bottom


@PARTS
def test_words_can_be_read_on_a_phone(part: str) -> None:
    """A roof of 54 m² on a screen of 360 px has letters of 11 px and more."""
    width = float((Drawing(ell(), part).root.get("viewBox") or "").split()[2])
    face = FACE.read_text(encoding="utf-8")
    letters = re.findall(r"^\.picture text \{[^}]*font-size: (\d+)px", face, re.MULTILINE)
    assert [float(each) * 360 / width >= 11 for each in letters] == [True]


def test_a_roof_of_200_m2_gets_a_broader_paper() -> None:
    """Over a hundred numbers would crowd a narrow one; a phone pushes it sideways."""
    plan = planned(((0, 0), (20000, 0), (20000, 10000), (0, 10000)), ["drip"] * 4)
    assert len(plan.bandage.strips) > 100
    assert "broad" in classes(Drawing(plan, "deck").root)
    assert "broad" not in classes(Drawing(ell(), "deck").root)


def test_a_drawing_that_stands_alone_has_the_face_in_it() -> None:
    """By day, at night and on paper; each token that it uses, and a size of its own."""
    drawn = Drawing(garage(), "deck", standalone=True)
    style = drawn.find("style")
    used = set(re.findall(r"var\((--[\w-]+)", style))
    assert used <= set(re.findall(r"(--[\w-]+):", style))
    assert {"prefers-color-scheme: dark", "print", "forced-colors: active"} <= set(
        re.findall(r"@media (?:screen and )?\(?([\w-]+(?:: \w+)?)", style)
    )
    assert ".edge-drip" in style
    assert "url(" not in style
    assert style.count("{") == style.count("}")
    assert drawn.root.get("width") == "640"


def test_four_layers_are_told_apart() -> None:
    """Each later one has dashes of its own, here and in the legend."""
    drawn = Drawing(garage(laminate=Laminate(layers=4)), "mat")
    looks = [path.get("class") for path in drawn.layer("mat").iter("path")]
    assert looks[2:] == ["later later-2", "later later-3", "later later-4"]
    assert {"layer 2", "layer 3", "layer 4"} <= set(drawn.words("legend"))
