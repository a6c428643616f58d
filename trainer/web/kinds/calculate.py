"""The kind `calculate` on a page: figures are typed, the working is told."""

from collections.abc import Iterator
from typing import Any

from wtforms import StringField, validators
from wtforms.fields import Field
from wtforms.form import BaseForm

from trainer.engine import EngineError
from trainer.lessons import Mark, Typed, Variant, mark_answers
from trainer.records.attempts import StoredAttempt
from trainer.web.kinds.kind import Fields, Kind, QuestionForm
from trainer.web.mark_sheet import MarkSheet
from trainer.web.shown import Shown
from trainer.web.sum_sheet import sum_sheet
from trainer.web.working_lines import WorkingLine, plain_lines, plain_working


class CalculateForm(QuestionForm):
    """One field for each asked line, and the unit picked beside it.

    Made for each request from the asks, since every question asks for other lines.
    """

    template = "questions/calculate/_fields.html"

    def __init__(
        self, drawn: Variant, only: str | None = None, fields: Fields | None = None
    ) -> None:
        self.drawn, self.only = drawn, only
        self.asks = drawn.asks if only is None else (drawn.ask_for(only),)
        own: dict[str, Any] = {}
        for number, _ in enumerate(self.asks):
            own[f"answer_{number}"] = StringField(validators=[self._readable])
            own[f"answer_{number}_unit"] = StringField()
        super().__init__(own)
        self.process(fields)

    def mark(self, try_no: int) -> Mark:
        """Return the mark of the figures; raise Unclear where one can't be read."""
        return mark_answers(self.drawn, self.typed(), try_no, self.only)

    def typed(self) -> dict[str, Typed]:
        """Return what stands in each field, by the line it is asked for."""
        return {ask.line: self._typed(number) for number, ask in enumerate(self.asks)}

    def told(self) -> Iterator[tuple[str, str]]:
        """Yield each field that can't be read, with what it asks for and what to mend."""
        for number, ask in enumerate(self.asks):
            name = f"answer_{number}"
            if self[name].errors:
                label = f"{self.drawn.text(ask)} " if ask.words else ""
                yield name, f"{label}{self[name].errors[0]}"

    def shown_above(self) -> tuple[WorkingLine, ...]:
        """Return the lines that are worked already, and those that are theirs to find."""
        above = self.drawn.lines_shown()
        if not above:
            return ()
        lines = self.drawn.working()
        theirs = (WorkingLine(lines.line(ask.line).words, "", "") for ask in self.asks)
        return (*plain_lines(above), *theirs)

    def worked_beside(self) -> tuple[str, tuple[WorkingLine, ...]] | None:
        """Return the same job on other numbers, worked in full, where it is shown."""
        other = self.drawn.worked_beside() if self.only is None else None
        return (other.text(), plain_working(other.working())) if other else None

    def _typed(self, number: int) -> Typed:
        unit = self[f"answer_{number}_unit"].data or None
        return Typed(self[f"answer_{number}"].data or "", unit)

    def _readable(self, _form: BaseForm, field: Field) -> None:
        """Ask the engine to read it; its sentence stands by the field."""
        number = int(field.name.removeprefix("answer_"))
        try:
            self._typed(number).read_for(self.asks[number])
        except EngineError as error:
            raise validators.ValidationError(str(error)) from error


class Calculate(Kind[Variant]):
    """Sums."""

    template = "questions/calculate/_marked.html"

    def form(self, drawn: Variant, was: Shown, fields: Fields | None = None) -> QuestionForm:
        """Return a form that asks for every line, or for the one of a second try."""
        return CalculateForm(drawn, was.only, fields)

    def sheet(
        self, stored: StoredAttempt, first: StoredAttempt | None, drawn: Variant | None
    ) -> MarkSheet:
        """Return the mark with its working."""
        return sum_sheet(stored, first, drawn)
