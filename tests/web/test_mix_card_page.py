"""The mix card of a kept roof: gel bands for its test cups, and catalyst for its batches."""

import re

import pytest
from web_bench import Bench
from web_cast import BERTIL, NOOR, ODA, SAM
from web_page import Element, Page
from web_roofs import GARAGE, TIMED, keep, roof


def card(bench: Bench, data: dict[str, object] = TIMED) -> Page:
    """Return the card of a roof that Noor keeps."""
    return bench.visit(NOOR).open(f"/roofs/{keep(bench, NOOR, data)}/card")


def tables(page: Page) -> list[Element]:
    """Return the tables of a card."""
    return page.main.all("table")


def rows(table: Element) -> dict[str, list[str]]:
    """Return the cells of each row by what stands at its head."""
    body = table.all("tbody")[0].all("tr")
    return {row.all("th")[0].words: [cell.words for cell in row.all("td")] for row in body}


def test_a_card_tells_when_a_batch_may_gel(bench: Bench) -> None:
    """A cup of 30 minutes at 18 °C and 2 % is itself at today's 18 °C and 2 %, one figure."""
    even = roof(TIMED, weather={**TIMED["weather"], "deck_c": 18})
    page = card(bench, even)
    assert (page.status, page.heading) == (200, "Mix card: Garage with a clock")
    gel = rows(tables(page)[0])
    assert list(gel) == [
        *("5 °C", "10 °C", "15 °C", "18 °C today"),
        *("20 °C", "25 °C", "30 °C", "35 °C"),
    ]
    heads = [each.words for each in tables(page)[0].all("thead")[0].all("th")]
    assert heads[1:4] == ["1 %", "1.5 %", "2 % today"]
    assert gel["18 °C today"][2] == "30"
    assert "Today, 18 °C, 2 % by mass 30 min" in page.words
    assert "a full bucket may gel before it" in page.words


def test_a_card_goes_by_the_warmer_of_air_and_deck(bench: Bench) -> None:
    """As the sheet does: today's row is the deck's 19 °C."""
    assert "19 °C today" in rows(tables(card(bench))[0])


def test_a_time_that_is_refused_has_its_reason_below(bench: Bench) -> None:
    """At 35 °C a stronger dose leaves no time to work; a letter leads to the sentence."""
    page = card(bench)
    assert rows(tables(page)[0])["35 °C"][-1] == "none, a"
    assert "a Under 5 minutes would be left to work." in page.words


def test_a_card_without_a_cup_tells_no_times(bench: Bench) -> None:
    """One sentence instead of a table; the doses need no cup."""
    page = card(bench, GARAGE)
    assert "No test cup: no clock. Start a test cup." in page.notes
    assert len(tables(page)) == 1
    assert " min" not in page.words


def test_a_card_with_another_products_cup_says_so(bench: Bench) -> None:
    """Its time would be of another resin."""
    mix = {"product": "Ours"}
    cup = [{"minutes": 30, "at_c": 18, "product": "Theirs"}]
    assert "There is no test cup of Ours to go by." in card(bench, roof(mix=mix, cup=cup)).notes


def test_a_card_tells_how_much_catalyst_goes_in(bench: Bench) -> None:
    """2 % of a kilogram is 20 g and 17.09 ml; of a litre of 1.10 kg it is 22 g and 18.80 ml.

    The syringe has a mark at each millilitre: 17 and 19.
    """
    doses = rows(tables(card(bench, GARAGE))[0])
    assert list(doses) == ["1 %", "1.5 %", "2 % today", "2.5 %", "3 %", "3.5 %", "4 %"]
    assert doses["2 % today"][:2] == ["17 ml 20.0 g", "19 ml 22.0 g"]
    heads = [each.words for each in tables(card(bench, GARAGE))[0].all("thead")[0].all("th")]
    assert heads[3].startswith("Bandage and patches")
    assert len(doses["2 % today"]) == len(heads) - 1


def test_a_cards_figures_are_marks_of_the_roofs_syringe(bench: Bench) -> None:
    """With a mark every half millilitre 17.09 is 17, 18.80 is 19, and 1 % in a kilogram 8.5.

    Topcoat is drawn up to a mark too.
    """
    page = card(bench, roof(mix={"graduation_ml": 0.5}))
    doses = rows(tables(page)[0])
    assert doses["2 % today"][:2] == ["17 ml 20.0 g", "19 ml 22.0 g"]
    assert doses["1 %"][0] == "8.5 ml 10.0 g"
    assert "its marks are 0.5 ml apart" in page.words
    assert re.search(
        r"Topcoat has its own dose, 2 % by mass: draw up to the \d+(\.5)? ml mark", page.words
    )


def test_a_card_names_the_convention(bench: Bench) -> None:
    """All doses on it are by mass, and the roof's own is told as it was given."""
    page = card(bench, roof(mix={"convention": "by volume"}))
    assert "Doses are by mass: grams of catalyst to 100 g of resin." in page.words
    assert "planned with 2 % by volume" in page.words
    assert any(head.endswith("today") for head in rows(tables(page)[0]))


def test_a_card_carries_its_cautions(bench: Bench) -> None:
    """Eyes, acetone and the hot bucket, and what comes first."""
    page = card(bench)
    for words in ("Eyes first.", "Catalyst never meets acetone.", "Left-over resin heats itself."):
        assert words in page.words
    assert page.words.endswith(
        "The resin's data sheet, local codes and licensed practice come first."
    )


def test_a_card_is_for_those_who_may_see_the_roof(bench: Bench) -> None:
    """The owner, and the crew where it is their supervisor's; nobody signed out."""
    own, shared = keep(bench, NOOR), keep(bench, BERTIL)
    assert bench.visit(SAM).open(f"/roofs/{own}/card").status == 404
    assert bench.visit(SAM).open(f"/roofs/{shared}/card").status == 200
    assert bench.visit(ODA).open(f"/roofs/{shared}/card").status == 404
    path = f"/roofs/{own}/card"
    assert bench.visit().open(path).leads_to == f"/sign-in?then={path}"


@pytest.mark.parametrize("number", ["999", "99999999999999999999999"])
def test_a_card_of_no_roof_is_not_there(bench: Bench, number: str) -> None:
    """404."""
    assert bench.visit(NOOR).open(f"/roofs/{number}/card").status == 404


def test_a_card_takes_no_forms(bench: Bench) -> None:
    """It is only read."""
    assert bench.visit(NOOR).post(f"/roofs/{keep(bench, NOOR)}/card", {}).status == 405


def test_a_hostile_title_is_only_text(bench: Bench) -> None:
    """No script comes of it."""
    page = card(bench, roof(title="<script>alert(1)</script>"))
    assert page.heading == "Mix card: <script>alert(1)</script>"
    assert page.root.all("script") == []
