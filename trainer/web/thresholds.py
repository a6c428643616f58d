"""The thresholds of the lessons, handed on to the records as frozen values."""

from dataclasses import dataclass, fields
from typing import Any, TypeVar

from trainer.lessons import AuthorError, Competencies, ContentError, Library
from trainer.records.rules import (
    SeasonRules,
    SittingRules,
    SkillRules,
    StuckRules,
    UseRules,
)

_FILE = "content/competencies.toml"
_MEND = "The lessons that come with the trainer have them all, with their reasons."

T = TypeVar("T", StuckRules, SkillRules, SittingRules, SeasonRules, UseRules)


@dataclass(frozen=True, slots=True)
class Thresholds:
    """All that the records are told to judge by."""

    stuck: StuckRules
    skills: SkillRules
    sittings: SittingRules
    seasons: SeasonRules
    uses: UseRules


def thresholds_of(library: Library) -> Thresholds:
    """Return what the records judge by; raise ContentError where a rule is missing.

    Rules that contradict each other are refused too.
    """
    told = library.competencies
    return Thresholds(
        _frozen(StuckRules, told),
        _frozen(SkillRules, told),
        _frozen(SittingRules, told),
        _frozen(SeasonRules, told),
        _frozen(UseRules, told),
    )


def mistaken_thresholds(library: Library) -> list[AuthorError]:
    """Return why nothing can be judged by the library's rules; nothing where it can."""
    try:
        thresholds_of(library)
    except ContentError as error:
        return list(error.mistakes)
    return []


def _frozen(wanted: type[T], told: Competencies) -> T:
    names = [each.name for each in fields(wanted)]
    missing = [_missing(name) for name in names if name not in told.rules]
    if missing:
        raise ContentError(missing)
    try:
        return wanted(**{name: _as_frozen(told.rules[name].value) for name in names})
    except ValueError as error:
        raise ContentError([AuthorError(_FILE, 1, str(error))]) from error


def _missing(name: str) -> AuthorError:
    return AuthorError(_FILE, 1, f"The rule '{name}' is missing: add [rules.{name}].", "", _MEND)


def _as_frozen(value: Any) -> Any:  # noqa: ANN401 - a figure or a list of them
    return tuple(value) if isinstance(value, list) else value
