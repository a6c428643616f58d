"""The kind `locate`: find the place in a picture, or pick it from the list beside it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Any, ClassVar
from xml.etree import ElementTree as ET

from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean
from trainer.lessons.kinds.picked import (
    PickedMark,
    PickedQuestion,
    key_of,
    line,
    picked_answer,
    read_between,
    read_common,
    read_right,
    refuse_twice,
)
from trainer.lessons.question import Drawn

FEWEST, MOST = 4, 8
_SVG = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True, slots=True)
class Region:
    """A place in a picture, and what may be said of it."""

    name: str
    #: As the picture's own title for it says.
    words: str
    then: str


@dataclass(frozen=True, slots=True)
class LocateQuestion(PickedQuestion):
    """A picture in which one place is meant."""

    kind: ClassVar[str] = "locate"

    picture: str
    #: The picture's text, as it was read with the question.
    drawing: str
    regions: tuple[Region, ...]
    #: The place of the right one, from 0.
    right: int

    @property
    def pictures(self) -> tuple[str, ...]:
        """The one picture."""
        return (self.picture,)

    @property
    def right_name(self) -> str:
        """The name of the region that is meant."""
        return self.regions[self.right].name

    def region_id(self, name: str) -> str:
        """Return the id that a region has in the drawing."""
        return f"{_stem(self.picture)}-{name}"

    def texts(self) -> Iterator[str]:
        """Yield what is asked, what each region is called, and what is said of it."""
        yield self.text
        for region in self.regions:
            yield from (region.words, region.then)

    def drawn(self, seed: str, redraws: int = 0) -> "LocateDrawn":
        """Return it; a picture isn't shuffled."""
        return LocateDrawn(self, seed, redraws)


@dataclass(frozen=True, slots=True)
class LocateDrawn(Drawn):
    """A picture as it is shown; what is picked goes by the name of its region."""

    question: LocateQuestion

    @property
    def key(self) -> str:
        """A short digest of the regions."""
        return key_of([region.name for region in self.question.regions])


def mark_place(drawn: LocateDrawn, picked: str) -> PickedMark:
    """Return the mark of the region of a name; raise KeyError for no such region."""
    question = drawn.question
    regions = {region.name: region for region in question.regions}
    answer = picked_answer(
        question.skill,
        "place",
        picked,
        regions[picked].words,
        right=picked == question.right_name,
    )
    told = (
        line(name, region.words, region.then, float(name == question.right_name))
        for name, region in regions.items()
    )
    return PickedMark((answer,), told=tuple(told))


def read_locate(
    block: Block, table: Mapping[str, Any], common: Mapping[str, str], folder: Path
) -> LocateQuestion:
    """Return the question that a block holds; its picture lies below `folder`.

    Raises AuthorError, for a region too that the picture doesn't draw or give a title.
    """
    what = "A question about a picture"
    text, skill = read_common(block, table, ("picture", "regions"), what)
    picture = block.want(table, "picture", str, what)
    drawing = _read_drawing(block, picture, folder)
    parts = read_between(block, table, "regions", FEWEST, MOST)
    right = read_right(parts, block, "regions")
    named = _titles(block, drawing, _stem(picture))
    regions = tuple(_read_region(part, each, named) for part, each in parts)
    refuse_twice(parts, "name", [region.name for region in regions])
    refuse_twice(parts, "name", [region.words for region in regions])
    return LocateQuestion(
        **common,
        text=text,
        skill=skill,
        picture=picture,
        drawing=drawing,
        regions=regions,
        right=right,
    )


def _stem(picture: str) -> str:
    return PurePosixPath(picture).stem


def _read_drawing(block: Block, picture: str, folder: Path) -> str:
    path = folder / picture
    if not picture.endswith(".svg") or not path.is_file():
        there = [f"pictures/{file.name}" for file in (folder / "pictures").glob("*.svg")]
        sentence = f"The picture '{picture}' is missing."
        raise block.mistake("picture", sentence, did_you_mean(picture, there))
    return path.read_text("utf-8", errors="replace")


def _titles(block: Block, drawing: str, stem: str) -> dict[str, str]:
    """Return the words of each region that a drawing names, by the name of the region."""
    try:
        root = ET.fromstring(drawing)  # noqa: S314 - the firm's own file
    except ET.ParseError as error:
        mend = "Open it in a browser and close what is open."
        raise block.mistake("picture", f"This is no drawing: {error}.", mend) from error
    regions = (each for each in root.iter() if "region" in each.get("class", "").split())
    by_id = {each.get("id", ""): each for each in regions}
    return {
        each.removeprefix(f"{stem}-"): (region.findtext(f"{_SVG}title") or "").strip()
        for each, region in by_id.items()
        if each.startswith(f"{stem}-")
    }


def _read_region(part: Block, table: Mapping[str, Any], named: Mapping[str, str]) -> Region:
    part.refuse_unknown(table, ("name", "then", "right"), "A region")
    name = part.want(table, "name", str, "A region")
    if name not in named:
        sentence = f"The picture has no region '{name}'."
        raise part.mistake("name", sentence, did_you_mean(name, named))
    if not named[name]:
        mend = "Say in a <title> inside it what it is called in the list."
        raise part.mistake("name", f"The region '{name}' has no words in the picture.", mend)
    return Region(name, named[name], part.want(table, "then", str, "A region"))
