"""A roof's form and the tables that it stands for: each field is named by its key.

"mix.percent" is a field of [mix] and "edge.2.turn_mm" one of the second [[edge]], just as the
reader names its mistakes; so every sentence finds its field.
"""

import math
import re
from collections.abc import Iterator, Mapping
from typing import Any

from trainer.engine.plans.description import PARTS, Cup, Edge, fields_of
from trainer.engine.schema import Parameter
from trainer.lessons.roof_parts import OPENINGS, CornerRule, Ladder
from trainer.lessons.roof_reading import MOST
from trainer.lessons.roof_shapes import CORNERS, MEASURED, SHAPES

Fields = Mapping[str, str]

#: The parts that an outline and an opening may be.
OUTLINES: Mapping[str, type] = MEASURED
KINDS: Mapping[str, type] = OPENINGS
SHAPE = Parameter("shape", "shape", "", 0, math.inf, "choice", choices=SHAPES)
KIND = Parameter("kind", "kind of opening", "", 0, math.inf, "choice", choices=tuple(KINDS))
#: What is measured of a shape, whichever it is.
MEASURES = {name: each for kind in OUTLINES.values() for name, each in fields_of(kind).items()}
#: The sides of a shape that has names for them, in order.
SIDES: Mapping[str, tuple[str, ...]] = {
    "rectangle": ("at the bottom", "on the right", "at the top", "on the left"),
    "L": (
        *("at the bottom", "on the right", "on top of the right part"),
        *("at the inner corner", "on top of the left part", "on the left"),
    ),
}
CORNERS_FIELD = "outline.corners_m"
#: Ticked on a row that is to be left out.
GONE = "gone"

_OF_OPENING = {name: each for kind in KINDS.values() for name, each in fields_of(kind).items()}
#: The fields of each list's rows.
ROWS: Mapping[str, Mapping[str, Parameter]] = {
    "edge": fields_of(Edge),
    "corner": {"makes": fields_of(CornerRule)["makes"]},
    "opening": {"kind": KIND, **_OF_OPENING},
    "cup": fields_of(Cup),
}
#: Lists whose rows come and go.
_LOOSE = ("opening", "cup")
_PLAIN = {
    *("title", "outline.shape", CORNERS_FIELD, *fields_of(Ladder)),
    *(f"outline.{name}" for name in MEASURES),
    *(f"{part}.{name}" for part, kind in PARTS.items() for name in fields_of(kind)),
}
_IN_ROW = re.compile(r"(?P<list>[a-z]+)\.(?P<number>[1-9]\d?)\.(?P<field>\w+)").fullmatch


def tidied(sent: Fields) -> dict[str, str]:
    """Return what was typed into the fields that there are, as it was typed.

    Openings and test cups are numbered from 1 on again; empty rows are left out, and so are
    those that were ticked to go.
    """
    fields = {name: text for name, text in sent.items() if name in _PLAIN}
    for name in ROWS:
        rows = _rows_sent(sent, name)
        if name in _LOOSE:
            kept = [row for _, row in sorted(rows.items()) if _is_typed(name, row)]
            rows = dict(enumerate(kept, start=1))
        fields |= {
            f"{name}.{number}.{field}": text
            for number, row in rows.items()
            for field, text in row.items()
            if field in ROWS[name]
        }
    return fields


def _rows_sent(sent: Fields, name: str) -> dict[int, dict[str, str]]:
    rows: dict[int, dict[str, str]] = {}
    for key, text in sent.items():
        found = _IN_ROW(key)
        if found and found["list"] == name:
            rows.setdefault(int(found["number"]), {})[found["field"]] = text
    return rows


def _is_typed(name: str, row: Fields) -> bool:
    return not row.get(GONE) and bool(_table(row, "", ROWS[name]))


def rows_of(fields: Fields, name: str) -> int:
    """Return how many openings or test cups were typed."""
    return len(_rows_sent(fields, name))


