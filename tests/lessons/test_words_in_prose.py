"""Words of the trade on a lesson's page: the first in each section opens its sentence."""

from pathlib import Path
from textwrap import dedent

import pytest

from trainer.lessons.glossary import Glossary, Word
from trainer.lessons.prose import Known, Lifted, render

MAT = Word("mat", ("mats",), "Glass strands on a roll.", 1)
BINDER = Word("binder", (), "What holds the strands.", 4)
GLOSSARY = Glossary((BINDER, MAT))
BUTTON = (
    '<button aria-describedby="word-{0}" class="word" popovertarget="word-{0}" '
    'type="button">{1}</button>'
)


def page(source: str) -> tuple[str, Lifted]:
    """Return the page of an indented source, with attributes by the alphabet."""
    html, lifted = render("a.md", dedent(source), 1, Path("nowhere"), Known({}, GLOSSARY))
    told = (
        '<button type="button" class="word" popovertarget="word-{0}" aria-describedby="word-{0}">'
    )
    for slug in ("mat", "binder"):
        html = html.replace(told.format(slug), BUTTON.format(slug, "").removesuffix("</button>"))
    return html, lifted


def test_a_word_becomes_a_button() -> None:
    """What stands round it stays, and the page knows which sentences it needs."""
    html, lifted = page("Roll the mat out, then the *mats* again.\n")
    assert (
        html == f"<p>Roll the {BUTTON.format('mat', 'mat')} out, then the <em>mats</em> again.</p>"
    )
    assert lifted.words == [MAT]


def test_two_words_in_one_line_keep_their_order() -> None:
    """The text between them lies between them."""
    html, lifted = page("The binder of the mat lets go.\n")
    binder, mat = BUTTON.format("binder", "binder"), BUTTON.format("mat", "mat")
    assert html == f"<p>The {binder} of the {mat} lets go.</p>"
    assert lifted.words == [BINDER, MAT]


def test_every_section_begins_anew() -> None:
    """Who comes back to the third section needn't look for the word in the first."""
    html, _ = page(
        "Mat, and mat.\n\n## One\n\nMat, and mat.\n\n### Inside\n\nMat.\n\n## Two\n\nMat.\n"
    )
    assert html.count("<button") == 3


@pytest.mark.parametrize(
    "source",
    [
        "## The mat\n",
        "[The mat](https://example.org)\n",
        "`mat`\n",
        "![The mat.](pictures/none.svg)\n",
        "See ![the mat](pictures/none.svg) here.\n",
        "```text\nmat\n```\n",
        '!!! caution "The mat"\n    Leave it.\n',
        "Leave it.[^a]\n\n[^a]: Of the mat.\n",
        "| mat |\n| --- |\n| it |\n",
    ],
)
def test_some_places_have_no_buttons(source: str) -> None:
    """Headings, links, code, pictures and their words, titles, footnotes."""
    html, lifted = page(source)
    assert "<button" not in html
    assert lifted.words == []


@pytest.mark.parametrize(
    "source", ["- Mat.\n", "**Mat.**\n", '!!! right "So"\n    Mat.\n', "| a |\n| --- |\n| mat |\n"]
)
def test_other_places_have_them(source: str) -> None:
    """Lists, boxes, tables, and what is printed bold."""
    assert page(source)[0].count("<button") == 1


def test_a_word_keeps_its_signs() -> None:
    """A line could break before the full stop, which would then begin the next."""
    html, _ = page("So (the mat) lies on “mats”.\n\n## Two\n\nSo to the “mat”.\n")
    button = BUTTON.format("mat", "mat")
    assert f'(the <span class="held">{button})</span> lies on “mats”.' in html
    assert f'<span class="held">“{button}”.</span>' in html


def test_what_markdown_has_put_by_is_left_whole() -> None:
    """HTML in a line comes back in its place."""
    html, _ = page("The mat<br>and more.\n")
    assert html == f"<p>The {BUTTON.format('mat', 'mat')}<br>and more.</p>"


def test_an_author_may_mark_a_word() -> None:
    """It opens where it is marked, though it was met above."""
    html, _ = page("The mat waits.\n\nThe [[mat]] again, and mat.\n")
    button = BUTTON.format("mat", "mat")
    assert html == f"<p>The {button} waits.</p>\n<p>The {button} again, and mat.</p>"


@pytest.mark.parametrize(
    "source", ["[[drip]] of it\n", "## The [[mat]]\n", "![A [[mat]].](a.svg)\n"]
)
def test_a_mark_is_never_printed(source: str) -> None:
    """Nor where the word isn't explained, or can't be opened."""
    html, _ = page(source)
    assert not {"[", "]", "\ue000", "\ue001"} & set(html)
