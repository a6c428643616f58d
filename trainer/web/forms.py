"""Forms: thin over the engine's reader, keeping whatever was typed."""

from collections.abc import Iterator, Sequence
from typing import Any

from flask_wtf.csrf import CSRFProtect
from werkzeug.datastructures import MultiDict
from wtforms import Form, PasswordField, StringField, validators
from wtforms.fields import Field
from wtforms.form import BaseForm

from trainer.engine import EngineError
from trainer.lessons import Ask, Typed, Variant

csrf = CSRFProtect()


class SignInForm(Form):
    """A name and a password."""

    name = StringField("Your sign-in name", [validators.InputRequired("Type your sign-in name.")])
    password = PasswordField("Password", [validators.InputRequired("Type your password.")])


class AnswerForm(BaseForm):
    """One field for each asked line, and the unit picked beside it.

    Made for each request from the asks, since every question asks for other lines.
    """

    def __init__(self, asks: Sequence[Ask], formdata: MultiDict[str, Any] | None = None) -> None:
        self.asks = asks
        fields: dict[str, Any] = {}
        for number, _ in enumerate(asks):
            fields[f"answer_{number}"] = StringField(validators=[self._readable])
            fields[f"answer_{number}_unit"] = StringField()
        super().__init__(fields)
        self.process(formdata)

    def typed(self) -> dict[str, Typed]:
        """Return what stands in each field, by the line it is asked for."""
        return {ask.line: self._typed(number) for number, ask in enumerate(self.asks)}

    def told(self, drawn: Variant) -> Iterator[tuple[str, str]]:
        """Yield each field that can't be read, with what it asks for and what to mend."""
        for number, ask in enumerate(self.asks):
            name = f"answer_{number}"
            if self[name].errors:
                label = f"{drawn.text(ask)} " if ask.words else ""
                yield name, f"{label}{self[name].errors[0]}"

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
