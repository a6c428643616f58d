"""Which lesson is next: to read, or to finish the questions of."""

from collections.abc import Mapping
from dataclasses import dataclass

from flask import url_for

from trainer.engine.units import counted
from trainer.lessons import Library
from trainer.records.progress import LessonRow
from trainer.web.installation import here
from trainer.web.lessons import rows_of
from trainer.web.outline import is_whole


@dataclass(frozen=True, slots=True)
class FirstThing:
    """One thing to do: what it is, why, and where it is done."""

    title: str
    words: str
    href: str
    press: str


def next_lesson(person_id: int) -> FirstThing | None:
    """Return what somebody reads or finishes next; None when every lesson is whole."""
    return lesson_after(here().library, rows_of(person_id))


def lesson_after(library: Library, rows: Mapping[str, LessonRow]) -> FirstThing | None:
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
