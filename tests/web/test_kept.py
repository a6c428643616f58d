"""What was typed is kept through signing in again."""

from collections.abc import Iterator

import pytest
from web_bench import Bench
from web_cast import NOOR, PASSWORD, SAM, Who
from web_page import Page
from web_visitor import Visitor

from trainer.web import kept
from trainer.web.signing_in import ENDED
from trainer.web.turn import BACK, TOO_LONG


@pytest.fixture
def request_of(tiny: Bench) -> Iterator[None]:
    """A request, for the functions that need its session and secret."""
    with tiny.app.test_request_context("/"):
        yield


def sign_in_again(visitor: Visitor, page: Page, who: Who = NOOR) -> Page:
    """Return what comes after signing in on a page that asks for it."""
    return visitor.send(page, name=who.sign_in_name, password=PASSWORD)


@pytest.mark.usefixtures("request_of")
def test_a_parcel_comes_out_as_it_went_in() -> None:
    """Path and fields are read back, but for the token and the password."""
    fields = {"answer_0": "40 g", "csrf_token": "t", "password": "p", "kept": "k"}
    assert kept.unpacked(kept.packed("/questions/a", fields)) == kept.Parcel(
        "/questions/a", {"answer_0": "40 g"}
    )


@pytest.mark.usefixtures("request_of")
def test_empty_fields_take_no_room() -> None:
    """A form of a hundred fields has most of them empty."""
    fields = {"title": "Garage", **{f"opening.{number}.x_m": "" for number in range(1, 99)}}
    packed = kept.unpacked(kept.packed("/roofs/new", fields))
    assert packed == kept.Parcel("/roofs/new", {"title": "Garage"})


@pytest.mark.usefixtures("request_of")
def test_a_parcel_that_was_opened_on_the_way_is_refused() -> None:
    """A changed letter, another's seal and nothing at all give nothing."""
    packed = kept.packed("/questions/a", {"answer_0": "40 g"})
    assert kept.unpacked(f"x{packed}") is None
    assert kept.unpacked(packed[:-1]) is None
    assert kept.unpacked("") is None


@pytest.mark.usefixtures("request_of")
def test_a_parcel_is_too_old_after_a_day(monkeypatch: pytest.MonkeyPatch) -> None:
    """Yesterday's typing isn't brought back."""
    packed = kept.packed("/questions/a", {"answer_0": "40 g"})
    monkeypatch.setattr("itsdangerous.timed.time.time", lambda: 4_000_000_000.0)
    assert kept.unpacked(packed) is None


def test_a_parcel_fits_into_a_cookie(tiny: Bench) -> None:
    """However much was typed, in whatever letters, a browser can keep what is laid by."""
    # Letters in no order, so that nothing is won by packing them tighter.
    typed = "".join(chr(0x4E00 + number**3 * 7919 % 20011) for number in range(3000))
    fields = {f"answer_{number}": typed[30 * number :][:30] for number in range(100)}
    noor = tiny.visit()
    page = noor.post("/questions/first-dose", fields)
    back = sign_in_again(noor, page)
    assert back.leads_to == "/questions/first-dose"
    assert max(len(each) for each in back.set_cookies) < 4093


@pytest.mark.usefixtures("request_of")
def test_what_is_laid_by_is_taken_up_once_and_by_its_page() -> None:
    """Another page leaves it; its own page takes it, and then it is gone."""
    kept.lay_by(kept.Parcel("/questions/a", {"answer_0": "40 g"}))
    assert kept.taken_up("/questions/b") is None
    assert kept.taken_up("/questions/a") == {"answer_0": "40 g"}
    assert kept.taken_up("/questions/a") is None


def test_an_answer_sent_after_signing_out_is_kept_and_then_counts(tiny: Bench) -> None:
    """She is asked to sign in, finds her answer as she typed it, and checks it."""
    noor = tiny.visit(NOOR)
    asked = noor.alone("first-dose")
    noor.client.delete_cookie("bench")
    page = noor.send(asked, answer_0="17 kg", answer_0_unit="kg")
    assert (page.status, page.heading, page.notes) == (401, "Sign in", ENDED)
    back = sign_in_again(noor, page)
    assert back.leads_to == "/questions/first-dose"
    again = noor.go_on(back)
    assert again.notes == BACK
    assert again.form.fields["answer_0"] == "17 kg"
    assert again.form.fields["answer_0_unit"] == "kg"
    assert again.main.all(class_="ask")[0].words == asked.main.all(class_="ask")[0].words
    assert tiny.attempts_kept() == 0
    assert noor.go_on(noor.send(again)).mark == "Wrong"
    assert tiny.attempts_kept() == 1


def test_a_wrong_password_in_between_loses_nothing(tiny: Bench) -> None:
    """The parcel stays in the form until somebody is let in."""
    noor = tiny.visit()
    page = noor.post("/questions/first-dose", {"answer_0": "17 g"})
    for password in ("another bucket", ""):
        page = noor.send(page, name="noor", password=password)
        assert page.status == 422
    page = noor.post(page.form.action, {**page.form.fields, "csrf_token": "lost"})
    assert page.status == 400
    assert sign_in_again(noor, page).leads_to == "/questions/first-dose"


def test_somebody_else_does_not_find_it(tiny: Bench) -> None:
    """When Sam signs in on Noor's form, her figures are not put into his question."""
    browser = tiny.visit(NOOR)
    asked = browser.alone("first-dose")
    browser.client.delete_cookie("bench")
    page = browser.send(asked, answer_0="17 g")
    his = browser.go_on(sign_in_again(browser, page, SAM))
    assert his.status == 200
    assert his.form.fields["answer_0"] == ""
    assert BACK not in his.notes


def test_a_lesson_said_to_be_read_after_signing_out_leads_back_to_it(tiny: Bench) -> None:
    """A button that has no page of its own leads to the page it stood on."""
    noor = tiny.visit(NOOR)
    lesson = noor.open("/lessons/before-the-lid")
    noor.client.delete_cookie("bench")
    page = noor.send(lesson)
    assert page.status == 401
    back = sign_in_again(noor, page)
    assert back.leads_to == "/lessons/before-the-lid"
    assert noor.go_on(back).heading == "Before the lid"


def test_nobody_forges_a_parcel(tiny: Bench) -> None:
    """A parcel of somebody's own making leads nowhere but to Today."""
    noor = tiny.visit()
    page = noor.send(noor.open("/sign-in"), name="noor", password=PASSWORD, kept="//evil.example")
    assert page.leads_to == "/"


def test_what_is_too_long_to_keep_is_said(tiny: Bench) -> None:
    """Ten thousand characters don't fit into a cookie; nobody is told that they did."""
    noor = tiny.reader(NOOR)
    page = noor.alone("first-dose")
    noor.sign_out()
    ended = noor.send(page, answer_0="4" * 10_000)
    back = noor.go_on(sign_in_again(noor, ended))
    assert back.notes == TOO_LONG
    assert back.form.fields["answer_0"] == ""
