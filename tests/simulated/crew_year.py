"""A made-up crew over a year: what they practise, what cures, what the winter takes.

    .venv/bin/python tests/simulated/crew_year.py [picture.svg]

Twenty people with invented abilities and habits, and a fixed seed. They meet a lesson's skills a
week from March on, practise on some days by the records' own plan, do nothing from November to
January, and refresh before the next season. Whether an answer is right is drawn by their ability
and by how far the skill has faded; everything else is the records' own work. It prints a table,
and draws the year where a file is named.
"""

import random
import sys
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from pathlib import Path

from trainer.lessons import Library
from trainer.lessons.library import read_library
from trainer.records.comparison import Comparison, compare
from trainer.records.refresher import Outlook, SkillFacts, open_number, outlook_of, refresher_list
from trainer.records.reviews import recall
from trainer.records.running import NEVER_TRIED, Progress, after
from trainer.records.seasons import sitting_dates
from trainer.records.sitting_plan import Askable, candidate_for, plan_sitting
from trainer.records.skill_tries import SkillTold
from trainer.records.standing import STATES, standing
from trainer.web.thresholds import Thresholds, thresholds_of

FIRST_DAY, NEXT_START = date(2026, 3, 2), date(2027, 3, 1)
WINTER = (date(2026, 11, 1), date(2027, 1, 31))
LAST_DAY = NEXT_START + timedelta(days=30)
PEOPLE = 20
SEED = 20260302


@dataclass
class Apprentice:
    """Somebody made up: how able, how diligent, and how it went."""

    name: str
    able: float
    """The share of their answers that is right while a skill is fresh."""
    diligent: float
    """The share of days on which they practise."""
    forgets: float = 1.0
    """How fast a skill fades for them, against the memory model."""
    progress: dict[str, Progress] = field(default_factory=dict)
    sittings: list[int] = field(default_factory=list)
    predicted: list[tuple[float, bool]] = field(default_factory=list)
    cured_after: dict[str, int] = field(default_factory=dict)
    gelled_on: dict[str, date] = field(default_factory=dict)
    listed: dict[int, list[Outlook]] = field(default_factory=dict)


@dataclass
class Year:
    """A crew with its lessons and its rules, lived through day by day."""

    library: Library
    rules: Thresholds
    people: list[Apprentice]
    luck: random.Random
    states: dict[date, Counter[str]] = field(default_factory=dict)
    held: dict[date, tuple[int, int]] = field(default_factory=dict)

    def live(self) -> None:
        """Go through every day."""
        day = FIRST_DAY
        while day <= LAST_DAY:
            for person in self.people:
                self._day_of(person, day)
            self._note(day)
            day += timedelta(days=1)

    def comparison(self) -> Comparison:
        """Return what was predicted in the refresher against what was right."""
        told = [each for person in self.people for each in person.predicted]
        return compare(told, self.rules.seasons)

    def _day_of(self, person: Apprentice, day: date) -> None:
        weeks = (day - FIRST_DAY).days // 7
        if day.weekday() == 0 and weeks < len(self.library.lessons):
            self._first_meeting(person, day, weeks)
        number = open_number(NEXT_START, day, self.rules.seasons)
        if number and number not in person.listed:
            self._refresh(person, day, number)
        elif not WINTER[0] <= day <= WINTER[1] and self.luck.random() < person.diligent:
            self._practise(person, day)

    def _first_meeting(self, person: Apprentice, day: date, lesson: int) -> None:
        for each in self.library.lessons[lesson].questions:
            if not each.is_numberless:
                for skill in dict.fromkeys(each.skills):
                    self._answer(person, skill, day)

    def _practise(self, person: Apprentice, day: date) -> None:
        skills = self.rules.skills
        candidates = [candidate_for(each, of, day, skills) for each, of in person.progress.items()]
        turns = plan_sitting(candidates, self._askables(), self.rules.sittings)
        if turns:
            person.sittings.append(len(turns))
        for turn in turns:
            self._answer(person, turn.skill, day)

    def _refresh(self, person: Apprentice, day: date, number: int) -> None:
        outlooks = self.outlooks(person, max(day, NEXT_START))
        listed = refresher_list(outlooks)[: self.rules.seasons.refresher_questions]
        person.listed[number] = listed
        for each in listed:
            skill = each.facts.skill
            share = recall(person.progress[skill].card, day, self.rules.skills)
            person.predicted.append((share, self._answer(person, skill, day)))

    def _answer(self, person: Apprentice, skill: str, day: date) -> bool:
        before = person.progress.get(skill, NEVER_TRIED)
        right = self.luck.random() < person.able * self._left(person, before, day)
        told = SkillTold(day, right, unaided=True)
        now = after(before, [told], self.rules.skills)
        person.progress[skill] = now
        if now.runs and skill not in person.gelled_on:
            person.gelled_on[skill] = day
        if now.reached == "cured" and skill not in person.cured_after:
            person.cured_after[skill] = (day - person.gelled_on[skill]).days
        return right

    def _left(self, person: Apprentice, progress: Progress, day: date) -> float:
        """Return how much of a skill is left: all of it at a first meeting."""
        if progress.card is None or progress.reached == "started":
            return 1.0
        return float(recall(progress.card, day, self.rules.skills) ** person.forgets)

    def outlooks(self, person: Apprentice, day: date) -> list[Outlook]:
        """Return how each of somebody's skills stands on a day."""
        rules = self.rules
        return [
            outlook_of(
                SkillFacts(skill.slug, skill.weight, competency.safety_critical),
                person.progress.get(skill.slug, NEVER_TRIED),
                day,
                rules.skills,
                rules.seasons,
            )
            for competency in self.library.competencies.competencies
            for skill in competency.skills
        ]

    def states_of(self, person: Apprentice, day: date) -> Counter[str]:
        """Return how many of somebody's skills stand in each state."""
        return Counter(
            standing(person.progress.get(each, NEVER_TRIED), day, self.rules.skills).state
            for each in self.library.competencies.skills
        )

    def _askables(self) -> list[Askable]:
        return [
            Askable(each.id, frozenset(each.skills), each.worked_by)
            for each in self.library.questions.values()
            if not each.is_numberless
        ]

    def _note(self, day: date) -> None:
        counts = [self.states_of(each, day) for each in self.people]
        self.states[day] = sum(counts, Counter())
        seen = [each for person in self.people for each in self.outlooks(person, day)]
        had = [each for each in seen if each.band != "not learnt yet"]
        self.held[day] = (sum(not each.is_listed for each in had), len(had))


