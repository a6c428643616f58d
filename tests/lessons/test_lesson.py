"""A lesson: front matter, prose, a worked job and questions in one file."""

import hashlib
from collections.abc import Callable
from pathlib import Path

import pytest
from lessons_specimens import (
    CHAIN,
    FILE,
    FRONT,
    NO_PICTURES,
    RESIN,
    WORKED,
    another,
    edited,
    lesson_text,
    line_of,
)

from trainer.lessons.calculate import CalculateQuestion, Variant
from trainer.lessons.errors import AuthorError
from trainer.lessons.lesson import Lesson, digest_of, question_in, read_lesson
from trainer.lessons.marks import Typed, mark_answers


def read(text: str, folder: Path = Path("nowhere")) -> Lesson:
    """Return the lesson in a text."""
    return read_lesson(text, FILE, folder)


def mistake_in(text: str, reader: Callable[[str], object] = read) -> AuthorError:
    """Return the mistake for which a lesson is refused."""
    with pytest.raises(AuthorError) as refused:
        reader(text)
    assert refused.value.file == FILE
    return refused.value


def test_front_matter_is_read() -> None:
    """What stands between the lines of +++ are the lesson's own facts."""
    lesson = read(lesson_text())
    assert (lesson.slug, lesson.title, lesson.competency) == ("shed", "The coal shed", "bandaging")
    assert (lesson.minutes, lesson.order, lesson.cautions) == (10, 1, ("eyes", "height"))
    assert lesson.scenario.startswith("A coal shed,")


def test_prose_stands_before_and_after_the_worked_job(content: Path) -> None:
    """The opening and the closing, neither with a block in it."""
    lesson = read(lesson_text(), content)
    assert "The cloud is coming up" in lesson.opening
    assert "Now you." in lesson.closing
    assert "Now you." not in lesson.opening
    assert not any("calculate" in part for part in (lesson.opening, lesson.closing))
    assert lesson.pictures == ("pictures/shed-strip.svg", "pictures/shed-wrong.svg")
    assert "<title" in lesson.opening


def test_a_worked_job_is_worked() -> None:
    """4 m of joint at 450 g/m² takes 371.25 g of resin, line by line."""
    worked = read(lesson_text()).worked
    assert worked is not None
    assert worked.title == "The shed's own joint"
    assert worked.text.replace("\u00a0", " ") == "The joint is 4 m long."
    assert worked.working.value == pytest.approx(0.37125)
    assert [line.key for line in worked.working.lines][-2:] == ["net", "resin"]


def test_questions_keep_their_order() -> None:
    """As they stand in the file, each knowing its lesson."""
    questions = read(lesson_text()).questions
    assert [question.id for question in questions] == [
        "shed-resin",
        "shed-resin-b",
        "shed-resin-c",
        "shed-resin-d",
        "shed-chain",
    ]
    assert {question.lesson for question in questions} == {"shed"}


def test_a_digest_is_the_texts_own() -> None:
    """It is the SHA-256 of the UTF-8 text, and a comma more is another."""
    text = lesson_text()
    assert read(text).digest == digest_of(text) == hashlib.sha256(text.encode()).hexdigest()
    assert read(text.replace("Now you.", "Now, you.")).digest != digest_of(text)


@pytest.mark.parametrize(
    ("text", "sentence", "mend"),
    [
        (
            "# The coal shed\n",
            "A lesson begins with a line of +++.",
            "Put the front matter between two lines of +++.",
        ),
        (
            "",
            "A lesson begins with a line of +++.",
            "Put the front matter between two lines of +++.",
        ),
        (
            '+++\nslug = "shed"\n\nProse.\n',
            "The front matter isn't closed.",
            "End it with a line of +++.",
        ),
    ],
)
def test_front_matter_must_stand_there(text: str, sentence: str, mend: str) -> None:
    """A file without it is no lesson."""
    mistake = mistake_in(text)
    assert (mistake.line, mistake.sentence, mistake.mend) == (1, sentence, mend)


@pytest.mark.parametrize(
    ("old", "new", "sentence", "mend"),
    [
        (
            "minutes = 10",
            "minuets = 10",
            "A lesson's front matter has no key 'minuets'.",
            "Did you mean 'minutes'?",
        ),
        ("minutes = 10", 'minutes = "10"', "'minutes' must be a whole number.", ""),
        ("order = 1", "order = 1.5", "'order' must be a whole number.", ""),
        (
            'cautions = ["eyes", "height"]',
            'cautions = "eyes"',
            "'cautions' must be a list.",
            "",
        ),
        (
            'cautions = ["eyes", "height"]',
            'cautions = ["eyes", 1]',
            "'cautions' must be a list of texts in quotes.",
            "",
        ),
    ],
)
def test_mistakes_in_front_matter_point_at_their_line(
    old: str, new: str, sentence: str, mend: str
) -> None:
    """Line, text and a guess, as in a question."""
    text = lesson_text(front=edited(FRONT, old, new))
    mistake = mistake_in(text)
    assert (mistake.sentence, mistake.mend) == (sentence, mend)
    assert (mistake.line, mistake.text) == (line_of(text, new), new)


@pytest.mark.parametrize(
    "key", ["slug", "title", "competency", "minutes", "order", "scenario", "cautions"]
)
def test_front_matter_is_whole(key: str) -> None:
    """Every key is needed."""
    (line,) = [each for each in FRONT.splitlines() if each.startswith(f"{key} =")]
    mistake = mistake_in(lesson_text(front=edited(FRONT, line + "\n", "")))
    assert (mistake.sentence, mistake.line) == (f"A lesson has no '{key}'.", 2)


