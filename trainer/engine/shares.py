"""A share of a whole as people say it: two thirds, three quarters."""

from trainer.engine.units import figure

_PARTS = {2: "half", 3: "third", 4: "quarter", 5: "fifth", 6: "sixth", 8: "eighth", 10: "tenth"}
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
#: A share is told by four digits that matter, so that 0.6667 is two thirds too.
_NEAR = 5e-5


def share_in_words(share: float) -> str:
    """Return a share between nothing and all of it in words, and any other number in figures.

    Halves come first and tenths last: 0.4 is two fifths. What is none of these, such as 0.62,
    stays a figure.
    """
    for parts, name in _PARTS.items():
        many = round(share * parts)
        if 0 < many < parts and abs(many / parts - share) < _NEAR:
            return name if parts == 2 else f"{_NUMBERS[many]} {name}{'s' if many > 1 else ''}"
    return figure(share)
