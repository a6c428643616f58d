"""Practise on a roof in a real browser, by thumb: tomorrow's garage on tonight's phone."""

from collections.abc import Iterator
from datetime import UTC, datetime

import pytest
from browsing import Served, right_answer, sign_in
from playwright.sync_api import Page, expect
from sqlalchemy import select

from trainer.lessons.roofs import roof_digest
from trainer.records import db, roofs, writing
from trainer.records.people import Person
from trainer.records.texts import Text


@pytest.fixture(scope="module")
def garage(served: Served) -> Iterator[int]:
    """The sample garage, kept by Jory, who has read the first lesson."""
    sample = served.library.roofs["garage"]
    text = Text("roof", sample.description.title, sample.text, roof_digest(sample.text))
    with served.app.app_context():
        writing(db.session)
        jory = db.session.scalars(select(Person.id).where(Person.sign_in_name == "jory")).one()
        now = datetime.now(UTC)
        number = roofs.save_roof(db.session, jory, text, now, now.date())
        db.session.commit()
    yield number
    with served.app.app_context():
        writing(db.session)
        roofs.remove_roof(db.session, jory, number)
        db.session.commit()


def test_a_question_on_a_roof_is_answered_by_thumb(
    phone: Page, served: Served, garage: int
) -> None:
    """From the list to the working, and back to a list that knows; nothing runs off the side."""
    sign_in(phone, "jory")
    phone.goto(f"/roofs/{garage}/practise")
    expect(phone.get_by_role("heading", level=1)).to_have_text("Practise on this roof")
    phone.get_by_role("link", name="Tape for the open joints").tap()
    drawn = served.sum_on(phone)
    phone.locator("#answer_0").fill(right_answer(drawn, "tape"))
    phone.get_by_role("button", name="Check it").tap()
    expect(phone.locator(".mark-right")).to_be_visible()
    expect(phone.locator(".working .line")).to_have_count(3)
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360
    phone.get_by_role("link", name="Practise: ").tap()
    row = phone.locator(".questions li").filter(has_text="Tape for the open joints")
    expect(row.locator(".state-right")).to_be_visible()
    assert phone.evaluate("document.documentElement.scrollWidth") <= 360
