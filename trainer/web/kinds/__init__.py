"""The kinds of question on a page, a module each."""

from typing import Any

from trainer.lessons import Drawn
from trainer.web.kinds.calculate import Calculate
from trainer.web.kinds.choose import Choose
from trainer.web.kinds.kind import Fields, Kind, QuestionForm
from trainer.web.kinds.locate import Locate
from trainer.web.kinds.order import Order
from trainer.web.shown import Shown

__all__ = ["KINDS", "Fields", "Kind", "QuestionForm", "form_of"]

#: By the word after `kind =`.
KINDS: dict[str, Kind[Any]] = {
    "calculate": Calculate(),
    "choose": Choose(),
    "locate": Locate(),
    "order": Order(),
}


def form_of(drawn: Drawn, was: Shown, fields: Fields | None = None) -> QuestionForm:
    """Return the form of a question as it was shown, with what stands in its fields."""
    return KINDS[drawn.question.kind].form(drawn, was, fields)
