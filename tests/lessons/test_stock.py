"""content/stock.toml: the sizes in which things are sold."""

from pathlib import Path

import pytest
from lessons_specimens import STOCK, edited, line_of

from trainer.lessons.errors import AuthorError
from trainer.lessons.stock import Sizes, read_stock


def mistake_in(text: str, folder: Path) -> AuthorError:
    """Return the mistake for which a text is refused as a file of a content folder."""
    (folder / "stock.toml").write_text(text, "utf-8")
    with pytest.raises(AuthorError) as refused:
        read_stock(folder)
    assert refused.value.file == "content/stock.toml"
    return refused.value


def test_sizes_are_read_with_their_standing(content: Path) -> None:
    """Rolls of tape as sold, and how well that is known."""
    assert read_stock(content) == {"tape": Sizes("common practice", {"roll_m": (20, 25, 50)})}


@pytest.mark.parametrize("sizes", ["[0, 20]", "[-5]", '["20 m"]', "[true]", "20", '"20"'])
def test_a_size_is_above_zero(sizes: str, tmp_path: Path) -> None:
    """Nobody sells a roll of nothing."""
    text = edited(STOCK, "[20, 25, 50]", sizes)
    mistake = mistake_in(text, tmp_path)
    assert mistake.sentence == "'roll_m' must be a list of sizes above zero."
    assert mistake.line == line_of(text, "roll_m")


def test_a_standing_is_needed(tmp_path: Path) -> None:
    """Every size says whose word it is."""
    mistake = mistake_in("[tape]\nroll_m = [20]\n", tmp_path)
    assert mistake.sentence == "[tape] has no 'standing'."


def test_a_loose_key_is_refused(tmp_path: Path) -> None:
    """Sizes belong to a material."""
    mistake = mistake_in("roll_m = [20]\n" + STOCK, tmp_path)
    assert (mistake.line, mistake.sentence) == (1, "'roll_m' must be a table.")
