"""Steps in order: shuffled by the seed, and why one that comes too early does harm."""

import re

import pytest
from kinds_specimens import ORDER, order
from lessons_specimens import edited, line_of, mistake_in

from trainer.lessons.kinds.order import OrderDrawn, mark_order

RIGHT = ["Read the thermometer.", "Work out the dose.", "Draw up the catalyst.", "Stir it in."]


def places(drawn: OrderDrawn, *words: str) -> list[str]:
    """Return the places that steps go by, in the order of these words."""
    by_words = {drawn.step(place).text: place for place in drawn.places}
    return [by_words[each] for each in words]


def test_an_order_is_read() -> None:
    """The steps as they were written, the first without a word on coming early."""
    read = order()
    assert (read.kind, read.skills) == ("order", ("catalyst-dose",))
    assert [step.text for step in read.steps] == RIGHT
    assert [bool(step.early) for step in read.steps] == [False, True, True, True]


def test_it_is_never_shown_in_the_right_order() -> None:
    """Whatever the seed, something is left to do; and all other orders come up."""
    shown = {order().drawn(f"person-{number}").order for number in range(600)}
    assert (0, 1, 2, 3) not in shown
    assert len(shown) == 23


def test_the_same_seed_shows_the_same_order() -> None:
    """So that an answer is marked by what was shown."""
    assert order().drawn("5eed") == order().drawn("5eed")


def test_the_right_order_is_right() -> None:
    """It is kept as the words in the order that they were put."""
    drawn = order().drawn("5eed")
    mark = mark_order(drawn, places(drawn, *RIGHT))
    assert (mark.right, mark.finished) == (True, True)
    assert mark.answers[0].read_as == (
        "1. Read the thermometer. 2. Work out the dose. 3. Draw up the catalyst. 4. Stir it in."
    )
    assert tuple(places(drawn, *RIGHT)) == drawn.right_places()


def test_another_order_is_wrong_and_each_step_knows_its_row() -> None:
    """The records keep every step with its right row and why it isn't done earlier."""
    drawn = order().drawn("5eed")
    put = places(drawn, RIGHT[1], RIGHT[0], *RIGHT[2:])
    mark = mark_order(drawn, put)
    assert (mark.right, mark.finished, mark.may_retry) == (False, True, False)
    assert mark.answers[0].typed == " ".join(put)
    told = {line["words"]: line for line in mark.lines}
    assert [told[words]["value"] for words in RIGHT] == [1, 2, 3, 4]
    assert told[RIGHT[1]]["shown"] == "Without a temperature the dose is a guess."


@pytest.mark.parametrize(
    ("old", "new", "at", "sentence"),
    [
        (
            'text = "Read the thermometer."',
            'text = "Read the thermometer."\nearly = "No."',
            'early = "No."',
            "The first step can't come too early.",
        ),
        (
            'early = "There is nothing to stir in yet."\n',
            "",
            '[[steps]]\ntext = "Stir',
            "A step after the first has no 'early'.",
        ),
        (
            'early = "There is',
            'to_early = "There is',
            "to_early",
            "A step has no key 'to_early'.",
        ),
    ],
)
def test_an_authors_mistake_is_pointed_at(old: str, new: str, at: str, sentence: str) -> None:
    """At its own line, in a sentence."""
    text = edited(ORDER, old, new)
    mistake = mistake_in(text)
    assert mistake.sentence == sentence
    assert mistake.line == line_of(text, at)


def test_it_has_four_to_seven_steps() -> None:
    """Three are no order worth a question."""
    mistake = mistake_in(ORDER[: ORDER.rindex("[[steps]]")])
    assert mistake.sentence == "It has 4 to 7 [[steps]], and here are 3."


def test_nothing_stands_in_it_twice() -> None:
    """Nobody could tell which of the two was meant."""
    texts = re.findall('^text = ".*"$', ORDER, re.MULTILINE)
    text = edited(ORDER, texts[2], texts[0])
    mistake = mistake_in(text)
    assert mistake.sentence.endswith("stands here twice, and nobody can tell which is meant.")
    assert mistake.line == text.count("\n", 0, text.rindex(texts[0])) + 1
