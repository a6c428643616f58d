"""What every question has, of whatever kind: it is read, drawn from a seed, and marked.

A kind of question is a module of its own: `calculate`, and those in `kinds`. Nothing outside it
asks which kind it has before it.
"""

from abc import ABC, abstractmethod
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar, Protocol

from trainer.engine import Verdict


class Had(Protocol):
    """What somebody was shown before, and what draws it again."""

    @property
    def variant(self) -> str:
        """Its key."""

    @property
    def seed(self) -> str:
        """The seed that it was drawn from."""

    @property
    def redraws(self) -> int:
        """How often it was drawn anew before it was fair."""


class Named(Protocol):
    """A mistake with a name, and the question that helps to find it."""

    @property
    def name(self) -> str:
        """What people do."""

    @property
    def cue(self) -> str:
        """The question that helps them to see it."""


@dataclass(frozen=True, slots=True)
class Question(ABC):
    """A question, as it stands in a file."""

    #: The word after `kind =`.
    kind: ClassVar[str]

    id: str
    lesson: str
    #: What stands in a list of questions: "Tape for the bike store".
    title: str
    #: What is asked.
    text: str

    @property
    @abstractmethod
    def skills(self) -> tuple[str, ...]:
        """The skills that an answer is a try for, in the order asked."""

    @property
    def leading_skill(self) -> str:
        """The skill that says how much of the working is shown; empty for none."""
        return ""

    @property
    def worked_by(self) -> str:
        """What has to be done to answer it: the same for two that are worked in the same way."""
        return f"{self.kind} {self.id}"

    @property
    def is_numberless(self) -> bool:
        """Whether it has no numbers that could be fresh, and looks the same each time."""
        return False

    @property
    def pictures(self) -> tuple[str, ...]:
        """The pictures that it asks about."""
        return ()

    @abstractmethod
    def texts(self) -> Iterator[str]:
        """Yield every text that somebody reads of it, as the author wrote it."""

    @abstractmethod
    def drawn(self, seed: str, redraws: int = 0) -> "Drawn":
        """Return it as that seed and number of redraws show it."""

    @abstractmethod
    def next_drawn(self, seed: str, had: Sequence[Had]) -> tuple["Drawn", bool]:
        """Return it as it is shown next, and whether that had been shown before.

        `had` is what was shown so lately that it is no evidence again, oldest first.
        """


@dataclass(frozen=True, slots=True)
class Drawn(ABC):
    """A question as somebody sees it."""

    question: Question
    seed: str
    redraws: int

    @property
    @abstractmethod
    def key(self) -> str:
        """A short digest, by which the same is known again."""

    def numbers(self) -> Mapping[str, Any]:
        """Return the numbers that it was drawn with; none for kinds without."""
        return {}

    @property
    def all_theirs(self) -> bool:
        """Whether nothing of the way to the answer is shown."""
        return True

    def at_stage(self, stage: int) -> "Drawn":
        """Return it with as much of its working shown as that stage of fading shows."""
        del stage
        return self

    @property
    def is_workable(self) -> bool:
        """Whether it can still be worked, after years too; kinds without numbers always can."""
        return True

    def text(self) -> str:
        """Return what is asked, with the numbers in it."""
        return self.question.text


@dataclass(frozen=True, slots=True)
class AnswerMark:
    """The mark of one thing that was asked."""

    #: Its key: a line of the working, or what a kind without numbers calls its one answer.
    line: str
    skill: str
    typed: str
    #: How it was read: "1100 g", or the words that were chosen.
    read_as: str
    verdict: Verdict
    unit: str = ""
    #: As the author wrote it, for the records.
    tolerance: str = "0"
    #: In the asked unit; None for kinds without numbers.
    read_value: float | None = None
    right: float | None = None
    #: What would have been right for the person's own figure above.
    expected: float | None = None


@dataclass(frozen=True, slots=True)
class Mark(ABC):
    """The mark of one answer to a question."""

    answers: tuple[AnswerMark, ...]
    try_no: int = 1
    #: The slip that the first wrong line matches, when it is exactly one.
    slip: Named | None = None
    #: Whether a carried figure couldn't be worked on.
    started_afresh: bool = False

    @property
    @abstractmethod
    def lines(self) -> list[dict[str, Any]]:
        """What explains it, line by line, as the records keep it.

        Each has a key, words, what is shown beside them, a value and its unit.
        """

    @property
    def wrong_line(self) -> str | None:
        """The first wrong line's key, or None."""
        return next((each.line for each in self.answers if each.verdict == "wrong"), None)

    @property
    def right(self) -> bool:
        """Whether nothing that was asked is wrong."""
        return self.wrong_line is None

    @property
    def may_retry(self) -> bool:
        """Whether the same numbers are tried once more before the working is shown."""
        return self.slip is not None and self.try_no == 1

    @property
    def finished(self) -> bool:
        """Whether this ends the run on these numbers: the explanation may be shown."""
        return not self.may_retry
