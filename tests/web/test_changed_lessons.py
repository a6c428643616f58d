"""Answers to a lesson that has changed or gone since it was opened."""

from pathlib import Path

from web_bench import Bench
from web_cast import NOOR
from web_content import (
    CHAIN,
    DOSE_CHAIN,
    DRUM,
    FIRST,
    FIRST_DOSE,
    MIXING,
    SAFETY,
    TWO_SLIPS,
    right_grams,
    write_content,
)

from trainer.web.origin import LESSON_CHANGED


def test_an_answer_is_marked_by_the_text_that_was_shown(tiny: Bench, tmp_path: Path) -> None:
    """Another dose is asked by now; the old one counts, and the page says so."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    changed = SAFETY + FIRST_DOSE.replace("given.percent = 2", "given.percent = 3")
    later = tiny.restarted(write_content(tmp_path, safety=changed))
    noor.client.application = later.app
    again = noor.send(page, answer_0="")
    assert (again.status, again.notes) == (422, LESSON_CHANGED)
    assert again.question == page.question
    marked = noor.answer(again, right_grams(page))
    assert marked.mark == "Right"
    assert marked.question == page.question
    assert "3 %" in noor.open(FIRST).question
    later.close()


def test_a_question_that_is_gone_is_still_marked_for_whoever_has_it(
    tiny: Bench, tmp_path: Path
) -> None:
    """Its text was kept, so the answer counts; it just isn't offered again."""
    noor = tiny.reader(NOOR)
    page = noor.open(DRUM)
    later = tiny.restarted(write_content(tmp_path, mixing=MIXING + DOSE_CHAIN + TWO_SLIPS))
    noor.client.application = later.app
    assert noor.open(DRUM).status == 404
    marked = noor.answer(page, right_grams(page))
    assert marked.mark == "Right"
    assert "/questions/drum-dose" not in marked.links()
    later.close()


def test_a_lesson_that_is_gone_leaves_its_answers(tiny: Bench, tmp_path: Path) -> None:
    """A mark can be read after its whole lesson was taken away, and its form sent."""
    noor = tiny.reader(NOOR)
    page = noor.open(DRUM)
    noor.answer("dose-chain", "40", "32")
    later = tiny.restarted(write_content(tmp_path, mixing=""))
    noor.client.application = later.app
    assert noor.open(f"{CHAIN}/0/1").mark == "Right"
    assert noor.answer(page, right_grams(page)).mark == "Right"
    assert noor.open("/progress").status == 200
    later.close()


def test_a_question_that_was_never_there_says_what_was_typed(tiny: Bench) -> None:
    """What can't be marked isn't swallowed: the sentence has it, so that it can be noted."""
    noor = tiny.visit(NOOR)
    fields = {**noor.open(FIRST).form.fields, "answer_0": "17 <b>g</b>", "answer_1": "3 ml"}
    page = noor.post("/questions/old-dose", fields)
    assert (page.status, page.heading) == (410, "This question is gone")
    assert "What you had typed: 17 <b>g</b>, 3 ml" in page.words
    assert tiny.attempts_kept() == 0


def test_a_missing_question_is_not_found(tiny: Bench) -> None:
    """404 for its page and for a mark that was never given."""
    noor = tiny.visit(NOOR)
    assert noor.alone("no-such-dose").status == 404
    assert noor.open("/questions/first-dose/0/1").status == 404
    assert noor.open("/questions/first-dose/0/x").status == 404
    assert noor.open("/questions/first-dose/99999999999999999999/1").status == 404


def test_a_mark_cannot_be_sent(tiny: Bench) -> None:
    """The page of a mark answers only to being read."""
    noor = tiny.visit(NOOR)
    token = noor.open(FIRST).form.fields["csrf_token"]
    assert noor.post(f"{FIRST}/0/1", {"csrf_token": token}).status == 405
