"""Pages for what goes wrong, each with a sentence that says what to do."""

import logging
from collections.abc import Callable, Mapping

from flask import Flask, g, render_template, request
from flask.typing import ResponseReturnValue
from flask_wtf.csrf import CSRFError
from sqlalchemy.exc import DBAPIError
from werkzeug.exceptions import HTTPException

from trainer.records import db, faults
from trainer.web import practice, practise, questions, roofs, season, signing_in, turn, uses

_log = logging.getLogger(__name__)

_SENTENCES = {
    400: ("This form can't be read", "Go back, load the page again, and send it once more."),
    403: ("This page isn't yours to open", "Ask your supervisor or the office if it should be."),
    404: ("There is no such page", "It may have moved. Begin again from Today."),
    405: ("This page can't be used like that", "Begin again from Today."),
    413: ("That is too much for one form", "Shorten what you typed and send it again."),
    500: ("Something broke here", "It has been noted. Go back and send it again in a minute."),
}
LOST_TOKEN = "This form had lost its key and has a new one now. Send it again."  # noqa: S105


#: Forms that come back as they were typed, by where they are sent.
_FORMS: Mapping[str, Callable[[str], str]] = {
    "questions.check": questions.show_again,
    "practice.check": practice.show_again,
    "practise.check": practise.show_again,
    "roofs.keep_new": roofs.show_again,
    "roofs.keep_changed": roofs.show_again,
    "season.set_start": season.show_again,
    "signing_in.sign_in": signing_in.show_again,
    "uses.note": uses.show_again,
}


def init_app(app: Flask) -> None:
    """Register them."""
    app.register_error_handler(HTTPException, _refused)
    app.register_error_handler(CSRFError, _lost_token)
    app.register_error_handler(DBAPIError, _records_failed)
    app.register_error_handler(Exception, _broken)


def _page(title: str, words: str, status: int) -> tuple[str, int]:
    return render_template("fault.html", title=title, words=words), status


def _refused(error: HTTPException) -> ResponseReturnValue:
    code = error.code or 500
    if code < 400:
        return error
    if code == 403:
        _log.warning("refused: person %s at %s", g.person and g.person.person_id, request.path)
    title, words = _SENTENCES.get(code, (error.name, "Begin again from Today."))
    # Such as which methods are allowed, which a 405 has to say.
    headers = [each for each in error.get_headers() if each[0] != "Content-Type"]
    return *_page(title, words, code), headers


def _lost_token(_error: CSRFError) -> ResponseReturnValue:
    show_again = _FORMS.get(request.endpoint or "")
    if show_again:
        return show_again(LOST_TOKEN), 400
    return _page("This form had lost its key", "Load the page again and send it once more.", 400)


def _records_failed(error: DBAPIError) -> ResponseReturnValue:
    """Answer a full disk or a busy database; what was typed stays in the form to send again."""
    known = faults.translate(error)
    db.session.rollback()
    if known is None:
        return _broken(error)
    _log.error("records: %s", error)
    show_again = _FORMS.get(request.endpoint or "")
    if show_again is None:
        return _page("The records can't be reached", str(known), 503)
    try:
        return show_again(str(known)), 503
    except (DBAPIError, HTTPException):
        # They can't even tell who asks: what was typed is told, to be sent again.
        typed = turn.typed_words(request.form)
        words = f"{known} Go back in your browser to send it. What you had typed: {typed}."
        return _page("The records can't be reached", words, 503)


def _broken(error: Exception) -> ResponseReturnValue:
    _log.exception("broken", exc_info=error)
    db.session.rollback()
    title, words = _SENTENCES[500]
    return _page(title, words, 500)
