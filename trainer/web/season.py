"""Season refresher: the season's start, three sittings round it, and what each asks."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date

from flask import Blueprint, Response, abort, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from trainer.lessons import Competency
from trainer.records import db, seasons, sittings, writing
from trainer.records.faults import RecordsError
from trainer.records.refresher import Outlook, open_number, tells_of_its_skill
from trainer.records.seasons import SeasonRow, current_season, sitting_dates
from trainer.records.sitting_plan import Candidate, plan_sitting
from trainer.records.sitting_rows import REFRESHER, SittingRow, TurnFacts
from trainer.web import kept
from trainer.web.access import MATRIX, signed_in
from trainer.web.days import read_day
from trainer.web.filters import in_full
from trainer.web.installation import here
from trainer.web.lessons import send_to_first
from trainer.web.practice_plan import askables_of, candidate_of
from trainer.web.season_calendar import sittings_calendar
from trainer.web.season_outlook import Readiness, readiness_of
from trainer.web.sitting import end_href, is_over, left_of, sitting_or_404, was_left, way_on
from trainer.web.skill_standing import SkillSheet, skill_sheets

bp = Blueprint("season", __name__, url_prefix="/season")

NO_DAY = "Write the day like 1 March 2027 or 2027-03-01."
SET = "The season starts on {day}. The sittings open on {dates}."
MOVED = "The season's start is moved to {day}. The sittings now open on {dates}."
STAYS = "Those that were sat stay as they are."
SAME = "The season starts on {day}, as before. Nothing is moved."
NOTHING_OPEN = "No sitting is open today."
NOTHING_TO_ASK = "There is nothing to ask you now, so no sitting was begun."


@dataclass(frozen=True, slots=True)
class SittingEntry:
    """One of the three sittings, as its owner's page shows it."""

    number: int
    opens: date
    #: to come, open, nothing, begun, done, left, missed
    state: str
    href: str = ""


@dataclass(frozen=True, slots=True)
class ListedPart:
    """What the next sitting asks of one competency."""

    competency: Competency
    skills: list[tuple[Outlook, SkillSheet]]


@dataclass(frozen=True, slots=True)
class Refresher:
    """Where somebody stands with the refresher of a season today."""

    season: SeasonRow
    entries: list[SittingEntry]
    readiness: Readiness
    #: The sitting that is open today, if any, and the one that was begun of it.
    number: int | None
    begun: SittingRow | None

    @property
    def left(self) -> int:
        """How many questions of the open sitting are left; of one not begun, what is listed."""
        if self.begun:
            return 0 if is_over(self.begun) else len(left_of(self.begun))
        most = here().thresholds.seasons.refresher_questions
        return min(len(self.readiness.listed), most) if self.number else 0

    @property
    def is_over(self) -> bool:
        """Whether all sittings of the season are over."""
        return self.number is None and self.entries[-1].opens <= here().today()


@bp.get("")
def show() -> ResponseReturnValue:
    """Show the season's start, one's own sittings, and what the open one asks."""
    return _page(kept.taken_up(request.path))


@bp.post("")
def set_start() -> ResponseReturnValue:
    """Set the season's start, or move it; the office alone."""
    starts = read_day(request.form.get("starts", ""))
    if starts is None:
        return _page(request.form, NO_DAY), 422
    writing(db.session)
    before = current_season(db.session)
    try:
        seasons.set_start(
            db.session,
            starts,
            here().today(),
            here().thresholds.seasons,
            by=signed_in().person_id,
            now=here().now(),
        )
    except RecordsError as error:
        db.session.rollback()
        return _page(request.form, str(error)), 422
    db.session.commit()
    flash(_told(before, starts))
    return redirect(url_for("season.show"), 303)


@bp.post("/begin")
def begin() -> ResponseReturnValue:
    """Begin the sitting that is open today, or go on with it, and go to its next question."""
    shut = send_to_first("")
    if shut:
        return shut
    writing(db.session)
    refresher = refresher_of(signed_in().person_id)
    if refresher is None or refresher.number is None:
        db.session.rollback()
        flash(NOTHING_OPEN)
        return redirect(url_for("season.show"), 303)
    sitting = sitting_or_404(_begun(refresher, refresher.number))
    if not sitting.turns:
        db.session.rollback()
        flash(NOTHING_TO_ASK)
        return redirect(url_for("season.show"), 303)
    db.session.commit()
    return redirect(way_on(sitting).href, 303)


@bp.get("/sittings.ics")
def calendar() -> Response:
    """Return the sittings as a calendar file; 404 where no start is set."""
    season = current_season(db.session) or abort(404)
    address = url_for("season.show", _external=True)
    file = sittings_calendar(season, address, here().now())
    headers = {"Content-Disposition": "attachment; filename=season-refresher.ics"}
    return Response(file, content_type="text/calendar; charset=utf-8", headers=headers)


