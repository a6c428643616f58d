"""What can't be read is asked about, and never marked."""

import pytest
from web_bench import Bench
from web_cast import NOOR
from web_content import CHAIN, FIRST

UNCLEAR = {
    "": "Type a figure first, such as 1.3.",
    "   ": "Type a figure first, such as 1.3.",
    "a good splash": "That can't be read as one figure. Write it like 1.3 or 1.3 g.",
    "nan": "That can't be read as one figure. Write it like 1.3 or 1.3 g.",
    "infinity": "That can't be read as one figure. Write it like 1.3 or 1.3 g.",
    "-inf": "That can't be read as one figure. Write it like 1.3 or 1.3 g.",
    "1e400": "'e400' is no unit known here. Write the figure and its unit.",
    "-40": "A figure here cannot be below zero. Leave the minus sign out.",
    "40 ml": "You wrote ml; this is asked in g. Look at it once more.",
    "1,300": "Is that 1.300 or 1300? Write it one of those ways.",
    "9**9**9": "That can't be read as one figure. Write it like 1.3 or 1.3 g.",
    "1/0": "A fraction can't be over nothing. Write it like 1 1/2.",
    "4" * 10_000: "That is too long for one figure. Keep it under 40 characters.",
    "40\x00": "That can't be read as one figure. Write it like 1.3 or 1.3 g.",
}


@pytest.mark.parametrize("typed", UNCLEAR, ids=lambda typed: repr(typed)[:16])
def test_what_is_unclear_is_asked_about_and_never_marked(tiny: Bench, typed: str) -> None:
    """422, a sentence by the field, what was typed in the field, and nothing counted."""
    noor = tiny.visit(NOOR)
    page = noor.open(FIRST)
    again = noor.send(page, answer_0=typed)
    assert again.status == 422
    assert again.error_of("answer_0") == UNCLEAR[typed]
    assert again.form.fields["answer_0"] == typed
    assert again.form.fields["shown"] == page.form.fields["shown"]
    assert again.question == page.question
    assert tiny.attempts_kept() == 0
    assert tiny.question_row(NOOR, "first-dose") is None


def test_the_sentence_leads_to_its_field(tiny: Bench) -> None:
    """Over the form stands a link to each field that wants mending, and only to those."""
    noor = tiny.reader(NOOR)
    page = noor.send(noor.alone(CHAIN), answer_0="40", answer_1="a drop")
    errors = page.main.all(class_="errors")[0]
    assert [link["href"] for link in errors.all("a")] == ["#answer_1"]
    assert page.form.fields["answer_0"] == "40"
    assert not page.error_of("answer_0")
    field = page.main.all("input", id="answer_1")[0]
    assert field["aria-invalid"] == "true"
    assert "answer_1-error" in field["aria-describedby"].split()


def test_what_was_typed_stays_text(tiny: Bench) -> None:
    """HTML in an answer comes back as it was typed and as nothing else."""
    noor = tiny.visit(NOOR)
    typed = '"><script>alert(1)</script>'
    page = noor.send(noor.open(FIRST), answer_0=typed, pressed=typed, answer_0_unit=typed)
    assert page.status == 422
    assert page.form.fields["answer_0"] == typed
    assert "<script>" not in page.html


@pytest.mark.parametrize("unit", ["parsecs", "ml", "m²", "g/kg"])
def test_a_unit_that_the_form_does_not_offer_is_asked_about(tiny: Bench, unit: str) -> None:
    """A unit beside the field is taken only if it can be: else 422, and no page breaks."""
    noor = tiny.visit(NOOR)
    page = noor.send(noor.open(FIRST), answer_0="40", answer_0_unit=unit)
    assert page.status == 422
    assert page.error_of("answer_0").endswith((".", "?"))
    assert tiny.attempts_kept() == 0


def test_a_form_without_its_fields_is_asked_about(tiny: Bench) -> None:
    """Neither answer nor unit sent: the page again."""
    noor = tiny.visit(NOOR)
    fields = noor.open(FIRST).form.fields
    bare = {name: fields[name] for name in ("csrf_token", "shown")}
    page = noor.post(FIRST, bare)
    assert (page.status, page.error_of("answer_0")) == (422, "Type a figure first, such as 1.3.")
