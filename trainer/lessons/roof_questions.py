"""content/roof-questions.md: questions that any roof can be practised on."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from trainer.lessons.block import Block
from trainer.lessons.calculate import CalculateQuestion
from trainer.lessons.lesson import digest_of, split_front
from trainer.lessons.prose import Lifted, lift_blocks
from trainer.lessons.reading import read_sum
from trainer.lessons.reading_facts import read_facts

ROOF_QUESTIONS = "content/roof-questions.md"
_FRONT_KEYS = ("slug", "title")


@dataclass(frozen=True, slots=True)
class RoofQuestion:
    """A question that wants a roof: some of its givens are figures of the plan."""

    #: All that is asked, with those givens that are drawn.
    question: CalculateQuestion
    #: The name of the fact that each other given is.
    facts: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class RoofQuestions:
    """The questions of the file, and the text that they were read from."""

    file: str
    #: What the records know them under, where a lesson has its own slug.
    slug: str
    title: str
    text: str
    #: The name under which this very text is kept with every answer to it.
    digest: str
    questions: tuple[RoofQuestion, ...]

    @property
    def by_id(self) -> dict[str, RoofQuestion]:
        """The questions by id."""
        return {each.question.id: each for each in self.questions}


#: A firm's own content may do without.
NO_ROOF_QUESTIONS = RoofQuestions(
    ROOF_QUESTIONS, "roof-questions", "Practise on this roof", "", digest_of(""), ()
)


def read_roof_questions(text: str, file: str = ROOF_QUESTIONS) -> RoofQuestions:
    """Return the questions in a text; raise AuthorError."""
    front, blocks = _front_and_blocks(text, file)
    table = front.read()
    front.refuse_unknown(table, _FRONT_KEYS, "The file's front matter")
    slug = front.want(table, "slug", str, "The file")
    return RoofQuestions(
        file,
        slug,
        front.want(table, "title", str, "The file"),
        text,
        digest_of(text),
        tuple(_read(block, slug) for block in blocks),
    )


@lru_cache(maxsize=256)
def roof_question_in(text: str, file: str, question_id: str) -> RoofQuestion | None:
    """Return one question of a text, or None.

    For marking an answer by the text that was shown, even when the file has changed since.
    Raises AuthorError when its block can't be read by today's rules.
    """
    front, blocks = _front_and_blocks(text, file)
    slug = front.want(front.read(), "slug", str, "The file")
    asked = (block for block in blocks if block.read().get("id") == question_id)
    return next((_read(block, slug) for block in asked), None)


def _front_and_blocks(text: str, file: str) -> tuple[Block, list[Block]]:
    front, body, first_line = split_front(text, file)
    lifted = Lifted()
    lift_blocks(file, body.splitlines(), first_line, lifted)
    for block in lifted.worked:
        raise block.mistake("", "A worked job belongs into a lesson.")
    return front, lifted.questions


def _read(block: Block, slug: str) -> RoofQuestion:
    facts = read_facts(block)
    return RoofQuestion(read_sum(block, slug), facts)
