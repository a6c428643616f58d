"""Words of the trade: read from one file, and found in prose in all their forms."""

from pathlib import Path
from textwrap import dedent

import pytest

from trainer.lessons.errors import AuthorError
from trainer.lessons.glossary import Glossary, read_glossary

WORDS = """\
    # Words of the trade

    wet out
    also: wets out, wetted out
    : To work resin into mat.

    mat
    : Glass strands on a roll, {bandage-width} or wider.

    open joint
    also: open joints
    : A joint with nothing below it.

    joint
    : Where two boards meet.
    """


def read(folder: Path, text: str = WORDS) -> Glossary:
    """Return the glossary in an indented text."""
    (folder / "glossary.md").write_text(dedent(text), "utf-8")
    return read_glossary(folder, {})


def found(glossary: Glossary, text: str) -> list[tuple[str, str]]:
    """Return each piece of a text that is a word, and its term."""
    return [(text[start:end], word.term) for start, end, word in glossary.found_in(text)]


def test_a_word_has_its_forms_and_its_sentence(tmp_path: Path) -> None:
    """They come by the alphabet, each with its line in the file."""
    joint, mat, open_joint, wet_out = read(tmp_path).words
    assert [each.term for each in (joint, mat, open_joint)] == ["joint", "mat", "open joint"]
    assert (wet_out.forms, wet_out.line) == (("wets out", "wetted out"), 3)
    assert (wet_out.sentence, wet_out.slug) == ("To work resin into mat.", "wet-out")


def test_a_sentence_may_name_a_constant(tmp_path: Path) -> None:
    """It prints figure and unit, as in a lesson."""
    assert read(tmp_path).words[1].sentence == "Glass strands on a roll, 75\u00a0mm or wider."


def test_words_are_found_in_any_form(tmp_path: Path) -> None:
    """With a capital too, over a line's end, and of two the longer one."""
    text = "Wet out the mat. It\nwetted\nout each open joint, and a joint."
    assert found(read(tmp_path), text) == [
        ("Wet out", "wet out"),
        ("mat", "mat"),
        ("wetted\nout", "wet out"),
        ("open joint", "open joint"),
        ("joint", "joint"),
    ]


@pytest.mark.parametrize("text", ["a matter", "format", "mat-like", "adjoint", "open", "wet it"])
def test_a_part_of_a_word_is_no_word(tmp_path: Path, text: str) -> None:
    """Nor is one that is only the beginning of another."""
    assert found(read(tmp_path), text) == []


def test_a_folder_without_the_file_has_no_words(tmp_path: Path) -> None:
    """A firm's own may be older than the glossary."""
    assert read_glossary(tmp_path, {}).words == ()


@pytest.mark.parametrize(
    ("text", "line", "sentence"),
    [
        ("mat\n\n: Glass.\n", 1, "This is no word with its sentence."),
        ("\nmat\nGlass.\n", 2, "This is no word with its sentence."),
        ("mat\n: Glass.\n: Strands.\n", 1, "This is no word with its sentence."),
        ("mat\n: Glass.\n\ndrop\nalso: mat\n: More.\n", 4, "'mat' stands with 'mat' on line 1"),
        ("mat\n: Glass, {wrapp}.\n", 2, "There is no constant 'wrapp'."),
    ],
)
def test_a_mistake_names_its_line(tmp_path: Path, text: str, line: int, sentence: str) -> None:
    """A word alone, no sentence, two of them, a form twice, a placeholder that nothing fills."""
    with pytest.raises(AuthorError) as refused:
        read(tmp_path, text)
    assert (refused.value.file, refused.value.line) == ("content/glossary.md", line)
    assert refused.value.sentence.startswith(sentence)
    assert refused.value.mend
