"""What one try says about the skills it asked for, as it comes in and as it is read back."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta, timezone

import pytest
from records_cast import ANSWER, NOW, TRY, People, record

from trainer.records.attempts import AnswerFacts, AttemptFacts
from trainer.records.database import AnySession, writing
from trainer.records.skill_tries import SkillTold, all_told, told_by

Try = Callable[..., AttemptFacts]
DAY = date(2026, 3, 9)
TOLD = SkillTold(DAY, right=True, unaided=True)


def of(skill: str, verdict: str = "right") -> AnswerFacts:
    """Return an answer to a line of that skill."""
    return replace(ANSWER, skill=skill, verdict=verdict)


#: Tries that differ in what they say, each with what that is.
SAID = [
    ({}, {"catalyst-by-mass": TOLD}),
    # Which of them say nothing.
    ({"try_no": 2}, {}),
    ({"roof": "ab12"}, {}),
    ({"answers": ()}, {}),
    # Help, and numbers.
    ({"unaided": False}, {"catalyst-by-mass": replace(TOLD, unaided=False)}),
    ({"kind": "choose"}, {"catalyst-by-mass": replace(TOLD, numberless=True)}),
    ({"kind": "order"}, {"catalyst-by-mass": replace(TOLD, numberless=True)}),
    ({"kind": "locate"}, {"catalyst-by-mass": replace(TOLD, numberless=True)}),
    # Right or wrong, each skill by its own lines.
    ({"answers": (of("a", "wrong"),), "right": False}, {"a": replace(TOLD, right=False)}),
    ({"answers": (of("a", "carried"),), "right": False}, {"a": TOLD}),
    (
        {"answers": (of("b", "wrong"), of("a", "carried")), "right": False},
        {"b": replace(TOLD, right=False), "a": TOLD},
    ),
    # A skill asked twice in one question is one try, right when both lines are.
    ({"answers": (of("a"), of("b"), of("a"))}, {"a": TOLD, "b": TOLD}),
    (
        {"answers": (of("a", "wrong"), of("a")), "right": False},
        {"a": replace(TOLD, right=False)},
    ),
    (
        {"answers": (of("a"), of("b", "wrong"), of("a", "wrong")), "right": False},
        {"a": replace(TOLD, right=False), "b": replace(TOLD, right=False)},
    ),
    # Its day.
    ({"local_date": date(2026, 3, 6)}, {"catalyst-by-mass": replace(TOLD, day=date(2026, 3, 6))}),
]


@pytest.mark.parametrize(("differs", "said"), SAID)
def test_what_a_try_says(differs: dict[str, object], said: dict[str, SkillTold]) -> None:
    """A retry and practice on a roof say nothing; else each skill is told once."""
    assert told_by(replace(TRY, **differs)) == said  # type: ignore[arg-type]


def test_skills_are_told_in_the_order_they_were_asked() -> None:
    """The first line first."""
    assert list(told_by(replace(TRY, answers=(of("m"), of("a"), of("m"))))) == ["m", "a"]


@pytest.mark.parametrize(
    ("local", "counts_for"),
    [
        (date(2026, 3, 9), date(2026, 3, 9)),
        # A zone ahead of UTC has tomorrow already; none has the day after.
        (date(2026, 3, 10), date(2026, 3, 10)),
        (date(2026, 3, 11), date(2026, 3, 10)),
        (date(2030, 1, 1), date(2026, 3, 10)),
    ],
)
def test_a_try_from_the_future_counts_when_it_came_in(local: date, counts_for: date) -> None:
    """Never later than any zone's date at that instant."""
    (told,) = told_by(replace(TRY, sent_at=NOW, local_date=local)).values()
    assert told.day == counts_for


def test_the_instant_may_be_given_in_any_zone() -> None:
    """23:15 in UTC is the day before, whatever the phone's clock shows."""
    there = datetime(2026, 3, 10, 0, 15, tzinfo=timezone(timedelta(hours=1)))
    (told,) = told_by(replace(TRY, sent_at=there, local_date=date(2026, 3, 12))).values()
    assert told.day == date(2026, 3, 10)


def test_an_instant_at_the_calendars_end_is_no_fault() -> None:
    """A server's clock may be wrong too."""
    last = datetime(9999, 12, 31, 23, 59, tzinfo=UTC)
    (told,) = told_by(replace(TRY, sent_at=last, local_date=DAY)).values()
    assert told.day == DAY


# Read back.


def test_what_is_read_back_is_what_came_in(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """For each kind of try, word for word, in the order in which they came in."""
    writing(any_session)
    expected = []
    for count, (differs, said) in enumerate(SAID):
        if differs.get("try_no") == 2:
            # A retry follows its first try.
            record(any_session, a_try(any_people.mina, count=count, right=False, finished=False))
            expected.append((any_people.mina, "catalyst-by-mass", TOLD))
        record(any_session, a_try(any_people.mina, count=count, **differs))
        expected += [(any_people.mina, skill, told) for skill, told in said.items()]
    assert list(all_told(any_session)) == expected


def test_one_person_is_told_after_another(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """Each one's tries stand together, however they came in; one person's can be asked for."""
    writing(any_session)
    mina, tom = any_people.mina, any_people.tom
    for count in range(3):
        record(any_session, a_try(tom, count=count))
        record(any_session, a_try(mina, count=count, unaided=count == 1))
    told = list(all_told(any_session))
    assert [person for person, _, _ in told] == [mina] * 3 + [tom] * 3
    assert [each.unaided for _, _, each in told] == [False, True, False, True, True, True]
    assert list(all_told(any_session, tom)) == told[3:]
    assert list(all_told(any_session, any_people.karel)) == []


def test_tries_can_be_told_up_to_one(
    any_session: AnySession, any_people: People, a_try: Try
) -> None:
    """That one is the last."""
    writing(any_session)
    kept = [
        record(any_session, a_try(any_people.mina, count=count, right=count == 0))
        for count in range(3)
    ]
    told = list(all_told(any_session, any_people.mina, up_to=kept[1].attempt_id))
    assert len(told) == 2
