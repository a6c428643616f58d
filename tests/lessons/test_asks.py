"""What a question asks for: lines, units, tolerances, safe bands, and their order."""

import pytest
from lessons_specimens import CHAIN, RESIN, edited, line_of, mistake_in, question

from trainer.engine import Tolerance
from trainer.lessons.asks import Ask


def ask(unit: str, tolerance: str) -> Ask:
    """Return the ask of the resin question in another unit and with another tolerance."""
    text = edited(RESIN, 'unit = "g"', f'unit = "{unit}"')
    return question(edited(text, 'tolerance = "2 %"', f"tolerance = {tolerance}")).asks[0]


def test_an_ask_knows_both_units() -> None:
    """Resin is worked in kilograms and asked in grams, and figures go both ways."""
    read = question().asks[0]
    assert (read.line, read.line_unit, read.unit) == ("resin", "kg", "g")
    assert read.in_line_unit(371.25) == pytest.approx(0.37125)
    assert read.in_asked_unit(0.37125) == pytest.approx(371.25)


def test_one_line_asked_has_no_words_of_its_own() -> None:
    """The question asks for it; in a chain each line has its own sentence."""
    assert question().asks[0].words == ""
    assert [each.words for each in question(CHAIN).asks] == [
        "How much glass is in the strip?",
        "How much resin do you mix?",
    ]


def test_a_chain_asks_in_order_with_a_skill_each() -> None:
    """Each asked line is a try for its own skill."""
    assert [(each.line, each.skill) for each in question(CHAIN).asks] == [
        ("bandage.glass", "bandage-glass"),
        ("resin", "resin-for-mat"),
    ]


@pytest.mark.parametrize(
    ("unit", "tolerance", "read", "text"),
    [
        ("g", '"2 %"', Tolerance(share=0.02), "2 %"),
        ("g", '"1.5%"', Tolerance(share=0.015), "1.5 %"),
        ("g", "0", Tolerance(), "0"),
        ("kg", '"0.05 kg"', Tolerance(amount=0.05), "0.05 kg"),
        # 5 g is 0.005 kg, the unit in which resin is worked.
        ("g", '"5 g"', Tolerance(amount=0.005), "5 g"),
    ],
)
def test_a_tolerance_is_a_share_an_amount_or_nothing(
    unit: str, tolerance: str, read: Tolerance, text: str
) -> None:
    """An amount is in the asked unit, and marked in the unit of the line."""
    found = ask(unit, tolerance)
    assert (found.tolerance, found.tolerance_text) == (read, text)


@pytest.mark.parametrize(
    "tolerance",
    ['"2"', '"about 2 %"', '"5 kg"', '"-2 %"', "2", "0.02", "true", '""', '"2 % %"', "[2]"],
)
def test_an_unreadable_tolerance_is_refused(tolerance: str) -> None:
    """A bare number could be either; an amount in another unit than the asked one too."""
    text = edited(RESIN, 'tolerance = "2 %"', f"tolerance = {tolerance}")
    mistake = mistake_in(text)
    assert mistake.sentence == "The tolerance can't be read."
    assert mistake.mend == 'Write "2 %", 0 for a count, or "0.5 g".'
    assert mistake.line == line_of(text, "tolerance =")


@pytest.mark.parametrize(
    ("old", "new", "sentence", "mend"),
    [
        (
            'line = "resin"',
            'line = "resins"',
            "The working has no line 'resins'.",
            "Did you mean 'resin'?",
        ),
        (
            'unit = "g"',
            'unit = "L"',
            "This line is worked in kg, which can't be turned into L.",
            "",
        ),
        (
            'unit = "g"',
            'unit = "kgg"',
            "There is no unit 'kgg'.",
            "Did you mean 'kg'?",
        ),
        (
            'unit = "g"',
            'unit = "kilograms"',
            "There is no unit 'kilograms'.",
            "Did you mean 'kg'?",
        ),
    ],
)
def test_a_wrong_line_or_unit_is_refused(old: str, new: str, sentence: str, mend: str) -> None:
    """A unit of another kind can't be marked."""
    text = edited(RESIN, old, new)
    mistake = mistake_in(text)
    assert (mistake.sentence, mistake.mend) == (sentence, mend)
    assert (mistake.line, mistake.text) == (line_of(text, new), new)


