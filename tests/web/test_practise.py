"""Practise on a roof: its own figures asked, marked and kept, and never counted for a skill."""

import pytest
from web_bench import Bench, id_of
from web_cast import BERTIL, KIT, NOOR, ODA, SAM, Who
from web_practice import DIGEST, SHED, drop, kept_text, question_on, save, states

from trainer.lessons import fresh_variant
from trainer.records import attempts
from trainer.records.attempts import StoredAttempt
from trainer.web.faults import LOST_TOKEN
from trainer.web.roof_figures import questions_on
from trainer.web.turn import BACK, NOT_OURS


def stored(bench: Bench, question: str, roof: str = DIGEST, count: int = 0) -> StoredAttempt:
    """Return Noor's first try at a question on a roof."""
    with bench.records() as session:
        kept = attempts.attempt_at(
            session, id_of(session, NOOR), question, roof=roof, count=count, try_no=1
        )
        assert kept
        return kept


# The list.


def test_a_roof_lists_what_it_can_be_practised_on(tiny: Bench) -> None:
    """The shed has a fall and a deck, and no pipe: two questions, the first of them next."""
    roof = save(tiny, NOOR)
    page = tiny.reader(NOOR).open(f"/roofs/{roof}/practise")
    assert (page.status, page.heading) == (200, "Practise on this roof")
    assert states(page) == {
        "How far the shed drops": "not tried",
        "Topcoat for the shed": "not tried",
    }
    assert page.main.all(class_="first")[0].all("h2")[0].words == "How far the shed drops"
    assert f"/roofs/{roof}" in page.links()
    assert "The coal shed" in page.words


def test_the_list_tells_what_was_right_before_and_what_is_next(tiny: Bench) -> None:
    """Right, tried, and the first that isn't right yet; then nothing is left but to take any."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    fall = noor.open(question_on(roof, "roof-fall"))
    noor.answer(fall, drop(fall))
    noor.answer(noor.open(question_on(roof, "roof-coat")), "7", "7")
    page = noor.open(f"/roofs/{roof}/practise")
    assert list(states(page).values()) == ["right", "tried"]
    assert page.main.all(class_="first")[0].all("a")[0]["href"] == question_on(roof, "roof-coat")
    noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4")
    done = noor.open(f"/roofs/{roof}/practise")
    assert not done.main.all(class_="first")
    assert "has been right once" in done.words


def test_a_roof_that_cannot_be_planned_any_more_says_so(tiny: Bench) -> None:
    """Its text was kept by other rules; the page leads to the sheet, and no question is there."""
    roof = save(tiny, NOOR, {**SHED, "edge": []})
    noor = tiny.reader(NOOR)
    page = noor.open(f"/roofs/{roof}/practise")
    assert (page.status, "can't be planned as it stands" in page.words) == (200, True)
    assert noor.open(question_on(roof, "roof-fall")).status == 404


# An answer.


def test_a_right_answer_is_right_and_shows_the_working(tiny: Bench) -> None:
    """The roof's own run is in the question, the mark and the working."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-fall"))
    assert "Water runs 2.5 m" in page.question
    marked = noor.answer(page, drop(page))
    assert (marked.status, marked.heading, marked.mark) == (200, "How far the shed drops", "Right")
    assert marked.main.all(class_="working")
    assert marked.path == f"{question_on(roof, 'roof-fall')}/{DIGEST}/0/1"
    assert not marked.notes


def test_an_answer_is_kept_with_the_roof_and_both_texts(tiny: Bench) -> None:
    """Years later it is read by the questions and the roof as they were."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    noor.answer(noor.open(question_on(roof, "roof-coat")), "5 kg", "4 L")
    kept = stored(tiny, "roof-coat")
    assert (kept.roof, kept.source_digest) == (DIGEST, tiny.library.roof_questions.digest)
    assert (kept.lesson, kept.competency) == ("roof-questions", "")
    assert kept.givens == {"area_m2": 10, "kg_per_m2": 0.5, "topcoat_kg_per_l": 1.25}
    assert [answer.skill for answer in kept.answers] == ["", "dose"]


def test_practice_counts_for_its_question_and_for_nothing_else(tiny: Bench) -> None:
    """No lesson's tries move, neither on the progress page nor in the crew table."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    before = [noor.open("/progress").words, tiny.visit(BERTIL).open("/crew").words]
    noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4")
    assert [noor.open("/progress").words, tiny.visit(BERTIL).open("/crew").words] == before
    row = tiny.question_row(NOOR, "roof-coat")
    assert row
    assert (row.tried, row.right, row.finished) == (1, 1, 1)
    assert tiny.lesson_row(NOOR, "roof-questions") is None


