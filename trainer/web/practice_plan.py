"""What today's practice would ask of somebody: their skills and questions, put before the plan."""

from collections.abc import Mapping
from datetime import date

from trainer.lessons import Question
from trainer.records import db, progress
from trainer.records.progress import QuestionRow
from trainer.records.sitting_plan import Askable, Candidate, candidate_for, plan_sitting
from trainer.records.sitting_rows import TurnFacts
from trainer.web.installation import here
from trainer.web.lessons import rows_of
from trainer.web.skill_standing import SkillSheet


def planned_turns(person_id: int, sheets: list[SkillSheet]) -> list[TurnFacts]:
    """Return what today's practice asks somebody who stands as the sheets say; nothing if none."""
    candidates = [candidate_of(each) for each in sheets if each.progress.reached]
    turns = plan_sitting(candidates, askables_of(person_id), here().thresholds.sittings)
    stood = {each.skill.slug: each.standing.state for each in sheets}
    return [TurnFacts(each.question_id, each.skill, stood[each.skill]) for each in turns]


def candidate_of(sheet: SkillSheet) -> Candidate:
    """Return a skill that was met as the plan of a sitting sees it."""
    rules, today = here().thresholds.skills, here().today()
    return candidate_for(sheet.skill.slug, sheet.progress, today, rules, sheet.skill.confused_with)


def askables_of(person_id: int) -> list[Askable]:
    """Return the questions of the lessons that somebody has met, as far as they may come today.

    Met is what was read, or answered in.
    """
    met = rows_of(person_id)
    done = {row.question_id: row for row in progress.question_rows(db.session, person_id)}
    asked = (each for each in here().library.questions.values() if each.lesson in met)
    return [_askable(each, done) for each in asked if _may_return(each, done, here().today())]


def _askable(question: Question, done: Mapping[str, QuestionRow]) -> Askable:
    row = done.get(question.id)
    return Askable(
        question.id,
        frozenset(question.skills),
        question.worked_by,
        question.is_numberless,
        row.last_date if row else None,
    )


def _may_return(question: Question, done: Mapping[str, QuestionRow], today: date) -> bool:
    """Whether one that looks the same each time was long enough out of sight."""
    row = done.get(question.id)
    if row is None or not question.is_numberless:
        return True
    return row.last_date < today - here().thresholds.sittings.out_of_sight(numberless=True)
