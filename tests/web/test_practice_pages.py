"""Practice: what is offered, one turn after the other, and what came of it."""

import pytest
from web_begun import begin, begun, due, end_of, gelled, onward, question_of
from web_bench import Bench, id_of
from web_cast import NOOR, SAM
from web_kinds import answer_right, right_fields
from web_page import Page
from web_visitor import Visitor

from trainer.records import progress, sittings
from trainer.web.shown import opened


def offered(page: Page) -> str:
    """What the card on top says."""
    return page.main.all(class_="first")[0].words


def answer_wrong(visitor: Visitor, page: Page) -> Page:
    """Return the mark of figures that are far off."""
    fields = {field: "0.0001" for field in page.form.fields if field.startswith("answer_")}
    return visitor.go_on(visitor.send(page, **{k: v for k, v in fields.items() if "unit" not in k}))


def through(bench: Bench, visitor: Visitor) -> Page:
    """Answer every turn right, and return the page at its end."""
    page = begin(visitor)
    while not page.path.endswith("/end"):
        mark = answer_right(bench, visitor, page)
        page = visitor.open(onward(mark))
    return page


def test_before_the_first_lesson_there_is_no_practice(bench: Bench) -> None:
    """The way to it comes instead."""
    noor = bench.visit(NOOR)
    assert noor.open("/practice").leads_to == f"/lessons/{bench.library.first.slug}"


def test_where_nothing_is_begun_nothing_is_offered(bench: Bench) -> None:
    """The page says when practice begins, and what to do until then."""
    words = bench.reader(NOOR).open("/practice").words
    assert "Nothing is due today." in words
    assert "Practice begins when you have answered questions of a lesson." in words
    assert "Until then there is a lesson:" in words


def test_what_is_due_is_offered_with_the_reason(bench: Bench) -> None:
    """Four skills, two tries each; each with its state and why."""
    page = due(bench).open("/practice")
    assert offered(page).startswith("Today's sitting 8 questions")
    rows = [each.words for each in page.main.all("li", class_="skill")]
    assert len(rows) == 4
    assert all("later days will show whether it stays" in words for words in rows)


def test_on_the_day_of_gelling_nothing_is_due(bench: Bench) -> None:
    """The next date is tomorrow."""
    assert "The next practice is tomorrow." in gelled(bench).open("/practice").words


def test_after_a_sitting_on_what_was_begun_the_next_is_tomorrow(kinds: Bench) -> None:
    """What is at its first meeting has no date: any day will do, and a sitting a day is offered."""
    noor = kinds.reader(NOOR)
    noor.answer("first-dose", "7")
    end = end_of(answer_right(kinds, noor, begin(noor)))
    form = noor.open(end).form_to(end)
    assert "The next practice is tomorrow." in noor.go_on(noor.post(form.action, form.fields)).words
    kinds.clock.wait(days=1)
    assert offered(noor.open("/practice")).startswith("Today's sitting")


def test_a_sitting_is_gone_through_question_by_question(bench: Bench) -> None:
    """Each says its place; neighbours are on other skills; the end says what is next."""
    noor = due(bench)
    page, places, seen = begin(noor), [], []
    while not page.path.endswith("/end"):
        places.append(page.main.all(class_="back")[0].words)
        with bench.app.test_request_context("/"):
            was = opened(page.form.fields["shown"])
        assert was is not None
        seen.append(bench.library.questions[was.question_id].skills)
        page = noor.open(onward(answer_right(bench, noor, page)))
    assert places == [f"Practice, question {number} of 8" for number in range(1, 9)]
    for place in range(len(seen)):
        assert not set(seen[place]) & {
            each for skills in seen[place + 1 : place + 4] for each in skills
        }
    assert page.heading == "What changed"
    assert "All stand as before" in page.words
    assert "The next practice is" in page.words


def test_the_end_tells_what_moved(bench: Bench) -> None:
    """Right on three later days, each skill goes from Gelled to Set."""
    noor = gelled(bench)
    for days in (1, 2, 4):
        bench.clock.wait(days=days)
        noor = bench.visit(NOOR)
        page = through(bench, noor)
    assert page.words.count("It was Gelled.") == 4
    assert page.words.count("Set ") >= 4


def test_a_sitting_is_taken_up_where_it_was_left(bench: Bench) -> None:
    """On another phone too: seven of eight are left, and the button leads to the second."""
    begun(bench)
    elsewhere = bench.visit(NOOR)
    page = elsewhere.open("/practice")
    assert offered(page).startswith("Go on where you left off 7 questions left")
    assert "question 2 of 8" in begin(elsewhere).words


