"""Questions that any roof can be practised on: reading them, and putting a roof's figures in."""

from pathlib import Path

import pytest
from lessons_specimens import RESIN, edited, line_of, mistake_in

from trainer.engine.plans.facts import Facts
from trainer.lessons import (
    AuthorError,
    CalculateQuestion,
    ContentError,
    bind,
    facts_in,
    fresh_variant,
    questions_for,
    read_library,
    roof_question_in,
    variant,
)
from trainer.lessons.roof_questions import ROOF_QUESTIONS, RoofQuestions, read_roof_questions
from trainer.lessons.roofs import roof_text

FRONT = """\
+++
slug = "roof-questions"
title = "Practise on this roof"
+++

A teacher's own words.
"""

#: At 4 m of edge and 450 g/m² the strip is 0.3 m², which is 135 g of glass.
GLASS = """\
id = "roof-glass"
title = "Glass along the edge"
calculate = "bandage_glass"
ask = "The longest edge is {length_m}; its strip is cut from {mat_g_per_m2} mat. How much glass?"
line = "glass"
unit = "g"
tolerance = "1 %"
given.length_m = {plan = "sides.longest_m"}
given.mat_g_per_m2 = [300, 450]
[[slips]]
name = "the whole roll, not the strip"
cue = "Which width did you put in?"
given.width_mm = 1000
[[slips]]
name = "half the edge"
cue = "Where does the edge end?"
given.length_m = {times = 0.5}
"""

PATCHES = """\
id = "roof-patches"
title = "Resin for the patches"
calculate = "resin_for_patches"
ask = "Open ends: {patches}, {width_mm} by {height_mm}, {allowance_percent} on top. How much resin?"
skill = "resin-for-mat"
line = "resin"
unit = "g"
tolerance = "1 %"
given.patches = {plan = "trims.open_ends"}
given.width_mm = {plan = "trims.end_width_mm"}
given.height_mm = {plan = "trims.end_height_mm"}
given.allowance_percent = [5, 10, 20]
[[slips]]
name = "one patch, and not all of them"
cue = "How many did you count?"
given.patches = 1
"""

TAPE = """\
id = "roof-tape"
title = "Tape for the joints"
calculate = "tape_length"
ask = "Joints of {joints_m}, ends that meet another: {meeting_ends}. How much tape?"
skill = "resin-for-mat"
line = "tape"
unit = "m"
tolerance = "0.02 m"
given.joints_m = {plan = "joints.total_m"}
given.meeting_ends = {plan = "joints.meeting_ends"}
given.carry_mm = [50, 60]
[[slips]]
name = "the joints alone"
cue = "What happens where one joint runs into another?"
answer = "joints"
"""

FACTS: Facts = {
    "sides.longest_m": 4.0,
    "trims.open_ends": 2,
    "trims.end_width_mm": 60,
    "trims.end_height_mm": 40,
    "joints.total_m": 12.2,
    "joints.meeting_ends": 6,
}


def text_of(*questions: str) -> str:
    """Return a file of questions on roofs."""
    return FRONT + "".join(f"\n```question\n{question}```\n" for question in questions)


def asked(*questions: str) -> RoofQuestions:
    """Return some questions on roofs, read."""
    return read_roof_questions(text_of(*questions or (GLASS, PATCHES, TAPE)))


def bound(question: str, facts: Facts = FACTS) -> CalculateQuestion | None:
    """Return a question with a roof's figures in it."""
    return bind(asked(question).questions[0], facts)


def mistake(question: str) -> AuthorError:
    """Return the mistake for which a question on roofs is refused."""
    with pytest.raises(AuthorError) as refused:
        asked(question)
    return refused.value


# Reading.


def test_a_given_may_be_a_figure_of_the_plan() -> None:
    """The question knows which fact it wants; its other givens are drawn as in a lesson."""
    (one,) = asked(GLASS).questions
    assert one.facts == {"length_m": "sides.longest_m"}
    assert list(one.question.givens) == ["mat_g_per_m2"]
    assert one.question.lesson == "roof-questions"


def test_a_question_on_roofs_may_do_without_a_skill() -> None:
    """None counts it; where one is named, it is kept."""
    glass, patches, _ = asked().questions
    assert [ask.skill for ask in glass.question.asks] == [""]
    assert [ask.skill for ask in patches.question.asks] == ["resin-for-mat"]


def test_a_lessons_question_still_names_its_skill() -> None:
    """Its tries count."""
    text = edited(RESIN, 'skill = "resin-for-mat"\n', "")
    assert mistake_in(text).sentence == "What is asked has no 'skill'."


