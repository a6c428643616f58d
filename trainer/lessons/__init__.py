"""Lessons: Markdown and TOML to pages, questions and marks. It knows no web and no database."""

from trainer.lessons.cautions import Caution
from trainer.lessons.check import check_content, check_question
from trainer.lessons.competencies import Competencies, Competency, Rule, Skill
from trainer.lessons.errors import AuthorError, ContentError
from trainer.lessons.lesson import Lesson, WorkedJob, digest_of, question_in, read_lesson
from trainer.lessons.library import Library, read_library
from trainer.lessons.marks import AnswerMark, Mark, Typed, mark_answers
from trainer.lessons.question import Ask, Question, Slip
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
    "Rule",
    "Skill",
    "Slip",
    "Typed",
    "Variant",
    "WorkedJob",
    "check_content",
    "check_question",
    "digest_of",
    "fresh_variant",
    "mark_answers",
    "question_in",
    "read_lesson",
    "read_library",
    "variant",
]
