"""What goes wrong, each told in a sentence that says what to do."""

import sqlite3

import pytest
from sqlalchemy.exc import OperationalError, ProgrammingError
from web_bench import Bench, lock
from web_cast import NOOR, PASSWORD, Who
from web_page import Page

from trainer.records import signins
from trainer.web import today
from trainer.web.faults import LOST_TOKEN

FIRST = "/questions/first-dose"


def failing(code: int, words: str) -> OperationalError:
    """What SQLAlchemy raises when SQLite answers with this code."""
    cause = sqlite3.OperationalError(words)
    cause.sqlite_errorcode = code
    return OperationalError("SELECT", None, cause)


def break_with(patch: pytest.MonkeyPatch, where: object, name: str, error: Exception) -> None:
    """Have a function raise this."""

    def broken(*_given: object) -> None:
        raise error

    patch.setattr(where, name, broken)


def test_a_missing_page(tiny: Bench) -> None:
    """404, with a way back."""
    page = tiny.visit(NOOR).open("/no-such-page")
    assert (page.status, page.heading) == (404, "There is no such page")
    assert "/" in page.links()


def test_a_page_of_somebody_elses(tiny: Bench) -> None:
    """403, and whom to ask."""
    page = tiny.visit(NOOR).open("/crew")
    assert (page.status, page.heading) == (403, "This page isn't yours to open")
    assert "Ask your supervisor or the office" in page.words


def test_a_page_used_otherwise(tiny: Bench) -> None:
    """405, and the header that says how it may be used."""
    page = tiny.visit(NOOR).open("/lessons/before-the-lid/read")
    assert (page.status, page.heading) == (405, "This page can't be used like that")
    assert set(page.headers["Allow"].split(", ")) == {"OPTIONS", "POST"}


@pytest.mark.parametrize("who", [NOOR, None])
def test_too_much_for_one_form(tiny: Bench, who: Who | None) -> None:
    """413, before anything is read of it."""
    visitor = tiny.visit(who)
    page = visitor.post(FIRST, {"answer_0": "4" * 300_000})
    assert (page.status, page.heading) == (413, "That is too much for one form")


def test_a_form_that_lost_its_token(tiny: Bench) -> None:
    """400, and what to do; a form with typing in it comes back instead."""
    noor = tiny.visit(NOOR)
    page = noor.post("/lessons/before-the-lid/read", {})
    assert (page.status, page.heading) == (400, "This form had lost its key")
    assert noor.send(noor.open(FIRST), csrf_token="").notes == LOST_TOKEN
    assert tiny.visit().post("/sign-in", {"name": "noor"}).notes == LOST_TOKEN


def test_a_fault_of_our_own_tells_nothing_of_itself(
    tiny: Bench, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """500 with a sentence; what broke stands in the log alone."""
    noor = tiny.visit(NOOR)
    break_with(monkeypatch, today, "first_thing", RuntimeError("the secret is 42"))
    page = noor.open("/")
    assert (page.status, page.heading) == (500, "Something broke here")
    assert "42" not in page.html
    assert "Traceback" not in page.html
    assert "the secret is 42" in caplog.text


def test_after_a_fault_the_next_page_comes(tiny: Bench, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nothing is left half-done behind it."""
    noor = tiny.visit(NOOR)
    with monkeypatch.context() as patch:
        break_with(patch, today, "first_thing", RuntimeError("once"))
        assert noor.open("/").status == 500
    assert noor.open("/").status == 200


def test_busy_records_are_told_on_other_pages_too(tiny: Bench) -> None:
    """Saying that a lesson was read while somebody writes: 503, and it can be sent again."""
    noor = tiny.visit(NOOR)
    lesson = noor.open("/lessons/before-the-lid")
    other = lock(tiny)
    page = noor.send(lesson)
    other.rollback()
    other.close()
    assert (page.status, page.heading) == (503, "The records can't be reached")
    assert "Wait a few seconds, then send it again." in page.words
    assert tiny.lesson_row(NOOR, "before-the-lid") is None
    assert noor.send(lesson).status == 303


def test_busy_records_are_told_when_signing_in(tiny: Bench) -> None:
    """503, and nobody is signed in."""
    noor = tiny.visit()
    asked = noor.open("/sign-in")
    other = lock(tiny)
    page = noor.send(asked, name="noor", password=PASSWORD)
    other.rollback()
    other.close()
    assert page.status == 503
    assert not any(each.startswith("bench=") for each in page.set_cookies)


def test_what_was_typed_survives_busy_records_at_the_sign_in(tiny: Bench) -> None:
    """The parcel stays in the page that says so, and comes out at the next try."""
    noor = tiny.reader(NOOR)
    question = noor.open(FIRST)
    noor.sign_out()
    ended = noor.send(question, answer_0="1.5 g")
    other = lock(tiny)
    busy = noor.send(ended, name="noor", password=PASSWORD)
    other.rollback()
    other.close()
    assert busy.status == 503
    back = noor.go_on(noor.send(busy, name="noor", password=PASSWORD))
    assert back.form.fields["answer_0"] == "1.5 g"


@pytest.mark.parametrize("path", ["/", "/help", FIRST])
def test_records_that_cannot_be_opened(
    tiny: Bench, monkeypatch: pytest.MonkeyPatch, path: str
) -> None:
    """503 on every page, even before it is known who asks."""
    noor = tiny.visit(NOOR)
    error = failing(sqlite3.SQLITE_CANTOPEN, "unable to open database file")
    break_with(monkeypatch, signins, "find", error)
    page = noor.open(path)
    assert (page.status, page.heading) == (503, "The records can't be reached")


def test_an_answer_to_records_that_cannot_be_opened(
    tiny: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    """503 with a sentence; going back has the form as it was, and it is good."""
    noor = tiny.visit(NOOR)
    asked = noor.open(FIRST)
    with monkeypatch.context() as patch:
        error = failing(sqlite3.SQLITE_CANTOPEN, "unable to open database file")
        break_with(patch, signins, "find", error)
        page = noor.send(asked, answer_0="1.5 g")
    assert page.status == 503
    assert "Nothing was kept" in page.words
    assert noor.go_on(noor.send(asked, answer_0="1.5 g")).mark == "Wrong"


def test_a_statement_that_is_wrong_is_a_fault_of_our_own(
    tiny: Bench, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A mistake in our SQL isn't dressed up as a busy database."""
    noor = tiny.visit(NOOR)
    wrong = ProgrammingError("SELECT", None, sqlite3.ProgrammingError("no such column"))
    break_with(monkeypatch, today, "first_thing", wrong)
    assert noor.open("/").status == 500


def test_every_fault_page_has_a_way_back(every_page: dict[str, Page]) -> None:
    """It leads to Today."""
    for name in ("missing page", "refused page", "wrong method", "too much", "no token"):
        assert "/" in every_page[name].links(), name
