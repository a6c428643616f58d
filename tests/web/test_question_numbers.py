"""Which numbers somebody is asked a question on."""

from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR
from web_content import DRUM, FIRST, right_grams


def test_a_reload_shows_the_same_numbers(tiny: Bench) -> None:
    """Nobody picks their numbers by loading the page until they suit."""
    noor = tiny.reader(NOOR)
    assert len({noor.open(DRUM).question for _ in range(5)}) == 1
    assert tiny.visit(NOOR).open(DRUM).question == noor.open(DRUM).question


def test_after_finishing_there_are_other_numbers(tiny: Bench) -> None:
    """Each run of the drum's forty sets is asked on one that she hasn't had."""
    noor = tiny.reader(NOOR)
    put = []
    for _ in range(12):
        page = noor.open(DRUM)
        put.append(page.question)
        noor.answer(page, "1")
    assert len(set(put)) == 12


def test_two_people_have_numbers_of_their_own(tiny: Bench) -> None:
    """Copying from the neighbour doesn't help: of twenty questions most differ."""
    drums = [tiny.reader(who).open(DRUM).question for who in (NOOR, BERTIL, KIT)]
    assert len(set(drums)) > 1


def test_numbers_do_not_come_again_within_ninety_days(tiny: Bench) -> None:
    """There are three sets: three runs have all of them, each once."""
    noor = tiny.visit(NOOR)
    put = []
    for _ in range(3):
        page = noor.open(FIRST)
        put.append(page.question)
        noor.answer(page, right_grams(page))
        tiny.clock.wait(days=1)
    assert len(set(put)) == 3


def test_when_all_were_seen_the_oldest_comes_again(tiny: Bench) -> None:
    """The fourth run has the first one's numbers, and as its working was seen it isn't unaided."""
    noor = tiny.visit(NOOR)
    put = []
    for _ in range(5):
        page = noor.alone(FIRST)
        put.append(page.question)
        noor.answer(page, right_grams(page))
        tiny.clock.wait(days=1)
    assert put[3:] == put[:2]
    seen = [tiny.stored(NOOR, "first-dose", count) for count in range(4)]
    assert [each.working_shown for each in seen] == [False, False, False, True]
    assert [each.unaided for each in seen] == [True, True, True, False]


def test_after_ninety_days_numbers_are_fresh_again(tiny: Bench) -> None:
    """What was seen in the spring doesn't make a try in the summer an aided one."""
    noor = tiny.visit(NOOR)
    for _ in range(3):
        noor.answer("first-dose", "1")
    tiny.clock.wait(days=91)
    tiny.visit(NOOR).answer("first-dose", "1")
    assert tiny.stored(NOOR, "first-dose", 3).unaided
