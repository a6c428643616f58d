"""Every page as a browser and a screen reader need it."""

import re
from collections import Counter

from web_bench import Bench
from web_cast import KIT, NOOR
from web_page import Element, Page
from web_season import in_days, set_start

BARE = {"hidden", "submit", "button"}
LABEL_OF_ITS_OWN = ("aria-label", "aria-labelledby")


def html_pages(every_page: dict[str, Page]) -> dict[str, Page]:
    """The answers that are pages, not redirects."""
    return {name: page for name, page in every_page.items() if page.status != 303}


def unlabelled(page: Page) -> list[str]:
    """The fields of a page that no label speaks of."""
    spoken_of = {label["for"] for label in page.root.all("label") if label.words}
    wrapped = {
        id(field)
        for label in page.root.all("label")
        if label.words
        for field in label.walk()
        if field.tag == "input"
    }
    return [
        field["name"]
        for tag in ("input", "select", "textarea")
        for field in page.root.all(tag)
        if field["type"] not in BARE
        and field["id"] not in spoken_of
        and id(field) not in wrapped
        and not any(field[name] for name in LABEL_OF_ITS_OWN)
    ]


def levels(page: Page) -> list[int]:
    """The levels of a page's headings, in order."""
    tags = [each.tag for each in page.root.walk()]
    return [int(tag[1]) for tag in tags if re.fullmatch(r"h[1-6]", tag)]


def test_one_heading_says_what_the_page_is(every_page: dict[str, Page]) -> None:
    """One h1 with words in it, and no level of heading left out below it."""
    for name, page in html_pages(every_page).items():
        assert len(page.root.all("h1")) == 1, name
        assert page.heading, name
        steps = levels(page)
        assert all(below - above <= 1 for above, below in zip([0, *steps], steps, strict=False)), (
            name,
            steps,
        )


def test_every_page_has_a_title_and_a_language(every_page: dict[str, Page]) -> None:
    """The title begins with words of its own; the language is English."""
    for name, page in html_pages(every_page).items():
        title = page.root.all("head")[0].all("title")
        assert len(title) == 1, name
        own, _, site = "".join(str(each) for each in title[0].inside).partition(" · ")
        assert own.strip(), name
        assert site.strip(), name
        assert page.root.all("html")[0]["lang"] == "en", name


def test_every_field_has_a_label(every_page: dict[str, Page]) -> None:
    """Whoever can't see the page hears what each field is for."""
    assert {name: unlabelled(page) for name, page in every_page.items() if unlabelled(page)} == {}


def test_every_button_and_link_has_words(every_page: dict[str, Page]) -> None:
    """None is a picture alone."""
    for name, page in every_page.items():
        for each in (*page.root.all("a"), *page.root.all("button")):
            assert each.words or each["aria-label"], (name, each.attributes)


def test_every_picture_has_words(every_page: dict[str, Page]) -> None:
    """An img has its alt; a drawing has a role and a name, or is hidden from readers aloud."""
    for name, page in every_page.items():
        for image in page.root.all("img"):
            assert "alt" in image.attributes, name
        for drawing in page.root.all("svg"):
            named = drawing["role"] in ("img", "group") and (
                drawing["aria-labelledby"] or drawing.all("title")
            )
            assert named or drawing["aria-hidden"] == "true", (name, drawing.attributes)


def test_every_tag_is_closed_in_turn(every_page: dict[str, Page]) -> None:
    """No browser has to guess."""
    pages = html_pages(every_page).items()
    assert {name: page.unclosed for name, page in pages if page.unclosed} == {}


def test_every_id_is_there_once_and_every_reference_leads_somewhere(
    every_page: dict[str, Page],
) -> None:
    """Labels, descriptions and links within a page point at what is on it."""
    for name, page in every_page.items():
        ids = Counter(each["id"] for each in page.root.walk() if each["id"])
        assert [each for each, times in ids.items() if times > 1] == [], name
        for reference in references(page.root):
            assert reference in ids, (name, reference)


def references(root: Element) -> set[str]:
    """The ids that something on the page refers to."""
    found = set()
    for each in root.walk():
        found |= {each["for"]} if each.tag == "label" else set()
        found |= set(f"{each['aria-labelledby']} {each['aria-describedby']}".split())
        if each.tag == "a" and each["href"].startswith("#"):
            found.add(each["href"][1:])
    return found - {""}


def test_no_form_stands_in_another(every_page: dict[str, Page]) -> None:
    """A browser would drop the inner one."""
    for name, page in every_page.items():
        for form in page.root.all("form"):
            assert form.all("form") == [form], name


def test_every_form_that_changes_something_has_its_token(every_page: dict[str, Page]) -> None:
    """Each is a POST with a token in it."""
    for name, page in every_page.items():
        for form in page.root.all("form"):
            if form["method"] == "get":
                continue  # it only asks
            assert form["method"] == "post", name
            token = form.all("input", name="csrf_token")
            assert len(token) == 1, name
            assert token[0]["value"], name


def test_every_link_leads_to_a_page(bench: Bench, every_page: dict[str, Page]) -> None:
    """No link of ours is dead; somebody of the office may follow them all."""
    links = {
        each["href"].partition("#")[0]
        for name, page in html_pages(every_page).items()
        for each in page.root.all("a")
        if each["href"].startswith("/") and not name.startswith("tiny")
    }
    # A sitting is there for its owner alone.
    links = {link for link in links if not link.startswith("/practice/")}
    kit = bench.reader(KIT)
    # The calendar file is there once a start is set.
    set_start(kit, in_days(bench, 20))
    assert len(links) > len(bench.library.questions)
    assert [link for link in sorted(links) if kit.open(link).status != 200] == []


def test_one_place_in_the_navigation_is_marked(tiny: Bench) -> None:
    """The one where the page belongs."""
    noor = tiny.reader(NOOR)
    for path, place in (
        ("/", "Today"),
        ("/lessons/mixing", "Today"),
        ("/questions/dose-chain", "Today"),
        ("/progress", "Progress"),
    ):
        marked = noor.open(path).root.all("a", **{"aria-current": "page"})
        assert [each.words for each in marked] == [place]


def test_a_keyboard_can_skip_to_the_page(every_page: dict[str, Page]) -> None:
    """The first link leads past the header."""
    for name, page in html_pages(every_page).items():
        assert page.root.all("a")[0]["href"] == "#main", name


def test_no_sentence_is_left_half_made(every_page: dict[str, Page]) -> None:
    """No brace, None or error of a template stands among the words."""
    for name, page in every_page.items():
        assert not re.search(r"\{\{|\}\}|\{\w+\}|\bNone\b|Undefined", page.root.words), name
