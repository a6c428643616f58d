"""The questions on roofs, walked through on every sample roof as a crew would meet them."""

from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from test_content import right_answers, some_variants

from trainer.engine.plans.facts import FACTS, facts_for_questions
from trainer.engine.plans.roof import plan_roof
from trainer.lessons import (
    Question,
    Slip,
    Typed,
    Variant,
    mark_answers,
    questions_for,
    read_library,
    roof_question_in,
)
from trainer.lessons.calculate import slip_figures

LIBRARY = read_library(Path(__file__).resolve().parent.parent / "content")
ASKED = LIBRARY.roof_questions
UNBOUND = [each.question for each in ASKED.questions]
ON_ROOFS = {
    name: questions_for(ASKED, facts_for_questions(plan_roof(roof.description)))
    for name, roof in LIBRARY.roofs.items()
}
BOUND = [
    pytest.param(question, id=f"{name}-{question.id}")
    for name, questions in ON_ROOFS.items()
    for question in questions
]


def test_there_are_enough_of_them() -> None:
    """Eighteen blocks at least, and five that ask for several lines."""
    assert len(UNBOUND) >= 18
    chains = [question for question in UNBOUND if len(question.asks) > 1]
    assert len(chains) >= 5
    assert {len(chain.asks) for chain in chains} <= {2, 3, 4}


@pytest.mark.parametrize("name", ON_ROOFS)
def test_every_roof_has_an_evenings_practice(name: str) -> None:
    """Twelve questions at least, the dormer of 2 m² too, and none of them twice."""
    ids = [question.id for question in ON_ROOFS[name]]
    assert len(ids) == len(set(ids)) >= 12


@pytest.mark.parametrize("name", ON_ROOFS)
def test_every_roof_is_asked_about_the_whole_job(name: str) -> None:
    """Fall, bandage, mat, resin, batches, the dose in each convention, topcoat and weight."""
    ids = {question.id for question in ON_ROOFS[name]}
    assert ids >= {
        "roof-fall",
        "roof-bandage-resin",
        "roof-mat-length",
        "roof-laminate-resin",
        "roof-laminate-batches",
        "roof-catalyst-by-mass",
        "roof-catalyst-ml-per-kg",
        "roof-catalyst-by-volume",
        "roof-topcoat-catalyst",
        "roof-weight",
    }


@pytest.mark.parametrize("question", BOUND)
def test_a_right_answer_on_a_roof_is_right(question: Question) -> None:
    """Whoever types what the working shows, in the asked unit and rounded as printed, is right."""
    for drawn in some_variants(question):
        mark = mark_answers(drawn, right_answers(drawn), try_no=1)
        assert [answer.verdict for answer in mark.answers] == ["right"] * len(question.asks)
        assert (mark.right, mark.finished, mark.may_retry) == (True, True, False)


@pytest.mark.parametrize("question", BOUND)
def test_a_slip_on_a_roof_gets_its_name_its_cue_and_one_retry(question: Question) -> None:
    """Each that can be made there, on some numbers at least; never a second retry."""
    drawn_many = some_variants(question, 8)
    assert question.slips
    for slip in question.slips:
        assert any(is_named(drawn, slip, try_no=1) for drawn in drawn_many), slip.name
        assert not any(is_named(drawn, slip, try_no=2) for drawn in drawn_many)


def is_named(drawn: Variant, slip: Slip, try_no: int) -> bool:
    """Whether somebody who makes this slip, the lines above being right, is told and may retry."""
    right = right_answers(drawn)
    for ask, figure in slip_figures(drawn, slip, drawn.working().figures):
        typed = Typed(f"{ask.in_asked_unit(figure):.9f}", ask.unit)
        mark = mark_answers(drawn, {**right, ask.line: typed}, try_no)
        if mark.slip == slip and mark.may_retry:
            return True
    return False


@pytest.mark.parametrize("question", BOUND)
def test_an_answer_on_a_roof_has_a_sensible_size(question: Question) -> None:
    """Nobody is asked for 0.0371 kg, nor for 48 000 mm; nothing at all may come off a drop."""
    for drawn in some_variants(question):
        for ask in question.asks:
            size = abs(ask.in_asked_unit(drawn.working().figures[ask.line]))
            assert size == 0 or 0.01 <= size < 50_000, f"{size:g} {ask.unit}"


@pytest.mark.parametrize("question", UNBOUND, ids=lambda question: question.id)
def test_what_is_drawn_comes_in_twenty_variants(question: Question) -> None:
    """Or nothing is drawn, and the numbers are the roof's alone."""
    count = 1
    for each in question.givens.values():
        count *= each.count
    assert count >= 20 or not question.givens


