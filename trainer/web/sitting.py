"""A sitting on its way: its turns, what is left of it, and what it has changed."""

from collections import Counter
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from flask import abort, url_for

from trainer.records import attempts, db, sittings
from trainer.records.attempts import AttemptFacts
from trainer.records.calendar_days import days_on
from trainer.records.refresher import open_number
from trainer.records.seasons import current_season, sitting_dates
from trainer.records.sitting_rows import PRACTICE, REFRESHER, SittingRow, TurnFacts, TurnRow
from trainer.records.standing import STARTED
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.origin import FromLesson, Way
from trainer.web.shown import Shown
from trainer.web.skill_standing import SkillSheet


class InSitting(FromLesson):
    """A question of a lesson, asked in its place in a sitting."""

    # A turn is one run at its question; the lesson is the place for another.
    repeats: ClassVar[bool] = False

    def __init__(self, sitting: SittingRow, place: TurnRow) -> None:
        super().__init__(place.facts.question_id)
        self.sitting, self.place = sitting, place

    def href(self) -> str:
        """Return the address of this turn."""
        return turn_href(self.sitting, self.place)

    def marked_href(self, was: Shown) -> str:
        """Return the address of the mark, in the sitting."""
        return mark_href(self.sitting, self.place, was.count, was.try_no)

    def recorded(self, facts: AttemptFacts) -> None:
        """Note that the turn has had its first try."""
        if facts.try_no != 1:
            return
        sittings.note_answer(
            db.session,
            self.sitting.sitting_id,
            self.place.position,
            count=facts.count,
            right=facts.right,
            unaided=facts.unaided,
            now=facts.sent_at,
        )

    def back(self) -> Way | None:
        """Return the way back, with how far one is."""
        home, of = home_of(self.sitting), len(self.sitting.turns)
        return Way(home.href, f"{home.words}, question {self.place.position} of {of}")

    def onward(self) -> Way | None:
        """Return the way to the next turn that is left, once enough was sat to what has changed."""
        if left_of(self.sitting) and has_sat_enough(self.sitting):
            minutes = here().thresholds.sittings.sitting_minutes
            return Way(end_href(self.sitting), f"{minutes} minutes are over: see what changed")
        return way_on(self.sitting, self.place.position)

    def further(self) -> Way | None:
        """Return the way to the next turn, where the way on is to what has changed."""
        following = way_on(self.sitting, self.place.position)
        return following if following != self.onward() else None


@dataclass(frozen=True, slots=True)
class Change:
    """A skill of a sitting: where it stood as it began, and where it stands now."""

    stood: str
    sheet: SkillSheet

    @property
    def has_moved(self) -> bool:
        """Whether it stands elsewhere now."""
        return self.stood != self.sheet.standing.state


@dataclass(frozen=True, slots=True)
class Asked:
    """A skill that a sitting asks for, and how often."""

    sheet: SkillSheet
    times: int


@dataclass(frozen=True, slots=True)
class Answered:
    """A turn that was answered: its question, the mark of its first try, and where that is told."""

    title: str
    href: str
    state: str


def sitting_or_404(sitting_id: int) -> SittingRow:
    """Return one of the signed-in person's own sittings; raise 404."""
    return sittings.sitting_of(db.session, signed_in().person_id, sitting_id) or abort(404)


def left_of(sitting: SittingRow) -> list[TurnRow]:
    """Return the turns that are still to be answered; what no lesson asks any more isn't."""
    asked = here().library.questions
    return [
        each for each in sitting.turns if not each.is_answered and each.facts.question_id in asked
    ]


def is_over(sitting: SittingRow) -> bool:
    """Return whether nothing is left of a sitting, it was ended, or its day has gone by."""
    return sitting.ended_at is not None or not left_of(sitting) or has_gone_by(sitting)


def has_gone_by(sitting: SittingRow) -> bool:
    """Return whether its time is over: the day of a practice, the weeks of a refresher's sitting.

    Each day has a plan of its own, and so has each sitting of a refresher.
    """
    today = here().today()
    if sitting.kind == PRACTICE:
        return sitting.local_date != today
    season = current_season(db.session)
    if season is None or season.season_id != sitting.season_id:
        return True
    return sitting.number != open_number(season.starts, today, here().thresholds.seasons)


def was_left(sitting: SittingRow) -> bool:
    """Return whether it was left before its end, and nobody ended it."""
    return sitting.ended_at is None and bool(left_of(sitting))


