"""Printing quantities, and reading what people type."""

import math

import pytest
from hypothesis import event, given, settings
from hypothesis import strategies as st

from trainer.engine import NoSuch, OtherKind, Unclear, read_quantity, show
from trainer.engine.measures import UNITS
from trainer.engine.units import LONGEST, as_shown, counted, figure, unit_for

NBSP, THIN, NARROW = "\u00a0", "\u2009", "\u202f"
SYMBOLS = st.sampled_from(sorted(UNITS))


@pytest.mark.parametrize(
    ("value", "printed"),
    [
        (39.6, "39.6"),
        (39.604, "39.6"),
        (0.12151, "0.1215"),
        (1320, "1320"),
        (1320.4, "1320"),
        (9999.6, f"10{NBSP}000"),
        (12350, f"12{NBSP}350"),
        (1234567, f"1{NBSP}234{NBSP}567"),
        (0.99996, "1"),
        (100, "100"),
        (2.5, "2.5"),
        (0, "0"),
        (-0.0, "0"),
        (-4.25, "−4.25"),
        (0.000123456, "0.0001235"),
    ],
)
def test_a_figure_has_four_digits_that_matter(value: float, printed: str) -> None:
    """No trailing zeros, no more digits than a building site can measure, groups from 10 000."""
    assert figure(value) == printed


@pytest.mark.parametrize(
    ("value", "decimals", "printed"),
    [(3, 1, "3.0"), (3.14159, 2, "3.14"), (2.4, 0, "2"), (-0.04, 1, "0.0"), (-0.06, 1, "−0.1")],
)
def test_a_figure_may_have_just_so_many_decimals(value: float, decimals: int, printed: str) -> None:
    """A question prints its givens at the decimals of their step; nothing is never below zero."""
    assert figure(value, decimals) == printed


@pytest.mark.parametrize(
    ("value", "unit", "printed"),
    [
        (39.6, "g", "39.6 g"),
        (2.5, "", "2.5"),
        (1, "rolls", "1 roll"),
        (3, "rolls", "3 rolls"),
        (0, "rolls", "0 rolls"),
        (1, "batches", "1 batch"),
        (1, "g", "1 g"),
        (-5, "°C", "−5 °C"),
        (3, "%", "3 %"),
        (7, "furlongs", "7 furlongs"),
    ],
)
def test_a_quantity_keeps_its_unit_on_its_line(value: float, unit: str, printed: str) -> None:
    """A space that doesn't break stands before the unit; one roll is no rolls."""
    assert show(value, unit) == printed.replace(" ", NBSP)


@pytest.mark.parametrize(
    ("value", "unit", "beside"),
    [
        (1, "rolls", "roll"),
        (2, "rolls", "rolls"),
        (0, "rolls", "rolls"),
        (1, "kg", "kg"),
        (1, "", ""),
    ],
)
def test_a_unit_of_counts_is_told_as_one_beside_one(value: float, unit: str, beside: str) -> None:
    """One roll, two rolls; a kilogram stays kg."""
    assert unit_for(value, unit) == beside


def test_what_is_counted_has_its_noun() -> None:
    """One end, two ends, one batch, no batches."""
    told = [counted(1, "end"), counted(2, "end"), counted(1, "batch", "batches")]
    assert told == ["1 end", "2 ends", "1 batch"]
    assert counted(0, "batch", "batches") == "0 batches"


@pytest.mark.parametrize("value", [39.604, 0.12151, 1320.4, 12345.6, 0.0, -2.34567])
def test_a_number_as_shown_has_the_digits_that_are_printed(value: float) -> None:
    """What a list gives to a spreadsheet is what the sheet prints."""
    printed = figure(value).replace(NBSP, "").replace("−", "-")
    assert as_shown(value) == float(printed)


