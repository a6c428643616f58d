"""How far somebody has come, lesson by lesson and question by question."""

from dataclasses import dataclass
from itertools import groupby
from typing import Any

from flask import Blueprint, render_template

from trainer.lessons import Lesson
from trainer.records import db, progress
from trainer.records.progress import LessonRow
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.lessons import rows_of
from trainer.web.outline import QuestionEntry, question_entries, roof_parts
from trainer.web.skill_standing import skill_sheets

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
    return render_template("progress/progress.html", **progress_of(signed_in().person_id))


def progress_of(person_id: int) -> dict[str, Any]:
    """Return somebody's roof, skills and lessons, for their page and their supervisor's."""
    library, rows, skills = here().library, rows_of(person_id), skill_sheets(person_id)
    tried = progress.question_rows(db.session, person_id)
    sheets = [
        LessonSheet(lesson, rows.get(lesson.slug), question_entries(lesson, tried))
        for lesson in library.lessons
    ]
    by_competency = groupby(skills, key=lambda sheet: sheet.competency.title)
    return {
        "roof_parts": roof_parts(library, rows, skills),
        "skills": [(title, list(each)) for title, each in by_competency],
        "sheets": sheets,
    }
