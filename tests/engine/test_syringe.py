"""The mark on a syringe, and what reading it does to the dose."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from trainer.engine import Refused, line_keys, syringe_mark, work

VOLUMES = st.floats(0.1, 10_000)
GRADUATIONS = st.floats(0.05, 50)


def test_the_lines_have_the_keys_that_questions_name() -> None:
    """A question names a line by its key, so keys are kept."""
    assert line_keys(syringe_mark) == ("mark", "error")


@pytest.mark.parametrize(
    ("volume", "graduation", "mark", "error"),
    [
        (33.85, 1, 34, 0.443),
        (34.2, 1, 34, -0.585),
        (34, 1, 34, 0),
        (34.5, 1, 34, -1.449),
        (7.6, 5, 10, 31.579),
        (7.5, 5, 5, -33.333),
        (1.13, 0.5, 1, -11.504),
        (0.6, 1, 1, 66.667),
    ],
)
def test_the_nearest_mark(volume: float, graduation: float, mark: float, error: float) -> None:
    """By hand; halfway between two marks it is the lower one."""
    figures = work(syringe_mark(volume, graduation)).figures
    assert figures["mark"] == pytest.approx(mark)
    assert figures["error"] == pytest.approx(error, abs=5e-4)


@pytest.mark.parametrize(("volume", "graduation"), [(0.5, 1), (0.4, 1), (2.5, 5), (24, 50)])
def test_less_than_half_a_mark_takes_a_finer_syringe(volume: float, graduation: float) -> None:
    """The nearest mark is nothing then; at just half it is too."""
    with pytest.raises(Refused, match="Take a finer syringe"):
        work(syringe_mark(volume, graduation))


@given(VOLUMES, GRADUATIONS)
def test_a_mark_is_never_further_than_half_a_graduation(volume: float, graduation: float) -> None:
    """And it is a mark: a whole number of graduations, one at least."""
    assume(volume > 0.51 * graduation)
    mark = work(syringe_mark(volume, graduation)).figures["mark"]
    assert abs(mark - volume) <= graduation / 2 * (1 + 1e-6)
    marks = mark / graduation
    assert marks == pytest.approx(round(marks))
    assert round(marks) >= 1


@given(VOLUMES, GRADUATIONS)
def test_the_error_is_of_what_was_wanted(volume: float, graduation: float) -> None:
    """The volume wanted and the error together are what is drawn up."""
    assume(volume > 0.51 * graduation)
    figures = work(syringe_mark(volume, graduation)).figures
    assert volume * (1 + figures["error"] / 100) == pytest.approx(figures["mark"])


@given(st.integers(1, 500), st.floats(0.05, 20))
def test_a_volume_on_a_mark_has_no_error(marks: int, graduation: float) -> None:
    """The limit: nothing to round."""
    volume = marks * graduation
    assume(volume >= 0.1)
    assert work(syringe_mark(volume, graduation)).figures["error"] == pytest.approx(0, abs=1e-9)
