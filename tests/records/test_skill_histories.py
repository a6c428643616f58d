"""Thousands of drawn histories: the step agrees with a ledger that reads the rule off the whole.

The ledger is written from the rule's own words and keeps nothing from one try to the next: it
takes a day's tries together, and sorts them by place. Dates after Cured are the memory model's,
which has tests of its own; here the ledger is told them.
"""

import random
from dataclasses import dataclass, field
from datetime import date
from itertools import groupby

import pytest
from records_cast import RULES
from skills_cast import on, tries

from trainer.records.reviews import Card, card_after
from trainer.records.running import NEVER_TRIED, Progress, after
from trainer.records.skill_table import progress_in, row_of
from trainer.records.skill_tries import SkillTold
from trainer.records.standing import STATES, standing

GAPS, LOOKS = (1, 2, 4, 7), {7: 0, 12: 1, 16: 2}
HISTORIES = 2000


def drawn(seed: int) -> list[SkillTold]:
    """Return a history: somebody more or less good, diligent, helped and fond of pictures."""
    luck = random.Random(seed)  # noqa: S311 - no secret
    good, helped, numberless = luck.uniform(0.4, 1), luck.choice([0, 0.2]), luck.choice([0, 0.4])
    gap = luck.choice([1, 2, 4, 10])
    history, day = [], 0
    for _ in range(luck.randint(1, 24)):
        for _ in range(luck.choice([1, 2, 2, 3, 4])):
            letter = "rw"[luck.random() > good]
            if luck.random() < numberless:
                letter = {"r": "n", "w": "x"}[letter]
            history += tries(day, letter.upper() if luck.random() < helped else letter)
        day += luck.randint(1, gap) if luck.random() < 0.95 else luck.randint(30, 200)
    return history


@dataclass
class Ledger:
    """One skill of one person, written down day by day."""

    row: int = 0
    """Rights running at the first meeting."""
    runs: int = 0
    run: list[tuple[date, SkillTold]] = field(default_factory=list)
    """What counted in this run."""
    due: date = date.max
    cured: bool = False
    lacks: int = 0
    """Days with a right that it lacks since it was Cured."""
    card: Card | None = None

    def add(self, day: date, told: list[SkillTold]) -> None:
        """Write one day down, its tries in order."""
        was_due, was_cured = day >= self.due, self.cured
        if was_cured and day > self.due and not self.lacks:
            self.lacks = 1
        place, first_heard = 0, True
        open_today = self.runs > 0 and was_due
        for each in told:
            if each.numberless and self.is_left_out(each):
                continue
            place += 1
            if not each.unaided:
                continue
            if first_heard:
                self.card = card_after(self.card, day, RULES, right=each.right)
            if self.cured:
                self.since_cured(day, each, first=first_heard)
            elif not self.runs:
                self.meet(day, each)
            elif open_today and place <= 2:
                open_today = self.count(day, each)
            first_heard = False

    def is_left_out(self, told: SkillTold) -> bool:
        """Whether a try without numbers is as if it had not been."""
        if self.cured:
            return told.right
        return self.runs > 0 and sum(each.numberless for _, each in self.run) >= 3

    def meet(self, day: date, told: SkillTold) -> None:
        """Three rights in a row gel it; nothing more counts on that day."""
        self.row = self.row + 1 if told.right else 0
        if self.row == 3:
            self.runs, self.due = 1, plus(day, 1)

    def count(self, day: date, told: SkillTold) -> bool:
        """Count a try; return whether the day may count another."""
        self.run.append((day, told))
        wrong = sum(not each.right for _, each in self.run)
        if wrong <= LOOKS.get(len(self.run), -1):
            assert self.card is not None
            self.cured, self.due = True, self.card.due
            return False
        if wrong == 3:
            self.runs, self.run, self.due = self.runs + 1, [], plus(day, 1)
            return False
        days = len({each for each, _ in self.run})
        self.due = plus(day, (*GAPS, *[7] * 99)[days])
        return True

    def since_cured(self, day: date, told: SkillTold, *, first: bool) -> None:
        """A wrong one asks for two days; a right helps as the day's first without help."""
        assert self.card is not None
        if first:
            self.due = self.card.due
        if not told.right:
            self.lacks = 2
            self.due = self.due if first else min(self.due, plus(day, 1))
        elif first and self.lacks:
            self.lacks -= 1

    def state(self, day: date) -> str:
        """Return the state, by the table's first row that applies."""
        if self.cured:
            return "Due again" if self.lacks or day > self.due else "Cured"
        if self.runs:
            rights = {each for each, told in self.run if told.right}
            return "Set" if len(rights) >= 3 else "Gelled"
        return "Started"


