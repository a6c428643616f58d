"""Cautions, words and help: what can hurt, what things are called, and how this tool thinks."""

from collections.abc import Sequence

from flask import Blueprint, render_template

from trainer.records.chances import chance_within
from trainer.records.rules import SkillRules
from trainer.web.access import MATRIX
from trainer.web.installation import here

#: What each row of the access matrix is called on the page.
PAGES = {
    "signing_in.sign_in": "Signing in",
    "signing_in.sign_out": "Signing out",
    "guidance.cautions": "Cautions",
    "guidance.words": "Words",
    "guidance.help_page": "Help",
    "today.show": "Today",
    "lessons.show": "A lesson",
    "lessons.read": "Saying that a lesson was read",
    "questions.show": "A question",
    "questions.check": "Sending an answer",
    "questions.marked": "The mark of an answer",
    "roofs.show": "Roofs",
    "roofs.new": "Describing a roof",
    "roofs.keep_new": "Planning or keeping a roof",
    "roofs.change": "Changing a roof",
    "roofs.keep_changed": "Keeping a changed roof",
    "roofs.ask_to_remove": "Asking to remove a roof",
    "roofs.remove": "Removing a roof",
    "roof_sheet.show": "Roof sheet",
    "roof_sheet.card": "Mix card of a roof",
    "roof_sheet.data": "A roof's plan as JSON",
    "roof_sheet.listed": "A list of a roof's plan as CSV",
    "roof_sheet.drawing": "A drawing of a roof as SVG",
    "practise.show": "Practice on a roof",
    "practise.question": "A question on a roof",
    "practise.check": "Sending an answer on a roof",
    "practise.marked": "The mark of an answer on a roof",
    "practice.show": "Practice",
    "practice.begin": "Beginning a sitting of practice",
    "practice.question": "A question in a sitting",
    "practice.check": "Sending an answer in a sitting",
    "practice.marked": "The mark of an answer in a sitting",
    "practice.stop": "Ending a sitting",
    "practice.end": "What a sitting has changed",
    "season.show": "Season refresher",
    "season.begin": "Beginning a sitting of the refresher",
    "season.calendar": "The refresher's sittings as a calendar file",
    "season.set_start": "Setting the season's start",
    "mix.show": "Mix",
    "mix.start": "Starting the clock of a batch",
    "cups.list_all": "Test cups",
    "cups.keep": "Starting or keeping a test cup",
    "cups.remove": "Taking a test cup back",
    "progress.show": "Progress",
    "uses.show": "Used on a job",
    "uses.note": "Noting a use on a job",
    "uses.remove": "Taking a noted use back",
    "crew.show": "Crew table",
    "crew.person": "A trainee's page",
    "season_crew.show": "The crew before the season",
    "season_crew.comparison": "Predicted and right",
    "confirming.show": "Uses to confirm",
    "confirming.answer": "Confirming a use",
}
#: Whom the help page tells the rule's honesty by: in words, and the share of tries that are right.
_PEOPLE = (("right six times in ten", 0.6), ("right nine times in ten", 0.9))
REACH = {"no": "no", "own": "own", "crew": "own crew's", "all": "all"}

bp = Blueprint("guidance", __name__)


@bp.get("/cautions")
def cautions() -> str:
    """Show every caution with its source."""
    return render_template("guidance/cautions.html", cautions=here().library.cautions.values())


@bp.get("/words")
def words() -> str:
    """Show every word of the trade with its sentence."""
    return render_template("guidance/words.html", words=here().library.glossary.words)


@bp.get("/help")
def help_page() -> str:
    """Show how questions are marked, how skills are judged, and who may see what."""
    rules = here().thresholds.skills
    return render_template(
        "guidance/help.html",
        matrix=MATRIX,
        page_words=PAGES,
        words=REACH,
        skills=rules,
        sittings=here().thresholds.sittings,
        looks=_one_after_another(rules.cured_looks),
        wrongs=_one_after_another(rules.cured_wrongs),
        chances=[_chances(words, share, rules) for words, share in _PEOPLE],
    )


def _one_after_another(figures: Sequence[int]) -> str:
    """Return figures in words: "7, 12 or 16"."""
    *firsts, last = map(str, figures)
    return f"{', '.join(firsts)} or {last}" if firsts else last


def _chances(words: str, share_right: float, rules: SkillRules) -> tuple[str, str, str]:
    """Return a row: how good somebody is, and how many such people the rule lets through."""
    passes = (chance_within(runs, share_right, rules) for runs in (1, 3))
    first, within = (f"{100 * chance:.1f}" for chance in passes)
    return words, first, within
