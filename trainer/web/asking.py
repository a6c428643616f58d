"""Which numbers somebody is asked a question on, and the question as it was shown to them."""

from collections.abc import Mapping
from dataclasses import replace

from trainer.engine.errors import UNWORKABLE
from trainer.lessons import (
    ALL_YOURS,
    AuthorError,
    ContentError,
    Drawn,
    Question,
    bind,
    question_in,
    roof_question_in,
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


def fresh_form(
    origin: Origin, question: Question, try_no: int = 1, *, alone: bool = False
) -> tuple[Shown, Drawn]:
    """Return what is shown next to the signed-in person, on numbers they haven't had lately.

    When all have been seen lately, the oldest come again. `alone` shows none of the working. It
    is a second try only where the first one's numbers can't be drawn any more.
    """
    person_id, count = signed_in().person_id, origin.done().finished
    stage = ALL_YOURS if alone else origin.stage(question)
    drawn, seen = _drawn(question, person_id, origin.roof, count, stage)
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
        stage=stage,
    )
    return was, drawn.at_stage(stage)


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
        stage=stored.stage,
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
    folder = here().library.folder
    return question_in(text, _AS_SHOWN, was.question_id, folder) if text else None


def _on_roof(was: Shown) -> Question | None:
    asked = here().library.roof_questions
    text = asked.text if asked.digest == was.digest else texts.text_of(db.session, was.digest)
    roof = texts.text_of(db.session, was.roof)
    found = roof_question_in(text, _AS_SHOWN, was.question_id) if text else None
    return bind(found, facts_of(roof)) if found and roof else None


def drawn_as_shown(was: Shown) -> Drawn | None:
    """Return the question with its numbers as it was shown; None where it can't be read today."""
    question = question_as_shown(was)
    if question is None:
        return None
    drawn = question.drawn(was.seed, was.redraws)
    if was.variant not in ("", drawn.key) or not drawn.is_workable:
        return None
    return drawn.at_stage(was.stage)


def _drawn(
    question: Question, person_id: int, roof: str, count: int, stage: int
) -> tuple[Drawn, bool]:
    """Return it as it is shown next, and whether this person had it before.

    Each stage of the fading has other numbers than those before it, as long as there are any:
    else somebody could look at the worked lines, and then do all of it alone on the same numbers.
    """
    seed = here().seed(person_id, question.id, roof, count)
    today, rules = here().today(), here().thresholds.sittings
    since = today - rules.out_of_sight(numberless=question.is_numberless)
    had = attempts.seen_variants(db.session, person_id, question.id, since)
    own = seed if stage == ALL_YOURS else f"{seed}|{stage}"
    # On a roof nothing fades, nor where no skill leads.
    lower = stage if question.leading_skill and not roof else 0
    taken = list(had)
    for seeds in (*(f"{seed}|{before}" for before in range(lower)), own):
        drawn, seen = question.next_drawn(seeds, taken)
        if seen:
            return question.next_drawn(own, had)
        taken.append(SeenVariant(drawn.key, drawn.seed, drawn.redraws, today))
    return drawn, False
