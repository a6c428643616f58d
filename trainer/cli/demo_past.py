"""What the invented crew of the demo has behind it: lessons, practice, a season, uses on a job."""

import random
from collections import Counter
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta

from trainer.cli.demo_answers import answered
from trainer.lessons import Question
from trainer.records import attempts, db, progress, seasons, uses
from trainer.records.skills import skills_of
from trainer.records.standing import tries_that_count
from trainer.records.uses import UseFacts
from trainer.web import Installation
from trainer.web.answer import AnswerTime, attempt_facts
from trainer.web.shown import Shown

_SEASON_IN_DAYS = 20
_BETWEEN_LESSONS = timedelta(days=3)


@dataclass(frozen=True, slots=True)
class Invented:
    """One of the invented crew: their roles, and how far they have come."""

    name: str
    roles: tuple[str, ...]
    crew: str | None
    #: How many lessons they have read, and how often they are right.
    lessons: int = 0
    skill: float = 0.0
    #: How long ago they stopped, and for how many days before that they practised.
    away: int = 0
    practised: int = 0


@dataclass
class Life:
    """One of them as they live through their past, with a fixed seed for their luck."""

    installation: Installation
    person_id: int
    invented: Invented
    luck: random.Random
    done: Counter[str] = field(default_factory=Counter)

    def answer(self, question: Question, when: datetime) -> None:
        """Answer a question on fresh numbers, as the page would record it."""
        count, here = self.done[question.id], self.installation
        self.done[question.id] += 1
        seed = here.seed(self.person_id, question.id, "", count)
        drawn, _ = question.next_drawn(seed, [])
        mark = answered(drawn, right=self.luck.random() < self.invented.skill)
        lesson = here.library.by_slug[question.lesson]
        was = Shown(self.person_id, question.id, count, 1, seed, drawn.redraws, lesson.digest)
        time = AnswerTime(when.astimezone(UTC), here.date_of(when), sent_later=False)
        facts = attempt_facts(was, drawn, mark, time, lesson.competency)
        attempts.record(db.session, facts, here.thresholds.skills)

    def practise(self, when: datetime) -> None:
        """Answer what is due on a day, as often as it counts."""
        here = self.installation
        lessons = here.lessons[: self.invented.lessons]
        sums = [each for lesson in lessons for each in lesson.questions if not each.is_numberless]
        skills = sorted({skill for each in sums for skill in each.skills})
        rules, today = here.thresholds.skills, here.date_of(when)
        stood = skills_of(db.session, [self.person_id], skills)[self.person_id]
        for skill in skills:
            own = [each for each in sums if skill in each.skills]
            for turn in range(tries_that_count(stood[skill], today, rules)):
                asked = own[(self.done.total() + turn) % len(own)]
                self.answer(asked, when + timedelta(minutes=turn))


def live_through(installation: Installation, person_id: int, invented: Invented) -> None:
    """Have somebody read and answer some days apart, then practise until they went away."""
    luck = random.Random(invented.name)  # noqa: S311 - a demo, the same each time
    life = Life(installation, person_id, invented, luck)
    days = invented.away + invented.practised
    when = installation.now() - timedelta(days=days + 1) - _BETWEEN_LESSONS * invented.lessons
    for lesson in installation.lessons[: invented.lessons]:
        progress.mark_read(db.session, person_id, lesson.slug, when, installation.date_of(when))
        for minute, question in enumerate(lesson.questions):
            life.answer(question, when + timedelta(minutes=2 * minute))
        when += _BETWEEN_LESSONS
    for _ in range(invented.practised):
        life.practise(when)
        when += timedelta(days=1)


def set_season(installation: Installation, *, by: int) -> None:
    """Have the season start in some weeks, so that the first sitting is open."""
    today = installation.today()
    starts = today + timedelta(days=_SEASON_IN_DAYS)
    rules, now = installation.thresholds.seasons, installation.now()
    seasons.set_start(db.session, starts, today, rules, by=by, now=now)


def note_uses(installation: Installation, person_id: int, *, by: int) -> None:
    """Have somebody's use of one competency confirmed, and another waiting."""
    now, today = installation.now(), installation.today()
    jobs = (("Bike shed, Dune Road", 6), ("Ferry office", 1))
    for lesson, (roof, days) in zip(installation.lessons, jobs, strict=False):
        facts = UseFacts(lesson.competency, roof, today - timedelta(days=days))
        uses.note_use(db.session, person_id, facts, now - timedelta(days=days))
    oldest = uses.waiting_uses(db.session, None)[0]
    uses.answer_use(db.session, oldest.use_id, "confirmed", by=by, crew_id=None, now=now)
