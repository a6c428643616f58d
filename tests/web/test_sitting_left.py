"""A sitting that is left open, ended, or gone by: nothing typed is lost, nothing asked in vain."""

from datetime import timedelta

from sqlalchemy import func, select
from web_begun import begin, begun, due, end_of, onward, question_of
from web_bench import Bench, id_of, lock
from web_cast import NOOR, PASSWORD
from web_kinds import answer_right, right_on
from web_visitor import Visitor

from trainer.records import sittings
from trainer.records.sitting_rows import Sitting


def end_by_hand(noor: Visitor) -> str:
    """Press the button that ends today's sitting, and return the address of its end."""
    end = end_of(begin(noor))
    form = noor.open(end).form_to(end)
    noor.post(form.action, form.fields)
    return end


def turns_left(bench: Bench) -> int:
    """How many turns of Noor's last sitting have had no answer."""
    with bench.records() as session:
        last = sittings.last_sitting(session, id_of(session, NOOR))
        assert last is not None
        return sum(not each.is_answered for each in last.turns)


def test_with_nothing_due_a_press_begins_nothing(bench: Bench) -> None:
    """A page that was left open over night leads back to what there is, and no sitting is kept."""
    noor = bench.reader(NOOR)
    token = noor.open("/practice").sign_out_form.fields["csrf_token"]
    assert noor.post("/practice", {"csrf_token": token}).leads_to == "/practice"
    with bench.records() as session:
        assert session.scalar(select(func.count()).select_from(Sitting)) == 0


def test_a_turn_of_yesterday_leads_to_today_s_practice(bench: Bench) -> None:
    """It was planned for another day."""
    noor = begun(bench)
    place = begin(noor).path
    bench.clock.wait(days=1)
    assert noor.open(place).leads_to == "/practice"


def test_the_end_of_yesterday_s_sitting_doesn_t_go_on(bench: Bench) -> None:
    """It says where its leftovers went, and never that the next practice is on a later day."""
    noor = begun(bench)
    end = end_of(begin(noor))
    bench.clock.wait(days=1)
    page = noor.open(end)
    assert "What was left of it comes first in today's practice." in page.notes
    assert "Go on" not in page.words
    assert "What is next" not in page.words


def test_a_form_of_yesterday_is_marked_and_leads_to_today(bench: Bench) -> None:
    """An answer that was worked on over midnight counts."""
    noor = begun(bench)
    page = begin(noor)
    bench.clock.wait(days=1)
    mark = answer_right(bench, noor, page)
    assert mark.mark == "Right"
    assert onward(mark) == "/practice"
    assert turns_left(bench) == 6


def test_what_was_typed_before_midnight_outlives_a_sign_in_after_it(bench: Bench) -> None:
    """The question is shown once more, though its sitting has gone by."""
    noor = due(bench)
    page = begin(noor)
    noor.sign_out()
    asked = noor.post(page.path, {**page.form.fields, "answer_0": "1.25"})
    bench.clock.wait(hours=20)
    back = noor.go_on(noor.send(asked, name="noor", password=PASSWORD))
    assert back.form.fields["answer_0"] == "1.25"
    assert noor.open(page.path).leads_to == "/practice"


def test_a_turn_of_an_ended_sitting_leads_to_its_end(bench: Bench) -> None:
    """What was ended on one phone isn't gone on with on another by a step back."""
    noor = begun(bench)
    place = begin(noor).path
    end = end_by_hand(noor)
    assert noor.open(place).leads_to == end


def test_an_answer_to_an_ended_sitting_is_kept(bench: Bench) -> None:
    """Its form stood open on another phone."""
    noor = begun(bench)
    page = begin(noor)
    end = end_by_hand(bench.visit(NOOR))
    mark = answer_right(bench, noor, page)
    assert (mark.mark, onward(mark)) == ("Right", end)


