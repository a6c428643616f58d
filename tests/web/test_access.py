"""Who may open what: every route against the written matrix, and every cell of it."""

import pytest
from sqlalchemy import update
from web_begun import begin
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, ODA, RUTH, SAM, Who
from web_mix import CUP, timed_cup
from web_page import Page
from web_practice import SHED, kept_text, save
from web_season import set_start
from web_uses import USED, note_use
from web_visitor import Visitor

from trainer.records import writing
from trainer.records.database import table_of
from trainer.records.people import Person
from trainer.web.access import MATRIX, Access
from trainer.web.roof_form import fields_from

ROLES: dict[str, Who | None] = {
    "nobody": None,
    "trainee": NOOR,
    "supervisor": BERTIL,
    "office": KIT,
}
#: A path for each page, as the tiny lessons and the cast fill it.
PATHS = {
    "static": "/static/face.css",
    "signing_in.sign_in": "/sign-in",
    "signing_in.sign_out": "/sign-out",
    "guidance.cautions": "/cautions",
    "guidance.words": "/words",
    "guidance.help_page": "/help",
    "today.show": "/",
    "lessons.show": "/lessons/before-the-lid",
    "lessons.read": "/lessons/before-the-lid/read",
    "questions.show": "/questions/first-dose",
    "questions.check": "/questions/first-dose",
    "questions.marked": "/questions/first-dose/0/1",
    "roofs.show": "/roofs",
    "roofs.new": "/roofs/new",
    "roofs.keep_new": "/roofs/new",
    "roofs.change": "/roofs/1/change",
    "roofs.keep_changed": "/roofs/1/change",
    "roofs.ask_to_remove": "/roofs/1/remove",
    "roofs.remove": "/roofs/1/remove",
    "roof_sheet.show": "/roofs/1",
    "roof_sheet.card": "/roofs/1/card",
    "roof_sheet.data": "/roofs/1/roof.json",
    "roof_sheet.listed": "/roofs/1/tape.csv",
    "roof_sheet.drawing": "/roofs/1/deck.svg",
    "practise.show": "/roofs/1/practise",
    "practise.question": "/roofs/1/practise/roof-fall",
    "practise.check": "/roofs/1/practise/roof-fall",
    "practise.marked": f"/roofs/1/practise/roof-fall/{kept_text(SHED).digest}/0/1",
    "mix.show": "/mix",
    "mix.start": "/mix",
    "cups.list_all": "/mix/cups",
    "cups.keep": "/mix/cups",
    "cups.remove": "/mix/cups/1/take-back",
    "progress.show": "/progress",
    "crew.show": "/crew",
    "crew.person": "/crew/ref-of-noor",
    "practice.show": "/practice",
    "practice.begin": "/practice",
    "practice.question": "/practice/1/1",
    "practice.check": "/practice/1/1",
    "practice.marked": "/practice/1/1/0/1",
    "practice.stop": "/practice/1/end",
    "practice.end": "/practice/1/end",
    "season.show": "/season",
    "season.set_start": "/season",
    "season.begin": "/season/begin",
    "season.calendar": "/season/sittings.ics",
    "season_crew.show": "/season/crew",
    "season_crew.comparison": "/season/compare",
    "uses.show": "/uses",
    "uses.note": "/uses",
    "uses.remove": "/uses/1/take-back",
    "confirming.show": "/crew/uses",
    "confirming.answer": "/crew/uses",
}
POSTED = {"signing_in.sign_out", "lessons.read", "questions.check", "practise.check"}
POSTED |= {"practice.begin", "practice.check", "practice.stop"}
POSTED |= {"season.set_start", "season.begin"}
POSTED |= {"mix.start", "cups.keep", "cups.remove", "uses.note", "uses.remove", "confirming.answer"}
#: What is sent besides the form's key.
TYPED = {
    "season.set_start": {"starts": "2026-05-08"},
    "cups.keep": CUP,
    "uses.note": USED,
    "confirming.answer": {"answer": "confirmed"},
}
DESCRIBED = {"roofs.keep_new", "roofs.keep_changed"}
POSTED |= {*DESCRIBED, "roofs.remove"}
ANSWERED = {"questions.check", "practise.check", "practice.check"}
CELLS = [(page, role) for page in MATRIX for role in ROLES]


def ask_for(page: str, visitor: Visitor, *, signed_in: bool) -> Page:
    """Return what somebody gets who opens a page, or presses its button."""
    if page.startswith("practice.") and signed_in:
        visitor.answer("first-dose", "1")
        begin(visitor)
        if page == "practice.marked":
            visitor.answer(visitor.alone("/practice/1/1"), "1")
            PATHS[page] = visitor.open("/practice/1/1").leads_to
    if page == "questions.marked" and signed_in:
        visitor.answer("first-dose", "1")
    if page == "practise.marked" and signed_in:
        visitor.answer(visitor.open(PATHS["practise.question"]), "1")
    if page in ANSWERED and signed_in:
        return visitor.send(visitor.open(PATHS[page]), answer_0="1")
    if page == "cups.remove" and signed_in:
        timed_cup(visitor)
    if page == "uses.remove" and signed_in:
        note_use(visitor)
    if page in POSTED:
        token = visitor.open("/help").sign_out_form if signed_in else visitor.open("/sign-in").form
        typed = fields_from(SHED) if page in DESCRIBED else TYPED.get(page, {})
        return visitor.post(PATHS[page], {**typed, "csrf_token": token.fields["csrf_token"]})
    return visitor.open(PATHS[page])


