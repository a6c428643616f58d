"""Sentences as they are read on a page, and how long they may be."""

import pytest

from trainer.lessons.sentences import sentences_in, sentences_on, too_long

LONG = " ".join(["word"] * 25) + " more."


def test_sentences_are_told_apart() -> None:
    """A decimal point ends none; a quotation's full stop ends its own."""
    text = "Lay 2.5 m. “Is it dry?” asks Sam. “No.” You wait: it is 5 °C! Why?"
    assert sentences_in(text) == [
        "Lay 2.5 m.",
        "“Is it dry?” asks Sam.",
        "“No.”",
        "You wait: it is 5 °C!",
        "Why?",
    ]


@pytest.mark.parametrize("text", ["", "   ", "\n"])
def test_nothing_has_no_sentences(text: str) -> None:
    """An empty paragraph is passed over."""
    assert sentences_in(text) == []


def test_twenty_five_words_are_not_too_many() -> None:
    """Twenty-six are."""
    assert list(too_long([LONG, "word " * 24 + "end."])) == [LONG]


def test_a_page_is_read_without_drawings_and_footnotes() -> None:
    """Paragraphs, lists and captions; the words inside a picture are its own."""
    page = (
        "<p>Lay it dry.<sup>1</sup> Then wet it.</p><ul><li>Roll it.</li></ul>"
        "<svg><text>Not read.</text></svg><figcaption>A strip.</figcaption>"
        '<p class="admonition-title">A title.</p>'
        '<div class="footnote"><p>A source.</p></div>'
    )
    assert sentences_on(page) == ["Lay it dry.", "Then wet it.", "Roll it.", "A strip."]
