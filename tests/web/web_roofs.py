"""Roofs that are kept in tests of pages: as somebody typed them, and as their pages are found."""

from copy import deepcopy
from typing import Any

from web_bench import ZONE, Bench, id_of
from web_cast import Who

from trainer.engine.plans.roof import RoofPlan, plan_roof
from trainer.lessons.roofs import roof_digest, roof_from_text, roof_text
from trainer.records import writing
from trainer.records.roofs import save_roof
from trainer.records.texts import Text

#: A garage of 5.2 by 2.9 m: a drip edge in front, raised sides, a wall behind. No test cup.
GARAGE: dict[str, Any] = {
    "title": "Garage behind the yard",
    "outline": {"shape": "rectangle", "length_m": 5.2, "width_m": 2.9},
    "edge": [{"kind": "drip"}, {"kind": "raised"}, {"kind": "wall"}, {"kind": "raised"}],
}
#: The same on a fair day, with a cup, a pace and a start.
TIMED: dict[str, Any] = {
    **GARAGE,
    "title": "Garage with a clock",
    "weather": {
        "air_c": 18,
        "deck_c": 19,
        "humidity_percent": 60,
        "timber_percent": 14,
        **dict.fromkeys(("damp", "rain", "sun", "wind"), "no"),
    },
    "cup": [{"minutes": 30, "at_c": 18}],
    "crew": {"start": "08:00", "pace_kg": 2, "people": 2},
}


def roof(data: dict[str, Any] = GARAGE, **more: Any) -> dict[str, Any]:
    """Return a roof with something else in it."""
    return {**deepcopy(data), **more}


def keep(bench: Bench, who: Who, data: dict[str, Any] = GARAGE) -> int:
    """Return the number of a roof that somebody keeps."""
    text = roof_text(data)
    kept = Text("roof", str(data["title"]), text, roof_digest(text))
    with bench.records() as session:
        writing(session)
        now = bench.clock.now
        number = save_roof(session, id_of(session, who), kept, now, now.astimezone(ZONE).date())
        session.commit()
    return number


def plan_of(data: dict[str, Any], bench: Bench) -> RoofPlan:
    """Return the plan of a roof as this installation makes it."""
    return plan_roof(roof_from_text(roof_text(data), bench.library.stock))
