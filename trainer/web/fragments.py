"""Pieces of pages that are the same for everybody, drawn once and kept.

A lesson's prose, or a question's row in a list, depends on nothing but the content and a state;
what is left to draw for each request is small.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TypeVar

from flask import (
    Flask,
    current_app,
    g,
    get_template_attribute,
    render_template,
    session,
    url_for,
)
from flask_wtf.csrf import generate_csrf
from markupsafe import Markup, escape

from trainer.lessons import Lesson, Question
from trainer.web.installation import here
from trainer.web.outline import STATES
from trainer.web.working_lines import plain_working

T = TypeVar("T")
Key = tuple[object, ...]
#: No text that a browser sends or a teacher writes can hold it.
_HOLE = "\0"


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
    drawn = _kept(("questions", lesson.digest), lambda: _draw_rows(lesson))
    rows = [row[state] for row, state in zip(drawn, states, strict=True)]
    return Markup("".join(rows))  # noqa: S704 - drawn by a template that escapes


def page(template: str, key: Key, holes: Mapping[str, str], **same: object) -> str:
    """Return a page that is drawn once for each key, and then only has its holes filled.

    `same` is what the key stands for; `holes` are what else differs, by the name that the
    template knows each under. The name in the page's head and the tokens of its forms are
    filled in as well. Text in a hole is escaped, Markup isn't.
    """
    if "_flashes" in session:
        return render_template(template, **same, **holes)
    holes = {**holes, "person_name": g.person.name, "csrf_token": generate_csrf()}
    drawn = _kept(("page", template, *key), lambda: _draw_with_holes(template, holes, same))
    # Every second piece is the name of a hole.
    pieces = str(drawn).split(_HOLE)
    pieces[1::2] = [str(escape(holes[name])) for name in pieces[1::2]]
    return "".join(pieces)


def _draw_with_holes(template: str, holes: Iterable[str], same: Mapping[str, object]) -> Markup:
    marks = {name: Markup(f"{_HOLE}{name}{_HOLE}") for name in holes}  # noqa: S704 - our own names
    token = marks.pop("csrf_token")
    drawn = render_template(template, **same, **marks, csrf_token=lambda: token)
    return Markup(drawn)  # noqa: S704 - drawn by a template that escapes


def _kept(key: Key, draw: Callable[[], T]) -> T:
    pieces: dict[Key, T] = current_app.extensions["fragments"]
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
            opened_cautions=lesson is library.first and not library.follows,
            cautions=[library.cautions[name] for name in lesson.cautions],
        )
    )


def _draw_rows(lesson: Lesson) -> list[dict[str, str]]:
    """Return each question's row in each of its states."""
    draw: Callable[..., Markup] = get_template_attribute("_parts.html", "question_row")
    return [
        {state: str(draw(number, question.title, href, state)) for state in STATES}
        for number, (question, href) in enumerate(_addressed(lesson), start=1)
    ]


def _addressed(lesson: Lesson) -> Iterator[tuple[Question, str]]:
    for question in lesson.questions:
        yield question, url_for("questions.show", question_id=question.id)
