"""Today: one thing plainly first, then what is due, the lessons and the roof that draws itself."""

from collections.abc import Mapping

from flask import Blueprint, render_template, url_for

from trainer.engine.units import counted
from trainer.records import db, sittings
from trainer.records.progress import LessonRow
from trainer.records.signins import SignedIn
from trainer.web.access import signed_in
from trainer.web.confirming import waiting_here
from trainer.web.installation import here
from trainer.web.lessons import rows_of
from trainer.web.next_lesson import FirstThing, lesson_after
from trainer.web.outline import is_open, lesson_entries, roof_parts
from trainer.web.practice_plan import planned_turns
from trainer.web.season import Refresher, refresher_of
from trainer.web.sitting import Asked, asked_of, is_over, left_of, next_date
from trainer.web.skill_standing import SkillSheet, skill_sheets
from trainer.web.uses import waiting_of

bp = Blueprint("today", __name__)


@bp.get("/")
def show() -> str:
    """Show what to do first, and what there is besides."""
    person, library = signed_in(), here().library
    rows, sheets = rows_of(person.person_id), skill_sheets(person.person_id)
    return render_template(
        "today/today.html",
        first=first_thing(person, rows, sheets),
        due=[each for each in sheets if each.standing.is_due],
        next_date=next_date(sheets, here().today()),
        waiting=waiting_of(person.person_id),
        to_confirm=waiting_here() if person.roles & {"supervisor", "office"} else [],
        lessons=lesson_entries(library, rows),
        roof_parts=roof_parts(library, rows, sheets),
    )


def first_thing(
    person: SignedIn, rows: Mapping[str, LessonRow], sheets: list[SkillSheet]
) -> FirstThing | None:
    """Return what is plainly the first thing to do today; None where all is done.

    The first lesson before anything else; then the refresher where a sitting of it is open, and
    what is due, since both fade; then the next lesson, and what is still at its first meeting.
    """
    if "trainee" not in person.roles:
        return _confirm_or_look()
    lesson = lesson_after(here().library, rows)
    if not is_open(here().library, rows):
        return lesson
    refresher = refresher_of(person.person_id)
    if refresher and refresher.left:
        return _refresher(refresher)
    practice, is_due = _practice(person.person_id, sheets)
    return practice if is_due or lesson is None else lesson


def _refresher(refresher: Refresher) -> FirstThing:
    left, of = counted(refresher.left, "question"), len(refresher.entries)
    words = f"Sitting {refresher.number} of {of} is open: {left}"
    words = f"{words} left." if refresher.begun else f"{words}, safety first."
    press = "Go on" if refresher.begun else "Look at it"
    return FirstThing("Season refresher", words, url_for("season.show"), press)


def _practice(person_id: int, sheets: list[SkillSheet]) -> tuple[FirstThing | None, bool]:
    """Return today's practice, where some is left, and whether a skill in it is due."""
    last = sittings.last_sitting(db.session, person_id)
    begun = last is not None and last.local_date == here().today()
    if last and begun:
        turns = [] if is_over(last) else [each.facts for each in left_of(last)]
    else:
        turns = planned_turns(person_id, sheets)
    if not turns:
        return None, False
    asked = asked_of(sheets, turns)
    press, href = "Go on" if begun else "Begin", url_for("practice.show")
    thing = FirstThing("Practice", _practice_words(asked, begun=begun), href, press)
    return thing, begun or any(each.sheet.standing.is_due for each in asked)


def _practice_words(asked: list[Asked], *, begun: bool) -> str:
    questions = counted(sum(each.times for each in asked), "question")
    if begun:
        return f"You are in the middle of it: {questions} left."
    due = sum(each.sheet.standing.is_due for each in asked)
    if not due:
        return f"{questions} on what you have begun."
    are = "is due" if due == 1 else "are due"
    return f"{counted(due, 'skill')} {are} today: {questions}."


def _confirm_or_look() -> FirstThing:
    waiting = waiting_here()
    if waiting:
        words = f"{counted(len(waiting), 'use')} on a job, noted by your crew."
        return FirstThing("To confirm", words, url_for("confirming.show"), "Look at them")
    words = "See who has come how far, and who is stuck. The lessons below are for you too."
    return FirstThing("Your crew", words, url_for("crew.show"), "Open the crew table")
