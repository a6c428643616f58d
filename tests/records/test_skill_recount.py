"""Counting the skills again from the tries gives what was kept up to date, wiped tries or not."""

import random
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from records_cast import ANSWER, NOW, RULES, TRY, People, record
from skills_cast import CURED, tries, went
from sqlalchemy import delete, insert, select, update

from trainer.records.attempts import Answer, Attempt, AttemptFacts
from trainer.records.database import AnySession, table_of, writing
from trainer.records.recount import rebuild
from trainer.records.skill_recount import keep_from_here, rebuild_skills
from trainer.records.skill_table import SkillProgress, SkillStart, kept_in, row_of
from trainer.records.skills import skills_of
from trainer.records.tallies import LessonProgress, QuestionProgress

SKILLS = ("a", "b", "c", "d", "e", "f")


def drawn(luck: random.Random, person_id: int, number: int) -> Iterator[AttemptFacts]:
    """Yield so many tries of one person: retries, roofs, several skills, phones that send late."""
    day = 0
    for count in range(number):
        day += luck.choice([0, 0, 0, 1, 1, 2, 4, 7, 60])
        lines = luck.choices(SKILLS[: luck.choice([2, 6])], k=luck.choice([1, 1, 2, 6]))
        good = luck.choice([0.6, 0.95])
        answers = tuple(
            replace(
                ANSWER,
                skill=skill,
                verdict="wrong" if luck.random() > good else luck.choice(["right", "carried"]),
            )
            for skill in lines
        )
        right = all(each.verdict == "right" for each in answers)
        late = luck.choice([0, 0, 0, 0, 1, 5, 7, 8, 40]) if luck.random() < 0.2 else 0
        first = replace(
            TRY,
            person_id=person_id,
            kind=luck.choice(["calculate", "calculate", "choose", "locate"]),
            question_id=luck.choice(["q1", "q2", "q3"]),
            lesson=luck.choice(["mixing", "topcoat"]),
            roof=luck.choice(["", "", "", "", "ab12"]),
            count=count,
            sent_at=NOW + timedelta(days=day),
            local_date=date(2026, 3, 9) + timedelta(days=day - late),
            unaided=luck.random() < 0.85,
            right=right,
            finished=right,
            answers=answers,
        )
        yield first
        if not right and luck.random() < 0.5:
            yield replace(first, try_no=2, finished=True, right=luck.random() < 0.5)


def together(session: AnySession, people: People, seed: int, number: int = 16) -> None:
    """Have Mina and Tom answer in turn, as requests would come in."""
    luck = random.Random(seed)  # noqa: S311 - no secret
    both = [drawn(luck, person, number) for person in (people.mina, people.tom)]
    while both:
        whose = luck.choice(both)
        facts = next(whose, None)
        if facts is None:
            both.remove(whose)
        else:
            record(session, facts)


def table(session: AnySession, model: type[Any]) -> list[tuple[Any, ...]]:
    """Return a table, whole, in the order of its key."""
    whole = table_of(model)
    query = select(whole).order_by(*whole.primary_key.columns)
    return [tuple(row) for row in session.execute(query)]


def kept(session: AnySession) -> list[list[tuple[Any, ...]]]:
    """Return all that is counted from the tries."""
    return [table(session, each) for each in (SkillProgress, QuestionProgress, LessonProgress)]


def wipe(session: AnySession, person_id: int, up_to: int) -> None:
    """Keep what those tries came to, and delete them."""
    keep_from_here(session, RULES, person_id, up_to)
    gone = select(Attempt.id).where(Attempt.person_id == person_id, Attempt.id <= up_to)
    session.execute(delete(Answer).where(Answer.attempt_id.in_(gone)))
    session.execute(delete(Attempt).where(Attempt.id.in_(gone)))


@contextmanager
def undone(session: AnySession) -> Iterator[None]:
    """A write that leaves nothing behind."""
    writing(session)
    yield
    session.rollback()


# Nothing wiped.


def test_hundreds_of_histories_counted_again_change_nothing(
    session: AnySession, people: People
) -> None:
    """Two people's skills and totals, kept up to date try by try, are what the tries say."""
    for seed in range(150):
        with undone(session):
            together(session, people, seed)
            running = kept(session)
            rebuild_skills(session, RULES)
            rebuild(session)
            assert kept(session) == running, seed


def test_a_history_counted_again_on_either_database(
    any_session: AnySession, any_people: People
) -> None:
    """A long one, to the last bit of every card."""
    writing(any_session)
    together(any_session, any_people, seed=1, number=120)
    running = kept(any_session)
    assert len(running[0]) == 2 * len(SKILLS)
    rebuild_skills(any_session, RULES)
    rebuild(any_session)
    assert kept(any_session) == running


def test_lost_spoilt_and_stray_rows_are_put_right(
    any_session: AnySession, any_people: People
) -> None:
    """What was missing is there, what was wrong is right, what no try tells is gone."""
    writing(any_session)
    together(any_session, any_people, seed=2)
    running = kept(any_session)
    skills = table_of(SkillProgress)
    any_session.execute(delete(skills).where(skills.c.skill == "a"))
    any_session.execute(update(skills).values(counted=99, reached="cured", stability=1.5))
    any_session.execute(insert(skills), [row_of(any_people.karel, "a", went(*CURED))])
    rebuild_skills(any_session, RULES)
    assert kept(any_session) == running


