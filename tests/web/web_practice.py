"""Roofs to practise on in these tests, saved as their owners would save them.

The shed is 4 by 2.5 m: 10 m², and water runs 2.5 m to its front edge.
"""

import re
from typing import Any

from web_bench import ZONE, Bench, id_of
from web_cast import Who
from web_page import Page
from web_roofs import keep

from trainer.lessons.roofs import roof_digest, roof_text
from trainer.records import roofs, writing
from trainer.records.texts import Text

#: Sizes to buy in, so that the roofs need no stock.
SOLD = {
    "tape_roll_m": 20,
    "bandage_roll_m": 30,
    "mat_roll_mm": 1000,
    "mat_roll_m": 30,
    "trim_m": 3,
    "resin_tin_kg": 20,
    "catalyst_bottle_ml": 500,
    "topcoat_tin_kg": 20,
}
SHED: dict[str, Any] = {
    "title": "The coal shed",
    "outline": {"shape": "rectangle", "length_m": 4, "width_m": 2.5},
    "edge": [{"kind": kind} for kind in ("drip", "raised", "wall", "raised")],
    "sold": SOLD,
}
#: The same shed, measured again: 12 m², and water runs 3 m.
DEEPER = {**SHED, "outline": {"shape": "rectangle", "length_m": 4, "width_m": 3}}


def kept_text(data: dict[str, Any]) -> Text:
    """Return a roof's text as it is kept."""
    text = roof_text(data)
    return Text("roof", str(data["title"]), text, roof_digest(text))


#: The shed as it was first saved.
DIGEST = kept_text(SHED).digest


def save(bench: Bench, who: Who, data: dict[str, Any] = SHED) -> int:
    """Return the number of a roof that somebody has saved."""
    return keep(bench, who, data)


def change(bench: Bench, who: Who, roof_id: int, data: dict[str, Any]) -> None:
    """Have somebody describe their roof otherwise."""
    with bench.records() as session:
        writing(session)
        now, person_id = bench.clock.now, id_of(session, who)
        today = now.astimezone(ZONE).date()
        assert roofs.change_roof(session, person_id, roof_id, kept_text(data), now, today)
        session.commit()


def remove(bench: Bench, who: Who, roof_id: int) -> None:
    """Have somebody take their roof away."""
    with bench.records() as session:
        writing(session)
        assert roofs.remove_roof(session, id_of(session, who), roof_id)
        session.commit()


def question_on(roof_id: int, question: str) -> str:
    """Return where a question on a roof is."""
    return f"/roofs/{roof_id}/practise/{question}"


def drop(page: Page) -> str:
    """Return the drop that a question about the fall asks for, in millimetres."""
    found = re.search(r"runs ([\d.]+) m, one in (\d+)", page.question)
    assert found
    return f"{1000 * float(found[1]) / float(found[2]):g}"


def states(page: Page) -> dict[str, str]:
    """Return the state of each question in a roof's list, by its title."""
    rows = page.main.all(class_="questions")[0].all("li")
    titles = [row.all(class_="row-title")[0].words for row in rows]
    return dict(zip(titles, [row.all(class_="row-states")[0].words for row in rows], strict=True))
