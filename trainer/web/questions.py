"""The questions of the lessons."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from trainer.web import asking, turn
from trainer.web.lessons import send_to_first
from trainer.web.origin import FromLesson

bp = Blueprint("questions", __name__, url_prefix="/questions")


@bp.get("/<question_id>")
def show(question_id: str) -> ResponseReturnValue:
    """Show a question on numbers that this person hasn't had, or go on with a second try.

    404 for a question that isn't asked.
    """
    origin = FromLesson(question_id)
    question = origin.today or abort(404)
    return send_to_first(question.lesson) or turn.show(origin)


@bp.post("/<question_id>")
def check(question_id: str) -> ResponseReturnValue:
    """Mark what was typed, record it once, and go on to the page that shows the mark."""
    return turn.check(FromLesson(question_id))


@bp.get("/<question_id>/<int(max=999999):count>/<int(max=2):try_no>")
def marked(question_id: str, count: int, try_no: int) -> ResponseReturnValue:
    """Show the mark of one's own answer, and the working once it may be seen.

    404 for an answer that this person never gave.
    """
    stored = asking.stored_answer(question_id, count, try_no) or abort(404)
    return turn.marked(FromLesson(question_id, stored.lesson), stored)


def show_again(note: str) -> str:
    """Return the page that this request's form came from, with a note and all that was typed."""
    question_id: str = (request.view_args or {})["question_id"]
    return turn.show_again(FromLesson(question_id), note)
