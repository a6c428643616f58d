"""Signing in and out; somebody whose sign-in has ended keeps what they sent."""

import logging
import math
from datetime import timedelta
from urllib.parse import urlsplit

from flask import (
    Blueprint,
    current_app,
    g,
    make_response,
    redirect,
    render_template,
    request,
    session,
    url_for,
)
from flask.typing import ResponseReturnValue
from werkzeug.wrappers import Response

from trainer.engine.units import counted
from trainer.records import db, delays, signins, writing
from trainer.records.signins import OWN_PHONE
from trainer.web import kept
from trainer.web.forms import SignInForm
from trainer.web.headers import FORGET
from trainer.web.installation import here

bp = Blueprint("signing_in", __name__)
_log = logging.getLogger(__name__)

COOKIE = "bench"
_READING = ("GET", "HEAD")
WRONG = "That name and password don't go together. Look at both and try again."
ENDED = "Your sign-in has ended. Sign in again; what you typed is kept."


def ask_to_sign_in() -> ResponseReturnValue:
    """Return the way to sign in for somebody who isn't, keeping where they wanted to go."""
    if request.method in _READING:
        return redirect(url_for("signing_in.sign_in", then=request.full_path.rstrip("?")), 303)
    return _page(SignInForm(), note=ENDED, parcel=kept.packed(request.path, request.form)), 401


def show_again(note: str) -> str:
    """Return the page with a note, and with everything but the password as it was sent."""
    return _page(SignInForm(request.form), note=note, parcel=request.form.get("kept", ""))


@bp.route("/sign-in", methods=["GET", "POST"])
def sign_in() -> ResponseReturnValue:
    """Sign in on one's own phone for thirty days."""
    form = SignInForm(request.form)
    parcel = request.form.get("kept", "")
    if request.method in _READING:
        return redirect(url_for("today.show"), 303) if g.person else _page(form)
    if not form.validate():
        return _page(form, parcel=parcel), 422
    name, password, now = form.name.data or "", form.password.data or "", here().now()
    where = request.remote_addr or "unknown"
    wait = delays.wait(db.session, name, where, now)
    if wait:
        _log.warning("sign-in refused for now: from %s", where)
        return _asked_to_wait(form, wait, parcel)
    person_id = signins.recognise(db.session, name, password)
    writing(db.session)
    if person_id is None:
        wait = delays.failed(db.session, name, where, now)
        db.session.commit()
        _log.warning("sign-in failed: from %s", where)
        return (
            _asked_to_wait(form, wait, parcel)
            if wait
            else (_page(form, note=WRONG, parcel=parcel), 422)
        )
    delays.succeeded(db.session, name, where)
    signins.renew_hash(db.session, person_id, password)
    token = signins.start(db.session, person_id, now, _from_where())
    db.session.commit()
    _log.info("signed in: person %s from %s", person_id, where)
    return _signed_in(token, parcel)


@bp.post("/sign-out")
def sign_out() -> ResponseReturnValue:
    """End this sign-in, here and on the server."""
    if g.person:
        writing(db.session)
        signins.end(db.session, g.person.sign_in_id, here().now())
        db.session.commit()
        _log.info("signed out: person %s", g.person.person_id)
    session.clear()
    response = make_response(redirect(url_for("signing_in.sign_in"), 303))
    response.headers.extend(FORGET)
    response.delete_cookie(here().config.cookie_name(COOKIE), secure=here().config.https)
    return response


def _signed_in(token: str, parcel: str) -> Response:
    # A new session, so that one planted before the sign-in is worth nothing after it.
    session.clear()
    session.permanent = True
    unpacked = kept.unpacked(parcel)
    then = _page_of(unpacked.path) if unpacked else _safe_path(request.form.get("then", ""))
    if unpacked and then == unpacked.path:
        # Only what the page takes up again; there is nothing typed in any other form.
        kept.lay_by(unpacked)
    response = make_response(redirect(then or url_for("today.show"), 303))
    response.headers.extend(FORGET)
    response.set_cookie(
        here().config.cookie_name(COOKIE),
        token,
        max_age=OWN_PHONE,
        secure=here().config.https,
        httponly=True,
        samesite="Lax",
    )
    return response


def _page(form: SignInForm, note: str = "", parcel: str = "") -> str:
    then = _safe_path(request.values.get("then", ""))
    return render_template("signing_in/sign_in.html", form=form, note=note, kept=parcel, then=then)


def _asked_to_wait(form: SignInForm, wait: timedelta, parcel: str) -> ResponseReturnValue:
    seconds = math.ceil(wait.total_seconds())
    time = counted(seconds, "second") if seconds < 60 else counted(-(-seconds // 60), "minute")
    note = f"That was wrong too often. Wait {time}, then try again."
    return _page(form, note=note, parcel=parcel), 429, {"Retry-After": str(seconds)}


def _page_of(path: str) -> str:
    """Return the page that a form stood on: where it was sent, else the one above it."""
    pages = current_app.url_map.bind("")
    return next((each for each in (path, path.rpartition("/")[0]) if pages.test(each, "GET")), "")


def _safe_path(path: str) -> str:
    """Return a path of our own to go on to, or nothing: never another host."""
    try:
        parts = urlsplit(path)
    except ValueError:
        return ""
    own = path.startswith("/") and not path.startswith("//") and "\\" not in path
    return path if own and not parts.scheme and not parts.netloc else ""


def _from_where() -> str:
    agent = request.user_agent.string[:120]
    return f"{request.remote_addr or 'unknown'} {agent}".strip()
