"""Season refresher: the office sets the start, and each person gets three sittings round it."""

import pytest
from web_begun import gelled
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR, RUTH, SAM
from web_kinds import answer_right
from web_page import Page
from web_season import begin, card, in_days, sat, set_start, states, wintered


def test_before_a_start_is_set_nothing_stands_here(bench: Bench) -> None:
    """Each is told who sets it."""
    assert "The office sets it" in bench.visit(NOOR).open("/season").words
    assert "Set it below." in bench.visit(KIT).open("/season").words


def test_the_office_sets_the_start(bench: Bench) -> None:
    """Everybody's sittings go by it."""
    kit = bench.visit(KIT)
    told = kit.go_on(set_start(kit, in_days(bench, 60)))
    assert "The season starts on 8 May 2026." in told.notes
    page = bench.visit(NOOR).open("/season")
    assert [each.words for each in page.main.all(class_="row-title")] == [
        "From 10 April",
        "From 28 April",
        "From 25 May",
    ]
    assert states(page) == ["to come"] * 3


def test_a_day_may_be_written_in_words(bench: Bench) -> None:
    """As people write it."""
    kit = bench.visit(KIT)
    assert "The season starts on 8 May 2026." in kit.go_on(set_start(kit, " 8  may 2026")).notes


def test_the_start_is_moved(bench: Bench) -> None:
    """It says that what was sat stays."""
    kit = bench.visit(KIT)
    set_start(kit, in_days(bench, 60))
    told = kit.go_on(set_start(kit, in_days(bench, 74)))
    assert "The season's start is moved to 22 May 2026." in told.notes
    assert "now open on 24 April 2026, 12 May 2026 and 8 June 2026." in told.notes
    assert "Those that were sat stay as they are." in told.notes
    assert "as before. Nothing is moved." in kit.go_on(set_start(kit, in_days(bench, 74))).notes


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("2026-03-08", "That day has passed."),
        ("2025-03-09", "That day has passed."),
        ("2031-03-01", "That is in 2031: look at the year."),
        ("9999-12-31", "That is in 9999: look at the year."),
        ("0001-01-01", "That day has passed."),
        ("", "Write the day like 1 March 2027 or 2027-03-01."),
        ("in spring", "Write the day like 1 March 2027 or 2027-03-01."),
        ("3/1/2027", "Write the day like 1 March 2027 or 2027-03-01."),
        ("2026-02-30", "Write the day like 1 March 2027 or 2027-03-01."),
    ],
)
def test_a_day_that_can_t_be_one_is_said_so(bench: Bench, typed: str, sentence: str) -> None:
    """422, a sentence by the field, and what was typed kept."""
    page = set_start(bench.visit(KIT), typed)
    assert page.status == 422
    assert page.error_of("starts").startswith(sentence)
    assert page.form_to("/season").fields["starts"] == typed
    assert "No start of the season is set yet" in bench.visit(NOOR).open("/season").words


@pytest.mark.parametrize("who", [NOOR, BERTIL])
def test_nobody_else_sets_it(bench: Bench, who: object) -> None:
    """They see no form, and a forged one is refused."""
    visitor = bench.visit(who)  # type: ignore[arg-type]
    page = visitor.open("/season")
    assert not page.main.all("form", action="/season")
    token = page.sign_out_form.fields["csrf_token"]
    sent = {"csrf_token": token, "starts": in_days(bench, 60)}
    assert visitor.post("/season", sent).status == 403


def test_a_form_without_its_key_comes_back_whole(bench: Bench) -> None:
    """With the day that was typed."""
    page = bench.visit(KIT).post("/season", {"starts": "2026-05-08"})
    assert page.status == 400
    assert page.form_to("/season").fields["starts"] == "2026-05-08"


def test_what_has_faded_is_asked_before_the_season(bench: Bench) -> None:
    """Four skills, each once; it opens with a question and not with reading."""
    noor = wintered(bench)
    page = noor.open("/season")
    assert card(page).startswith("Sitting 1 of 3 is open 4 questions")
    assert len(page.main.all("li", class_="skill")) == 4
    assert states(page) == ["open now", "to come", "to come"]
    assert begin(noor).main.all(class_="ask")


def test_it_is_the_first_thing_on_today(bench: Bench) -> None:
    """Before practice and before the next lesson."""
    page = wintered(bench).open("/")
    assert card(page).startswith("First thing to do Season refresher Sitting 1 of 3 is open")


def test_a_turn_says_where_it_belongs(bench: Bench) -> None:
    """The way back leads to the refresher."""
    back = begin(wintered(bench)).main.all(class_="back")[0].all("a")[0]
    assert back["href"] == "/season"
    assert back.words == "Season refresher, question 1 of 4"


def test_a_sitting_is_sat_and_what_changed_is_told(bench: Bench) -> None:
    """Then it is done, and all that was learnt holds."""
    noor = wintered(bench)
    assert sat(bench, noor).heading == "What changed"
    page = noor.open("/season")
    assert states(page) == ["done", "to come", "to come"]
    assert "You are ready" in page.words


def test_a_sitting_is_gone_on_with(bench: Bench) -> None:
    """On another day, and from another phone."""
    noor = wintered(bench)
    answer_right(bench, noor, begin(noor))
    bench.clock.wait(days=3)
    later = bench.visit(NOOR)
    page = later.open("/season")
    assert card(page).startswith("Sitting 1 of 3 is open 3 questions left")
    assert "question 2 of 4" in begin(later).words