def test_broken_toml_in_front_matter_stops_at_its_line() -> None:
    """The line is the file's."""
    text = lesson_text(front=edited(FRONT, 'title = "The coal shed"', 'title = "The coal shed'))
    mistake = mistake_in(text)
    assert mistake.sentence.startswith("This is not TOML:")
    assert (mistake.line, mistake.text) == (3, 'title = "The coal shed')


@pytest.mark.parametrize(
    "reader", [read, lambda text: question_in(text, FILE, "shed-second", NO_PICTURES)]
)
def test_broken_toml_in_a_question_stops_at_its_line(reader: Callable[[str], object]) -> None:
    """Far down in the file, in the second question, on the page and in marking alike."""
    broken = edited(another(RESIN, "shed-second"), 'unit = "g"', "unit = g")
    text = lesson_text(RESIN, broken)
    mistake = mistake_in(text, reader)
    assert mistake.sentence.startswith("This is not TOML:")
    assert (mistake.line, mistake.text) == (line_of(text, "unit = g\n"), "unit = g")


@pytest.mark.parametrize(
    "reader", [read, lambda text: question_in(text, FILE, "shed-second", NO_PICTURES)]
)
def test_a_mistake_in_a_question_has_the_files_line(reader: Callable[[str], object]) -> None:
    """Whether the page is drawn or only its questions are read."""
    wrong = edited(another(CHAIN, "shed-second"), "safe = [0.5, 1.5]", "safe = [2, 3]")
    text = lesson_text(RESIN, wrong)
    assert mistake_in(text, reader).line == line_of(text, "safe = [2, 3]")


def test_an_unclosed_block_stops_a_lesson() -> None:
    """At the line that opens the last block."""
    text = lesson_text(RESIN).rstrip().removesuffix("```")
    mistake = mistake_in(text)
    assert mistake.sentence == "This question block isn't closed."
    assert (mistake.line, mistake.text) == (line_of(text, "```question"), "```question")


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ("title =", "titel =", "A worked job has no key 'titel'."),
        ("given.length_m = 4", "given.length_m = 900", "The length of bandage is 900 m"),
        ("given.length_m", "given.length", "'resin_for_bandage' takes no 'length'."),
        ("{length_m}", "{length}", "Nothing fills {length}."),
        ('"resin_for_bandage"', '"resin_for_bandag"', "There is no calculation"),
    ],
)
def test_a_worked_job_is_checked_like_a_question(old: str, new: str, sentence: str) -> None:
    """Each mistake stops at its line."""
    text = lesson_text(worked=edited(WORKED, old, new))
    mistake = mistake_in(text)
    assert mistake.sentence.startswith(sentence)
    assert mistake.line == line_of(text, new if new != "titel =" else "titel")


def test_a_lesson_has_one_worked_job() -> None:
    """The second one is a mistake."""
    text = lesson_text(RESIN) + f"\n```worked\n{WORKED}```\n"
    mistake = mistake_in(text)
    assert mistake.sentence == "A lesson has one worked job, and this is the second."
    assert mistake.line == text[: text.rindex("```worked")].count("\n") + 2


def test_a_lesson_may_lack_a_worked_job() -> None:
    """Reading goes through; the check says what is missing."""
    text = lesson_text(RESIN).replace(f"```worked\n{WORKED}```\n", "")
    assert read(text).worked is None


def test_a_question_in_a_text_is_the_lessons_own() -> None:
    """Marking needs no page: the same questions are read from the text alone."""
    text = lesson_text()
    for question in read(text).questions:
        assert question_in(text, FILE, question.id, NO_PICTURES) == question
    assert question_in(text, FILE, "never-asked", NO_PICTURES) is None


def test_another_question_cannot_stand_in_the_way() -> None:
    """A question is read from an old text though its neighbour breaks a rule of today's."""
    odd = edited(another(CHAIN, "shed-second"), "safe = [0.5, 1.5]", "safe = [2, 3]")
    assert question_in(lesson_text(RESIN, odd), FILE, "shed-resin", NO_PICTURES) is not None


def test_an_answer_is_marked_by_the_text_that_was_shown() -> None:
    """The lesson asks 10 % on top today; whoever saw 30 % is marked by 30 %."""
    today = lesson_text(RESIN)
    shown = edited(today, RESIN, RESIN.replace("allowance_percent = 10", "allowance_percent = 30"))
    rights = {}
    for name, text, percent in (("today", today, 10), ("shown", shown, 30)):
        question = _asked(text)
        givens = {
            "length_m": 4.0,
            "mat_g_per_m2": 450,
            "ratio": 2.5,
            "allowance_percent": percent,
        }
        mark = mark_answers(Variant(question, "seed", 0, givens), {"resin": Typed("438.75")}, 1)
        rights[name] = mark.right
    # 337.5 g and 30 % are 438.75 g.
    assert rights == {"today": False, "shown": True}


def test_a_changed_slip_is_not_named_to_who_saw_the_old_one() -> None:
    """Names and cues come from the text that was shown, too."""
    shown = lesson_text(RESIN)
    changed = edited(
        shown, '[[slips]]\nname = "the whole roll, not the strip"', "[[slips]]\nname = '!'"
    )
    givens = {"length_m": 4.0, "mat_g_per_m2": 450, "ratio": 2.5, "allowance_percent": 10}
    names = []
    for text in (shown, changed):
        drawn = Variant(_asked(text), "seed", 0, givens)
        slip = mark_answers(drawn, {"resin": Typed("4950")}, 1).slip
        names.append(slip and slip.name)
    assert names == ["the whole roll, not the strip", "!"]


def _asked(text: str) -> CalculateQuestion:
    question = question_in(text, FILE, "shed-resin", NO_PICTURES)
    assert isinstance(question, CalculateQuestion)
    return question
