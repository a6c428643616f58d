"""Used on a job: what somebody did on a real roof, noted by them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.lessons import Competency
from trainer.records import db, uses, writing
from trainer.records.uses import UseFacts
from trainer.web import kept
from trainer.web.access import signed_in
from trainer.web.days import read_day
from trainer.web.filters import day
from trainer.web.installation import here

bp = Blueprint("uses", __name__, url_prefix="/uses")

NOTHING = "Tick at least one thing that you did there."
NO_ROOF = "Say which roof it was, so that whoever was there knows it."
LONG_ROOF = f"A roof's name is one line of {uses.LONGEST_ROOF} letters and signs at most."
NO_DAY = "Write the day like 9 March 2026 or 2026-03-09."
TO_COME = "That day is still to come: note it when it is done."
TOO_OLD = "That was before {first}, too long ago for anybody to confirm."
NOTED = "Noted. It waits until your supervisor confirms it."
NOTED_BEFORE = "All of that was noted before. Nothing was added."
TAKEN_BACK = "That is taken back."
#: How the name of a competency's field begins.
USED = "used_"


class UseForm:
    """What is noted; what can't be read has a sentence in `errors`, by field."""

    def __init__(self, fields: Mapping[str, str], competencies: Mapping[str, Competency]) -> None:
        self.fields = fields
        self.competencies = competencies
        self.roof = " ".join(fields.get("roof", "").split())
        self.errors: dict[str, str] = {}

    @property
    def ticked(self) -> list[str]:
        """The competencies that are ticked, in order."""
        return [slug for slug in self.competencies if self.fields.get(USED + slug)]

    def facts(self, today: date) -> list[UseFacts]:
        """Return what there is to note; nothing where a field is wrong."""
        if not self.ticked:
            self.errors["used"] = NOTHING
        if not self.roof:
            self.errors["roof"] = NO_ROOF
        elif len(self.roof) > uses.LONGEST_ROOF or not self.roof.isprintable():
            self.errors["roof"] = LONG_ROOF
        used_on = self._day(today)
        if self.errors or used_on is None:
            return []
        return [UseFacts(slug, self.roof, used_on) for slug in self.ticked]

    def _day(self, today: date) -> date | None:
        first = uses.earliest_noted(today, here().thresholds.uses)
        used_on = read_day(self.fields.get("used_on", ""))
        if used_on is None:
            self.errors["used_on"] = NO_DAY
            return None
        if used_on > today:
            self.errors["used_on"] = TO_COME
        elif used_on < first:
            self.errors["used_on"] = TOO_OLD.format(first=day(first))
        return used_on


@dataclass(frozen=True, slots=True)
class LastUse:
    """When a competency was last used, and until when a signature would live by it."""

    title: str
    used_on: date
    until: date
    is_over: bool

    @property
    def words(self) -> str:
        """The day, and what follows from it."""
        if self.is_over:
            return f"{day(self.used_on)}, unused for too long since {day(self.until)}"
        return f"{day(self.used_on)}, to be used again before {day(self.until)}"


@bp.get("")
def show() -> str:
    """Show what one has noted, and the form to note more."""
    return _page(kept.taken_up(request.path) or {"used_on": here().today().isoformat()})


@bp.post("")
def note() -> ResponseReturnValue:
    """Note what was used on a roof; a supervisor is asked to confirm it."""
    form = UseForm(request.form, _competencies())
    facts = form.facts(here().today())
    if form.errors:
        return _page(request.form, form), 422
    writing(db.session)
    new = [
        each
        for each in facts
        if uses.note_use(db.session, signed_in().person_id, each, here().now())
    ]
    db.session.commit()
    flash(NOTED if new else NOTED_BEFORE)
    return redirect(url_for("uses.show"), 303)


@bp.post("/<int(max=2147483647):use_id>/take-back")
def remove(use_id: int) -> ResponseReturnValue:
    """Take one of one's own back while it waits; 404 for any other."""
    writing(db.session)
    if not uses.take_back_use(db.session, signed_in().person_id, use_id):
        abort(404)
    db.session.commit()
    flash(TAKEN_BACK)
    return redirect(url_for("uses.show"), 303)


def last_uses(person_id: int) -> list[LastUse]:
    """Return when somebody last used each competency, as far as that is confirmed."""
    today, rules = here().today(), here().thresholds.uses
    found = uses.last_used(db.session, [person_id], today)[person_id]
    told = []
    for each in here().library.competencies.competencies:
        if each.slug in found:
            until = uses.unused_until(found[each.slug], rules, safety_critical=each.safety_critical)
            told.append(LastUse(each.title, found[each.slug], until, until <= today))
    return told


def waiting_of(person_id: int) -> int:
    """Return how many of one's own uses wait for a supervisor."""
    return sum(not each.answer for each in uses.uses_of(db.session, person_id))


def show_again(note: str) -> str:
    """Return the page of this request's form with a note, and with all that was typed."""
    return _page(request.form, note=note)


def _page(fields: Mapping[str, str], form: UseForm | None = None, note: str = "") -> str:
    rules, today = here().thresholds.uses, here().today()
    return render_template(
        "uses/uses.html",
        form=form or UseForm(fields, _competencies()),
        fields=fields,
        note=note,
        today=today,
        first=uses.earliest_noted(today, rules),
        own=uses.uses_of(db.session, signed_in().person_id),
        last=last_uses(signed_in().person_id),
        titles=competency_titles(),
    )


def _competencies() -> dict[str, Competency]:
    """Return what can be used on a roof today: what a lesson teaches."""
    taught = {lesson.competency for lesson in here().lessons}
    every = here().library.competencies.competencies
    return {each.slug: each for each in every if each.slug in taught}


def competency_titles() -> dict[str, str]:
    """Return what each competency is called, by slug."""
    return {each.slug: each.title for each in here().library.competencies.competencies}
