"""A shed's roof as a file describes it, with a line for everything that a roof can have."""

from pathlib import Path

from trainer.engine.plans.description import RoofDescription
from trainer.lessons.block import Block
from trainer.lessons.errors import ContentError
from trainer.lessons.roof_reading import RoofMistake
from trainer.lessons.roofs import plan_mistakes, read_roof, read_tables
from trainer.lessons.stock import Sizes

FILE = "shed.toml"

#: Sizes of no merchant: every list has a first and a last that differ.
STOCK = {
    "tape": Sizes("invented", {"roll_m": (10, 20)}),
    "bandage": Sizes("invented", {"roll_m": (15, 30)}),
    "mat": Sizes("invented", {"width_m": (0.9, 1.2), "roll_m": (25, 50)}),
    "trim": Sizes("invented", {"lengths_m": (2, 2.5)}),
    "resin": Sizes("invented", {"tins_kg": (5, 25)}),
    "catalyst": Sizes("invented", {"bottles_ml": (100, 300)}),
    "topcoat": Sizes("invented", {"tins_kg": (5, 15)}),
}

#: 4 by 2.5 m: a drip edge in front, a raised edge on either side, a wall behind.
SHED = """\
title = "Shed by the gate"
way_off_edge = 1

[outline]
shape = "rectangle"
length_m = 4
width_m = 2.5

[[edge]]
kind = "drip"
[[edge]]
kind = "raised"
[[edge]]
kind = "wall"
[[edge]]
kind = "raised"
turn_mm = 60

[[corner]]
at = 2
makes = "mitre"

[[opening]]
kind = "pipe"
x_m = 1
y_m = 1
diameter_mm = 110

[[opening]]
kind = "rooflight"
x_m = 2
y_m = 1
length_m = 0.8
width_m = 0.6

[boards]
length_mm = 2440
cut_joints_m = [1.2, 0.59]

[laminate]
lap_mm = 50

[mix]
product = "Own brew"
percent = 2.5
least_percent = 1
most_percent = 3

[[cup]]
minutes = 24
at_c = 18
percent = 2

[crew]
people = 2
start = "08:30"

[weather]
air_c = 18
humidity_percent = 60
rain = "no"

[fall]
towards_edge = 1
measured_mm = 63

[sold]
trim_m = 3
"""


def edited(old: str, new: str, text: str = SHED) -> str:
    """Return a text with its first such piece replaced."""
    assert old in text
    return text.replace(old, new, 1)


def with_outline(*lines: str) -> str:
    """Return the shed with another outline, and nothing that rests on the old one."""
    before, _, rest = SHED.partition("shape = ")
    edges = rest[rest.index("[[edge]]") : rest.index("[[corner]]")]
    return before + "\n".join(lines) + "\n\n" + edges


def read(text: str) -> RoofDescription:
    """Return the roof in a text; raise ContentError."""
    block = Block(FILE, 1, text)
    return read_roof(block.read(), block, STOCK)


def mistakes_in(text: str) -> tuple[RoofMistake, ...]:
    """Return what is wrong with a text, what only clipping finds included."""
    block = Block(FILE, 1, text)
    try:
        roof = read_roof(block.read(), block, STOCK)
    except ContentError as error:
        return roof_mistakes_of(error)
    return plan_mistakes(roof, block)


def mistake_in(text: str) -> RoofMistake:
    """Return the one thing that is wrong with a text."""
    (mistake,) = mistakes_in(text)
    return mistake


def mistakes_in_file(path: Path) -> tuple[RoofMistake, ...]:
    """Return for what a file is refused before its tables are looked at."""
    try:
        read_tables(path, FILE)
    except ContentError as error:
        return roof_mistakes_of(error)
    return ()


def roof_mistakes_of(error: ContentError) -> tuple[RoofMistake, ...]:
    """Return the mistakes of an error, which are all tied to a key."""
    assert all(isinstance(mistake, RoofMistake) for mistake in error.mistakes)
    return tuple(each for each in error.mistakes if isinstance(each, RoofMistake))
