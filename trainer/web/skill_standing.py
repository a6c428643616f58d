"""Where people stand with each skill today: what the records say, in the lessons' own words."""

from collections.abc import Collection
from dataclasses import dataclass

from trainer.lessons import Competency, Skill
from trainer.records import db, reviews
from trainer.records.running import Progress
from trainer.records.skills import skills_of
from trainer.records.standing import Standing, standing
from trainer.web.installation import here


@dataclass(frozen=True, slots=True)
class SkillSheet:
    """One person at one skill."""

    skill: Skill
    competency: Competency
    progress: Progress
    standing: Standing
    #: How likely it is still there today, from 0 to 1: to sort by, never to show.
    recall: float


def taught_skills() -> list[tuple[Competency, Skill]]:
    """Return the skills that some lesson asks for today, in order, each with its competency."""
    library = here().library
    asked = {skill for each in library.questions.values() for skill in each.skills}
    return [
        (competency, skill)
        for competency in library.competencies.competencies
        for skill in competency.skills
        if skill.slug in asked
    ]


def skill_sheets(person_id: int) -> list[SkillSheet]:
    """Return where one person stands with every skill that is taught, in order."""
    return skill_sheets_of([person_id])[person_id]


def skill_sheets_of(person_ids: Collection[int]) -> dict[int, list[SkillSheet]]:
    """Return where each of these people stands; one query, whatever they have answered."""
    taught = taught_skills()
    found = skills_of(db.session, person_ids, [skill.slug for _, skill in taught])
    return {
        person_id: [_sheet(competency, skill, of[skill.slug]) for competency, skill in taught]
        for person_id, of in found.items()
    }


def _sheet(competency: Competency, skill: Skill, progress: Progress) -> SkillSheet:
    rules, today = here().thresholds.skills, here().today()
    recall = reviews.recall(progress.card, today, rules)
    return SkillSheet(skill, competency, progress, standing(progress, today, rules), recall)
