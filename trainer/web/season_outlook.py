"""How people's skills will stand when the season starts, and who of a crew is ready for it."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date

from trainer.records import db
from trainer.records.refresher import (
    NEVER_MET,
    Outlook,
    SkillFacts,
    outlook_of,
    refresher_list,
)
from trainer.records.seasons import SeasonRow
from trainer.records.skills import skills_of
from trainer.web.installation import here
from trainer.web.skill_standing import taught_skills


@dataclass(frozen=True, slots=True)
class Readiness:
    """One person before a season: every taught skill in order, and what fades of them."""

    outlooks: list[Outlook]

    @property
    def listed(self) -> list[Outlook]:
        """What is to be refreshed, in the order in which it is."""
        return refresher_list(self.outlooks)

    @property
    def had(self) -> int:
        """How many skills there are to keep."""
        return sum(each.band != NEVER_MET for each in self.outlooks)

    @property
    def held(self) -> int:
        """How many of them hold."""
        return self.had - len(self.listed)


def judged_on(season: SeasonRow | None) -> date:
    """Return the day on which skills are looked at: the season's start, or today after it."""
    today = here().today()
    return max(season.starts, today) if season else today


def readiness_of(person_ids: Collection[int], day: date) -> dict[int, Readiness]:
    """Return how each of these people will stand on a day; one query for all of them."""
    taught = taught_skills()
    facts = [
        SkillFacts(skill.slug, skill.weight, competency.safety_critical)
        for competency, skill in taught
    ]
    found = skills_of(db.session, person_ids, [each.skill for each in facts])
    skills, seasons = here().thresholds.skills, here().thresholds.seasons
    return {
        person_id: Readiness(
            [outlook_of(each, of[each.skill], day, skills, seasons) for each in facts]
        )
        for person_id, of in found.items()
    }
