"""Lessons: Markdown and TOML to pages, questions and marks. It knows no web and no database."""

from trainer.lessons.binding import bind, facts_in, questions_for
from trainer.lessons.cautions import Caution
from trainer.lessons.check import check_content, check_lesson
from trainer.lessons.competencies import Competencies, Competency, Rule, Skill
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.lesson import Lesson, WorkedJob, digest_of, question_in, read_lesson
from trainer.lessons.library import Library, read_library
from trainer.lessons.marks import AnswerMark, Mark, Typed, mark_answers
from trainer.lessons.question import Ask, Question, Slip
from trainer.lessons.question_check import check_question
from trainer.lessons.roof_questions import RoofQuestion, RoofQuestions, roof_question_in
from trainer.lessons.variant import Variant, fresh_variant, variant

__all__ = [
    "AnswerMark",
    "Ask",
    "AuthorError",
    "Caution",
    "Competencies",
    "Competency",
    "ContentError",
    "Lesson",
    "Library",
    "Mark",
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
    "question_in",
    "questions_for",
    "read_lesson",
    "read_library",
    "roof_question_in",
    "variant",
]
