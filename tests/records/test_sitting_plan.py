"""Which questions a sitting asks, and in what order."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from records_cast import RULES as SKILLS
from skills_cast import CURED, on, went

from trainer.records.rules import SittingRules
from trainer.records.sitting_plan import Askable, Candidate, Turn, candidate_for, plan_sitting

RULES = SittingRules(
    sitting_questions=12,
    sitting_minutes=10,
    break_minutes=5,
    returns_after=3,
    same_numbers_after_days=90,
    numberless_after_days=14,
)


def due(skill: str, wanted: int = 2, day: int = 1, **more: object) -> Candidate:
    """A skill that has gelled and is due since that day."""
    plain = Candidate(
        skill, wanted, (False, day, 0.5), recall=0.5, first_meeting=False, is_cured=False
    )
    return replace(plain, **more)  # type: ignore[arg-type]


def new(skill: str, wanted: int = 3) -> Candidate:
    """A skill at its first meeting."""
    return Candidate(skill, wanted, (True, 1, 0.5), recall=0.5, first_meeting=True, is_cured=False)


def about(*skills: str, name: str = "", **more: object) -> Askable:
    """A sum on these skills, worked in a way of its own."""
    name = name or "-".join(skills)
    return replace(Askable(name, frozenset(skills), f"work {name}"), **more)  # type: ignore[arg-type]


def skills_of(turns: Sequence[Turn]) -> list[str]:
    """The skills that a sitting asks for, in order."""
    return [turn.skill for turn in turns]


def test_a_due_skill_is_asked_twice_with_three_in_between() -> None:
    """Four due skills fill each other's gaps."""
    skills = "abcd"
    turns = plan_sitting([due(each) for each in skills], [about(each) for each in skills], RULES)
    assert skills_of(turns) == list("abcdabcd")


def test_skills_that_were_met_fill_a_gap() -> None:
    """One skill is due alone: three others stand between its two tries, and none after them."""
    others = [due(each, wanted=0) for each in "xyz"]
    turns = plan_sitting([due("a"), *others], [about(each) for each in "axyz"], RULES)
    assert skills_of(turns) == ["a", "x", "y", "z", "a"]


def test_a_cured_one_fills_a_gap_last() -> None:
    """A wrong answer would put it back, so it is taken only where there is no other."""
    others = [due("c", wanted=0, is_cured=True), *(due(each, wanted=0) for each in "xyz")]
    turns = plan_sitting([due("a"), *others], [about(each) for each in "acxyz"], RULES)
    assert "c" not in skills_of(turns)
    turns = plan_sitting([due("a"), *others[:3]], [about(each) for each in "acxy"], RULES)
    assert skills_of(turns) == ["a", "x", "y", "c", "a"]


def test_a_second_try_is_left_where_nothing_fills_the_gap() -> None:
    """It comes on another day, never too early."""
    assert skills_of(plan_sitting([due("a")], [about("a")], RULES)) == ["a"]
    pair = plan_sitting([due("a"), due("b")], [about("a"), about("b")], RULES)
    assert skills_of(pair) == ["a", "b"]


def test_the_oldest_comes_first_and_the_weakest_of_the_same_day() -> None:
    """What was left before has an older date, and so goes on top."""
    skills = [
        due("young", day=9),
        due("old", day=2),
        due("weak", day=5, urgency=(False, 5, 0.2)),
        due("strong", day=5, urgency=(False, 5, 0.8)),
    ]
    turns = plan_sitting(skills, [about(each.skill) for each in skills], RULES)
    assert skills_of(turns)[:4] == ["old", "weak", "strong", "young"]


def test_what_is_due_again_comes_before_what_is_older() -> None:
    """It was Cured once, and went wrong yesterday; the other has been due for ten days."""
    lapsed = candidate_for("lapsed", went(*CURED, (20, "w")), on(21), SKILLS)
    older = candidate_for("older", went((10, "rrr")), on(21), SKILLS)
    assert (lapsed.wanted, older.wanted) == (1, 2)
    turns = plan_sitting([older, lapsed], [about("lapsed"), about("older")], RULES)
    assert skills_of(turns)[:2] == ["lapsed", "older"]


def test_what_is_due_comes_before_what_is_new() -> None:
    """Both of its tries, as far as the gaps let it."""
    turns = plan_sitting([new("n"), due("a")], [about("n"), about("a")], RULES)
    assert skills_of(turns) == ["a", "n", "n", "n", "a"]