@pytest.mark.parametrize(
    ("written", "symbol"),
    [
        ("litres", "L"),
        ("liter", "L"),
        ("metres", "m"),
        ("grams", "g"),
        ("kilograms", "kg"),
        ("Minutes", "min"),
        ("m2", "m²"),
    ],
)
def test_a_unit_that_is_written_out_is_guessed(written: str, symbol: str) -> None:
    """As learners may write it; authors write the symbol."""
    mistake = mistake_in(edited(RESIN, 'unit = "g"', f'unit = "{written}"'))
    assert mistake.sentence == f"There is no unit '{written}'."
    assert mistake.mend == f"Did you mean '{symbol}'?"


@pytest.mark.parametrize("key", ["line", "unit", "skill"])
def test_what_is_asked_must_be_whole(key: str) -> None:
    """Line, unit and skill are all needed."""
    (line,) = [each for each in RESIN.splitlines() if each.startswith(f"{key} =")]
    assert mistake_in(edited(RESIN, line, "")).sentence == f"What is asked has no '{key}'."


def test_a_safe_band_is_two_multiples() -> None:
    """Half to one and a half times the right figure; none where none is declared."""
    assert [each.safe for each in question(CHAIN).asks] == [None, (0.5, 1.5)]


@pytest.mark.parametrize("safe", ["[0.5]", "[1.1, 1.5]", "[0.5, 0.9]", "[-1, 2]", '"0.5"', "0.5"])
def test_a_safe_band_holds_the_right_figure(safe: str) -> None:
    """A band that leaves out the right figure is a mistake."""
    text = edited(CHAIN, "safe = [0.5, 1.5]", f"safe = {safe}")
    mistake = mistake_in(text)
    assert (mistake.line, mistake.mend) == (line_of(text, "safe ="), "Write safe = [0.5, 1.5].")


def test_asks_follow_the_working() -> None:
    """The wrong order stops at the ask that comes too late, with the order that is right."""
    first, second = CHAIN.index("[[asks]]"), CHAIN.rindex("[[asks]]")
    slips = CHAIN.index("[[slips]]")
    turned = CHAIN[:first] + CHAIN[second:slips] + CHAIN[first:second] + CHAIN[slips:]
    mistake = mistake_in(turned)
    assert mistake.sentence == "The asked lines must follow the order of the working."
    assert mistake.mend == "The working runs: bandage.area, bandage.glass, glass_kg, net, resin."
    assert mistake.line == line_of(turned, 'line = "bandage.glass"')


def test_no_line_is_asked_twice() -> None:
    """The same line a second time comes too late as well."""
    text = edited(CHAIN, 'line = "bandage.glass"', 'line = "resin"')
    assert "follow the order" in mistake_in(text).sentence


@pytest.mark.parametrize("key", ["line", "unit", "tolerance", "skill", "safe"])
def test_a_chain_has_its_lines_in_tables(key: str) -> None:
    """What belongs to one of the asks doesn't stand above them."""
    mistake = mistake_in(f'{key} = "resin"\n{CHAIN}')
    assert (mistake.line, mistake.sentence) == (1, f"'{key}' belongs into one of the [[asks]].")


def test_a_mistake_in_the_second_ask_points_there() -> None:
    """Not at the first line of the same name."""
    text = CHAIN.replace('unit = "g"\ntolerance = "2 %"\nskill = "r', 'unit = "L"\nskill = "r')
    mistake = mistake_in(text)
    assert (mistake.line, mistake.text) == (line_of(text, 'unit = "L"'), 'unit = "L"')


def test_a_missing_key_points_at_its_ask() -> None:
    """What isn't there is missed at the line that opens its table."""
    text = edited(CHAIN, 'ask = "How much resin do you mix?"\n', "")
    mistake = mistake_in(text)
    assert mistake.sentence == "An ask has no 'ask'."
    assert mistake.line == text[: text.rindex("[[asks]]")].count("\n") + 1


def test_an_unknown_key_in_an_ask_is_refused() -> None:
    """A key of the question is none of an ask."""
    mistake = mistake_in(edited(CHAIN, "safe = [0.5, 1.5]", "save = [0.5, 1.5]"))
    assert (mistake.sentence, mistake.mend) == (
        "An ask has no key 'save'.",
        "Did you mean 'safe'?",
    )


def test_something_must_be_asked() -> None:
    """An empty list of asks asks nothing."""
    text = CHAIN[: CHAIN.index("[[asks]]")] + "asks = []\n"
    assert mistake_in(text).sentence == "Nothing is asked."