def sides_of(fields: Fields) -> int:
    """Return how many sides the outline has; a list of corners has three at least."""
    shape = fields.get("outline.shape", "")
    if shape == CORNERS:
        return min(max(len(_lines(fields)), 3), MOST)
    return len(SIDES.get(shape, SIDES["rectangle"]))


def _lines(fields: Fields) -> list[str]:
    lines = fields.get(CORNERS_FIELD, "").splitlines()
    return [line.strip() for line in lines if line.strip()]


def tables_from(fields: Fields) -> dict[str, Any]:
    """Return the tables that a form stands for, as a file would hold them.

    An empty field and a choice left at its default aren't in them.
    """
    title, sides = fields.get("title", "").strip(), range(1, sides_of(fields) + 1)
    lists = {
        "corner": list(_corner_rules(fields, sides)),
        "opening": [_opening(fields, n) for n in range(1, rows_of(fields, "opening") + 1)],
        "cup": [_row(fields, "cup", n) for n in range(1, rows_of(fields, "cup") + 1)],
    }
    parts = {part: _table(fields, f"{part}.", fields_of(kind)) for part, kind in PARTS.items()}
    return {
        **({"title": title} if title else {}),
        **_table(fields, "", fields_of(Ladder)),
        "outline": _outline(fields),
        "edge": [_row(fields, "edge", number) for number in sides],
        **{name: rows for name, rows in lists.items() if rows},
        **{part: table for part, table in parts.items() if table},
    }


def changed_in(fields: Fields, part: str) -> int:
    """Return how many fields of a part say something else than its defaults."""
    return len(_table(fields, f"{part}.", fields_of(PARTS[part])))


def _table(fields: Fields, prefix: str, known: Mapping[str, Parameter]) -> dict[str, Any]:
    typed = {name: fields.get(f"{prefix}{name}", "").strip() for name in known}
    return {name: text for name, text in typed.items() if text and text != known[name].default}


def _row(fields: Fields, name: str, number: int) -> dict[str, Any]:
    return _table(fields, f"{name}.{number}.", ROWS[name])


def _outline(fields: Fields) -> dict[str, Any]:
    shape = fields.get("outline.shape", "").strip()
    if shape in OUTLINES:
        return {"shape": shape, **_table(fields, "outline.", fields_of(OUTLINES[shape]))}
    if shape == CORNERS:
        return {"shape": shape, "corners_m": _lines(fields)}
    return {"shape": shape} if shape else {}


def _corner_rules(fields: Fields, corners: range) -> Iterator[dict[str, Any]]:
    for number in corners:
        rule = _row(fields, "corner", number)
        if rule:
            yield {"at": number, **rule}


def _opening(fields: Fields, number: int) -> dict[str, Any]:
    prefix = f"opening.{number}."
    kind = fields.get(f"{prefix}kind", "").strip()
    if kind in KINDS:
        return {"kind": kind, **_table(fields, prefix, fields_of(KINDS[kind]))}
    return {"kind": kind} if kind else {}


def fields_from(data: Mapping[str, Any]) -> dict[str, str]:
    """Return the fields of a form that stands for these tables; they must be a roof's."""
    fields: dict[str, str] = {}
    for name, value in data.items():
        if isinstance(value, Mapping):
            fields |= {f"{name}.{field}": _text(each) for field, each in value.items()}
        elif isinstance(value, list):
            for number, row in enumerate(value, start=1):
                prefix = f"{name}.{row.get('at', number)}."
                fields |= {f"{prefix}{field}": _text(each) for field, each in row.items()}
        else:
            fields[name] = _text(value)
    if CORNERS_FIELD in fields:
        corners = data["outline"]["corners_m"]
        fields[CORNERS_FIELD] = "\n".join(_text(each) for each in corners)
    return tidied(fields)


def _text(value: object) -> str:
    if isinstance(value, (list, tuple)):
        return ", ".join(_text(each) for each in value)
    return f"{value:.10g}" if isinstance(value, float) else str(value)
