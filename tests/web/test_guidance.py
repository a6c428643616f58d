"""Cautions, words and help, open to anybody."""

import pytest
from web_bench import Bench
from web_cast import NOOR

from trainer.records.standing import STATES
from trainer.web.access import MATRIX
from trainer.web.guidance import PAGES, REACH


def test_every_caution_stands_with_its_source(bench: Bench) -> None:
    """What can hurt, what to do, and where that is known from."""
    page = bench.visit().open("/cautions")
    assert (page.status, page.heading) == (200, "Cautions")
    boxes = page.main.all(class_="caution")
    assert len(boxes) == len(bench.library.cautions)
    for box, caution in zip(boxes, bench.library.cautions.values(), strict=True):
        assert caution.title in box.words
        assert f"Source: {' '.join(caution.source.split())}".rstrip(".") in box.words


def test_the_cautions_name_what_overrules_them(bench: Bench) -> None:
    """Data sheet, local codes and licensed practice come first, here and in every footer."""
    page = bench.visit().open("/cautions")
    for part in (page.main, page.root.all("footer")[0]):
        for word in ("data sheet", "local codes", "licensed practice"):
            assert word in part.words


def test_every_word_stands_with_its_sentence(bench: Bench) -> None:
    """By the alphabet, each at an address of its own."""
    page = bench.visit().open("/words")
    assert (page.status, page.heading) == (200, "Words")
    words = bench.library.glossary.words
    assert [each.words for each in page.main.all("dt")] == [word.term for word in words]
    assert [each.words for each in page.main.all("dd")] == [word.sentence for word in words]
    assert [each["id"] for each in page.main.all("dl")[0].all("div")] == [w.slug for w in words]


def test_an_installation_without_a_glossary_has_no_words(tiny: Bench) -> None:
    """The page is there all the same."""
    page = tiny.visit().open("/words")
    assert (page.status, page.main.all("dt")) == (200, [])


def test_the_help_prints_the_whole_matrix(tiny: Bench) -> None:
    """Each page by name, each role's reach in words, as the guard has it."""
    rows = tiny.visit().open("/help").main.all("tbody")[-1].all("tr")
    told = [[cell.words for cell in (*row.all("th"), *row.all("td"))] for row in rows]
    assert told == [
        [PAGES[page], *(REACH[reach] for reach in (r.nobody, r.trainee, r.supervisor, r.office))]
        for page, r in MATRIX.items()
        if page != "static"
    ]


def test_every_page_of_the_matrix_has_a_name() -> None:
    """No row is printed by its code."""
    assert set(PAGES) == set(MATRIX) - {"static"}


def test_the_help_explains_every_mark_and_state(tiny: Bench) -> None:
    """Right, right for your figure, wrong; not tried, tried."""
    page = tiny.visit().open("/help")
    told = {each.words for each in page.main.all("dt")}
    assert {"right", "right for your figure", "wrong", "not tried", "tried"} <= told


@pytest.mark.parametrize("path", ["/cautions", "/words", "/help"])
def test_they_lead_from_every_page(tiny: Bench, path: str) -> None:
    """The footer has them, signed in or not."""
    for visitor in (tiny.visit(), tiny.visit(NOOR)):
        footer = visitor.open("/help").root.all("footer")[0]
        assert path in [link["href"] for link in footer.all("a")]


@pytest.mark.parametrize("path", ["/cautions", "/words", "/help"])
def test_they_take_no_forms(tiny: Bench, path: str) -> None:
    """They are only read."""
    assert tiny.visit().post(path, {}).status == 405


def test_help_says_what_practice_on_a_roof_counts_for(tiny: Bench) -> None:
    """It is marked, explained and kept, and never counts for the state of a skill."""
    words = tiny.visit().open("/help").words
    assert "Answers there are marked, explained and kept." in words
    assert "They never count for the state of a skill, nor for a lesson." in words


def test_help_tells_the_states_of_a_skill(tiny: Bench) -> None:
    """Each of them with its word, in the order in which somebody goes through them."""
    words = tiny.visit().open("/help").words
    places = [words.index(f"{state} ") for state in STATES]
    assert places == sorted(places)


def test_help_tells_honestly_how_many_are_cured_by_luck(tiny: Bench) -> None:
    """The figures are the rule's own, as the lessons have it: see tests/outside."""
    rows = [each.words for each in tiny.visit().open("/help").main.all("tr")]
    assert "right six times in ten 4.5 12.9" in rows
    assert "right nine times in ten 82.6 99.5" in rows


def test_help_tells_when_the_run_is_looked_at(tiny: Bench) -> None:
    """By the thresholds of the lessons."""
    words = tiny.visit().open("/help").words
    assert "After 7, 12 or 16 counted tries the run is looked at: 0, 1 or 2 wrong" in words
