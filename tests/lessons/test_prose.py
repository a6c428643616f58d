"""Markdown to a page: blocks lifted out, pictures drawn in."""

from pathlib import Path
from textwrap import dedent

import pytest

from trainer.lessons.errors import AuthorError
from trainer.lessons.prose import WORKED_MARK, Known, Lifted, lift_blocks, render
from trainer.lessons.stock import Sizes

FILE = "content/lessons/01-shed.md"
STOCK = {"tape": Sizes("invented", {"roll_m": (20, 50)})}


def page(source: str, folder: Path = Path("nowhere")) -> tuple[str, Lifted]:
    """Return the page of an indented source that begins on line 12."""
    return render(FILE, dedent(source), 12, folder, Known(STOCK))


def test_a_question_is_lifted_out() -> None:
    """The page goes on as if it weren't there, and it knows its line in the file."""
    html, lifted = page(
        """\
        Sweep first.

        ```question
        id = "a"
        ```

        Then tape.
        """
    )
    assert html == "<p>Sweep first.</p>\n<p>Then tape.</p>"
    (block,) = lifted.questions
    assert (block.file, block.line, block.text) == (FILE, 15, 'id = "a"')


def test_a_worked_job_leaves_a_mark() -> None:
    """The page draws it there."""
    html, lifted = page(
        """\
        One first.
        ```worked
        title = "a"
        ```
        Now you.
        """
    )
    assert html.split() == f"<p>One first.</p> {WORKED_MARK} <p>Now you.</p>".split()
    assert [block.line for block in lifted.worked] == [14]


def test_blocks_are_kept_in_order() -> None:
    """Each with its own line, whatever stands between."""
    lines = ["```question", "1", "```", "text", "```worked", "2", "```", "```question", "3", "```"]
    lifted = Lifted()
    assert lift_blocks(FILE, lines, 1, lifted) == ["", "text", f"\n{WORKED_MARK}\n", ""]
    assert [(block.text, block.line) for block in lifted.questions] == [("1", 2), ("3", 9)]
    assert [(block.text, block.line) for block in lifted.worked] == [("2", 6)]


@pytest.mark.parametrize("kind", ["question", "worked"])
def test_an_unclosed_block_is_refused(kind: str) -> None:
    """The line that opens it is the one to look at."""
    with pytest.raises(AuthorError, match=f"This {kind} block isn't closed") as refused:
        page(f"Sweep.\n\n```{kind}\nid = 1\n\nThe rest.\n")
    assert (refused.value.file, refused.value.line) == (FILE, 14)
    assert refused.value.text == f"```{kind}"
    assert refused.value.mend == "End it with a line of three back quotes."


def test_a_block_that_runs_into_the_next_is_unclosed() -> None:
    """The first of the two is the one to close; the second is never taken for a part of it."""
    with pytest.raises(AuthorError, match="This question block isn't closed") as refused:
        page("```question\nid = 1\n\n```worked\ntext = 'The strip is {length_m} long.'\n```\n")
    assert refused.value.line == 12
    assert refused.value.text == "```question"


def test_another_fence_is_a_listing() -> None:
    """Only our two kinds are lifted out."""
    html, lifted = page("```text\nid = 1\n```\n")
    assert "<code" in html
    assert not lifted.questions


def test_a_picture_becomes_a_figure(tmp_path: Path) -> None:
    """The drawing stands in the page itself, with its words below."""
    (tmp_path / "pictures").mkdir()
    drawing = '<svg class="picture"><title>A strip</title></svg>'
    (tmp_path / "pictures/strip.svg").write_text(drawing + "\n", "utf-8")
    html, lifted = page("![Centred on the joint.](pictures/strip.svg)\n", tmp_path)
    assert html.replace("\n", "") == (
        f'<figure class="picture"><div>{drawing}</div>'
        "<figcaption>Centred on the joint.</figcaption></figure>"
    )
    assert lifted.pictures == ["pictures/strip.svg"]


def test_a_picture_within_a_sentence_stays_there() -> None:
    """Only one that stands alone becomes a figure."""
    html, lifted = page("See ![a strip](pictures/strip.svg) here.\n")
    assert "<figure" not in html
    assert lifted.pictures == []


@pytest.mark.parametrize("source", ["pictures/none.svg", "pictures/photo.png"])
def test_a_picture_that_is_missing_keeps_its_words(source: str, tmp_path: Path) -> None:
    """It is named with the others, for the check to find; the page still reads."""
    html, lifted = page(f"![Centred.]({source})\n", tmp_path)
    assert "<figcaption>Centred.</figcaption>" in html
    assert lifted.pictures == [source]


def test_a_caution_is_a_box_with_a_title() -> None:
    """Cautions, right, wrong and decisions are boxes in the prose."""
    html, _ = page('!!! caution "Eyes first"\n    Goggles on.\n')
    assert html.replace("\n", "") == (
        '<div class="admonition caution">'
        '<p class="admonition-title">Eyes first</p><p>Goggles on.</p></div>'
    )


def test_headings_can_be_linked_to() -> None:
    """Each has an id made of its words."""
    assert page("## The drip edge\n")[0] == '<h2 id="the-drip-edge">The drip edge</h2>'


def test_pages_know_nothing_of_each_other() -> None:
    """A second page doesn't carry the first one's questions."""
    page("```question\nid = 1\n```\n")
    assert page("Sweep.\n")[1] == Lifted()


def test_a_placeholder_prints_its_figure_and_a_mark() -> None:
    """The mark leads to the list; the second time none is needed."""
    html, lifted = page("Lap it {mat-lap}, and {mat-lap} again, from {stock.tape.roll_m} rolls.\n")
    assert html.count("50\u00a0mm") == 3  # in the mark's own label too
    assert html.count('href="#figure-1"') == 1
    assert html.count('href="#figure-2"') == 1
    assert [figure.words for figure in lifted.figures] == [
        "lap of mat on mat",
        "tape, roll as sold",
    ]


def test_captions_and_footnotes_have_figures_too() -> None:
    """And their marks; a heading has the figure alone."""
    html, lifted = page(
        "## {wrap} of it\n\n![It wraps {wrap}.](a.svg)\n\nSo.[^a]\n\n[^a]: Or {mat-lap}.\n"
    )
    assert '<h2 id="50-mm-of-it">50\u00a0mm of it</h2>' in html
    assert '<figcaption>It wraps 50\u00a0mm<sup class="figure-note">' in html
    assert html.count('class="figure-note"') == 2
    assert len(lifted.figures) == 2


def test_a_pictures_own_words_hold_no_link() -> None:
    """The figure alone is read out."""
    html, _ = page("See ![{wrap} of it](a.svg) here.\n")
    assert 'alt="50\u00a0mm of it"' in html


def test_a_fence_keeps_its_braces() -> None:
    """They are a question's own, or a listing's."""
    html, lifted = page('```text\n{wrapp}\n```\n\n```question\nask = "{wrapp}"\n```\n')
    assert "{wrapp}" in html
    assert lifted.questions[0].text == 'ask = "{wrapp}"'


def test_a_placeholder_that_nothing_fills_names_its_line() -> None:
    """With its text, and a guess."""
    with pytest.raises(AuthorError) as refused:
        page("Sweep.\n\nLap it {mat-lapp}.\n")
    mistake = refused.value
    assert (mistake.file, mistake.line, mistake.text) == (FILE, 14, "{mat-lapp}")
    assert (mistake.sentence, mistake.mend) == (
        "There is no constant 'mat-lapp'.",
        "Did you mean 'mat-lap'?",
    )
