"""How many people the running rule lets through, told from the rule as it stands."""

from dataclasses import replace

import pytest
from records_cast import RULES

from trainer.records.chances import chance_of_a_pass, chance_within

ONE_LOOK = replace(RULES, cured_looks=(3,), cured_wrongs=(0,), run_ends_at_wrong=1)


def test_one_look_is_the_plain_power() -> None:
    """Three of three: 0.6 x 0.6 x 0.6 is 0.216, worked by hand."""
    assert chance_of_a_pass(0.6, ONE_LOOK) == pytest.approx(0.216)


def test_one_wrong_allowed_is_the_plain_binomial() -> None:
    """Two or three of three at one half: (3 + 1) of 8."""
    rules = replace(ONE_LOOK, cured_wrongs=(1,), run_ends_at_wrong=2)
    assert chance_of_a_pass(0.5, rules) == pytest.approx(0.5)


def test_a_second_look_adds_those_who_failed_the_first() -> None:
    """Right both times, or one wrong of three: 1/4 + 2/8 at one half."""
    rules = replace(RULES, cured_looks=(2, 3), cured_wrongs=(0, 1), run_ends_at_wrong=2)
    assert chance_of_a_pass(0.5, rules) == pytest.approx(0.5)


@pytest.mark.parametrize(("share", "passes"), [(0.0, 0.0), (1.0, 1.0)])
def test_the_ends(share: float, passes: float) -> None:
    """Never right never passes; always right always does."""
    assert chance_of_a_pass(share, RULES) == passes


def test_several_runs_are_several_chances() -> None:
    """Two runs at a half each leave a quarter."""
    rules = replace(ONE_LOOK, cured_looks=(1,))
    assert chance_within(2, 0.5, rules) == pytest.approx(0.75)
