"""What fades before a season, and in which order it is refreshed."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from records_cast import RULES, SEASONS
from skills_cast import CURED, DAY_0, on, went

from trainer.records.refresher import (
    Outlook,
    SkillFacts,
    band_of,
    open_number,
    outlook_of,
    refresher_list,
    tells_of_its_skill,
    weak_skills,
)
from trainer.records.running import NEVER_TRIED, Progress

GELLED = went((0, "rrr"))
FALL = SkillFacts("fall", weight=1, safety_critical=False)
EYES = SkillFacts("eyes", weight=1, safety_critical=True)
START = date(2026, 3, 9)


def seen(skill: str, recall: float, *, weight: float = 1, safety: bool = False) -> Outlook:
    """A skill that somebody had, with how likely it is there on the start."""
    band = band_of(recall, SEASONS, safety_critical=safety)
    return Outlook(SkillFacts(skill, weight, safety), recall, band)


def band(progress: Progress, days: int, facts: SkillFacts = FALL) -> str:
    """The band of a skill so many days after the Monday."""
    return outlook_of(facts, progress, on(days), RULES, SEASONS).band


@pytest.mark.parametrize("progress", [NEVER_TRIED, went((0, "w")), went((0, "rr"))])
def test_what_never_gelled_is_not_refreshed(progress: Progress) -> None:
    """It belongs to the lessons, or to practice."""
    assert band(progress, 200) == "not learnt yet"
    assert not outlook_of(FALL, progress, on(200), RULES, SEASONS).is_listed


def test_what_was_learnt_fades_with_the_days() -> None:
    """It holds, then fades, then is gone."""
    bands = [band(GELLED, days) for days in range(0, 400, 2)]
    assert bands[0] == "holds"
    assert bands[-1] == "gone"
    assert sorted(bands, key=["holds", "fading", "gone"].index) == bands
    assert "fading" in bands


def test_what_hurts_somebody_fades_sooner() -> None:
    """It is held to nine in ten, all else to 85 in a hundred."""
    assert [band_of(0.87, SEASONS, safety_critical=each) for each in (True, False)] == [
        "fading",
        "holds",
    ]


@pytest.mark.parametrize(
    ("recall", "told"),
    [(1.0, "holds"), (0.85, "holds"), (0.8499, "fading"), (0.6, "fading"), (0.5999, "gone")],
)
def test_a_band_begins_at_its_bar(recall: float, told: str) -> None:
    """And not a hair below it."""
    assert band_of(recall, SEASONS, safety_critical=False) == told


def test_a_clock_set_back_makes_nobody_forget() -> None:
    """Looked at on a day before the last answer, it is all there."""
    assert outlook_of(FALL, went(*CURED), DAY_0 - timedelta(days=300), RULES, SEASONS).recall == 1.0


def test_what_a_wrong_clock_put_ahead_is_put_back() -> None:
    """Two years ahead it would hold for ever; seen from today it fades as it should."""
    ahead = went((700, "rrr"))
    kept = outlook_of(FALL, ahead, on(200), RULES, SEASONS)
    mended = outlook_of(FALL, ahead, on(200), RULES, SEASONS, on(0))
    assert (kept.band, mended.band) == ("holds", band(GELLED, 200))


def test_a_run_that_failed_is_still_refreshed() -> None:
    """Gelled once is learnt once."""
    failed = went((0, "rrr"), (1, "ww"), (3, "w"))
    assert failed.runs == 2
    assert band(failed, 200) == "gone"


def test_safety_comes_first_then_weight_times_what_is_missing() -> None:
    """A heavy skill half gone before a light one quite gone."""
    listed = refresher_list(
        [
            seen("light", 0.2, weight=1),
            seen("heavy", 0.5, weight=2),
            seen("holds", 0.95),
            seen("safe", 0.89, safety=True),
            seen("safer", 0.3, safety=True),
        ]
    )
    assert [each.facts.skill for each in listed] == ["safer", "safe", "heavy", "light"]


@pytest.mark.parametrize(
    ("days", "number"),
    [(-29, None), (-28, 1), (-11, 1), (-10, 2), (0, 2), (16, 2), (17, 3), (45, 3), (46, None)],
)
def test_one_sitting_is_open_at_a_time(days: int, number: int | None) -> None:
    """From its date to the next one's; the last for four weeks."""
    assert open_number(START, START + timedelta(days=days), SEASONS) == number


def test_an_answer_meets_a_prediction_where_it_tells_of_one_skill() -> None:
    """Not on a question of two skills, nor on what an earlier turn has asked already."""
    turns = [
        ("fall", ["fall"]),
        ("dose", ["dose", "mark"]),
        ("mark", ["mark"]),
        ("eyes", ["eyes", "eyes"]),
        ("fall", ["fall"]),
    ]
    assert tells_of_its_skill(turns) == [True, False, False, True, False]


def test_the_crew_is_weak_where_more_than_half_of_those_who_had_it_are() -> None:
    """Two of three; one of two isn't, nor one alone, nor whom it was never taught."""
    had = {"weak": (0.2, 0.4, 0.99), "half": (0.2, 0.99), "one's own": (0.1,)}
    crew = [
        [seen(skill, shares[person]) for skill, shares in had.items() if person < len(shares)]
        for person in range(3)
    ]
    never = replace(seen("weak", 0.0), band="not learnt yet")
    assert weak_skills([*crew, [never]]) == [("weak", 2, 3)]
