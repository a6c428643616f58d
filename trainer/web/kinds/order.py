"""The kind `order` on a page: steps that are moved up and down, and what comes too early."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from wtforms import validators
from wtforms.fields import Field
from wtforms.form import BaseForm

from trainer.lessons import Mark, OrderDrawn, mark_order
from trainer.records.attempts import StoredAttempt
from trainer.web.kinds.kind import Fields, Kind, QuestionForm
from trainer.web.kinds.picked import ANSWER, PickedForm, common_of
from trainer.web.mark_sheet import MarkSheet
from trainer.web.shown import Shown

MOVE = "move"
#: The matcher of what a button sends: the place that a step goes by, and its new row, from 1.
_move = re.compile(r"(\d{1,2}) to (\d{1,2})").fullmatch
UNREAD = "That order can't be read. Here are the steps as they were first shown."
RIGHT, WRONG = "That is the order.", "The first step that comes too early is marked below."


class OrderForm(PickedForm[OrderDrawn]):
    """A row for each step, with buttons that move it; the field holds the order.

    Without scripts each button sends the form, and the page comes back with the step moved.
    """

    template = "questions/order/_fields.html"
    script = "order.js"

    def __init__(self, drawn: OrderDrawn, fields: Fields | None = None) -> None:
        super().__init__(drawn, fields)
        #: The step that was moved by this press, and whether towards the first row.
        self.moved, self.went_up = "", False
        if fields:
            self._move(fields.get(MOVE, ""))

    @property
    def only_changed(self) -> bool:
        """Whether a step was moved, and nothing checked."""
        return self.moved != ""

    def places(self) -> tuple[str, ...]:
        """Return what the steps go by."""
        return self.drawn.places

    def rows(self) -> list[tuple[str, str]]:
        """Return the place that each step goes by, and its words, as they are put now."""
        return [(place, self.drawn.step(place).text) for place in self.put]

    @property
    def put(self) -> tuple[str, ...]:
        """The order in which the steps are put; as they were first shown where it can't be read."""
        return tuple(self.picked.split()) if self._is_whole else self.drawn.places

    @property
    def _is_whole(self) -> bool:
        """Whether each step stands in it once."""
        return sorted(self.picked.split()) == sorted(self.drawn.places)

    def mark(self, try_no: int) -> Mark:
        """Return the mark of the order."""
        del try_no
        return mark_order(self.drawn, self.put)

    def _pickable(self, _form: BaseForm, _field: Field) -> None:
        """Refuse what holds no order: nobody has put the steps as they were first shown."""
        if not self._is_whole:
            raise validators.ValidationError(UNREAD)

    def _move(self, press: str) -> None:
        """Put the step that a button names into another row."""
        move = _move(press)
        if not move or move[1] not in self.put:
            return
        self.moved, row = move[1], max(0, int(move[2]) - 1)
        self.went_up = row < self.put.index(self.moved)
        rest = [place for place in self.put if place != self.moved]
        rest.insert(row, self.moved)
        self[ANSWER].data = " ".join(rest)


@dataclass(frozen=True, slots=True)
class PutStep:
    """One step where somebody put it."""

    words: str
    #: "right", "wrong" for the first that comes too early, or nothing for those after it.
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderSheet(MarkSheet):
    """The page of the mark of an order."""

    put: tuple[PutStep, ...]
    #: The right order.
    steps: tuple[str, ...]
    #: The first step that comes too early, the one that belongs there, and why it matters.
    early: str
    before: str
    why: str


class Order(Kind[OrderDrawn]):
    """Steps in order."""

    template = "questions/order/_marked.html"
    again = "Again, from another order"
    by_place = True

    def form(self, drawn: OrderDrawn, was: Shown, fields: Fields | None = None) -> QuestionForm:
        """Return the steps, as they are put now."""
        del was
        return OrderForm(drawn, fields)

    def sheet(
        self, stored: StoredAttempt, first: StoredAttempt | None, drawn: OrderDrawn | None
    ) -> MarkSheet:
        """Return the order that was put, what comes too early in it, and the right one."""
        del first
        lines = {line["key"]: line for line in stored.lines}
        put = stored.answers[0].typed.split()
        right = sorted(lines, key=lambda place: float(lines[place]["value"]))
        row = _first_difference(put, right)
        early = lines[put[row]] if row < len(put) else None
        return OrderSheet(
            **{**common_of(stored, drawn), "words": RIGHT if stored.right else WRONG},
            put=tuple(
                PutStep(lines[each]["words"], _mark_at(n, row)) for n, each in enumerate(put)
            ),
            steps=tuple(lines[place]["words"] for place in right),
            early=early["words"] if early else "",
            before=lines[right[row]]["words"] if early else "",
            why=early["shown"] if early else "",
        )


def _first_difference(put: Sequence[str], right: Sequence[str]) -> int:
    """Return the first row on which two orders differ, or how many rows there are."""
    rows = enumerate(zip(put, right, strict=True))
    return next((row for row, (own, its) in rows if own != its), len(put))


def _mark_at(row: int, wrong: int) -> str:
    if row == wrong:
        return "wrong"
    return "right" if row < wrong else ""
