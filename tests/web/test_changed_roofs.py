"""Answers on a roof that has changed or gone since it was opened, and to questions that have."""

from pathlib import Path

from web_bench import Bench
from web_cast import NOOR
from web_content import ROOF_COAT, ROOF_FALL, write_content
from web_practice import DEEPER, DIGEST, SHED, change, drop, question_on, remove, save, states

from trainer.web.practise import ANOTHER_ROOF, QUESTIONS_CHANGED, ROOF_CHANGED
from trainer.web.turn import NOT_OURS


def test_a_changed_roof_leaves_the_open_form_as_it_was(tiny: Bench) -> None:
    """The roof is 3 m deep by now; the form was asked on 2.5 m, and the page says so."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-fall"))
    change(tiny, NOOR, roof, DEEPER)
    again = noor.send(page, answer_0="")
    assert (again.status, again.notes) == (422, ROOF_CHANGED)
    assert again.question == page.question
    marked = noor.answer(again, drop(page))
    assert (marked.mark, marked.question) == ("Right", page.question)
    assert DIGEST in marked.path
    assert ANOTHER_ROOF in marked.words
    fresh = noor.open(question_on(roof, "roof-fall"))
    assert "Water runs 3 m" in fresh.question
    assert not fresh.notes
    assert states(noor.open(f"/roofs/{roof}/practise"))["How far the shed drops"] == "not tried"


def test_a_retry_goes_on_after_the_roof_was_changed(tiny: Bench) -> None:
    """On the numbers of the first try, from the page of its mark."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    slip = noor.answer(noor.open(question_on(roof, "roof-coat")), "10", "8")
    change(tiny, NOOR, roof, DEEPER)
    again = noor.open(slip.path)
    assert again.question == slip.question
    assert noor.answer(again, "5").question == slip.question


def test_a_roof_that_was_removed_leaves_its_marks(tiny: Bench) -> None:
    """They can be read, without ways to what is gone; an open form tells what was typed."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    marked = noor.answer(noor.open(question_on(roof, "roof-coat")), "5", "4")
    page = noor.open(question_on(roof, "roof-fall"))
    remove(tiny, NOOR, roof)
    left = noor.open(marked.path)
    assert (left.mark, left.links()) == ("Right", [])
    assert ANOTHER_ROOF in left.words
    gone = noor.send(page, answer_0="17 <b>mm</b>")
    assert (gone.status, gone.heading) == (410, "This question is gone")
    assert "What you had typed: 17 <b>mm</b>" in gone.words
    assert tiny.attempts_kept() == 1


def test_an_answer_is_marked_by_the_questions_as_they_were(tiny: Bench, tmp_path: Path) -> None:
    """Other ratios are asked by now; the old one counts, and the page says so."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-fall"))
    others = ROOF_FALL.replace("[25, 50, 100]", "[20, 80]") + ROOF_COAT
    later = tiny.restarted(write_content(tmp_path, roofs=others))
    noor.client.application = later.app
    again = noor.send(page, answer_0="")
    assert (again.status, again.notes) == (422, QUESTIONS_CHANGED)
    marked = noor.answer(again, drop(page))
    assert (marked.mark, marked.question) == ("Right", page.question)
    later.close()


def test_a_question_on_roofs_that_is_gone_is_still_marked(tiny: Bench, tmp_path: Path) -> None:
    """Its text was kept, so the answer counts; it just isn't offered again."""
    roof = save(tiny, NOOR)
    noor = tiny.reader(NOOR)
    page = noor.open(question_on(roof, "roof-fall"))
    later = tiny.restarted(write_content(tmp_path, roofs=ROOF_COAT))
    noor.client.application = later.app
    assert noor.open(question_on(roof, "roof-fall")).status == 404
    marked = noor.answer(page, drop(page))
    assert marked.mark == "Right"
    assert question_on(roof, "roof-fall") not in marked.links()
    later.close()


def test_figures_that_cannot_be_made_again_are_asked_anew(tiny: Bench, tmp_path: Path) -> None:
    """A roof without sizes of its own leans on the stock: with other rolls the numbers differ."""
    drops = ROOF_FALL.replace("roof-fall", "roof-drops").replace("fall_drop", "mat_drops")
    drops = drops.replace('{plan = "fall.run_m"}', '{plan = "mat.run_m"}')
    drops = drops.replace("given.ratio = [25, 50, 100]", 'given.roll_mm = {plan = "mat.roll_mm"}')
    drops = drops.replace("one in {ratio}", "under rolls of {roll_mm}")
    drops = drops.replace('"mm"', '"drops"').replace('"1 mm"', "0").replace('"drop"', '"drops"')
    before = tiny.restarted(with_stock(tmp_path / "before", drops, 1.0))
    roof = save(before, NOOR, {name: value for name, value in SHED.items() if name != "sold"})
    noor = before.reader(NOOR)
    page = noor.open(question_on(roof, "roof-drops"))
    assert "rolls of 1000 mm" in page.question
    later = tiny.restarted(with_stock(tmp_path / "later", drops, 0.5))
    noor.client.application = later.app
    anew = noor.send(page, answer_0="3")
    assert (anew.status, anew.notes) == (422, NOT_OURS)
    assert "rolls of 500 mm" in anew.question
    assert tiny.attempts_kept() == 0
    for bench in (before, later):
        bench.close()


def with_stock(folder: Path, questions: str, width_m: float) -> Path:
    """Return a content folder with these questions on roofs and this width of a roll of mat."""
    content = write_content(folder, roofs=questions)
    stock = {
        "tape": "roll_m = [20]",
        "bandage": "roll_m = [30]",
        "mat": f"width_m = [{width_m}]\nroll_m = [30]",
        "trim": "lengths_m = [3]",
        "resin": "tins_kg = [20]",
        "catalyst": "bottles_ml = [500]",
        "topcoat": "tins_kg = [20]",
    }
    text = "".join(f'[{name}]\nstanding = "invented"\n{rest}\n' for name, rest in stock.items())
    (content / "stock.toml").write_text(text, "utf-8")
    return content
