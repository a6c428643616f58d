"""What a page must know of a kind of question: its form, and how its mark is told."""

from abc import ABC, abstractmethod
from collections.abc import Iterator
from typing import Any, ClassVar, Generic, TypeVar

from werkzeug.datastructures import MultiDict
from wtforms.form import BaseForm

from trainer.lessons import Drawn, Mark
from trainer.records.attempts import StoredAttempt
from trainer.web.mark_sheet import MarkSheet
from trainer.web.shown import Shown

Fields = MultiDict[str, Any]
#: What a kind of question is when it is shown.
D = TypeVar("D", bound=Drawn)


class QuestionForm(BaseForm, ABC):
    """The answer to a question, changeable until it is sent."""

    #: The template of what stands in the form.
    template: ClassVar[str]
    #: The script that makes it kinder; it works without.
    script: ClassVar[str] = ""

    @property
    def only_changed(self) -> bool:
        """Whether this press only changed the answer, so that the page is shown again."""
        return False

    @abstractmethod
    def mark(self, try_no: int) -> Mark:
        """Return the mark of what stands in it; it has been validated."""

    @abstractmethod
    def told(self) -> Iterator[tuple[str, str]]:
        """Yield each field that can't be read, with what to mend."""


class Kind(ABC, Generic[D]):
    """One kind of question."""

    #: The template that tells its mark.
    template: ClassVar[str]
    #: What stands on the button that asks it anew.
    again: ClassVar[str] = "Again, on fresh numbers"
    #: Whether an answer goes by places on the page, and means another thing on any other page.
    by_place: ClassVar[bool] = False

    @abstractmethod
    def form(self, drawn: D, was: Shown, fields: Fields | None = None) -> QuestionForm:
        """Return the form of a question as it was shown, with what stands in its fields."""

    @abstractmethod
    def sheet(
        self, stored: StoredAttempt, first: StoredAttempt | None, drawn: D | None
    ) -> MarkSheet:
        """Return the sheet of a stored answer.

        `first` is the first try where `stored` is the second: its other lines are told beside
        it. `drawn` is the question as it was shown, for its words; None where it can't be read
        today.
        """
