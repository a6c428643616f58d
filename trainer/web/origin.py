"""Where a question comes from: its lesson, or the practice on one roof.

Asking, marking and telling the mark are the same for both; what differs stands here.
"""

from abc import ABC, abstractmethod
from dataclasses import dataclass
from itertools import pairwise
from typing import ClassVar, NamedTuple

from flask import url_for

from trainer.lessons import ALL_YOURS, Question
from trainer.records import db, progress, skills
from trainer.records.attempts import AttemptFacts
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.shown import Shown

LESSON_CHANGED = "The lesson has changed since you opened this. You are marked by what you saw."


class Way(NamedTuple):
    """Where a link leads, and what stands on it."""

    href: str
    words: str


@dataclass(frozen=True, slots=True)
class Done:
    """What somebody has done on a question: first tries, and runs that ended."""

    tried: int = 0
    finished: int = 0

    @property
    def is_open(self) -> bool:
        """Whether a second try is still to come."""
        return self.tried > self.finished


class Origin(ABC):
    """Where one question comes from."""

    question_id: str
    #: The question as it is asked today; None where it isn't any more.
    today: Question | None
    #: The digest of the text that it stands in today.
    digest: str
    #: The digest of the roof's description today, or nothing.
    roof: str = ""
    #: Whether it may be asked anew from here, once it is done.
    repeats: ClassVar[bool] = True

    def asked(self, was: Shown) -> bool:
        """Whether it was this question that was shown."""
        return was.question_id == self.question_id and bool(was.roof) == bool(self.roof)

    @abstractmethod
    def href(self) -> str:
        """Return the address of the question, which its answer is sent to as well."""

    @abstractmethod
    def marked_href(self, was: Shown) -> str:
        """Return the address of the mark of what was shown."""

    @abstractmethod
    def done(self) -> Done:
        """Return what the signed-in person has done on it."""

    def stage(self, question: Question) -> int:
        """Return how much of the working is shown to the signed-in person: none."""
        del question
        return ALL_YOURS

    @abstractmethod
    def back(self) -> Way | None:
        """Return the way to the list in which it stands."""

    @abstractmethod
    def onward(self) -> Way | None:
        """Return the way on, once it is done."""

    def further(self) -> Way | None:
        """Return a second way on, beside the first, or None."""
        return None

    def recorded(self, facts: AttemptFacts) -> None:
        """Note where else a try belongs that was just recorded, in the same transaction."""
        del facts

    def since(self, was: Shown) -> tuple[str, ...]:
        """Return what the page of a mark says about changes since it was shown."""
        del was
        return ()

    @abstractmethod
    def changed(self, was: Shown) -> str:
        """Return a sentence where something has changed since it was shown, or nothing."""


class FromLesson(Origin):
    """A question of a lesson: of the one that it stands in today, else of the one named."""

    def __init__(self, question_id: str, lesson: str = "") -> None:
        library = here().library
        self.question_id = question_id
        self.today = library.questions.get(question_id)
        self.lesson = library.by_slug.get(self.today.lesson if self.today else lesson)
        self.digest = self.lesson.digest if self.lesson else ""

    def href(self) -> str:
        """Return the address of the question."""
        return url_for("questions.show", question_id=self.question_id)

    def marked_href(self, was: Shown) -> str:
        """Return the address of the mark."""
        return url_for(
            "questions.marked", question_id=self.question_id, count=was.count, try_no=was.try_no
        )

    def done(self) -> Done:
        """Return what the running totals say."""
        row = progress.question_row(db.session, signed_in().person_id, self.question_id)
        return Done(row.tried, row.finished) if row else Done()

    def stage(self, question: Question) -> int:
        """Return what the signed-in person's tries at its leading skill have come to."""
        if not question.leading_skill:
            return ALL_YOURS
        return skills.stage_of(db.session, signed_in().person_id, question.leading_skill)

    def back(self) -> Way | None:
        """Return the way to the lesson."""
        if self.lesson is None:
            return None
        href = url_for("lessons.show", slug=self.lesson.slug)
        return Way(f"{href}#questions", self.lesson.title)

    def onward(self) -> Way | None:
        """Return the way to the next question of the lesson, else to Today."""
        if self.lesson is None:
            return None
        for each, after in pairwise(self.lesson.questions):
            if each.id == self.question_id:
                href = url_for("questions.show", question_id=after.id)
                return Way(href, "Next question")
        return Way(url_for("today.show"), "Back to Today")

    def changed(self, was: Shown) -> str:
        """Return a sentence where the lesson reads otherwise today."""
        return "" if self.digest == was.digest else LESSON_CHANGED
