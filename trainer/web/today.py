"""Today: one thing plainly first, then the lessons and the roof that draws itself."""

from collections.abc import Mapping
from dataclasses import dataclass

from flask import Blueprint, render_template, url_for

from trainer.engine.units import counted
from trainer.lessons import Library
from trainer.records.progress import LessonRow
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.lessons import rows_of
from trainer.web.outline import is_whole, lesson_entries, roof_parts
from trainer.web.skill_standing import skill_sheets

bp = Blueprint("today", __name__)


@dataclass(frozen=True, slots=True)
class FirstThing:
    """What to do first today."""

    title: str
    words: str
    href: str
    press: str


@bp.get("/")
def show() -> str:
    """Show what to do first, and what there is besides."""
    person, library = signed_in(), here().library
    rows = rows_of(person.person_id)
    return render_template(
        "today/today.html",
        first=first_thing(library, rows) if "trainee" in person.roles else _look_at_the_crew(),
        lessons=lesson_entries(library, rows),
        roof_parts=roof_parts(library, rows, skill_sheets(person.person_id)),
    )


def _look_at_the_crew() -> FirstThing:
    words = "See who has come how far, and who is stuck. The lessons below are for you too."
    return FirstThing("Your crew", words, url_for("crew.show"), "Open the crew table")


def first_thing(library: Library, rows: Mapping[str, LessonRow]) -> FirstThing | None:
    """Return the next lesson to read, or to finish the questions of; None when all are whole."""
    for lesson in library.lessons:
        row = rows.get(lesson.slug)
        href = url_for("lessons.show", slug=lesson.slug)
        if row is None or row.read_at is None:
            return FirstThing(lesson.title, lesson.scenario, href, "Read it")
        if not is_whole(lesson, row):
            left = len(lesson.questions) - row.questions_right
            of = counted(len(lesson.questions), "question")
            words = f"You have read it. Still to do: {left} of its {of}."
            return FirstThing(lesson.title, words, f"{href}#questions", "Go on")
    return None
