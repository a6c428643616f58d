"""How facts are read off a plan; each reader returns None for a roof that lacks its figure."""

from collections.abc import Callable
from operator import attrgetter
from typing import Any, Literal

from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.gel import GelTimes
from trainer.engine.plans.mat import TurnedKind
from trainer.engine.plans.roof import RoofPlan
from trainer.engine.plans.stages import Slug
from trainer.engine.plans.trims import TrimRun

Value = float | int | tuple[float, ...]
Reader = Callable[[RoofPlan], Value | None]
Lengths = Callable[[RoofPlan], tuple[float, ...]]
#: More lengths than this are no question that can be read on a phone.
MOST_TOLD = 8


def joints(plan: RoofPlan) -> tuple[float, ...]:
    """Return the open joints in metres."""
    return plan.deck.joint_lengths_m


def sides(plan: RoofPlan) -> tuple[float, ...]:
    """Return the sides in metres."""
    return tuple(side.length.value for side in plan.sides)


def strips(plan: RoofPlan) -> tuple[float, ...]:
    """Return the strips of bandage in metres."""
    return plan.bandage.runs_m


def trimmed(plan: RoofPlan) -> tuple[float, ...]:
    """Return the lengths of the sides that take the trim of which there is most."""
    return tuple(plan.sides[number - 1].length.value for number in _commonest(plan).sides)


def trim_pieces(plan: RoofPlan) -> tuple[float, ...]:
    """Return the pieces of that trim in metres, none longer than it is sold."""
    return tuple(piece / MM_PER_M.value for piece in _commonest(plan).pieces_mm)


def _commonest(plan: RoofPlan) -> TrimRun:
    return max(plan.trims.runs, key=lambda each: each.length.value)


def few(lengths: Lengths) -> Reader:
    """Return how to read lengths one by one, where they can be told on a phone."""
    return lambda plan: lengths(plan) if 0 < len(lengths(plan)) <= MOST_TOLD else None


def total(lengths: Lengths) -> Reader:
    """Return how to add lengths up; None where there are none."""
    return lambda plan: sum(lengths(plan)) or None


def longest(lengths: Lengths) -> Reader:
    """Return how to find the longest; None where there are none."""
    return lambda plan: max(lengths(plan), default=None)


def given(path: str) -> Reader:
    """Return how to read what was described or assumed; None where it was neither."""
    return attrgetter(f"description.{path}")


def some(path: str) -> Reader:
    """Return how to read a count that a roof may have none of."""
    return lambda plan: attrgetter(path)(plan) or None


def taped(path: str) -> Reader:
    """Return how to read what belongs to tape, of a deck with open joints."""
    return lambda plan: given(path)(plan) if joints(plan) else None


def hollow(path: str) -> Reader:
    """Return how to read what belongs to open ends, of a roof with one."""
    return lambda plan: given(path)(plan) if plan.trims.open_ends else None


def of_stage(slug: Slug, figure: Literal["resin", "share", "litres"]) -> Reader:
    """Return how to read a figure of a stage; None where the roof has no such stage."""

    def read(plan: RoofPlan) -> Value | None:
        found = (getattr(stage, figure).value for stage in plan.stages if stage.slug == slug)
        return next(found, None)

    return read


def of_turned(kind: TurnedKind, name: str) -> Reader:
    """Return how to read a given of the largest piece of mat that is turned so."""

    def read(plan: RoofPlan) -> Value | None:
        areas = [each.area for each in plan.mat.turned if each.kind == kind]
        largest: Any = max(areas, key=lambda area: area.value, default=None)
        return largest.givens[name] if largest else None

    return read


def of_gel(end: Literal["short", "working"]) -> Reader:
    """Return how to read the gel; None where nobody can tell it."""
    return lambda plan: getattr(plan.gel, end).value if isinstance(plan.gel, GelTimes) else None


def of_cup(name: Literal["minutes", "air_c", "percent"]) -> Reader:
    """Return how to read a figure of the cup that the clock goes by; None without a clock."""

    def read(plan: RoofPlan) -> Value | None:
        return getattr(plan.gel.goes_by, name) if isinstance(plan.gel, GelTimes) else None

    return read


def gel_temperature(plan: RoofPlan) -> Value | None:
    """Return the temperature that gel times are told at; None where none are told."""
    return plan.description.weather.gel_c if isinstance(plan.gel, GelTimes) else None


def paced_minutes(plan: RoofPlan) -> Value | None:
    """Return the working time of a crew whose own pace sets its batch, not bucket or beginner."""
    paced = plan.stages[0].limit.by == "pace"
    return of_gel("working")(plan) if paced else None


def beginners_litres(plan: RoofPlan) -> Value:
    """Return the most that a beginner mixes: a beginner's batch, or a bucket that is smaller."""
    crew = plan.description.crew
    return min(crew.beginner_l, crew.bucket_l)


def lap_run(plan: RoofPlan) -> Value | None:
    """Return the laps of all layers end to end, in metres; None where there are none."""
    return plan.mat.laid.givens["lap_run_m"] or None


def topcoat_area(plan: RoofPlan) -> Value:
    """Return the square metres to topcoat."""
    area: float = plan.stages[-1].resin.givens["area_m2"]
    return area
