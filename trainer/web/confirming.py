"""To confirm: what a crew did on real roofs, answered by whoever answers for them."""

from dataclasses import dataclass
from datetime import date
from itertools import groupby

from flask import Blueprint, abort, flash, g, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.engine.units import counted
from trainer.records import db, uses, writing
from trainer.records.uses import UseRow
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.uses import competency_titles

bp = Blueprint("confirming", __name__, url_prefix="/crew/uses")

NONE_TICKED = "Nothing was ticked, so nothing has changed."
NONE_LEFT = "Those were answered already, or taken back."
#: How the name of a use's field begins.
USE = "use_"


@dataclass(frozen=True, slots=True)
class Waiting:
    """What one person did on one roof on one day, waiting for an answer."""

    person: str
    roof: str
    used_on: date
    uses: list[UseRow]


@bp.get("")
def show() -> str:
    """Show a supervisor what waits to be confirmed; the office sees all crews."""
    return render_template(
        "confirming/confirming.html", waiting=_grouped(waiting_here()), titles=competency_titles()
    )


@bp.post("")
def answer() -> ResponseReturnValue:
    """Confirm what is ticked, or say that it can't be; 400 for any other answer."""
    said = request.form.get("answer", "")
    if said not in uses.ANSWERS:
        abort(400)
    ticked = [name.removeprefix(USE) for name in request.form if name.startswith(USE)]
    if not ticked:
        flash(NONE_TICKED)
        return redirect(url_for("confirming.show"), 303)
    writing(db.session)
    answered = [each for number in ticked if (each := _answered(number, said))]
    db.session.commit()
    flash(_told(answered, said))
    return redirect(url_for("confirming.show"), 303)


def waiting_here() -> list[UseRow]:
    """Return what waits for the signed-in person's answer."""
    me = signed_in()
    crew_id = None if "office" in me.roles else me.crew_id
    if crew_id is None and "office" not in me.roles:
        return []
    return uses.waiting_uses(db.session, crew_id, but_not=me.person_id)


def _grouped(rows: list[UseRow]) -> list[Waiting]:
    """Return the uses by person, roof and day, the oldest day first."""
    rows = sorted(rows, key=_same_job)
    jobs = [(key, list(each)) for key, each in groupby(rows, key=_same_job)]
    return [Waiting(own[0].person, roof, used_on, own) for (used_on, _, roof), own in jobs]


def _same_job(row: UseRow) -> tuple[date, int, str]:
    return row.facts.used_on, row.person_id, row.facts.roof


def _answered(number: str, said: str) -> UseRow | None:
    if not (number.isascii() and number.isdigit() and len(number) <= 9):
        return None
    me = signed_in()
    if me.crew_id is None and g.whose != "all":
        return None
    crew_id = None if g.whose == "all" else me.crew_id
    return uses.answer_use(
        db.session, int(number), said, by=me.person_id, crew_id=crew_id, now=here().now()
    )


def _told(answered: list[UseRow], said: str) -> str:
    if not answered:
        return NONE_LEFT
    whose = " and ".join(dict.fromkeys(each.person for each in answered))
    return f"{counted(len(answered), 'use').capitalize()} by {whose}: {said}."
