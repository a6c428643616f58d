"""The real content, walked through as a trainee would meet it and as its authors promised it."""

import re
from collections import Counter
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from trainer.engine.slips import figure_at
from trainer.engine.units import show
from trainer.lessons import (
    CalculateQuestion,
    Lesson,
    Mark,
    Slip,
    Typed,
    Variant,
    check_content,
    fresh_variant,
    mark_answers,
    question_in,
    read_library,
    variant,
)
from trainer.lessons.sentences import sentences_on, words_of

CONTENT = Path(__file__).resolve().parent.parent / "content"
LIBRARY = read_library(CONTENT)
LESSONS = [pytest.param(lesson, id=lesson.slug) for lesson in LIBRARY.lessons]
SUMS = [question for lesson in LIBRARY.lessons for question in lesson.sums]
QUESTIONS = [pytest.param(question, id=question.id) for question in SUMS]
LONGEST_SENTENCE = 25
LONGEST_MEAN = 14


# What is read.


def test_the_check_finds_nothing() -> None:
    """Each question was worked 500 times, and no slip is lost or too close."""
    _, mistakes = check_content(CONTENT)
    assert [str(mistake) for mistake in mistakes] == []


def test_a_lesson_is_named_by_its_file_and_its_place() -> None:
    """04-taping-open-joints.md is the fourth lesson, and no two have the same place."""
    for lesson in LIBRARY.lessons:
        assert lesson.file == f"content/lessons/{lesson.order:02}-{lesson.slug}.md"
    assert max(Counter(lesson.order for lesson in LIBRARY.lessons).values()) == 1


def test_safety_comes_first() -> None:
    """The lesson that is read before any other opens is the one about fire and eyes."""
    assert LIBRARY.first.competency == "safety"
    assert LIBRARY.first.order == 1


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_lesson_has_its_parts(lesson: Lesson) -> None:
    """A scenario, cautions, a decision, right and wrong, a worked job, pictures, questions."""
    assert lesson.scenario.endswith((".", "?"))
    assert 5 <= lesson.minutes <= 30
    assert lesson.worked is not None
    assert len(lesson.questions) >= 5
    assert len(set(lesson.pictures)) >= 2
    assert lesson.cautions
    for kind in ("caution", "decide", "right", "wrong"):
        assert re.search(rf"^!!! {kind} \"", lesson.text, re.MULTILINE), f"no {kind}"


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_lesson_can_be_read_in_one_sitting(lesson: Lesson) -> None:
    """It has 700 to 1100 words of prose, captions not counted."""
    words = sum(map(words_of, prose_of(lesson)))
    assert 700 <= words <= 1100


@pytest.mark.parametrize("lesson", LESSONS)
def test_a_worked_job_has_its_figures_in_words(lesson: Lesson) -> None:
    """No placeholder is left over, and every line can be read out."""
    assert lesson.worked is not None
    assert "{" not in lesson.worked.text
    for line in lesson.worked.working.lines:
        assert " = " in line.shown()


@pytest.mark.parametrize("lesson", LESSONS)
def test_marking_reads_the_same_questions(lesson: Lesson) -> None:
    """The text alone, without its page, holds the questions that are shown."""
    for question in lesson.questions:
        assert question_in(lesson.text, lesson.file, question.id, CONTENT) == question


# What is answered.


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_right_answer_is_right(question: CalculateQuestion) -> None:
    """Whoever types what the working shows, in the asked unit and rounded as printed, is right."""
    for drawn in some_variants(question):
        mark = mark_answers(drawn, right_answers(drawn), try_no=1)
        assert [answer.verdict for answer in mark.answers] == ["right"] * len(question.asks)
        assert (mark.right, mark.finished, mark.may_retry) == (True, True, False)


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_slip_gets_its_name_its_cue_and_one_retry(question: CalculateQuestion) -> None:
    """Whoever makes it on numbers of their own is told so, in nearly every draw."""
    drawn_many = some_variants(question, 8)
    for slip in question.slips:
        named = [mark for drawn in drawn_many if (mark := slipped(drawn, slip))]
        assert len(named) >= len(drawn_many) / 2, slip.name


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_slip_on_the_second_try_gets_the_working(question: CalculateQuestion) -> None:
    """One retry, and no more."""
    for drawn in some_variants(question, 2):
        for slip in question.slips:
            assert slipped(drawn, slip, try_no=2) is None


@pytest.mark.parametrize("question", QUESTIONS)
def test_wrong_at_random_gets_the_working(question: CalculateQuestion) -> None:
    """A figure that comes from nowhere is no slip: the first line is wrong and the run is over."""
    for drawn in some_variants(question):
        first = question.asks[0]
        right = drawn.working().figures[first.line]
        typed = Typed(f"{first.in_asked_unit(right) * 1.618034 + 7:.3f}", first.unit)
        mark = mark_answers(drawn, {**right_answers(drawn), first.line: typed}, try_no=1)
        assert (mark.wrong_line, mark.slip) == (first.line, None)
        assert (mark.right, mark.finished, mark.may_retry) == (False, True, False)


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_question_has_twenty_variants(question: CalculateQuestion) -> None:
    """Enough that nobody learns the figures instead of the way."""
    assert len({variant(question, f"person-{n}").key for n in range(500)}) >= 20


