"""A sitting of the refresher on its way: left, closed, over, and who is ready after it."""

import pytest
from web_bench import Bench, id_of
from web_cast import BERTIL, KIT, NOOR, NOW, PASSWORD, Who
from web_kinds import answer_right
from web_page import Page
from web_season import begin, in_days, sat, set_start, states, wintered

from trainer.records import crews, people, sittings, writing
from trainer.records.database import AnySession
from trainer.records.sitting_rows import REFRESHER, SittingRow, TurnFacts


def end_of(turn: Page) -> str:
    """The address of the end of the sitting that a turn is of."""
    return f"{turn.path.rpartition('/')[0]}/end"


def add_person(session: AnySession, name: str, crew_id: int | None) -> None:
    """Put another trainee into the records."""
    people.add_person(
        session,
        name=name,
        sign_in_name=name,
        password=PASSWORD,
        roles=["trainee"],
        now=NOW,
        crew_id=crew_id,
    )


def last_refresher(bench: Bench) -> SittingRow:
    """What is kept of Noor's latest sitting."""
    with bench.records() as session:
        kept = sittings.last_sitting(session, id_of(session, NOOR), REFRESHER)
    assert kept is not None
    return kept


def test_a_sitting_that_is_left_cannot_be_ended_by_a_press(bench: Bench) -> None:
    """It is gone on with until it closes: three questions unanswered aren't a sitting done."""
    noor = wintered(bench)
    turn = begin(noor)
    answer_right(bench, noor, turn)
    page = noor.open(end_of(turn))
    assert "You can go on now, or on any day until it closes." in page.words
    assert "Stop here for today" not in page.words
    token = page.sign_out_form.fields["csrf_token"]
    assert noor.post(end_of(turn), {"csrf_token": token}).status == 404
    assert states(noor.open("/season"))[0] == "begun"


def test_no_minutes_end_a_refresher(bench: Bench) -> None:
    """A winter's worth takes longer than a day's practice."""
    noor = wintered(bench)
    turn = begin(noor)
    for _ in range(3):
        bench.clock.wait(minutes=4)
        mark = answer_right(bench, noor, turn)
        turn = noor.open(mark.main.all("a", class_="primary")[0]["href"])
    assert "question 4 of 4" in turn.words
    assert "That is enough for a day" not in noor.open(end_of(turn)).words


def test_a_sitting_that_has_closed_leads_to_the_next(bench: Bench) -> None:
    """Its turns aren't asked beside those of the second, which takes in what was left."""
    noor = wintered(bench, starts_in=27)
    turn = begin(noor)
    answer_right(bench, noor, turn)
    bench.clock.wait(days=18)
    noor = bench.visit(NOOR)
    assert states(noor.open("/season")) == ["left before its end", "open now", "to come"]
    second = f"{turn.path.rpartition('/')[0]}/2"
    assert noor.open(second).leads_to == "/season"
    assert "Sitting 1 has closed." in noor.open(end_of(turn)).notes


def test_its_end_says_when_the_next_one_opens(bench: Bench) -> None:
    """Ten days before the start."""
    page = sat(bench, wintered(bench))
    assert "The next sitting of the refresher opens 17 July." in page.words


def test_when_all_are_over_the_page_says_so(bench: Bench) -> None:
    """The last one that was missed goes to Practice, since there is no next."""
    wintered(bench)
    bench.clock.wait(days=20 + 17 + 29)
    page = bench.visit(NOOR).open("/season")
    assert states(page)[-1] == "missed: Practice takes it in"
    assert "The refresher of this season is over." in page.words
    assert not page.main.all(class_="first")


def test_a_day_that_is_near_is_told_by_its_date(bench: Bench) -> None:
    """Nothing starts "on tomorrow"."""
    kit = bench.visit(KIT)
    assert "starts on 10 March 2026." in kit.go_on(set_start(kit, in_days(bench, 1))).notes
    bench.clock.wait(days=1)
    for who, path in ((NOOR, "/season"), (BERTIL, "/season/crew")):
        words = bench.visit(who).open(path).words
        assert "on 10 March 2026" in words
        assert "on today" not in words


def test_what_was_typed_is_seen_again(bench: Bench) -> None:
    """A browser's field for days would show nothing of it."""
    kit = bench.visit(KIT)
    field = set_start(kit, "in spring").main.all("input", name="starts")[0]
    assert (field["type"], field["value"]) == ("text", "in spring")
    assert kit.open("/season").main.all("input", name="starts")[0]["type"] == "date"


def test_rain_may_put_a_start_off_that_has_passed(bench: Bench) -> None:
    """It stays the same season: what was sat stays sat."""
    noor = wintered(bench)
    sat(bench, noor)
    bench.clock.wait(days=22)
    kit = bench.visit(KIT)
    told = kit.go_on(set_start(kit, in_days(bench, 7)))
    assert "The season's start is moved to" in told.notes
    assert states(bench.visit(NOOR).open("/season"))[0] == "done"


