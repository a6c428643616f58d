"""Pieces of pages that are the same for everybody, drawn once and kept.

A lesson's prose, or a question's row in a list, depends on nothing but the content and a state;
what is left to draw for each request is small.
"""

from collections.abc import Callable, Iterable

from flask import Flask, current_app, get_template_attribute, render_template, url_for
from markupsafe import Markup, escape

from trainer.lessons import Lesson
from trainer.web.installation import here
from trainer.web.mark_sheet import plain_working

Key = tuple[str, ...]


def init_app(app: Flask) -> None:
    """Give templates the addresses of static files, and the application its kept pieces."""
    app.extensions["fragments"] = {}
    app.add_template_global(static_file, "static_file")


def static_file(name: str) -> str:
    """Return the address of a static file."""
    return _kept(("file", name), lambda: escape(url_for("static", filename=name)))


def lesson_body(lesson: Lesson) -> Markup:
    """Return a lesson's prose, its worked job and its cautions."""
    return _kept(("lesson", lesson.digest), lambda: _draw_lesson(lesson))


def question_rows(lesson: Lesson, states: Iterable[str]) -> Markup:
    """Return the rows of a lesson's questions, from a state for each in order."""
    return Markup("").join(
        _kept(
            ("question", lesson.digest, str(place), state),
            lambda place=place, state=state: _draw_row(lesson, place, state),  # type: ignore[misc]
        )
        for place, state in enumerate(states)
    )


def _kept(key: Key, draw: Callable[[], Markup]) -> Markup:
    pieces: dict[Key, Markup] = current_app.extensions["fragments"]
    if key not in pieces:
        pieces[key] = draw()
    return pieces[key]


def _draw_lesson(lesson: Lesson) -> Markup:
    library = here().library
    return Markup(  # noqa: S704 - drawn by a template that escapes
        render_template(
            "lessons/_body.html",
            lesson=lesson,
            worked=plain_working(lesson.worked.working) if lesson.worked else (),
            opened_cautions=lesson is library.first,
            cautions=[library.cautions[name] for name in lesson.cautions],
        )
    )


def _draw_row(lesson: Lesson, place: int, state: str) -> Markup:
    question = lesson.questions[place]
    draw: Callable[..., Markup] = get_template_attribute("_parts.html", "question_row")
    href = url_for("questions.show", question_id=question.id)
    return draw(place + 1, question.title, href, state)
