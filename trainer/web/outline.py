"""Lessons and questions as lists show them: a title, where it leads, and how far one has come."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from flask import url_for

from trainer.engine.units import counted
from trainer.lessons import Lesson, Library
from trainer.records.progress import LessonRow, QuestionRow
from trainer.records.standing import CURED
from trainer.web.filters import day
from trainer.web.skill_standing import SkillSheet

State = tuple[str, str]
#: What a question can be for one person.
STATES = ("not-tried", "tried", "right")


@dataclass(frozen=True, slots=True)
class QuestionEntry:
    """One question in a list."""

    title: str
    href: str
    #: not-tried, tried or right.
    state: str
    row: QuestionRow | None


@dataclass(frozen=True, slots=True)
class LessonEntry:
    """One lesson in a list; it has no href while it is shut."""

    title: str
    href: str
    more: str
    states: tuple[State, ...]


@dataclass(frozen=True, slots=True)
class RoofPart:
    """One part of the roof that draws itself."""

    part: str
    title: str
    #: none, grey, colour or inked.
    state: str


def question_entries(lesson: Lesson, rows: Collection[QuestionRow]) -> list[QuestionEntry]:
    """Return a lesson's questions in order, with what one person has done on them."""
    by_id = {row.question_id: row for row in rows}
    return [
        QuestionEntry(
            question.title,
            url_for("questions.show", question_id=question.id),
            question_state(tried=row is not None, right=row is not None and row.ever_right),
            row,
        )
        for question in lesson.questions
        for row in (by_id.get(question.id),)
    ]


def question_state(*, tried: bool, right: bool) -> str:
    """Return the state of a question: not-tried, tried, or right at least once."""
    return "right" if right else "tried" if tried else "not-tried"


def is_open(library: Library, rows: Mapping[str, LessonRow]) -> bool:
    """Return whether somebody has read the lesson that opens all others."""
    first = rows.get(library.first.slug)
    return first is not None and first.read_at is not None


def lesson_states(lesson: Lesson, row: LessonRow | None) -> tuple[State, ...]:
    """Return a lesson's states in words: whether it was read, and its questions right so far."""
    if row is None:
        return (("not-tried", "not read"),)
    read = ("read", "read") if row.read_at else ("not-tried", "not read")
    of = f"{row.questions_right} of {counted(len(lesson.questions), 'question')} right"
    if is_whole(lesson, row):
        return (read, ("right", of))
    return (read, ("tried" if row.tried else "not-tried", of))


def is_whole(lesson: Lesson, row: LessonRow | None) -> bool:
    """Return whether each question of a lesson has been right once."""
    return row is not None and row.questions_right >= len(lesson.questions)


def lesson_entries(library: Library, rows: Mapping[str, LessonRow]) -> list[LessonEntry]:
    """Return all lessons in order; until the first one is read the others are shut."""
    opened = is_open(library, rows)
    return [
        LessonEntry(
            lesson.title,
            url_for("lessons.show", slug=lesson.slug) if opened or lesson is library.first else "",
            _more(lesson, rows.get(lesson.slug)),
            lesson_states(lesson, rows.get(lesson.slug)),
        )
        for lesson in library.lessons
    ]


def roof_parts(
    library: Library, rows: Mapping[str, LessonRow], sheets: Collection[SkillSheet]
) -> list[RoofPart]:
    """Return the parts of the roof.

    One is grey when its lesson's questions were right once, in colour while all skills of its
    competency that are taught are Cured.
    """
    whole = {each.competency for each in library.lessons if is_whole(each, rows.get(each.slug))}
    met = {sheet.competency.slug for sheet in sheets}
    cured = met - {each.competency.slug for each in sheets if each.standing.state != CURED}
    return [
        RoofPart(each.part, each.title, _part_state(each.slug, whole, cured))
        for each in library.competencies.competencies
    ]


def _part_state(competency: str, whole: Collection[str], cured: Collection[str]) -> str:
    return "colour" if competency in cured else "grey" if competency in whole else "none"


def _more(lesson: Lesson, row: LessonRow | None) -> str:
    seen = f", last seen {day(row.last_date)}" if row else ""
    return f"{lesson.minutes} minutes{seen}"