def test_a_slip_gets_its_name_its_cue_and_one_retry(tiny: Bench) -> None:
    """On the same numbers, the first wrong line alone; then it is right, and that was it."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    slip = noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "5")
    assert "The kilograms read off as litres." in slip.words
    assert "Is a litre heavier than a kilogram, or lighter?" in slip.words
    assert not slip.main.all(class_="working")
    assert noor.open(question_on(roof, "roof-coat")).leads_to == slip.path
    marked = noor.answer(slip, "4")
    assert (marked.mark, marked.path) == ("Right", slip.path[:-1] + "2")
    assert states(noor.open(f"/roofs/{roof}/practise"))["Topcoat for the shed"] == "right"


def test_an_error_is_carried_and_charged_once(tiny: Bench) -> None:
    """From 6 kg it is 4.8 L: right for that figure."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    marked = noor.answer(noor.open(question_on(roof, "roof-coat")), "6", "4.8")
    assert marked.mark == "Wrong"
    assert [each.verdict for each in stored(tiny, "roof-coat").answers] == ["wrong", "carried"]


def test_what_is_unclear_is_asked_about_and_never_marked(tiny: Bench) -> None:
    """422, what was typed, a sentence by the field, and the same numbers."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-fall"))
    again = noor.send(page, answer_0="1,300")
    assert (again.status, again.question) == (422, page.question)
    assert again.error_of("answer_0") == "Is that 1.300 or 1300? Write it one of those ways."
    assert tiny.attempts_kept() == 0
    assert noor.answer(again, drop(page)).mark == "Right"


def test_a_form_sent_twice_counts_once(tiny: Bench) -> None:
    """Both lead to the first one's mark."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-fall"))
    first, second = (noor.send(page, answer_0=text) for text in ("3", drop(page)))
    assert first.leads_to == second.leads_to
    assert noor.go_on(second).mark == "Wrong"
    assert tiny.attempts_kept() == 1


def test_fresh_numbers_come_until_all_were_had(tiny: Bench) -> None:
    """Three ratios in three runs, then the first one's again, its working known."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    asked = []
    for _ in range(4):
        page = noor.open(question_on(roof, "roof-fall"))
        asked.append(page.question)
        noor.answer(page, drop(page))
    assert len(set(asked[:3])) == 3
    assert asked[3] == asked[0]
    assert not stored(tiny, "roof-fall", count=3).unaided


def test_a_form_without_its_token_comes_back_as_typed(tiny: Bench) -> None:
    """400 with the question, what was typed, and a form that is good."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-coat"))
    again = noor.send(page, csrf_token="", answer_0="5", answer_1="4")
    assert (again.status, again.notes) == (400, LOST_TOKEN)
    assert again.form.fields["answer_1"] == "4"
    assert noor.go_on(noor.send(again)).mark == "Right"


def test_an_answer_survives_signing_in_again(tiny: Bench) -> None:
    """What was typed on a roof is there, to be checked."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-coat"))
    noor.sign_out()
    asked_in = noor.send(page, answer_0="5", answer_1="4")
    assert asked_in.status == 401
    back = noor.go_on(noor.send(asked_in, name="noor", password="a bucket of warm resin"))
    assert (back.path, back.notes) == (question_on(roof, "roof-coat"), BACK)
    assert back.form.fields["answer_1"] == "4"
    assert noor.go_on(noor.send(back)).mark == "Right"


def test_one_question_leads_to_the_next_and_the_last_to_the_list(tiny: Bench) -> None:
    """In the order of the list, which each question leads back to as well."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    fall = noor.open(question_on(roof, "roof-fall"))
    assert f"/roofs/{roof}/practise" in fall.links()
    assert question_on(roof, "roof-coat") in noor.answer(fall, drop(fall)).links()
    last = noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4").links()
    assert last.count(f"/roofs/{roof}/practise") == 2


# Who may.


def test_the_first_lesson_comes_first(tiny: Bench) -> None:
    """Eyes and hands before any roof: the list and its questions lead there."""
    roof = save(tiny, NOOR)
    noor = tiny.visit(NOOR)
    for path in (f"/roofs/{roof}/practise", question_on(roof, "roof-fall")):
        assert noor.open(path).leads_to == "/lessons/before-the-lid"


