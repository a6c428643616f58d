"""A slip gets its name and one more try; in a chain, the first wrong line alone."""

import re

from web_bench import Bench
from web_cast import NOOR
from web_content import FIRST, right_grams


def test_a_slip_is_named_with_a_cue_and_no_figure(tiny: Bench) -> None:
    """Ten times the dose gets its name and its cue; neither the working nor a figure is shown."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    right = right_grams(page)
    marked = noor.answer(page, f"{right}0")
    assert marked.mark == "Wrong: this looks like a slip"
    assert "Ten times the dose." in marked.words
    assert "Is two in a hundred the same as two in ten?" in marked.words
    assert not marked.main.all(class_="working")
    assert not re.search(rf"\b{right} g\b", marked.words)


def test_a_slip_gets_one_more_try_on_the_same_numbers(tiny: Bench) -> None:
    """The second try asks the same; right, it ends the run and shows the working."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    slipped = noor.answer(page, f"{right_grams(page)}0")
    assert slipped.question == page.question
    again = noor.answer(slipped, right_grams(page))
    assert again.mark == "Right"
    assert "That was it." in again.words
    assert again.main.all(class_="working")
    assert not again.has_form


def test_after_a_second_slip_the_working_is_shown(tiny: Bench) -> None:
    """There is no third try, whatever was typed."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    slipped = noor.answer(page, f"{right_grams(page)}0")
    again = noor.answer(slipped, f"{right_grams(page)}0")
    assert again.mark == "Wrong"
    assert again.main.all(class_="working")
    assert not again.has_form


def test_a_second_try_is_never_unaided_and_never_a_first_try(tiny: Bench) -> None:
    """Right after a cue: the question has been right once, and its first try stays wrong."""
    noor = tiny.visit(NOOR)
    page = noor.alone(FIRST)
    noor.answer(noor.answer(page, f"{right_grams(page)}0"), right_grams(page))
    row = tiny.question_row(NOOR, "first-dose")
    assert row is not None
    assert (row.tried, row.right, row.finished, row.ever_right) == (1, 0, 1, True)
    assert tiny.stored(NOOR, "first-dose").unaided
    assert not tiny.stored(NOOR, "first-dose", try_no=2).unaided


def test_a_second_try_that_is_waiting_is_gone_on_with(tiny: Bench) -> None:
    """Opening the question again leads back to the slip, not to other numbers."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    noor.answer(page, f"{right_grams(page)}0")
    assert noor.open(FIRST).leads_to == "/questions/first-dose/0/1"


def test_two_slips_that_match_are_both_left_unnamed(tiny: Bench) -> None:
    """Nobody can tell which it was, so the working comes at once."""
    marked = tiny.reader(NOOR).answer("two-slips", "400")
    assert marked.mark == "Wrong"
    assert marked.main.all(class_="working")
    assert "ten times" not in marked.words.casefold()


def test_a_carried_error_is_charged_once(tiny: Bench) -> None:
    """30 g is wrong; 24 ml is right for 30 g, and the page says so."""
    marked = tiny.reader(NOOR).answer("dose-chain", "30", "24")
    states = [
        item.all(class_="state")[0].words for item in marked.main.all(class_="answers")[0].all("li")
    ]
    assert states == ["wrong", "right for your figure"]
    assert marked.mark == "Wrong"
    assert "From your figure above: 24 ml." in marked.words


def test_the_first_wrong_line_is_named_with_its_numbers(tiny: Bench) -> None:
    """The label stands there as it was asked, and not as the author wrote it."""
    marked = tiny.reader(NOOR).answer("dose-chain", "30", "24")
    assert "The first wrong line is: What does 2 % of catalyst weigh?" in marked.words
    assert "{" not in marked.words


def test_a_figure_that_could_hurt_is_wrong_whatever_was_carried(tiny: Bench) -> None:
    """8 ml follows from 10 g, but is under half of the right 32 ml."""
    marked = tiny.reader(NOOR).answer("dose-chain", "10", "8")
    assert [each.verdict for each in tiny.stored(NOOR, "dose-chain").answers] == ["wrong", "wrong"]
    assert marked.mark == "Wrong"


def test_a_second_try_in_a_chain_asks_the_first_wrong_line_alone(tiny: Bench) -> None:
    """4 g is a tenth of the dose: that line is asked once more, and the other is not."""
    noor = tiny.reader(NOOR)
    slipped = noor.answer("dose-chain", "4", "32")
    assert "A tenth of the dose." in slipped.words
    labels = [
        label.words for label in slipped.main.all("form")[0].all("label", **{"for": "answer_0"})
    ]
    assert labels == ["What does 2 % of catalyst weigh?"]
    assert "answer_1" not in slipped.form.fields
    again = noor.answer(slipped, "40")
    assert again.mark == "Right"
    assert [each.line for each in tiny.stored(NOOR, "dose-chain", try_no=2).answers] == ["mass"]


def test_a_slip_further_down_asks_that_line_alone(tiny: Bench) -> None:
    """40 g is right and 50 ml was multiplied: only the syringe is asked again."""
    noor = tiny.reader(NOOR)
    slipped = noor.answer("dose-chain", "40", "50")
    assert "Multiplied where it should be divided." in slipped.words
    label = slipped.main.all("form")[0].all("label", **{"for": "answer_0"})[0].words
    assert label == "How much is that in the syringe?"
    assert noor.answer(slipped, "32").mark == "Right"


def test_an_unclear_second_try_is_asked_about_too(tiny: Bench) -> None:
    """The page again, for the same line, and nothing kept."""
    noor = tiny.reader(NOOR)
    slipped = noor.answer("dose-chain", "4", "3.2")
    page = noor.send(slipped, answer_0="a pinch")
    assert page.status == 422
    assert page.error_of("answer_0")
    assert "Only the first wrong line is asked." in page.words
    assert "answer_1" not in page.form.fields
    assert tiny.attempts_kept() == 1


def test_a_figure_that_cannot_be_worked_on_is_told(tiny: Bench) -> None:
    """3 mm can't wander 5: the line below is marked by the right figure, and the page says so."""
    marked = tiny.reader(NOOR).answer("bare-chain", "3", "20")
    verdicts = [each.verdict for each in tiny.stored(NOOR, "bare-chain").answers]
    assert verdicts == ["wrong", "right"]
    assert "Your first figure can't be worked on" in marked.notes


def test_the_cue_stays_above_an_unclear_second_try(tiny: Bench) -> None:
    """Somebody who is asked how they meant it still sees what to look for."""
    noor = tiny.reader(NOOR)
    asked = noor.send(noor.answer("dose-chain", "4", "32"), answer_0="1,300")
    assert asked.status == 422
    assert "A tenth of the dose." in asked.words
    assert "How many grams to a hundred are two per cent?" in asked.words
