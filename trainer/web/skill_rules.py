"""The thresholds of the lessons, handed on to the records as one frozen value."""

from dataclasses import fields
from typing import Any

from trainer.lessons import AuthorError, ContentError, Library
from trainer.records.skill_rules import SkillRules

_FILE = "content/competencies.toml"
_MEND = "The lessons that come with the trainer have them all, with their reasons."


def skill_rules_of(library: Library) -> SkillRules:
    """Return the rules by which skills are judged; raise ContentError where one is missing.

    Rules that contradict each other are refused too.
    """
    told = library.competencies.rules
    missing = [each.name for each in fields(SkillRules) if each.name not in told]
    if missing:
        raise ContentError([_missing(name) for name in missing])
    values = {each.name: _frozen(told[each.name].value) for each in fields(SkillRules)}
    try:
        return SkillRules(**values)
    except ValueError as error:
        raise ContentError([AuthorError(_FILE, 1, str(error))]) from error


def mistaken_rules(library: Library) -> list[AuthorError]:
    """Return why skills can't be judged by the library's rules; nothing where they can."""
    try:
        skill_rules_of(library)
    except ContentError as error:
        return list(error.mistakes)
    return []


def _missing(name: str) -> AuthorError:
    return AuthorError(_FILE, 1, f"The rule '{name}' is missing: add [rules.{name}].", "", _MEND)


def _frozen(value: Any) -> Any:  # noqa: ANN401 - a figure or a list of them
    return tuple(value) if isinstance(value, list) else value
