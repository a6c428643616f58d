"""Mistakes that show only when all files are seen together."""

from pathlib import Path

import pytest
from lessons_specimens import CHAIN, FILE, FRONT, RESIN, another, edited, lesson_text, line_of

from trainer.lessons.crosscheck import picture_mistakes, repeated, unknown_names
from trainer.lessons.errors import AuthorError
from trainer.lessons.lesson import Lesson, read_lesson

SKILLS = ("bandage-glass", "resin-for-mat")
OTHER = "content/lessons/02-corners.md"


def lesson(text: str, file: str = FILE) -> Lesson:
    """Return the lesson in a text, with no picture drawn."""
    return read_lesson(text, file, Path("nowhere"))


def unknown(text: str) -> list[AuthorError]:
    """Return the names in a lesson that no file has."""
    return list(unknown_names(lesson(text), ["bandaging"], SKILLS, ["eyes", "height"]))


def test_a_sound_lesson_has_no_mistakes(content: Path) -> None:
    """Its names are known, its ids are its own, and its pictures are drawings."""
    text = lesson_text()
    assert unknown(text) == []
    assert list(repeated([lesson(text)])) == []
    assert list(picture_mistakes(lesson(text), content)) == []


def test_an_id_twice_in_one_lesson_is_refused() -> None:
    """It points at the second."""
    text = lesson_text(RESIN, another(CHAIN, "shed-resin"))
    (mistake,) = repeated([lesson(text)])
    assert mistake.sentence == "Question 'shed-resin' stands here too."
    assert mistake.mend == "An id is used once for all time."
    assert mistake.line == text[: text.rindex('id = "shed-resin"')].count("\n") + 1
    assert mistake.text == 'id = "shed-resin"'


def test_an_id_in_two_lessons_is_refused() -> None:
    """It points into the second lesson, and names the first."""
    text = lesson_text(RESIN, front=edited(FRONT, 'slug = "shed"', 'slug = "corners"'))
    (mistake,) = repeated([lesson(lesson_text()), lesson(text, OTHER)])
    assert mistake.sentence == f"Question 'shed-resin' stands in {FILE} too."
    assert (mistake.file, mistake.line) == (OTHER, line_of(text, 'id = "shed-resin"'))


def test_a_slug_in_two_lessons_is_refused() -> None:
    """A lesson's address is its own."""
    text = lesson_text(another(RESIN, "corners-resin"))
    (mistake,) = repeated([lesson(lesson_text()), lesson(text, OTHER)])
    assert mistake.sentence == f"Lesson 'shed' stands in {FILE} too."
    assert (mistake.file, mistake.line, mistake.text) == (OTHER, 2, 'slug = "shed"')


@pytest.mark.parametrize(
    ("old", "new", "sentence", "mend"),
    [
        (
            'competency = "bandaging"',
            'competency = "bandage"',
            "There is no competency 'bandage'.",
            "Did you mean 'bandaging'?",
        ),
        (
            'skill = "bandage-glass"',
            'skill = "bandage-glas"',
            "There is no skill 'bandage-glas'.",
            "Did you mean 'bandage-glass'?",
        ),
        (
            'cautions = ["eyes", "height"]',
            'cautions = ["eyes", "hights"]',
            "There is no caution 'hights'.",
            "Did you mean 'height'?",
        ),
        (
            'cautions = ["eyes", "height"]',
            'cautions = ["eyes", "qqq"]',
            "There is no caution 'qqq'.",
            "Known here: eyes, height.",
        ),
    ],
)
def test_a_name_that_no_file_has(old: str, new: str, sentence: str, mend: str) -> None:
    """Competency, skill and caution are each looked up, with a guess."""
    text = edited(lesson_text(), old, new)
    (mistake,) = unknown(text)
    assert (mistake.sentence, mistake.mend) == (sentence, mend)
    assert (mistake.line, mistake.text) == (line_of(text, new), new)


def test_a_skill_is_found_where_it_is_asked() -> None:
    """A question of the same name above it isn't taken for the place."""
    text = lesson_text(another(RESIN, "patching"), edited(CHAIN, '"bandage-glass"', '"patching"'))
    (mistake,) = unknown(text)
    assert mistake.line == line_of(text, 'skill = "patching"')


def test_a_missing_picture_gets_a_guess(content: Path) -> None:
    """The nearest picture that is there."""
    text = edited(lesson_text(), "pictures/shed-wrong.svg", "pictures/shed-wrnog.svg")
    (mistake,) = picture_mistakes(lesson(text), content)
    assert mistake.sentence == "The picture 'pictures/shed-wrnog.svg' is missing."
    assert mistake.mend == "Did you mean 'pictures/shed-wrong.svg'?"
    assert (mistake.file, mistake.line) == (FILE, line_of(text, "![The strip lies off"))


def test_a_photograph_is_no_picture(content: Path) -> None:
    """Pictures are drawings of our own; a file that is there but is none doesn't help."""
    (content / "pictures/shed-wrong.png").write_bytes(b"\x89PNG")
    text = edited(lesson_text(), "shed-wrong.svg", "shed-wrong.png")
    assert [mistake.mend for mistake in picture_mistakes(lesson(text), content)] == [
        "Did you mean 'pictures/shed-wrong.svg'?"
    ]


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ("<path ", "<script>1</script><path ", "A picture carries no scripts, styles or pixels."),
        ("<path ", "<style>a{}</style><path ", "A picture carries no scripts, styles or pixels."),
        ("<path ", "<image/><path ", "A picture carries no scripts, styles or pixels."),
        ("<path ", '<path style="fill:red" ', "A picture carries no scripts, styles or pixels."),
        ("<path ", '<path onclick="1" ', "A picture carries no scripts, styles or pixels."),
        ("<path ", '<path id="strip" ', "A picture's ids begin with its own name."),
        ("<path ", '<a href="http://example.org"/><path ', "A picture carries no links."),
        ('<title id="shed-wrong-t">A strip</title>', "", "A picture has a title."),
        (
            '<desc id="shed-wrong-d">A strip over a joint.</desc>',
            "",
            "A picture has a description.",
        ),
    ],
)
def test_what_a_picture_may_not_be(content: Path, old: str, new: str, sentence: str) -> None:
    """Pictures share a page with its policy and with each other, and are read aloud."""
    file = content / "pictures/shed-wrong.svg"
    file.write_text(edited(file.read_text("utf-8"), old, new), "utf-8")
    (mistake,) = picture_mistakes(lesson(lesson_text()), content)
    assert (mistake.file, mistake.sentence) == ("content/pictures/shed-wrong.svg", sentence)
    assert mistake.mend


def test_a_broken_picture_stops_at_its_line(content: Path) -> None:
    """A tag that isn't closed is named by the line on which that shows."""
    file = content / "pictures/shed-wrong.svg"
    file.write_text(edited(file.read_text("utf-8"), "</svg>\n", ""), "utf-8")
    (mistake,) = picture_mistakes(lesson(lesson_text()), content)
    assert mistake.sentence.startswith("This is no drawing:")
    assert (mistake.file, mistake.line) == ("content/pictures/shed-wrong.svg", 4)


def test_a_picture_in_another_encoding_is_no_crash(content: Path) -> None:
    """Its author gets a sentence."""
    file = content / "pictures/shed-wrong.svg"
    file.write_bytes(file.read_bytes().replace(b"A strip over", b"A str\xefp over"))
    drawn = read_lesson(lesson_text(), FILE, content)
    (mistake,) = picture_mistakes(drawn, content)
    assert (mistake.file, mistake.line) == ("content/pictures/shed-wrong.svg", 2)
