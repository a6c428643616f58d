"""A crew before its season: who is ready, what the whole crew is weak in, and how it moved."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from flask import Blueprint, abort, g, render_template, request, url_for

from trainer.records import crews, db, people, sittings
from trainer.records.comparison import Comparison, compare, predicted_turns
from trainer.records.people import PersonRow
from trainer.records.refresher import BANDS, FADING, GONE, Outlook, weak_skills
from trainer.records.seasons import SeasonRow, current_season
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.season_outlook import Readiness, judged_on, readiness_of
from trainer.web.skill_standing import taught_skills

bp = Blueprint("season_crew", __name__, url_prefix="/season")


NO_CREW = "In no crew"
#: Crews on one page: the office of a college may have hundreds.
_AT_ONCE = 5


class Crew(NamedTuple):
    """A crew, or with no number those who are in none."""

    crew_id: int | None
    name: str


@dataclass(frozen=True, slots=True)
class Member:
    """One of a crew: the band of each skill, and what is to be refreshed, in words."""

    name: str
    href: str
    outlooks: list[Outlook]
    gone: list[str]
    fading: list[str]
    had: int
    is_ready: bool

    @property
    def holds(self) -> int:
        """How many skills hold."""
        return self.had - len(self.gone) - len(self.fading)

    @property
    def to_learn(self) -> int:
        """How many skills are lessons to do."""
        return len(self.outlooks) - self.had

    @property
    def words(self) -> str:
        """Where they stand, in a word or two."""
        return "ready" if self.is_ready else "not ready" if self.had else "nothing learnt yet"


@dataclass(frozen=True, slots=True)
class Weakness:
    """A skill that fades for more than half of those who had it."""

    title: str
    faded: int
    had: int


@dataclass(frozen=True, slots=True)
class Step:
    """How much of what a crew had held at one time."""

    when: str
    held: int
    had: int
    people: int


@dataclass(frozen=True, slots=True)
class CrewSheet:
    """A crew with its picture, its weak skills, and how it moved."""

    name: str
    members: list[Member]
    weak: list[Weakness]
    steps: list[Step]

    @property
    def ready(self) -> int:
        """How many of them are ready."""
        return sum(each.is_ready for each in self.members)


@dataclass(frozen=True, slots=True)
class Group:
    """A competency with the numbers and titles of its skills, as the picture counts them."""

    title: str
    skills: list[tuple[int, str]]


@bp.get("/crew")
def show() -> str:
    """Show one's crew before the season; the office sees all crews."""
    season = current_season(db.session)
    groups, every = groups_of(), _crews()
    page = request.args.get("page", 1, type=int)
    shown = every[_AT_ONCE * (page - 1) : _AT_ONCE * page] if page >= 1 else []
    if page != 1 and not shown:
        abort(404)
    return render_template(
        "season/crew.html",
        season=season,
        on=judged_on(season),
        crews=[_crew_sheet(each.name, _members(each), season) for each in shown],
        others=_pages(every, page),
        groups=groups,
        bands=BANDS,
    )


@bp.get("/compare")
def comparison() -> str:
    """Show what was predicted against what came of it, once the season has started."""
    season = current_season(db.session)
    has_begun = season is not None and season.starts <= here().today()
    return render_template(
        "season/compare.html",
        season=season,
        has_begun=has_begun,
        told=_compared(season) if season and has_begun else None,
        rules=here().thresholds.seasons,
        is_office="office" in signed_in().roles,
    )


def groups_of() -> list[Group]:
    """Return the taught skills by competency, numbered through in order."""
    groups: dict[str, Group] = {}
    for number, (competency, skill) in enumerate(taught_skills(), start=1):
        group = groups.setdefault(competency.slug, Group(competency.title, []))
        group.skills.append((number, skill.title))
    return list(groups.values())


def _compared(season: SeasonRow) -> Comparison:
    crew_id = None if g.whose == "all" else signed_in().crew_id
    if crew_id is None and g.whose != "all":
        return compare([], here().thresholds.seasons)
    turns = predicted_turns(db.session, season.season_id, crew_id)
    return compare(turns, here().thresholds.seasons)


def _crews() -> list[Crew]:
    """Return the crews that the signed-in person answers for; the office also those in none."""
    if g.whose != "all":
        own = crews.crew_by_id(db.session, signed_in().crew_id or 0)
        return [Crew(own.crew_id, own.name)] if own else []
    taught = people.crews_with(db.session, "trainee")
    found = [Crew(each.crew_id, each.name) for each in crews.crews(db.session)]
    every = [*found, Crew(None, NO_CREW)]
    return [each for each in every if each.crew_id in taught]


def _pages(every: Sequence[Crew], page: int) -> list[tuple[int, str, bool]]:
    """Return the pages that the crews take: their number, which crews, and whether it is open."""
    if len(every) <= _AT_ONCE:
        return []
    starts = range(0, len(every), _AT_ONCE)
    return [
        (number, _from_to(every[start : start + _AT_ONCE]), number == page)
        for number, start in enumerate(starts, start=1)
    ]


def _from_to(some: Sequence[Crew]) -> str:
    return some[0].name if len(some) == 1 else f"{some[0].name} to {some[-1].name}"


def _members(crew: Crew) -> list[PersonRow]:
    if crew.crew_id is None:
        return people.without_crew(db.session, "trainee")
    return people.crew_members(db.session, crew.crew_id, "trainee")


def _crew_sheet(name: str, trainees: Sequence[PersonRow], season: SeasonRow | None) -> CrewSheet:
    ids = [each.person_id for each in trainees]
    ready = readiness_of(ids, season)
    titles = {skill.slug: skill.title for _, skill in taught_skills()}
    members = [_member(each, ready[each.person_id], titles) for each in trainees]
    weak = [
        Weakness(titles[skill], faded, had)
        for skill, faded, had in weak_skills(each.outlooks for each in members)
    ]
    return CrewSheet(name, members, weak, _steps(ready, season))


def _member(person: PersonRow, ready: Readiness, titles: dict[str, str]) -> Member:
    gone, fading = (
        [titles[each.facts.skill] for each in ready.listed if each.band == band]
        for band in (GONE, FADING)
    )
    href = url_for("crew.person", ref=person.ref)
    return Member(person.name, href, ready.outlooks, gone, fading, ready.had, ready.is_ready)


def _steps(ready: Mapping[int, Readiness], season: SeasonRow | None) -> list[Step]:
    """Return how much held as each sitting was begun, and now: of those who sat, and of all."""
    season_id = season.season_id if season else 0
    begun = sittings.held_as_begun(db.session, ready.keys(), season_id)
    steps = [
        _step(f"as sitting {number} began", of.values()) for number, of in sorted(begun.items())
    ]
    now = {person_id: (each.held, each.had) for person_id, each in ready.items()}
    sat = {person_id for of in begun.values() for person_id in of}
    if sat and sat != now.keys():
        steps.append(_step("now, those who sat", [now[each] for each in sat]))
    return [*steps, _step("now, everybody", now.values())]


def _step(when: str, counts: Collection[tuple[int, int]]) -> Step:
    held, had = (sum(each) for each in zip(*counts, strict=True)) if counts else (0, 0)
    return Step(when, held, had, len(counts))