def test_a_second_press_begins_no_second_sitting(bench: Bench) -> None:
    """It leads to the same question."""
    noor = due(bench)
    assert begin(noor).path == begin(noor).path


def test_a_turn_that_was_answered_shows_its_mark(bench: Bench) -> None:
    """A step back in the browser asks nothing twice."""
    noor = due(bench)
    page = begin(noor)
    mark = answer_right(bench, noor, page)
    assert noor.open(page.path).leads_to == mark.path


def test_a_slip_gets_its_second_try_in_the_sitting(kinds: Bench) -> None:
    """The cue, the retry, and the way on are as elsewhere; the turn's first try stays wrong."""
    noor = kinds.reader(NOOR)
    noor.read("mixing")
    noor.answer("bare-chain", "1", "1")
    page = begin(noor)
    while "dose-chain" not in question_of(kinds, page):
        page = noor.open(onward(answer_right(kinds, noor, page)))
    slip = noor.answer(noor.alone(page.path), "4", "32")
    assert slip.mark == "Wrong: this looks like a slip"
    again = noor.open(page.path)
    assert again.status == 303
    told = noor.answer(slip, "40")
    assert told.mark == "Right"
    end = noor.open(end_of(page))
    rows = {each.words for each in end.main.all("li") if "From the bucket" in each.words}
    assert any("wrong" in words for words in rows)


def test_a_wrong_answer_is_explained_and_led_on(bench: Bench) -> None:
    """The turn is done; no button asks it anew, since that is the lesson's place."""
    noor = due(bench)
    mark = answer_wrong(noor, begin(noor))
    assert "Again, on fresh numbers" not in mark.words
    assert "question 2 of 8" in noor.open(onward(mark)).words


def test_after_ten_minutes_it_offers_its_end_first(bench: Bench) -> None:
    """And going on second, on the mark and at the end; nothing is taken away."""
    noor = due(bench)
    page = begin(noor)
    for _ in range(3):
        bench.clock.wait(minutes=4)
        mark = answer_right(bench, noor, page)
        page = noor.open(onward(mark))
    ways = [(each.words, each["href"]) for each in mark.main.all("a", class_="button")]
    assert ways[0] == ("10 minutes are over: see what changed", end_of(mark))
    assert ways[1] == ("Next question", f"{page.path.rpartition('/')[0]}/4")
    assert page.path.endswith("/end")
    assert offered(page).startswith("That is enough for a day 5 questions left")
    assert "question 4 of 8" in noor.open(f"{page.path.rpartition('/')[0]}/4").words


def test_a_sitting_is_ended_by_hand(bench: Bench) -> None:
    """Then none is offered until tomorrow: three skills twice, and one to fill the gap."""
    noor = begun(bench)
    sitting_end = end_of(begin(noor))
    form = noor.open(sitting_end).form_to(sitting_end)
    page = noor.go_on(noor.post(form.action, form.fields))
    assert "What is next" in page.words
    assert "Today's practice is done." in noor.open("/practice").words
    bench.clock.wait(days=1)
    assert offered(noor.open("/practice")).startswith("Today's sitting 7 questions")


def test_what_was_left_yesterday_comes_first_today(bench: Bench) -> None:
    """The page says so, and plans anew."""
    noor = begun(bench)
    bench.clock.wait(days=1)
    page = noor.open("/practice")
    assert "You left your sitting of yesterday before its end." in page.notes
    assert offered(page).startswith("Today's sitting")


def test_a_question_that_no_lesson_asks_any_more_is_passed_over(bench: Bench) -> None:
    """Its turn leads on to the next."""
    noor = due(bench)
    page = begin(noor)
    gone = bench.library.questions.pop(question_of(bench, page))
    try:
        assert "question 2 of 8" in noor.go_on(noor.open(page.path)).words
        assert offered(noor.open("/practice")).startswith("Go on where you left off 7")
    finally:
        bench.library.questions[gone.id] = gone


def test_answered_meanwhile_on_its_own_page_it_comes_on_fresh_numbers(bench: Bench) -> None:
    """The turn is still to be done, and the numbers are others."""
    noor = due(bench)
    page = begin(noor)
    answer_right(bench, noor, noor.alone(question_of(bench, page)))
    again = noor.open(page.path)
    assert again.question != page.question
    assert "question 1 of 8" in again.words


