"""What the engine says when a figure cannot be used.

EngineError
├── OutOfRange     a figure outside what the calculation accepts
├── NotAFigure     no finite number, or one that must be above zero
├── Refused        figures that must not be worked with, and why
├── Unclear        typed text that could mean two things, or nothing
│   └── OtherKind  a figure typed in a unit of another kind
├── BadRoof        a description that no plan can be made from, and where in it
└── NoSuch         a name that nobody has, with a guess at what was meant

Each carries its facts and writes its own sentence.
"""

import difflib
from collections.abc import Iterable


class EngineError(ValueError):
    """The root: catch it to show the sentence, whatever went wrong."""


#: What comes of figures that can't be worked on: an EngineError or the logarithm of nothing, both
#: of them a ValueError, and a division by nothing.
UNWORKABLE = (ValueError, ArithmeticError)


class OutOfRange(EngineError):
    """A figure outside the accepted range; carries words, value, unit, low and high."""

    def __init__(self, words: str, value: float, unit: str, low: float, high: float) -> None:
        super().__init__(words, value, unit, low, high)
        self.words, self.value, self.unit, self.low, self.high = words, value, unit, low, high

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit else ""
        return (
            f"The {self.words} is {self.value:.10g}{unit}; "
            f"it must lie between {self.low:.10g} and {self.high:.10g}{unit}."
        )


class NotAFigure(EngineError):
    """A value that no sum can be done on; carries the words and the value."""

    def __init__(self, words: str, value: object, must: str = "a finite number") -> None:
        super().__init__(words, value, must)
        self.words, self.value, self.must = words, value, must

    def __str__(self) -> str:
        return f"The {self.words} is {self.value!r}; it must be {self.must}."


class Refused(EngineError):
    """Figures that are each in range and still must not be worked with."""


class BadRoof(EngineError):
    """A description that no plan can be made from; carries where in it, and the sentence."""

    def __init__(self, where: str, sentence: str) -> None:
        super().__init__(where, sentence)
        self.where, self.sentence = where, sentence

    def __str__(self) -> str:
        return self.sentence


class Unclear(EngineError):
    """Typed text that has to be asked about; carries the text as typed."""

    def __init__(self, text: str, sentence: str) -> None:
        super().__init__(text, sentence)
        self.text, self.sentence = text, sentence

    def __str__(self) -> str:
        return self.sentence


class OtherKind(Unclear):
    """A figure typed in a unit that measures something else, such as litres for kilograms."""


class NoSuch(EngineError):
    """A name that is not known; carries what was asked for and the nearest that is."""

    def __init__(self, what: str, name: str, known: Iterable[str]) -> None:
        near = difflib.get_close_matches(name, list(known), n=1)
        super().__init__(what, name)
        self.what, self.name, self.near = what, name, near[0] if near else None

    def __str__(self) -> str:
        guess = f" Did you mean '{self.near}'?" if self.near else ""
        return f"There is no {self.what} '{self.name}'.{guess}"