@pytest.mark.parametrize("question", QUESTIONS)
def test_an_answer_has_a_sensible_size(question: CalculateQuestion) -> None:
    """Nobody is asked for 0.0371 kg, nor for 48 000 mm."""
    for drawn in some_variants(question):
        for ask in question.asks:
            size = abs(ask.in_asked_unit(drawn.working().figures[ask.line]))
            assert 0.01 <= size < 50_000, f"{size:g} {ask.unit}"


@pytest.mark.parametrize("question", QUESTIONS)
def test_a_cue_asks_and_gives_nothing_away(question: CalculateQuestion) -> None:
    """It is a question; the name of a slip is a phrase, in small letters, without a full stop."""
    for slip in question.slips:
        assert slip.cue.endswith("?")
        assert not slip.name.endswith((".", "?"))
    per_line = Counter((slip.name, slip.on) for slip in question.slips)
    assert max(per_line.values()) == 1


# What is covered.


def test_every_skill_is_asked() -> None:
    """A skill that no question asks could never be cured."""
    asked = {ask.skill for question in SUMS for ask in question.asks}
    assert sorted(set(LIBRARY.competencies.skills) - asked) == []


def test_every_competency_has_a_lesson() -> None:
    """What is signed for is taught."""
    taught = {lesson.competency for lesson in LIBRARY.lessons}
    assert sorted(set(LIBRARY.by_competency) - taught) == []


def test_there_are_chained_questions() -> None:
    """At least three, and each asks two to five lines."""
    chains = [each for each in SUMS if len(each.asks) > 1]
    assert len(chains) >= 3
    assert {len(chain.asks) for chain in chains} <= {2, 3, 4, 5}


def test_every_caution_is_named() -> None:
    """One that no lesson carries would warn nobody."""
    named = {caution for lesson in LIBRARY.lessons for caution in lesson.cautions}
    assert sorted(set(LIBRARY.cautions) - named) == []


def test_every_picture_is_used() -> None:
    """A drawing that no lesson shows isn't kept."""
    used = {picture for lesson in LIBRARY.lessons for picture in lesson.pictures}
    drawn = {f"pictures/{file.name}" for file in (CONTENT / "pictures").iterdir()}
    assert sorted(drawn ^ used) == []


@pytest.mark.parametrize("file", sorted((CONTENT / "pictures").glob("*.svg")), ids=lambda f: f.stem)
def test_a_picture_says_what_it_shows(file: Path) -> None:
    """Its title and description are words, and are what it is labelled by."""
    root = ET.fromstring(file.read_text("utf-8"))  # noqa: S314 - our own drawing
    assert root.get("role") == "img"
    named = {element.get("id"): "".join(element.itertext()).strip() for element in root.iter()}
    by = (root.get("aria-labelledby") or "").split()
    assert by == [f"{file.stem}-t", f"{file.stem}-d"]
    assert all(len(named[each].split()) >= least for each, least in zip(by, (2, 5), strict=True))


# What the walk leans on.


def prose_of(lesson: Lesson) -> list[str]:
    """Return the sentences of a lesson's page, captions left out."""
    return sentences_on(lesson.opening + lesson.closing, captions=False)


def some_variants(question: CalculateQuestion, many: int = 3) -> list[Variant]:
    """Return fair variants of a question, as several people would meet it."""
    drawn = (fresh_variant(question, f"person-{number}") for number in range(many))
    return [each for each in drawn if each is not None]


def right_answers(drawn: Variant) -> dict[str, Typed]:
    """Return what somebody types who copies the working, each line in the asked unit."""
    figures = drawn.working().figures
    return {
        ask.line: Typed(show(ask.in_asked_unit(figures[ask.line]), ask.unit))
        for ask in drawn.question.asks
    }


def slipped(drawn: Variant, slip: Slip, try_no: int = 1) -> Mark | None:
    """Return the mark that names a slip and gives one retry, or None where none does.

    The slip is made at each line that it belongs to in turn, with the lines above right.
    """
    question = drawn.question
    for ask in question.asks:
        if slip not in question.slips_at(ask):
            continue
        figure = figure_at(ask.line, slip.change, question.method, drawn.givens, {})
        if figure is None:
            continue
        typed = Typed(f"{ask.in_asked_unit(figure):.9f}", ask.unit)
        mark = mark_answers(drawn, {**right_answers(drawn), ask.line: typed}, try_no)
        if mark.slip == slip and mark.may_retry and not mark.finished:
            return mark
    return None