@pytest.mark.parametrize("who", [SAM, ODA, BERTIL, KIT])
def test_somebody_elses_roof_is_not_there(tiny: Bench, who: Who) -> None:
    """A trainee's own roof is nobody else's: not to see, not to answer, not to read a mark of."""
    roof = save(tiny, NOOR)
    noor, other = tiny.reader(NOOR), tiny.reader(who)
    marked = noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4")
    paths = (f"/roofs/{roof}/practise", question_on(roof, "roof-fall"), marked.path)
    assert [other.open(path).status for path in paths] == [404, 404, 404]
    own = save(tiny, who)
    page = other.open(question_on(own, "roof-coat"))
    sent = other.post(question_on(roof, "roof-coat"), {**page.form.fields, "answer_0": "5"})
    assert sent.status == 410
    assert tiny.attempts_kept() == 1


def test_a_supervisors_roof_is_the_crews_to_practise_on(tiny: Bench) -> None:
    """Each of them for themselves; another crew's trainee doesn't see it."""
    roof = save(tiny, BERTIL)
    noor, sam = tiny.reader(NOOR), tiny.reader(SAM)
    assert noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4").mark == "Right"
    assert set(states(sam.open(f"/roofs/{roof}/practise")).values()) == {"not tried"}
    assert tiny.reader(ODA).open(f"/roofs/{roof}/practise").status == 404


def test_signed_out_leads_to_the_sign_in(tiny: Bench) -> None:
    """And back again."""
    roof = save(tiny, NOOR)
    page = tiny.visit().open(f"/roofs/{roof}/practise")
    assert page.leads_to.startswith("/sign-in?then=/roofs")


@pytest.mark.parametrize(
    "path",
    [
        "/roofs/999/practise",
        "/roofs/999/practise/roof-fall",
        "/roofs/1/practise/roof-pipe",
        "/roofs/1/practise/first-dose",
        "/roofs/1/practise/no-such-question",
        f"/roofs/1/practise/roof-fall/{DIGEST}/0/1",
        "/roofs/1/practise/roof-fall/nothing/0/1",
        "/roofs/x/practise",
    ],
)
def test_what_is_missing_is_not_found(tiny: Bench, path: str) -> None:
    """A roof, a question that this roof isn't asked, a lesson's question, a mark never given."""
    assert save(tiny, NOOR) == 1
    assert tiny.reader(NOOR).open(path).status == 404


def test_wrong_methods_are_refused(tiny: Bench) -> None:
    """The list and a mark are read, not sent."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    marked = noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4")
    token = {"csrf_token": noor.open("/help").sign_out_form.fields["csrf_token"]}
    assert noor.post(f"/roofs/{roof}/practise", token).status == 405
    assert noor.post(marked.path, token).status == 405


def test_a_form_of_another_place_is_not_taken(tiny: Bench) -> None:
    """A lesson's form sent to a roof, and a roof's to a lesson: nothing is marked."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    fields = noor.alone("first-dose").form.fields
    page = noor.post(question_on(roof, "roof-fall"), {**fields, "answer_0": "50"})
    assert (page.status, page.notes) == (422, NOT_OURS)
    fields = noor.open(question_on(roof, "roof-fall")).form.fields
    assert noor.post("/questions/roof-fall", {**fields, "answer_0": "50"}).status == 410
    assert tiny.attempts_kept() == 0


# The real questions.


@pytest.mark.parametrize("name", ["dormer", "workshop"])
def test_every_real_question_can_be_answered_right(bench: Bench, name: str) -> None:
    """On the smallest and the largest sample roof, from the page, each with its working."""
    sample = bench.library.roofs[name]
    roof = save(bench, NOOR, dict(sample.data))
    noor = bench.reader(NOOR)
    with bench.app.app_context():
        questions = questions_on(sample.text)
    for question in questions.values():
        with bench.records() as session:
            digest, person_id = kept_text(dict(sample.data)).digest, id_of(session, NOOR)
            seed = bench.installation.seed(person_id, question.id, digest, 0)
        drawn = fresh_variant(question, seed)
        assert drawn
        figures = drawn.working().figures
        typed = [f"{ask.in_asked_unit(figures[ask.line]):.9f} {ask.unit}" for ask in question.asks]
        marked = noor.answer(noor.open(question_on(roof, question.id)), *typed)
        assert (marked.mark, len(marked.main.all(class_="answer-label"))) == (
            "Right",
            len(question.asks),
        ), question.id
    assert set(states(noor.open(f"/roofs/{roof}/practise")).values()) == {"right"}
