"""Who may open what: one row a page, one column a role, and whose records.

Every route stands here; a test fails on one that doesn't. The guard looks before the page runs.
"""

from dataclasses import dataclass
from typing import Literal

from flask import Flask, abort, g, request
from flask.typing import ResponseReturnValue

from trainer.records import db, signins
from trainer.records.signins import SignedIn
from trainer.web import forms, signing_in
from trainer.web.installation import here

Whose = Literal["no", "own", "crew", "all"]
_WIDTH: dict[Whose, int] = {"no": 0, "own": 1, "crew": 2, "all": 3}


@dataclass(frozen=True, slots=True)
class Access:
    """Whose records each role may see or change on a page; "no" shuts it."""

    nobody: Whose
    trainee: Whose
    supervisor: Whose
    office: Whose

    def for_roles(self, roles: frozenset[str]) -> Whose:
        """Return the widest reach that any of these roles has."""
        reaches: list[Whose] = [getattr(self, role) for role in roles]
        return max(reaches, key=_WIDTH.__getitem__, default="no")


_PUBLIC = Access("all", "all", "all", "all")
_OWN = Access("no", "own", "own", "own")
_CREW = Access("no", "no", "crew", "all")
_OFFICE = Access("no", "no", "no", "all")

MATRIX: dict[str, Access] = {
    "static": _PUBLIC,
    "signing_in.sign_in": _PUBLIC,
    "signing_in.sign_out": _PUBLIC,
    "guidance.cautions": _PUBLIC,
    "guidance.words": _PUBLIC,
    "guidance.help_page": _PUBLIC,
    "today.show": _OWN,
    "lessons.show": _OWN,
    "lessons.read": _OWN,
    "questions.show": _OWN,
    "questions.check": _OWN,
    "questions.marked": _OWN,
    "roofs.show": _OWN,
    "roofs.new": _OWN,
    "roofs.keep_new": _OWN,
    "roofs.change": _OWN,
    "roofs.keep_changed": _OWN,
    "roofs.ask_to_remove": _OWN,
    "roofs.remove": _OWN,
    "roof_sheet.show": _OWN,
    "roof_sheet.card": _OWN,
    "roof_sheet.data": _OWN,
    "roof_sheet.listed": _OWN,
    "roof_sheet.drawing": _OWN,
    "practise.show": _OWN,
    "practise.question": _OWN,
    "practise.check": _OWN,
    "practise.marked": _OWN,
    "practice.show": _OWN,
    "practice.begin": _OWN,
    "practice.question": _OWN,
    "practice.check": _OWN,
    "practice.marked": _OWN,
    "practice.stop": _OWN,
    "practice.end": _OWN,
    "season.show": _OWN,
    "season.begin": _OWN,
    "season.calendar": _OWN,
    "season.set_start": _OFFICE,
    "mix.show": _OWN,
    "mix.start": _OWN,
    "cups.list_all": _OWN,
    "cups.keep": _OWN,
    "cups.remove": _OWN,
    "progress.show": _OWN,
    "uses.show": _OWN,
    "uses.note": _OWN,
    "uses.remove": _OWN,
    "crew.show": _CREW,
    "crew.person": _CREW,
    "season_crew.show": _CREW,
    "season_crew.comparison": _CREW,
    "confirming.show": _CREW,
    "confirming.answer": _CREW,
}


def init_app(app: Flask) -> None:
    """Have the guard look at every request."""
    app.before_request(guard)


def guard() -> ResponseReturnValue | None:
    """Find who is signed in, and refuse what they may not open.

    Somebody who isn't signed in is asked to, and keeps what they sent; 403 for a role that may
    not; 400 for a form without its token.
    """
    g.person = None
    g.whose = "no"
    if request.endpoint == "static":
        return None
    token = request.cookies.get(here().config.cookie_name(signing_in.COOKIE))
    if token:
        g.person = signins.find(db.session, token, here().now())
    if request.endpoint is None:
        return None
    row = MATRIX[request.endpoint]
    g.whose = row.nobody if g.person is None else row.for_roles(g.person.roles)
    if g.whose == "no":
        return signing_in.ask_to_sign_in() if g.person is None else abort(403)
    if request.method == "POST":
        forms.csrf.protect()
    return None


def signed_in() -> SignedIn:
    """Return who is signed in; for pages that the guard keeps from anybody else."""
    person: SignedIn | None = g.person
    if person is None:
        abort(401)
    return person


def reaches(crew_id: int | None) -> bool:
    """Return whether this page shows the signed-in person the records of that crew."""
    if g.whose == "all":
        return True
    return bool(g.whose == "crew" and crew_id is not None and crew_id == signed_in().crew_id)
