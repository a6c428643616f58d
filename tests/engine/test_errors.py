"""What the engine says: one error each, which carries its facts and writes its sentence."""

import pytest

from trainer.engine import EngineError, NoSuch, NotAFigure, OtherKind, OutOfRange, Refused, Unclear

RESIN = OutOfRange("resin", 0.01, "kg", 0.05, 200)


def test_every_error_is_an_engine_error() -> None:
    """One name catches them all; each is a ValueError for whoever doesn't know ours."""
    for error in (OutOfRange, NotAFigure, Refused, Unclear, OtherKind, NoSuch):
        assert issubclass(error, EngineError)
        assert issubclass(error, ValueError)
    assert issubclass(OtherKind, Unclear)


def test_out_of_range_says_what_where_and_how_to_mend_it() -> None:
    """The figure, its unit and both ends of the range stand in one sentence."""
    assert str(RESIN) == "The resin is 0.01 kg; it must lie between 0.05 and 200 kg."
    assert (RESIN.words, RESIN.value, RESIN.unit, RESIN.low, RESIN.high) == (
        "resin",
        0.01,
        "kg",
        0.05,
        200,
    )


def test_out_of_range_without_a_unit() -> None:
    """A plain number has no unit to show."""
    error = OutOfRange("number of coats", 4, "", 1, 3)
    assert str(error) == "The number of coats is 4; it must lie between 1 and 3."


def test_out_of_range_writes_figures_in_full() -> None:
    """No powers of ten, and no rounding on to the edge that was passed."""
    assert "is 1300000 g;" in str(OutOfRange("glass", 1_300_000, "g", 0.5, 250_000))
    assert "is 6.00001 %;" in str(OutOfRange("catalyst", 6.00001, "%", 0.5, 6))


def test_not_a_figure_shows_what_came_instead() -> None:
    """The value is shown as it came, with what it must be."""
    error = NotAFigure("resin", "1.3 kg")
    assert str(error) == "The resin is '1.3 kg'; it must be a finite number."
    assert (error.words, error.value, error.must) == ("resin", "1.3 kg", "a finite number")
    assert str(NotAFigure("coats", 1.5, "a whole number")).endswith("it must be a whole number.")


def test_refused_is_its_own_sentence() -> None:
    """Where figures refuse each other, the reason is the message."""
    assert str(Refused("More was laid than mixed.")) == "More was laid than mixed."


def test_unclear_keeps_what_was_typed_beside_what_to_do() -> None:
    """The page shows the sentence by the field and the text in it."""
    error = Unclear("1,300", "Is that 1.300 or 1300?")
    assert (error.text, str(error)) == ("1,300", "Is that 1.300 or 1300?")


@pytest.mark.parametrize(
    ("name", "near", "sentence"),
    [
        ("bandage_lenght", "bandage_length", "Did you mean 'bandage_length'?"),
        ("zzz", None, "There is no calculation 'zzz'."),
    ],
)
def test_no_such_guesses_only_where_something_is_near(
    name: str, near: str | None, sentence: str
) -> None:
    """A near name is offered; with nothing near, nothing is offered."""
    error = NoSuch("calculation", name, ["bandage_length", "tape_length"])
    assert (error.what, error.name, error.near) == ("calculation", name, near)
    assert str(error).endswith(sentence)
