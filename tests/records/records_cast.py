"""The people in these tests, and the answer they give unless a test says otherwise."""

import hashlib
from dataclasses import dataclass
from datetime import UTC, date, datetime

from trainer.records import attempts, texts
from trainer.records.attempts import AnswerFacts, AttemptFacts, Recorded
from trainer.records.database import AnySession
from trainer.records.rules import SeasonRules, SkillRules, StuckRules

NOW = datetime(2026, 3, 9, 7, 45, tzinfo=UTC)
PASSWORD = "three wet rollers"


def kept_text(kind: str, name: str, text: str) -> texts.Text:
    """Return a text to keep, under the digest that a door would give it."""
    return texts.Text(kind, name, text, hashlib.sha256(text.encode()).hexdigest())


LESSON = kept_text("lesson", "mixing-a-batch", "Stir the resin in its drum.\n")
#: The questions that are asked, unless a test says otherwise.
ASKED = ("batch-catalyst", "bandage-resin", "syringe-mark", "a", "m", "z")


@dataclass(frozen=True)
class People:
    """Who is in the tests. Mina is the one who answers; each other one is there for a reason."""

    north: int
    south: int
    mina: int
    """A trainee in North."""
    tom: int
    """Another trainee in North: his answers must not touch hers."""
    ruth: int
    """Their supervisor, who is a trainee too."""
    karel: int
    """A trainee in South, another crew."""
    iris: int
    """The office: in no crew."""
    olga: int
    """Was a trainee in North, and has left."""


ANSWER = AnswerFacts(
    line="volume",
    skill="catalyst-by-mass",
    unit="ml",
    tolerance="1.5 %",
    right_value=34.188034188034194,
    expected_value=34.188034188034194,
    typed="34 ml",
    read_as="34 ml",
    read_value=34.0,
    verdict="right",
)
TRY = AttemptFacts(
    person_id=0,
    question_id="batch-catalyst",
    lesson="mixing-a-batch",
    competency="mixing",
    count=0,
    try_no=1,
    seed="9f2c",
    variant="2kg-at-2",
    source_digest=LESSON.digest,
    engine_version="1",
    givens={"resin_kg": 2.0, "percent": 2},
    lines=[{"key": "mass", "words": "mass of catalyst", "unit": "g", "value": 40.0}],
    sent_at=NOW,
    local_date=date(2026, 3, 9),
    unaided=True,
    right=True,
    finished=True,
    answers=(ANSWER,),
)
RULES = SkillRules(
    fading_back_at_wrong=2,
    fading_skipped_at_right=2,
    gelled_after=3,
    set_days=3,
    counted_tries_a_day=2,
    first_gaps_days=(1, 2, 4, 7, 7),
    cured_looks=(7, 12, 16),
    cured_wrongs=(0, 1, 2),
    run_ends_at_wrong=3,
    new_run_due_days=1,
    numberless_tries=3,
    due_again_rights=1,
    due_again_right_days=2,
    recall_wanted=0.9,
    longest_gap_days=120,
    believed_late_days=7,
)
STUCK = StuckRules(stuck_after=2)
SEASONS = SeasonRules(
    refresher_recall=0.85,
    refresher_recall_if_safety_critical=0.9,
    gone_recall=0.6,
    refresher_questions=15,
    refresher_days=(-28, -10, 17),
    refresher_last_open_days=28,
    season_ahead_days=400,
    compared_answers=200,
    compared_gap=0.1,
)


def record(session: AnySession, facts: AttemptFacts) -> Recorded:
    """Record a try as a door does, by these rules."""
    return attempts.record(session, facts, RULES)
