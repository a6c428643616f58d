"""What stands round every page: the few words to steer by, and who is signed in."""

from typing import Any

from flask import Flask, current_app, g, request, url_for

_STEPS = (
    ("Today", "today.show", ("today", "lessons", "questions")),
    ("Practice", "practice.show", ("practice", "season")),
    ("Roofs", "roofs.show", ("roofs", "roof_sheet", "practise")),
    ("Mix", "mix.show", ("mix", "cups")),
    ("Progress", "progress.show", ("progress", "uses")),
)
Signposts = dict[tuple[str, bool, bool], dict[str, Any]]
_CREW = ("Crew table", "crew.show", ("crew", "confirming", "season_crew"))


def init_app(app: Flask) -> None:
    """Give every template its surroundings."""
    app.extensions["signposts"] = {}
    app.context_processor(surroundings)


def surroundings() -> dict[str, Any]:
    """Return what the base template is filled with."""
    person = g.get("person")
    room = (request.endpoint or "").partition(".")[0]
    sees_crew = person is not None and bool(person.roles & {"supervisor", "office"})
    return {
        "person_name": person.name if person else None,
        **_signposts(current_app.extensions["signposts"], room, person is not None, sees_crew),
    }


def _signposts(kept: Signposts, room: str, signed_in: bool, sees_crew: bool) -> dict[str, Any]:  # noqa: FBT001
    """Return the addresses round a page, which are the same whenever these three are."""
    key = (room, signed_in, sees_crew)
    if key not in kept:
        steps = [*(_STEPS if signed_in else ()), *([_CREW] if sees_crew else ())]
        kept[key] = {
            "nav": [(words, url_for(to), room in rooms) for words, to, rooms in steps],
            "home_href": url_for("today.show"),
            "sign_out_href": url_for("signing_in.sign_out"),
            "cautions_href": url_for("guidance.cautions"),
            "words_href": url_for("guidance.words"),
            "help_href": url_for("guidance.help_page"),
        }
    return kept[key]