@pytest.mark.parametrize("question", UNBOUND, ids=lambda question: question.id)
def test_a_question_on_roofs_reads_like_the_others(question: Question) -> None:
    """Cues that ask, names of slips that are phrases, each once to a line."""
    assert len(question.slips) >= 2
    for slip in question.slips:
        assert slip.cue.endswith("?")
        assert not slip.name.endswith((".", "?"))
    assert max(Counter((slip.name, slip.on) for slip in question.slips).values()) == 1


def test_each_is_named_for_the_roof() -> None:
    """Ids begin with "roof-", so that no lesson ever takes one; titles are told apart."""
    assert [each.id for each in UNBOUND if not each.id.startswith("roof-")] == []
    assert max(Counter(question.title for question in UNBOUND).values()) == 1


def test_what_could_hurt_has_a_safe_band() -> None:
    """A dose, and a batch that must be laid in time, are wrong outside it whatever was carried."""
    doses = [ask for each in UNBOUND for ask in each.asks if ask.skill == "catalyst-dose"]
    assert doses
    assert all(ask.safe for ask in doses)
    assert all(ask.tolerance.share <= 0.015 for ask in doses)


@pytest.mark.parametrize("name", ON_ROOFS)
def test_what_the_sheet_says_is_not_drawn(name: str) -> None:
    """Fall, sizes sold, layers, humidity and cup are those of the roof, wherever they are asked."""
    facts = facts_for_questions(plan_roof(LIBRARY.roofs[name].description))
    sheets = {
        "roof-fall": {"ratio": "fall.ratio"},
        "roof-dew-margin": {"humidity_percent": "weather.humidity_percent"},
        "roof-trim-lengths": {"stock_m": "trims.stock_m"},
        "roof-tape-rolls": {"roll_m": "tape.roll_m"},
        "roof-bandage-rolls": {"roll_m": "bandage.roll_m"},
        "roof-mat-drops": {"roll_mm": "mat.roll_mm"},
        "roof-mat-rolls": {"roll_m": "mat.roll_m"},
        "roof-thickness": {"layers": "mat.layers"},
        "roof-working-time": {"gel_min": "gel.short_min", "share": "mix.share"},
        "roof-cup-gel": {"cup_min": "cup.gel_min", "cup_percent": "cup.percent"},
    }
    for question in ON_ROOFS[name]:
        for given, fact in sheets.get(question.id, {}).items():
            assert question.givens[given].ends() == (facts[fact],), (question.id, given)


@pytest.mark.parametrize(("share", "words"), [(2 / 3, "two thirds"), (0.75, "three quarters")])
def test_the_share_of_the_gel_time_is_the_roofs_own(share: float, words: str) -> None:
    """Somebody may count on more of it, or on less, and is asked by what they count on."""
    roof = LIBRARY.roofs["garage"].description
    told = facts_for_questions(plan_roof(replace(roof, mix=replace(roof.mix, share=share))))
    (question,) = (each for each in questions_for(ASKED, told) if each.id == "roof-working-time")
    (drawn, *_) = some_variants(question)
    assert f"You count on {words} of that" in drawn.text()
    usable = told["gel.short_min"] * share
    assert drawn.working().figures["usable"] == pytest.approx(usable, rel=1e-4)


@pytest.mark.parametrize("name", ON_ROOFS)
def test_a_roof_without_a_cup_is_not_asked_about_one(name: str) -> None:
    """Nor about the time that only a cup can tell."""
    timed = "gel.short_min" in facts_for_questions(plan_roof(LIBRARY.roofs[name].description))
    ids = {question.id for question in ON_ROOFS[name]}
    assert timed or not ids & {"roof-cup-gel", "roof-working-time", "roof-pace-batch"}


@pytest.mark.parametrize("name", ON_ROOFS)
def test_no_batch_in_a_question_is_larger_than_the_bucket(name: str) -> None:
    """Nor is what a batch comes to, by the limit or by the crew's pace."""
    bucket = LIBRARY.roofs[name].description.crew.bucket_l
    heaviest_kg = bucket * 1.2
    for question in ON_ROOFS[name]:
        for drawn in some_variants(question):
            assert drawn.givens.get("limit_l", 0) <= bucket, question.id
            assert drawn.working().figures.get("batch", 0) <= heaviest_kg + 1e-9, question.id


def test_marking_reads_the_same_questions() -> None:
    """The text alone holds the questions that are shown."""
    for each in ASKED.questions:
        assert roof_question_in(ASKED.text, ASKED.file, each.question.id) == each


def test_every_fact_that_is_asked_for_is_known() -> None:
    """And most of what a plan knows is asked for."""
    named = {fact for each in ASKED.questions for fact in each.facts.values()}
    assert named <= set(FACTS)
    assert len(named) >= len(FACTS) / 2
