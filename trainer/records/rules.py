"""The thresholds that the records judge by, as a door hands them over.

Each is named as its author named it; why it is what it is stands beside it, where it is written.
"""

from dataclasses import dataclass
from datetime import timedelta

__all__ = ["SeasonRules", "SittingRules", "SkillRules", "StuckRules", "UseRules"]


@dataclass(frozen=True, kw_only=True, slots=True)
class SkillRules:
    """Every figure by which a skill comes to its state and its date.

    Raises ValueError for figures that contradict each other.
    """

    fading_back_at_wrong: int
    """Wrong ones running that lead a stage back."""
    fading_skipped_at_right: int
    """Unaided rights on the first day that lead to the last stage at once."""
    gelled_after: int
    """Unaided rights in a row until a skill has gelled."""
    set_days: int
    """Later days of a run with a right until it has set."""
    counted_tries_a_day: int
    """First tries of a day that can count, on a day when the skill is due."""
    first_gaps_days: tuple[int, ...]
    """Days from the last counted day to the next, from Gelled on; the last one repeats."""
    cured_looks: tuple[int, ...]
    """How many tries have counted when the run is looked at."""
    cured_wrongs: tuple[int, ...]
    """How many of them may be wrong, at each look."""
    run_ends_at_wrong: int
    """The wrong one that ends a run."""
    new_run_due_days: int
    """Days until a run that ended is begun again."""
    numberless_tries: int
    """Counted tries of a run that may be of questions without numbers."""
    due_again_rights: int
    """Days with a right that restore a Cured skill whose date has passed."""
    due_again_right_days: int
    """Days with a right that restore a Cured skill after a wrong try."""
    recall_wanted: float
    """The share of Cured skills that should still be there when they come back; 0 to 1."""
    longest_gap_days: int
    """The longest time until a Cured skill comes back."""
    believed_late_days: int
    """A try dated this many days before the last one may have been sent later; not more."""

    def __post_init__(self) -> None:
        looks = self.cured_looks
        if not looks or len(looks) != len(self.cured_wrongs):
            raise ValueError("'cured_looks' and 'cured_wrongs' go in pairs: give as many of each.")
        if list(looks) != sorted(set(looks)):
            raise ValueError("'cured_looks' rise: each look comes after more tries.")
        if self.run_ends_at_wrong <= max(self.cured_wrongs):
            raise ValueError("'run_ends_at_wrong' is more than any look of 'cured_wrongs' allows.")
        if not self.first_gaps_days:
            raise ValueError("'first_gaps_days' has no gap: give one at least.")
        if not 0 < self.recall_wanted < 1:
            raise ValueError("'recall_wanted' is a share, such as 0.9.")


@dataclass(frozen=True, kw_only=True, slots=True)
class StuckRules:
    """When a supervisor is told that somebody needs help."""

    stuck_after: int
    """First tries at a question, none of them right, after which somebody is stuck."""


@dataclass(frozen=True, kw_only=True, slots=True)
class SittingRules:
    """What one sitting of practice offers, and in what order."""

    sitting_questions: int
    """Questions that a day's practice offers at most."""
    sitting_minutes: int
    """Minutes after which a day's practice offers no more; whoever wants to may go on."""
    break_minutes: int
    """A longer time between two answers was a break, and counts as this."""
    returns_after: int
    """Questions in between before a skill comes back in a sitting."""
    same_numbers_after_days: int
    """Days for which somebody isn't asked a question on the same numbers again."""
    numberless_after_days: int
    """Days after which a question without numbers may return, and count."""

    def out_of_sight(self, *, numberless: bool) -> timedelta:
        """Return how long what was shown of a question is no evidence again."""
        days = self.numberless_after_days if numberless else self.same_numbers_after_days
        return timedelta(days=days)


@dataclass(frozen=True, kw_only=True, slots=True)
class SeasonRules:
    """When a crew refreshes what before its season, and when its predictions are doubted.

    Raises ValueError for shares outside 0 to 1 and days that don't rise.
    """

    refresher_recall: float
    """A skill predicted below this on the season's start is refreshed; 0 to 1."""
    refresher_recall_if_safety_critical: float
    gone_recall: float
    """A skill predicted below this is as good as gone; 0 to 1, below both others."""
    refresher_questions: int
    """Questions of one sitting at most."""
    refresher_days: tuple[int, ...]
    """The days of the sittings, counted from the season's start; below zero is before it."""
    refresher_last_open_days: int
    """How long the last sitting stays open."""
    season_ahead_days: int
    """How far ahead a season's start may be set."""
    compared_answers: int
    """Answers from which predictions are compared with what came of them."""
    compared_gap: float
    """A gap between the two, as a share, that the office is told of."""

    def __post_init__(self) -> None:
        shares = (self.refresher_recall, self.refresher_recall_if_safety_critical)
        if not all(0 < share < 1 for share in (*shares, self.gone_recall, self.compared_gap)):
            raise ValueError("What the refresher goes by are shares between 0 and 1, such as 0.85.")
        if self.gone_recall >= min(shares):
            raise ValueError("'gone_recall' lies below both bars of the refresher.")
        if not self.refresher_days or list(self.refresher_days) != sorted(set(self.refresher_days)):
            raise ValueError("'refresher_days' rise: each sitting is later than the one before.")


@dataclass(frozen=True, kw_only=True, slots=True)
class UseRules:
    """How long a competency may go unused, and how late a use may be noted."""

    unused_days: int
    """Days without use after which a competency needs another look."""
    unused_days_if_safety_critical: int
    use_noted_within_days: int
    """How long after the day a use may still be noted."""
