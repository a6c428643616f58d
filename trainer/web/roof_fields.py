"""The form of a roof, group by group, in the order in which a roof is described."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from trainer.engine import show
from trainer.engine.materials import UPSTAND
from trainer.engine.plans.description import PARTS, fields_of
from trainer.lessons.roof_parts import Ladder
from trainer.lessons.roof_shapes import CORNERS, MEASURED
from trainer.lessons.roof_sizes import sold_from, sold_standing
from trainer.web.described import WHOLE, Described, OfferedCup
from trainer.web.installation import here
from trainer.web.roof_boxes import (
    ROW_WORDS,
    Box,
    BoxMaker,
    Group,
    capital,
    default_words,
    kinds_with,
)
from trainer.web.roof_form import (
    CORNERS_FIELD,
    MEASURES,
    ROWS,
    SHAPE,
    SIDES,
    changed_in,
    rows_of,
    sides_of,
)

#: What is asked of everybody.
_CHIEF = {"weather": "The day", "mix": "Resin and catalyst", "crew": "Crew"}
#: What most leave at its defaults.
_MORE = {
    "fall": "Fall",
    "boards": "Boards",
    "tape": "Tape",
    "bandage": "Bandage",
    "trims": "Trims",
    "laminate": "Main laminate",
    "topcoat": "Topcoat",
    "sold": "Sizes to buy in",
}
#: Of the mix; the rest stands on the data sheet.
_FIRST_OF_MIX = ("product", "convention", "percent", "wanted_gel_min", "graduation_ml")
_TITLE_HINT = "As the crew calls it."
_CORNERS_HINT = "One a line, anticlockwise: along the roof, then up it. Such as 4.2, 0."
_TURN_HINT = f"Left empty: {show(UPSTAND.value, 'mm')} at a wall, else none."
#: Where a default alone doesn't say what an empty field means.
_HINTS = {
    "cut_joints_m": "Set several apart by commas: 2.4, 1.1. Leave it empty if there are none.",
    "wanted_gel_min": "Then the dose is chosen for it. Leave it empty to go by the dose above.",
    "start": "Leave it empty to count from the first batch.",
}


@dataclass(frozen=True)
class RoofFields:
    """The whole form, with what was typed and what is wrong."""

    described: Described
    cups_offered: tuple[OfferedCup, ...] = ()
    #: Whether no field is told what is wrong with it, since somebody is still typing.
    quiet: bool = False

    @cached_property
    def make(self) -> BoxMaker:
        """What makes each field."""
        return BoxMaker(self.described, self.quiet)

    @cached_property
    def title(self) -> Box:
        """What the roof is called."""
        return self.make.plain("title", "Name of the roof", _TITLE_HINT)

    @cached_property
    def shape(self) -> Box:
        """The shape of the outline."""
        return self.make.box("outline.shape", SHAPE)

    @cached_property
    def outline(self) -> Group:
        """What is measured of the outline."""
        boxes = (
            self.make.box(f"outline.{name}", field, only=kinds_with(name, MEASURED))
            for name, field in MEASURES.items()
        )
        return Group("outline", "Outline", tuple(boxes), self.make.error("outline"))

    @cached_property
    def corners(self) -> Box:
        """The corners, one a line."""
        return self.make.plain(CORNERS_FIELD, "Corners, in metres", _CORNERS_HINT)

    @property
    def corners_shape(self) -> str:
        """The shape that is a list of corners."""
        return CORNERS

    @cached_property
    def sides(self) -> tuple[Group, ...]:
        """The sides, as many as the outline has."""
        words = SIDES.get(self.shape.value, ())
        return tuple(
            self.make.row("edge", number, words[number - 1] if words else "", _TURN_HINT)
            for number in range(1, sides_of(self.described.fields) + 1)
        )

    @property
    def sides_error(self) -> str:
        """What is wrong with all sides together."""
        return self.make.error("edge")

    @cached_property
    def way_off(self) -> Box:
        """The side with the ladder."""
        ((name, field),) = fields_of(Ladder).items()
        return self.make.box(name, field)

    @cached_property
    def corner_rules(self) -> Group:
        """What each corner makes, where the rule is overruled."""
        makes = ROWS["corner"]["makes"]
        boxes = tuple(
            Box(
                name := f"corner.{number}.makes",
                f"Corner {number}",
                "",
                makes.choices,
                self.make.typed(name),
                self.make.error(name),
            )
            for number in range(1, len(self.sides) + 1)
        )
        changed = sum(bool(box.value) for box in boxes)
        return Group("corner", "Corners", boxes, self.make.error("corner"), changed)

    @cached_property
    def openings(self) -> tuple[Group, ...]:
        """The openings that were typed, and one more to type."""
        return self._rows("opening")

    @cached_property
    def cups(self) -> tuple[Group, ...]:
        """The test cups that were typed, and one more to type."""
        return self._rows("cup")

    def _rows(self, name: str) -> tuple[Group, ...]:
        typed = rows_of(self.described.fields, name)
        return tuple(self.make.row(name, number) for number in range(1, typed + 2))

    @cached_property
    def chief(self) -> dict[str, Group]:
        """What everybody looks at: the day, the mix, the crew."""
        groups = {part: self._part(part, title) for part, title in _CHIEF.items()}
        first = tuple(box for box in groups["mix"].boxes if box.field in _FIRST_OF_MIX)
        return {**groups, "mix": Group("mix", _CHIEF["mix"], first, groups["mix"].error)}

    @cached_property
    def mix_more(self) -> Group:
        """The mix as the data sheet has it."""
        boxes = self._part("mix", "").boxes
        rest = tuple(box for box in boxes if box.field not in _FIRST_OF_MIX)
        changed = sum(bool(box.value) for box in rest)
        return Group("mix-more", "From the resin's data sheet", rest, changed=changed)

    @cached_property
    def more(self) -> tuple[Group, ...]:
        """What most leave at its defaults."""
        return tuple(self._part(part, title) for part, title in _MORE.items())

    def _part(self, part: str, title: str) -> Group:
        hints = {**_HINTS, **(_sold_hints() if part == "sold" else {})}
        boxes = tuple(
            self.make.box(f"{part}.{name}", field, hints.get(name))
            for name, field in fields_of(PARTS[part]).items()
        )
        changed = changed_in(self.described.fields, part)
        return Group(part, title, boxes, self.make.error(part), changed)

    @cached_property
    def errors(self) -> list[tuple[str, str]]:
        """Each place on the page with something to mend, and the sentence that says so."""
        return [
            (name if name in self._places else WHOLE, f"{_before(name, sentence)}{sentence}")
            for name, sentence in self.described.mistakes.items()
        ]

    @property
    def laid_by(self) -> list[tuple[str, str]]:
        """What was typed and has no place as the outline is now: the sides of another shape."""
        typed = self.described.fields.items()
        return [(name, text) for name, text in typed if text and name not in self._places]

    @cached_property
    def _places(self) -> frozenset[str]:
        return frozenset(self._named())

    def _named(self) -> Iterator[str]:
        yield from ("edge", "opening", "cup")
        yield from (box.name for box in (self.title, self.shape, self.corners, self.way_off))
        lists = (*self.sides, *self.openings, *self.cups)
        for group in (*lists, *self.chief.values(), *self.more):
            yield group.name
            yield from (box.name for box in group.boxes)
        for group in (self.outline, self.corner_rules, self.mix_more):
            yield group.name
            yield from (box.name for box in group.boxes)


def _sold_hints() -> dict[str, str]:
    """Return the sizes that stock.toml gives, each with its standing."""
    stock = here().library.stock
    fields, standings = fields_of(PARTS["sold"]), sold_standing(stock)
    return {
        name: default_words(size, fields[name].unit, standings[name])
        for name, size in sold_from(stock).items()
    }


def _before(name: str, sentence: str) -> str:
    """Return what a sentence needs before it, in a list away from its field."""
    part, _, rest = name.partition(".")
    if part in ROW_WORDS and rest:
        row = f"{ROW_WORDS[part]} {rest.partition('.')[0]}"
        return "" if sentence.startswith(row) else f"{row}: "
    known = fields_of(PARTS[part]) if part in PARTS else MEASURES
    if rest not in known or known[rest].words in sentence:
        return ""
    return f"{capital(known[rest].words)}: "
