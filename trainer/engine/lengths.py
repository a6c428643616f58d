"""Lengths put end to end, and short lengths that come back a number of times."""

from collections.abc import Sequence

from trainer.engine.conversions import MM_PER_M
from trainer.engine.working import Line, Part


def joined(key: str, words: str, each: str, lengths_m: Sequence[float]) -> Line:
    """Return the line that puts lengths in metres end to end; `each` is what one of them is."""
    parts = {
        f"length_{number}": Part(length, "m", f"{each} {number}")
        for number, length in enumerate(lengths_m, start=1)
    }
    return Line(key, words, "m", sum(lengths_m), " + ".join(parts), parts)


def repeated(key: str, words: str, times: Part, short: Part) -> Line:
    """Return the line that takes a short length in millimetres a number of times, in metres."""
    metres = times.value * short.value / MM_PER_M.value
    parts = {"times": times, "short": short, "mm_per_m": MM_PER_M}
    return Line(key, words, "m", metres, "times * short / mm_per_m", parts)
