"""Cautions and help: what can hurt, and how this tool thinks."""

from flask import Blueprint, render_template

from trainer.web.access import MATRIX
from trainer.web.installation import here

#: What each row of the access matrix is called on the page.
PAGES = {
    "signing_in.sign_in": "Signing in",
    "signing_in.sign_out": "Signing out",
    "guidance.cautions": "Cautions",
    "guidance.help_page": "Help",
    "today.show": "Today",
    "lessons.show": "A lesson",
    "lessons.read": "Saying that a lesson was read",
    "questions.show": "A question",
    "questions.check": "Sending an answer",
    "questions.marked": "The mark of an answer",
    "progress.show": "Progress",
    "crew.show": "Crew table",
    "crew.person": "A trainee's page",
}
REACH = {"no": "no", "own": "own", "crew": "own crew's", "all": "all"}

bp = Blueprint("guidance", __name__)


@bp.get("/cautions")
def cautions() -> str:
    """Show every caution with its source."""
    return render_template("guidance/cautions.html", cautions=here().library.cautions.values())


@bp.get("/help")
def help_page() -> str:
    """Show how questions are marked, and who may see what."""
    return render_template("guidance/help.html", matrix=MATRIX, page_words=PAGES, words=REACH)
