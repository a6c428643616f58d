"""The crew table, and a trainee's page for those who answer for them."""

import pytest
from sqlalchemy import update
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, RUTH, SAM, Who
from web_content import right_grams
from web_page import Page

from trainer.records import writing
from trainer.records.database import table_of
from trainer.records.people import Person


def table(page: Page) -> dict[str, list[str]]:
    """What stands beside each name."""
    rows = page.main.all("tbody")[0].all("tr")
    return {row.all("th")[0].words: [cell.words for cell in row.all("td")[:-2]] for row in rows}


def change(bench: Bench, who: Who, **values: object) -> None:
    """Change what the records say of somebody."""
    person = table_of(Person)
    with bench.records() as session:
        writing(session)
        session.execute(update(person).where(person.c.name == who.name).values(**values))
        session.commit()


def test_a_supervisor_sees_the_trainees_of_their_crew(tiny: Bench) -> None:
    """By name, and nobody else: neither another crew's nor himself."""
    page = tiny.visit(BERTIL).open("/crew")
    assert (page.status, page.heading) == (200, "Crew table")
    assert list(table(page)) == ["Noor", "Sam"]
    assert list(table(tiny.visit(RUTH).open("/crew"))) == ["Oda"]


def test_the_office_sees_all_crews(tiny: Bench) -> None:
    """Every trainee, by name."""
    assert list(table(tiny.visit(KIT).open("/crew"))) == ["Noor", "Oda", "Sam"]


def test_a_cell_tells_how_far_somebody_has_come(tiny: Bench) -> None:
    """Read, one of four right, or all of them; and not read where nothing was done."""
    noor = tiny.reader(NOOR)
    assert table(tiny.visit(BERTIL).open("/crew"))["Noor"] == ["read", "not read"]
    noor.answer("dose-chain", "40", "32")
    noor.answer("dose-chain", "40", "32")
    assert table(tiny.visit(BERTIL).open("/crew")) == {
        "Noor": ["read", "1 of 4, not read"],
        "Sam": ["not read", "not read"],
    }


def test_a_cell_tells_when_all_were_right(tiny: Bench) -> None:
    """One of one, with the shape of what is right."""
    noor = tiny.reader(NOOR)
    page = noor.alone("first-dose")
    noor.answer(page, right_grams(page))
    crew = tiny.visit(BERTIL).open("/crew")
    assert table(crew)["Noor"][0] == "1 of 1"
    assert len(crew.main.all(class_="state-right")) == 1


def test_a_name_leads_to_their_page(tiny: Bench) -> None:
    """The page has what the trainee sees of their own, to be read only."""
    tiny.reader(NOOR).answer("dose-chain", "40", "32")
    bertil = tiny.visit(BERTIL)
    assert "/crew/ref-of-noor" in bertil.open("/crew").links()
    page = bertil.open("/crew/ref-of-noor")
    assert (page.status, page.heading) == (200, "Noor")
    assert "1 try, 1 right" in page.words
    assert "1 of 4 right at least once" in page.words
    assert not page.has_form
    assert not any(link.startswith("/questions") for link in page.links())


def test_who_has_left_is_not_in_the_table(tiny: Bench) -> None:
    """Their page stays, and says when they left."""
    change(tiny, NOOR, left_at=tiny.clock.now)
    bertil = tiny.visit(BERTIL)
    assert list(table(bertil.open("/crew"))) == ["Sam"]
    assert bertil.open("/crew/ref-of-noor").notes == "Left today."


def test_a_supervisor_without_a_crew_sees_nobody(tiny: Bench) -> None:
    """Not everybody, and not those who are in no crew either."""
    change(tiny, BERTIL, crew_id=None)
    change(tiny, NOOR, crew_id=None)
    bertil = tiny.visit(BERTIL)
    page = bertil.open("/crew")
    assert page.status == 200
    assert "There are no trainees in your crew yet." in page.words
    assert bertil.open("/crew/ref-of-noor").status == 404


def test_who_changes_crews_changes_supervisors(tiny: Bench) -> None:
    """From then on the new one sees them, and the old one doesn't."""
    with tiny.records() as session:
        birch = session.query(Person.crew_id).filter(Person.name == "Ruth").scalar()
    change(tiny, NOOR, crew_id=birch)
    assert tiny.visit(BERTIL).open("/crew/ref-of-noor").status == 404
    assert tiny.visit(RUTH).open("/crew/ref-of-noor").status == 200


@pytest.mark.parametrize("path", ["/crew", "/crew/ref-of-noor"])
def test_a_trainee_is_refused(tiny: Bench, path: str) -> None:
    """403, even for the page about herself."""
    page = tiny.visit(NOOR).open(path)
    assert (page.status, page.heading) == (403, "This page isn't yours to open")


def test_a_missing_person_is_not_found(tiny: Bench) -> None:
    """404, for the office too."""
    assert tiny.visit(KIT).open("/crew/ref-of-nobody").status == 404


@pytest.mark.parametrize("path", ["/crew", "/crew/ref-of-noor"])
def test_signed_out_there_is_no_crew(tiny: Bench, path: str) -> None:
    """The way to sign in comes instead."""
    assert tiny.visit().open(path).leads_to == f"/sign-in?then={path}"


@pytest.mark.parametrize("path", ["/crew", "/crew/ref-of-noor"])
def test_the_crew_takes_no_forms(tiny: Bench, path: str) -> None:
    """It is only read."""
    assert tiny.visit(BERTIL).post(path, {}).status == 405


def test_only_a_trainee_has_a_page_there(tiny: Bench) -> None:
    """The crew's supervisor, or somebody of the office, is nobody's trainee."""
    bertil = tiny.visit(BERTIL)
    assert bertil.open(f"/crew/{tiny.ref_of(BERTIL)}").status == 404
    assert tiny.visit(KIT).open(f"/crew/{tiny.ref_of(KIT)}").status == 404


def test_who_is_stuck_stands_first_and_says_on_what(tiny: Bench) -> None:
    """Two tries at a question and none of them right: it is named, in the table and beside it."""
    sam = tiny.reader(SAM)
    for _ in range(2):
        sam.answer("two-slips", "1")
    page = tiny.visit(BERTIL).open("/crew")
    assert list(table(page)) == ["Sam", "Noor"]
    assert "Two ways to go wrong (2 tries)" in page.words
    assert (
        "Stuck on: Two ways to go wrong (2 tries)."
        in tiny.visit(BERTIL).open(f"/crew/{tiny.ref_of(SAM)}").words
    )
