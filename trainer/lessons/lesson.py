"""A lesson: one Markdown file with its front matter, prose, worked job and questions."""

import hashlib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from trainer.engine import Working, work
from trainer.lessons.block import Block
from trainer.lessons.calculate import CalculateQuestion
from trainer.lessons.errors import AuthorError
from trainer.lessons.glossary import Word
from trainer.lessons.placeholders import fill
from trainer.lessons.prose import (
    NOTHING_KNOWN,
    WORKED_MARK,
    Known,
    Lifted,
    kept_together,
    lift_blocks,
    render,
)
from trainer.lessons.question import Question
from trainer.lessons.reading import check_placeholders, read_question
from trainer.lessons.reading_givens import read_givens, read_method
from trainer.lessons.standing import KnownFigure
from trainer.lessons.stock import read_stock

_FENCE = "+++"
_FRONT_KEYS = ("slug", "title", "competency", "minutes", "order", "scenario", "cautions")


@dataclass(frozen=True, slots=True)
class WorkedJob:
    """One job worked in full, on fixed figures, before any question."""

    title: str
    text: str
    working: Working


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson as it is read, and everything it asks."""

    file: str
    slug: str
    title: str
    competency: str
    minutes: int
    order: int
    scenario: str
    cautions: tuple[str, ...]
    text: str
    #: The name under which this very text is kept with every answer to it.
    digest: str
    #: The prose before and after the worked job.
    opening: str
    closing: str
    worked: WorkedJob | None
    questions: tuple[Question, ...]
    pictures: tuple[str, ...]
    #: The defaults that stand in the prose, in order.
    figures: tuple[KnownFigure, ...]
    #: The words of the trade that can be opened on its page.
    words: tuple[Word, ...]

    @property
    def sums(self) -> tuple[CalculateQuestion, ...]:
        """The questions that a calculation makes and marks."""
        return tuple(each for each in self.questions if isinstance(each, CalculateQuestion))


def digest_of(text: str) -> str:
    """Return the SHA-256 of a text, in hexadecimal."""
    return hashlib.sha256(text.encode()).hexdigest()


def read_lesson(text: str, file: str, folder: Path, known: Known = NOTHING_KNOWN) -> Lesson:
    """Return the lesson in a text; its pictures lie below `folder`. Raise AuthorError.

    `known` is what its prose may lean on.
    """
    front, body, first_line = split_front(text, file)
    table = front.read()
    front.refuse_unknown(table, _FRONT_KEYS, "A lesson's front matter")
    html, lifted = render(file, body, first_line, folder, known)
    slug = front.want(table, "slug", str, "A lesson")
    opening, _, closing = html.partition(WORKED_MARK)
    questions = [read_question(block, slug, folder, known.stock) for block in lifted.questions]
    return Lesson(
        file=file,
        slug=slug,
        title=front.want(table, "title", str, "A lesson"),
        competency=front.want(table, "competency", str, "A lesson"),
        minutes=front.want(table, "minutes", int, "A lesson"),
        order=front.want(table, "order", int, "A lesson"),
        scenario=kept_together(front.want(table, "scenario", str, "A lesson")),
        cautions=front.texts(table, "cautions", "A lesson"),
        text=text,
        digest=digest_of(text),
        opening=opening,
        closing=closing,
        worked=_read_worked(lifted),
        questions=tuple(questions),
        pictures=(*lifted.pictures, *(name for each in questions for name in each.pictures)),
        figures=tuple(lifted.figures),
        words=tuple(lifted.words),
    )


@lru_cache(maxsize=256)
def question_in(text: str, file: str, question_id: str, folder: Path) -> Question | None:
    """Return one question of a lesson's text, or None, without drawing its page.

    For marking an answer by the text that was shown, even when the lesson has changed since.
    Only the asked block is read, so that no other can stand in its way. Raises AuthorError
    when that block can't be read by today's rules.
    """
    front, body, first_line = split_front(text, file)
    lifted = Lifted()
    lift_blocks(file, body.splitlines(), first_line, lifted)
    slug = front.want(front.read(), "slug", str, "A lesson")
    asked = (block for block in lifted.questions if block.read().get("id") == question_id)
    stock = read_stock(folder) if "{stock." in text else {}
    return next((read_question(block, slug, folder, stock) for block in asked), None)


def split_front(text: str, file: str) -> tuple[Block, str, int]:
    """Return the front matter, the body, and the line on which the body begins.

    Raises AuthorError where the front matter doesn't stand between two lines of +++.
    """
    lines = text.splitlines()
    if not lines or lines[0].rstrip() != _FENCE:
        raise AuthorError(
            file,
            1,
            "A lesson begins with a line of +++.",
            lines[0] if lines else "",
            "Put the front matter between two lines of +++.",
        )
    ends = [number for number, line in enumerate(lines[1:], start=1) if line.rstrip() == _FENCE]
    if not ends:
        raise AuthorError(
            file, 1, "The front matter isn't closed.", lines[0], "End it with a line of +++."
        )
    end = ends[0]
    return Block(file, 2, "\n".join(lines[1:end])), "\n".join(lines[end + 1 :]), end + 2


def _read_worked(lifted: Lifted) -> WorkedJob | None:
    if not lifted.worked:
        return None
    if len(lifted.worked) > 1:
        raise lifted.worked[1].mistake("", "A lesson has one worked job, and this is the second.")
    block = lifted.worked[0]
    table = block.read()
    block.refuse_unknown(table, ("title", "text", "calculate", "given"), "A worked job")
    method = read_method(block, table)
    draws = read_givens(block, table, method)
    givens: dict[str, Any] = {name: draw.value(0) for name, draw in draws.items()}
    text = block.want(table, "text", str, "A worked job")
    check_placeholders(block, text, method)
    return WorkedJob(
        block.want(table, "title", str, "A worked job"),
        fill(text, method, draws, givens),
        work(method(**givens)),
    )
