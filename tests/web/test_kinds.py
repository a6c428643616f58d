"""Decisions, orders and places on their pages: asked, changed, marked and kept like any other."""

from pathlib import Path

import pytest
from web_bench import Bench
from web_cast import NOOR
from web_content import BARE_CHAIN, DOSE_CHAIN, MIXING, write_content
from web_kinds import LEAK, STEPS, STRINGS, right_fields, wrong_fields
from web_page import Page
from web_visitor import Visitor

from trainer.lessons import Drawn
from trainer.records import db
from trainer.records.skills import stage_of
from trainer.web.kinds.order import UNREAD
from trainer.web.kinds.picked import PICK_ONE
from trainer.web.turn import PICK_ANEW

#: What comes of each, the right one first.
COMES = {
    STRINGS: {
        "Stop.": "The roof gets none that is too late.",
        "Roll on.": "It never bonds.",
        "Stir in fresh resin.": "It gels all the same.",
        "Put the lid on.": "It smokes under the lid.",
    },
    LEAK: {
        "The top flap": "The mat bridges here.",
        "The left flap": "This flap lies flat.",
        "The right flap": "This corner laps.",
        "The foot flap": "It turns out on to the deck.",
    },
}
EACH = pytest.mark.parametrize("path", [STRINGS, STEPS, LEAK])


def drawn_for(bench: Bench, path: str, count: int = 0) -> Drawn:
    """Return a question as Noor, the first of the cast, is shown it."""
    question = bench.library.questions[path.rpartition("/")[2]]
    with bench.app.app_context():
        return question.drawn(bench.installation.seed(1, question.id, "", count))


def steps(page: Page) -> list[str]:
    """Return the steps of an order as they stand on the page."""
    return [each.words for each in page.main.all(class_="step-words")]


def press(noor: Visitor, page: Page, move: str) -> Page:
    """Return the page after one of the buttons that move a step, without scripts."""
    return noor.send(page, move=move)


@EACH
def test_a_right_answer_is_kept_as_evidence(kinds: Bench, path: str) -> None:
    """One shape for all kinds: a try, unaided, of one answer for one skill, with its lines."""
    noor = kinds.reader(NOOR)
    page = noor.go_on(noor.send(noor.open(path), **right_fields(drawn_for(kinds, path))))
    assert page.mark == "Right"
    kept = kinds.stored(NOOR, path.rpartition("/")[2])
    assert (kept.right, kept.finished, kept.unaided) == (True, True, True)
    assert (kept.kind, len(kept.lines)) == (
        kinds.library.questions[kept.question_id].kind,
        4,
    )
    (answer,) = kept.answers
    assert (answer.skill, answer.verdict, answer.right_value) == ("dose", "right", None)
    assert answer.read_as


@EACH
def test_a_wrong_answer_is_explained_at_once(kinds: Bench, path: str) -> None:
    """There is no second try, and none waits when the question is opened again."""
    noor = kinds.reader(NOOR)
    page = noor.open(path)
    fields = wrong_fields(page)
    if fields == right_fields(drawn_for(kinds, path)):
        fields = {"answer_0": "2"}
    told = noor.go_on(noor.send(page, **fields))
    assert told.mark == "Wrong"
    assert not told.has_form
    assert noor.open(path).status == 200


@pytest.mark.parametrize("path", [STRINGS, LEAK])
@pytest.mark.parametrize("place", range(4))
def test_every_choice_tells_what_comes_of_it(kinds: Bench, path: str, place: int) -> None:
    """In its author's words; and beside a wrong one what the right one leads to."""
    noor = kinds.reader(NOOR)
    page = noor.open(path)
    radio = page.main.all("input", name="answer_0", type="radio")[place]
    told = noor.go_on(noor.send(page, answer_0=radio["value"]))
    picked = kinds.stored(NOOR, path.rpartition("/")[2]).answers[0].read_as
    assert f"{picked} {COMES[path][picked]}" in told.words
    right = next(iter(COMES[path]))
    assert told.mark == ("Right" if picked == right else "Wrong")
    assert f"{right} {COMES[path][right]}" in told.words


def test_a_mark_reads_on_when_question_and_picture_are_gone(kinds: Bench, tmp_path: Path) -> None:
    """What was picked, what comes of it and what was right were kept with it."""
    noor = kinds.reader(NOOR)
    noor.send(noor.open(LEAK), answer_0="foot")
    without = MIXING + DOSE_CHAIN + BARE_CHAIN
    later = kinds.restarted(write_content(tmp_path / "later", mixing=without)).visit(NOOR)
    told = later.open(f"{LEAK}/0/1")
    assert (told.status, told.mark) == (200, "Wrong")
    for words in ("The foot flap", "The top flap"):
        assert f"{words} {COMES[LEAK][words]}" in told.words


@EACH
def test_sending_it_twice_counts_once(kinds: Bench, path: str) -> None:
    """The first answer stands, whatever the second says."""
    noor = kinds.reader(NOOR)
    page = noor.open(path)
    right = right_fields(drawn_for(kinds, path))
    noor.send(page, **wrong_fields(page))
    noor.send(page, **right)
    assert kinds.attempts_kept() == 1


@pytest.mark.parametrize("path", [STRINGS, LEAK])
@pytest.mark.parametrize("picked", ["", "9", "nowhere"])
def test_nothing_picked_is_asked_about(kinds: Bench, path: str, picked: str) -> None:
    """With the field's name in the sentence above, and nothing recorded."""
    noor = kinds.reader(NOOR)
    page = noor.send(noor.open(path), answer_0=picked)
    assert page.status == 422
    assert page.error_of("answer_0") == PICK_ONE
    assert kinds.attempts_kept() == 0


