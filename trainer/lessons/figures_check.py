"""What `trainer check` proves of figures: none that a placeholder could print is typed in prose.

A typed figure stays behind when the constant changes. It is looked for beside the words that
prose has for a constant, "a lap of 40 mm" or "the bandage is 75 mm wide": within one clause, at
most three words away, in a unit of the same kind. A size far from the constant's own is something
else: "a bandage 3.6 m long".
"""

import math
import re
from collections.abc import Iterator, Mapping
from functools import cache

from trainer.engine import show
from trainer.engine.materials import NAMED, Constant
from trainer.engine.measures import UNITS, convert, unit_spelled
from trainer.lessons.errors import AuthorError
from trainer.lessons.figures_in_prose import without_placeholders
from trainer.lessons.lesson import Lesson
from trainer.lessons.library import Library
from trainer.lessons.prose_lines import prose_of

#: How prose speaks of each constant: FIG is a figure with a unit of its kind, FEW is up to three
#: words. What people choose for a roof, such as a dose or the weight of mat, can't be told from
#: a constant by its words, and isn't looked for.
CALLED: Mapping[str, tuple[str, ...]] = {
    "mat-lap": (r"\blap(?:s|ped|ping)?FEWFIG", r"FIG(?: wide)? laps?\b"),
    "stagger": (r"\bstagger(?:s|ed)?FEWFIG", r"\bshift(?:s|ed)?FEWFIG"),
    "wrap": (r"\bwrap(?:s|ped|ping)?FEWFIG", r"FIG(?: wide)? wraps?\b"),
    "bandage-width": (
        r"FIG (?:wide |of )?bandages?\b",
        r"\bbandages? (?:is |are )?FIG(?: wide| across)",
    ),
    "tape-width": (
        r"FIG (?:wide |of )?tapes?\b",
        r"\btapes? (?:is |are )?FIG(?: wide| across)",
    ),
    "tape-carry": (r"FIG past\b",),
    "least-bare-board": (r"\bleast FIG(?: must show| bare)\b", r"FIG bare\b(?! board)"),
    "upstand": (r"FIG above the (?:finished )?roof\b",),
    "allowance": (r"\ballowanceFEWFIG", r"FIG (?:allowance|on top)\b"),
    "mixing-time": (r"FIG (?:for|of) mixing\b",),
    "beginner-batch": (r"\bbeginner(?:[’']s)?(?: batch)?FEWFIG",),
    "beginner-most": (r"\bnever more than FIG",),
    "brush-width": (r"FIG brush(?:es)?\b",),
    "warm-water": (r"\bwarm water,? (?:up )?to (?:about )?FIG",),
    "spread-depth": (r"FIG (?:deep|thick) or less\b",),
    "board-gap": (r"FIG gaps?\b", r"\bgaps? of FIG"),
    "tape-turn": (r"\bturns? FIG on to\b", r"\bon to a face by FIG"),
    "styrene-limit": (r"FIG over (?:eight|8) hours\b",),
    "styrene-short-limit": (r"FIG over (?:fifteen|15) minutes\b",),
    "topcoat-rate": (r"\btopcoatFEWFIG", r"FIG of topcoat\b"),
    "resin-density": (r"(?<!cured\s)\bresinFEWFIG",),
    "cured-resin-density": (r"\bcured resinFEWFIG",),
    "glass-density": (r"\bglassFEWFIG",),
    "catalyst-density": (r"\bcatalystFEWFIG",),
    "topcoat-density": (r"\btopcoatFEWFIG",),
    "dew-margin": (r"FIG above (?:the |its )?dew.point\b",),
}
_GAP = r"(?:[ \t\u00a0]+|[ \t]*\n[ \t]*)"
_FEW = rf"(?:{_GAP}[^\W\d][\w’'-]*){{0,3}}{_GAP}"
_NUMBER = r"(?<![\d.,:×–-])(?P<number>\d+(?:\.\d+)?)"
#: Short words that are no unit where they stand behind a figure: "5 in the".
_NO_UNITS = {"in", "c", "f", "l", "'", '"'}
#: A size that is so many times the constant, or so small a part of it, is of something else.
_FAR = 5


def check_figures(library: Library) -> Iterator[AuthorError]:
    """Yield each constant that is typed in a lesson's prose, rightly or wrongly."""
    for lesson in library.lessons:
        yield from typed_figures(lesson)


def typed_figures(lesson: Lesson) -> Iterator[AuthorError]:
    """Yield each constant that is typed in one lesson's prose, in the order of its lines."""
    text = re.sub(r"[*_]", "", without_placeholders(prose_of(lesson.text)))
    nearest: dict[int, tuple[int, str, re.Match[str]]] = {}
    for name, match in _matches(text):
        start, span = match.start("number"), len(match[0])
        # "laps are staggered by 80 mm" speaks of the stagger, whose word is nearer.
        if start not in nearest or span < nearest[start][0]:
            nearest[start] = span, name, match
    lines = lesson.text.splitlines()
    for start, (_, name, match) in sorted(nearest.items()):
        line = text.count("\n", 0, start)
        yield from _mistakes(lesson, line + 1, lines[line], name, match)


def _matches(text: str) -> Iterator[tuple[str, re.Match[str]]]:
    """Yield each figure beside the words of a constant, with the constant's name."""
    for name, phrases in CALLED.items():
        kind = UNITS[NAMED[name].unit].kind
        for phrase in phrases:
            yield from ((name, match) for match in _pattern(phrase, kind).finditer(text))


def _mistakes(
    lesson: Lesson, number: int, line: str, name: str, match: re.Match[str]
) -> Iterator[AuthorError]:
    constant, unit = NAMED[name], _unit(match["unit"])
    size = convert(float(match["number"]), unit, constant.unit)
    typed = f"{match['number']}\u00a0{match['unit']}"
    placeholder = f"{{{name}}}" if unit == constant.unit else f"{{{name}:{unit}}}"
    own = f"{{as-written {match['number']} {match['unit']}}}"
    right = show(constant.value, constant.unit)
    if math.isclose(size, constant.value, rel_tol=0.005):
        sentence = f"Here {typed} is typed, which is the {constant.words}."
        mend = f"Write {placeholder}, which follows the constant; or {own} for the scenario's own."
    elif _is_far(size, constant):
        return
    else:
        sentence = f"Here stand {typed}, and the {constant.words} is {right}."
        mend = f"Write {placeholder}, or {own} if the scenario sets it."
    yield AuthorError(lesson.file, number, sentence, line, mend)


def _is_far(size: float, constant: Constant) -> bool:
    return not constant.value / _FAR <= size <= constant.value * _FAR


@cache
def _pattern(phrase: str, kind: str) -> re.Pattern[str]:
    figure = rf"{_NUMBER}[ \u00a0]?(?P<unit>{_spellings(kind)})(?![\w/²])"
    spaced = phrase.replace(" ", _GAP).replace("FEW", _FEW)
    return re.compile(spaced.replace("FIG", figure), re.IGNORECASE)


@cache
def _spellings(kind: str) -> str:
    """Return how the units of a kind are written, longest first."""
    units = [unit for unit in UNITS.values() if unit.kind == kind]
    written = {text for unit in units for text in (unit.symbol, *unit.spellings)}
    return "|".join(map(re.escape, sorted(written - _NO_UNITS, key=len, reverse=True)))


def _unit(text: str) -> str:
    spelled = unit_spelled(text)
    return spelled.symbol if spelled else text
