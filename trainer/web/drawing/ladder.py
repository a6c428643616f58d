"""The ladder at the side that is laid last."""

from trainer.engine.plans.roof import RoofPlan
from trainer.web.drawing.layout import Layout, on_paper
from trainer.web.drawing.lines import Place, between, moved, outward
from trainer.web.drawing.marks import Path, line
from trainer.web.drawing.room import Box, box_round

#: From the roof to its far end, half its width, and from rung to rung.
_NEAR, _FAR, _HALF, _RUNG = 5.0, 46.0, 8.0, 8.5
#: From the roof to where nothing else may lie.
_CLEAR = 10.0
#: Near an end of the side, so that its middle is left for its length.
_SHARES = (0.88, 0.12, 0.8, 0.2, 0.7, 0.3, 0.6, 0.4, 0.5)


def ladder(plan: RoofPlan, layout: Layout) -> Path:
    """Return a ladder outside the side where it stands, where nothing else lies."""
    side = plan.sides[plan.description.way_off_edge - 1]
    way = on_paper(outward(side.start, side.end))
    start, end = layout.paper.at(side.start), layout.paper.at(side.end)
    feet = [between(start, end, share) for share in _SHARES]
    free = (each for each in feet if _is_free(layout, _box(each, way)))
    foot = next(free, feet[0])
    layout.take([_box(foot, way)])
    return Path("ladder", _drawn(foot, way), "The ladder")


def _is_free(layout: Layout, box: Box) -> bool:
    return layout.is_clear(box) and not layout.is_kept(box)


def _box(foot: Place, way: Place) -> Box:
    """Return the box round a ladder, clear of the side's own line."""
    across, down = (abs(each) * (_FAR - _CLEAR) + 2 * _HALF * (1 - abs(each)) for each in way)
    return box_round(*moved(foot, way, (_FAR + _CLEAR) / 2), across, down)


def _drawn(foot: Place, way: Place) -> str:
    aside = (way[1], -way[0])
    rails = [
        line(moved(near, aside, half), moved(far, aside, half))
        for near, far in [(moved(foot, way, _NEAR), moved(foot, way, _FAR))]
        for half in (-_HALF, _HALF)
    ]
    middles = [moved(foot, way, _NEAR + _RUNG * rung) for rung in range(1, 5)]
    rungs = [line(moved(each, aside, -_HALF), moved(each, aside, _HALF)) for each in middles]
    return "".join(rails + rungs)