def test_a_lesson_has_no_roof_to_take_a_figure_from() -> None:
    """The mistake points at the line, and says where such a question belongs."""
    given = 'given.length_m = {plan = "sides.longest_m"}'
    text = edited(RESIN, "given.length_m = {from = 2.4, to = 6.0, step = 0.4}", given)
    found = mistake_in(text)
    assert found.sentence == "A lesson has no roof to take this from."
    assert (found.line, "roof-questions.md" in found.mend) == (line_of(text, given), True)


def test_an_unknown_fact_gets_a_guess() -> None:
    """The line, the name, and the nearest that a plan has."""
    found = mistake(edited(GLASS, "sides.longest_m", "sides.longst_m"))
    assert found.sentence == "A roof's plan has no 'sides.longst_m'."
    assert found.mend == "Did you mean 'sides.longest_m'?"
    text = text_of(edited(GLASS, "sides.longest_m", "sides.longst_m"))
    assert (found.file, found.line) == (ROOF_QUESTIONS, line_of(text, "given.length_m"))


@pytest.mark.parametrize(
    ("fact", "told"),
    [
        ("deck.area_m2", "a figure in m²"),
        ("sides.lengths_m", "a list in m"),
        ("tape.width_mm", "a figure in mm"),
    ],
)
def test_a_fact_that_a_given_cannot_take_is_refused(fact: str, told: str) -> None:
    """Another unit, or many figures for one."""
    found = mistake(edited(GLASS, "sides.longest_m", fact))
    assert found.sentence == f"'{fact}' is {told}; 'length_m' takes something else."
    assert found.mend == "It takes a figure in m."


def test_a_fact_under_no_name_is_refused() -> None:
    """{plan = 3} names nothing."""
    found = mistake(edited(GLASS, '{plan = "sides.longest_m"}', "{plan = 3}"))
    assert found.sentence == "A roof's plan has no '3'."


def test_a_given_that_the_calculation_lacks_is_refused() -> None:
    """As in a lesson, with a guess."""
    found = mistake(edited(GLASS, "given.length_m = {plan", "given.lenght_m = {plan"))
    assert found.sentence == "'bandage_glass' takes no 'lenght_m'."
    assert found.mend == "Did you mean 'length_m'?"


def test_a_question_that_takes_nothing_from_the_roof_is_refused() -> None:
    """It belongs into a lesson."""
    found = mistake(edited(GLASS, '{plan = "sides.longest_m"}', "4"))
    assert found.sentence == "This question takes no figure from the roof."


def test_a_worked_job_belongs_into_a_lesson() -> None:
    """The file asks questions, and nothing else."""
    with pytest.raises(AuthorError, match="A worked job belongs into a lesson"):
        read_roof_questions(f'{text_of(GLASS)}\n```worked\ntitle = "No"\n```\n')


def test_front_matter_is_checked() -> None:
    """A key that isn't known is named, and so is one that is missing."""
    with pytest.raises(AuthorError, match="front matter has no key 'order'"):
        read_roof_questions(text_of(GLASS).replace("title =", "order = 1\ntitle =", 1))
    with pytest.raises(AuthorError, match="The file has no 'title'"):
        read_roof_questions(text_of(GLASS).replace('title = "Practise on this roof"\n', "", 1))


def test_one_question_is_found_in_the_text_alone() -> None:
    """As it stood when it was asked; None where it isn't there."""
    questions = asked()
    again = roof_question_in(questions.text, questions.file, "roof-tape")
    assert again == questions.by_id["roof-tape"]
    assert roof_question_in(questions.text, questions.file, "roof-gone") is None


# With the rest of the content.


def test_a_library_reads_them(content: Path) -> None:
    """A folder without the file has no questions on roofs."""
    assert read_library(content).roof_questions.questions == ()
    (content / "roof-questions.md").write_text(text_of(GLASS), "utf-8")
    assert list(read_library(content).roof_questions.by_id) == ["roof-glass"]
    assert "roof-glass" not in read_library(content).questions


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        (
            'id = "roof-glass"',
            'id = "shed-chain"',
            "Question 'shed-chain' stands in content/lessons/01-shed.md too.",
        ),
        (
            'slug = "roof-questions"',
            'slug = "shed"',
            "Lesson 'shed' stands in content/lessons/01-shed.md too.",
        ),
        ('line = "glass"', 'line = "glass"\nskill = "glas"', "There is no skill 'glas'."),
    ],
)
def test_names_are_unique_and_known_in_all_content(
    content: Path, old: str, new: str, sentence: str
) -> None:
    """An id, a slug and a skill, each pointed at in the file."""
    text = edited(text_of(GLASS), old, new)
    (content / "roof-questions.md").write_text(text, "utf-8")
    with pytest.raises(ContentError) as refused:
        read_library(content)
    (found,) = refused.value.mistakes
    assert (found.file, found.sentence) == (ROOF_QUESTIONS, sentence)
    assert found.line == line_of(text, new.splitlines()[-1])


