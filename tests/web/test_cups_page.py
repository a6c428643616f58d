"""Test cups on their page: started, timed, kept for their owner, taken back."""

import pytest
from web_bench import Bench
from web_cast import NOOR, PASSWORD, SAM
from web_mix import CUP, NAMED, mixed, timed_cup
from web_page import Page
from web_visitor import Visitor


def cups(visitor: Visitor) -> Page:
    """Return the page of somebody's cups."""
    return visitor.open("/mix/cups")


def test_there_is_none_to_begin_with(bench: Bench) -> None:
    """And the page says what to do."""
    assert "No cup has been timed yet" in cups(bench.visit(NOOR)).words


def test_minutes_that_were_timed_elsewhere_are_kept(bench: Bench) -> None:
    """With temperature, dose and resin."""
    noor = bench.visit(NOOR)
    assert timed_cup(noor).status == 303
    words = cups(noor).words
    for told in ("26 min", "at 18 °C", "2 % by mass", "Own brew"):
        assert told in words


def test_a_cup_is_started_and_timed_by_the_clock(bench: Bench) -> None:
    """Pressed at the start and pressed again after 24 minutes."""
    noor = bench.visit(NOOR)
    started = noor.post(
        "/mix/cups", {**cups(noor).form_to("/mix/cups").fields, **CUP, "minutes": ""}
    )
    running = noor.go_on(started)
    bench.clock.wait(minutes=24)
    noor.go_on(noor.post("/mix/cups", running.form_to("/mix/cups").fields))
    assert "24 min" in cups(noor).words


def test_a_cup_is_timed_by_the_phone_s_own_clock(bench: Bench) -> None:
    """A phone 90 seconds behind the server still counts 24 minutes from press to press."""
    noor = bench.visit(NOOR)
    form = cups(noor).form_to("/mix/cups").fields
    pressed = {**CUP, "minutes": "", "pressed": "2026-03-09T07:43:30.000Z"}
    running = noor.go_on(noor.post("/mix/cups", {**form, **pressed}))
    bench.clock.wait(minutes=24)
    gelled = {"gelled": "2026-03-09T08:07:30.000Z"}
    noor.post("/mix/cups", {**running.form_to("/mix/cups").fields, **gelled})
    assert "24 min" in cups(noor).words


def test_a_batch_s_own_gel_replaces_the_cups_of_that_resin(bench: Bench) -> None:
    """The cup said 26; the bucket itself gelled after 20."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    timed_cup(noor, minutes="20", from_batch="yes")
    page = mixed(noor, NAMED)
    assert "The batch on the roof of today: 20 min" in page.words
    assert "The cup of today" not in page.words


def test_a_cup_not_from_today_says_so(bench: Bench) -> None:
    """It is still gone by, with a caution."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    bench.clock.wait(days=2)
    assert "Not from today: time a new one." in cups(noor).words
    assert "A cup is from 2 days ago" in mixed(noor, NAMED).words


def test_a_cup_is_taken_back(bench: Bench) -> None:
    """No clock goes by it any more."""
    noor = bench.visit(NOOR)
    timed_cup(noor)
    form = cups(noor).form_to("/mix/cups/1/take-back")
    assert noor.post(form.action, form.fields).status == 303
    assert "No cup has been timed yet" in cups(noor).words


def test_nobody_takes_back_another_s_cup(bench: Bench) -> None:
    """To Sam it isn't there."""
    noor, sam = bench.visit(NOOR), bench.visit(SAM)
    timed_cup(noor)
    token = cups(sam).form_to("/mix/cups").fields["csrf_token"]
    assert sam.post("/mix/cups/1/take-back", {"csrf_token": token}).status == 404
    assert "26 min" in cups(noor).words


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"minutes": "0"}, "minutes", "must lie between 1 and 240"),
        ({"minutes": "", "do": "minutes"}, "minutes", "Type the minutes"),
        ({"minutes": "half an hour"}, "minutes", "can't be read"),
        ({"product": "", "pick": ""}, "product", "Type the resin's name"),
        ({"at": ""}, "at", "Type the temperature"),
        ({"at": "2"}, "at", "must lie between 5 and 35"),
        ({"dose": "9"}, "dose", "must lie between"),
    ],
)
def test_what_can_t_be_kept_is_told_by_its_field(
    bench: Bench, typed: dict[str, str], field: str, sentence: str
) -> None:
    """One sentence each; nothing is half-kept and nothing typed is lost."""
    noor = bench.visit(NOOR)
    page = timed_cup(noor, **typed)
    assert page.status == 422
    assert sentence in page.error_of(field)
    assert "No cup has been timed yet" in page.words


def test_signed_out_there_are_no_cups(bench: Bench) -> None:
    """One is asked to sign in."""
    assert cups(bench.visit()).leads_to == "/sign-in?then=/mix/cups"


def test_a_cup_keeps_the_dose_as_it_was_given(bench: Bench) -> None:
    """20 ml per kg stands as such, with what it is by mass."""
    noor = bench.visit(NOOR)
    timed_cup(noor, dose="20", dose_as="ml per kg")
    assert "20 ml per kg (2.34 % by mass)" in cups(noor).words


def test_a_name_is_shown_as_text(bench: Bench) -> None:
    """Whatever signs are in it."""
    noor = bench.visit(NOOR)
    timed_cup(noor, product="<i>Brew</i> & co")
    page = cups(noor)
    assert "<i>Brew</i> & co" in page.words
    assert not page.main.all("i")


@pytest.mark.parametrize("product", ["Brew\0", "Brew\x07", "\u202eBrew"])
def test_a_name_that_can_t_be_printed_is_refused(bench: Bench, product: str) -> None:
    """Signs that no keyboard types are told of, and nothing is kept."""
    page = timed_cup(bench.visit(NOOR), product=product)
    assert page.status == 422
    assert "one line of 80" in page.error_of("product")


def test_what_was_typed_survives_signing_in_again(bench: Bench) -> None:
    """Sent after the sign-in had ended, it stands in the form afterwards."""
    gone = bench.visit()
    asked = gone.post("/mix/cups", CUP)
    assert asked.status == 401
    signed_in = gone.send(asked, name="noor", password=PASSWORD)
    page = gone.go_on(gone.go_on(signed_in))
    fields = page.form_to("/mix/cups").fields
    assert (fields["minutes"], fields["product"], fields["at"]) == ("26", "Own brew", "18")
