"""How much of a sum's working somebody sees: less each time they get it right."""

from dataclasses import replace

import pytest
from web_bench import Bench
from web_cast import NOOR
from web_content import CHAIN
from web_kinds import SYRINGE, answer_right
from web_page import Page
from web_visitor import Visitor

from trainer.engine import method_named

BESIDE, ABOVE = "The same job on other figures", "Your figures, worked as far as"


def again(bench: Bench, noor: Visitor, path: str, *, alone: bool = False) -> Page:
    """Answer a question right on the numbers and at the stage that it is shown, once more."""
    page = noor.alone(path) if alone else noor.open(path)
    told = answer_right(bench, noor, page)
    assert told.mark == "Right"
    return page


def fields_of(page: Page) -> int:
    """Return how many figures are asked for."""
    return len(page.main.all("input", type="text"))


def asked(page: Page) -> str:
    """Return what a page asks, with its numbers."""
    return page.main.all(class_="ask")[0].words


def test_the_working_fades_from_the_last_line_backwards(kinds: Bench) -> None:
    """Full working beside it; then above it; then two lines are theirs; then all is theirs."""
    noor = kinds.reader(NOOR)
    first, second, third, fourth = (again(kinds, noor, SYRINGE) for _ in range(4))
    assert BESIDE in first.words
    assert ABOVE in first.words
    assert BESIDE not in second.words
    assert ABOVE in second.words
    assert [fields_of(page) for page in (first, second, third, fourth)] == [1, 1, 2, 1]
    for page in (third, fourth):
        assert BESIDE not in page.words
        assert ABOVE not in page.words
    assert "Mass of catalyst" in third.words


def test_only_what_is_all_theirs_counts_as_unaided(kinds: Bench) -> None:
    """The helped tries are kept as such, each with its stage."""
    noor = kinds.reader(NOOR)
    for _ in range(4):
        again(kinds, noor, SYRINGE)
    kept = [kinds.stored(NOOR, "drum-syringe", count) for count in range(4)]
    assert [each.stage for each in kept] == [0, 1, 2, 3]
    assert [each.unaided for each in kept] == [False, False, False, True]


def test_nobody_does_alone_what_they_saw_worked(kinds: Bench) -> None:
    """Who takes the lines away gets other numbers, and finds the first again on the way back."""
    noor = kinds.reader(NOOR)
    worked, alone = noor.open(SYRINGE), noor.alone(SYRINGE)
    assert asked(alone) != asked(worked)
    assert asked(noor.open(SYRINGE)) == asked(worked)
    assert asked(noor.alone(SYRINGE)) == asked(alone)


def test_a_later_stage_has_other_numbers(kinds: Bench) -> None:
    """Its lines were shown at the stage before, even where another sum led on meanwhile."""
    noor = kinds.reader(NOOR)
    before = asked(noor.open(SYRINGE))
    again(kinds, noor, CHAIN)
    assert asked(noor.open(SYRINGE)) != before


def test_a_skill_fades_wherever_it_is_asked(kinds: Bench) -> None:
    """One right at the drum, and the chain, which ends in the same skill, shows less too."""
    noor = kinds.reader(NOOR)
    again(kinds, noor, SYRINGE)
    again(kinds, noor, SYRINGE)
    assert ABOVE not in noor.open(CHAIN).words


def test_who_would_rather_do_it_all_may(kinds: Bench) -> None:
    """A button takes the lines away; two right that way and they stay away."""
    noor = kinds.reader(NOOR)
    assert f"{SYRINGE}?alone=yes" in noor.open(SYRINGE).links()
    for _ in range(2):
        page = again(kinds, noor, SYRINGE, alone=True)
        assert BESIDE not in page.words
        assert "All of it" not in page.words
    assert kinds.stored(NOOR, "drum-syringe").unaided
    assert kinds.stored(NOOR, "drum-syringe", 1).unaided
    page = noor.open(SYRINGE)
    assert ABOVE not in page.words
    assert f"{SYRINGE}?alone=yes" not in page.links()


def test_two_wrong_running_bring_a_line_back(kinds: Bench) -> None:
    """After two rights the last two lines are theirs; after two wrongs the last alone."""
    noor = kinds.reader(NOOR)
    for _ in range(2):
        again(kinds, noor, SYRINGE)
    assert fields_of(noor.open(SYRINGE)) == 2
    for _ in range(2):
        noor.go_on(noor.send(noor.open(SYRINGE), answer_0="1.23", answer_1="4.56"))
    page = noor.open(SYRINGE)
    assert fields_of(page) == 1
    assert ABOVE in page.words


def test_a_second_try_has_the_same_lines_above_it(kinds: Bench) -> None:
    """A slip at the last line is asked again, with the lines that stood there."""
    noor = kinds.reader(NOOR)
    again(kinds, noor, SYRINGE)
    page = noor.open(SYRINGE)
    grams = page.main.all(class_="line-answer")[0].words.removeprefix("=")
    slip = noor.go_on(noor.send(page, answer_0=grams.split()[0]))
    assert slip.mark == "Wrong: this looks like a slip"
    assert slip.main.all(class_="line-answer")[0].words.removeprefix("=") == grams
    assert fields_of(slip) == 1
    assert kinds.stored(NOOR, "drum-syringe", 1).stage == 1


def test_a_second_try_is_finished_as_it_was_begun(kinds: Bench) -> None:
    """Sent empty, it comes back without a button that would lead nowhere else."""
    noor = kinds.reader(NOOR)
    page = noor.open(SYRINGE)
    grams = page.main.all(class_="line-answer")[2].words.removeprefix("= ")
    empty = noor.send(noor.go_on(noor.send(page, answer_0=grams.split()[0])), answer_0="")
    assert empty.status == 422
    assert ABOVE in empty.words
    assert not [link for link in empty.links() if "alone" in link]


def test_a_form_is_marked_at_the_stage_that_it_was_shown(kinds: Bench) -> None:
    """Somebody who has come further meanwhile, on another phone, is marked by what they saw."""
    noor = kinds.reader(NOOR)
    page = noor.open(CHAIN)
    other = kinds.visit(NOOR)
    again(kinds, other, SYRINGE)
    again(kinds, other, SYRINGE)
    told = noor.send(page, answer_0="0.123")
    assert told.status == 303
    assert kinds.stored(NOOR, "dose-chain").stage == 0


@pytest.mark.parametrize("path", [SYRINGE, f"{SYRINGE}?alone=yes"])
def test_a_mark_reads_on_when_its_sum_no_longer_takes_the_figures(
    kinds: Bench, monkeypatch: pytest.MonkeyPatch, path: str
) -> None:
    """A range was narrowed in the years since; the working that was kept is told as it was."""
    noor = kinds.reader(NOOR)
    told = noor.go_on(noor.send(noor.open(path), answer_0="0.123"))
    ranges = method_named("catalyst_by_mass").parameters
    monkeypatch.setitem(ranges, "resin_kg", replace(ranges["resin_kg"], high=0.1))
    later = noor.open(f"{SYRINGE}/0/1")
    assert (later.status, later.mark) == (200, "Wrong")
    assert "can't be drawn any more" in later.words
    for line in (*told.main.all(class_="line-sum"), *told.main.all(class_="line-answer")):
        assert line.words in later.words
