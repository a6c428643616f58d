"""The running rule lets through as many people as is said of it.

Source: the binomial distribution (scipy.stats.binom) put together look by look, as in Wald's
sequential test (Annals of Mathematical Statistics 16, 1945; from memory). The figures, 4.5 and
82.6 of 100 at one pass, 12.9 and 99.5 within three, are computed; the tolerance is their rounding.
"""

import random
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
from scipy.stats import binom

from trainer.lessons.library import read_library
from trainer.records.chances import chance_of_a_pass, chance_within
from trainer.records.running import NEVER_TRIED, after
from trainer.records.skill_tries import SkillTold
from trainer.web.thresholds import thresholds_of

RULES = thresholds_of(read_library(Path(__file__).parents[2] / "content")).skills
LOOKS = ((0, -1), (7, 0), (12, 1), (16, 2))


def passes(share_right: float) -> float:
    """Return the chance of a pass: by look, who had too many wrong so far and now has not."""
    still = {0: 1.0}
    passed = 0.0
    for (before, _), (tries, allowed) in pairwise(LOOKS):
        more = tries - before
        after: dict[int, float] = {}
        for wrong, chance in still.items():
            for new in range(more + 1):
                here = chance * float(binom.pmf(new, more, 1 - share_right))
                after[wrong + new] = after.get(wrong + new, 0.0) + here
        passed += sum(chance for wrong, chance in after.items() if wrong <= allowed)
        still = {wrong: chance for wrong, chance in after.items() if wrong > allowed}
    return passed


@pytest.mark.parametrize(("share", "one", "three"), [(0.6, 0.045, 0.129), (0.9, 0.826, 0.995)])
def test_the_figures_that_are_said_of_it(share: float, one: float, three: float) -> None:
    """Each is right to the last digit that is printed."""
    assert passes(share) == pytest.approx(one, abs=0.0005)
    assert 1 - (1 - passes(share)) ** 3 == pytest.approx(three, abs=0.0005)


@pytest.mark.parametrize("share", [0.1, 0.35, 0.5, 0.6, 0.75, 0.9, 0.97])
def test_the_two_ways_agree(share: float) -> None:
    """Look by look with scipy, and try by try with ours, to 1e-12."""
    assert chance_of_a_pass(share, RULES) == pytest.approx(passes(share), abs=1e-12)
    expected = 1 - (1 - passes(share)) ** 3
    assert chance_within(3, share, RULES) == pytest.approx(expected, abs=1e-12)


def cured_in_runs(share_right: float, chance: random.Random) -> int:
    """Return in which of its runs a made-up person's skill cures, by the records' own step."""
    day = date(2026, 3, 9)
    gelled = [SkillTold(day, right=True, unaided=True)] * RULES.gelled_after
    progress = after(NEVER_TRIED, gelled, RULES)
    while progress.reached != "cured" and progress.runs <= 3:
        assert progress.due is not None
        tries = (
            SkillTold(progress.due, right=chance.random() < share_right, unaided=True)
            for _ in range(RULES.counted_tries_a_day)
        )
        for each in tries:
            progress = after(progress, [each], RULES)
            if progress.reached == "cured":
                break
    return progress.runs if progress.reached == "cured" else 4


@pytest.mark.parametrize("share", [0.6, 0.9])
def test_the_records_own_step_lets_through_as_many(share: float) -> None:
    """4,000 people with a fixed seed, within four standard errors of the binomial's figures."""
    people, chance = 4000, random.Random(20261125)  # noqa: S311 - nobody is to be kept from guessing
    runs = [cured_in_runs(share, chance) for _ in range(people)]
    for within in (1, 3):
        expected = 1 - (1 - passes(share)) ** within
        error = (expected * (1 - expected) / people) ** 0.5
        told = sum(each <= within for each in runs) / people
        assert told == pytest.approx(expected, abs=4 * error)
