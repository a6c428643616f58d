"""What a form carries of the question that was shown: nobody can make one, or change one."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from itsdangerous import URLSafeSerializer
from web_bench import Bench
from web_cast import NOOR, SAM
from web_page import Page

from trainer.web.shown import Shown, opened
from trainer.web.turn import NOT_OURS

SHOWN = Shown(7, "first-dose", 2, 1, "5eed", 3, "d1ge57", only="mass", seen=True)


@pytest.fixture
def request_of(tiny: Bench) -> Iterator[None]:
    """A request, for the functions that need its secret."""
    with tiny.app.test_request_context("/"):
        yield


@pytest.mark.usefixtures("request_of")
def test_what_is_sealed_is_read_back_whole() -> None:
    """Everything that a question is made of comes out as it went in."""
    assert opened(SHOWN.sealed()) == SHOWN
    plain = replace(SHOWN, only=None, seen=False)
    assert opened(plain.sealed()) == plain


@pytest.mark.usefixtures("request_of")
def test_a_changed_one_is_refused() -> None:
    """A letter more, a letter less, another letter: none is ours."""
    sealed = SHOWN.sealed()
    turned = ("A" if sealed[0] != "A" else "B") + sealed[1:]
    for changed in (f"{sealed}x", sealed[:-1], turned, "", "1.2"):
        assert opened(changed) is None


@pytest.mark.usefixtures("request_of")
def test_one_with_another_secret_or_for_another_use_is_refused(tiny: Bench) -> None:
    """Only this installation's seal opens, and only the seal of a shown question."""
    facts = ["/questions/first-dose", {}]
    ours = tiny.app.secret_key
    assert isinstance(ours, str)
    assert opened(URLSafeSerializer("guessed", salt="shown").dumps(facts)) is None
    assert opened(URLSafeSerializer(ours, salt="kept").dumps(facts)) is None


@pytest.mark.usefixtures("request_of")
@pytest.mark.parametrize("facts", [[], {}, {"person_id": 7}, "shown", None, {"more": 1}])
def test_one_that_was_sealed_by_an_older_trainer_is_refused(tiny: Bench, facts: object) -> None:
    """The right seal over other facts gives nothing, not an error."""
    ours = tiny.app.secret_key
    assert isinstance(ours, str)
    assert opened(URLSafeSerializer(ours, salt="shown").dumps(facts)) is None


def test_a_seal_has_only_signs_that_a_form_can_hold(tiny: Bench) -> None:
    """It goes through a form as it is."""
    sealed = tiny.visit(NOOR).alone("first-dose").form.fields["shown"]
    assert sealed
    assert set(sealed) <= set("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_.")


def refused(page: Page, typed: str) -> None:
    """Check that a page asks the question anew, with what was typed."""
    assert page.status == 422
    assert page.notes == NOT_OURS
    assert page.form.fields["answer_0"] == typed


def test_a_forged_form_counts_for_nothing(tiny: Bench) -> None:
    """The question comes anew, with what was typed, and nothing is kept."""
    noor = tiny.visit(NOOR)
    asked = noor.alone("first-dose")
    refused(noor.send(asked, answer_0="40 g", shown="forged"), "40 g")
    assert tiny.attempts_kept() == 0


def test_another_persons_form_counts_for_nobody(tiny: Bench) -> None:
    """Noor's form sent by Sam is neither hers nor his."""
    hers = tiny.visit(NOOR).alone("first-dose").form.fields["shown"]
    sam = tiny.visit(SAM)
    asked = sam.alone("first-dose")
    refused(sam.send(asked, answer_0="40 g", shown=hers), "40 g")
    assert tiny.attempts_kept() == 0


def test_another_questions_form_counts_for_neither(tiny: Bench) -> None:
    """What was shown with one question doesn't mark another."""
    noor = tiny.reader(NOOR)
    first = noor.alone("first-dose").form.fields["shown"]
    page = noor.send(noor.alone("drum-dose"), answer_0="40 g", shown=first)
    refused(page, "40 g")
    assert page.form.action == "/questions/drum-dose"
    assert tiny.attempts_kept() == 0


def test_the_question_that_comes_anew_can_be_answered(tiny: Bench) -> None:
    """The page that refuses a form brings one that is good."""
    noor = tiny.visit(NOOR)
    asked = noor.alone("first-dose")
    page = noor.send(asked, answer_0="1 g", shown="forged")
    assert noor.go_on(noor.send(page)).mark == "Wrong"
