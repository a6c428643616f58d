"""A question of a lesson: what is given, what is asked, and which slips are known."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from trainer.engine import Asked, Method, Tolerance, method_named
from trainer.engine.measures import convert, units_beside
from trainer.engine.slips import Change, Stopped
from trainer.lessons.draws import Draw

_LETTERS = ("ft", "in")


@dataclass(frozen=True, slots=True)
class Ask:
    """One line of the working that is asked for."""

    line: str
    #: The unit that the line is worked in.
    line_unit: str
    #: The unit that the answer is asked in, of the same kind.
    unit: str
    tolerance: Tolerance
    #: As the author wrote it, for the records: "2 %", "0", "0.5 mm".
    tolerance_text: str
    skill: str
    #: The question of this field; empty where the question asks for one line only.
    words: str = ""
    safe: tuple[float, float] | None = None

    @property
    def units(self) -> tuple[str, ...]:
        """The units that stand beside its field; none for a plain number."""
        return units_beside(self.unit) if self.unit else ()

    @property
    def needs_letters(self) -> bool:
        """Whether feet and inches are asked for, which a decimal keypad has no signs for."""
        return self.unit in _LETTERS

    def asked(self) -> Asked:
        """Return what the engine marks by, in the line's unit."""
        return Asked(self.line, self.tolerance, self.safe)

    def in_line_unit(self, figure: float) -> float:
        """Return a figure given in the asked unit in the line's unit."""
        return convert(figure, self.unit, self.line_unit)

    def in_asked_unit(self, figure: float) -> float:
        """Return a figure given in the line's unit in the asked unit."""
        return convert(figure, self.line_unit, self.unit)


@dataclass(frozen=True, slots=True)
class Slip:
    """A mistake that people make, with the question that helps them find it."""

    name: str
    cue: str
    change: Change
    #: The asked line that it belongs to; None where it may show at any.
    on: str | None = None

    def speaks_of(self, ask: Ask, *, last: bool) -> bool:
        """Return whether a wrong answer at this asked line may be this slip."""
        if self.on is not None:
            return self.on == ask.line
        return last or not isinstance(self.change, Stopped)


@dataclass(frozen=True, slots=True)
class Question:
    """A question that a calculation makes and marks."""

    #: The word after `kind =`.
    kind: ClassVar[str] = "calculate"

    id: str
    lesson: str
    #: What stands in a list of questions: "Tape for the bike store".
    title: str
    calculate: str
    #: With {placeholders} for the givens.
    text: str
    givens: Mapping[str, Draw]
    asks: tuple[Ask, ...]
    slips: tuple[Slip, ...]

    @property
    def method(self) -> Method[...]:
        """The calculation."""
        return method_named(self.calculate)

    @property
    def skills(self) -> tuple[str, ...]:
        """The skill of each asked line; on a roof one may have none."""
        return tuple(ask.skill for ask in self.asks if ask.skill)

    def texts(self) -> Iterator[str]:
        """Yield what is asked, at each line too, and the cues of its slips."""
        yield self.text
        yield from (ask.words for ask in self.asks)
        yield from (slip.cue for slip in self.slips)

    def ask_for(self, line: str) -> Ask:
        """Return the ask of this line; raise KeyError."""
        for ask in self.asks:
            if ask.line == line:
                return ask
        raise KeyError(line)

    def slips_at(self, ask: Ask) -> tuple[Slip, ...]:
        """Return the slips that may explain a wrong answer at this asked line."""
        last = ask == self.asks[-1]
        return tuple(slip for slip in self.slips if slip.speaks_of(ask, last=last))

    def known(self, givens: Mapping[str, Any]) -> dict[str, Any]:
        """Return the givens with the calculation's defaults beside them."""
        return {**self.method.defaults(), **givens}