def plus(day: date, days: int) -> date:
    """Return the date so many days on."""
    return date.fromordinal(day.toordinal() + days)


def by_day(history: list[SkillTold]) -> list[tuple[date, list[SkillTold]]]:
    """Return the tries of each day."""
    return [(day, list(told)) for day, told in groupby(history, key=lambda each: each.day)]


def test_thousands_of_histories_agree_with_the_ledger() -> None:
    """State and date, at the end of each day and on the days round the next date."""
    seen: dict[str, int] = dict.fromkeys(STATES, 0)
    for seed in range(HISTORIES):
        ledger, progress = Ledger(), NEVER_TRIED
        for day, told in by_day(drawn(seed)):
            ledger.add(day, told)
            progress = after(progress, told, RULES)
            _agree(ledger, progress, day, seed)
            seen[ledger.state(day)] += 1
    assert all(number > HISTORIES / 20 for state, number in seen.items() if state != "Not started")


def _agree(ledger: Ledger, progress: Progress, day: date, seed: int) -> None:
    due = ledger.due if ledger.runs else None
    assert (progress.due, progress.card) == (due, ledger.card), seed
    for later in (day, due or day, plus(due or day, 1)):
        if later >= day:
            told = standing(progress, later, RULES)
            assert told.state == ledger.state(later), seed
            assert told.is_due == (due is not None and later >= due), seed


def test_hundreds_of_histories_survive_their_rows() -> None:
    """Written as a row after each try and read back as SQLite tells it: the same as in one go."""
    for seed in range(0, HISTORIES, 3):
        history = drawn(seed)
        progress = NEVER_TRIED
        for told in history:
            row = row_of(1, "skill", after(progress, (told,), RULES))
            kept = {name: _as_sqlite(value) for name, value in row.items()}
            progress = progress_in(kept)
        assert progress == after(NEVER_TRIED, history, RULES), seed


def _as_sqlite(value: object) -> object:
    if isinstance(value, date):
        return value.isoformat()
    return int(value) if isinstance(value, bool) else value


def test_hundreds_of_histories_keep_what_is_promised() -> None:
    """Never Cured in under 14 days or without four sums, never back from Gelled or Cured."""
    order = ("", "started", "gelled", "set", "cured")
    for seed in range(0, HISTORIES, 3):
        before, gelled_on = NEVER_TRIED, None
        for told in drawn(seed):
            progress = after(before, (told,), RULES)
            if progress.reached == "gelled" and before.reached == "started":
                gelled_on = told.day
            if progress.reached == "cured" and before.reached != "cured":
                assert gelled_on is not None
                # Two tries a day at most, on dates at least 1, 2, 4 and 7 days apart.
                assert (told.day - gelled_on).days >= 14, seed
                assert progress.counted - progress.numberless >= 4, seed
                assert told.right, seed
            fell = order.index(progress.reached) < order.index(before.reached)
            assert not fell or (before.reached, progress.reached) == ("set", "gelled"), seed
            assert not fell or progress.runs == before.runs + 1, seed
            assert progress.numberless <= 3, seed
            before = progress


@pytest.mark.parametrize("seed", range(5))
def test_clocks_set_anyhow_are_no_fault(seed: int) -> None:
    """Days in any order, over years: each try is taken, and dates never lie before the last."""
    luck = random.Random(seed)  # noqa: S311 - no secret
    progress = NEVER_TRIED
    for _ in range(1000):
        told = tries(luck.randint(-2000, 2000), luck.choice("rrrwRWnx"))
        progress = after(progress, told, RULES)
        assert progress.day is not None
        assert (progress.day - told[0].day).days <= RULES.believed_late_days
        assert progress.card is None or progress.card.heard <= progress.day
        standing(progress, on(luck.randint(-2000, 2000)), RULES)
