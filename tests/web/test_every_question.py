"""Every question of every lesson, answered right and then by each of its slips and wrong picks.

Whoever answers gets the mark and the words that its author wrote for just that.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from web_bench import Bench
from web_cast import NOOR
from web_kinds import right_fields
from web_page import Page
from web_visitor import Visitor

from trainer.engine.units import show
from trainer.lessons import (
    ChooseDrawn,
    Drawn,
    LocateDrawn,
    OrderDrawn,
    Slip,
    Typed,
    Variant,
    mark_answers,
    read_library,
)
from trainer.lessons.calculate import slip_figures
from trainer.web.shown import Shown, opened

CONTENT = Path(__file__).parents[2] / "content"

LIBRARY = read_library(CONTENT)
LESSONS = pytest.mark.parametrize("lesson", [each.slug for each in LIBRARY.lessons])
#: A slip that can't be told on some numbers is made on the next ones, so often at most.
MOST_RUNS = 8


class Asked:
    """A question as Noor is asked it just now, with none of its working shown."""

    def __init__(self, bench: Bench, noor: Visitor, question: str) -> None:
        self.bench, self.noor = bench, noor
        self.page = noor.alone(question)
        self.was, self.drawn = as_shown(bench, self.page)

    def told(self, fields: dict[str, str]) -> Page:
        """Return the mark of these fields."""
        return self.noor.go_on(self.noor.send(self.page, **fields))


def as_shown(bench: Bench, page: Page) -> tuple[Shown, Drawn]:
    """Return what a page shows."""
    with bench.app.test_request_context("/"):
        was = opened(page.form.fields["shown"])
    assert was is not None
    question = bench.library.questions[was.question_id]
    return was, question.drawn(was.seed, was.redraws).at_stage(was.stage)


def by_the_slip(drawn: Variant, slip: Slip) -> dict[str, str] | None:
    """Return what somebody types who makes a slip, or None where it changes nothing."""
    right = drawn.working().figures
    for ask, figure in slip_figures(drawn, slip, right):
        if not ask.tolerance.allows(figure, right[ask.line]):
            number = [each.line for each in drawn.asks].index(ask.line)
            typed = f"{ask.in_asked_unit(figure):.9f}"
            return {**right_fields(drawn), f"answer_{number}": typed}
    return None


def plain(text: str) -> str:
    """Return a text with plain spaces, as pages are compared."""
    return " ".join(text.replace("\u00a0", " ").split())


@LESSONS
def test_a_right_answer_is_right(bench: Bench, lesson: str) -> None:
    """Of every kind; and the sum's working stands below."""
    noor = bench.reader(NOOR)
    for question in bench.library.by_slug[lesson].questions:
        asked = Asked(bench, noor, question.id)
        told = asked.told(right_fields(asked.drawn))
        assert told.mark == "Right", question.id
        if isinstance(asked.drawn, Variant):
            last = asked.drawn.working().lines[-1]
            assert plain(show(last.value, last.unit)) in plain(told.words), question.id


@LESSONS
def test_each_slip_gets_its_name_its_cue_and_a_second_try(bench: Bench, lesson: str) -> None:
    """No figure and no working yet; right at the second try, that was it."""
    noor = bench.reader(NOOR)
    for question in bench.library.by_slug[lesson].sums:
        for slip in question.slips:
            told = named(bench, noor, question.id, slip)
            assert plain(f"{slip.name[:1].upper()}{slip.name[1:]}.") in plain(told.words)
            assert plain(slip.cue) in plain(told.words)
            assert not told.main.all(class_="line-sum")
            was, drawn = as_shown(bench, told)
            assert isinstance(drawn, Variant)
            mended = noor.go_on(noor.send(told, **again(drawn, was.only or "")))
            assert mended.mark == "Right", (question.id, slip.name)
            assert "That was it." in mended.words


def named(bench: Bench, noor: Visitor, question: str, slip: Slip) -> Page:
    """Return the mark that names a slip, on the first numbers on which it can be told."""
    for _ in range(MOST_RUNS):
        asked = Asked(bench, noor, question)
        assert isinstance(asked.drawn, Variant)
        fields = by_the_slip(asked.drawn, slip)
        told = asked.told(fields or right_fields(asked.drawn))
        # On some numbers two slips lead to the same figure, and neither is named.
        if fields and told.mark == "Wrong: this looks like a slip":
            return told
    raise AssertionError(f"{question}: '{slip.name}' was never named")


def again(drawn: Variant, line: str) -> dict[str, str]:
    """Return what is typed rightly into the one field of a second try."""
    ask, figure = drawn.ask_for(line), drawn.working().figures[line]
    return {"answer_0": show(ask.in_asked_unit(figure), ask.unit)}


@LESSONS
def test_a_figure_from_nowhere_gets_the_working(bench: Bench, lesson: str) -> None:
    """It is no slip, so that there is nothing to wait for."""
    noor = bench.reader(NOOR)
    for question in bench.library.by_slug[lesson].sums:
        asked = Asked(bench, noor, question.id)
        assert isinstance(asked.drawn, Variant)
        told = asked.told({**right_fields(asked.drawn), "answer_0": from_nowhere(asked.drawn)})
        assert told.mark == "Wrong", question.id
        assert not told.has_form
        assert told.main.all(class_="working")


def from_nowhere(drawn: Variant) -> str:
    """Return a figure for the first asked line that no slip leads to."""
    first, right = drawn.asks[0], drawn.working().figures
    figure = first.in_asked_unit(right[first.line])
    typed = {
        ask.line: Typed(show(ask.in_asked_unit(right[ask.line]), ask.unit)) for ask in drawn.asks
    }
    for factor in (1.618034, 2.718282, 3.141593):
        text = f"{figure * factor + 7:.3f}"
        if mark_answers(drawn, {**typed, first.line: Typed(text, first.unit)}, 1).slip is None:
            return text
    raise AssertionError(drawn.question.id)


@LESSONS
def test_each_pick_tells_what_comes_of_it(bench: Bench, lesson: str) -> None:
    """Every choice, every place, and each step put first: right or wrong, and why."""
    noor = bench.reader(NOOR)
    for question in bench.library.by_slug[lesson].questions:
        if question.kind == "calculate":
            continue
        ways = len(list(picks(question.drawn("any"))))
        for number in range(ways):
            asked = Asked(bench, noor, question.id)
            picked, mark, words = list(picks(asked.drawn))[number]
            told = asked.told({"answer_0": picked})
            assert told.mark == mark, question.id
            for each in words:
                assert plain(each) in plain(told.words), question.id


def picks(drawn: Drawn) -> Iterator[tuple[str, str, list[str]]]:
    """Yield each way of answering a question without numbers, its mark, and words expected."""
    match drawn:
        case ChooseDrawn():
            right = drawn.question.choices[drawn.question.right].then
            for place, choice in drawn.choices():
                mark = "Right" if place == drawn.right_place() else "Wrong"
                yield place, mark, [choice.text, choice.then, right]
        case LocateDrawn():
            right = drawn.question.regions[drawn.question.right].then
            for region in drawn.question.regions:
                mark = "Right" if region.name == drawn.question.right_name else "Wrong"
                yield region.name, mark, [region.words, region.then, right]
        case OrderDrawn():
            first, *later = drawn.right_places()
            for place in later:
                rest = [first, *(each for each in later if each != place)]
                step = drawn.step(place)
                words = [step.text, step.early, f"Before it comes: {drawn.step(first).text}"]
                yield " ".join([place, *rest]), "Wrong", words
