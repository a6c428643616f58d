"""Practise on a roof: tomorrow's job as tonight's sums.

What is answered here is marked, explained and kept like any other answer, and counts for its
question, never for a lesson nor for a skill.
"""

from collections.abc import Mapping
from itertools import pairwise

from flask import Blueprint, abort, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.engine.errors import UNWORKABLE
from trainer.lessons import ContentError, Question
from trainer.records import db
from trainer.records.practice import practice_rows
from trainer.records.roofs import KeptRoof, roof_for
from trainer.web import asking, turn
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.lessons import send_to_first
from trainer.web.origin import Done, Origin, Way
from trainer.web.outline import QuestionEntry, question_state
from trainer.web.roof_figures import questions_on
from trainer.web.shown import Shown

bp = Blueprint("practise", __name__, url_prefix="/roofs/<int(max=999999999):roof_id>/practise")

ROOF_CHANGED = (
    "The roof has been changed since you opened this. You are marked by the roof as you saw it."
)
QUESTIONS_CHANGED = (
    "The question has been changed since you opened this. You are marked by what you saw."
)
ANOTHER_ROOF = "The roof has been changed or removed since. This is the roof as it was asked about."


class OnRoof(Origin):
    """A question on one roof; `kept` is None where the person can't see the roof any more."""

    def __init__(self, roof_id: int, question_id: str, kept: KeptRoof | None) -> None:
        self.roof_id, self.question_id, self.kept = roof_id, question_id, kept
        self.questions = _questions_on(kept) if kept else {}
        self.today = self.questions.get(question_id)
        self.digest = here().library.roof_questions.digest
        self.roof = kept.digest if kept else ""

    def href(self) -> str:
        """Return the address of the question on this roof."""
        return _question_href(self.roof_id, self.question_id)

    def marked_href(self, was: Shown) -> str:
        """Return the address of the mark; the roof that was shown is part of it."""
        return url_for(
            "practise.marked",
            roof_id=self.roof_id,
            question_id=self.question_id,
            roof=was.roof,
            count=was.count,
            try_no=was.try_no,
        )

    def done(self) -> Done:
        """Return what was done on it on this very roof."""
        person_id = signed_in().person_id
        rows = practice_rows(db.session, person_id, self.roof, [self.question_id])
        row = rows.get(self.question_id)
        return Done(row.tried, row.finished) if row else Done()

    def back(self) -> Way | None:
        """Return the way to the list of this roof's questions."""
        if self.kept is None:
            return None
        return Way(url_for("practise.show", roof_id=self.roof_id), f"Practise: {self.kept.title}")

    def onward(self) -> Way | None:
        """Return the way to the next question on this roof, else back to the list."""
        if self.kept is None:
            return None
        for each, after in pairwise(self.questions):
            if each == self.question_id:
                return Way(_question_href(self.roof_id, after), "Next question")
        return Way(url_for("practise.show", roof_id=self.roof_id), "All questions on this roof")

    def since(self, was: Shown) -> tuple[str, ...]:
        """Return a sentence where the roof is another today, or isn't there any more."""
        return () if was.roof == self.roof else (ANOTHER_ROOF,)

    def changed(self, was: Shown) -> str:
        """Return a sentence where the roof, or the question, is another today."""
        if was.roof != self.roof:
            return ROOF_CHANGED
        return "" if was.digest == self.digest else QUESTIONS_CHANGED


@bp.get("")
def show(roof_id: int) -> ResponseReturnValue:
    """Show what this roof can be practised on, and one thing to do next.

    404 for a roof that this person can't see.
    """
    kept = roof_or_404(roof_id)
    shut = send_to_first("")
    if shut:
        return shut
    entries = _entries(kept, _questions_on(kept))
    return render_template(
        "practise/practise.html",
        kept=kept,
        entries=entries,
        following=next((each for each in entries if each.state != "right"), None),
    )


@bp.get("/<question_id>")
def question(roof_id: int, question_id: str) -> ResponseReturnValue:
    """Show a question on this roof, on numbers that this person hasn't had.

    404 for a roof that this person can't see, or a question that it isn't asked.
    """
    kept = roof_or_404(roof_id)
    return send_to_first("") or turn.show(OnRoof(roof_id, question_id, kept))


@bp.post("/<question_id>")
def check(roof_id: int, question_id: str) -> ResponseReturnValue:
    """Mark what was typed by the roof as it was shown, record it once, and show the mark.

    410 with what was typed where the person can't see the roof any more.
    """
    kept = _roof(roof_id)
    if kept is None:
        return turn.gone(request.form), 410
    return turn.check(OnRoof(roof_id, question_id, kept))


@bp.get("/<question_id>/<roof>/<int(max=999999):count>/<int(max=2):try_no>")
def marked(
    roof_id: int, question_id: str, roof: str, count: int, try_no: int
) -> ResponseReturnValue:
    """Show the mark of one's own answer on the roof of that digest.

    404 for an answer that this person never gave. It is told even when the roof is gone.
    """
    stored = asking.stored_answer(question_id, count, try_no, roof) or abort(404)
    return turn.marked(OnRoof(roof_id, question_id, _roof(roof_id)), stored)


def show_again(note: str) -> str:
    """Return the page that this request's form came from, with a note and all that was typed."""
    where: Mapping[str, str] = request.view_args or {}
    kept = _roof(int(where["roof_id"]))
    if kept is None:
        return turn.gone(request.form)
    return turn.show_again(OnRoof(int(where["roof_id"]), where["question_id"], kept), note)


def roof_or_404(roof_id: int) -> KeptRoof:
    """Return a roof that the signed-in person may see; raise 404."""
    return _roof(roof_id) or abort(404)


def _roof(roof_id: int) -> KeptRoof | None:
    person = signed_in()
    return roof_for(db.session, person.person_id, person.crew_id, roof_id)


def _questions_on(kept: KeptRoof) -> Mapping[str, Question]:
    """Return today's questions on a roof; none where it can't be planned by today's rules."""
    try:
        return questions_on(kept.text)
    except (ContentError, *UNWORKABLE):
        return {}


def _entries(kept: KeptRoof, questions: Mapping[str, Question]) -> list[QuestionEntry]:
    done = practice_rows(db.session, signed_in().person_id, kept.digest, questions)
    return [
        QuestionEntry(
            each.title,
            _question_href(kept.roof_id, each.id),
            question_state(
                tried=each.id in done, right=each.id in done and done[each.id].ever_right
            ),
            None,
        )
        for each in questions.values()
    ]


def _question_href(roof_id: int, question_id: str) -> str:
    return url_for("practise.question", roof_id=roof_id, question_id=question_id)
