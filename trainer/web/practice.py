"""Practice: a sitting of what is due today, left and taken up anywhere, and what came of it."""

from flask import Blueprint, abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.records import db, sittings, writing
from trainer.records.sitting_rows import REFRESHER
from trainer.web import asking, kept, turn
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.lessons import send_to_first
from trainer.web.next_lesson import next_lesson
from trainer.web.practice_plan import planned_turns
from trainer.web.sitting import (
    InSitting,
    answered_of,
    asked_of,
    changes_of,
    has_gone_by,
    has_sat_enough,
    home_of,
    is_over,
    last_mark_href,
    left_of,
    next_date,
    next_opening,
    passed_over,
    sitting_or_404,
    was_left,
    way_on,
)
from trainer.web.skill_standing import skill_sheets

PASSED_OVER = "That question is no longer asked, so it was passed over."

bp = Blueprint("practice", __name__, url_prefix="/practice")

_PLACE = "/<int(max=2147483647):sitting_id>/<int(max=99):position>"


@bp.get("")
def show() -> ResponseReturnValue:
    """Show what there is to practise today, and one thing to press."""
    shut = send_to_first("")
    if shut:
        return shut
    person_id = signed_in().person_id
    sheets, last = skill_sheets(person_id), sittings.last_sitting(db.session, person_id)
    todays = last if last and last.local_date == here().today() else None
    turns = [each.facts for each in left_of(todays)] if todays else planned_turns(person_id, sheets)
    return render_template(
        "practice/practice.html",
        sitting=todays,
        over=todays is not None and is_over(todays),
        turns=turns,
        asked=asked_of(sheets, turns),
        before=last if last and last.local_date < here().today() and was_left(last) else None,
        next_date=next_date(sheets, here().today()),
        lesson=next_lesson(person_id),
        rules=here().thresholds.sittings,
    )


@bp.post("")
def begin() -> ResponseReturnValue:
    """Begin today's sitting, or go on with it, and go to its next question."""
    shut = send_to_first("")
    if shut:
        return shut
    person_id = signed_in().person_id
    writing(db.session)
    planned = planned_turns(person_id, skill_sheets(person_id))
    now, today = here().now(), here().today()
    sitting_id = sittings.begin_sitting(db.session, person_id, planned, now, today)
    sitting = sitting_or_404(sitting_id)
    if not sitting.turns:
        # Nothing is due: what was begun is nothing to keep.
        db.session.rollback()
        return redirect(url_for("practice.show"), 303)
    db.session.commit()
    return redirect(way_on(sitting).href, 303)


@bp.get(_PLACE)
def question(sitting_id: int, position: int) -> ResponseReturnValue:
    """Show the question in this place of one's own sitting, or its mark where it was answered.

    404 for another's sitting. One that no lesson asks any more leads on to the next, and one of a
    sitting that is over to what comes after it.
    """
    sitting = sitting_or_404(sitting_id)
    place = sitting.turn(position) or abort(404)
    origin = InSitting(sitting, place)
    if place.is_answered:
        return redirect(last_mark_href(sitting, place), 303)
    if origin.today is None:
        flash(PASSED_OVER)
        return redirect(way_on(sitting, position).href, 303)
    # What was typed before the sign-in ended is shown all the same.
    if is_over(sitting) and not kept.waits_for(request.path):
        return redirect(way_on(sitting, position).href, 303)
    return turn.show(origin)


@bp.post(_PLACE)
def check(sitting_id: int, position: int) -> ResponseReturnValue:
    """Mark what was typed, record it once and in its place, and show the mark."""
    sitting = sitting_or_404(sitting_id)
    return turn.check(InSitting(sitting, sitting.turn(position) or abort(404)))


@bp.get(f"{_PLACE}/<int(max=999999):count>/<int(max=2):try_no>")
def marked(sitting_id: int, position: int, count: int, try_no: int) -> ResponseReturnValue:
    """Show the mark of one's own answer; 404 for an answer that was never given."""
    sitting = sitting_or_404(sitting_id)
    place = sitting.turn(position) or abort(404)
    stored = asking.stored_answer(place.facts.question_id, count, try_no) or abort(404)
    return turn.marked(InSitting(sitting, place), stored)


@bp.post("/<int(max=2147483647):sitting_id>/end")
def stop(sitting_id: int) -> ResponseReturnValue:
    """End one's own sitting where it stands; what was left comes first another day.

    404 for one of the refresher: it can be gone on with until it closes.
    """
    if sitting_or_404(sitting_id).kind == REFRESHER:
        abort(404)
    writing(db.session)
    sittings.end_sitting(db.session, signed_in().person_id, sitting_id, here().now())
    db.session.commit()
    return redirect(url_for("practice.end", sitting_id=sitting_id), 303)


@bp.get("/<int(max=2147483647):sitting_id>/end")
def end(sitting_id: int) -> str:
    """Show what one's own sitting has changed, and what is next."""
    sitting = sitting_or_404(sitting_id)
    sheets = skill_sheets(signed_in().person_id)
    changes = changes_of(sitting, sheets)
    return render_template(
        "practice/end.html",
        sitting=sitting,
        onward=None if is_over(sitting) else way_on(sitting),
        left=len(left_of(sitting)),
        gone_by=has_gone_by(sitting),
        passed_over=passed_over(sitting),
        sat_enough=has_sat_enough(sitting),
        moved=[each for each in changes if each.has_moved],
        kept=[each for each in changes if not each.has_moved],
        answered=answered_of(sitting),
        home=home_of(sitting),
        next_opening=next_opening(sitting),
        next_date=next_date(sheets, here().today()),
        lesson=next_lesson(signed_in().person_id),
    )


def show_again(note: str) -> str:
    """Return the page that this request's form came from, with a note and all that was typed."""
    where = request.view_args or {}
    sitting = sitting_or_404(int(where["sitting_id"]))
    place = sitting.turn(int(where["position"])) or abort(404)
    return turn.show_again(InSitting(sitting, place), note)
