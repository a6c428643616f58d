"""What a given may be, and how one is drawn."""

import os
import subprocess
import sys
from collections import Counter

import pytest

from trainer.lessons.draws import OneOf, Steps, draw, printed

LENGTH = Steps(2.4, 6.0, 0.1)
MAT = OneOf((300, 450))


def test_steps_hold_both_ends() -> None:
    """From 2.4 to 6.0 in tenths there are 37 lengths."""
    assert LENGTH.count == 37
    assert (LENGTH.value(0), LENGTH.value(36)) == (2.4, 6.0)


def test_steps_are_clean_figures() -> None:
    """No step carries the dust of floats: 2.4 and three tenths are 2.7."""
    assert [LENGTH.value(step) for step in range(4)] == [2.4, 2.5, 2.6, 2.7]


@pytest.mark.parametrize(
    ("steps", "decimals"),
    [
        (Steps(2, 10, 1), 0),
        (Steps(2.4, 6.0, 0.1), 1),
        (Steps(0.125, 2.125, 0.5), 3),
        (Steps(1, 2, 0.0001), 4),
        (Steps(1, 2, 0.00002), 5),
    ],
)
def test_a_given_has_the_decimals_of_its_step(steps: Steps, decimals: int) -> None:
    """The low end counts too, where it is finer than the step."""
    assert steps.decimals() == decimals


def test_tiny_steps_differ() -> None:
    """Two steps of a hundred-thousandth are two figures."""
    assert Steps(1, 2, 0.00001).value(1) == 1.00001


def test_a_range_is_checked_at_its_ends() -> None:
    """What a calculation accepts at both ends it accepts between; a list is checked whole."""
    assert LENGTH.ends() == (2.4, 6.0)
    assert MAT.ends() == (300, 450)


def test_the_same_seed_draws_the_same() -> None:
    """A question can be made again exactly as it was asked."""
    assert [draw(LENGTH, f"{seed}", 3, "length_m") for seed in range(50)] == [
        draw(LENGTH, f"{seed}", 3, "length_m") for seed in range(50)
    ]


def test_a_draw_hangs_on_nothing_else() -> None:
    """Another process with another hash seed, and other draws before, draws the same."""
    lines = (
        "from trainer.lessons.draws import Steps, draw",
        "draw(Steps(1, 9, 1), 'before', 0, 'other')",
        "print([draw(Steps(2.4, 6.0, 0.1), f'{n}', 1, 'length_m') for n in range(20)])",
    )
    elsewhere = subprocess.run(  # noqa: S603 - our own text
        [sys.executable, "-c", "\n".join(lines)],
        env={**os.environ, "PYTHONHASHSEED": "77", "TZ": "Asia/Tokyo"},
        capture_output=True,
        check=True,
        text=True,
    )
    assert elsewhere.stdout.strip() == str([draw(LENGTH, f"{n}", 1, "length_m") for n in range(20)])


@pytest.mark.parametrize("other", [("seed-2", 0, "a"), ("seed", 1, "a"), ("seed", 0, "b")])
def test_seed_redraws_and_name_each_matter(other: tuple[str, int, str]) -> None:
    """Each of the three leads to other figures: somewhere in twenty they differ."""
    many = [Steps(0, 1000, 1)] * 20
    assert [draw(each, f"seed{n}", 0, "a") for n, each in enumerate(many)] != [
        draw(each, f"{other[0]}{n}", other[1], other[2]) for n, each in enumerate(many)
    ]


def test_every_value_comes_up() -> None:
    """Of 4000 draws from eight values each comes up about 500 times."""
    times = Counter(draw(Steps(1, 8, 1), f"seed-{n}", 0, "hands") for n in range(4000))
    assert sorted(times) == [1, 2, 3, 4, 5, 6, 7, 8]
    # Five standard deviations of a fair draw are 105.
    assert all(395 <= count <= 605 for count in times.values())


def test_a_fixed_given_is_itself() -> None:
    """One value is drawn whatever the seed."""
    assert {draw(OneOf((2.5,)), f"seed-{n}", 0, "ratio") for n in range(20)} == {2.5}


@pytest.mark.parametrize(
    ("value", "unit", "decimals", "text"),
    [
        (2.4, "m", 1, "2.4 m"),
        (3.0, "m", 1, "3.0 m"),
        (3.0, "m", None, "3 m"),
        (450, "g/m²", None, "450 g/m²"),
        (2.5, "", None, "2.5"),
        ((2.4, 3.0, 3.6), "m", None, "2.4 m, 3 m and 3.6 m"),
        ((2.4, 3.6), "m", None, "2.4 m and 3.6 m"),
        ((2.4,), "m", None, "2.4 m"),
        ("drip", "", None, "drip"),
    ],
)
def test_a_given_is_printed_with_its_unit(
    value: object, unit: str, decimals: int | None, text: str
) -> None:
    """A list is read out; number and unit stay on one line."""
    assert printed(value, unit, decimals).replace("\u00a0", " ") == text