def crew(luck: random.Random) -> list[Apprentice]:
    """Return twenty people, from somebody who guesses to two who are always right."""
    people = [
        Apprentice(
            f"No. {number + 1}",
            able=round(0.55 + 0.45 * number / (PEOPLE - 1), 2),
            diligent=round(luck.uniform(0.35, 0.95), 2),
            forgets=round(luck.uniform(0.6, 1.4), 2),
        )
        for number in range(PEOPLE)
    ]
    # One who is always right, forgets nothing between dates, and misses no day.
    people[-1] = replace(people[-1], able=1.0, diligent=1.0, forgets=0.0)
    return people


def as_the_model_thinks(people: list[Apprentice]) -> list[Apprentice]:
    """Return the same people, all able, and forgetting just as the memory model says."""
    return [replace(each, able=1.0, forgets=1.0) for each in people]


def lived(seed: int = SEED, change: Callable[[list[Apprentice]], list[Apprentice]] = list) -> Year:
    """Return the year of the crew, lived through; `change` makes other people of them."""
    library = read_library(Path(__file__).parents[2] / "content")
    luck = random.Random(seed)  # noqa: S311 - made-up people
    year = Year(library, thresholds_of(library), change(crew(luck)), luck)
    year.live()
    return year


def table(year: Year) -> str:
    """Return what came of it: a line for each person, and what was predicted."""
    dates = sitting_dates(NEXT_START, year.rules.seasons)
    lines = [
        f"{'':8}{'able':>6}{'days':>6}{'sat':>6}{'most':>6}{'Cured':>7}{'median':>8}  refresher"
    ]
    for each in year.people:
        cured = sorted(each.cured_after.values())
        median = str(cured[len(cured) // 2]) if cured else "-"
        listed = " ".join(f"{len(each.listed.get(n, []))}" for n in range(1, len(dates) + 1))
        lines.append(
            f"{each.name:8}{each.able:6.2f}{each.diligent:6.2f}{len(each.sittings):6}"
            f"{max(each.sittings, default=0):6}{len(cured):7}{median:>8}  {listed}"
        )
    told = year.comparison()
    lines.append(f"\n{told.answers} answers in the refresher, gap {told.gap:.3f}, {told.leans}:")
    lines += [
        f"  {each.place} to {each.place + 1} of 10: {each.answers:4} answers, "
        f"{each.expected:6.1f} expected, {each.right:4} right"
        for each in told.tenths
    ]
    return "\n".join(lines)


SHADES = dict(
    zip(STATES, ("#e4dcc6", "#d8b46a", "#f3b547", "#86c3a2", "#0a5641", "#872c14"), strict=True)
)


def picture(year: Year) -> str:
    """Return the year as SVG: every skill of everybody by its state, week by week."""
    weeks = [day for day in year.states if day.weekday() == 0]
    total, wide, high = sum(year.states[weeks[0]].values()), 14, 360
    bars = []
    for place, day in enumerate(weeks):
        y = 30.0
        for state in reversed(STATES):
            part = high * year.states[day][state] / total
            bars.append(_box(60 + place * wide, y, wide, part, SHADES[state]))
            y += part
        if day.day <= 7:
            bars.append(f'<text x="{60 + place * wide}" y="{high + 48}">{day:%b}</text>')
    shares = [year.held[day][0] / max(1, year.held[day][1]) for day in weeks]
    held = " ".join(
        f"{60 + place * wide},{high + 180 - 110 * share:.1f}" for place, share in enumerate(shares)
    )
    keys = [
        f"{_box(60 + 120 * place, 4, 14, 14, SHADES[state])}"
        f'<text x="{80 + 120 * place}" y="16">{state}</text>'
        for place, state in enumerate(STATES)
    ]
    line = f'<polyline points="{held}" fill="none" stroke="#0a5641" stroke-width="2"/>'
    words = f'<text x="60" y="{high + 205}">Share of what was learnt that holds, 0 to all</text>'
    long = wide * len(weeks)
    edge = f'd="M60 {high + 70}h{long}v110h-{long}z" fill="none" stroke="#85806b"'
    frame = f"<path {edge}/>"
    size = f'viewBox="0 0 {80 + long} {high + 220}" width="{80 + long}"'
    style = 'font-family="sans-serif" font-size="12"'
    inside = "".join([*keys, *bars, frame, line, words])
    return f'<svg xmlns="http://www.w3.org/2000/svg" {size} {style}>{inside}</svg>\n'


def _box(x: float, y: float, wide: float, high: float, shade: str) -> str:
    return f'<rect x="{x}" y="{y:.1f}" width="{wide}" height="{high:.1f}" fill="{shade}"/>'


if __name__ == "__main__":
    told = lived()
    print(table(told))
    if len(sys.argv) > 1:
        Path(sys.argv[1]).write_text(picture(told), "utf-8")
