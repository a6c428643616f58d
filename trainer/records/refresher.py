"""What fades before a season, and in which order it is refreshed. Nothing here knows a database.

Only what somebody once had is refreshed: a skill that has gelled at least once. What was never
met is a lesson to do, and what is still at its first meeting belongs to practice.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date

from .calendar_days import days_between, days_on
from .reviews import recall
from .rules import SeasonRules, SkillRules
from .running import Progress, on_calendar

__all__ = [
    "BANDS",
    "FADING",
    "GONE",
    "HOLDS",
    "NEVER_MET",
    "Outlook",
    "SkillFacts",
    "band_of",
    "last_opened",
    "open_number",
    "outlook_of",
    "refresher_list",
    "tells_of_its_skill",
    "weak_skills",
]

BANDS = HOLDS, FADING, GONE, NEVER_MET = ("holds", "fading", "gone", "not learnt yet")
_HAD = ("gelled", "set", "cured")


@dataclass(frozen=True, slots=True)
class SkillFacts:
    """What the lessons say of a skill."""

    skill: str
    weight: float
    safety_critical: bool


@dataclass(frozen=True, slots=True)
class Outlook:
    """One person's skill, looked at from today on the season's start."""

    facts: SkillFacts
    recall: float
    """How likely it is there on that day, 0 to 1: to sort and band by, never to show."""
    band: str
    """One of BANDS."""

    @property
    def is_listed(self) -> bool:
        """Whether it is to be refreshed."""
        return self.band in (FADING, GONE)


def outlook_of(
    facts: SkillFacts,
    progress: Progress,
    day: date,
    skills: SkillRules,
    seasons: SeasonRules,
    today: date | None = None,
) -> Outlook:
    """Return how a skill will stand on a day, if nothing more is done.

    With today's date, what a wrong clock had put ahead of it is put back first.
    """
    if progress.reached not in _HAD:
        return Outlook(facts, 0.0, NEVER_MET)
    progress = on_calendar(progress, today, skills) if today else progress
    share = recall(progress.card, day, skills)
    return Outlook(facts, share, band_of(share, seasons, safety_critical=facts.safety_critical))


def band_of(share: float, rules: SeasonRules, *, safety_critical: bool) -> str:
    """Return whether a skill that is there with such a likelihood holds, is fading, or gone."""
    bar = rules.refresher_recall_if_safety_critical if safety_critical else rules.refresher_recall
    if share >= bar:
        return HOLDS
    return FADING if share >= rules.gone_recall else GONE


def refresher_list(outlooks: Iterable[Outlook]) -> list[Outlook]:
    """Return what is to be refreshed: safety first, then by weight and by how much is missing."""
    return sorted(
        (each for each in outlooks if each.is_listed),
        key=lambda each: (
            not each.facts.safety_critical,
            -each.facts.weight * (1 - each.recall),
            each.facts.skill,
        ),
    )


def open_number(starts: date, today: date, rules: SeasonRules) -> int | None:
    """Return the number, from 1, of the sitting that is open on a day; None before and after all.

    One is open from its date until the next one's, which takes in what was missed. The last stays
    open for some days.
    """
    number = last_opened(starts, today, rules)
    last = days_on(starts, rules.refresher_days[-1])
    if not number or days_between(last, today) > rules.refresher_last_open_days:
        return None
    return number


def last_opened(starts: date, today: date, rules: SeasonRules) -> int:
    """Return the number of the last sitting that has opened by a day; 0 before the first."""
    return sum(days_on(starts, days) <= today for days in rules.refresher_days)


def tells_of_its_skill(turns: Iterable[tuple[str, Collection[str]]]) -> list[bool]:
    """Return, for each turn of a sitting, whether its answer can meet a prediction of its skill.

    A turn is its skill, with all skills that its question asks. An answer to a question on several
    is right or wrong as a whole; and what an earlier turn has asked isn't as it was predicted.
    """
    told, seen = [], set[str]()
    for skill, asked in turns:
        told.append(set(asked) == {skill} and skill not in seen)
        seen |= set(asked)
    return told


def weak_skills(by_person: Iterable[Collection[Outlook]]) -> list[tuple[str, int, int]]:
    """Return the skills that fade for more than half of those who had them, the weakest first.

    Each with how many it fades for, and how many had it: two at least, else it is one person's.
    """
    faded: dict[str, int] = {}
    had: dict[str, int] = {}
    for outlooks in by_person:
        for each in outlooks:
            had[each.facts.skill] = had.get(each.facts.skill, 0) + (each.band != NEVER_MET)
            faded[each.facts.skill] = faded.get(each.facts.skill, 0) + each.is_listed
    weak = [
        (skill, count, had[skill])
        for skill, count in faded.items()
        if count > 1 and 2 * count > had[skill]
    ]
    return sorted(weak, key=lambda each: (-each[1] / each[2], -each[1], each[0]))