def passed_over(sitting: SittingRow) -> int:
    """Return how many of its turns no lesson asks any more, and were never answered."""
    return sum(not each.is_answered for each in sitting.turns) - len(left_of(sitting))


def has_sat_enough(sitting: SittingRow) -> bool:
    """Return whether as many minutes were sat as a day's practice offers."""
    if sitting.kind == REFRESHER:
        # A winter's worth takes longer than a day's practice.
        return False
    rules = here().thresholds.sittings
    return sittings.minutes_of(sitting, rules) >= rules.sitting_minutes


def way_on(sitting: SittingRow, after: int = 0) -> Way:
    """Return the way to the next turn that is left, from a place on; else to what has changed."""
    left = left_of(sitting)
    if has_gone_by(sitting):
        home = home_of(sitting)
        return Way(home.href, "Today's practice" if sitting.kind == PRACTICE else home.words)
    if not left or sitting.ended_at:
        return Way(end_href(sitting), "See what changed")
    following = next((each for each in left if each.position > after), left[0])
    return Way(turn_href(sitting, following), "Next question" if after else "Begin")


def next_opening(sitting: SittingRow) -> date | None:
    """Return when the sitting after this one of a refresher opens; None where none does."""
    season = current_season(db.session) if sitting.kind == REFRESHER else None
    if season is None or season.season_id != sitting.season_id:
        return None
    dates = sitting_dates(season.starts, here().thresholds.seasons)
    return next((each for each in dates[sitting.number :] if each > here().today()), None)


def end_href(sitting: SittingRow) -> str:
    """Return the address of what a sitting has changed."""
    return url_for("practice.end", sitting_id=sitting.sitting_id)


def turn_href(sitting: SittingRow, place: TurnRow) -> str:
    """Return the address of a turn."""
    return url_for("practice.question", sitting_id=sitting.sitting_id, position=place.position)


def home_of(sitting: SittingRow) -> Way:
    """Return the way to where a sitting was begun."""
    if sitting.kind == REFRESHER:
        return Way(url_for("season.show"), "Season refresher")
    return Way(url_for("practice.show"), "Practice")


def last_mark_href(sitting: SittingRow, place: TurnRow) -> str:
    """Return the address of the last mark of a turn that was answered."""
    count = place.count or 0
    person_id, question_id = signed_in().person_id, place.facts.question_id
    second = attempts.attempt_at(db.session, person_id, question_id, roof="", count=count, try_no=2)
    return mark_href(sitting, place, count, 2 if second else 1)


def mark_href(sitting: SittingRow, place: TurnRow, count: int, try_no: int) -> str:
    """Return the address of a mark in a sitting."""
    return url_for(
        "practice.marked",
        sitting_id=sitting.sitting_id,
        position=place.position,
        count=count,
        try_no=try_no,
    )


def asked_of(sheets: list[SkillSheet], turns: list[TurnFacts]) -> list[Asked]:
    """Return the skills that these turns ask for, in the order in which they come first."""
    by_slug = {each.skill.slug: each for each in sheets}
    times = Counter(each.skill for each in turns)
    return [Asked(by_slug[skill], number) for skill, number in times.items() if skill in by_slug]


def changes_of(sitting: SittingRow, sheets: list[SkillSheet]) -> list[Change]:
    """Return where each skill of the answered turns stood, and stands now."""
    by_slug = {each.skill.slug: each for each in sheets}
    stood = {each.facts.skill: each.facts.stood for each in sitting.turns if each.is_answered}
    return [Change(word, by_slug[skill]) for skill, word in stood.items() if skill in by_slug]


def answered_of(sitting: SittingRow) -> list[Answered]:
    """Return the turns that were answered, in order."""
    asked = here().library.questions
    return [
        Answered(
            asked[each.facts.question_id].title,
            turn_href(sitting, each),
            "right" if each.right else "wrong",
        )
        for each in sitting.turns
        if each.is_answered and each.facts.question_id in asked
    ]


def next_date(sheets: list[SkillSheet], today: date) -> date | None:
    """Return the next day after today on which there is something to practise, or None.

    That is when a skill is due; for one at its first meeting any day will do.
    """
    dates = [each.standing.next_date for each in sheets if each.standing.next_date]
    dates += [today for each in sheets if each.standing.state == STARTED]
    return min((max(each, days_on(today, 1)) for each in dates), default=None)
