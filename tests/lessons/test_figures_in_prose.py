"""Placeholders in prose: a constant, a size that is sold, the answer of a calculation."""

import pytest

from trainer.lessons.errors import AuthorError
from trainer.lessons.figures_in_prose import BadPlaceholder, Filled, fill_each, fill_prose
from trainer.lessons.stock import Sizes

STOCK = {"tape": Sizes("invented", {"width_mm": (50, 75), "roll_m": (20, 25, 50)})}


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("{wrap} on to every face", "50 mm on to every face"),
        ("{resin-to-glass} to 1", "2.5 to 1"),
        ("{catalyst-density}", "1.17 kg/L"),
        ("{wrap:cm}", "5 cm"),
        ("{working-share:in words} of it", "two thirds of it"),
        ("{mat-lap:in}", "1.969 in"),
        ("{stock.tape.width_mm}", "50 mm and 75 mm"),
        ("{stock.tape.roll_m}", "20 m, 25 m and 50 m"),
        ("{as-written 40 mm}", "40 mm"),
        ("two {{braces}}", "two {braces}"),
        ("{: .class}", "{: .class}"),
        ("none", "none"),
    ],
)
def test_a_placeholder_prints_figure_and_unit(text: str, printed: str) -> None:
    """By its name, in its own unit or another of the kind; doubled braces print one."""
    assert fill_prose(text, STOCK).replace("\u00a0", " ") == printed


@pytest.mark.parametrize(
    ("how", "printed"),
    [
        ("", "33.85 ml"),
        (" line=mass", "39.6 g"),
        (" line=mass unit=kg", "0.0396 kg"),
        (" line=mass decimals=0", "40 g"),
        (" unit=L decimals=3", "0.034 L"),
    ],
)
def test_a_calculation_prints_a_line_of_it(how: str, printed: str) -> None:
    """1320 g × 3 % is 39.6 g, and 39.6 g ÷ 1.17 is 33.846 ml."""
    text = f"{{work catalyst_by_mass resin_kg=1.32 percent=3{how}}}"
    assert fill_prose(text, STOCK).replace("\u00a0", " ") == printed


def test_a_calculation_is_given_as_on_a_command_line() -> None:
    """Two of 2.4 m and 360 cm are 8.4 m."""
    text = "{work tape_length joints_m=2.4:2,360cm meeting_ends=0}"
    assert fill_prose(text, STOCK) == "8.4\u00a0m"


@pytest.mark.parametrize(
    ("text", "sentence", "mend"),
    [
        ("{wrapp}", "There is no constant 'wrapp'.", "Did you mean 'wrap'?"),
        ("{stock.tap.roll_m}", "There are no sizes 'stock.tap.roll_m'.", "'stock.tape.roll_m'"),
        ("{stock.tape.depth_mm}", "There are no sizes", "'stock.tape.width_mm'"),
        ("{work catalyst_by_mas}", "There is no calculation 'catalyst_by_mas'.", "catalyst_by_m"),
        ("{work catalyst_by_mass percent=3}", "'catalyst_by_mass' needs resin_kg too.", ""),
        ("{work catalyst_by_mass kg=3}", "'catalyst_by_mass' takes no 'kg'.", ""),
        (
            "{work catalyst_by_mass resin_kg=300}",
            "resin_kg: The resin is 300 kg; it must lie between 0.05 and 200 kg.",
            "",
        ),
        (
            "{work catalyst_by_mass resin_kg=1 line=masses}",
            "'catalyst_by_mass' has no line 'masses'.",
            "Did you mean 'mass'?",
        ),
        ("{work catalyst_by_mass resin_kg=1 decimals=many}", "The decimals are a whole", ""),
        ("{work catalyst_by_mass resin_kg=1 unit=kg}", "can't be printed in 'kg'.", "ml"),
        ("{beginner-batch:litres}", "1\u00a0L can't be printed in 'litres'.", "'L'?"),
        ("{wrap:in words}", "50\u00a0mm can't be printed in 'in words'.", "in, m, mm"),
        ("{resin-to-glass:kg}", "2.5 can't be printed in 'kg'.", ""),
        ("{wrap:kg}", "50\u00a0mm can't be printed in 'kg'.", "mm"),
        ("{wrap on", "This brace isn't closed.", "Double it to print it."),
        ("{}", "There is no constant ''.", "wrap"),
    ],
)
def test_what_nothing_fills_is_refused_with_a_guess(text: str, sentence: str, mend: str) -> None:
    """A wrong name, a wrong argument, a figure out of range, a unit of another kind."""
    with pytest.raises(BadPlaceholder) as refused:
        fill_prose(f"Lay {text} of it.", STOCK)
    assert sentence in refused.value.sentence
    assert mend in refused.value.mend
    assert text.startswith(refused.value.text)
    assert not isinstance(refused.value, AuthorError)


def rests_on(text: str) -> list[str]:
    """Return the words of the defaults that one placeholder rests on."""
    found: list[str] = []

    def put(filled: Filled) -> str:
        found.extend(figure.words for figure in filled.figures)
        return ""

    fill_each(text, STOCK, put)
    return found


def test_a_calculation_rests_on_the_defaults_that_go_into_its_line() -> None:
    """The density makes millilitres of grams; the grams themselves don't need it."""
    given = "catalyst_by_mass resin_kg=1.32 percent=3"
    assert rests_on(f"{{work {given}}}") == ["density of catalyst"]
    assert rests_on(f"{{work {given} line=mass}}") == []
    assert rests_on(f"{{work {given} catalyst_kg_per_l=1.2}}") == []


def test_what_an_author_lets_stand_rests_on_nothing() -> None:
    """It is the scenario's own figure."""
    assert rests_on("{as-written 40 mm}") == []
