"""Which stage of the fading somebody is at, from their tries alone."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import pytest
from records_cast import ANSWER, NOW, RULES, People, record

from trainer.records.attempts import AttemptFacts
from trainer.records.database import AnySession, writing
from trainer.records.fading import LAST_STAGE
from trainer.records.running import NEVER_TRIED, after
from trainer.records.skill_tries import SkillTold
from trainer.records.skills import stage_of

Try = Callable[..., AttemptFacts]

MONDAY = date(2026, 3, 2)


def tries(course: str, *, day: int = 0) -> list[SkillTold]:
    """Return tries on one day: r and w with help, R and W without."""
    on = MONDAY + timedelta(days=day)
    return [SkillTold(on, right=each in "rR", unaided=each.isupper()) for each in course]


def after_all(told: list[SkillTold]) -> int:
    """Return the stage that these tries lead to."""
    return after(NEVER_TRIED, told, RULES).fading.stage


@pytest.mark.parametrize(
    ("course", "stage"),
    [
        ("", 0),
        ("r", 1),
        ("rr", 2),
        ("rrr", 3),
        ("rrrr", 3),
        ("w", 0),
        ("ww", 0),
        ("rrw", 2),
        ("rrww", 1),
        ("rrwww", 1),
        ("rrwwww", 0),
        ("rrwrw", 3),
        ("rrrWW", 2),
    ],
)
def test_one_on_after_a_right_try_and_one_back_after_two_wrong_running(
    course: str, stage: int
) -> None:
    """A single wrong one leaves it as it is; two more wrong lead back once more."""
    assert after_all(tries(course)) == stage


def test_two_rights_alone_at_the_first_meeting_skip_the_fading() -> None:
    """Whoever can do it isn't led by the hand."""
    assert after_all(tries("RR")) == LAST_STAGE
    assert after_all(tries("RwR")) == LAST_STAGE
    assert after_all(tries("R")) == 1


def test_on_a_later_day_each_leads_one_on() -> None:
    """The first meeting is over."""
    assert after_all(tries("R") + tries("R", day=1)) == 2
    assert after_all(tries("w") + tries("RR", day=1)) == 2


def test_who_skipped_it_can_still_be_led_back() -> None:
    """Two wrong running bring two lines back."""
    assert after_all(tries("RR") + tries("WW", day=1)) == LAST_STAGE - 1


# From the records.

WRONG = replace(ANSWER, verdict="wrong")
SKILL = ANSWER.skill


def stage(session: AnySession, person_id: int) -> int:
    """Return the stage of somebody at the one skill."""
    return stage_of(session, person_id, SKILL)


def test_nobody_has_begun_before_their_first_try(
    any_session: AnySession, any_people: People
) -> None:
    """The full working is shown."""
    assert stage(any_session, any_people.mina) == 0


def test_first_tries_at_sums_lead_on(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Two helped and right, at any question of the skill, in the order that they were sent."""
    writing(any_session)
    mina = any_people.mina
    record(any_session, a_try(mina, unaided=False, stage=0))
    later = {"sent_at": NOW + timedelta(minutes=5), "unaided": False, "stage": 1}
    record(any_session, a_try(mina, question_id="syringe-mark", **later))
    assert stage(any_session, mina) == 2
    assert stage(any_session, any_people.tom) == 0


def test_a_line_that_is_wrong_makes_its_skills_try_wrong(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Though another line of the same skill was right; twice running leads back."""
    writing(any_session)
    mina = any_people.mina
    record(any_session, a_try(mina))
    for count in (1, 2):
        sent_at = NOW + timedelta(days=count)
        answers = (replace(ANSWER, line="mass"), WRONG)
        record(any_session, a_try(mina, count=count, sent_at=sent_at, answers=answers))
    assert stage(any_session, mina) == 0


@pytest.mark.parametrize(
    "other",
    [
        {"roof": "ab12"},
        {"kind": "choose"},
        {"answers": (replace(ANSWER, skill="another"),)},
    ],
)
def test_what_is_no_sum_of_a_lesson_leaves_it_as_it_is(
    any_session: AnySession, any_people: People, a_try: Try, other: dict[str, object]
) -> None:
    """Practice on a roof, what is only picked, and other skills."""
    writing(any_session)
    record(any_session, a_try(any_people.mina, **other))
    assert stage(any_session, any_people.mina) == 0


def test_a_second_try_leads_nobody_on(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """It came after a cue."""
    writing(any_session)
    mina = any_people.mina
    record(any_session, a_try(mina, right=False, finished=False, answers=(WRONG,)))
    record(any_session, a_try(mina, try_no=2, unaided=False))
    assert stage(any_session, mina) == 0
