"""The thresholds that skills are judged by, as a door hands them over."""

from dataclasses import dataclass

__all__ = ["SkillRules"]


@dataclass(frozen=True, kw_only=True, slots=True)
class SkillRules:
    """Every figure by which a skill comes to its state and its date, named as its author named it.

    Raises ValueError for figures that contradict each other.
    """

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