def test_a_first_meeting_needs_no_gap() -> None:
    """Three rights in a row are what it is there for."""
    assert skills_of(plan_sitting([new("n")], [about("n")], RULES)) == ["n", "n", "n"]


def test_no_two_neighbours_need_the_same_method() -> None:
    """Another question on the same skill is taken, or another skill."""
    same = [about("a", method="fall"), about("b", method="fall"), about("c"), about("d")]
    turns = plan_sitting([due(each, 1) for each in "abcd"], same, RULES)
    asked = skills_of(turns)
    assert sorted(asked) == list("abcd")
    assert abs(asked.index("a") - asked.index("b")) > 1


def test_what_is_easily_confused_stands_close() -> None:
    """The glass and the resin of a bandage, told apart while both are fresh."""
    skills = [due("a", confused_with=frozenset("d")), due("b"), due("c"), due("d")]
    turns = plan_sitting(skills, [about(each) for each in "abcd"], RULES)
    assert skills_of(turns)[:2] == ["a", "d"]


def test_the_question_done_longest_ago_is_taken() -> None:
    """And one that was never done before it."""
    asked = [
        about("a", name="lately", last_done=date(2026, 3, 8)),
        about("a", name="long ago", last_done=date(2026, 1, 8)),
        about("a", name="never"),
    ]
    assert plan_sitting([new("a")], asked, RULES)[0].question_id == "never"
    assert plan_sitting([new("a", 1)], asked[:2], RULES)[0].question_id == "long ago"


def test_a_sum_comes_before_a_choice_that_was_done_as_long_ago() -> None:
    """Picking is easier than finding."""
    asked = [about("a", name="choice", numberless=True), about("a", name="sum")]
    assert plan_sitting([due("a", 1)], asked, RULES)[0].question_id == "sum"


def test_where_a_choice_would_say_nothing_none_is_asked() -> None:
    """Its run has no more room for one, or it is Cured."""
    asked = [about("a", name="choice", numberless=True)]
    assert plan_sitting([due("a", takes_numberless=False)], asked, RULES) == ()


def test_a_skill_has_one_choice_in_a_sitting() -> None:
    """A run may have room for no second one, and one that says nothing is asked in vain."""
    asked = [about(each) for each in "abcd"]
    choices = [about("a", name=f"choice {n}", numberless=True) for n in range(3)]
    lately = [replace(asked[0], last_done=date(2026, 3, 8)), *asked[1:]]
    turns = plan_sitting([due(each) for each in "abcd"], [*lately, *choices], RULES)
    own = [turn.question_id for turn in turns if turn.skill == "a"]
    assert own == ["choice 0", "a"]


def test_a_sum_fills_a_gap_before_a_choice() -> None:
    """A choice would be out of sight for two weeks, and for nothing."""
    others = [due(each, wanted=0) for each in "xyz"]
    sums = [about(each, last_done=date(2026, 3, 8)) for each in "axyz"]
    choices = [about(each, name=f"choice {each}", numberless=True) for each in "xyz"]
    turns = plan_sitting([due("a"), *others], [*sums, *choices], RULES)
    assert [turn.question_id for turn in turns] == ["a", "x", "y", "z", "a"]


def test_a_first_meeting_fills_a_gap_before_what_is_cured() -> None:
    """It was asked as often as it lacked; once more does no harm, and a lapse would."""
    cured = [due(each, wanted=0, is_cured=True) for each in "xyz"]
    turns = plan_sitting([due("a"), new("n", 1), *cured], [about(e) for e in "anxyz"], RULES)
    assert skills_of(turns) == ["a", "n", "n", "n", "a"]


def test_one_question_serves_each_skill_that_it_asks() -> None:
    """A chain on two due skills is a try for both."""
    turns = plan_sitting([due("a", 1), due("b", 1)], [about("a", "b")], RULES)
    assert len(turns) == 1


def test_a_sitting_has_twelve_questions_at_most() -> None:
    """What is left comes another day, and more urgently."""
    skills = [due(f"s{number:02}", day=number) for number in range(20)]
    turns = plan_sitting(skills, [about(each.skill) for each in skills], RULES)
    assert skills_of(turns) == [f"s{number:02}" for number in range(12)]
    assert len(plan_sitting(skills, [about(each.skill) for each in skills], RULES, most=15)) == 15


