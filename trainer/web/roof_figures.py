"""The figures of a roof, worked once for all the pages that ask about them."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from flask import Flask, current_app

from trainer.engine.plans.facts import Facts
from trainer.lessons import Question, facts_in, questions_for
from trainer.web.installation import Installation

#: A crew practises on a few roofs at a time; a roof's plan takes longer than any page.
_KEPT = 32


@dataclass(frozen=True, slots=True)
class _Figures:
    facts: Callable[[str], Facts]
    questions: Callable[[str], Mapping[str, Question]]


def init_app(app: Flask, installation: Installation) -> None:
    """Give the application its kept figures."""
    library = installation.library

    @lru_cache(maxsize=_KEPT)
    def facts(text: str) -> Facts:
        return facts_in(text, library.stock)

    @lru_cache(maxsize=_KEPT)
    def questions(text: str) -> Mapping[str, Question]:
        asked = questions_for(library.roof_questions, facts(text))
        return {question.id: question for question in asked}

    app.extensions["roof_figures"] = _Figures(facts, questions)


def facts_of(text: str) -> Facts:
    """Return the facts of the roof in a text; raise ContentError or EngineError."""
    return _figures().facts(text)


def questions_on(text: str) -> Mapping[str, Question]:
    """Return today's questions on the roof in a text, by id and in order.

    Raises ContentError or EngineError where it can't be read or planned any more.
    """
    return _figures().questions(text)


def _figures() -> _Figures:
    figures: _Figures = current_app.extensions["roof_figures"]
    return figures
