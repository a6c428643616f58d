"""content/competencies.toml: what a trainee must be able to do, and the thresholds."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from trainer.lessons.block import Block

_FILE = "competencies.toml"
_KEYS = (
    "slug", "title", "safety_critical", "signer_must_hold", "part", "must_steps", "why", "skill"
)  # fmt: skip
_FEWEST_STEPS, _MOST_STEPS = 5, 9


@dataclass(frozen=True, slots=True)
class Skill:
    """Something that can be shown by answering questions."""

    slug: str
    title: str
    weight: float


@dataclass(frozen=True, slots=True)
class Competency:
    """Something that a supervisor can see and sign for."""

    slug: str
    title: str
    safety_critical: bool
    signer_must_hold: bool
    #: The part of the drawn roof that comes in with it.
    part: str
    must_steps: tuple[str, ...]
    why: tuple[str, ...]
    skills: tuple[Skill, ...]


@dataclass(frozen=True, slots=True)
class Rule:
    """One threshold, with the reason for it."""

    value: Any
    reason: str


@dataclass(frozen=True, slots=True)
class Competencies:
    """All of them in order, and the rules."""

    competencies: tuple[Competency, ...]
    rules: Mapping[str, Rule]

    @property
    def skills(self) -> dict[str, Skill]:
        """All skills by slug."""
        return {skill.slug: skill for each in self.competencies for skill in each.skills}


def read_competencies(folder: Path) -> Competencies:
    """Return what content/competencies.toml says; raise AuthorError."""
    block = Block(f"content/{_FILE}", 1, (folder / _FILE).read_text("utf-8"))
    table = block.read()
    block.refuse_unknown(table, ("competency", "rules"), "The file")
    competencies = tuple(
        _read_competency(block, each) for each in block.want(table, "competency", list, "The file")
    )
    _refuse_twice(block, [each.slug for each in competencies], "competency")
    _refuse_twice(block, [s.slug for each in competencies for s in each.skills], "skill")
    return Competencies(competencies, _read_rules(block, table.get("rules", {})))


def _read_competency(block: Block, table: Mapping[str, Any]) -> Competency:
    block.refuse_unknown(table, _KEYS, "A competency")
    slug = block.want(table, "slug", str, "A competency")
    steps = tuple(block.want(table, "must_steps", list, slug))
    if not _FEWEST_STEPS <= len(steps) <= _MOST_STEPS:
        raise block.mistake(slug, f"'{slug}' has {len(steps)} must-steps; it takes 5 to 9.")
    return Competency(
        slug=slug,
        title=block.want(table, "title", str, slug),
        safety_critical=block.want(table, "safety_critical", bool, slug),
        signer_must_hold=block.want(table, "signer_must_hold", bool, slug),
        part=block.want(table, "part", str, slug),
        must_steps=steps,
        why=tuple(block.want(table, "why", list, slug)),
        skills=tuple(_read_skill(block, each) for each in table.get("skill", ())),
    )


def _read_skill(block: Block, table: Mapping[str, Any]) -> Skill:
    block.refuse_unknown(table, ("slug", "title", "weight"), "A skill")
    slug = block.want(table, "slug", str, "A skill")
    return Skill(
        slug, block.want(table, "title", str, slug), float(block.want(table, "weight", float, slug))
    )


def _read_rules(block: Block, table: Mapping[str, Any]) -> dict[str, Rule]:
    rules = {}
    for name, rule in table.items():
        if not isinstance(rule, dict) or set(rule) != {"value", "reason"}:
            raise block.mistake(name, f"The rule '{name}' has a value and a reason, and no more.")
        rules[name] = Rule(rule["value"], rule["reason"])
    return rules


def _refuse_twice(block: Block, slugs: list[str], what: str) -> None:
    for slug in slugs:
        if slugs.count(slug) > 1:
            raise block.mistake(slug, f"The {what} '{slug}' stands here twice.")
