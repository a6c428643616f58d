"""Lessons and questions as lists show them."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

import pytest
from web_bench import Bench
from web_cast import NOW

from trainer.lessons import Lesson
from trainer.records.progress import LessonRow, QuestionRow
from trainer.web.outline import (
    is_whole,
    lesson_entries,
    lesson_states,
    question_entries,
    question_state,
    roof_parts,
)
from trainer.web.skill_standing import skill_sheets

DAY = date(2026, 3, 9)
READ = LessonRow(
    "mixing", NOW, DAY, tried=0, right=0, questions_right=0, last_seen_at=NOW, last_date=DAY
)
ANSWERED = QuestionRow(
    "drum-dose", "mixing", 1, 0, 1, ever_right=False, last_seen_at=NOW, last_date=DAY
)


@pytest.fixture(autouse=True)
def _request(tiny: Bench) -> Iterator[None]:
    """A request, for links and dates."""
    with tiny.app.test_request_context("/"):
        yield


@pytest.fixture
def mixing(tiny: Bench) -> Lesson:
    """A lesson with four questions."""
    return tiny.library.by_slug["mixing"]


def test_a_question_is_not_tried_tried_or_right() -> None:
    """A right one stays right, whatever came after."""
    assert question_state(tried=False, right=False) == "not-tried"
    assert question_state(tried=True, right=False) == "tried"
    assert question_state(tried=True, right=True) == "right"


def test_questions_keep_the_lessons_order(mixing: Lesson) -> None:
    """Each with its title, its link, and what was done on it."""
    entries = question_entries(mixing, [ANSWERED])
    assert [entry.href for entry in entries] == [
        "/questions/dose-chain",
        "/questions/drum-dose",
        "/questions/bare-chain",
        "/questions/two-slips",
    ]
    assert [entry.state for entry in entries] == ["not-tried", "tried", "not-tried", "not-tried"]
    assert [entry.row for entry in entries] == [None, ANSWERED, None, None]


def test_what_was_done_on_a_question_that_is_gone_is_left_out(mixing: Lesson) -> None:
    """The list is today's."""
    gone = replace(ANSWERED, question_id="old-dose")
    assert all(entry.row is None for entry in question_entries(mixing, [gone]))


@pytest.mark.parametrize(
    ("row", "states"),
    [
        (None, [("not-tried", "not read")]),
        (READ, [("read", "read"), ("not-tried", "0 of 4 questions right")]),
        (replace(READ, tried=2), [("read", "read"), ("tried", "0 of 4 questions right")]),
        (
            replace(READ, read_at=None, tried=2, questions_right=1),
            [("not-tried", "not read"), ("tried", "1 of 4 questions right")],
        ),
        (
            replace(READ, tried=9, questions_right=4),
            [("read", "read"), ("right", "4 of 4 questions right")],
        ),
    ],
    ids=["nothing", "read", "tried", "not read", "whole"],
)
def test_a_lessons_states_are_words(
    mixing: Lesson, row: LessonRow | None, states: list[tuple[str, str]]
) -> None:
    """Whether it was read, and how many of its questions were right once."""
    assert list(lesson_states(mixing, row)) == states


def test_a_lesson_is_whole_when_each_question_was_right_once(mixing: Lesson) -> None:
    """Three of four are not enough; a fifth, from a question that is gone, does no harm."""
    assert not is_whole(mixing, None)
    assert not is_whole(mixing, replace(READ, questions_right=3))
    assert is_whole(mixing, replace(READ, questions_right=4))
    assert is_whole(mixing, replace(READ, questions_right=5))


def test_lessons_are_shut_until_the_first_is_read(tiny: Bench) -> None:
    """An answer in the first is not a reading."""
    first = replace(READ, lesson="before-the-lid")
    links = {
        name: [entry.href for entry in lesson_entries(tiny.library, rows)]
        for name, rows in {
            "nothing": {},
            "answered": {"before-the-lid": replace(first, read_at=None)},
            "read": {"before-the-lid": first},
        }.items()
    }
    shut = ["/lessons/before-the-lid", ""]
    assert links == {
        "nothing": shut,
        "answered": shut,
        "read": ["/lessons/before-the-lid", "/lessons/mixing"],
    }


def test_a_lesson_says_how_long_it_takes_and_when_it_was_seen(tiny: Bench) -> None:
    """Minutes, and the day."""
    entries = lesson_entries(tiny.library, {"mixing": READ})
    assert [entry.more for entry in entries] == ["5 minutes", "10 minutes, last seen today"]


def test_a_part_of_the_roof_is_grey_when_its_lesson_is_whole(tiny: Bench) -> None:
    """The bucket comes in, the guard rail doesn't yet."""
    rows = {"mixing": replace(READ, questions_right=4)}
    parts = roof_parts(tiny.library, rows, skill_sheets(person_id=1))
    assert [(part.part, part.title, part.state) for part in parts] == [
        ("guard", "Working safely", "none"),
        ("bucket", "Mixing a batch", "grey"),
    ]


@pytest.mark.parametrize(
    ("states", "part"),
    [
        ({"Cured"}, "colour"),
        ({"Cured", "Set"}, "grey"),
        ({"Cured", "Due again"}, "grey"),
    ],
    ids=["all", "not all", "one is due again"],
)
def test_it_has_its_colour_while_all_of_its_skills_are_cured(
    tiny: Bench, states: set[str], part: str
) -> None:
    """One that isn't, or no longer is, leaves it grey."""
    sheets = [each for each in skill_sheets(person_id=1) if each.competency.slug == "mixing"]
    stood = [
        replace(sheets[0], standing=replace(sheets[0].standing, state=state)) for state in states
    ]
    rows = {"mixing": replace(READ, questions_right=4)}
    assert roof_parts(tiny.library, rows, stood)[1].state == part
