"""An answer is kept once, whatever fails, and counts for the day it was pressed."""

from datetime import date

import pytest
from web_bench import Bench, full_disk, lock
from web_cast import NOOR
from web_content import FIRST, right_grams

from trainer.web.faults import LOST_TOKEN


def test_nothing_is_kept_before_the_answer_is_sent(tiny: Bench) -> None:
    """Looking at a question leaves no trace."""
    noor = tiny.visit(NOOR)
    noor.open(FIRST)
    assert tiny.attempts_kept() == 0
    assert tiny.question_row(NOOR, "first-dose") is None


def test_a_form_sent_twice_counts_once(tiny: Bench) -> None:
    """Both lead to the one mark."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    first, second = (noor.send(page, answer_0="1.5 g") for _ in range(2))
    assert first.leads_to == second.leads_to
    assert tiny.attempts_kept() == 1
    row = tiny.question_row(NOOR, "first-dose")
    assert row is not None
    assert row.tried == 1


def test_the_second_sending_keeps_the_first_ones_answer(tiny: Bench) -> None:
    """Going back and typing the right figure changes nothing."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    noor.send(page, answer_0="1.5 g")
    marked = noor.answer(page, right_grams(page))
    assert marked.mark == "Wrong"
    assert "your figure 1.5 g" in marked.words
    assert tiny.stored(NOOR, "first-dose").answers[0].typed == "1.5 g"


def test_a_first_try_sent_again_after_the_second_shows_its_own_mark(tiny: Bench) -> None:
    """The cue's page is still there, and a stale form doesn't begin another run."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    slip = f"{right_grams(page)}0"
    noor.answer(noor.answer(page, slip), right_grams(page))
    assert noor.answer(page, "1").mark == "Wrong: this looks like a slip"
    assert tiny.attempts_kept() == 2


def test_a_form_without_its_token_comes_back_as_typed(tiny: Bench) -> None:
    """400 with the question, what was typed, and a form that is good."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    again = noor.send(page, csrf_token="", answer_0="1.5 kg", answer_0_unit="kg")
    assert (again.status, again.notes) == (400, LOST_TOKEN)
    assert again.question == page.question
    assert again.form.fields["answer_0"] == "1.5 kg"
    assert again.form.fields["answer_0_unit"] == "kg"
    assert tiny.attempts_kept() == 0
    assert noor.go_on(noor.send(again)).mark == "Wrong"


def test_while_the_records_are_busy_nothing_is_lost(tiny: Bench) -> None:
    """503, what was typed, the same form: sent again once they are free, it counts."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    other = lock(tiny)
    busy = noor.send(page, answer_0="0.0015 kg", answer_0_unit="kg", pressed="2026-03-09T07:44:00Z")
    other.rollback()
    other.close()
    assert busy.status == 503
    assert busy.notes.startswith("Nothing was kept: the records were busy.")
    assert busy.form.fields["answer_0"] == "0.0015 kg"
    assert busy.form.fields["answer_0_unit"] == "kg"
    assert busy.form.fields["pressed"] == "2026-03-09T07:44:00Z"
    assert busy.form.fields["shown"] == page.form.fields["shown"]
    assert tiny.attempts_kept() == 0
    assert noor.go_on(noor.send(busy)).mark == "Wrong"
    assert tiny.attempts_kept() == 1


def test_on_a_full_disk_nothing_is_lost(tiny: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """The commit fails: 503, what was typed, no half of an answer, and sending again counts."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    with monkeypatch.context() as patch:
        full_disk(patch)
        full = noor.send(page, answer_0="1.5 g")
    assert full.status == 503
    assert full.notes.startswith("Nothing was kept: the records can't be written to.")
    assert full.form.fields["answer_0"] == "1.5 g"
    assert tiny.attempts_kept() == 0
    assert tiny.question_row(NOOR, "first-dose") is None
    assert noor.go_on(noor.send(full)).mark == "Wrong"
    assert tiny.attempts_kept() == 1


def test_a_second_try_survives_a_failure_too(tiny: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page again asks for the one line, and the run goes on."""
    noor = tiny.reader(NOOR)
    slipped = noor.answer("dose-chain", "4", "32")
    with monkeypatch.context() as patch:
        full_disk(patch)
        full = noor.send(slipped, answer_0="40")
    assert full.status == 503
    assert "answer_1" not in full.form.fields
    assert noor.go_on(noor.send(full)).mark == "Right"


def test_an_answer_that_comes_later_counts_for_the_day_it_was_pressed(tiny: Bench) -> None:
    """Pressed on Friday without a signal, it gets through on Monday."""
    noor = tiny.visit(NOOR)
    page = noor.send(noor.open(FIRST), answer_0="1", pressed="2026-03-06T15:00:00.000Z")
    kept = tiny.stored(NOOR, "first-dose")
    assert (kept.local_date, kept.sent_later) == (date(2026, 3, 6), True)
    assert "This was sent later, and counts for the day that you pressed" in noor.go_on(page).notes


@pytest.mark.parametrize(
    "pressed",
    [
        "2026-03-10T07:45:00Z",
        "2026-03-02T07:44:00Z",
        "2026-03-06T15:00:00",
        "on Friday",
        "",
        "0001-01-01T00:00:00+14:00",
        "9999-12-31T23:59:59-14:00",
    ],
    ids=["tomorrow", "8 days ago", "no zone", "words", "nothing", "year 1", "year 9999"],
)
def test_a_date_that_cannot_be_believed_is_not(tiny: Bench, pressed: str) -> None:
    """A future one, one older than seven days, or none at all: it counts for today."""
    noor = tiny.visit(NOOR)
    noor.go_on(noor.send(noor.open(FIRST), answer_0="1", pressed=pressed))
    kept = tiny.stored(NOOR, "first-dose")
    assert (kept.local_date, kept.sent_later) == (date(2026, 3, 9), False)


def test_what_was_asked_about_has_not_been_pressed_yet(tiny: Bench) -> None:
    """An unclear figure was no answer: the one typed two days on counts for that day."""
    noor = tiny.visit(NOOR)
    pressed = tiny.clock.now.isoformat()
    unclear = noor.send(noor.open(FIRST), answer_0="a splash", pressed=pressed)
    assert unclear.form.fields["pressed"] == ""
    tiny.clock.wait(days=2)
    noor.send(unclear, answer_0="1")
    assert tiny.stored(NOOR, "first-dose").local_date == date(2026, 3, 11)
