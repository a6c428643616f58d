"""How far somebody has come, lesson by lesson and question by question."""

from dataclasses import dataclass

from flask import Blueprint, render_template

from trainer.lessons import Lesson
from trainer.records import db, progress
from trainer.records.progress import LessonRow
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.lessons import rows_of
from trainer.web.outline import QuestionEntry, RoofPart, question_entries, roof_parts

bp = Blueprint("progress", __name__)


@dataclass(frozen=True, slots=True)
class LessonSheet:
    """One lesson with all that one person has done in it."""

    lesson: Lesson
    row: LessonRow | None
    questions: list[QuestionEntry]


@bp.get("/progress")
def show() -> str:
    """Show one's own progress."""
    sheets, parts = sheets_of(signed_in().person_id)
    return render_template("progress/progress.html", sheets=sheets, roof_parts=parts)


def sheets_of(person_id: int) -> tuple[list[LessonSheet], list[RoofPart]]:
    """Return somebody's progress in every lesson, and the parts of their roof."""
    library = here().library
    rows = rows_of(person_id)
    tried = progress.question_rows(db.session, person_id)
    sheets = [
        LessonSheet(lesson, rows.get(lesson.slug), question_entries(lesson, tried))
        for lesson in library.lessons
    ]
    return sheets, roof_parts(library, rows)
