"""The memory model gives the numbers of its published formulas.

Source: FSRS-6 by its open-source reference implementation for Python, `fsrs` 6.3: its README for
the 21 default weights, its scheduler for the formulas, read there and written out here anew.
Standing: published by its authors, and no standards body; how well the default weights fit people
who lay roofs nobody has measured. Nothing of the library or of ours is used in the formulas.
The tolerance of 1e-6 days leaves room for the order in which floats are multiplied, and for nothing
that would move a date.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from math import exp, isclose
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest

from trainer.lessons.library import read_library
from trainer.records.evidence import AnswerFacts, AttemptFacts
from trainer.records.reviews import Card, card_after, recall
from trainer.records.running import NEVER_TRIED, after
from trainer.records.skill_tries import told_by
from trainer.web.thresholds import thresholds_of

RULES = thresholds_of(read_library(Path(__file__).parents[2] / "content")).skills
#: The default weights, w0 to w20, as published.
W = (
    *(0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796),
    *(1.4835, 0.0614, 0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542),
)
AGAIN, GOOD = 1, 3
RETENTION, LONGEST = 0.9, 120


@dataclass(frozen=True)
class Published:
    """A memory by the formulas: days of stability, and difficulty from 1 to 10."""

    stability: float
    difficulty: float


def initial_difficulty(grade: int) -> float:
    """D0(G) = w4 - e^(w5 (G - 1)) + 1."""
    return W[4] - exp(W[5] * (grade - 1)) + 1


def first(grade: int) -> Published:
    """S0(G) = w(G-1); the difficulty is kept from 1 to 10."""
    return Published(W[grade - 1], min(max(initial_difficulty(grade), 1), 10))


def share_left(days: int, stability: float) -> float:
    """R(t, S) = (1 + factor t / S)^-w20, with the factor that makes R(S, S) nine in ten."""
    factor = 0.9 ** (-1 / W[20]) - 1
    return float((1 + factor * days / stability) ** -W[20])


def harder(difficulty: float, grade: int) -> float:
    """D' = D - w6 (G - 3) (10 - D) / 9, drawn back by w7 to the difficulty of a first Easy."""
    damped = difficulty - W[6] * (grade - 3) * (10 - difficulty) / 9
    return min(max(W[7] * initial_difficulty(4) + (1 - W[7]) * damped, 1), 10)


def after_success(memory: Published, left: float) -> float:
    """S' = S (1 + e^w8 (11 - D) S^-w9 (e^(w10 (1 - R)) - 1)), for Good."""
    gain = exp(W[8]) * (11 - memory.difficulty) * memory.stability ** -W[9]
    return float(memory.stability * (1 + gain * (exp(W[10] * (1 - left)) - 1)))


def after_lapse(memory: Published, left: float) -> float:
    """S' = w11 D^-w12 ((S + 1)^w13 - 1) e^(w14 (1 - R)), at most S / e^(w17 w18)."""
    long_term = W[11] * memory.difficulty ** -W[12] * ((memory.stability + 1) ** W[13] - 1)
    most = memory.stability / exp(W[17] * W[18])
    return float(min(long_term * exp(W[14] * (1 - left)), most))


def later(memory: Published, days: int, grade: int) -> Published:
    """The memory after another outcome, so many days on; days are whole and at least one."""
    left = share_left(days, memory.stability)
    grows = after_success if grade == GOOD else after_lapse
    return Published(grows(memory, left), harder(memory.difficulty, grade))


def interval(stability: float) -> int:
    """The days until the wanted share is left, rounded; a day at least, the longest gap at most."""
    factor = 0.9 ** (-1 / W[20]) - 1
    days = stability / factor * (RETENTION ** (-1 / W[20]) - 1)
    return min(max(round(days), 1), LONGEST)