def test_one_persons_can_be_counted_alone(any_session: AnySession, any_people: People) -> None:
    """Mina's are put right; Tom's spoilt ones stay spoilt."""
    writing(any_session)
    together(any_session, any_people, seed=3)
    skills = table_of(SkillProgress)
    any_session.execute(update(skills).values(counted=99))
    rebuild_skills(any_session, RULES, any_people.mina)
    query = select(skills.c.person_id).where(skills.c.counted == 99).distinct()
    assert any_session.scalars(query).all() == [any_people.tom]


def test_other_rules_judge_the_same_tries_anew(session: AnySession, people: People) -> None:
    """Whoever changes a threshold counts again: two rights gel it now."""
    writing(session)
    for count in range(2):
        record(session, replace(TRY, person_id=people.mina, count=count))
    rebuild_skills(session, replace(RULES, gelled_after=2))
    (row,) = kept_in(session, SkillProgress)
    assert row[1].reached == "gelled"


def test_without_tries_nothing_is_kept(any_session: AnySession, any_people: People) -> None:
    """Counting nothing is no fault."""
    writing(any_session)
    rebuild_skills(any_session, RULES)
    rebuild_skills(any_session, RULES, any_people.mina)
    assert kept(any_session) == [[], [], []]


# Wiped.


def ids(session: AnySession, person_id: int) -> list[int]:
    """Return the keys of a person's tries, in order."""
    query = select(Attempt.id).where(Attempt.person_id == person_id).order_by(Attempt.id)
    return list(session.scalars(query))


@pytest.mark.parametrize("share", [0.0, 0.3, 0.7, 1.0])
def test_tries_that_were_wiped_are_remembered(
    session: AnySession, people: People, share: float
) -> None:
    """Some, most or all of Mina's are gone, and a count from what is left says the same."""
    for seed in range(15):
        with undone(session):
            together(session, people, seed)
            running, hers = table(session, SkillProgress), ids(session, people.mina)
            wipe(session, people.mina, hers[round(share * (len(hers) - 1))])
            rebuild_skills(session, RULES)
            assert table(session, SkillProgress) == running, seed


def test_wiping_again_goes_on_from_there(any_session: AnySession, any_people: People) -> None:
    """Year after year: three times wiped, and answered in between, as never wiped."""
    mina = any_people.mina
    writing(any_session)
    luck = random.Random(4)  # noqa: S311 - no secret
    for number, facts in enumerate(drawn(luck, mina, 80)):
        record(any_session, facts)
        if number % 25 == 24:
            wipe(any_session, mina, ids(any_session, mina)[-10])
    running = table(any_session, SkillProgress)
    rebuild_skills(any_session, RULES, mina)
    assert table(any_session, SkillProgress) == running
    luck = random.Random(4)  # noqa: S311 - no secret
    any_session.rollback()
    writing(any_session)
    for facts in drawn(luck, mina, 80):
        record(any_session, facts)
    assert table(any_session, SkillProgress) == running


def test_wiping_hers_leaves_his(any_session: AnySession, any_people: People) -> None:
    """Tom's tries and skills stay, and nothing of his is kept aside."""
    writing(any_session)
    together(any_session, any_people, seed=5)
    his, running = ids(any_session, any_people.tom), table(any_session, SkillProgress)
    wipe(any_session, any_people.mina, max(ids(any_session, any_people.mina)))
    rebuild_skills(any_session, RULES)
    assert ids(any_session, any_people.tom) == his
    assert {person for (person, _), _ in kept_in(any_session, SkillStart)} == {any_people.mina}
    assert table(any_session, SkillProgress) == running


def test_keeping_twice_what_is_gone_changes_nothing(session: AnySession, people: People) -> None:
    """The tries are gone, so they are told once."""
    writing(session)
    together(session, people, seed=6)
    last = max(ids(session, people.mina))
    wipe(session, people.mina, last)
    aside = table(session, SkillStart)
    wipe(session, people.mina, last)
    assert table(session, SkillStart) == aside


def test_what_is_kept_aside_is_what_they_came_to(session: AnySession, people: People) -> None:
    """Up to the last one that goes, and no further."""
    writing(session)
    told = [each for day in CURED for each in tries(*day)]
    for count, each in enumerate(told):
        facts = replace(TRY, person_id=people.mina, count=count, local_date=each.day)
        record(session, replace(facts, sent_at=NOW + timedelta(days=20)))
    wipe(session, people.mina, ids(session, people.mina)[2])
    ((whose, progress),) = kept_in(session, SkillStart, people.mina)
    assert whose == (people.mina, "catalyst-by-mass")
    assert progress == went((0, "rrr"))
    now = skills_of(session, [people.mina], ["catalyst-by-mass"])
    assert now[people.mina]["catalyst-by-mass"] == went(*CURED)
