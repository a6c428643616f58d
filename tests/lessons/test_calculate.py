"""One set of numbers for a question: drawn from a seed, clear of its slips, and new."""

from collections.abc import Iterator
from collections.abc import Set as AbstractSet

import pytest
from lessons_specimens import CHAIN, RESIN, edited, on_four_metres, question

from trainer.lessons.calculate import (
    Variant,
    close_slips,
    fresh_variant,
    is_fair,
    slip_figures,
    variant,
)

SEEDS = [f"mina-{number}" for number in range(60)]
WIDTH = "given.width_mm = 1000"


def with_slip(change: str, tolerance: str = "2 %") -> str:
    """Return the resin question with another first slip and another tolerance."""
    text = edited(RESIN, WIDTH, change)
    return edited(text, 'tolerance = "2 %"', f'tolerance = "{tolerance}"')


class Counted(AbstractSet[str]):
    """Variants that somebody saw, counting how often one is looked up."""

    def __init__(self, seen: AbstractSet[str] = frozenset()) -> None:
        self.seen, self.looks = seen, 0

    def __contains__(self, key: object) -> bool:
        self.looks += 1
        return key in self.seen

    def __iter__(self) -> Iterator[str]:
        return iter(self.seen)

    def __len__(self) -> int:
        return len(self.seen)


def test_the_same_seed_and_redraws_make_the_same_variant() -> None:
    """A question shown a year ago is made again from what was stored with it."""
    for seed in SEEDS:
        shown = fresh_variant(question(), seed)
        assert shown is not None
        again = variant(question(), shown.seed, shown.redraws)
        assert (again, again.key) == (shown, shown.key)


def test_a_given_is_drawn_by_itself() -> None:
    """Another given beside it, or another slip, leaves the figures as they were."""
    lone = edited(RESIN, "given.mat_g_per_m2 = [300, 450]\n", "")
    other = edited(lone, WIDTH, "given.width_mm = 500")
    for seed in SEEDS:
        lengths = {variant(question(text), seed).givens["length_m"] for text in (RESIN, other)}
        assert len(lengths) == 1


def test_seeds_lead_to_different_numbers() -> None:
    """Sixty people meet most of the twenty variants."""
    assert len({variant(question(), seed).key for seed in SEEDS}) > 10


def test_a_key_is_its_numbers() -> None:
    """The seed is no part of it, and every number is."""
    drawn = on_four_metres()
    assert Variant(drawn.question, "another", 7, drawn.givens).key == drawn.key
    assert on_four_metres(length_m=4.4).key != drawn.key
    assert on_four_metres(mat_g_per_m2=300).key != drawn.key


def test_the_text_has_the_numbers_in_it() -> None:
    """The question's and each ask's."""
    assert on_four_metres().text().replace("\u00a0", " ") == (
        "A joint 4.0 m long, 450 g/m² mat, 75 mm wide, 2.5 to 1. How much resin?"
    )
    chain = on_four_metres(edited(CHAIN, "in the strip?", "in {length_m}?"))
    words = chain.text(chain.ask_for("bandage.glass"))
    assert words.replace("\u00a0", " ") == "How much glass is in 4.0 m?"


def test_the_working_is_the_engines() -> None:
    """4 m × 75 mm × 450 g/m² is 135 g of glass, and 0.37125 kg of resin with the allowance."""
    working = on_four_metres().working()
    assert working.figures["bandage.glass"] == pytest.approx(135)
    assert working.value == pytest.approx(0.37125)


def test_a_slip_must_be_three_tolerances_off() -> None:
    """2.6 to 1 for 2.5 is 4 % more: fair at 1 %, close at 2 %, by 14.85 g."""
    slip = "given.ratio = 2.6"
    assert is_fair(on_four_metres(with_slip(slip, tolerance="1 %")))
    ((named, distance),) = close_slips(on_four_metres(with_slip(slip)))
    assert named.name == "the whole roll, not the strip"
    assert distance == pytest.approx(0.01485)


def test_a_slip_that_changes_nothing_is_close() -> None:
    """Reading 450 for 450 is no mistake that anybody could find."""
    drawn = on_four_metres(with_slip("given.mat_g_per_m2 = 450"))
    assert [distance for _, distance in close_slips(drawn)] == [0]
    assert is_fair(on_four_metres(with_slip("given.mat_g_per_m2 = 450"), mat_g_per_m2=300))


def test_a_slip_that_cant_be_worked_is_close() -> None:
    """Nobody can stop at the resin while they are still at the glass in kilograms."""
    drawn = on_four_metres(with_slip('line.glass_kg = {same_as = "resin"}'))
    assert [slip.name for slip, _ in close_slips(drawn)] == ["the whole roll, not the strip"]


def test_in_a_chain_a_slip_is_made_once() -> None:
    """A misread width is 1800 g of glass; with 135 g above it, the resin comes out right."""
    drawn = on_four_metres(edited(CHAIN, 'on = "bandage.glass"\n', ""))
    whole_roll = drawn.question.slips[0]
    figures = dict(slip_figures(drawn, whole_roll, drawn.working().figures))
    assert {ask.line: figure for ask, figure in figures.items()} == pytest.approx(
        {"bandage.glass": 1800, "resin": 0.37125}
    )


def test_in_a_chain_a_slip_shows_at_one_line_at_least() -> None:
    """With the glass right, half the resin shows below it, and nothing above."""
    text = edited(edited(CHAIN, 'on = "bandage.glass"\n', ""), WIDTH, "line.net = {times = 0.5}")
    assert is_fair(on_four_metres(text))
    close = edited(text, "{times = 0.5}", "{times = 1.05}")
    assert [slip.name for slip, _ in close_slips(on_four_metres(close))] == [
        "the whole roll, not the strip"
    ]


def test_a_draw_that_collides_is_drawn_again() -> None:
    """Nobody is shown 450 where 450 is the slip, and those who first drew it were redrawn."""
    asked = question(with_slip("given.mat_g_per_m2 = 450"))
    first = {seed: variant(asked, seed).givens["mat_g_per_m2"] for seed in SEEDS}
    shown = {seed: fresh_variant(asked, seed) for seed in SEEDS}
    assert set(first.values()) == {300, 450}
    for seed, drawn in shown.items():
        assert drawn is not None
        assert drawn.givens["mat_g_per_m2"] == 300
        assert (drawn.redraws > 0) == (first[seed] == 450)


def test_a_draw_is_repeated_fifty_times_at_most() -> None:
    """Where every draw collides, there is none after the first and fifty redraws."""
    hopeless = question(with_slip("given.ratio = 2.5"))
    seen = Counted()
    assert fresh_variant(hopeless, "mina", seen) is None
    assert seen.looks == 51


def test_a_variant_that_was_seen_is_avoided() -> None:
    """Each of twenty variants comes once, and then there is none."""
    seen: set[str] = set()
    for seed in (f"mina-{number}" for number in range(300)):
        drawn = fresh_variant(question(), seed, seen)
        if drawn is None:
            break
        assert drawn.key not in seen
        seen.add(drawn.key)
    assert len(seen) == 20
    assert all(fresh_variant(question(), seed, seen) is None for seed in SEEDS)


def test_what_others_saw_changes_nothing() -> None:
    """A variant that isn't drawn may have been seen: the draw stays as it was."""
    first = fresh_variant(question(), "mina")
    assert first is not None
    others = {fresh.key for seed in SEEDS if (fresh := fresh_variant(question(), seed))}
    assert fresh_variant(question(), "mina", others - {first.key}) == first