@pytest.mark.parametrize(
    ("typed", "unit", "value"),
    [
        ("1.3 L", "L", 1.3),
        ("1300 ml", "L", 1.3),
        ("1,3 litres", "L", 1.3),
        ("1 300 ml", "ml", 1300),
        (" 40 ", "ml", 40),
        ("12'6\"", "ft", 12.5),
        ("12'6\"", "mm", 3810),
        ("4 ft 2 in", "mm", 1270),
        ("2.5 to 1", "", 2.5),
        ("2.63:1", "", 2.63),
        ("12’6”", "ft", 12.5),  # as phones write it by themselves
        ("4ft 2in", "m", 1.27),
        ("4 feet 2", "mm", 1270),
        ("12’6″", "ft", 12.5),
        ("12′6″", "ft", 12.5),
        ("0'0\"", "ft", 0),
        ('6"', "mm", 152.4),
        ("12'", "m", 3.6576),
        ("1 1/2 kg", "kg", 1.5),
        ("3/4 L", "ml", 750),
        ("½", "kg", 0.5),
        ("1½ kg", "kg", 1.5),
        ("1 ½ kg", "kg", 1.5),
        ("2¼", "m", 2.25),
        ("¾ in", "mm", 19.05),
        ("2.440 m", "m", 2.44),
        ("2.440", "m", 2.44),
        ("2,4400", "m", 2.44),
        ("2,44", "m", 2.44),
        ("0,300", "kg", 0.3),
        ("0,300 kg", "g", 300),
        (",300", "kg", 0.3),
        (".5", "kg", 0.5),
        ("5.", "kg", 5),
        ("007", "kg", 7),
        ("+3", "kg", 3),
        ("-0", "kg", 0),
        (f"12{NBSP}350{NBSP}g", "g", 12350),
        (f"12{THIN}350 g", "g", 12350),
        (f"12{NARROW}350 g", "g", 12350),
        ("1 234 567 mm", "mm", 1234567),
        ("1 300,5 ml", "ml", 1300.5),
        ("1 300.25 ml", "ml", 1300.25),
        ("40ml", "ml", 40),
        ("40 ML", "ml", 40),
        ("40 mls.", "ml", 40),
        ("3%", "%", 3),
        ("3 percent", "%", 3),
        ("-5 °C", "°C", -5),
        ("−5", "°C", -5),
        ("–5", "°C", -5),
        ("14 f", "°C", -10),
        ("1.5 oz/ft2", "g/m²", 457.727591),
        ("1 US gal", "L", 3.785411784),
        ("1 imp gal", "L", 4.54609),
        ("3 rolls", "rolls", 3),
        ("1 roll", "rolls", 1),
        ("3", "rolls", 3),
        ("2.5", "", 2.5),
        ("20 ml per kg", "ml/kg", 20),
    ],
)
def test_what_people_type_is_read(typed: str, unit: str, value: float) -> None:
    """With a unit or without, with a point or a comma, in feet and inches or in halves."""
    assert read_quantity(typed, unit).value == pytest.approx(value, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(
    ("typed", "chosen", "value"),
    [("1300", "g", 1.3), ("1.3", "kg", 1.3), ("1.3", None, 1.3), ("1.3 kg", "g", 1.3)],
)
def test_the_unit_beside_the_field_counts_where_none_was_typed(
    typed: str, chosen: str | None, value: float
) -> None:
    """A decimal keypad has no letters; a typed unit is stronger than the chosen one."""
    assert read_quantity(typed, "kg", chosen).value == pytest.approx(value)


@pytest.mark.parametrize(
    ("typed", "unit", "read_as"),
    [
        ("1300 ml", "L", "1300 ml"),
        ("1,3 Litres", "ml", "1.3 L"),
        ("12'6\"", "mm", "12.5 ft"),
        ("½", "kg", "0.5 kg"),
        ("0.00001", "kg", "0.00001 kg"),
        ("12 345 678 901", "g", "12345678901 g"),
        ("-0", "kg", "0 kg"),
        ("2.50", "", "2.5"),
    ],
)
def test_a_reading_says_how_it_was_understood(typed: str, unit: str, read_as: str) -> None:
    """As it was understood, before any conversion, in full and without powers of ten."""
    assert read_quantity(typed, unit).read_as == read_as.replace(" ", NBSP)


@pytest.mark.parametrize("typed", ["1,300", "1,300 kg", "12,350", "1 300,250", "１,３００"])
def test_a_comma_before_three_digits_is_asked_about(typed: str) -> None:
    """It may be a decimal comma, or mark thousands: a guess would spoil a batch."""
    with pytest.raises(Unclear, match="Write it one of those ways") as asked:
        read_quantity(typed, "kg")
    assert asked.value.text == typed


def test_both_meanings_of_a_comma_are_offered() -> None:
    """The sentence gives both ways to write it, ready to be copied."""
    with pytest.raises(Unclear, match=r"Is that 1\.300 or 1300\?"):
        read_quantity("1,300", "kg")


@pytest.mark.parametrize(
    "typed",
    ["5 gal", "5 gallons", "5 Gallon", "5 gals", "5 fl oz", "5 fl. oz", "5 floz", "5 fluid ounces"],
)
def test_gallons_are_asked_about(typed: str) -> None:
    """A US gallon and an imperial one lie a fifth apart."""
    with pytest.raises(Unclear, match="US or imperial"):
        read_quantity(typed, "L")


@pytest.mark.parametrize(
    ("typed", "unit"),
    [
        ("1.3 L", "kg"),
        ("1.3 kg", "L"),
        ("40 g", "ml"),
        ("12'6\"", "kg"),
        ("3 %", ""),
        ("5 min", "rolls"),
        ("20 °C", "%"),
        ("3 rolls", "batches"),
    ],
)
def test_a_unit_of_another_kind_is_asked_about(typed: str, unit: str) -> None:
    """Litres for kilograms are kept, not marked: the sentence names what was written."""
    with pytest.raises(OtherKind, match="You wrote") as asked:
        read_quantity(typed, unit)
    assert asked.value.text == typed


@pytest.mark.parametrize(
    ("unit", "written"),
    [
        ("m²", "Write it like 1.3 or 1.3 m²."),
        ("m", "Write it like 1.3 or 1.3 m."),
        ("ml", "Write it like 1.3 or 1.3 ml."),
        ("°C", "Write it like 1.3 or 1.3 °C."),
        ("rolls", "Write it like 3 or 3 rolls."),
        ("", "Write it like 1.3."),
    ],
)
def test_what_cannot_be_read_is_asked_for_in_its_own_unit(unit: str, written: str) -> None:
    """Nobody is told to write an area in kilograms, nor part of a roll; a ratio has no unit."""
    with pytest.raises(Unclear) as asked:
        read_quantity("a good splash", unit)
    assert str(asked.value) == f"That can't be read as one figure. {written}"


def test_the_unit_asked_for_is_told_whatever_is_picked() -> None:
    """Picked is grams; the answer is wanted in kilograms."""
    with pytest.raises(Unclear, match=r"like 1\.3 or 1\.3 kg\.$"):
        read_quantity("a good splash", "kg", "g")


def test_a_chosen_unit_of_another_kind_is_asked_about() -> None:
    """A form that was meddled with is no way round the kind."""
    with pytest.raises(OtherKind):
        read_quantity("1.3", "kg", "L")


def test_a_chosen_unit_that_nobody_has_is_refused() -> None:
    """What comes from the form and is no unit is no answer at all."""
    with pytest.raises(NoSuch):
        read_quantity("1.3", "kg", "stone")


@pytest.mark.parametrize(
    "typed",
    [
        "",
        "   ",
        "kg",
        ".",
        ",",
        "-",
        "nan",
        "NaN kg",
        "inf",
        "-inf",
        "Infinity",
        "1e400",
        "1e3",
        "9**9**9",
        "2+2",
        "1.2.3",
        "1,234,567",
        "1.300,5",
        "1,300.5",
        "0 300",
        "1 30",
        "1 3000",
        "1300 5",
        "12 345 67",
        "1'300",
        "12'14\"",
        "1/0",
        "1 1/0 kg",
        "1//2",
        "½½",
        "1.5½",
        "-3",
        "-0.5",
        "−3 kg",
        "4 ft -2 in",
        "5 pounds stone",
        "5 mil",
        "5 m²²",
        "0x1f",
        "1_300",
        "²",
        "5²",
        "٫٥",
        "1\u200b300",
        "1\x00",
        "\ud800",
        "9" * 10_000,
        "1 " * 10_000,
        "'" * LONGEST,
        "½" * LONGEST,
    ],
)
def test_what_cannot_be_read_is_asked_about(typed: str) -> None:
    """Nothing, two figures at once, no figure, a trick: a sentence each, and never a guess."""
    for unit in ("kg", "mm"):
        with pytest.raises(Unclear) as asked:
            read_quantity(typed, unit)
        assert asked.value.text == typed
        assert str(asked.value).endswith((".", "?"))
        assert len(str(asked.value)) < 120


def test_ten_thousand_characters_are_too_long() -> None:
    """Forty are enough for any figure, whatever stands around it."""
    assert read_quantity("9" * LONGEST, "g").value == pytest.approx(1e40)
    assert read_quantity(" " * 100 + "3" + " " * 100, "g").value == 3
    with pytest.raises(Unclear, match="too long"):
        read_quantity("9" * (LONGEST + 1), "g")


@pytest.mark.parametrize("typed", ["٤٠", "４０", "४०", "４０ kg", "٤ ٣"])
def test_figures_of_other_scripts_are_read_or_asked_about(typed: str) -> None:
    """Forty is forty in any script; nothing crashes on one."""
    try:
        assert read_quantity(typed, "kg").value == 40
    except Unclear:
        assert typed == "٤ ٣"


PIECES = st.sampled_from(
    [
        *"0123456789.,/'\"½¼¾-−–+ %°²٤４",
        NBSP,
        THIN,
        " 000",
        "1e",
        "kg",
        "ml",
        "ft",
        "in",
        "gal",
        "L",
    ]
)


@settings(max_examples=400)
@given(st.one_of(st.text(), st.lists(PIECES, max_size=12).map("".join)), SYMBOLS)
def test_no_text_at_all_is_a_crash(typed: str, unit: str) -> None:
    """Whatever is typed is a finite figure, or is asked about."""
    try:
        reading = read_quantity(typed, unit)
    except Unclear as unclear:
        event(type(unclear).__name__)
        return
    assert math.isfinite(reading.value)
    assert reading.value >= 0 or UNITS[unit].kind == "temperature"


@settings(max_examples=200)
@given(st.just(0.0) | st.floats(1e-6, 1e7), SYMBOLS)
def test_what_is_printed_can_be_typed(value: float, unit: str) -> None:
    """Copied from the page into the field, a figure is read as it was shown."""
    half_a_digit = max(value * 5e-4, 1e-12)
    assert read_quantity(show(value, unit), unit).value == pytest.approx(value, abs=half_a_digit)


@given(st.floats(-50, 50), st.integers(0, 3))
def test_a_printed_temperature_can_be_typed(value: float, decimals: int) -> None:
    """Below zero too, with the sign that the page prints."""
    reading = read_quantity(show(value, "°C", decimals), "°C")
    assert reading.value == pytest.approx(value, abs=0.5 * 10**-decimals + 1e-9)


@given(st.floats(0.001, 1e6), SYMBOLS)
def test_how_it_was_understood_is_understood_again(value: float, unit: str) -> None:
    """Typed as it was read, an answer is read the same."""
    first = read_quantity(f"{value:.6f}", unit)
    assert read_quantity(first.read_as, unit).value == pytest.approx(first.value, rel=1e-9)


@given(st.integers(0, 999_999), st.integers(0, 99), SYMBOLS)
def test_a_comma_and_a_point_are_alike_before_two_digits(whole: int, rest: int, unit: str) -> None:
    """1,30 and 1.30 are the same figure; so is it in groups of three."""
    point, comma = (read_quantity(f"{whole}{sign}{rest:02}", unit).value for sign in ".,")
    grouped = f"{whole:,}.{rest:02}".replace(",", " ")
    assert point == comma == read_quantity(grouped, unit).value


@given(st.integers(0, 60), st.integers(0, 11))
def test_feet_and_inches_are_twelfths(feet: int, inches: int) -> None:
    """However they are written, feet and inches come to the same millimetres."""
    expected = pytest.approx((feet * 12 + inches) * 25.4)
    for typed in (f"{feet}'{inches}\"", f"{feet} ft {inches} in", f"{feet}’ {inches}"):
        assert read_quantity(typed, "mm").value == expected