def test_a_broken_file_is_reported_with_the_others(content: Path) -> None:
    """With its file and its line."""
    text = edited(text_of(GLASS), 'line = "glass"', "line = glass")
    (content / "roof-questions.md").write_text(text, "utf-8")
    with pytest.raises(ContentError) as refused:
        read_library(content)
    (found,) = refused.value.mistakes
    assert (found.file, found.line) == (ROOF_QUESTIONS, line_of(text, "line = glass"))


# Putting a roof's figures in.


def test_a_roofs_figures_stand_still_and_the_others_are_drawn() -> None:
    """4 m of edge each time; 300 or 450 g/m² by the seed."""
    question = bound(GLASS)
    assert question
    drawn = [variant(question, f"seed-{number}").givens for number in range(30)]
    assert {each["length_m"] for each in drawn} == {4.0}
    assert {each["mat_g_per_m2"] for each in drawn} == {300, 450}
    assert "The longest edge is 4\u00a0m;" in variant(question, "seed").text()


def test_a_question_on_a_roof_is_worked_like_any_other() -> None:
    """4 m × 75 mm × 450 g/m² is 135 g."""
    question = bound(edited(GLASS, "[300, 450]", "450"))
    assert question
    assert variant(question, "seed").working().value == pytest.approx(135)


def test_a_roof_that_lacks_a_figure_is_not_asked() -> None:
    """No open end, no patch; the other questions are asked all the same, in order."""
    facts = {name: value for name, value in FACTS.items() if name != "trims.open_ends"}
    assert [each.id for each in questions_for(asked(), facts)] == ["roof-glass", "roof-tape"]
    assert len(questions_for(asked(), FACTS)) == 3


def test_a_figure_out_of_range_is_not_asked() -> None:
    """A bandage is at most 500 m long."""
    assert bound(GLASS, {**FACTS, "sides.longest_m": 501.0}) is None


def test_figures_that_cannot_be_worked_are_not_asked() -> None:
    """A lap as wide as the roll covers nothing."""
    text = """\
id = "roof-drops"
title = "Drops"
calculate = "mat_drops"
ask = "{run_m} under {roll_mm} rolls, {lap_mm} lap. How many drops?"
line = "drops"
unit = "drops"
tolerance = 0
given.run_m = {plan = "mat.run_m"}
given.roll_mm = {plan = "mat.roll_mm"}
given.lap_mm = [200, 250]
[[slips]]
name = "twice the run"
cue = "Where does the roof end?"
given.run_m = {times = 2}
"""
    facts: Facts = {"mat.run_m": 2.9, "mat.roll_mm": 1000}
    assert bound(text, facts)
    assert bound(text, {**facts, "mat.roll_mm": 250}) is None


def test_one_figure_makes_a_list_of_one() -> None:
    """All joints end to end stand where a calculation takes many."""
    question = bound(TAPE)
    assert question
    assert variant(question, "seed").givens["joints_m"] == (12.2,)


def test_a_slip_that_changes_nothing_on_this_roof_is_left_out() -> None:
    """Where there is one open end, one patch is all of them; then nothing is left to slip on."""
    two_slips = PATCHES + (
        '[[slips]]\nname = "the allowance left out"\ncue = "What stays in the cup?"\n'
        'answer = "net"\n'
    )
    several, one = bound(two_slips), bound(two_slips, {**FACTS, "trims.open_ends": 1})
    assert several
    assert [slip.name for slip in several.slips] == [
        "one patch, and not all of them",
        "the allowance left out",
    ]
    assert one
    assert [slip.name for slip in one.slips] == ["the allowance left out"]
    assert bound(PATCHES, {**FACTS, "trims.open_ends": 1}) is None


def test_the_same_question_and_figures_make_the_same_numbers() -> None:
    """An answer of last year is bound and drawn again from its texts, to the last slip."""
    assert bound(GLASS) == bound(GLASS)
    question = bound(GLASS)
    assert question
    fresh = fresh_variant(question, "seed")
    assert fresh
    assert variant(question, "seed", fresh.redraws) == fresh


# From the text of a roof.


def test_a_kept_text_of_a_roof_has_its_facts() -> None:
    """The sizes to buy in come from the stock where the text doesn't give them."""
    stock = read_library(Path(__file__).parents[2] / "content").stock
    text = roof_text(
        {
            "title": "A coal shed",
            "outline": {"shape": "rectangle", "length_m": 4, "width_m": 2.5},
            "edge": [{"kind": kind} for kind in ("drip", "raised", "wall", "raised")],
        }
    )
    facts = facts_in(text, stock)
    assert (facts["rectangle.length_m"], facts["trims.open_ends"]) == (4.0, 2)
    assert facts["mat.roll_mm"] == stock["mat"].sizes["width_m"][0] * 1000
    with pytest.raises(ContentError):
        facts_in("no roof", stock)
