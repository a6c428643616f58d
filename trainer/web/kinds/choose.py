"""The kind `choose` on a page: one of several ways, and what comes of each."""

from trainer.lessons import ChooseDrawn, Mark, mark_choice
from trainer.records.attempts import StoredAttempt
from trainer.web.kinds.kind import Fields, Kind, QuestionForm
from trainer.web.kinds.picked import PickedForm, picked_sheet
from trainer.web.mark_sheet import MarkSheet
from trainer.web.shown import Shown


class ChooseForm(PickedForm[ChooseDrawn]):
    """One large button for each choice."""

    template = "questions/choose/_fields.html"

    def places(self) -> tuple[str, ...]:
        """Return the places of the choices on the page."""
        return tuple(place for place, _ in self.drawn.choices())

    def options(self) -> list[tuple[str, str]]:
        """Return each choice's place and words."""
        return [(place, choice.text) for place, choice in self.drawn.choices()]

    def mark(self, try_no: int) -> Mark:
        """Return the mark of what is picked."""
        del try_no
        return mark_choice(self.drawn, self.picked)


class Choose(Kind[ChooseDrawn]):
    """Decisions."""

    template = "questions/choose/_marked.html"
    again = "Again, in another order"
    by_place = True

    def form(self, drawn: ChooseDrawn, was: Shown, fields: Fields | None = None) -> QuestionForm:
        """Return the choices."""
        del was
        return ChooseForm(drawn, fields)

    def sheet(
        self, stored: StoredAttempt, first: StoredAttempt | None, drawn: ChooseDrawn | None
    ) -> MarkSheet:
        """Return what comes of the choice, and of the others."""
        del first
        return picked_sheet(stored, drawn)
