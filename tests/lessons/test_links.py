"""Links in prose: those that lead somewhere, and those that are named with a guess."""

from pathlib import Path

import pytest
from lessons_specimens import FILE, edited, lesson_text, line_of

from trainer.lessons.check import check_content
from trainer.lessons.errors import AuthorError
from trainer.lessons.library import read_library
from trainer.lessons.links import link_mistakes, slugs_of_lessons

FORMS = "Write #anchor for a place on this page"


def linking(content: Path, href: str) -> tuple[str, list[AuthorError]]:
    """Return the tiny lesson's text with one link in it, and what is wrong with the link."""
    text = edited(lesson_text(), "The cloud is", f"[The cloud]({href}) is")
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    library = read_library(content)
    slugs = [*slugs_of_lessons(content), "wetting-out"]
    return text, list(link_mistakes(library.first, library, slugs))


@pytest.mark.parametrize(
    "href",
    [
        "#the-strip",
        "#questions",
        "wetting-out",
        "wetting-out#the-rhythm",
        "/lessons/wetting-out",
        "/questions/shed-resin",
        "/",
        "/cautions",
        "/mix",
        "https://example.org/resin?sheet=1#gel",
    ],
)
def test_a_link_that_leads_somewhere(href: str, content: Path) -> None:
    """A place on the page, a lesson, a page of ours, or somebody else's over https."""
    assert linking(content, href)[1] == []


@pytest.mark.parametrize(
    ("href", "sentence", "mend"),
    [
        ("#stripe", "There is no place on this page '#stripe'.", "Did you mean '#the-strip'?"),
        ("weting-out", "There is no lesson 'weting-out'.", "Did you mean 'wetting-out'?"),
        ("/lessons/shedd", "There is no page '/lessons/shedd'.", "Did you mean '/lessons/shed'?"),
        ("/caution", "There is no page '/caution'.", "Did you mean '/cautions'?"),
        ("/xyzzy", "There is no page '/xyzzy'.", FORMS),
        ("02-shed.md", "There is no lesson '02-shed.md'.", "Did you mean 'shed'?"),
        ("http://a.org/b", "The link 'http://a.org/b' isn't https.", "Write https://a.org/b."),
        ("mailto:a@example.org", "The link 'mailto:a@example.org' leads to no page.", FORMS),
        ("javascript:alert", "The link 'javascript:alert' leads to no page.", FORMS),
        ("//example.org", "The link '//example.org' leads to no page.", FORMS),
        ("https:///resin", "The link 'https:///resin' leads to no page.", FORMS),
        ("https://[resin", "The link 'https://[resin' can't be read.", FORMS),
    ],
)  # fmt: skip
def test_a_link_that_leads_nowhere(href: str, sentence: str, mend: str, content: Path) -> None:
    """File, line, the text, and what was meant or can be written."""
    text, (mistake,) = linking(content, href)
    assert (mistake.file, mistake.line) == (FILE, line_of(text, "[The cloud]"))
    assert mistake.text == f"[The cloud]({href}) is coming up over the hill."
    assert mistake.sentence == sentence
    assert mistake.mend.startswith(mend)


def test_a_link_by_name_is_looked_at_too(content: Path) -> None:
    """It is found where its address stands."""
    text = edited(lesson_text(), "The cloud is", "[The cloud][sky] is") + "\n[sky]: #sky\n"
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    (mistake,) = check_content(content)[1]
    assert (mistake.line, mistake.text) == (line_of(text, "[sky]:"), "[sky]: #sky")


def test_footnotes_lead_to_their_places(content: Path) -> None:
    """Those links are made by the page itself."""
    text = (
        edited(lesson_text(), "over the hill.", "over the hill.[^1]") + "\n[^1]: From the west.\n"
    )
    (content / "lessons/01-shed.md").write_text(text, "utf-8")
    assert check_content(content)[1] == []


def test_a_lesson_is_found_where_another_cant_be_read(content: Path) -> None:
    """Its slug stands in the file, whatever else does."""
    (content / "lessons/02-broken.md").write_text('+++\nslug = "broken"\n', "utf-8")
    assert sorted(slugs_of_lessons(content)) == ["broken", "shed"]
