"""What kinds without numbers share on a page: one field, and a mark that tells what comes of it."""

from abc import abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Generic

from wtforms import StringField, validators
from wtforms.fields import Field
from wtforms.form import BaseForm

from trainer.lessons import Drawn
from trainer.records.attempts import StoredAttempt
from trainer.web.kinds.kind import D, Fields, QuestionForm
from trainer.web.mark_sheet import MarkSheet, notes_of

#: The one field.
ANSWER = "answer_0"
TEXT_GONE = "The question's text can't be drawn any more."
PICK_ONE = "Pick one of them."
RIGHT, WRONG = "Here is what comes of it.", "Here is what comes of it, and what to do instead."


class PickedForm(QuestionForm, Generic[D]):
    """One field, for what is picked by its place or name."""

    def __init__(self, drawn: D, fields: Fields | None = None) -> None:
        self.drawn = drawn
        own: dict[str, Any] = {ANSWER: StringField(validators=[self._pickable])}
        super().__init__(own)
        self.process(fields)

    @property
    def picked(self) -> str:
        """What is picked, or nothing."""
        data: str | None = self[ANSWER].data
        return data or ""

    @abstractmethod
    def places(self) -> tuple[str, ...]:
        """Return what may be picked."""

    def told(self) -> Iterator[tuple[str, str]]:
        """Yield the field where nothing is picked."""
        if self[ANSWER].errors:
            yield ANSWER, str(self[ANSWER].errors[0])

    def _pickable(self, _form: BaseForm, _field: Field) -> None:
        if self.picked not in self.places():
            raise validators.ValidationError(PICK_ONE)


@dataclass(frozen=True, slots=True)
class Outcome:
    """One thing that could be picked, and what comes of it."""

    place: str
    words: str
    then: str
    right: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class PickedSheet(MarkSheet):
    """The page of the mark of something picked."""

    picked: Outcome
    #: The right one, where another was picked.
    instead: Outcome | None
    others: tuple[Outcome, ...]


def common_of(stored: StoredAttempt, drawn: Drawn | None) -> dict[str, Any]:
    """Return what the sheet of any kind without numbers has."""
    return {
        "banner": "right" if stored.right else "wrong",
        "words": RIGHT if stored.right else WRONG,
        "text": drawn.text() if drawn else TEXT_GONE,
        "notes": tuple(notes_of(stored)),
        "finished": stored.finished,
    }


def picked_sheet(stored: StoredAttempt, drawn: Drawn | None) -> PickedSheet:
    """Return the sheet of what was picked, from what was stored with it."""
    all_of_them = [
        Outcome(line["key"], line["words"], line["shown"], bool(line["value"]))
        for line in stored.lines
    ]
    picked = next(each for each in all_of_them if each.place == stored.answers[0].typed)
    right = next(each for each in all_of_them if each.right)
    return PickedSheet(
        **common_of(stored, drawn),
        picked=picked,
        instead=None if picked.right else right,
        others=tuple(each for each in all_of_them if each not in (picked, right)),
    )