def test_the_list_says_why(bench: Bench) -> None:
    """By competency, what is likely to be lost, and what hurts somebody; no figure."""
    page = wintered(bench).open("/season")
    assert "a lapse here hurts somebody, so it comes first" in page.words
    rows = [each.words for each in page.main.all("li", class_="skill")]
    assert all("Left alone, it is likely to " in each and "by then." in each for each in rows)


@pytest.mark.parametrize("right", [True, False])
def test_who_has_sat_all_so_far_and_holds_it_is_ready(bench: Bench, *, right: bool) -> None:
    """By the start some may fade again, for the next sitting; who was wrong isn't ready."""
    noor = wintered(bench, starts_in=27)
    turn = begin(noor)
    while not turn.path.endswith("/end"):
        mark = answer_right(bench, noor, turn) if right else noor.answer(turn, *_wrong(turn))
        turn = noor.open(mark.main.all("a", class_="primary")[0]["href"])
    told = "1 of 2 people are ready." if right else "0 of 2 people are ready."
    assert told in bench.visit(BERTIL).open("/season/crew").words
    assert ("You are ready" in noor.open("/season").words) == right


def _wrong(turn: Page) -> list[str]:
    fields = [
        name for name in turn.form.fields if name.startswith("answer_") and "unit" not in name
    ]
    return ["0.0001"] * len(fields)


def test_each_turn_keeps_what_was_predicted_of_its_skill(bench: Bench) -> None:
    """As likely as it is on the day on which the sitting begins: less than at the bar."""
    begin(wintered(bench))
    told = [each.facts.predicted for each in last_refresher(bench).turns]
    assert len(told) == 4
    assert all(each is not None and 0 < each < 0.9 for each in told)


def test_a_college_s_crews_come_some_at_a_time(bench: Bench) -> None:
    """Five on a page, with links to the others, and those in no crew at the end."""
    with bench.records() as session:
        writing(session)
        for number in range(5):
            crew = crews.add_crew(session, f"Crew {number}").crew_id
            add_person(session, f"New {number}", crew)
        add_person(session, "Odd One", None)
        session.commit()
    kit = bench.visit(KIT)
    page = kit.open("/season/crew")
    assert [each.words for each in page.main.all("h2")] == [
        *("Alder", "Birch", "Crew 0", "Crew 1", "Crew 2")
    ]
    links = page.main.all("nav")[0].all("a")
    assert [each.words for each in links] == ["Alder to Crew 2", "Crew 3 to In no crew"]
    second = kit.open(links[1]["href"])
    assert [each.words for each in second.main.all("h2")] == ["Crew 3", "Crew 4", "In no crew"]
    assert "Odd One" in second.words
    assert kit.open("/season/crew?page=3").status == 404
    assert kit.open("/season/crew?page=0").status == 404
    assert bench.visit(BERTIL).open("/season/crew?page=2").status == 404


def test_the_table_tells_what_the_picture_shows(bench: Bench) -> None:
    """What is gone, what is fading, how many hold and how many are lessons to do."""
    wintered(bench)
    page = bench.visit(BERTIL).open("/season/crew")
    heads = [each.words for each in page.main.all("thead")[0].all("th")]
    assert heads[2:] == ["Gone", "Fading", "Skills that hold", "Not learnt yet"]
    row = next(each for each in page.main.all("tr") if each.words.startswith("Noor"))
    gone, fading, hold, to_learn = (each.words for each in row.all("td")[1:])
    assert sum(len(each.split("; ")) for each in (gone, fading) if each != "nothing") == 4
    assert (hold, to_learn) == ("0", str(len(bench.library.competencies.skills) - 4))


def test_the_comparison_is_drawn_and_told(bench: Bench) -> None:
    """A ring and a square for each tenth that has answers, and a row of the table for each."""
    sat(bench, wintered(bench))
    bench.clock.wait(days=30)
    page = bench.visit(KIT).open("/season/compare")
    (picture,) = page.main.all("svg", role="img")
    rows = page.main.all("tbody")[0].all("tr")
    assert len(picture.all("circle")) == len(picture.all("path", class_="held")) == len(rows)
    assert "It is too early to tell." in page.words


@pytest.mark.parametrize(
    ("who", "mend"), [(KIT, "raises 'recall_wanted'"), (BERTIL, "Tell the office.")]
)
def test_predictions_that_are_off_are_said_to_the_office(bench: Bench, who: Who, mend: str) -> None:
    """From two hundred answers on, with what to do about it; a supervisor passes it on."""
    wintered(bench)
    bench.clock.wait(days=30)
    with bench.records() as session:
        writing(session)
        turns = [TurnFacts("q", "fall", "Cured", 0.9)] * 200
        sitting = sittings.begin_sitting(
            session,
            id_of(session, NOOR),
            turns,
            bench.clock.now,
            bench.clock.now.date(),
            kind=REFRESHER,
            season_id=1,
            number=3,
        )
        for position in range(1, 201):
            sittings.note_answer(
                session,
                sitting,
                position,
                count=0,
                right=position > 100,
                unaided=True,
                now=bench.clock.now,
            )
        session.commit()
    words = bench.visit(who).open("/season/compare").words
    assert "Fewer were right than predicted." in words
    assert mend in words