@pytest.mark.parametrize("path", [STRINGS, STEPS])
def test_what_was_picked_on_a_page_that_is_lost_is_picked_anew(kinds: Bench, path: str) -> None:
    """The second choice of one page may be another on the next: nothing is picked for anybody."""
    noor = kinds.reader(NOOR)
    page = noor.open(path)
    fields = {"answer_0": "2"} if path == STRINGS else right_fields(drawn_for(kinds, path))
    told = noor.send(page, shown="lost", **fields)
    assert told.status == 422
    assert PICK_ANEW in told.words
    assert told.form.fields.get("answer_0") == page.form.fields.get("answer_0")
    assert kinds.attempts_kept() == 0


def test_a_step_is_moved_without_scripts(kinds: Bench) -> None:
    """The page comes back with it moved and the button in focus; no answer was given."""
    noor = kinds.reader(NOOR)
    page = noor.open(STEPS)
    before = steps(page)
    moved = press(noor, page, "2 to 1")
    assert moved.status == 200
    assert steps(moved) == [before[1], before[0], *before[2:]]
    again = press(noor, moved, "2 to 2")
    assert steps(again) == before
    assert kinds.attempts_kept() == 0
    (focused,) = [each for each in again.main.all("button") if "autofocus" in each.attributes]
    assert before[1] in focused["aria-label"]


def test_an_order_put_right_by_buttons_is_right(kinds: Bench) -> None:
    """Press by press, then checked."""
    noor = kinds.reader(NOOR)
    page = noor.open(STEPS)
    right = right_fields(drawn_for(kinds, STEPS))["answer_0"].split()
    for row, place in enumerate(right, start=1):
        page = press(noor, page, f"{place} to {row}")
    assert noor.go_on(noor.send(page)).mark == "Right"


def test_a_wrong_order_names_the_step_that_comes_too_early(kinds: Bench) -> None:
    """Which it is, what comes before it, and why that matters."""
    noor = kinds.reader(NOOR)
    page = noor.open(STEPS)
    first, second, *rest = right_fields(drawn_for(kinds, STEPS))["answer_0"].split()
    told = noor.go_on(noor.send(page, answer_0=" ".join([second, first, *rest])))
    assert told.mark == "Wrong"
    assert "Too early Work out the dose." in told.words
    assert "Without a temperature the dose is a guess." in told.words
    assert "Before it comes: Read the thermometer." in told.words


@pytest.mark.parametrize("put", ["", "1 1 2 nonsense", "1 2 3", "1 2 3 4 4"])
def test_what_holds_no_order_is_no_answer(kinds: Bench, put: str) -> None:
    """Nobody put the steps so: they stand as they were first shown, and nothing is recorded."""
    noor = kinds.reader(NOOR)
    page = noor.open(STEPS)
    told = noor.send(page, answer_0=put)
    assert told.status == 422
    assert told.error_of("answer_0") == UNREAD
    assert steps(told) == steps(page)
    assert kinds.attempts_kept() == 0


@pytest.mark.parametrize("move", ["1 to " + "9" * 5000, "9 to 1", "up", "1 to -1"])
def test_a_move_that_no_button_makes_moves_nothing_far(kinds: Bench, move: str) -> None:
    """Whatever was sent by hand, each step stands on the page once."""
    noor = kinds.reader(NOOR)
    page = noor.open(STEPS)
    again = noor.open(f"{STEPS}?move={move.replace(' ', '+')}")
    assert again.status == 200
    assert sorted(steps(again)) == sorted(steps(page))


def test_a_tap_on_the_picture_picks_the_place_without_scripts(kinds: Bench) -> None:
    """Each place is a link that comes back with it picked, on the same question."""
    noor = kinds.reader(NOOR)
    page = noor.open(LEAK)
    links = [link["href"] for link in page.main.all("a") if "data-picks" in link.attributes]
    assert links == [f"?answer_0={name}#answer_0" for name in ("left", "top", "right", "foot")]
    picked = noor.open(f"{LEAK}?answer_0=top")
    assert picked.form.fields["answer_0"] == "top"
    assert noor.go_on(noor.send(picked)).mark == "Right"


def test_the_mark_shows_both_places_in_the_picture(kinds: Bench) -> None:
    """Told apart by line, and told in words below."""
    noor = kinds.reader(NOOR)
    told = noor.go_on(noor.send(noor.open(LEAK), answer_0="foot"))
    classes = {each["id"]: each["class"] for each in told.main.all("g")}
    assert "region-picked" in classes["ends-foot"]
    assert "region-right" in classes["ends-top"]
    assert "It turns out on to the deck." in told.words
    assert "The mat bridges here." in told.words


@EACH
def test_the_same_question_within_fourteen_days_is_no_fresh_evidence(
    kinds: Bench, path: str
) -> None:
    """Shuffled or not, its explanation was read; after that it counts again."""
    noor, name = kinds.reader(NOOR), path.rpartition("/")[2]
    noor.send(noor.open(path), **right_fields(drawn_for(kinds, path)))
    kinds.clock.wait(days=13)
    noor.send(noor.open(path), **right_fields(drawn_for(kinds, path, 1)))
    assert not kinds.stored(NOOR, name, 1).unaided
    kinds.clock.wait(days=15)
    noor = kinds.visit(NOOR)
    noor.send(noor.open(path), **right_fields(drawn_for(kinds, path, 2)))
    assert kinds.stored(NOOR, name, 2).unaided


def test_they_lead_nobody_on_in_the_fading(kinds: Bench) -> None:
    """Picking the right thing shows nothing about doing the sum."""
    noor = kinds.reader(NOOR)
    for path in (STRINGS, STEPS, LEAK):
        noor.send(noor.open(path), **right_fields(drawn_for(kinds, path)))
    with kinds.records():
        assert stage_of(db.session, 1, "dose") == 0
