"""What a drawing is made of, for its template: layers of paths, discs and words."""

import math
from typing import NamedTuple

from trainer.web.drawing.layout import Tag, width_of
from trainer.web.drawing.lines import Place, moved, towards
from trainer.web.drawing.paper import LETTER


class Path(NamedTuple):
    """A path, how it looks, and what a pointer that rests on it is told."""

    look: str
    d: str
    title: str = ""


class Disc(NamedTuple):
    """A number in a ring."""

    words: str
    x: str
    y: str
    radius: str
    #: The y of the foot of its words.
    foot: str


class Plate(NamedTuple):
    """A number in a box."""

    look: str
    words: str
    left: str
    top: str
    wide: str
    high: str
    x: str
    #: The y of the foot of its words.
    foot: str


class Words(NamedTuple):
    """Words on the paper; turned ones have a transform."""

    words: str
    x: str
    y: str
    anchor: str = "middle"
    transform: str = ""


class Layer(NamedTuple):
    """What belongs together, drawn in this order."""

    kind: str
    title: str
    paths: tuple[Path, ...] = ()
    discs: tuple[Disc, ...] = ()
    plates: tuple[Plate, ...] = ()
    words: tuple[Words, ...] = ()


#: From the middle of a letter down to its foot.
MIDDLE = 7.5


def unit(value: float) -> str:
    """Return a length on the paper as it is written down."""
    return f"{value:.1f}"


def disc(tag: Tag, radius: float) -> Disc:
    """Return a tag as a number in a ring."""
    x, y = tag.at
    return Disc(tag.words, unit(x), unit(y), unit(radius), unit(y + MIDDLE))


def plate(tag: Tag, size: tuple[float, float], look: str) -> Plate:
    """Return a tag as a number in a box of some size."""
    (x, y), (wide, high) = tag.at, size
    box = (unit(x - wide / 2), unit(y - high / 2), unit(wide), unit(high))
    return Plate(look, tag.words, *box, unit(x), unit(y + MIDDLE))


def words(tag: Tag) -> Words:
    """Return a tag as words, with their middle at its place."""
    x, y = tag.at
    if not tag.turn:
        return Words(tag.words, unit(x), unit(y + MIDDLE))
    turned = f"translate({unit(x)} {unit(y)}) rotate({tag.turn})"
    return Words(tag.words, "0", unit(MIDDLE), "middle", turned)


def leads(tags: list[Tag]) -> Path:
    """Return the lines from tags to their things."""
    lines = (
        f"M{unit(tag.at[0])} {unit(tag.at[1])}L{unit(tag.foot[0])} {unit(tag.foot[1])}"
        for tag in tags
        if tag.foot
    )
    return Path("lead", "".join(lines))


def line(*places: Place) -> str:
    """Return a line through places of the paper as path data."""
    return "M" + "L".join(f"{unit(x)} {unit(y)}" for x, y in places)


def arrow(start: Place, end: Place, half: float) -> str:
    """Return the head of an arrow at the end of a line, as path data."""
    way = towards(start, end)
    foot, across = moved(end, way, -1.5 * half), (way[1], -way[0])
    return line(moved(foot, across, half), end, moved(foot, across, -half))


def behind(tags: list[Tag]) -> Path:
    """Return what lies behind words that stand off their thing, so that no line runs through."""
    boxes = (_plate(tag) for tag in tags if tag.foot)
    return Path("plate", "".join(f"{line(*each)}Z" for each in boxes))


def _plate(tag: Tag) -> list[Place]:
    """Return the corners of the box round a tag, turned as its words are."""
    turn = math.radians(tag.turn)
    along, down = (math.cos(turn), math.sin(turn)), (-math.sin(turn), math.cos(turn))
    ends = [moved(tag.at, along, half * width_of(tag.words) / 2) for half in (-1, 1)]
    above, below = ([moved(end, down, half * LETTER / 2) for end in ends] for half in (-1, 1))
    return [*above, *reversed(below)]
