"""What the pages print of styrene, acetone and MEKP, against a library and published limits.

Flash points, lower limits of burning and boiling points are those of the library chemicals 1.5,
which cites IEC 60079-20-1 and NFPA 497 (cited second-hand). Its exposure limits are Ontario's and
are never shown. Styrene, 100 ppm over eight hours and 250 ppm over fifteen minutes in Great
Britain: HSE, "Plastics – FAQs"; 50 and 100 ppm, and 700 ppm as a danger to life: NIOSH Pocket
Guide; MEKP, a ceiling of 0.2 ppm: CDC/NIOSH (all published).
"""

import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from trainer.engine import answer, leftover_peak
from trainer.engine.materials import NAMED
from trainer.lessons.figures_in_prose import fill_prose
from trainer.lessons.prose_lines import prose_of

CONTENT = Path(__file__).parents[2] / "content"
STYRENE, ACETONE = "100-42-5", "67-64-1"
ZERO = 273.15
PAGES = sorted(CONTENT.glob("lessons/*.md"))
#: Flash points in °C, lower limits in % of air and boiling points in °C: from, to.
FLASH = {STYRENE: (30, 31.5), ACETONE: (-20, -17.5)}
BURNS = {STYRENE: (0.9, 1.0), ACETONE: (2.5, 2.6)}
BOILS = {STYRENE: (145, 146), ACETONE: (56, 56.5)}


def caution(slug: str) -> dict[str, Any]:
    """Return a caution of the content."""
    known = tomllib.loads((CONTENT / "cautions.toml").read_text(encoding="utf-8"))["caution"]
    return next(each for each in known if each["slug"] == slug)


def first_lesson() -> str:
    """Return the prose of the lesson on fire, eyes, fumes, dust and waste."""
    return printed(PAGES[0].read_text(encoding="utf-8"))


def printed(text: str) -> str:
    """Return the prose of a lesson's text with its figures in it."""
    return fill_prose(prose_of(text), {})


def sentence_about(text: str, word: str) -> str:
    """Return the one line of a text that speaks of a word and of a flash in °C."""
    lines = [line for line in text.splitlines() if word in line and "°C" in line]
    assert len(lines) == 1, lines
    return lines[0]


def celsius_in(text: str) -> float:
    """Return the one temperature in a line."""
    (found,) = re.findall(r"([−-]?\d+)\s°C", text)
    return float(found.replace("−", "-"))


def parts_per_million(text: str) -> set[float]:
    """Return every limit in ppm that a text prints: "50 and 100 ppm" has two."""
    groups = re.findall(r"((?:\d+(?:\.\d+)?(?: and | or |, ))*\d+(?:\.\d+)?)\sppm", text)
    return {float(each) for group in groups for each in re.findall(r"\d+(?:\.\d+)?", group)}


@pytest.mark.parametrize("substance", [STYRENE, ACETONE])
def test_the_figures_of_the_library(substance: str) -> None:
    """T_flash, LFL and Tb of chemicals 1.5 lie where these tests say that they lie."""
    chemicals = pytest.importorskip("chemicals")
    flash = chemicals.T_flash(substance) - ZERO
    burns = chemicals.LFL(CASRN=substance) * 100
    boils = chemicals.Tb(substance) - ZERO
    assert FLASH[substance][0] - 1e-6 <= flash <= FLASH[substance][1]
    assert BURNS[substance][0] - 1e-6 <= burns <= BURNS[substance][1] + 1e-6
    assert BOILS[substance][0] <= boils <= BOILS[substance][1]


@pytest.mark.parametrize(("word", "substance"), [("Styrene", STYRENE), ("Acetone", ACETONE)])
def test_the_flash_points_that_are_printed(word: str, substance: str) -> None:
    """Caution and first lesson print the same figure, and it is the low end of the sources."""
    in_caution = celsius_in(sentence_about(caution("vapours")["text"], word))
    in_lesson = celsius_in(
        sentence_about(first_lesson(), f"{word}'s can" if word == "Styrene" else "Acetone's can")
    )
    low, high = FLASH[substance]
    assert low <= in_caution <= high
    assert in_lesson == in_caution
    assert in_caution == low


def test_the_flash_points_name_their_source() -> None:
    """Both places say that the figures were cited second-hand, and from which library."""
    source = caution("vapours")["source"]
    assert "IEC 60079-20-1 and NFPA 497" in source
    assert "cited second-hand, from the library “chemicals” 1.5" in source
    for flash in (NAMED["acetone-flash"], NAMED["styrene-flash"]):
        assert flash.standing == "cited second-hand"
        assert "IEC 60079-20-1 and NFPA 497" in flash.source
        assert "the library 'chemicals' 1.5" in flash.source


def test_acetone_can_burn_in_a_frost_and_styrene_on_a_warm_deck() -> None:
    """What the sentences around the figures say follows from them."""
    assert FLASH[ACETONE][1] < 0
    assert 15 < FLASH[STYRENE][0] < 60


def test_the_limits_that_the_caution_prints() -> None:
    """HSE: 100 and 250 ppm. NIOSH: 50, 100, and 700 ppm. CDC/NIOSH, MEKP: 0.2 ppm."""
    fumes = caution("fumes")
    assert parts_per_million(fumes["text"]) == {100, 250, 50, 700, 0.2}
    assert "100 ppm over eight hours" in fumes["text"]
    assert "250 ppm over fifteen minutes" in fumes["text"]
    assert "HSE, “Plastics – FAQs” (British limits)" in fumes["source"]
    assert "NIOSH Pocket Guide (50, 100 and 700 ppm)" in fumes["source"]
    assert "CDC/NIOSH (MEKP)" in fumes["source"]


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_a_lesson_prints_no_other_limit(page: Path) -> None:
    """Where a lesson prints a limit at all it is one of HSE's, and none is typed."""
    text = page.read_text(encoding="utf-8")
    assert parts_per_million(text) == set()
    assert parts_per_million(printed(text)) <= {100, 250}


def test_the_british_limits_name_hse() -> None:
    """Both are published, in the same place."""
    for limit in (NAMED["styrene-limit"], NAMED["styrene-short-limit"]):
        assert limit.standing == "published"
        assert limit.source == "Health and Safety Executive, 'Plastics – FAQs'"


def test_the_first_lesson_prints_both_british_limits() -> None:
    """100 ppm over eight hours and 250 ppm over fifteen minutes."""
    assert parts_per_million(first_lesson()) == {100, 250}


def test_a_hot_bucket_can_boil_its_styrene() -> None:
    """From 5 °C the upper bound is 226 °C, past 145: the measured 162 °C is past it as well."""
    assert answer(leftover_peak(5)) > BOILS[STYRENE][0]
    measured = [
        float(each)
        for each in re.findall(r"measured at (\d+)\s°C and (\d+)\s°C", first_lesson())[0]
    ]
    assert measured == [126, 162]
    assert all(each < answer(leftover_peak(5)) for each in measured)
