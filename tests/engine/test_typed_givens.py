"""Givens as people type them, on a command line or in a lesson."""

import pytest

from trainer.engine import METHODS, Unclear
from trainer.engine.typed_givens import read_givens

CATALYST = METHODS["catalyst_by_mass"]


def test_each_key_gets_its_figure() -> None:
    """1300 g is 1.3 kg, and a bare 3 is in the parameter's own unit."""
    assert read_givens(CATALYST, ["resin_kg=1300g", "percent=3"]) == {
        "resin_kg": 1.3,
        "percent": 3,
    }


def test_a_list_is_read_with_its_counts() -> None:
    """Two of 2.4 m and one of 3.6 m."""
    givens = read_givens(METHODS["tape_length"], ["joints_m=2.4:2,3.6", "meeting_ends=1"])
    assert givens == {"joints_m": (2.4, 2.4, 3.6), "meeting_ends": 1}


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["resin_kg"], "'resin_kg' isn't KEY=VALUE, such as resin_kg=1.3."),
        (["resin=1"], "'catalyst_by_mass' takes no 'resin'. It takes resin_kg, "),
        (["resin_kg=1", "resin_kg=2"], "resin_kg: It is given twice. Leave one of them out."),
        (["percent=3"], "'catalyst_by_mass' needs resin_kg too."),
        (["resin_kg=1", "percent=90"], "percent: The "),
        (["resin_kg=2 m"], "resin_kg: You wrote m; "),
    ],
)
def test_what_cant_be_read_is_told_by_its_key(words: list[str], sentence: str) -> None:
    """No figure, no such key, twice, missing, out of range, of another kind."""
    with pytest.raises(Unclear) as refused:
        read_givens(CATALYST, words)
    assert str(refused.value).startswith(sentence)
