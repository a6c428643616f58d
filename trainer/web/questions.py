"""A question on fresh numbers, its answer, and the page that tells what came of it.

An answer travels one way down and one way back: find the question, read what was typed, mark
it, record it, commit once, and send the browser to the page that shows the mark.
"""

import re
from collections.abc import Mapping
from itertools import pairwise

from flask import Blueprint, abort, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from trainer.lessons import Question, Variant, mark_answers
from trainer.records import attempts, db, signins, writing
from trainer.web import asking, kept
from trainer.web.access import signed_in
from trainer.web.answer import attempt_facts, time_of_answer
from trainer.web.forms import AnswerForm
from trainer.web.installation import here
from trainer.web.lessons import send_to_first
from trainer.web.mark_sheet import MarkSheet, mark_sheet
from trainer.web.shown import Shown

bp = Blueprint("questions", __name__, url_prefix="/questions")

BACK = "You are signed in again. Your answer is here as you typed it: check it now."
CHANGED = "The lesson has changed since you opened this. You are marked by what you saw."
GONE = "It is no longer asked. What you had typed: {typed}."
TOO_LONG = "You are signed in again. What you had typed was too long to keep: type it once more."
NOT_OURS = "That form can't be read any more. Here is the question anew, with what you typed."

#: The matcher of a field that holds an answer, and not the unit beside it.
_is_answer = re.compile(r"answer_\d+").fullmatch


def question_or_404(question_id: str) -> Question:
    """Return the question of this id as it stands today; raise 404."""
    question = here().library.questions.get(question_id)
    if question is None:
        abort(404)
    return question


@bp.get("/<question_id>")
def show(question_id: str) -> ResponseReturnValue:
    """Show a question on numbers that this person hasn't had, or go on with a second try."""
    question = question_or_404(question_id)
    shut = send_to_first(question.lesson)
    if shut:
        return shut
    laid_by = kept.taken_up(request.path)
    # Not for somebody else who has signed in on the same phone.
    if laid_by and asking.what_was_shown(question_id, laid_by):
        return _page_again(laid_by, TOO_LONG if kept.is_cut(laid_by) else BACK)
    waiting = asking.open_run(question_id)
    if waiting and asking.drawn_as_shown(asking.shown_with(waiting)):
        return redirect(_marked_url(question_id, waiting.count, 1), 303)
    was, drawn = asking.fresh_form(question, try_no=2 if waiting else 1)
    return _page(drawn, was, AnswerForm(question.asks))


@bp.post("/<question_id>")
def check(question_id: str) -> ResponseReturnValue:
    """Mark what was typed, record it once, and go on to the page that shows the mark."""
    was = asking.what_was_shown(question_id, request.form)
    drawn = asking.drawn_as_shown(was) if was else None
    if was is None or drawn is None:
        return show_again(NOT_OURS), 422 if question_id in here().library.questions else 410
    form = AnswerForm(asking.asks_of(drawn.question, was), request.form)
    if not form.validate():
        # It was no answer yet, so this press is not the one that counts.
        return _page(drawn, was, form, fields={}), 422
    mark = mark_answers(drawn, form.typed(), was.try_no, was.only)
    time = time_of_answer(request.form.get("pressed", ""), here())
    lesson = here().library.by_slug.get(drawn.question.lesson)
    facts = attempt_facts(was, drawn, mark, time, lesson.competency if lesson else "")
    writing(db.session)
    attempts.record(db.session, facts)
    signins.seen(db.session, signed_in().sign_in_id, time.sent_at)
    db.session.commit()
    return redirect(_marked_url(question_id, was.count, was.try_no), 303)


@bp.get("/<question_id>/<int(max=999999):count>/<int(max=2):try_no>")
def marked(question_id: str, count: int, try_no: int) -> ResponseReturnValue:
    """Show the mark of one's own answer, and the working once it may be seen.

    404 for an answer that this person never gave.
    """
    stored = asking.stored_answer(question_id, count, try_no) or abort(404)
    first = asking.stored_answer(question_id, count, 1) if try_no > 1 else None
    was = asking.shown_with(stored)
    drawn = asking.drawn_as_shown(was)
    sheet = mark_sheet(stored, first, drawn)
    today = here().library.questions.get(question_id)
    second = form = None
    if drawn and not stored.finished:
        second = asking.second_form(was, sheet.wrong_line, rest_right=sheet.rest_right)
        form = AnswerForm(asking.asks_of(drawn.question, second))
    return render_template(
        "questions/marked.html",
        sheet=sheet,
        title=drawn.question.title if drawn else today.title if today else "A question",
        drawn=drawn,
        lesson=here().library.by_slug.get(stored.lesson),
        sealed=second.sealed() if second else "",
        form=form,
        again=today,
        after=_next_question(stored.lesson, question_id),
    )


def show_again(note: str) -> str:
    """Return the page that a form came from, with a note and everything that was typed."""
    return _page_again(request.form, note)


def _page_again(fields: Mapping[str, str], note: str) -> str:
    question_id: str = (request.view_args or {})["question_id"]
    was = asking.what_was_shown(question_id, fields)
    drawn = asking.drawn_as_shown(was) if was else None
    if was is None or drawn is None:
        question = here().library.questions.get(question_id)
        if question is None:
            return _gone(fields)
        was, drawn = asking.fresh_form(question)
    form = AnswerForm(asking.asks_of(drawn.question, was), MultiDict(fields))
    return _page(drawn, was, form, note, fields)


def _page(
    drawn: Variant,
    was: Shown,
    form: AnswerForm,
    note: str = "",
    fields: Mapping[str, str] | None = None,
) -> str:
    question = drawn.question
    if not note and asking.has_changed(question, was):
        note = CHANGED
    return render_template(
        "questions/question.html",
        drawn=drawn,
        question=question,
        lesson=here().library.by_slug.get(question.lesson),
        form=form,
        sealed=was.sealed(),
        note=note,
        errors=list(form.told(drawn)),
        pressed=(request.form if fields is None else fields).get("pressed", ""),
        first=_first_try(was, drawn),
    )


def _first_try(was: Shown, drawn: Variant) -> MarkSheet | None:
    """Return the sheet whose slip and cue stand above a second try, or None at a first."""
    stored = asking.stored_answer(was.question_id, was.count, 1) if was.only else None
    return mark_sheet(stored, None, drawn) if stored else None


def typed_words(fields: Mapping[str, str]) -> str:
    """Return what stood in the answer fields of a form, to be told to whoever typed it."""
    typed = [text for name, text in fields.items() if _is_answer(name) and text]
    return ", ".join(typed) or "nothing"


def _gone(fields: Mapping[str, str]) -> str:
    words = GONE.format(typed=typed_words(fields))
    return render_template("fault.html", title="This question is gone", words=words)


def _marked_url(question_id: str, count: int, try_no: int) -> str:
    return url_for("questions.marked", question_id=question_id, count=count, try_no=try_no)


def _next_question(lesson: str, question_id: str) -> Question | None:
    found = here().library.by_slug.get(lesson)
    neighbours = pairwise(found.questions if found else ())
    return next((then for each, then in neighbours if each.id == question_id), None)
