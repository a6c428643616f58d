"""An answer on its way to the records: the evidence of a mark, and the date that it counts for."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from trainer.engine import ENGINE_VERSION
from trainer.lessons import AnswerMark, Drawn, Mark
from trainer.records.attempts import AnswerFacts, AttemptFacts
from trainer.web.installation import Installation
from trainer.web.shown import Shown

#: A phone's own date is believed this far back, and marked as sent later.
BELIEVED = timedelta(days=7)
#: Pressing and arriving lie this far apart on a slow line without anybody calling it later.
_ON_ITS_WAY = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class AnswerTime:
    """When an answer arrived, and the local date that it counts for, fixed for ever."""

    sent_at: datetime
    local_date: date
    sent_later: bool


def time_of_answer(pressed: str, installation: Installation) -> AnswerTime:
    """Return when an answer counts for, from the instant its button was first pressed.

    `pressed` is the phone's ISO time, or nothing. Its date stands if it lies within seven days
    and not in the future; otherwise the answer counts for the day that it arrived.
    """
    now = installation.now()
    then = instant_in(pressed)
    if then is None or not timedelta(0) <= now - then <= BELIEVED:
        return AnswerTime(now, installation.date_of(now), sent_later=False)
    return AnswerTime(now, installation.date_of(then), sent_later=now - then > _ON_ITS_WAY)


def attempt_facts(
    was: Shown, drawn: Drawn, mark: Mark, time: AnswerTime, competency: str
) -> AttemptFacts:
    """Return all that is kept of an answer, so that it can be read years later as it was asked."""
    return AttemptFacts(
        person_id=was.person_id,
        question_id=was.question_id,
        kind=drawn.question.kind,
        lesson=drawn.question.lesson,
        competency=competency,
        roof=was.roof,
        count=was.count,
        try_no=was.try_no,
        seed=was.seed,
        redraws=was.redraws,
        variant=drawn.key,
        source_digest=was.digest,
        engine_version=ENGINE_VERSION,
        givens=dict(drawn.numbers()),
        lines=mark.lines,
        sent_at=time.sent_at,
        local_date=time.local_date,
        sent_later=time.sent_later,
        working_shown=was.seen,
        unaided=was.try_no == 1 and not was.seen and drawn.all_theirs,
        stage=was.stage,
        started_afresh=mark.started_afresh,
        right=mark.right and was.rest_right,
        finished=mark.finished,
        answers=tuple(_answer_facts(answer, mark) for answer in mark.answers),
    )


def _answer_facts(answer: AnswerMark, mark: Mark) -> AnswerFacts:
    slip = mark.slip if answer.line == mark.wrong_line else None
    return AnswerFacts(
        line=answer.line,
        skill=answer.skill,
        unit=answer.unit,
        tolerance=answer.tolerance,
        right_value=answer.right,
        expected_value=answer.expected,
        typed=answer.typed,
        read_as=answer.read_as,
        read_value=answer.read_value,
        verdict=answer.verdict,
        slip=slip.name if slip else "",
        cue=slip.cue if slip else "",
    )


def instant_in(text: str) -> datetime | None:
    """Return the instant that an ISO time with its zone tells, in UTC; None for anything else."""
    try:
        then = datetime.fromisoformat(text)
        return then.astimezone(UTC) if then.tzinfo else None
    except (ValueError, OverflowError):
        return None
