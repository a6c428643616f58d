"""Test cups: a small batch timed until it gels, and whatever else was timed, kept by its owner."""

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.engine import EngineError, show
from trainer.engine.band import gel_short_end
from trainer.engine.plans.dose import dose_by_mass
from trainer.records import db, writing
from trainer.records.cups import CupFacts, cups_of, keep_cup, take_back
from trainer.web import kept, mix
from trainer.web.access import signed_in
from trainer.web.answer import instant_in
from trainer.web.installation import here
from trainer.web.mix_clock import Clock, Start, holder, minutes_gone, stamp, start_of
from trainer.web.mix_form import NO_NAME, MixForm, dose_words

bp = Blueprint("cups", __name__, url_prefix="/mix/cups")
bp.after_request(mix.hold)

_CUP = gel_short_end.parameters
TAKEN_BACK = "That cup is taken back. No clock goes by it any more."
#: What only counts while a clock runs.
_RUNNING = ("since", "gelled", "minutes")


@bp.get("")
def list_all() -> ResponseReturnValue:
    """Show one's own cups, and the form that starts one or keeps one."""
    laid_by = kept.taken_up(request.path)
    if laid_by:
        return redirect(url_for("cups.list_all", **MixForm(laid_by).kept()), 303)
    own = cups_of(db.session, signed_in().person_id)
    return _page(mix.form_of(own, fresh="dose" not in request.args))


@bp.post("")
def keep() -> ResponseReturnValue:
    """Start a cup, or keep the minutes after which a cup or a batch gelled."""
    form = MixForm(request.form)
    start = start_of(form["since"])
    facts = _facts(form, start)
    if form.errors:
        return _page(form), 422
    if facts is None:
        # By the phone's own clock where it says so, since that times the rest as well.
        since = stamp(instant_in(form["pressed"]) or here().now())
        fields = form.kept(*_RUNNING)
        return redirect(url_for("cups.list_all", **fields, since=since, _anchor="clock"), 303)
    writing(db.session)
    keep_cup(db.session, signed_in().person_id, facts, here().now(), here().today())
    db.session.commit()
    flash(_told(facts))
    # From a bucket it goes back to the bucket, whose clock it has just changed.
    onward = "mix.show" if form["resin"] else "cups.list_all"
    return redirect(url_for(onward, **form.kept(*_RUNNING)), 303)


@bp.post("/<int(max=2147483647):cup_id>/take-back")
def remove(cup_id: int) -> ResponseReturnValue:
    """Take one of one's own cups back; 404 for any other."""
    writing(db.session)
    if not take_back(db.session, signed_in().person_id, cup_id):
        abort(404)
    db.session.commit()
    flash(TAKEN_BACK)
    return redirect(url_for("cups.list_all"), 303)


def _page(form: MixForm) -> str:
    own = cups_of(db.session, signed_in().person_id)
    return render_template(
        "mix/cups.html",
        form=form,
        clock=Clock(start_of(form["since"])),
        cups=own,
        today=here().today(),
        resins=mix.resins_of(own),
        holder=holder(),
        dose_words=dose_words,
    )


def _facts(form: MixForm, start: Start) -> CupFacts | None:
    """Return what is to be kept; None where the cup is only to be started, or a field is wrong."""
    product, dose, at_c = form.name(NO_NAME), form.dose(), form.cup_temperature()
    minutes = form.cup_minutes()
    if start.note:
        form.errors["minutes"] = start.note
    if start.at and not form["minutes"].strip():
        minutes = _timed(form, start)
    percent = _percent(form)
    if form.errors or dose is None or at_c is None or percent is None or minutes is None:
        return None
    batch = form["from_batch"] == "yes"
    return CupFacts(product, minutes, at_c, percent, *dose, from_batch=batch)


def _timed(form: MixForm, start: Start) -> float | None:
    """Return the minutes that the clock has run, where a cup may take as long."""
    if start.at is None:
        return None
    minutes = round(minutes_gone(start.at, form["gelled"]), 1)
    try:
        _CUP["cup_min"].check(minutes)
    except EngineError as error:
        form.errors["minutes"] = str(error)
    return minutes


def _percent(form: MixForm) -> float | None:
    """Return the dose by mass, where a cup may have as much."""
    asked = form.mix()
    if asked is None:
        return None
    percent = dose_by_mass(asked, asked.percent, asked.convention).value
    try:
        _CUP["cup_percent"].check(percent)
    except EngineError as error:
        form.errors["dose"] = str(error)
    return percent


def _told(facts: CupFacts) -> str:
    what = "batch" if facts.from_batch else "cup"
    minutes, at_c = show(facts.minutes, "min"), show(facts.at_c, "°C")
    return f"Kept: the {what} of {facts.product} gelled after {minutes} at {at_c}."
