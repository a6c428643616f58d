"""Roofs as they are written down: a file, a form or a stored text, and the roof in it.

Reading finds every mistake at once, each tied to its key, and needs no clipping. What only
clipping finds, such as sides that cross, comes from `plan_mistakes`.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from trainer.engine.errors import BadRoof
from trainer.engine.plans import checks
from trainer.engine.plans.description import PARTS, RoofDescription
from trainer.lessons.block import Block
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.lesson import digest_of
from trainer.lessons.roof_parts import (
    CORNERS_KEY,
    read_corner_rules,
    read_crew,
    read_cups,
    read_edges,
    read_openings,
    read_outline,
    read_way_off,
)
from trainer.lessons.roof_reading import RoofMistake, RoofReading, mistake_at, printable
from trainer.lessons.roof_sizes import sold_from
from trainer.lessons.stock import Sizes

Stock = Mapping[str, Sizes]

#: A form and a stored text have no lines to point at.
NO_FILE = Block("", 1, "")
_LONGEST_FILE = 200_000
_KNOWN = dict.fromkeys(
    ("title", "way_off_edge", "outline", "edge", "corner", "opening", "cup", *PARTS)
)


@dataclass(frozen=True)
class SampleRoof:
    """A roof of content/roofs."""

    #: Of its file, without .toml.
    name: str
    description: RoofDescription
    data: Mapping[str, Any] = field(repr=False)
    block: Block = field(repr=False)

    @property
    def text(self) -> str:
        """The roof as it would be stored."""
        return roof_text(self.data)


def read_roof(data: Mapping[str, Any], block: Block, stock: Stock) -> RoofDescription:
    """Return the roof in tables as a file or a form gives them.

    `stock` gives the sizes to buy in where the roof doesn't. Raises ContentError with a
    RoofMistake for everything that is wrong.
    """
    reading = RoofReading(data, block)
    reading.refuse_unknown("", data, _KNOWN, "A roof")
    title, corners, edges = reading.title(), read_outline(reading), read_edges(reading)
    openings, overruled = read_openings(reading), read_corner_rules(reading)
    cups, off = read_cups(reading), read_way_off(reading)
    parts: dict[str, Any] = {"crew": read_crew(reading)}
    for name, kind in PARTS.items():
        if name not in parts:
            sizes = sold_from(stock) if name == "sold" else None
            parts[name] = reading.part(name, reading.table(name), kind, f"[{name}]", sizes)
    if reading.mistakes:
        raise ContentError(sorted(reading.mistakes, key=lambda mistake: mistake.line))
    given = frozenset(reading.given)
    return RoofDescription(
        title,
        corners,
        edges,
        openings=openings,
        overruled=overruled,
        way_off_edge=off,
        cups=cups,
        given=given,
        **parts,
    )


def read_roof_file(path: Path, stock: Stock, file: str = "") -> RoofDescription:
    """Return the roof in a TOML file; raise ContentError with all mistakes, OSError.

    `file` is what mistakes call it, where that isn't its path.
    """
    data, block = read_tables(path, file or str(path))
    return read_roof(data, block, stock)


def read_tables(path: Path, file: str) -> tuple[dict[str, Any], Block]:
    """Return the tables of a TOML file, and the block that mistakes in them point into.

    Raises ContentError for what isn't TOML in UTF-8, and OSError.
    """
    block = Block(file, 1, _text_of(path, file))
    try:
        return block.read(), block
    except AuthorError as error:
        found = RoofMistake(
            error.file, error.line, error.sentence, printable(error.text), error.mend
        )
        raise ContentError([found]) from error
    except (ValueError, RecursionError) as error:
        # A number of thousands of digits, or lists in lists in lists.
        sentence = "This can't be read: a number or a list in it is beyond all measure."
        raise ContentError([RoofMistake(file, 1, sentence)]) from error


def _text_of(path: Path, file: str) -> str:
    with path.open("rb") as opened:
        raw = opened.read(_LONGEST_FILE + 1)
    if len(raw) > _LONGEST_FILE:
        sentence = f"The file is over {_LONGEST_FILE // 1000} kB. No roof takes as much."
        raise ContentError([RoofMistake(file, 1, sentence)])
    try:
        # Some editors put a mark before the first letter.
        return raw.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        mend = "Save the file again as UTF-8."
        found = RoofMistake(file, line, "This isn't UTF-8 text.", "", mend)
        raise ContentError([found]) from error


def plan_mistakes(roof: RoofDescription, block: Block) -> tuple[RoofMistake, ...]:
    """Return what no plan can be made from, each tied to its key and its line."""
    return tuple(
        mistake_at(block, _key_of(bad, roof), bad.sentence) for bad in checks.roof_mistakes(roof)
    )


def _key_of(bad: BadRoof, roof: RoofDescription) -> str:
    """Return the key of what the engine calls "opening 2", "corner 4" or "outline"."""
    name, _, number = bad.where.partition(" ")
    if name == "outline" and CORNERS_KEY in roof.given:
        return CORNERS_KEY
    if name == "corner":
        return f"corner.{list(roof.overruled).index(int(number)) + 1}.at"
    return f"{name}.{number}" if number else name


def roof_text(data: Mapping[str, Any]) -> str:
    """Return what was typed as one canonical text, with no default filled in.

    Tables that were read without a mistake always have one; raises ValueError for others.
    """
    return json.dumps(
        data, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":")
    )


def roof_digest(text: str) -> str:
    """Return the SHA-256 of a roof's text, in hexadecimal."""
    return digest_of(text)


def roof_from_text(text: str, stock: Stock) -> RoofDescription:
    """Return the roof in a text that `roof_text` made; raise ContentError."""
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise ContentError([RoofMistake("", 1, "This isn't the text of a roof.")]) from error
    if not isinstance(data, dict):
        raise ContentError([RoofMistake("", 1, "This isn't the text of a roof.")])
    return read_roof(data, NO_FILE, stock)


def read_sample_roofs(
    folder: Path, stock: Stock
) -> tuple[dict[str, SampleRoof], list[AuthorError]]:
    """Return the roofs of content/roofs by name, and every mistake in them."""
    roofs: dict[str, SampleRoof] = {}
    mistakes: list[AuthorError] = []
    for path in sorted((folder / "roofs").glob("*.toml")):
        try:
            data, block = read_tables(path, f"content/roofs/{path.name}")
            description = read_roof(data, block, stock)
        except ContentError as error:
            mistakes.extend(error.mistakes)
        else:
            roofs[path.stem] = SampleRoof(path.stem, description, data, block)
    return roofs, mistakes
