"""The crew table, and a trainee's page for those who answer for them."""

from dataclasses import dataclass

from flask import Blueprint, abort, g, render_template, url_for

from trainer.records import db, people, progress
from trainer.records.people import PersonRow
from trainer.records.progress import CrewRow
from trainer.web.access import reaches, signed_in
from trainer.web.installation import here
from trainer.web.outline import State, is_whole
from trainer.web.progress import sheets_of

bp = Blueprint("crew", __name__, url_prefix="/crew")


@dataclass(frozen=True, slots=True)
class CrewEntry:
    """One trainee's row: a state for each lesson in order."""

    name: str
    href: str
    states: list[State]


def trainee_or_404(ref: str) -> PersonRow:
    """Return the trainee of this reference; raise 404 for nobody, and for another crew's."""
    person = people.by_ref(db.session, ref)
    if person is None or "trainee" not in person.roles or not reaches(person.crew_id):
        abort(404)
    return person


@bp.get("")
def show() -> str:
    """Show who of the crew has come how far; the office sees all crews."""
    crew_id = None if g.whose == "all" else signed_in().crew_id
    # A supervisor without a crew has nobody, not everybody.
    rows = (
        []
        if crew_id is None and g.whose != "all"
        else progress.crew_rows(db.session, crew_id, here().library.questions)
    )
    return render_template(
        "crew/crew.html",
        lessons=[lesson.title for lesson in here().lessons],
        people=[_entry(row) for row in rows],
    )


@bp.get("/<ref>")
def person(ref: str) -> str:
    """Show one trainee's progress."""
    trainee = trainee_or_404(ref)
    sheets, parts = sheets_of(trainee.person_id)
    return render_template("crew/person.html", person=trainee, sheets=sheets, roof_parts=parts)


def _entry(row: CrewRow) -> CrewEntry:
    states: list[State] = []
    for lesson in here().lessons:
        done, of = row.lessons.get(lesson.slug), len(lesson.questions)
        if done is None:
            states.append(("not-tried", "not read"))
        elif is_whole(lesson, done):
            states.append(("right", f"{of} of {of}"))
        elif done.tried:
            states.append(("tried", f"{done.questions_right} of {of}"))
        else:
            states.append(("read", "read"))
    return CrewEntry(row.name, url_for("crew.person", ref=row.ref), states)
