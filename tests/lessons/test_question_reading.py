"""A question block to a question, and the mistakes in one."""

import pytest
from lessons_specimens import (
    CHAIN,
    FILE,
    NO_PICTURES,
    RESIN,
    edited,
    line_of,
    mistake_in,
    mistake_or_none,
    on_four_metres,
    question,
)

from trainer.lessons.block import Block
from trainer.lessons.errors import AuthorError
from trainer.lessons.reading import read_question

#: The units that a length is printed in.
LENGTHS = "Known here: cm, ft, in, m, mm."


def test_a_question_is_read() -> None:
    """It knows its id, its title, its calculation, its text, and what it asks."""
    read = question()
    assert (read.id, read.lesson, read.title) == ("shed-resin", "shed", "Resin for the joint")
    assert read.calculate == read.method.name == "resin_for_bandage"
    assert read.text.startswith("A joint {length_m} long")
    assert [ask.line for ask in read.asks] == ["resin"]
    assert [slip.name for slip in read.slips] == [
        "the whole roll, not the strip",
        "the allowance left out",
    ]


def test_a_kind_may_be_named() -> None:
    """Calculate is the kind that is meant where none is named."""
    assert question('kind = "calculate"\n' + RESIN) == question(RESIN)


def test_an_ask_is_found_by_its_line() -> None:
    """A line that isn't asked is nobody's."""
    assert on_four_metres(CHAIN).ask_for("resin").words == "How much resin do you mix?"
    with pytest.raises(KeyError, match="net"):
        on_four_metres(CHAIN).ask_for("net")


@pytest.mark.parametrize(
    ("old", "new", "sentence", "mend"),
    [
        (
            'skill = "resin-for-mat"\n',
            'skil = "resin-for-mat"\n',
            "A question has no key 'skil'.",
            "Did you mean 'skill'?",
        ),
        (
            'calculate = "resin_for_bandage"',
            'calculate = "resin_for_bandages"',
            "There is no calculation 'resin_for_bandages'.",
            "Did you mean 'resin_for_bandage'?",
        ),
        (
            'calculate = "resin_for_bandage"',
            'calculate = "qqq"',
            "There is no calculation 'qqq'.",
            "'trainer work' lists them.",
        ),
        (
            'id = "shed-resin"',
            'id = "Shed resin"',
            "An id is small letters, digits and single hyphens.",
            "",
        ),
        ('id = "shed-resin"', "id = 7", "'id' must be a text in quotes.", ""),
        (
            'title = "Resin for the joint"',
            'title = ""',
            "A title has 1 to 60 characters.",
            "",
        ),
        (
            'title = "Resin for the joint"',
            f'title = "{"x" * 61}"',
            "A title has 1 to 60 characters.",
            "",
        ),
    ],
)
def test_a_mistake_has_line_text_and_mend(old: str, new: str, sentence: str, mend: str) -> None:
    """Each stops at the line that is wrong, shows it, and says how it may be mended."""
    text = edited(RESIN, old, new)
    mistake = mistake_in(text)
    assert (mistake.sentence, mistake.mend) == (sentence, mend)
    assert (mistake.line, mistake.text) == (line_of(text, new), new.strip())


@pytest.mark.parametrize("key", ["id", "title", "calculate", "ask"])
def test_a_missing_key_is_named(key: str) -> None:
    """A question without it is refused at its first line."""
    (line,) = [each for each in RESIN.splitlines() if each.startswith(f"{key} =")]
    mistake = mistake_in(edited(RESIN, line + "\n", ""))
    assert mistake.sentence == f"A question has no '{key}'."
    assert (mistake.line, mistake.mend) == (1, f"Add a line {key} = …")


def test_a_kind_that_nothing_can_mark_is_refused() -> None:
    """With a guess at what was meant."""
    mistake = mistake_in('kind = "chose"\n' + RESIN)
    assert (mistake.line, mistake.text) == (1, 'kind = "chose"')
    assert mistake.sentence == "There is no kind of question 'chose'."
    assert mistake.mend == "Did you mean 'choose'?"


