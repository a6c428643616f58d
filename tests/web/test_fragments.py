"""A page that is drawn once is filled in for each person, and tells nobody of another."""

from sqlalchemy import update
from web_bench import Bench
from web_cast import NOOR, SAM

from trainer.records.people import Person

LESSON = "/lessons/before-the-lid"


def test_the_second_reader_gets_their_own_page(tiny: Bench) -> None:
    """The name in the head and the tokens of the forms are the reader's own."""
    noor = tiny.visit(NOOR).open(LESSON)
    sam = tiny.visit(SAM).open(LESSON)
    assert NOOR.name in noor.root.words
    assert NOOR.name not in sam.root.words
    assert SAM.name in sam.root.words
    tokens = {page.sign_out_form.fields["csrf_token"] for page in (noor, sam)}
    assert len(tokens) == 2


def test_each_reader_sees_their_own_questions(tiny: Bench) -> None:
    """What one has read or tried doesn't show on the other's page."""
    tiny.reader(NOOR).open(LESSON)
    assert "not read yet" in tiny.visit(SAM).open(LESSON).words
    assert "read today" in tiny.reader(NOOR).open(LESSON).words


def test_a_name_in_a_kept_page_stays_text(tiny: Bench) -> None:
    """A name with markup in it is told as it is written, in the first page and the next."""
    strange = "<b>Noor</b> & {{ 1 }}"
    with tiny.records() as session:
        session.execute(update(Person).where(Person.name == NOOR.name).values(name=strange))
        session.commit()
    noor = tiny.visit(NOOR)
    for _ in range(2):
        assert strange in noor.open(LESSON).root.words


def test_no_hole_is_left_open(tiny: Bench) -> None:
    """A page that was filled in holds no mark of a hole."""
    assert "\0" not in tiny.reader(NOOR).open(LESSON).html
