"""The crew table, and a trainee's page for those who answer for them."""

from dataclasses import dataclass

from flask import Blueprint, abort, g, render_template, url_for

from trainer.engine.units import counted
from trainer.lessons import Lesson
from trainer.records import db, people, progress
from trainer.records.people import PersonRow
from trainer.records.progress import CrewRow, LessonRow
from trainer.records.stuck import Stuck, stuck_rows
from trainer.web.access import reaches, signed_in
from trainer.web.filters import day
from trainer.web.installation import here
from trainer.web.outline import State, is_whole
from trainer.web.progress import progress_of
from trainer.web.uses import last_uses

bp = Blueprint("crew", __name__, url_prefix="/crew")


@dataclass(frozen=True, slots=True)
class CrewEntry:
    """One trainee's row: a state for each lesson in order."""

    name: str
    href: str
    states: list[State]
    #: The questions that they tried several times and never had right, in words.
    stuck: str
    last_seen: str


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
        people=_entries(rows),
    )


@bp.get("/<ref>")
def person(ref: str) -> str:
    """Show one trainee's progress."""
    trainee = trainee_or_404(ref)
    asked = here().library.questions
    stuck = stuck_rows(db.session, [trainee.person_id], asked, here().thresholds.stuck)
    return render_template(
        "crew/person.html",
        person=trainee,
        **progress_of(trainee.person_id),
        stuck=stuck_words(stuck.get(trainee.person_id, [])),
        last_uses=[(each.title, each.words) for each in last_uses(trainee.person_id)],
    )


def _entries(rows: list[CrewRow]) -> list[CrewEntry]:
    """Return a row for each trainee, those who are stuck first."""
    asked = here().library.questions
    stuck = stuck_rows(db.session, [row.person_id for row in rows], asked, here().thresholds.stuck)
    entries = [_entry(row, stuck.get(row.person_id, [])) for row in rows]
    return sorted(entries, key=lambda entry: not entry.stuck)


def _entry(row: CrewRow, stuck: list[Stuck]) -> CrewEntry:
    seen = max((each.last_date for each in row.lessons.values()), default=None)
    return CrewEntry(
        row.name,
        url_for("crew.person", ref=row.ref),
        [_state(lesson, row.lessons.get(lesson.slug)) for lesson in here().lessons],
        stuck_words(stuck),
        day(seen),
    )


def stuck_words(stuck: list[Stuck]) -> str:
    """Return what somebody is stuck on, in words; nothing when they aren't."""
    questions = here().library.questions
    return ", ".join(
        f"{questions[each.question_id].title} ({counted(each.tried, 'try', 'tries')})"
        for each in stuck
    )


def _state(lesson: Lesson, done: LessonRow | None) -> State:
    of = len(lesson.questions)
    if done is None:
        return ("not-tried", "not read")
    right = f"{done.questions_right} of {of}"
    if done.read_at is None:
        return ("tried", f"{right}, not read")
    if is_whole(lesson, done):
        return ("right", right)
    return ("tried", right) if done.tried else ("read", "read")