@pytest.mark.parametrize(
    ("text", "old", "new", "sentence", "mend"),
    [
        (RESIN, "{ratio}", "{ration}", "Nothing fills {ration}.", "Did you mean 'ratio'?"),
        (RESIN, "{length_m}", "{length}", "Nothing fills {length}.", "Did you mean 'length_m'?"),
        (RESIN, "{length_m}", "{length_m:kg}", "{length_m} can't be printed in 'kg'.", LENGTHS),
        (
            RESIN,
            "{length_m}",
            "{length_m:furlong}",
            "{length_m} can't be printed in 'furlong'.",
            LENGTHS,
        ),
        (
            RESIN,
            "{length_m}",
            "{length_m:feet}",
            "{length_m} can't be printed in 'feet'.",
            "Did you mean 'ft'?",
        ),
        (
            RESIN,
            "{length_m}",
            "{length_m:in words}",
            "{length_m} can't be printed in 'in words'.",
            LENGTHS,
        ),
        (
            CHAIN,
            "in the strip?",
            "in {width}?",
            "Nothing fills {width}.",
            "Did you mean 'width_mm'?",
        ),
    ],
)
def test_a_placeholder_that_nothing_fills(
    text: str, old: str, new: str, sentence: str, mend: str
) -> None:
    """It is found in the question and in each ask, before anybody sees it."""
    wrong = edited(text, old, new)
    mistake = mistake_in(wrong)
    assert (mistake.sentence, mistake.line) == (sentence, line_of(wrong, new))
    assert mistake.mend == mend


def test_lines_are_counted_from_the_file() -> None:
    """A block in the middle of a lesson reports the lesson's lines."""
    wrong = edited(RESIN, 'unit = "g"', 'unit = "gg"')
    with pytest.raises(AuthorError) as refused:
        read_question(Block(FILE, 200, wrong), "shed", NO_PICTURES)
    assert refused.value.line == 199 + line_of(wrong, 'unit = "gg"')


ODD = ('"x"', "7", "-1", "[]", '["x"]', "[[1]]", "{a = 1}", "true", "1979-05-27", "nan", "inf")


@pytest.mark.parametrize("value", ODD)
@pytest.mark.parametrize("text", [RESIN, CHAIN], ids=["resin", "chain"])
def test_odd_values_are_mistakes_and_no_crash(text: str, value: str) -> None:
    """Whatever stands behind a key, the question is read, or its author gets a sentence."""
    lines = text.splitlines()
    for number, line in enumerate(lines):
        key, sets, _ = line.partition(" = ")
        if not sets:
            continue
        odd = "\n".join([*lines[:number], f"{key} = {value}", *lines[number + 1 :]])
        mistake = mistake_or_none(odd)
        assert mistake is None or mistake.sentence.endswith(".")


@pytest.mark.parametrize("value", ODD)
@pytest.mark.parametrize(
    "key",
    [
        "given.length_m = {from",
        "given.length_m = {from = 1, step = 1, to",
        "given.length_m = {from = 1, to = 2, step",
        "given.length_m = {one_of",
    ],
)
def test_odd_values_within_a_given(key: str, value: str) -> None:
    """The same holds inside the braces of a range."""
    line = next(each for each in RESIN.splitlines() if each.startswith("given.length_m"))
    text = edited(RESIN, line, f"{key} = {value}}}")
    mistake = mistake_or_none(text)
    assert mistake is None or mistake.line == line_of(text, "given.length_m")


@pytest.mark.parametrize("value", ODD)
@pytest.mark.parametrize(
    "change",
    [
        "given",
        "line",
        "answer",
        "calculate",
        "given.width_mm",
        "given.width_mm.times",
        "given.width_mm.same_as",
        "line.net",
        "line.net.times",
        "line.net.same_as",
        "on",
    ],
)
def test_odd_values_within_a_slip(change: str, value: str) -> None:
    """And in a slip."""
    text = edited(RESIN, "given.width_mm = 1000", f"{change} = {value}")
    mistake = mistake_or_none(text)
    assert mistake is None or mistake.line >= line_of(text, "[[slips]]")
