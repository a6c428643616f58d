"""The running rule lets through as many people as is said of it.

Source: the binomial distribution (scipy.stats.binom) put together look by look, as in Wald's
sequential test (Annals of Mathematical Statistics 16, 1945; from memory). The figures, 4.5 and
82.6 of 100 at one pass, 12.9 and 99.5 within three, are computed; the tolerance is their rounding.

The step that judges each try is driven with people who are invented: a seeded stream of tries,
each right by the same chance. Of N people a share p passes give or take sqrt(p (1 - p) / N), the
binomial's standard error. Four of those either way leave one honest step in 16,000 outside.
"""

import random
from dataclasses import replace
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
from scipy.stats import binom

from trainer.lessons.library import read_library
from trainer.records.chances import chance_of_a_pass, chance_within
from trainer.records.running import NEVER_TRIED, Progress, after
from trainer.records.skill_tries import SkillTold
from trainer.records.standing import standing, tries_that_count
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


PEOPLE = 3000


def told(day: date, *, right: bool) -> SkillTold:
    """Return an unaided try on fresh numbers."""
    return SkillTold(day, right=right, unaided=True)


def practised(share: float, luck: random.Random, runs: int) -> Progress:
    """Return what somebody comes to who gels, and then practises when due as much as counts.

    They stop when Cured, or when they have failed so many runs.
    """
    day = date(2026, 3, 9)
    progress = after(NEVER_TRIED, [told(day, right=True)] * 3, RULES)
    while progress.reached != "cured" and progress.runs <= runs:
        assert progress.due is not None
        day = progress.due
        for _ in range(tries_that_count(progress, day, RULES)):
            if tries_that_count(progress, day, RULES):
                progress = after(progress, [told(day, right=luck.random() < share)], RULES)
    return progress


@pytest.mark.parametrize(("share", "one", "three"), [(0.6, 0.045, 0.129), (0.9, 0.826, 0.995)])
def test_so_many_of_the_people_who_are_driven_through_it(
    share: float, one: float, three: float
) -> None:
    """Within four standard errors, at one pass and within three."""
    luck = random.Random(f"laminate {share}")  # noqa: S311 - no secret
    reached = [practised(share, luck, runs=3) for _ in range(PEOPLE)]
    cured_in = [each.runs for each in reached if each.reached == "cured"]
    for expected, runs in ((one, 1), (three, 3)):
        error = (expected * (1 - expected) / PEOPLE) ** 0.5
        passed = sum(each <= runs for each in cured_in) / PEOPLE
        # The expected share is rounded to a tenth of a hundredth.
        assert passed == pytest.approx(expected, abs=4 * error + 0.0005)


@pytest.mark.parametrize("share", [0.5, 0.75, 0.97])
def test_so_many_of_others(share: float) -> None:
    """For other shares too the step passes as many as the binomial says."""
    luck = random.Random(f"topcoat {share}")  # noqa: S311 - no secret
    reached = [practised(share, luck, runs=1) for _ in range(PEOPLE)]
    passed = sum(each.reached == "cured" for each in reached) / PEOPLE
    error = (passes(share) * (1 - passes(share)) / PEOPLE) ** 0.5
    assert passed == pytest.approx(passes(share), abs=4 * error)


def test_somebody_always_right_is_cured_on_day_14() -> None:
    """When due, two tries each day: days 1, 3, 7 and 14 after it gelled, and seven tries."""
    progress = practised(1.0, random.Random(1), runs=1)  # noqa: S311 - no secret
    assert progress.day == date(2026, 3, 23)
    assert progress.counted == 7
    assert standing(progress, date(2026, 3, 23), RULES).state == "Cured"


def test_somebody_who_only_picks_is_never_cured() -> None:
    """Always right and without numbers for two years: three tries of the run are all there is."""
    picks = replace(told(date(2026, 3, 9), right=True), numberless=True)
    progress = after(NEVER_TRIED, [picks] * 3, RULES)
    for number in range(730):
        day = date.fromordinal(picks.day.toordinal() + number)
        progress = after(progress, [replace(picks, day=day)] * 2, RULES)
    assert (progress.reached, progress.counted) == ("gelled", 3)