@pytest.mark.parametrize("nothing", [([], [about("a")]), ([due("a")], []), ([due("a", 0)], [])])
def test_where_nothing_is_wanted_or_asked_there_is_no_sitting(
    nothing: tuple[list[Candidate], list[Askable]],
) -> None:
    """Neither skills, nor questions, nor a try that would count."""
    assert plan_sitting(*nothing, RULES) == ()


_SKILLS = [f"s{number}" for number in range(8)]
_candidates = st.lists(
    st.builds(
        Candidate,
        st.sampled_from(_SKILLS),
        st.integers(0, 3),
        st.tuples(st.booleans(), st.integers(1, 9), st.floats(0, 1)),
        st.floats(0, 1),
        st.booleans(),
        st.booleans(),
        st.booleans(),
        st.frozensets(st.sampled_from(_SKILLS), max_size=2),
    ),
    max_size=8,
    unique_by=lambda each: each.skill,
)
_askables = st.lists(
    st.builds(
        Askable,
        st.uuids().map(str),
        st.frozensets(st.sampled_from(_SKILLS), min_size=1, max_size=3),
        st.sampled_from(["fall", "mass", "area", "dose"]),
        st.booleans(),
        st.none() | st.dates(date(2026, 1, 1), date(2026, 3, 9)),
    ),
    max_size=14,
)


@settings(max_examples=400, deadline=None)
@given(_candidates, _askables)
def test_whatever_there_is_the_rules_hold(
    candidates: list[Candidate], askables: list[Askable]
) -> None:
    """Twelve at most, apart enough, no neighbours alike, nothing unasked, nothing trailing."""
    turns = plan_sitting(candidates, askables, RULES)
    by_id = {each.question_id: each for each in askables}
    by_skill = {each.skill: each for each in candidates}
    late = {each.skill for each in candidates if not each.first_meeting}
    assert len(turns) <= RULES.sitting_questions
    asked = [by_id[turn.question_id] for turn in turns]
    for place, (turn, question) in enumerate(zip(turns, asked, strict=True)):
        assert turn.skill in question.skills
        assert by_skill[turn.skill].takes_numberless or not question.numberless
        for before in asked[max(0, place - RULES.returns_after) : place]:
            assert not before.skills & question.skills & late
        if place and asked[place - 1].method == question.method:
            assert {turns[place - 1].skill, turn.skill}.isdisjoint(late)
    if turns:
        assert any(by_skill[skill].wanted for skill in asked[-1].skills & by_skill.keys())


def may_follow(before: Sequence[tuple[Askable, Candidate]], asked: Askable, of: Candidate) -> bool:
    """Whether the rules let a question come next for a skill, whatever is wanted."""
    earlier = [each for each, _ in before]
    if asked.numberless:
        had = any(each.numberless and of.skill in each.skills for each in earlier)
        if had or not of.takes_numberless:
            return False
    if before and asked.method == earlier[-1].method:
        return of.first_meeting and before[-1][1].first_meeting
    return True


@settings(max_examples=400, deadline=None)
@given(_candidates, _askables)
def test_nothing_wanted_waits_while_a_gap_is_filled(
    candidates: list[Candidate], askables: list[Askable]
) -> None:
    """Where a question only fills a gap, none on a wanted skill could have stood there."""
    by_id = {each.question_id: each for each in askables}
    by_skill = {each.skill: each for each in candidates}
    left = {each.skill: each.wanted for each in candidates}
    late = {each.skill for each in candidates if not each.first_meeting}
    before: list[tuple[Askable, Candidate]] = []
    for turn in plan_sitting(candidates, askables, RULES):
        question = by_id[turn.question_id]
        if not any(left.get(skill) for skill in question.skills):
            lately = [each.skills for each, _ in before[-RULES.returns_after :]]
            apart = late & frozenset().union(*lately)
            assert not any(
                may_follow(before, each, by_skill[skill])
                for each in askables
                if not each.skills & apart
                for skill in each.skills & left.keys()
                if left[skill]
            )
        for skill in question.skills & left.keys():
            left[skill] = max(0, left[skill] - 1)
        before.append((question, by_skill[turn.skill]))


@settings(max_examples=50, deadline=None)
@given(_candidates, _askables, st.randoms())
def test_the_same_things_make_the_same_sitting(
    candidates: list[Candidate], askables: list[Askable], chance: object
) -> None:
    """In whatever order they are handed in."""
    turns = plan_sitting(candidates, askables, RULES)
    chance.shuffle(candidates)  # type: ignore[attr-defined]
    chance.shuffle(askables)  # type: ignore[attr-defined]
    assert plan_sitting(candidates, askables, RULES) == turns