def test_a_missed_sitting_goes_into_the_next(bench: Bench) -> None:
    """Ten days before the start the second is open, and the first is said to be missed."""
    wintered(bench, starts_in=27)
    bench.clock.wait(days=18)
    page = bench.visit(NOOR).open("/season")
    assert states(page) == ["missed: the next one takes it in", "open now", "to come"]
    assert card(page).startswith("Sitting 2 of 3 is open 4 questions")


def test_long_before_the_start_nothing_is_open(bench: Bench) -> None:
    """The list is told all the same; pressing by an old form leads back."""
    noor = wintered(bench, starts_in=60)
    page = noor.open("/season")
    assert not page.main.all(class_="first")
    assert len(page.main.all("li", class_="skill")) == 4
    token = page.sign_out_form.fields["csrf_token"]
    assert noor.post("/season/begin", {"csrf_token": token}).leads_to == "/season"


def test_who_has_learnt_nothing_yet_has_lessons_to_do(bench: Bench) -> None:
    """And no sitting."""
    wintered(bench)
    page = bench.reader(SAM).open("/season")
    assert "There is nothing to refresh yet" in page.words
    assert states(page)[0] == "nothing to ask you"
    assert not page.main.all(class_="first")


def test_who_holds_all_is_ready(bench: Bench) -> None:
    """Nothing is asked of them."""
    gelled(bench)
    set_start(bench.visit(KIT), in_days(bench, 1))
    assert "You are ready" in bench.visit(NOOR).open("/season").words


def test_no_figure_of_recall_is_shown(bench: Bench) -> None:
    """To anybody."""
    wintered(bench)
    for who in (NOOR, BERTIL, KIT):
        visitor = bench.visit(who)
        for path in ("/season", *(["/season/crew", "/season/compare"] if who != NOOR else [])):
            words = visitor.open(path).words
            assert "%" not in words
            assert "0." not in words


# The crew.


def crew(bench: Bench, who: object = BERTIL) -> Page:
    """The crew's page."""
    return bench.visit(who).open("/season/crew")  # type: ignore[arg-type]


def test_a_supervisor_sees_who_is_ready(bench: Bench) -> None:
    """Noor has faded, Sam has learnt nothing; others' crews aren't there."""
    wintered(bench)
    page = crew(bench)
    assert "0 of 2 people are ready." in page.words
    rows = {row.all("th")[0].words: row.words for row in page.main.all("tr") if row.all("th")}
    assert "not ready" in rows["Noor"]
    assert "nothing learnt yet" in rows["Sam"]
    assert "Birch" not in page.words


def test_after_her_sitting_she_is_ready(bench: Bench) -> None:
    """The picture moves: what held as it began, and what holds now."""
    noor = wintered(bench)
    sat(bench, noor)
    page = crew(bench)
    assert "1 of 2 people are ready." in page.words
    assert "As sitting 1 began: 0 of 4 held, among 1 person." in page.words
    assert "Now, those who sat: 4 of 4 held, among 1 person." in page.words


def test_the_whole_crew_s_weakness_is_named(bench: Bench) -> None:
    """Where more than half of those who had it have lost it."""
    gelled(bench, SAM)
    wintered(bench)
    page = crew(bench)
    assert "The whole crew is weak in 4 skills, named below." in page.words
    assert page.words.count("fading or gone for 2 of 2.") == 4


def test_the_picture_has_a_cell_for_each_person_and_skill(bench: Bench) -> None:
    """In four bands, each with a shape of its own; the same is told in a table."""
    wintered(bench)
    (grid,) = [each for each in crew(bench).main.all("svg", role="img") if "grid" in each["class"]]
    cells = [each["class"].split()[1] for each in grid.all("g", class_="cell")]
    skills = len(bench.library.competencies.skills)
    assert len(cells) == 2 * skills
    assert cells.count("cell-not-learnt-yet") == 2 * skills - 4
    assert cells.count("cell-gone") + cells.count("cell-fading") == 4


def test_the_office_sees_every_crew(bench: Bench) -> None:
    """One after the other."""
    page = crew(bench, KIT)
    assert [each.words for each in page.main.all("h2")] == ["Alder", "Birch"]


def test_a_crew_without_a_start_is_seen_as_it_stands_today(bench: Bench) -> None:
    """The page says so."""
    gelled(bench)
    page = crew(bench)
    assert "No start of the season is set yet" in page.words
    assert "1 of 2 people are ready." in page.words


# Predicted and right.


def test_before_the_start_nothing_is_compared(bench: Bench) -> None:
    """It says when."""
    noor = wintered(bench)
    sat(bench, noor)
    assert "The season starts on" in bench.visit(KIT).open("/season/compare").words


def test_after_the_start_predicted_and_right_stand_side_by_side(bench: Bench) -> None:
    """Four answers say nothing yet."""
    noor = wintered(bench)
    sat(bench, noor)
    bench.clock.wait(days=30)
    page = bench.visit(KIT).open("/season/compare")
    assert "These are 4 answers. From 200 on they say something" in page.words
    right = [int(row.all("td")[-1].words) for row in page.main.all("tbody")[0].all("tr")]
    assert sum(right) == 4


def test_a_supervisor_compares_their_own_crew(bench: Bench) -> None:
    """Ruth's has answered nothing."""
    noor = wintered(bench)
    sat(bench, noor)
    bench.clock.wait(days=30)
    assert "These are 4 answers." in bench.visit(BERTIL).open("/season/compare").words
    assert "Nobody has answered" in bench.visit(RUTH).open("/season/compare").words