def test_a_question_that_vanished_is_passed_over_with_a_sentence(bench: Bench) -> None:
    """Where one stands on it, and at the end of the sitting."""
    noor = due(bench)
    page = begin(noor)
    gone = bench.library.questions.pop(question_of(bench, page))
    try:
        following = noor.go_on(noor.open(page.path))
        end = noor.open(end_of(page))
    finally:
        bench.library.questions[gone.id] = gone
    assert "question 2 of 8" in following.words
    assert "no longer asked, so it was passed over." in following.notes
    assert "1 question of this sitting is no longer asked, and was passed over." in end.notes


def test_a_sitting_whose_questions_all_vanished_is_over(bench: Bench) -> None:
    """Its turns lead to its end, and no further."""
    noor = due(bench)
    page = begin(noor)
    asked = dict(bench.library.questions)
    bench.library.questions.clear()
    try:
        assert noor.open(page.path).leads_to == end_of(page)
        end = noor.open(end_of(page))
    finally:
        bench.library.questions.update(asked)
    assert "8 questions of this sitting are no longer asked, and were passed over." in end.notes


def test_an_unclear_answer_is_asked_about_and_the_turn_waits(bench: Bench) -> None:
    """422 with what was typed, in its place; no try is kept."""
    noor = due(bench)
    kept = bench.attempts_kept()
    page = noor.send(begin(noor), answer_0="a drop")
    assert (page.status, page.form.fields["answer_0"]) == (422, "a drop")
    assert "question 1 of 8" in page.words
    assert (bench.attempts_kept(), turns_left(bench)) == (kept, 8)


def test_the_same_form_answered_on_its_lesson_s_page_leaves_the_turn(bench: Bench) -> None:
    """The first sending's mark is shown; the turn then comes on fresh numbers."""
    noor = due(bench)
    page = begin(noor)
    typed = {**page.form.fields, **right_on(bench, page)}
    noor.post(f"/questions/{question_of(bench, page)}", typed)
    noor.post(page.path, typed)
    assert turns_left(bench) == 8
    assert noor.open(page.path).form.fields["shown"] != page.form.fields["shown"]
    assert "question 1 of 8" in noor.open(page.path).words


def test_busy_records_lose_nothing_typed(bench: Bench) -> None:
    """503 with the form as it was; the next press is marked, and the turn is done."""
    noor = due(bench)
    page = begin(noor)
    typed = right_on(bench, page)
    other = lock(bench)
    busy = noor.send(page, **typed)
    other.close()
    assert (busy.status, busy.form.fields["answer_0"]) == (503, typed["answer_0"])
    assert "question 1 of 8" in busy.words
    assert noor.send(busy, **typed).status == 303
    assert turns_left(bench) == 7


def test_busy_records_begin_nothing(bench: Bench) -> None:
    """503 with a sentence; the next press begins."""
    noor = due(bench)
    page = noor.open("/practice")
    other = lock(bench)
    assert noor.send(page).status == 503
    other.close()
    assert noor.send(page).status == 303


def test_where_the_clock_was_ahead_today_s_sitting_is_gone_on_with(bench: Bench) -> None:
    """One that is dated in the future stands in nobody's way."""
    noor = due(bench)
    bench.clock.now += timedelta(days=20)
    begin(noor)
    bench.clock.now -= timedelta(days=20)
    answer_right(bench, noor, begin(noor))
    assert "Go on where you left off 7 questions left" in noor.open("/practice").words


def test_a_page_is_used_in_its_own_way_only(bench: Bench) -> None:
    """405 for a mark that is posted to, and for an end that is put."""
    noor = begun(bench)
    place = begin(noor).path
    token = noor.open("/practice").sign_out_form.fields["csrf_token"]
    mark = noor.open(place.rpartition("/")[0] + "/1").leads_to
    assert noor.post(mark, {"csrf_token": token}).status == 405
    assert noor.client.put("/practice").status_code == 405
