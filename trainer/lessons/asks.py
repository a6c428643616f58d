"""What a sum asks for, line by line, and the slips that people make at it."""

from dataclasses import dataclass

from trainer.engine import Asked, Tolerance
from trainer.engine.measures import convert, units_beside
from trainer.engine.slips import Change, Stopped

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
