"""How much of a sum's working is shown: all of it first, then less, from the last line backwards.

Full working, last line yours, last two yours, all yours: worked examples teach a beginner more
than tries do, and a short step back to them helps whoever gets stuck.
"""

from collections.abc import Sequence
from dataclasses import replace

from trainer.engine import Line, Tolerance
from trainer.lessons.asks import Ask

#: The stages, in order.
FULL_WORKING, LAST_YOURS, LAST_TWO_YOURS, ALL_YOURS = range(4)
#: At the first, the full working stands beside it on other numbers.
_THEIRS = {FULL_WORKING: 1, LAST_YOURS: 1, LAST_TWO_YOURS: 2}
#: A line that no question asks by itself is worked with figures as they are printed above it.
_ON_THE_WAY = Tolerance(share=0.01), "1 %"
#: A share of a temperature is nothing near 0 °C, and three degrees of a room's in kelvin.
_WARMTH = Tolerance(amount=0.5)
_WARMTHS = {"°C": (_WARMTH, "0.5 °C"), "K": (_WARMTH, "0.5 K")}


def asks_at(stage: int, asks: tuple[Ask, ...], working: Sequence[Line]) -> tuple[Ask, ...]:
    """Return the lines that are somebody's own at a stage before the last.

    They are the last lines of the working, up to the last that is asked; one that isn't asked
    otherwise is a try for the skill of the asked line that it leads to.
    """
    keys = [line.key for line in working]
    end = keys.index(asks[-1].line) + 1
    theirs = working[max(0, end - _THEIRS[stage]) : end]
    return tuple(_ask_at(line, asks, keys) for line in theirs)


def _ask_at(line: Line, asks: tuple[Ask, ...], keys: list[str]) -> Ask:
    at = keys.index(line.key)
    below = next(ask for ask in asks if keys.index(ask.line) >= at)
    if below.line == line.key:
        return replace(below, words=below.words or _sentence(line))
    tolerance, tolerance_text = _WARMTHS.get(line.unit, _ON_THE_WAY)
    return Ask(
        line=line.key,
        line_unit=line.unit,
        unit=line.unit,
        tolerance=tolerance,
        tolerance_text=tolerance_text,
        skill=below.skill,
        words=_sentence(line),
    )


def _sentence(line: Line) -> str:
    return f"{line.words[:1].upper()}{line.words[1:]}"
