"""Uses on a job as tests note and confirm them."""

from web_page import Page
from web_visitor import Visitor

USED = {"used_mixing": "yes", "roof": "Barn at Holt Lane", "used_on": "2026-03-09"}
"""Mixing, used on the barn on the day when every test begins."""


def note_use(visitor: Visitor, **differs: str) -> Page:
    """Send the form with a use of mixing on the barn."""
    return visitor.send(visitor.open("/uses"), **{**USED, **differs})


def answer_uses(visitor: Visitor, answer: str = "confirmed") -> Page:
    """Answer everything that waits on one's page, as it stands ticked."""
    form = visitor.open("/crew/uses").form_to("/crew/uses")
    return visitor.go_on(visitor.post("/crew/uses", {**form.fields, "answer": answer}))
