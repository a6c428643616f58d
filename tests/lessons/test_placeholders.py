"""`{name}` and `{name:unit}`, the one way to print a given."""

import pytest
from lessons_specimens import RESIN, edited, on_four_metres

from trainer.engine import METHODS
from trainer.lessons.placeholders import each_placeholder, fill


def filled(text: str) -> str:
    """Return a text filled with the figures of 4 m of joint, in plain spaces."""
    drawn = on_four_metres()
    question = drawn.question
    filled = fill(text, question.method, question.givens, drawn.givens)
    return filled.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("It is {length_m} long.", "It is 4.0 m long."),
        ("{ratio} to 1", "2.5 to 1"),
        ("{allowance_percent} on top", "10 % on top"),
        ("{mat_g_per_m2} mat", "450 g/m² mat"),
        ("{length_m}, {length_m}", "4.0 m, 4.0 m"),
        ("no figure", "no figure"),
    ],
)
def test_a_name_prints_number_and_unit(text: str, shown: str) -> None:
    """A range prints the decimals of its step, a fixed figure its own."""
    assert filled(text) == shown


def test_a_default_can_be_printed() -> None:
    """What isn't given stands in the question as it will be worked: 75 mm of bandage."""
    assert filled("{width_mm} wide") == "75 mm wide"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("{mat_g_per_m2:oz/ft²}", "1.475 oz/ft²"),  # 450 g/m² ÷ 305.15 g/m²
        ("{length_m:ft}", "13.12 ft"),  # 4 m ÷ 0.3048 m
        ("{length_m:mm}", "4000 mm"),
    ],
)
def test_another_unit_can_be_asked_for(text: str, shown: str) -> None:
    """It is printed with four figures that matter."""
    assert filled(text) == shown


def test_a_share_can_be_said_in_words() -> None:
    """Two thirds of the gel time, or what somebody has set instead."""
    method = METHODS["working_time"]
    text = "You count on {share:in words} of it."
    assert fill(text, method, {}, {}) == "You count on two thirds of it."
    assert fill(text, method, {}, {"share": 0.5}) == "You count on half of it."


def test_a_list_is_printed_in_another_unit() -> None:
    """Each of its lengths is turned: 0.5 m and 0.25 m are 500 mm and 250 mm."""
    text = edited(RESIN, 'calculate = "resin_for_bandage"', 'calculate = "bandage_length"')
    text = text[: text.index("given.length_m")] + "given.lengths_m = [0.5, 0.25]\n"
    text = edited(text, 'line = "resin"', 'line = "bandage"')
    text = edited(text, 'unit = "g"', 'unit = "m"')
    text = edited(text, text.splitlines()[3], 'ask = "Cut {lengths_m:mm}."')
    drawn = on_four_metres(text)
    shown = fill("{lengths_m:mm}", drawn.question.method, {}, {"lengths_m": (0.5, 0.25)})
    assert shown.replace("\u00a0", " ") == "500 mm and 250 mm"


def test_names_and_units_are_found() -> None:
    """A reader of content sees each placeholder once, in order."""
    found: list[tuple[str, str | None]] = []
    each_placeholder("{a} and {b:oz/ft²}, {a}", lambda name, unit: found.append((name, unit)))
    assert found == [("a", None), ("b", "oz/ft²"), ("a", None)]
