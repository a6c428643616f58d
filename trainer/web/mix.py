"""Mix: the bucket in front of somebody, for the phone in their other hand."""

from flask import Blueprint, g, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.wrappers import Response

from trainer.engine.materials import CATALYST_DOSE
from trainer.records import db
from trainer.records.cups import KeptCup, cups_of
from trainer.web import kept
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.mix_clock import clock_of, holder, stamp, start_of
from trainer.web.mix_form import MixForm
from trainer.web.mix_sheet import sheet_of
from trainer.web.plan_sheet import CARD_CAUTIONS, cautions_named, cups_words

bp = Blueprint("mix", __name__, url_prefix="/mix")

#: Tells the phone for whom it may keep a page, to have it without signal.
HOLDER = "Bench-Holder"
DEFAULTS = {"dose": f"{CATALYST_DOSE.value:g}", "dose_as": "by mass", "resin_unit": "kg"}
#: As many resins as there is room to pick from.
_PICKED_FROM = 5


@bp.get("")
def show() -> ResponseReturnValue:
    """Show what goes into the bucket, and its clock; or the form alone."""
    laid_by = kept.taken_up(request.path)
    if laid_by:
        return redirect(url_for("mix.show", **MixForm(laid_by).kept()), 303)
    own = cups_of(db.session, signed_in().person_id)
    asked = "resin" in request.args
    form = form_of(own, fresh=not asked)
    sheet = sheet_of(form, own) if asked else None
    start = start_of(form["since"])
    page = render_template(
        "mix/mix.html",
        form=form,
        sheet=sheet,
        clock=clock_of(start, sheet.bucket.gel if sheet else None),
        cup_words=tuple(cups_words(sheet.bucket.gel)) if sheet else (),
        cautions=cautions_named(CARD_CAUTIONS),
        resins=resins_of(own),
        holder=holder(),
    )
    return page, 422 if form.errors else 200


@bp.post("")
def start() -> ResponseReturnValue:
    """Start the clock of this bucket: the instant stands in the address from now on."""
    fields = MixForm(request.form).kept("since", "gelled", "minutes")
    since = stamp(here().now())
    return redirect(url_for("mix.show", **fields, since=since, _anchor="clock"), 303)


@bp.after_request
def hold(response: Response) -> Response:
    """Say for whom this page may be kept on their phone."""
    if g.person:
        response.headers[HOLDER] = holder()
    return response


def form_of(own: list[KeptCup], *, fresh: bool) -> MixForm:
    """Return the form of this address; a fresh one begins with what is usual."""
    if not fresh:
        return MixForm(request.args)
    today = here().today()
    timed = resins_of([cup for cup in own if cup.local_date == today])
    # The one resin that was timed today is the one in the bucket; an older one may not be.
    picked = {"pick": timed[0]} if len(timed) == 1 else {}
    return MixForm({**DEFAULTS, **picked, **request.args.to_dict()})


def resins_of(own: list[KeptCup]) -> list[str]:
    """Return the names of a person's own resins, the last timed first, each once."""
    names = {cup.facts.product.casefold(): cup.facts.product for cup in reversed(own)}
    last = dict.fromkeys(cup.facts.product.casefold() for cup in own)
    return [names[each] for each in last][:_PICKED_FROM]
