"""How people's skills will stand when the season starts, and who of a crew is ready for it."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from trainer.records import db, sittings
from trainer.records.refresher import (
    NEVER_MET,
    Outlook,
    SkillFacts,
    last_opened,
    outlook_of,
    refresher_list,
)
from trainer.records.running import Progress
from trainer.records.seasons import SeasonRow
from trainer.records.skills import skills_of
from trainer.web.installation import here
from trainer.web.skill_standing import taught_skills


@dataclass(frozen=True, slots=True)
class Readiness:
    """One person before a season: every taught skill in order, and what fades of them."""

    outlooks: list[Outlook]
    #: Whether all of the sitting so far was right, and nothing lies below its bar today.
    sat_and_holds: bool = False

    @property
    def is_ready(self) -> bool:
        """Whether nothing is to be refreshed, or all was that could be; never without a skill."""
        return self.had > 0 and (not self.listed or self.sat_and_holds)

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


def readiness_of(person_ids: Collection[int], season: SeasonRow | None) -> dict[int, Readiness]:
    """Return how each of these people stands for a season; two queries for all of them.

    Where no start is set it is as of today.
    """
    taught = taught_skills()
    facts = [
        SkillFacts(skill.slug, skill.weight, competency.safety_critical)
        for competency, skill in taught
    ]
    found = skills_of(db.session, person_ids, [each.skill for each in facts])
    sat = _sat(person_ids, season) if season else set()
    return {
        person_id: _readiness(facts, of, season, has_sat=person_id in sat)
        for person_id, of in found.items()
    }


def _readiness(
    facts: Sequence[SkillFacts],
    progress: Mapping[str, Progress],
    season: SeasonRow | None,
    *,
    has_sat: bool,
) -> Readiness:
    on_start = _outlooks(facts, progress, judged_on(season))
    holds = has_sat and not any(
        each.is_listed for each in _outlooks(facts, progress, here().today())
    )
    return Readiness(on_start, holds)


def _outlooks(
    facts: Sequence[SkillFacts], progress: Mapping[str, Progress], day: date
) -> list[Outlook]:
    skills, seasons = here().thresholds.skills, here().thresholds.seasons
    today = here().today()
    return [outlook_of(each, progress[each.skill], day, skills, seasons, today) for each in facts]


def _sat(person_ids: Collection[int], season: SeasonRow) -> set[int]:
    """Return who has sat the last sitting that has opened: what was missed before is in it."""
    number = last_opened(season.starts, here().today(), here().thresholds.seasons)
    asked = here().library.questions
    return sittings.sat_whole(db.session, person_ids, season.season_id, number, asked)
