"""The stylesheet that a drawing carries along where it stands alone."""

import re
from functools import cache
from importlib.resources import files

#: The parts of the face that a drawing lives on.
_PARTS = ("Pictures:", "The drawing of a roof:")
_TOKEN = re.compile(r"^\s*(--[\w-]+): [^;]*;$", re.MULTILINE)
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
#: Alone it is read in whatever typeface there is, and many are broader than the house's.
_SMALLER = "svg.roof-plan text { font-size: 18px; }"


@cache
def style() -> str:
    """Return the face's rules for drawings, and the tokens they use day and night and in print."""
    face = (files("trainer.web") / "static" / "face.css").read_text(encoding="utf-8")
    tokens, *parts = re.split(r"/\* -{10} (?=[A-Z])", face)[1:]
    rules = "".join(_rules(part) for part in parts if part.startswith(_PARTS))
    used = {*re.findall(r"var\((--[\w-]+)", rules)}
    kept = _TOKEN.sub(lambda found: found[0] if found[1] in used else "", _rules(tokens))
    return re.sub(r"\s*\n\s*", "\n", f"{kept}{rules}{_SMALLER}")


def _rules(part: str) -> str:
    """Return a part of the stylesheet without its heading and its comments."""
    return _COMMENT.sub("", part.split("*/", 1)[1])
