"""Lessons: Markdown and TOML to pages, questions and marks. It knows no web and no database."""

from trainer.lessons.asks import Ask, Slip
from trainer.lessons.binding import bind, facts_in, questions_for
from trainer.lessons.calculate import CalculateQuestion, Variant, fresh_variant, variant
from trainer.lessons.cautions import Caution
from trainer.lessons.check import check_content, check_lesson
from trainer.lessons.competencies import Competencies, Competency, Skill
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.fading import ALL_YOURS
from trainer.lessons.kinds.choose import ChooseDrawn, mark_choice
from trainer.lessons.kinds.locate import LocateDrawn, mark_place
from trainer.lessons.kinds.order import OrderDrawn, mark_order
from trainer.lessons.lesson import Lesson, WorkedJob, digest_of, question_in, read_lesson
from trainer.lessons.library import Library, read_library
from trainer.lessons.marks import Typed, mark_answers
from trainer.lessons.question import AnswerMark, Drawn, Mark, Question
from trainer.lessons.question_check import check_question
from trainer.lessons.roof_questions import RoofQuestion, RoofQuestions, roof_question_in
from trainer.lessons.rules import Rule

__all__ = [
    "ALL_YOURS",
    "AnswerMark",
    "Ask",
    "AuthorError",
    "CalculateQuestion",
    "Caution",
    "ChooseDrawn",
    "Competencies",
    "Competency",
    "ContentError",
    "Drawn",
    "Lesson",
    "Library",
    "LocateDrawn",
    "Mark",
    "OrderDrawn",
    "Question",
    "RoofQuestion",
    "RoofQuestions",
    "Rule",
    "Skill",
    "Slip",
    "Typed",
    "Variant",
    "WorkedJob",
    "bind",
    "check_content",
    "check_lesson",
    "check_question",
    "digest_of",
    "facts_in",
    "fresh_variant",
    "mark_answers",
    "mark_choice",
    "mark_order",
    "mark_place",
    "question_in",
    "questions_for",
    "read_lesson",
    "read_library",
    "roof_question_in",
    "variant",
]
