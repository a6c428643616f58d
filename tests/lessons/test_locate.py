"""Places in a picture: drawn in the picture itself, and named there."""

from pathlib import Path

import pytest
from kinds_specimens import LOCATE, PICTURE, locate
from lessons_specimens import edited, line_of

from trainer.lessons.errors import AuthorError
from trainer.lessons.kinds.locate import mark_place


def refused(folder: Path, text: str = LOCATE, picture: str = PICTURE) -> AuthorError:
    """Return the mistake for which a question is refused."""
    with pytest.raises(AuthorError) as stopped:
        locate(folder, text, picture)
    return stopped.value


def test_a_place_is_called_what_its_picture_says(tmp_path: Path) -> None:
    """The words of the list are the titles in the drawing, so that they can't differ."""
    read = locate(tmp_path)
    assert [region.words for region in read.regions] == [
        "The left flap",
        "The top",
        "The right corner",
        "The foot",
    ]
    assert (read.right_name, read.region_id("top")) == ("top", "shed-ends-top")
    assert read.pictures == ("pictures/shed-ends.svg",)


def test_the_right_place_is_right_and_the_others_are_wrong(tmp_path: Path) -> None:
    """Each with what can be said of it, at once."""
    drawn = locate(tmp_path).drawn("5eed")
    for region in drawn.question.regions:
        mark = mark_place(drawn, region.name)
        assert mark.right == (region.name == "top")
        assert mark.finished
        assert (mark.answers[0].typed, mark.answers[0].read_as) == (region.name, region.words)
    assert {line["key"]: line["shown"] for line in mark.lines}["foot"] == (
        "It turns out on to the deck."
    )


def test_a_missing_picture_is_named_with_a_guess(tmp_path: Path) -> None:
    """At the key's line."""
    mistake = refused(tmp_path, edited(LOCATE, "shed-ends.svg", "shed-end.svg"))
    assert mistake.sentence == "The picture 'pictures/shed-end.svg' is missing."
    assert mistake.mend == "Did you mean 'pictures/shed-ends.svg'?"
    assert mistake.line == line_of(LOCATE, "picture =")


def test_a_place_that_isnt_drawn_is_named_with_a_guess(tmp_path: Path) -> None:
    """At its own [[regions]]."""
    text = edited(LOCATE, 'name = "foot"', 'name = "food"')
    mistake = refused(tmp_path, text)
    assert mistake.sentence == "The picture has no region 'food'."
    assert mistake.mend == "Did you mean 'foot'?"
    assert mistake.line == line_of(text, 'name = "food"')


def test_a_place_without_words_is_refused(tmp_path: Path) -> None:
    """Nobody could pick it from the list."""
    mistake = refused(tmp_path, edited(LOCATE, 'name = "foot"', 'name = "mute"'))
    assert mistake.sentence == "The region 'mute' has no words in the picture."


def test_a_place_is_known_by_its_pictures_name_and_a_hyphen(tmp_path: Path) -> None:
    """Any other id is no place, since nobody would find it on the page."""
    picture = edited(PICTURE, 'id="shed-ends-foot"', 'id="shed-endsfoot"')
    for name in ("foot", "shed-endsfoot"):
        text = edited(LOCATE, 'name = "foot"', f'name = "{name}"')
        mistake = refused(tmp_path, text, picture)
        assert mistake.sentence == f"The picture has no region '{name}'."


def test_no_place_stands_in_the_list_twice(tmp_path: Path) -> None:
    """Neither by its name nor by its words."""
    text = edited(LOCATE, 'name = "foot"', 'name = "left"')
    mistake = refused(tmp_path, text)
    assert mistake.sentence.startswith("'left' stands here twice")
    assert mistake.line == text.count("\n", 0, text.rindex('name = "left"')) + 1
    told = refused(tmp_path, picture=edited(PICTURE, "The foot", "The left flap"))
    assert told.sentence.startswith("'The left flap' stands here twice")
    assert told.line == line_of(LOCATE, 'name = "foot"')


def test_a_broken_picture_is_no_drawing(tmp_path: Path) -> None:
    """The reader's own reason is told."""
    mistake = refused(tmp_path, picture=PICTURE.replace("</svg>", ""))
    assert mistake.sentence.startswith("This is no drawing: no element found")


def test_one_place_is_right(tmp_path: Path) -> None:
    """Not none."""
    mistake = refused(tmp_path, edited(LOCATE, "right = true\n", ""))
    assert mistake.sentence == "None of the [[regions]] is right."
