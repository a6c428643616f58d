"""Used on a job: noted on one's own page, confirmed on the supervisor's, and nothing else moves."""

import pytest
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, RUTH, SAM
from web_uses import USED, answer_uses, note_use


def test_a_use_is_noted_and_waits(bench: Bench) -> None:
    """The page says so, and her list shows it."""
    noor = bench.visit(NOOR)
    page = noor.go_on(note_use(noor))
    assert "Noted. It waits until your supervisor confirms it." in page.notes
    assert "Barn at Holt Lane, today" in page.words
    assert "waits for your supervisor" in page.words


def test_the_supervisor_confirms_it(bench: Bench) -> None:
    """It leaves the list, and Noor's page says who did."""
    noor, bertil = bench.visit(NOOR), bench.visit(BERTIL)
    note_use(noor)
    assert "Barn at Holt Lane, today" in bertil.open("/crew/uses").words
    assert "1 use by Noor: confirmed." in answer_uses(bertil).notes
    assert "Nothing waits to be confirmed." in bertil.open("/crew/uses").words
    words = noor.open("/uses").words
    assert "confirmed by Bertil" in words
    # Where a lapse hurts somebody the clock runs for 90 days.
    assert "Without another use it needs another look from 7 June" in words


def test_a_supervisor_may_not_be_able_to(bench: Bench) -> None:
    """Nothing is set back, and Noor sees that."""
    noor, bertil = bench.visit(NOOR), bench.visit(BERTIL)
    note_use(noor)
    assert "1 use by Noor: not confirmed." in answer_uses(bertil, "not confirmed").notes
    words = noor.open("/uses").words
    assert "not confirmed by Bertil" in words
    assert "No use has been confirmed yet." in words


def test_the_clock_runs_out(bench: Bench) -> None:
    """On the ninetieth day it says so, to her and to her supervisor."""
    noor, bertil = bench.visit(NOOR), bench.visit(BERTIL)
    note_use(noor)
    answer_uses(bertil)
    bench.clock.wait(days=29)
    assert "too long since" not in noor.open("/uses").words
    bench.clock.wait(days=61)
    later = bench.visit(NOOR)
    assert "unused for too long since today" in later.open("/uses").words
    ref = bench.ref_of(NOOR)
    assert "unused for too long since today" in bench.visit(BERTIL).open(f"/crew/{ref}").words


def test_a_confirmed_use_moves_nothing_else(bench: Bench) -> None:
    """Progress, before and after, reads the same."""
    noor, bertil = bench.visit(NOOR), bench.visit(BERTIL)
    before = noor.open("/progress").words
    note_use(noor)
    answer_uses(bertil)
    assert noor.open("/progress").words == before


def test_ruth_sees_nothing_of_another_crew(bench: Bench) -> None:
    """Nor can she confirm it by its number."""
    note_use(bench.visit(NOOR))
    ruth = bench.visit(RUTH)
    page = ruth.open("/crew/uses")
    assert "Nothing waits to be confirmed." in page.words
    token = page.sign_out_form.fields["csrf_token"]
    sent = {"csrf_token": token, "use_1": "yes", "answer": "confirmed"}
    told = ruth.go_on(ruth.post("/crew/uses", sent))
    assert "Those were answered already, or taken back." in told.notes
    assert "waits for your supervisor" in bench.visit(NOOR).open("/uses").words


def test_the_office_answers_for_every_crew(bench: Bench) -> None:
    """Kit confirms where the supervisor has left."""
    note_use(bench.visit(NOOR))
    assert "1 use by Noor: confirmed." in answer_uses(bench.visit(KIT)).notes


def test_a_supervisor_s_own_use_waits_for_somebody_else(bench: Bench) -> None:
    """Bertil notes one, and doesn't find it on his list."""
    bertil = bench.visit(BERTIL)
    note_use(bertil)
    assert "Nothing waits to be confirmed." in bertil.open("/crew/uses").words
    assert "1 use by Bertil: confirmed." in answer_uses(bench.visit(KIT)).notes


