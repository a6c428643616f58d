"""Which numbers somebody is asked a question on, and the question as it was shown to them."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import timedelta

from trainer.engine.errors import UNWORKABLE
from trainer.lessons import (
    Ask,
    AuthorError,
    ContentError,
    Question,
    Variant,
    bind,
    fresh_variant,
    question_in,
    roof_question_in,
    variant,
)
from trainer.records import attempts, db, texts
from trainer.records.attempts import SeenVariant, StoredAttempt
from trainer.web import shown
from trainer.web.access import signed_in
from trainer.web.installation import here
from trainer.web.origin import Origin
from trainer.web.roof_figures import facts_of
from trainer.web.shown import Shown

_AS_SHOWN = "the text as it was shown"
#: The same numbers don't come back to one person within this time.
NOT_AGAIN = timedelta(days=90)


def fresh_form(origin: Origin, question: Question, try_no: int = 1) -> tuple[Shown, Variant]:
    """Return what is shown next to the signed-in person, on numbers they haven't had lately.

    When all have been seen within NOT_AGAIN, the oldest come again. It is a second try only
    where the first one's numbers can't be drawn any more.
    """
    person_id, count = signed_in().person_id, origin.done().finished
    drawn, seen = _drawn(question, person_id, origin.roof, count)
    was = Shown(
        person_id,
        question.id,
        count,
        try_no,
        drawn.seed,
        drawn.redraws,
        origin.digest,
        origin.roof,
        seen=seen,
        variant=drawn.key,
    )
    return was, drawn


def second_form(was: Shown, wrong_line: str, *, rest_right: bool) -> Shown:
    """Return what is shown for a second try: the same numbers, and the first wrong line alone."""
    return replace(was, try_no=2, only=wrong_line, rest_right=rest_right)


def open_run(origin: Origin) -> StoredAttempt | None:
    """Return the first try of a run whose second is still to come, or None."""
    done = origin.done()
    if not done.is_open:
        return None
    return stored_answer(origin.question_id, done.finished, 1, origin.roof)


def stored_answer(
    question_id: str, count: int, try_no: int, roof: str = ""
) -> StoredAttempt | None:
    """Return one's own stored answer, or None."""
    person_id = signed_in().person_id
    return attempts.attempt_at(
        db.session, person_id, question_id, roof=roof, count=count, try_no=try_no
    )


def shown_with(stored: StoredAttempt) -> Shown:
    """Return what had been shown with a stored answer."""
    return Shown(
        stored.person_id,
        stored.question_id,
        stored.count,
        stored.try_no,
        stored.seed,
        stored.redraws,
        stored.source_digest,
        stored.roof,
        variant=stored.variant,
    )


def what_was_shown(origin: Origin, fields: Mapping[str, str]) -> Shown | None:
    """Return what a form carried, if it was made for this person and this question."""
    was = shown.opened(fields.get("shown", ""))
    if was is None or was.person_id != signed_in().person_id:
        return None
    return was if origin.asked(was) else None


def question_as_shown(was: Shown) -> Question | None:
    """Return the question by the texts that were shown; None where it can't be read today."""
    try:
        return _on_roof(was) if was.roof else _in_lesson(was)
    except (AuthorError, ContentError, *UNWORKABLE):
        # It was written by rules, or for a sum, that no longer stand.
        return None


def _in_lesson(was: Shown) -> Question | None:
    today = here().library.questions.get(was.question_id)
    if today and here().library.by_slug[today.lesson].digest == was.digest:
        return today
    text = texts.text_of(db.session, was.digest)
    return question_in(text, _AS_SHOWN, was.question_id) if text else None


def _on_roof(was: Shown) -> Question | None:
    asked = here().library.roof_questions
    text = asked.text if asked.digest == was.digest else texts.text_of(db.session, was.digest)
    roof = texts.text_of(db.session, was.roof)
    found = roof_question_in(text, _AS_SHOWN, was.question_id) if text else None
    return bind(found, facts_of(roof)) if found and roof else None


def drawn_as_shown(was: Shown) -> Variant | None:
    """Return the question with its numbers as it was shown; None where it can't be read today."""
    question = question_as_shown(was)
    drawn = variant(question, was.seed, was.redraws) if question else None
    return drawn if drawn and was.variant in ("", drawn.key) else None


def asks_of(question: Question, was: Shown) -> Sequence[Ask]:
    """Return the lines that a form asks for: all, or the one of a second try."""
    return question.asks if was.only is None else (question.ask_for(was.only),)


def _drawn(question: Question, person_id: int, roof: str, count: int) -> tuple[Variant, bool]:
    """Return the numbers, and whether this person had them before."""
    since = here().today() - NOT_AGAIN
    had = attempts.seen_variants(db.session, person_id, question.id, since)
    seed = here().seed(person_id, question.id, roof, count)
    drawn = fresh_variant(question, seed, {each.variant for each in had})
    if drawn:
        return drawn, False
    drawn = _oldest(question, had)
    return (drawn, True) if drawn else (variant(question, seed), False)


def _oldest(question: Question, had: Sequence[SeenVariant]) -> Variant | None:
    """Return the numbers that were last had longest ago, and that the question still draws."""
    last_had = {each.variant: place for place, each in enumerate(had)}
    for place in sorted(last_had.values()):
        drawn = variant(question, had[place].seed, had[place].redraws)
        if drawn.key == had[place].variant:
            return drawn
    return None
