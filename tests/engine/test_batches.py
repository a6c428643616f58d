"""Batches: the time there is, what can be laid in it, and equal shares.

One litre for a beginner, two thirds of the gel time less two minutes: common practice.
"""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import (
    Refused,
    answer,
    batch_for_pace,
    equal_batches,
    line_keys,
    work,
    working_time,
)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(equal_batches) == ("limit", "batches", "batch")
    assert line_keys(working_time) == ("usable", "working")
    assert line_keys(batch_for_pace) == ("spells", "batch")


@pytest.mark.parametrize(
    ("resin", "limit", "density", "batches", "batch"),
    [
        (2.5, 1, 1.1, 3, 2.5 / 3),  # 2.27 limits
        (1.1, 1, 1.1, 1, 1.1),  # just one
        (1.101, 1, 1.1, 2, 0.5505),  # a gram over
        (3.6, 1.5, 1.2, 2, 1.8),  # 2.0000000000000004 in floats
        (8.4, 1, 1.2, 7, 1.2),  # 7.000000000000001 in floats
        (0.05, 25, 1.1, 1, 0.05),
        (24.75, 2, 1.1, 12, 2.0625),
    ],
)
def test_the_fewest_equal_batches(
    resin: float, limit: float, density: float, batches: int, batch: float
) -> None:
    """Never over the limit, never a small remainder; an exact multiple is not rounded on."""
    figures = work(equal_batches(resin, limit, density)).figures
    assert figures["batches"] == batches
    assert figures["batch"] == pytest.approx(batch)


@given(st.integers(50, 2_000_000), st.integers(1, 250), st.floats(0.95, 1.30))
def test_equal_batches_keep_under_the_limit(resin_g: int, tenths: int, density: float) -> None:
    """They add up to all the resin, none is over the limit, and one fewer would be."""
    figures = work(equal_batches(resin_g / 1000, tenths / 10, density)).figures
    batches, limit = figures["batches"], figures["limit"]
    half_a_gram = 0.0005  # the limit is taken in whole grams
    assert figures["batch"] * batches == pytest.approx(resin_g / 1000)
    assert figures["batch"] <= (limit + half_a_gram) * (1 + 1e-9)
    if batches > 1:
        assert resin_g / 1000 / (batches - 1) > limit - half_a_gram


@given(st.floats(0.05, 2000), st.floats(0.2, 25))
def test_half_the_limit_never_takes_fewer_batches(resin_kg: float, limit_l: float) -> None:
    """A smaller bucket is carried as often or oftener; more resin too."""
    batches = work(equal_batches(resin_kg, limit_l)).figures["batches"]
    assert work(equal_batches(resin_kg, limit_l / 2)).figures["batches"] >= batches
    assert work(equal_batches.inside(2 * resin_kg, limit_l)).figures["batches"] >= batches


@given(st.integers(1, 500), st.integers(1, 25))
def test_an_exact_multiple_makes_that_many(count: int, limit_l: int) -> None:
    """So many full buckets are so many batches."""
    figures = work(equal_batches.inside(count * limit_l * 1.10, limit_l)).figures
    assert figures["batches"] == count


@pytest.mark.parametrize(
    ("gel", "share", "mixing", "working"), [(21, 2 / 3, 2, 12), (30, 0.5, 3, 12), (17.5, 0.4, 2, 5)]
)
def test_working_time(gel: float, share: float, mixing: float, working: float) -> None:
    """Two thirds of 21 min are 14, less two of mixing are 12; five are just enough."""
    assert answer(working_time(gel, share, mixing)) == pytest.approx(working)


@pytest.mark.parametrize(("gel", "share", "mixing"), [(11, 0.6, 2), (17.4, 0.4, 2), (11, 0.8, 5)])
def test_too_little_time_is_refused(gel: float, share: float, mixing: float) -> None:
    """Under five minutes nobody begins: a smaller dose or another day."""
    with pytest.raises(Refused, match="smaller dose or another day"):
        work(working_time(gel, share, mixing))


@given(st.floats(11, 180), st.floats(0.4, 0.8), st.floats(0, 5))
def test_working_time_is_shorter_than_the_gel(gel: float, share: float, mixing: float) -> None:
    """It is never under five minutes, and with the mixing it is the share that was used."""
    assume(gel * share - mixing >= 5)
    working = answer(working_time(gel, share, mixing))
    assert 5 <= working < gel
    assert (working + mixing) / gel == pytest.approx(share)


def test_what_a_crew_lays_in_its_time() -> None:
    """Twelve minutes are 1.2 spells; two people at 0.8 kg a spell lay 1.92 kg."""
    assert work(batch_for_pace(12, 0.8, 2)).figures == pytest.approx({"spells": 1.2, "batch": 1.92})


@given(st.floats(5, 90), st.floats(0.1, 5), st.integers(1, 6))
def test_twice_the_time_pace_or_hands_lay_twice_as_much(
    minutes: float, pace_kg: float, people: int
) -> None:
    """What can be laid is proportional to each of them."""
    batch = answer(batch_for_pace(minutes, pace_kg, people))
    for doubled in (
        batch_for_pace(2 * minutes, pace_kg, people),
        batch_for_pace(minutes, 2 * pace_kg, people),
        batch_for_pace(minutes, pace_kg, 2 * people),
    ):
        assert answer(doubled) == pytest.approx(2 * batch)