def test_it_is_taken_back_while_it_waits(bench: Bench) -> None:
    """By whoever noted it; to Sam it isn't there."""
    noor, sam = bench.visit(NOOR), bench.visit(SAM)
    note_use(noor)
    form = noor.open("/uses").form_to("/uses/1/take-back")
    token = sam.open("/uses").sign_out_form.fields["csrf_token"]
    assert sam.post(form.action, {"csrf_token": token}).status == 404
    assert "That is taken back." in noor.go_on(noor.post(form.action, form.fields)).notes


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"used_mixing": ""}, "Tick at least one thing that you did there."),
        ({"roof": "  "}, "Say which roof it was"),
        ({"roof": "x" * 81}, "A roof's name is one line of 80 letters"),
        ({"used_on": ""}, "Write the day like 9 March 2026 or 2026-03-09."),
        ({"used_on": "9th"}, "Write the day like 9 March 2026 or 2026-03-09."),
        ({"used_on": "2026-03-10"}, "That day is still to come"),
        ({"used_on": "2026-02-06"}, "That was before 7 February, too long ago"),
        ({"used_on": "0001-01-01"}, "That was before 7 February, too long ago"),
    ],
)
def test_what_can_t_be_noted_is_said_and_kept(
    bench: Bench, typed: dict[str, str], sentence: str
) -> None:
    """422, one sentence at the top and by the field, and all else as it was typed."""
    noor = bench.visit(NOOR)
    page = note_use(noor, **typed)
    assert page.status == 422
    assert page.words.count(sentence) == 2
    expected = {**USED, **typed}["roof"]
    assert page.form_to("/uses").fields["roof"] == expected
    assert "What you have noted" not in noor.open("/uses").words


def test_a_form_sent_twice_is_one_use(bench: Bench) -> None:
    """The second says that it was noted before."""
    noor = bench.visit(NOOR)
    note_use(noor)
    assert "All of that was noted before." in noor.go_on(note_use(noor)).notes


def test_a_form_without_its_key_comes_back_whole(bench: Bench) -> None:
    """With what was typed, to be sent again."""
    noor = bench.visit(NOOR)
    page = noor.post("/uses", USED)
    assert page.status == 400
    assert "This form had lost its key" in page.words
    assert page.form_to("/uses").fields["roof"] == "Barn at Holt Lane"


def test_what_was_typed_outlives_a_sign_in(bench: Bench) -> None:
    """Signed out half-way, signed in again: it stands there as it was typed."""
    noor = bench.visit(NOOR)
    form = noor.open("/uses").form_to("/uses").fields
    noor.sign_out()
    asked = noor.post("/uses", {**form, **USED})
    assert asked.status == 401
    back = noor.go_on(noor.send(asked, name="noor", password="a bucket of warm resin"))
    fields = back.form_to("/uses").fields
    assert (fields["roof"], fields.get("used_mixing")) == ("Barn at Holt Lane", "yes")


def test_no_answer_but_the_two_is_taken(bench: Bench) -> None:
    """Anything else is refused, and all keeps waiting."""
    note_use(bench.visit(NOOR))
    bertil = bench.visit(BERTIL)
    form = bertil.open("/crew/uses").form_to("/crew/uses")
    assert bertil.post("/crew/uses", {**form.fields, "answer": "signed"}).status == 400
    assert "Barn at Holt Lane" in bertil.open("/crew/uses").words


@pytest.mark.parametrize("number", ["²", "1e3", "-1", "", "9" * 30])
def test_a_number_that_is_none_answers_nothing(bench: Bench, number: str) -> None:
    """A forged form is told that nothing is left."""
    bertil = bench.visit(BERTIL)
    token = bertil.open("/crew/uses").sign_out_form.fields["csrf_token"]
    sent = {"csrf_token": token, f"use_{number}": "yes", "answer": "confirmed"}
    assert "Those were answered already" in bertil.go_on(bertil.post("/crew/uses", sent)).notes


def test_nothing_ticked_changes_nothing(bench: Bench) -> None:
    """And says so."""
    bertil = bench.visit(BERTIL)
    token = bertil.open("/crew/uses").sign_out_form.fields["csrf_token"]
    sent = {"csrf_token": token, "answer": "confirmed"}
    assert "Nothing was ticked" in bertil.go_on(bertil.post("/crew/uses", sent)).notes
