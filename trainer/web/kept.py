"""What was typed into a form whose sign-in had ended, kept through signing in again.

It travels through the sign-in form, signed, and is laid by in the session for the page that it
was meant for.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass

from flask import current_app, session
from itsdangerous import BadData, URLSafeTimedSerializer

_A_DAY = 86_400
_NOT_KEPT = {"csrf_token", "password", "kept"}
_CUT = "too_long"
#: A cookie holds 4 kB in all; answers are short.
_LONGEST = 2_000


@dataclass(frozen=True, slots=True)
class Parcel:
    """The path that a form was sent to, and what stood in it."""

    path: str
    fields: Mapping[str, str]


def packed(path: str, fields: Mapping[str, str]) -> str:
    """Return what was sent as signed text; what is too long is left out, and that is noted."""
    room = _LONGEST
    told: dict[str, str] = {}
    for name, value in fields.items():
        size = len(json.dumps([name, value]))
        if name in _NOT_KEPT or not value:
            continue
        if size > room:
            told[_CUT] = "yes"
            continue
        told[name] = value
        room -= size
    return _sealer().dumps([path, told])


def unpacked(text: str) -> Parcel | None:
    """Return what was packed within the last day, or None."""
    try:
        path, fields = _sealer().loads(text, max_age=_A_DAY)
        return Parcel(path, fields)
    except (BadData, ValueError, TypeError):
        return None


def is_cut(fields: Mapping[str, str]) -> bool:
    """Return whether something that was typed was too long to be kept."""
    return _CUT in fields


def lay_by(parcel: Parcel) -> None:
    """Keep a parcel in the session for its page."""
    session["kept"] = [parcel.path, dict(parcel.fields)]


def waits_for(path: str) -> bool:
    """Return whether something was laid by for a path, and leave it there."""
    laid = session.get("kept")
    return laid is not None and bool(laid[0] == path)


def taken_up(path: str) -> Mapping[str, str] | None:
    """Return the fields that were laid by for a path, once; None when there are none."""
    laid = session.get("kept")
    if not laid or laid[0] != path:
        return None
    session.pop("kept")
    fields: Mapping[str, str] = laid[1]
    return fields


def _sealer() -> URLSafeTimedSerializer:
    return URLSafeTimedSerializer(current_app.secret_key or "", salt="kept")
