"""What `trainer check` proves of the questions on roofs: each is worked on every sample roof."""

from collections.abc import Iterator, Mapping

from trainer.engine.errors import UNWORKABLE
from trainer.engine.plans.facts import Facts, facts_for_questions
from trainer.engine.plans.roof import plan_roof
from trainer.lessons.asks import Slip
from trainer.lessons.binding import questions_for
from trainer.lessons.calculate import CalculateQuestion
from trainer.lessons.crosscheck import lines_with
from trainer.lessons.errors import AuthorError
from trainer.lessons.question_check import FEWEST_SLIPS, check_question
from trainer.lessons.roof_questions import RoofQuestions
from trainer.lessons.roofs import SampleRoof

FEWEST_ON_A_ROOF = 12


def check_on_roofs(asked: RoofQuestions, roofs: Mapping[str, SampleRoof]) -> Iterator[AuthorError]:
    """Yield what is wrong with the questions when the sample roofs are practised on.

    Every roof gets enough of them, every question is asked on one roof at least, and each of its
    slips can be made on one. A roof that can't be planned was reported elsewhere.
    """
    if not asked.questions:
        return
    bound = {name: questions_for(asked, facts) for name, facts in _facts_of(roofs)}
    for name, questions in bound.items():
        if len(questions) < FEWEST_ON_A_ROOF:
            sentence = f"The roof '{name}' can be asked {len(questions)} questions alone."
            yield AuthorError(asked.file, 1, sentence, "", f"It takes {FEWEST_ON_A_ROOF} at least.")
        for question in questions:
            yield from check_question(question, asked.file, _line(asked, question), roof=name)
    if bound:
        yield from _never(asked, [question for each in bound.values() for question in each])


def _never(asked: RoofQuestions, bound: list[CalculateQuestion]) -> Iterator[AuthorError]:
    """Yield each question, and each slip, that no roof makes use of."""
    for each in asked.questions:
        question = each.question
        met: set[Slip] = {slip for one in bound if one.id == question.id for slip in one.slips}
        if len(question.slips) < FEWEST_SLIPS:
            few = f"it takes {FEWEST_SLIPS} slips at least, and knows {len(question.slips)}."
            yield _mistake(asked, question, few)
        if not any(one.id == question.id for one in bound):
            yield _mistake(asked, question, "no sample roof can be asked it.")
            continue
        for slip in question.slips:
            if slip not in met:
                sentence = f"the slip '{slip.name}' can be made on no sample roof."
                yield _mistake(asked, question, sentence)


def _mistake(asked: RoofQuestions, question: CalculateQuestion, sentence: str) -> AuthorError:
    line = _line(asked, question)
    return AuthorError(asked.file, line, f"Question '{question.id}': {sentence}")


def _line(asked: RoofQuestions, question: CalculateQuestion) -> int:
    return lines_with(asked, "id", question.id)[0]


def _facts_of(roofs: Mapping[str, SampleRoof]) -> Iterator[tuple[str, Facts]]:
    for name, roof in roofs.items():
        try:
            yield name, facts_for_questions(plan_roof(roof.description))
        except UNWORKABLE:
            continue
