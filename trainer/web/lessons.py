"""A lesson to read, and the note that it was read."""

from datetime import date

from flask import Blueprint, abort, flash, redirect, url_for
from flask.typing import ResponseReturnValue
from werkzeug.wrappers import Response

from trainer.lessons import Lesson
from trainer.records import db, progress, signins, writing
from trainer.records.progress import LessonRow
from trainer.web import fragments
from trainer.web.access import signed_in
from trainer.web.filters import day
from trainer.web.installation import here
from trainer.web.outline import is_open, question_state

bp = Blueprint("lessons", __name__)

FIRST_FIRST = "Read this one before any other: it is about your eyes and your hands."


def lesson_or_404(slug: str) -> Lesson:
    """Return the lesson of this slug; raise 404."""
    lesson = here().library.by_slug.get(slug)
    if lesson is None:
        abort(404)
    return lesson


def send_to_first(lesson: str) -> Response | None:
    """Return the way to the first lesson for somebody who hasn't read it, or None.

    The first lesson itself, and its questions, are open to everybody.
    """
    first = here().library.first.slug
    if lesson == first or is_open(here().library, rows_of(signed_in().person_id)):
        return None
    return _shut()


def rows_of(person_id: int) -> dict[str, LessonRow]:
    """Return what somebody has done, by lesson."""
    return {
        row.lesson: row
        for row in progress.lesson_rows(db.session, person_id, here().library.questions)
    }


@bp.get("/lessons/<slug>")
def show(slug: str) -> ResponseReturnValue:
    """Show a lesson, with its questions and how far one has come in them."""
    lesson, first = lesson_or_404(slug), here().library.first
    glance = progress.glance(db.session, signed_in().person_id, slug)
    if lesson is not first and first.slug not in glance.read:
        return _shut()
    read_on = glance.read.get(slug)
    rows = fragments.question_rows(
        lesson,
        (
            question_state(tried=q.id in glance.tried, right=q.id in glance.right)
            for q in lesson.questions
        ),
    )
    return fragments.page(
        "lessons/lesson.html",
        (lesson.digest, read_on is not None, signed_in().roles),
        {"questions": rows, "when": day(date.fromisoformat(read_on)) if read_on else ""},
        lesson=lesson,
        is_read=read_on is not None,
        body=fragments.lesson_body(lesson),
        after=here().library.next_after(lesson),
    )


def _shut() -> Response:
    flash(FIRST_FIRST)
    return redirect(url_for("lessons.show", slug=here().library.first.slug), 303)


@bp.post("/lessons/<slug>/read")
def read(slug: str) -> ResponseReturnValue:
    """Note that a lesson was read, and go on to its first question."""
    lesson, person = lesson_or_404(slug), signed_in()
    shut = send_to_first(slug)
    if shut:
        return shut
    now = here().now()
    writing(db.session)
    progress.mark_read(db.session, person.person_id, lesson.slug, now, here().date_of(now))
    signins.seen(db.session, person.sign_in_id, now)
    db.session.commit()
    if not lesson.questions:
        return redirect(url_for("lessons.show", slug=slug), 303)
    return redirect(url_for("questions.show", question_id=lesson.questions[0].id), 303)
