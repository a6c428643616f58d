"""Roofs to keep: the list of them, and the form in which each is described.

A roof is planned as often as somebody likes before it is kept. Its sheet is a page of its own.
"""

import json
from collections.abc import Mapping

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.lessons.roofs import roof_digest, roof_text
from trainer.records import db, roofs, signins, writing
from trainer.records.cups import KeptCup, cups_of
from trainer.records.roofs import KeptRoof
from trainer.records.texts import Text
from trainer.web import kept
from trainer.web.access import signed_in
from trainer.web.described import Described, describe, offered, with_own_cups
from trainer.web.installation import here
from trainer.web.plan_sheet import sheet_of
from trainer.web.roof_fields import RoofFields
from trainer.web.roof_form import Fields, fields_from, tidied

bp = Blueprint("roofs", __name__, url_prefix="/roofs")

#: More than the largest roof fills in.
MOST_FIELDS = 200
BACK = "You are signed in again. The roof is here as you typed it."
CUT = "You are signed in again. Not all that you typed could be kept: look it over."
GONE = "This roof isn't there any more. What you typed is here: keep it as a new one."
ONCE = "This roof was kept already. Here it is."
REMOVED = "“{title}” was removed."
_BLANK: Fields = {"outline.shape": "rectangle"}


@bp.get("")
def show() -> str:
    """Show one's own roofs, those of the crew's supervisors, and examples to begin from."""
    person = signed_in()
    found = roofs.roofs_for(db.session, person.person_id, person.crew_id)
    return render_template(
        "roofs/roofs.html",
        own=[each for each in found if each.person_id == person.person_id],
        shared=[each for each in found if each.person_id != person.person_id],
        examples=here().library.roofs,
        shares="supervisor" in person.roles and person.crew_id is not None,
    )


@bp.get("/new")
def new() -> ResponseReturnValue:
    """Show an empty form, or one that is filled in from an example; 404 for no such example."""
    name = request.args.get("example")
    laid_by = kept.taken_up(request.path)
    if laid_by:
        return _typed_again(laid_by)
    if name is None:
        return _page(Described(_BLANK, {}))
    example = here().library.roofs.get(name) or abort(404)
    return _page(describe(fields_from(example.data)))


@bp.post("/new")
def keep_new() -> ResponseReturnValue:
    """Plan what was typed, or keep it and go on to its sheet."""
    return _sent(None)


@bp.get("/<int:roof_id>/change")
def change(roof_id: int) -> ResponseReturnValue:
    """Show one's own roof in the form; 404 for any other."""
    roof = _own(roof_id) or abort(404)
    laid_by = kept.taken_up(request.path)
    if laid_by:
        return _typed_again(laid_by, roof)
    return _page(describe(fields_from(json.loads(roof.text))), roof)


@bp.post("/<int:roof_id>/change")
def keep_changed(roof_id: int) -> ResponseReturnValue:
    """Plan one's own roof as it was changed, or keep it and go on to its sheet.

    404 where it isn't there any more, with the form as it was typed.
    """
    roof = _own(roof_id)
    if roof is None:
        return _page(describe(_fields()), note=GONE), 404
    return _sent(roof)


@bp.get("/<int:roof_id>/remove")
def ask_to_remove(roof_id: int) -> str:
    """Ask whether one's own roof shall go; 404 for any other."""
    roof = _own(roof_id) or abort(404)
    return render_template("roofs/remove.html", roof=roof)


@bp.post("/<int:roof_id>/remove")
def remove(roof_id: int) -> ResponseReturnValue:
    """Remove one's own roof; what was answered on it stays. 404 for any other."""
    roof = _own(roof_id) or abort(404)
    writing(db.session)
    roofs.remove_roof(db.session, roof.person_id, roof_id)
    db.session.commit()
    flash(REMOVED.format(title=roof.title))
    return redirect(url_for("roofs.show"), 303)


def show_again(note: str) -> str:
    """Return the page that this request's form came from, with a note and all that was typed."""
    roof_id = (request.view_args or {}).get("roof_id")
    return _page(describe(_fields()), _own(roof_id) if roof_id else None, note)


def _own_cups() -> list[KeptCup]:
    return cups_of(db.session, signed_in().person_id)


def _own(roof_id: int) -> KeptRoof | None:
    person = signed_in()
    roof = roofs.roof_for(db.session, person.person_id, person.crew_id, roof_id)
    return roof if roof and roof.person_id == person.person_id else None


def _fields() -> Fields:
    if sum(bool(text) for text in request.form.values()) > MOST_FIELDS:
        abort(413)
    fields = tidied(request.form)
    return with_own_cups(fields, request.form, _own_cups(), here().today())


def _sent(roof: KeptRoof | None) -> ResponseReturnValue:
    press = request.form.get("press")
    described = describe(_fields(), named=press == "keep")
    if press == "sheet":
        # A script asks while somebody types: nothing is wrong yet, only missing.
        return _form("roofs/_form.html", described, roof, quiet=True)
    if described.plan is None:
        return _page(described, roof), 422
    return _keep(described, roof) if press == "keep" else _page(described, roof)


def _keep(described: Described, roof: KeptRoof | None) -> ResponseReturnValue:
    person, now = signed_in(), here().now()
    today, written = here().date_of(now), roof_text(described.data)
    text = Text("roof", described.data["title"], written, roof_digest(written))
    writing(db.session)
    if roof:
        roof_id = roof.roof_id
        roofs.change_roof(db.session, person.person_id, roof_id, text, now, today)
    else:
        found = roofs.roofs_for(db.session, person.person_id, None)
        same = next((each for each in found if each.digest == text.digest), None)
        if same:
            # The form was sent twice, or the roof was typed twice to the last letter.
            flash(ONCE)
        roof_id = (
            same.roof_id
            if same
            else roofs.save_roof(db.session, person.person_id, text, now, today)
        )
    signins.seen(db.session, person.sign_in_id, now)
    db.session.commit()
    return redirect(url_for("roof_sheet.show", roof_id=roof_id), 303)


def _typed_again(laid_by: Mapping[str, str], roof: KeptRoof | None = None) -> str:
    note = CUT if kept.is_cut(laid_by) else BACK
    return _page(describe(tidied(laid_by)), roof, note)


def _page(described: Described, roof: KeptRoof | None = None, note: str = "") -> str:
    return _form("roofs/form.html", described, roof, note)


def _form(
    template: str,
    described: Described,
    roof: KeptRoof | None,
    note: str = "",
    *,
    quiet: bool = False,
) -> str:
    action = (
        url_for("roofs.keep_changed", roof_id=roof.roof_id) if roof else url_for("roofs.keep_new")
    )
    cups = tuple(offered(described.fields, _own_cups(), here().today()))
    return render_template(
        template,
        form=RoofFields(described, cups, quiet),
        quiet=quiet,
        roof=roof,
        action=action,
        note=note,
        blank=described.fields is _BLANK,
        sheet=sheet_of(described.plan) if described.plan else None,
    )
