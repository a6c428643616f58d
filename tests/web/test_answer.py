"""An answer on its way to the records: the date it counts for, and the evidence of its mark."""

from datetime import UTC, date, datetime, timedelta

import pytest
from web_bench import Bench
from web_cast import NOW

from trainer.engine import ENGINE_VERSION
from trainer.lessons import Typed, mark_answers, variant
from trainer.records.attempts import AttemptFacts
from trainer.web.answer import AnswerTime, attempt_facts, time_of_answer
from trainer.web.shown import Shown

TODAY = date(2026, 3, 9)


def pressed(bench: Bench, **ago: float) -> AnswerTime:
    """Return when an answer counts for whose button was pressed this long ago."""
    return time_of_answer((NOW - timedelta(**ago)).isoformat(), bench.installation)


@pytest.mark.parametrize(
    ("ago", "later"),
    [
        ({"seconds": 0}, False),
        ({"seconds": 2}, False),
        ({"minutes": 5}, False),
        ({"minutes": 5, "seconds": 1}, True),
        ({"days": 7}, True),
        ({"days": 7, "seconds": 1}, False),
        ({"days": -1}, False),
        ({"seconds": -1}, False),
    ],
    ids=str,
)
def test_a_phones_time_is_believed_for_seven_days(
    tiny: Bench,
    ago: dict[str, float],
    later: bool,  # noqa: FBT001 - a case of the table above
) -> None:
    """From five minutes to seven days back it stands; a slow line is no "later"."""
    time = pressed(tiny, **ago)
    assert time.sent_later is later
    assert time.local_date == ((NOW - timedelta(**ago)).date() if later else TODAY)
    assert time.sent_at == NOW


def test_an_answer_pressed_before_midnight_counts_for_that_day(tiny: Bench) -> None:
    """Pressed at 23:58:30 and arrived at 0:02: the day is the button's, and nothing is late."""
    tiny.clock.now = datetime(2026, 3, 9, 23, 2, tzinfo=UTC)  # two past midnight in Prague
    pressed_at = datetime(2026, 3, 9, 22, 58, 30, tzinfo=UTC)
    time = time_of_answer(pressed_at.isoformat(), tiny.installation)
    assert (time.local_date, time.sent_later) == (date(2026, 3, 9), False)


def test_the_date_is_the_local_one(tiny: Bench) -> None:
    """Pressed at ten to midnight and through at half past: it counts for the day before."""
    tiny.clock.now = datetime(2026, 3, 9, 23, 30, tzinfo=UTC)
    time = time_of_answer("2026-03-09T22:50:00.000Z", tiny.installation)
    assert time == AnswerTime(tiny.clock.now, date(2026, 3, 9), sent_later=True)
    assert time_of_answer("", tiny.installation).local_date == date(2026, 3, 10)


@pytest.mark.parametrize("zone", ["Z", "+00:00", "+02:00", "-08:00"])
def test_a_phone_may_be_in_another_zone(tiny: Bench, zone: str) -> None:
    """The instant counts, whichever zone it is told in."""
    time = time_of_answer(f"2026-03-06T12:00:00{zone}", tiny.installation)
    assert (time.local_date, time.sent_later) == (date(2026, 3, 6), True)


@pytest.mark.parametrize(
    "text",
    ["", "Friday", "2026-03-06T12:00:00", "2026-03-06", "1772798400", "٢٠٢٦-03-06T12:00:00Z"],
)
def test_what_is_no_instant_counts_for_today(tiny: Bench, text: str) -> None:
    """Words, a time without a zone, a bare number."""
    assert time_of_answer(text, tiny.installation) == AnswerTime(NOW, TODAY, sent_later=False)


@pytest.mark.parametrize("text", ["0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00"])
def test_an_instant_at_the_end_of_the_calendar_counts_for_today(tiny: Bench, text: str) -> None:
    """A time that can't be turned into UTC is no time."""
    assert not time_of_answer(text, tiny.installation).sent_later


def facts(
    bench: Bench, mass: str, volume: str, *, try_no: int = 1, seen: bool = False
) -> AttemptFacts:
    """Return what is kept of an answer to 2 kg at 2 %, which is 40 g or 32 ml."""
    question = bench.library.questions["dose-chain"]
    was = Shown(7, question.id, 3, try_no, "5eed", 0, "d1ge57", seen=seen)
    drawn = variant(question, was.seed)
    mark = mark_answers(drawn, {"mass": Typed(mass), "volume": Typed(volume)}, try_no)
    time = AnswerTime(NOW, TODAY, sent_later=False)
    return attempt_facts(was, drawn, mark, time, "mixing")


def test_what_was_shown_is_kept_and_nothing_of_today(tiny: Bench) -> None:
    """Person, question, count, try, seed and digest are those of the form."""
    kept = facts(tiny, "40", "32")
    assert (kept.person_id, kept.question_id, kept.count, kept.try_no) == (7, "dose-chain", 3, 1)
    assert (kept.seed, kept.redraws, kept.source_digest) == ("5eed", 0, "d1ge57")
    assert (kept.lesson, kept.competency, kept.roof) == ("mixing", "mixing", "")
    assert kept.engine_version == ENGINE_VERSION
    assert kept.givens == {"resin_kg": 2, "percent": 2, "catalyst_kg_per_l": 1.25}


def test_a_right_answer_is_right_and_finished(tiny: Bench) -> None:
    """Both lines right, and no slip in either."""
    kept = facts(tiny, "40", "32")
    assert (kept.right, kept.finished, kept.unaided) == (True, True, True)
    assert [(each.verdict, each.slip) for each in kept.answers] == [("right", ""), ("right", "")]


def test_a_slip_stands_at_the_first_wrong_line_alone(tiny: Bench) -> None:
    """With its name and its cue; the run isn't finished."""
    kept = facts(tiny, "4", "3.2")
    assert (kept.right, kept.finished) == (False, False)
    assert [each.slip for each in kept.answers] == ["a tenth of the dose", ""]
    assert [bool(each.cue) for each in kept.answers] == [True, False]


def test_a_carried_line_keeps_what_it_was_judged_by(tiny: Bench) -> None:
    """From 30 g follow 24 ml; the right figure, 32, is kept beside it."""
    volume = facts(tiny, "30", "24").answers[1]
    assert (volume.verdict, volume.expected_value, volume.right_value) == ("carried", 24, 32)


def test_only_a_first_try_on_fresh_numbers_is_unaided(tiny: Bench) -> None:
    """A second try had a cue, and numbers that came again had their working."""
    assert facts(tiny, "40", "32").unaided
    assert not facts(tiny, "40", "32", try_no=2).unaided
    again = facts(tiny, "40", "32", seen=True)
    assert (again.unaided, again.working_shown) == (False, True)
