"""Decisions: shuffled by the seed, marked at once, each choice with what comes of it."""

import re

import pytest
from kinds_specimens import CHOOSE, choose
from lessons_specimens import edited, line_of, mistake_in

from trainer.lessons.kinds.choose import ChooseDrawn, mark_choice

RIGHT = "Stop, and spread it thin on the waste board."


def place_of(drawn: ChooseDrawn, words: str) -> str:
    """Return the place at which a choice is shown."""
    return next(place for place, choice in drawn.choices() if choice.text == words)


def test_a_decision_is_read() -> None:
    """It knows its skill, its choices as they were written, and the right one."""
    read = choose()
    assert (read.id, read.lesson, read.kind) == ("shed-strings", "shed", "choose")
    assert read.skills == ("left-over",)
    assert [choice.text for choice in read.choices][read.right] == RIGHT
    assert len(list(read.texts())) == 1 + 2 * 4


def test_the_same_seed_shows_the_same_order() -> None:
    """So that an answer is marked by what was shown."""
    assert choose().drawn("5eed") == choose().drawn("5eed")
    shown = {choose().drawn(f"person-{number}").order for number in range(200)}
    assert len(shown) == 24  # every order of four


def test_every_choice_is_shown_once() -> None:
    """Whatever the seed."""
    for number in range(20):
        drawn = choose().drawn(f"person-{number}")
        assert sorted(choice.text for _, choice in drawn.choices()) == sorted(
            choice.text for choice in choose().choices
        )


def test_the_right_choice_is_right() -> None:
    """It is a try for the one skill, kept as the words that were picked."""
    drawn = choose().drawn("5eed")
    mark = mark_choice(drawn, place_of(drawn, RIGHT))
    (answer,) = mark.answers
    assert (mark.right, mark.finished, mark.may_retry) == (True, True, False)
    assert (answer.line, answer.skill, answer.read_as) == ("choice", "left-over", RIGHT)
    assert (answer.read_value, answer.right) == (None, None)


def test_every_other_choice_is_wrong_and_tells_what_comes_of_it() -> None:
    """There is no second try: the explanation is in the mark."""
    drawn = choose().drawn("5eed")
    for place, choice in drawn.choices():
        mark = mark_choice(drawn, place)
        assert mark.right == (choice.text == RIGHT)
        assert mark.finished
        (told,) = [line for line in mark.lines if line["key"] == place]
        assert (told["words"], told["shown"]) == (choice.text, choice.then)
        assert [line["value"] for line in mark.lines].count(1) == 1


def test_no_place_beyond_the_last_can_be_picked() -> None:
    """A form that was changed by hand picks nothing."""
    with pytest.raises(KeyError):
        mark_choice(choose().drawn("5eed"), "5")


def test_who_had_it_lately_had_it_in_any_order() -> None:
    """A shuffle makes no fresh question of it."""
    first, seen = choose().next_drawn("one", [])
    assert not seen
    assert choose().next_drawn("two", [_Had(first.key)])[1]


class _Had:
    def __init__(self, variant: str) -> None:
        self.variant, self.seed, self.redraws = variant, "one", 0


@pytest.mark.parametrize(
    ("old", "new", "at", "sentence"),
    [
        ("right = true\n", "", "[[choices]]", "None of the [[choices]] is right."),
        (
            'text = "Stir in some fresh resin."',
            'right = true\ntext = "Stir in some fresh resin."',
            'right = true\ntext = "Stir',
            "Two of the [[choices]] are right.",
        ),
        ("right = true", 'right = "yes"', 'right = "yes"', "'right' must be true or false."),
        (
            'then = "It gels all the same, and now there is more of it."\n',
            "",
            '[[choices]]\ntext = "Stir',
            "A choice has no 'then'.",
        ),
        (
            'then = "It gels all',
            'than = "It gels all',
            'than = "It gels',
            "A choice has no key 'than'.",
        ),
        (
            'skill = "left-over"\n',
            "",
            'id = "shed-strings"',
            "A question that lets one choose has no 'skill'.",
        ),
        (
            'skill = "left-over"',
            'skills = "left-over"',
            "skills",
            "A question that lets one choose has no key 'skills'.",
        ),
    ],
)
def test_an_authors_mistake_is_pointed_at(old: str, new: str, at: str, sentence: str) -> None:
    """At its own line, in a sentence."""
    text = edited(CHOOSE, old, new)
    mistake = mistake_in(text)
    assert mistake.sentence == sentence
    assert mistake.line == line_of(text, at)


def test_it_has_four_to_six_choices() -> None:
    """Three can be guessed, and seven are not read."""
    end = CHOOSE.index('[[choices]]\ntext = "Set the bucket')
    few = mistake_in(CHOOSE[:end])
    assert few.sentence == "It has 4 to 6 [[choices]], and here are 3."
    more = '[[choices]]\ntext = "Wait {}."\nthen = "Nothing comes of it."\n'
    many = mistake_in(CHOOSE + "".join(more.format(number) for number in range(3)))
    assert many.sentence == "It has 4 to 6 [[choices]], and here are 7."


def test_its_texts_may_name_a_constant() -> None:
    """Figure and unit are printed, without a note; a name that nothing has is pointed at."""
    text = edited(CHOOSE, "It never bonds,", "It laps {mat-lap} and never bonds,")
    assert choose(text).choices[0].then.startswith("It laps 50\u00a0mm and never")
    text = edited(CHOOSE, "It never bonds,", "It laps {mat-lapp},")
    mistake = mistake_in(text)
    assert (mistake.line, mistake.sentence) == (
        line_of(text, "then = "),
        "There is no constant 'mat-lapp'.",
    )
    assert mistake.mend == "Did you mean 'mat-lap'?"


def test_nothing_stands_in_it_twice() -> None:
    """Nobody could tell which of the two was meant."""
    texts = re.findall('^text = ".*"$', CHOOSE, re.MULTILINE)
    text = edited(CHOOSE, texts[2], texts[0])
    mistake = mistake_in(text)
    assert mistake.sentence.endswith("stands here twice, and nobody can tell which is meant.")
    assert mistake.line == text.count("\n", 0, text.rindex(texts[0])) + 1