def test_every_route_has_a_row_and_every_row_a_route(tiny: Bench) -> None:
    """A page that nobody thought about fails here, and so does a row for a page that is gone."""
    assert {rule.endpoint for rule in tiny.app.url_map.iter_rules()} == set(MATRIX)


def test_every_row_has_a_path_in_these_tests() -> None:
    """The walk below leaves nothing out."""
    assert set(PATHS) == set(MATRIX)


@pytest.mark.parametrize(("page", "role"), CELLS)
def test_every_cell_holds(tiny: Bench, page: str, role: str) -> None:
    """What the matrix opens comes with 200 or 303; what it shuts with 403, or a way to sign in."""
    who = ROLES[role]
    if who and "/roofs/1" in PATHS[page]:
        save(tiny, who)
    practised = page.startswith(("practise.", "practice.", "season.begin"))
    if page == "season.calendar":
        set_start(tiny.visit(KIT), "2026-05-08")
    visitor = tiny.reader(who) if who and practised else tiny.visit(who)
    answer = ask_for(page, visitor, signed_in=who is not None)
    if getattr(MATRIX[page], role) != "no":
        assert answer.status in (200, 303)
        assert not answer.headers.get("Location", "").startswith("/sign-in?")
    elif who:
        assert answer.status == 403
        assert "Ask your supervisor or the office" in answer.words
    elif page in POSTED:
        assert answer.status == 401
        assert answer.heading == "Sign in"
    else:
        assert answer.status == 303
        assert answer.leads_to.startswith("/sign-in?then=")


@pytest.mark.parametrize("page", MATRIX)
def test_what_nobody_may_open_without_signing_in(page: str) -> None:
    """Without a sign-in there is the way in and out, cautions, words, help and the stylesheet."""
    open_to_all = {
        *("static", "signing_in.sign_in", "signing_in.sign_out"),
        *("guidance.cautions", "guidance.words", "guidance.help_page"),
    }
    assert (MATRIX[page].nobody != "no") == (page in open_to_all)


def test_a_trainee_reaches_no_record_but_their_own() -> None:
    """No page gives a trainee a crew's records or everybody's, but for pages without records."""
    beyond = {page for page, row in MATRIX.items() if row.trainee in ("crew", "all")}
    assert beyond == {page for page, row in MATRIX.items() if row.nobody == "all"}


def test_a_supervisor_sees_their_own_trainee(tiny: Bench) -> None:
    """Bertil opens the page of Noor, who is of his crew."""
    page = tiny.visit(BERTIL).open("/crew/ref-of-noor")
    assert (page.status, page.heading) == (200, "Noor")


def test_another_crews_person_is_not_found(tiny: Bench) -> None:
    """For a supervisor somebody of another crew is not there, just as nobody is."""
    assert tiny.visit(RUTH).open("/crew/ref-of-noor").status == 404
    assert tiny.visit(BERTIL).open("/crew/ref-of-oda").status == 404
    assert tiny.visit(BERTIL).open("/crew/ref-of-nobody").status == 404


@pytest.mark.parametrize("who", [NOOR, ODA])
def test_the_office_sees_every_crew(tiny: Bench, who: Who) -> None:
    """Kit opens anybody's page."""
    page = tiny.visit(KIT).open(f"/crew/{tiny.ref_of(who)}")
    assert (page.status, page.heading) == (200, who.name)


def test_a_mark_is_its_owners_alone(tiny: Bench) -> None:
    """The page of Noor's mark is not there for another trainee, her supervisor, or the office."""
    tiny.visit(NOOR).answer("first-dose", "1")
    for who in (SAM, BERTIL, KIT):
        assert tiny.visit(who).open("/questions/first-dose/0/1").status == 404


def test_the_widest_of_several_roles_counts() -> None:
    """A supervisor who learns too has a supervisor's reach; somebody without a role has none."""
    row = Access("no", "own", "crew", "all")
    assert row.for_roles(frozenset({"trainee", "supervisor"})) == "crew"
    assert row.for_roles(frozenset({"supervisor", "office"})) == "all"
    assert row.for_roles(frozenset()) == "no"


def test_the_crew_table_is_offered_only_to_those_who_may_open_it(tiny: Bench) -> None:
    """A trainee isn't shown a link that would be refused."""
    offered = {
        who.name: "/crew" in [link["href"] for link in tiny.visit(who).open("/").root.all("a")]
        for who in (NOOR, BERTIL, KIT)
    }
    assert offered == {"Noor": False, "Bertil": True, "Kit": True}


def test_a_page_that_is_not_there_says_so_to_anybody(tiny: Bench) -> None:
    """A wrong address is 404, signed in or not."""
    for who in (None, NOOR):
        page = tiny.visit(who).open("/no-such-page")
        assert (page.status, page.heading) == (404, "There is no such page")


def test_a_person_who_has_left_is_signed_in_no_more(tiny: Bench) -> None:
    """Leaving ends what a browser still holds."""
    noor = tiny.visit(NOOR)
    person = table_of(Person)
    with tiny.records() as session:
        writing(session)
        gone = update(person).where(person.c.name == NOOR.name)
        session.execute(gone.values(left_at=tiny.clock.now))
        session.commit()
    assert noor.open("/").leads_to.startswith("/sign-in")