def refresher_of(person_id: int) -> Refresher | None:
    """Return where somebody stands with the refresher today; None where no start is set."""
    season = current_season(db.session)
    if season is None:
        return None
    today, rules = here().today(), here().thresholds.seasons
    number = open_number(season.starts, today, rules)
    own = sittings.sittings_of_season(db.session, person_id, season.season_id)
    by_number = {each.number: each for each in own}
    readiness = readiness_of([person_id], season)[person_id]
    return Refresher(
        season,
        _entries(season, by_number, number, today, asks=bool(readiness.listed)),
        readiness,
        number,
        by_number.get(number or 0),
    )


def show_again(note: str) -> str:
    """Return the page of this request's form with a note, and with all that was typed."""
    return _page(request.form, note=note)


def _page(fields: Mapping[str, str] | None, error: str = "", note: str = "") -> str:
    refresher = refresher_of(signed_in().person_id)
    typed = fields.get("starts", "") if fields else ""
    starts = refresher.season.starts.isoformat() if refresher else ""
    return render_template(
        "season/season.html",
        refresher=refresher,
        listed=_listed(refresher) if refresher else [],
        may_set=_may("season.set_start"),
        sees_crew=_may("season_crew.show"),
        starts=typed or starts,
        # A browser shows nothing in a field for days that holds no day.
        is_a_day=read_day(typed) is not None or not typed,
        error=error,
        note=note,
        today=here().today(),
        rules=here().thresholds,
    )


def _told(before: SeasonRow | None, starts: date) -> str:
    """Return what has come of setting the start: which days the sittings open on now."""
    season = current_season(db.session)
    if before and before.starts == starts:
        return SAME.format(day=in_full(starts))
    dates = [in_full(each) for each in sitting_dates(starts, here().thresholds.seasons)]
    firsts = f"{', '.join(dates[:-1])} and " if dates[1:] else ""
    told = {"day": in_full(starts), "dates": f"{firsts}{dates[-1]}"}
    is_moved = before and season and before.season_id == season.season_id
    return f"{MOVED.format(**told)} {STAYS}" if is_moved else SET.format(**told)


def _may(page: str) -> bool:
    return MATRIX[page].for_roles(signed_in().roles) != "no"


def _listed(refresher: Refresher) -> list[ListedPart]:
    """Return what the next sitting asks by competency, the most urgent one first."""
    sheets = {each.skill.slug: each for each in skill_sheets(signed_in().person_id)}
    most = here().thresholds.seasons.refresher_questions
    parts: dict[str, ListedPart] = {}
    for each in refresher.readiness.listed[:most]:
        sheet = sheets[each.facts.skill]
        part = parts.setdefault(sheet.competency.slug, ListedPart(sheet.competency, []))
        part.skills.append((each, sheet))
    return list(parts.values())


def _entries(
    season: SeasonRow, begun: dict[int, SittingRow], number: int | None, today: date, *, asks: bool
) -> list[SittingEntry]:
    entries = []
    for place, opens in enumerate(sitting_dates(season.starts, here().thresholds.seasons), 1):
        own = begun.get(place)
        if own:
            state = "done" if not was_left(own) else "begun" if place == number else "left"
            entries.append(SittingEntry(place, opens, state, end_href(own)))
        else:
            is_open = "open" if asks else "nothing"
            state = is_open if place == number else "to come" if opens > today else "missed"
            entries.append(SittingEntry(place, opens, state))
    return entries


def _begun(refresher: Refresher, number: int) -> int:
    """Return the number of the open sitting's row, which is planned where it isn't begun yet."""
    person_id = signed_in().person_id
    sheets = skill_sheets(person_id)
    return sittings.begin_sitting(
        db.session,
        person_id,
        _turns(refresher.readiness, sheets, person_id),
        here().now(),
        here().today(),
        kind=REFRESHER,
        season_id=refresher.season.season_id,
        number=number,
        had=refresher.readiness.had,
        held=refresher.readiness.held,
    )


def _turns(readiness: Readiness, sheets: list[SkillSheet], person_id: int) -> list[TurnFacts]:
    """Return one question on each skill that is listed, in that order as far as the mix lets it."""
    order = {each.facts.skill: place for place, each in enumerate(readiness.listed)}
    candidates = [
        _candidate(each, order.get(each.skill.slug)) for each in sheets if each.progress.reached
    ]
    rules = here().thresholds
    most = rules.seasons.refresher_questions
    turns = plan_sitting(candidates, askables_of(person_id), rules.sittings, most)
    by_slug = {each.skill.slug: each for each in sheets}
    questions = here().library.questions
    told = tells_of_its_skill([(each.skill, questions[each.question_id].skills) for each in turns])
    return [
        TurnFacts(
            each.question_id,
            each.skill,
            by_slug[each.skill].standing.state,
            by_slug[each.skill].recall if tells else None,
        )
        for each, tells in zip(turns, told, strict=True)
    ]


def _candidate(sheet: SkillSheet, place: int | None) -> Candidate:
    """Return a skill as the plan of a refresher sees it: wanted once where it is listed."""
    return replace(
        candidate_of(sheet),
        wanted=int(place is not None),
        urgency=(place or 0,),
        first_meeting=False,
        takes_numberless=False,
        confused_with=frozenset(),
    )
