"""The sheet of a saved roof: on the screen, on paper, as a mix card, and for other programs."""

import json
import re
import unicodedata

from flask import Blueprint, abort, render_template, request
from flask.typing import ResponseReturnValue
from werkzeug.wrappers import Response

from trainer.engine import EngineError
from trainer.engine.plans.card import card_of_plan
from trainer.engine.plans.lists import data_of, lists_of
from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.lessons import ContentError
from trainer.lessons.roofs import roof_from_text
from trainer.records import db
from trainer.records.roofs import KeptRoof, roof_for
from trainer.web.access import signed_in
from trainer.web.drawing import TITLES, draw_roof
from trainer.web.installation import here
from trainer.web.plan_sheet import CARD_CAUTIONS, cautions_named, no_clock, sheet_of

__all__ = ["bp", "sheet_of"]

bp = Blueprint("roof_sheet", __name__, url_prefix="/roofs/<int(max=999999999):roof_id>")

_LONGEST_NAME = 40
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")


def plan_or_404(roof_id: int) -> tuple[KeptRoof, RoofPlan]:
    """Return a roof that the signed-in person may see, and its plan as of today; raise 404.

    Its test cups have grown older since it was described.
    """
    person = signed_in()
    kept = roof_for(db.session, person.person_id, person.crew_id, roof_id)
    if kept is None:
        abort(404)
    roof = roof_from_text(kept.text, here().library.stock)
    return kept, plan_roof(roof.aged((here().today() - kept.local_date).days))


@bp.errorhandler(ContentError)
@bp.errorhandler(EngineError)
def unplanned(error: ContentError | EngineError) -> ResponseReturnValue:
    """Say why a roof that was kept can't be planned any more, and lead to its description."""
    told = [str(error)]
    if isinstance(error, ContentError):
        told = [each.sentence for each in error.mistakes]
    roof_id = (request.view_args or {})["roof_id"]
    return render_template("roofs/unplanned.html", sentences=told, roof_id=roof_id), 409


@bp.get("")
def show(roof_id: int) -> str:
    """Show the whole plan of a roof."""
    kept, plan = plan_or_404(roof_id)
    return render_template(
        "roofs/sheet.html",
        kept=kept,
        own=kept.person_id == signed_in().person_id,
        # In full, since it is printed along.
        described=f"{kept.local_date.day} {kept.local_date:%B %Y}",
        sheet=sheet_of(plan),
        drawings=TITLES.items(),
        lists=[table for table in lists_of(plan).values() if table.rows],
    )


@bp.get("/card")
def card(roof_id: int) -> str:
    """Show the mix card of a roof, to hang by the bucket."""
    kept, plan = plan_or_404(roof_id)
    return render_template(
        "roofs/card.html",
        kept=kept,
        card=card_of_plan(plan),
        no_clock=no_clock(plan),
        cautions=cautions_named(CARD_CAUTIONS),
    )


@bp.get("/roof.json")
def data(roof_id: int) -> Response:
    """Send the plan for other programs."""
    kept, plan = plan_or_404(roof_id)
    text = json.dumps(data_of(plan), ensure_ascii=False, indent=2)
    return _sent(text, "application/json", file_name(kept.title, "", "json"))


@bp.get("/<name>.csv")
def listed(roof_id: int, name: str) -> Response:
    """Send one list of the plan for a spreadsheet."""
    kept, plan = plan_or_404(roof_id)
    table = lists_of(plan).get(name)
    if table is None:
        abort(404)
    return _sent(table.as_csv(), "text/csv", file_name(kept.title, name, "csv"))


@bp.get("/<part>.svg")
def drawing(roof_id: int, part: str) -> Response:
    """Send one drawing of the roof by itself."""
    kept, plan = plan_or_404(roof_id)
    if part not in TITLES:
        abort(404)
    text = draw_roof(plan, part, standalone=True)
    return _sent(text, "image/svg+xml", file_name(kept.title, part, "svg"))


def file_name(title: str, part: str, kind: str) -> str:
    """Return a name for a file of letters, digits and hyphens alone: "garage-tape.csv"."""
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode().lower()
    words = _NOT_IN_A_NAME.sub("-", plain)[:_LONGEST_NAME].strip("-") or "roof"
    return f"{words}{f'-{part}' if part else ''}.{kind}"


def _sent(text: str, kind: str, name: str) -> Response:
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(text, mimetype=kind, headers=headers)
