"""Where a figure comes from, and the marks that lead there."""

from trainer.engine import METHODS
from trainer.engine.materials import NAMED
from trainer.lessons.standing import Notes, of_constant, of_parameter, of_stock
from trainer.lessons.stock import Sizes

WRAP = of_constant(NAMED["wrap"])
LAP = of_constant(NAMED["mat-lap"])


def test_a_constant_has_words_figure_standing_and_source() -> None:
    """As the engine keeps them."""
    assert (WRAP.words, WRAP.figure) == ("wrap on to each face", "50\u00a0mm")
    assert (WRAP.standing, WRAP.source) == ("common practice", "no published source")


def test_a_figure_is_told_with_its_standing() -> None:
    """What it is, how much, how well that is known, and by whom."""
    assert WRAP.told.replace("\u00a0", " ") == (
        "Wrap on to each face: 50 mm. Common practice: no published source."
    )


def test_a_default_of_a_calculation_is_the_constant_itself() -> None:
    """One figure is listed once, wherever it was met."""
    parameter = METHODS["open_end_patch"].parameters["wrap_mm"]
    assert of_parameter(parameter) == WRAP


def test_invented_sizes_say_so() -> None:
    """Nobody buys by them; a firm's own sizes stand under the firm's words."""
    invented = of_stock("tape", "width_mm", Sizes("invented", {"width_mm": (50, 75)}))
    assert (invented.words, invented.figure) == ("tape, width as sold", "50\u00a0mm and 75\u00a0mm")
    assert invented.standing == "invented sizes, put in your merchant's"
    own = of_stock("catalyst", "bottles_ml", Sizes("our list", {"bottles_ml": (100,)}))
    assert (own.figure, own.standing) == ("100\u00a0ml", "our list")


def test_the_first_appearance_alone_is_marked() -> None:
    """The second finds it known; figures are numbered as they come."""
    notes = Notes()
    first, again, other = (notes.note(each, marked=True) for each in (WRAP, WRAP, LAP))
    assert (len(first), again, len(other)) == (1, "", 1)
    assert notes.figures == [WRAP, LAP]
    assert notes.drawn(f"50 mm{first}, 50 mm{other}") == (
        '50 mm<sup class="figure-note"><a id="figure-mark-1" href="#figure-1"'
        ' aria-label="1, where 50\u00a0mm comes from">1</a></sup>, '
        '50 mm<sup class="figure-note"><a id="figure-mark-2" href="#figure-2"'
        ' aria-label="2, where 50\u00a0mm comes from">2</a></sup>'
    )


def test_a_heading_passes_its_mark_on() -> None:
    """It is listed from there, and marked where it is met next."""
    notes = Notes()
    assert notes.note(WRAP, marked=False) == ""
    assert notes.note(WRAP, marked=True) != ""


def test_a_text_that_holds_no_link_loses_its_marks() -> None:
    """Such as what is said of a picture."""
    notes = Notes()
    assert notes.without_marks(f"50 mm{notes.note(WRAP, marked=True)}.") == "50 mm."
