"""content/competencies.toml: what a trainee must be able to do, and the thresholds."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from trainer.lessons.block import Block
from trainer.lessons.errors import did_you_mean
from trainer.lessons.rules import Rule, read_rules

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
    #: Skills that people easily take for this one, asked close to it.
    confused_with: tuple[str, ...] = ()


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
    block.want(table, "competency", list, "The file")
    tables = list(block.tables(table, "competency"))
    competencies = tuple(_read_competency(part, each) for part, each in tables)
    _refuse_twice(tables, "competency")
    skills = [pair for part, each in tables for pair in _skills(part, each)]
    _refuse_twice(skills, "skill")
    _refuse_confusion_with_nothing(skills)
    rules = block.want(table, "rules", dict, "The file") if "rules" in table else {}
    return Competencies(competencies, read_rules(block, rules))


def _read_competency(block: Block, table: Mapping[str, Any]) -> Competency:
    block.refuse_unknown(table, _KEYS, "A competency")
    slug = block.want(table, "slug", str, "A competency")
    steps = block.texts(table, "must_steps", slug)
    if not _FEWEST_STEPS <= len(steps) <= _MOST_STEPS:
        raise block.mistake("must_steps", f"'{slug}' has {len(steps)} must-steps; it takes 5 to 9.")
    return Competency(
        slug=slug,
        title=block.want(table, "title", str, slug),
        safety_critical=block.want(table, "safety_critical", bool, slug),
        signer_must_hold=block.want(table, "signer_must_hold", bool, slug),
        part=block.want(table, "part", str, slug),
        must_steps=steps,
        why=block.texts(table, "why", slug),
        skills=tuple(_read_skill(part, each) for part, each in _skills(block, table)),
    )


def _skills(block: Block, table: Mapping[str, Any]) -> Iterator[tuple[Block, dict[str, Any]]]:
    return block.tables(table, "skill", "competency.skill")


def _read_skill(block: Block, table: Mapping[str, Any]) -> Skill:
    block.refuse_unknown(table, ("slug", "title", "weight", "confused_with"), "A skill")
    slug = block.want(table, "slug", str, "A skill")
    confused = block.texts(table, "confused_with", slug) if "confused_with" in table else ()
    return Skill(
        slug,
        block.want(table, "title", str, slug),
        float(block.want(table, "weight", float, slug)),
        tuple(confused),
    )


def _refuse_twice(tables: Iterable[tuple[Block, Mapping[str, Any]]], what: str) -> None:
    seen: set[str] = set()
    for part, table in tables:
        if table["slug"] in seen:
            raise part.mistake("slug", f"The {what} '{table['slug']}' stands here twice.")
        seen.add(table["slug"])


def _refuse_confusion_with_nothing(skills: Iterable[tuple[Block, Mapping[str, Any]]]) -> None:
    kept = list(skills)
    slugs = [table["slug"] for _, table in kept]
    for part, table in kept:
        for other in table.get("confused_with", ()):
            if other not in slugs or other == table["slug"]:
                sentence = f"No other skill than '{table['slug']}' is called '{other}'."
                others = [each for each in slugs if each != table["slug"]]
                raise part.mistake("confused_with", sentence, did_you_mean(other, others))
