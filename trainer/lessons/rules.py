"""Thresholds with their reasons, from the [rules] of content/competencies.toml."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from trainer.lessons.block import Block

#: What a rule holds: whether a value fits, and how a fitting one is called.
_Shape = tuple[Callable[[Any], bool], str]


@dataclass(frozen=True, slots=True)
class Rule:
    """One threshold, with the reason for it."""

    value: Any
    reason: str


def read_rules(block: Block, table: Mapping[str, Any]) -> dict[str, Rule]:
    """Return the rules by name; raise AuthorError for one without its reason, or of no use."""
    rules = {}
    for name, rule in table.items():
        if not isinstance(rule, dict) or set(rule) != {"value", "reason"}:
            sentence = f"The rule '{name}' has a value and a reason, and no more."
            raise block.mistake(f"rules.{name}", sentence)
        fits, called = _SHAPES.get(name, _ANYTHING)
        if not fits(rule["value"]):
            raise block.mistake(f"rules.{name}", f"The value of '{name}' must be {called}.")
        rules[name] = Rule(rule["value"], rule["reason"])
    return rules


def _is_count(value: Any) -> bool:  # noqa: ANN401 - whatever an author wrote
    return isinstance(value, int) and not isinstance(value, bool) and value >= 1


def _are_counts(value: Any) -> bool:  # noqa: ANN401
    return isinstance(value, list) and bool(value) and all(map(_is_count, value))


def _are_wrongs(value: Any) -> bool:  # noqa: ANN401
    return isinstance(value, list) and all(each == 0 or _is_count(each) for each in value)


def _are_days(value: Any) -> bool:  # noqa: ANN401
    return isinstance(value, list) and bool(value) and all(type(each) is int for each in value)


def _is_share(value: Any) -> bool:  # noqa: ANN401
    return isinstance(value, float) and 0 < value < 1


_ANYTHING: _Shape = (lambda _value: True, "")
_COUNT: _Shape = (_is_count, "a whole number from 1")
_COUNTS: _Shape = (_are_counts, "a list of whole numbers from 1")
_SHARE: _Shape = (_is_share, "a share between 0 and 1, such as 0.9")
#: The rules that the records judge by already. The others are read as they stand.
_SHAPES: Mapping[str, _Shape] = {
    "fading_back_at_wrong": _COUNT,
    "fading_skipped_at_right": _COUNT,
    "stuck_after": _COUNT,
    "gelled_after": _COUNT,
    "set_days": _COUNT,
    "counted_tries_a_day": _COUNT,
    "first_gaps_days": _COUNTS,
    "cured_looks": _COUNTS,
    "cured_wrongs": (_are_wrongs, "a list of whole numbers from 0"),
    "run_ends_at_wrong": _COUNT,
    "new_run_due_days": _COUNT,
    "numberless_tries": _COUNT,
    "due_again_rights": _COUNT,
    "due_again_right_days": _COUNT,
    "recall_wanted": _SHARE,
    "longest_gap_days": _COUNT,
    "believed_late_days": _COUNT,
    "sitting_questions": _COUNT,
    "sitting_minutes": _COUNT,
    "break_minutes": _COUNT,
    "returns_after": _COUNT,
    "same_numbers_after_days": _COUNT,
    "numberless_after_days": _COUNT,
    "refresher_recall": _SHARE,
    "refresher_recall_if_safety_critical": _SHARE,
    "gone_recall": _SHARE,
    "refresher_questions": _COUNT,
    "refresher_last_open_days": _COUNT,
    "refresher_days": (_are_days, "a list of whole numbers, below zero for days before"),
    "season_ahead_days": _COUNT,
    "compared_answers": _COUNT,
    "compared_gap": _SHARE,
    "unused_days": _COUNT,
    "unused_days_if_safety_critical": _COUNT,
    "use_noted_within_days": _COUNT,
}
