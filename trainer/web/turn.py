"""One turn at a question: it is put on fresh numbers, answered, marked, and the mark is told.

An answer travels one way down and one way back: find the question, read what was typed, mark
it, record it, commit once, and send the browser to the page that shows the mark.
"""

import re
from collections.abc import Mapping

from flask import abort, redirect, render_template, request
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from trainer.lessons import Drawn
from trainer.records import attempts, db, signins, writing
from trainer.web import asking, kept
from trainer.web.access import signed_in
from trainer.web.answer import attempt_facts, time_of_answer
from trainer.web.installation import here
from trainer.web.kinds import KINDS, QuestionForm, form_of
from trainer.web.mark_sheet import MarkSheet
from trainer.web.origin import Origin
from trainer.web.shown import Shown

BACK = "You are signed in again. Your answer is here as you typed it: check it now."
GONE = "It is no longer asked. What you had typed: {typed}."
TOO_LONG = "You are signed in again. What you had typed was too long to keep: type it once more."
NOT_OURS = "That form can't be read any more. Here is the question anew, with what you typed."
PICK_ANEW = "That form can't be read any more. Here is the question anew: answer it once more."

#: The matcher of a field that holds an answer, and not the unit beside it.
_is_answer = re.compile(r"answer_\d+").fullmatch


def show(origin: Origin) -> ResponseReturnValue:
    """Show a question on numbers that this person hasn't had, or go on with a second try.

    Raises 404 for one that isn't asked today.
    """
    if origin.today is None:
        abort(404)
    laid_by = kept.taken_up(request.path)
    # Not for somebody else who has signed in on the same phone.
    if laid_by and asking.what_was_shown(origin, laid_by):
        return _page_again(origin, laid_by, TOO_LONG if kept.is_cut(laid_by) else BACK)
    waiting = asking.open_run(origin)
    if waiting and asking.drawn_as_shown(asking.shown_with(waiting)):
        return redirect(origin.marked_href(asking.shown_with(waiting)), 303)
    try_no, alone = 2 if waiting else 1, "alone" in request.args
    was, drawn = asking.fresh_form(origin, origin.today, try_no, alone=alone)
    # A tap on a place in a picture comes as a link that picks it.
    return _page(origin, drawn, was, form_of(drawn, was, request.args))


def check(origin: Origin) -> ResponseReturnValue:
    """Mark what was typed, record it once, and go on to the page that shows the mark."""
    was = asking.what_was_shown(origin, request.form)
    drawn = asking.drawn_as_shown(was) if was else None
    if was is None or drawn is None:
        return show_again(origin, NOT_OURS), 422 if origin.today else 410
    form = form_of(drawn, was, request.form)
    # Until it is an answer, no press is the one that counts.
    if form.only_changed:
        return _page(origin, drawn, was, form, fields={})
    if not form.validate():
        return _page(origin, drawn, was, form, fields={}), 422
    mark = form.mark(was.try_no)
    time = time_of_answer(request.form.get("pressed", ""), here())
    lesson = here().library.by_slug.get(drawn.question.lesson)
    facts = attempt_facts(was, drawn, mark, time, lesson.competency if lesson else "")
    writing(db.session)
    if attempts.record(db.session, facts, here().thresholds.skills).first:
        origin.recorded(facts)
    signins.seen(db.session, signed_in().sign_in_id, time.sent_at)
    db.session.commit()
    return redirect(origin.marked_href(was), 303)


def marked(origin: Origin, stored: attempts.StoredAttempt) -> ResponseReturnValue:
    """Show the mark of one's own stored answer, and the working once it may be seen."""
    first = None
    if stored.try_no > 1:
        first = asking.stored_answer(stored.question_id, stored.count, 1, stored.roof)
    was = asking.shown_with(stored)
    drawn = asking.drawn_as_shown(was)
    kind = KINDS[stored.kind]
    sheet = kind.sheet(stored, first, drawn)
    second = form = None
    if drawn and not stored.finished:
        second = asking.second_form(was, sheet.wrong_line, rest_right=sheet.rest_right)
        form = form_of(drawn, second)
    asked = drawn.question if drawn else origin.today
    return render_template(
        "questions/marked.html",
        told=kind.template,
        sheet=sheet,
        notes=(*sheet.notes, *origin.since(was)),
        title=asked.title if asked else "A question",
        drawn=drawn,
        href=origin.href(),
        back=origin.back(),
        sealed=second.sealed() if second else "",
        form=form,
        again=kind.again if origin.today and origin.repeats else "",
        onward=origin.onward(),
        further=origin.further(),
    )


def show_again(origin: Origin, note: str) -> str:
    """Return the page that a form came from, with a note and everything that was typed."""
    return _page_again(origin, request.form, note)


def typed_words(fields: Mapping[str, str]) -> str:
    """Return what stood in the answer fields of a form, to be told to whoever typed it."""
    typed = [text for name, text in fields.items() if _is_answer(name) and text]
    return ", ".join(typed) or "nothing"


def gone(fields: Mapping[str, str]) -> str:
    """Return the page for a question that isn't asked any more, with all that was typed."""
    words = GONE.format(typed=typed_words(fields))
    return render_template("fault.html", title="This question is gone", words=words)


def _page_again(origin: Origin, fields: Mapping[str, str], note: str) -> str:
    was = asking.what_was_shown(origin, fields)
    drawn = asking.drawn_as_shown(was) if was else None
    if was is None or drawn is None:
        if origin.today is None:
            return gone(fields)
        was, drawn = asking.fresh_form(origin, origin.today)
        if KINDS[drawn.question.kind].by_place:
            # What stood in a place there may be another thing here.
            fields, note = {}, PICK_ANEW
    form = form_of(drawn, was, MultiDict(fields))
    return _page(origin, drawn, was, form, note, fields)


def _page(
    origin: Origin,
    drawn: Drawn,
    was: Shown,
    form: QuestionForm,
    note: str = "",
    fields: Mapping[str, str] | None = None,
) -> str:
    return render_template(
        "questions/question.html",
        drawn=drawn,
        question=drawn.question,
        href=origin.href(),
        back=origin.back(),
        form=form,
        sealed=was.sealed(),
        note=note or origin.changed(was),
        errors=list(form.told()),
        pressed=(request.form if fields is None else fields).get("pressed", ""),
        first=_first_try(was, drawn),
    )


def _first_try(was: Shown, drawn: Drawn) -> MarkSheet | None:
    """Return the sheet whose slip and cue stand above a second try, or None at a first."""
    if not was.only:
        return None
    stored = asking.stored_answer(was.question_id, was.count, 1, was.roof)
    return KINDS[stored.kind].sheet(stored, None, drawn) if stored else None
