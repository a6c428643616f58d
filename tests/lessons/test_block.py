"""TOML inside a file, and mistakes that point at its lines."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from typing import Any

import pytest
from lessons_specimens import line_of

from trainer.lessons.block import Block
from trainer.lessons.errors import AuthorError, did_you_mean

FILE = "content/roofs.toml"
TEXT = """\
name = "shed"
[[edges]]
kind = "drip"
length_m = 3
[[edges.trims]]
length_m = 2.4
[[edges]]
kind = "wall"
length_m = 2
"""
BLOCK = Block(FILE, 41, TEXT)


def test_a_block_is_its_tables() -> None:
    """What is read is plain TOML."""
    assert Block(FILE, 1, 'name = "shed"\nspan.from = 2').read() == {
        "name": "shed",
        "span": {"from": 2},
    }


@pytest.mark.parametrize(
    ("text", "line", "shown"),
    [
        ('a = 1\nb = "open\nc = 3', 42, 'b = "open'),
        ("a = 1\na = 2", 42, "a = 2"),
        ("a = 1\n\nb == 2", 43, "b == 2"),
        ('a = """never closed', 41, 'a = """never closed'),
        ("a = 1\nb = ]", 42, "b = ]"),
    ],
)
def test_broken_toml_stops_at_its_line(text: str, line: int, shown: str) -> None:
    """The line is the file's, not the block's; the text and a way to mend it stand below."""
    with pytest.raises(
        AuthorError, match=r"^content/roofs\.toml:\d+: This is not TOML: "
    ) as broken:
        Block(FILE, 41, text).read()
    assert (broken.value.line, broken.value.text) == (line, shown)
    assert "double quotes" in broken.value.mend


@pytest.mark.parametrize(
    ("text", "mend"),
    [
        ("id = “shed”", "straight quotes"),
        ("cautions = [“eyes”]", "straight quotes"),
        ("given.resin_kg = {from = 0,6, to = 1.2, step = 0.1}", "a point, not a comma"),
        ('text = "“Tape it,” he says.', "double quotes"),
    ],
)
def test_what_a_word_processor_types_is_named(text: str, mend: str) -> None:
    """Curly quotes and decimal commas look right to whoever typed them."""
    with pytest.raises(AuthorError) as broken:
        Block(FILE, 41, text).read()
    assert mend in broken.value.mend


def test_a_mistake_is_file_line_sentence_text_and_mend() -> None:
    """An author reads five things."""
    mistake = BLOCK.mistake("name", "The name is taken.", "Choose another.")
    assert str(mistake) == (
        'content/roofs.toml:41: The name is taken.\n    name = "shed"\n    Choose another.'
    )


def test_a_mistake_without_a_mend_has_none() -> None:
    """Nothing is guessed where nothing can be."""
    assert str(AuthorError(FILE, 3, "This is odd.")) == "content/roofs.toml:3: This is odd."


def test_a_missing_key_points_at_the_first_line() -> None:
    """What isn't there has no line of its own."""
    with pytest.raises(AuthorError, match="A roof has no 'fall'") as missing:
        BLOCK.want({}, "fall", float, "A roof")
    assert (missing.value.line, missing.value.mend) == (41, "Add a line fall = …")


@pytest.mark.parametrize(
    ("value", "kind", "sentence"),
    [
        (3, str, "'name' must be a text in quotes."),
        ("3", int, "'name' must be a whole number."),
        (True, int, "'name' must be a whole number."),
        (3.5, int, "'name' must be a whole number."),
        (True, float, "'name' must be a number."),
        ("3", float, "'name' must be a number."),
        (1, bool, "'name' must be true or false."),
        ("a", list, "'name' must be a list."),
        (date(2026, 3, 9), dict, "'name' must be a table."),
    ],
)
def test_a_value_of_another_kind_is_refused(value: object, kind: type, sentence: str) -> None:
    """The sentence says what it must be, and true is no number."""
    with pytest.raises(AuthorError) as refused:
        BLOCK.want({"name": value}, "name", kind, "A roof")
    assert refused.value.sentence == sentence


def test_a_whole_number_is_a_number() -> None:
    """Nobody has to write 2.0."""
    assert BLOCK.want({"weight": 2}, "weight", float, "A roof") == 2


@pytest.mark.parametrize("value", ["one", ["one", 2], 3])
def test_a_list_of_texts_holds_texts(value: object) -> None:
    """One text, or a number among texts, is no list of texts."""
    with pytest.raises(AuthorError, match="'name' must be a list"):
        BLOCK.texts({"name": value}, "name", "A roof")


def test_an_unknown_key_gets_a_guess() -> None:
    """The nearest known key is offered."""
    with pytest.raises(AuthorError, match="A roof has no key 'name'") as unknown:
        BLOCK.refuse_unknown({"name": 1}, ("names", "fall"), "A roof")
    assert (unknown.value.line, unknown.value.mend) == (41, "Did you mean 'names'?")


def test_without_a_near_name_all_are_named() -> None:
    """Where no guess is likely, an author sees what there is, and nothing where there is none."""
    assert did_you_mean("qqq", ["wall", "drip"]) == "Known here: drip, wall."
    assert did_you_mean("qqq", []) == ""


def test_each_table_of_a_list_has_its_own_lines() -> None:
    """A mistake in the second [[edges]] points there, and one in what lies below the first, too."""
    table = BLOCK.read()
    (first, one), (second, other) = BLOCK.tables(table, "edges")
    ((trims, _),) = first.tables(one, "trims", "edges.trims")
    assert other == {"kind": "wall", "length_m": 2}
    lines = [part.mistake("length_m", "").line for part in (first, trims, second)]
    assert lines == [44, 46, 49]
    assert second.mistake("", "").text == "[[edges]]"


def test_a_mistake_deep_in_a_table_is_found() -> None:
    """A key of a table is found as table.key and below its [table]; the rest on line one."""
    dotted = Block(FILE, 1, "[given]\nlength_m = 3\n[rules.laps]\nvalue = 2")
    assert dotted.mistake("given.length_m", "").line == 2
    assert dotted.mistake("rules.laps", "").line == 3
    assert dotted.mistake("nowhere", "").line == 1


def test_tables_in_one_line_point_at_the_block() -> None:
    """TOML may also write a list of tables in one line."""
    block = Block(FILE, 7, 'name = "shed"\nedges = [{length_m = 3}, {length_m = 2}]')
    parts = [part for part, _ in block.tables(block.read(), "edges")]
    assert [part.mistake("length_m", "").line for part in parts] == [8, 8]


@pytest.mark.parametrize("value", ["drip", ["drip"], {"kind": "drip"}, 3])
def test_what_is_no_list_of_tables_is_refused(value: object) -> None:
    """The way to write one is shown."""
    with pytest.raises(AuthorError, match="'edges' must be tables") as refused:
        list(BLOCK.tables({"edges": value}, "edges"))
    assert refused.value.line == 40 + line_of(TEXT, "[[edges]]")
    assert refused.value.mend == "Begin each with a line [[edges]]."


def test_a_mistake_passes_through_a_context() -> None:
    """Python writes a traceback to an error that leaves a context; it may."""

    @contextmanager
    def somewhere() -> Iterator[Any]:
        yield

    with pytest.raises(AuthorError, match="The name is taken"), somewhere():
        raise BLOCK.mistake("name", "The name is taken.")