def test_a_sitting_is_one_s_own(bench: Bench) -> None:
    """To Sam it isn't there, in any of its pages."""
    noor, sam = begun(bench), bench.reader(SAM)
    place = begin(noor).path
    mark = onward_mark(noor, place)
    token = sam.open("/practice").sign_out_form.fields["csrf_token"]
    for path in (place, end_of(begin(noor)), mark):
        assert sam.open(path).status == 404
        assert sam.post(path, {"csrf_token": token}).status in (404, 405)


def onward_mark(noor: Visitor, place: str) -> str:
    """The address of the mark of the first turn."""
    return noor.open(place.rpartition("/")[0] + "/1").leads_to


@pytest.mark.parametrize(
    "path", ["/practice/999/1", "/practice/1/0", "/practice/1/9", "/practice/1/1/9/1"]
)
def test_what_isn_t_there_is_not_found(bench: Bench, path: str) -> None:
    """A sitting, a place, or an answer."""
    noor = due(bench)
    begin(noor)
    assert noor.open(path).status == 404


def test_signed_out_there_is_a_way_to_sign_in(bench: Bench) -> None:
    """And what was typed outlives it."""
    noor = due(bench)
    page = begin(noor)
    with bench.app.test_request_context("/"):
        was = opened(page.form.fields["shown"])
    assert was is not None
    drawn = bench.library.questions[was.question_id].drawn(was.seed, was.redraws)
    typed = {**page.form.fields, **right_fields(drawn)}
    noor.sign_out()
    asked = noor.post(page.path, typed)
    assert asked.status == 401
    back = noor.go_on(noor.send(asked, name="noor", password="a bucket of warm resin"))
    assert back.form.fields["answer_0"] == typed["answer_0"]
    assert "question 1 of 8" in back.words


def test_a_form_without_its_key_comes_back_whole(bench: Bench) -> None:
    """With what was typed, in its place."""
    noor = due(bench)
    page = begin(noor)
    again = noor.send(page, csrf_token="", answer_0="1.25")
    assert again.status == 400
    assert again.form.fields["answer_0"] == "1.25"


def test_a_form_sent_twice_counts_once(bench: Bench) -> None:
    """The second leads to the first one's mark."""
    noor = due(bench)
    page = begin(noor)
    kept = bench.attempts_kept()
    first, second = (noor.send(page, answer_0="1", answer_1="1") for _ in range(2))
    assert first.leads_to == second.leads_to
    assert bench.attempts_kept() == kept + 1


def test_no_page_shows_a_percentage_or_a_score(bench: Bench) -> None:
    """Nor any code of what keeps the dates."""
    noor = due(bench)
    pages = [noor.open("/practice"), through(bench, noor), noor.open("/practice"), noor.open("/")]
    for page in pages:
        assert "%" not in page.words
        for word in ("score", "stability", "retriev", "interval"):
            assert word not in page.words.casefold()


def test_an_answer_in_a_sitting_counts_for_its_skill(bench: Bench) -> None:
    """As one in a lesson does: the date moves on from today."""
    noor = due(bench, skills=1)
    through(bench, noor)
    bench.clock.wait(days=1)
    assert "Nothing is due today." in noor.open("/practice").words
    bench.clock.wait(days=1)
    assert offered(noor.open("/practice")).startswith("Today's sitting")


def test_it_is_noted_which_try_was_the_turn_s_own(bench: Bench) -> None:
    """By the count of its run, so that it can be told again."""
    begun(bench)
    with bench.records() as session:
        person_id = id_of(session, NOOR)
        sitting = sittings.last_sitting(session, person_id)
        assert sitting is not None
        first = sitting.turns[0]
        row = progress.question_row(session, person_id, first.facts.question_id)
    assert row is not None
    assert (first.count, first.right) == (row.finished - 1, True)


def test_a_clock_set_back_does_no_harm(bench: Bench) -> None:
    """A sitting of tomorrow is no reason to say anything, and today's is planned anew."""
    begun(bench)
    bench.clock.wait(days=-1)
    page = bench.visit(NOOR).open("/practice")
    assert page.status == 200
    assert "before its end" not in page.notes


def test_pressing_where_nothing_is_due_leads_back(bench: Bench) -> None:
    """An old form finds nothing to begin, and nothing is kept of it."""
    noor = gelled(bench)
    token = noor.open("/practice").sign_out_form.fields["csrf_token"]
    assert noor.post("/practice", {"csrf_token": token}).leads_to == "/practice"
    with bench.records() as session:
        assert sittings.last_sitting(session, id_of(session, NOOR)) is None