#: Days from one outcome to the next, and whether it was right.
HISTORIES = {
    "right when due": [(0, 1), (1, 1), (2, 1), (4, 1), (7, 1), (56, 1), (120, 1)],
    "wrong first": [(0, 0), (1, 1), (1, 1), (3, 1), (9, 1)],
    "lapses in between": [(0, 1), (2, 1), (10, 0), (1, 1), (3, 0), (1, 0), (1, 1), (12, 1)],
    "never right": [(0, 0), (1, 0), (1, 0), (5, 0), (90, 0)],
    "years apart": [(0, 1), (400, 1), (900, 1), (2000, 0), (700, 1)],
}
BEGIN = date(2026, 3, 9)


@pytest.mark.parametrize("name", HISTORIES)
def test_a_fixed_history_gives_the_published_numbers(name: str) -> None:
    """Stability, difficulty and date after each outcome, and the share left on the days after."""
    card, memory, day = None, None, BEGIN
    for days, right in HISTORIES[name]:
        day += timedelta(days=days)
        grade = GOOD if right else AGAIN
        memory = first(grade) if memory is None else later(memory, days, grade)
        card = card_after(card, day, RULES, right=bool(right))
        _is(card, memory, day)


def _is(card: Card, memory: Published, day: date) -> None:
    assert isclose(card.stability, memory.stability, rel_tol=0, abs_tol=1e-6)
    assert isclose(card.difficulty, memory.difficulty, rel_tol=0, abs_tol=1e-6)
    assert (card.heard, card.due) == (day, day + timedelta(days=interval(memory.stability)))
    for days in (0, 1, 7, 30, 365, 3650):
        told = recall(card, day + timedelta(days=days), RULES)
        assert isclose(told, share_left(days, memory.stability), rel_tol=0, abs_tol=1e-6)


def test_after_as_many_days_as_its_stability_nine_in_ten_are_left() -> None:
    """What stability means, by the formula itself and by ours."""
    assert share_left(50, 50.0) == pytest.approx(0.9, abs=1e-12)
    card = Card(50.0, 5.0, BEGIN, BEGIN)
    assert recall(card, BEGIN + timedelta(days=50), RULES) == pytest.approx(0.9, abs=1e-12)


def test_the_rules_are_those_the_dates_are_worked_with() -> None:
    """Nine in ten wanted, 120 days at most."""
    assert (RULES.recall_wanted, RULES.longest_gap_days) == (RETENTION, LONGEST)


# A date decides, not an hour.

ANSWER = AnswerFacts(
    line="mass",
    skill="catalyst-dose",
    unit="g",
    tolerance="2 %",
    right_value=40.0,
    expected_value=40.0,
    typed="40",
    read_as="40 g",
    read_value=40.0,
    verdict="right",
)


def sent(instant: datetime) -> AttemptFacts:
    """Return a right try that came in at an instant, with the local date of its zone."""
    return AttemptFacts(
        person_id=1,
        question_id="batch-catalyst",
        lesson="mixing-a-batch",
        competency="mixing",
        count=0,
        try_no=1,
        seed="0",
        variant="0",
        source_digest="",
        engine_version="1",
        givens={},
        lines=[],
        sent_at=instant.astimezone(UTC),
        local_date=instant.date(),
        unaided=True,
        right=True,
        finished=True,
        answers=(ANSWER,),
    )


@pytest.mark.parametrize("zone", ["UTC", "Europe/London", "Pacific/Auckland", "Pacific/Honolulu"])
def test_ten_past_midnight_and_ten_to_make_the_same_card(zone: str) -> None:
    """Whatever the zone, over the nights when clocks change: 00:10 and 23:50 of one local date."""
    early, late = NEVER_TRIED, NEVER_TRIED
    for month, day in ((3, 9), (3, 29), (4, 5), (10, 25)):
        for hour, minute in ((0, 10), (23, 50)):
            instant = datetime(2026, month, day, hour, minute, tzinfo=ZoneInfo(zone))
            told = told_by(sent(instant)).values()
            assert {each.day for each in told} == {date(2026, month, day)}
            if hour:
                late = after(late, told, RULES)
            else:
                early = after(early, told, RULES)
    assert early.card == late.card
    assert early == late
