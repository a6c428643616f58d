"""A walk through every page there is, in each of its states."""

from collections.abc import Iterator

from web_begun import begin, due
from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR
from web_kinds import LEAK, STEPS, STRINGS, answer_right, wrong_fields
from web_mix import CUP, NAMED, mixed, timed_cup
from web_page import Page
from web_practice import DEEPER, SHED, SOLD, change, question_on, remove, save
from web_roofs import GARAGE, TIMED, keep
from web_season import set_start, wintered
from web_uses import answer_uses, note_use
from web_visitor import Visitor


def walk(bench: Bench, tiny: Bench, kinds: Bench) -> dict[str, Page]:
    """Return every page by name: of the real lessons, and marks of the tiny ones."""
    kinds.renew()
    bench.renew()
    tiny.renew()
    pages = dict(signed_out(bench.visit()))
    pages["first morning"] = bench.visit(NOOR).open("/")
    pages["first lesson, not read"] = bench.visit(NOOR).open(f"/lessons/{bench.library.first.slug}")
    pages.update(lessons(bench, bench.reader(NOOR)))
    pages.update(people(bench))
    pages.update(sittings(bench))
    pages.update(seasons(bench))
    pages.update(described(bench.visit(NOOR)))
    pages.update(refusals(bench.visit(NOOR)))
    noor = tiny.reader(NOOR)
    told = (*marks(noor), *practice(tiny, noor), *sheets(tiny, noor), *buckets(noor))
    pages.update((f"tiny {name}", page) for name, page in (*told, *picked(kinds.reader(NOOR))))
    return pages


def signed_out(nobody: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield what anybody sees, and what comes of a sign-in that fails."""
    yield "sign-in", nobody.open("/sign-in?then=/progress")
    yield "sign-in, empty", nobody.send(nobody.open("/sign-in"))
    yield "sign-in, ended", nobody.post("/questions/first-dose", {"answer_0": "40"})
    yield "cautions", nobody.open("/cautions")
    yield "words", nobody.open("/words")
    yield "help", nobody.open("/help")
    yield "way to the sign-in", nobody.open("/")


def lessons(bench: Bench, noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield every lesson, every question, and each question's wrong mark."""
    for lesson in bench.library.lessons:
        yield f"lesson {lesson.slug}", noor.open(f"/lessons/{lesson.slug}")
        for question in lesson.questions:
            yield f"question {question.id}, helped", noor.open(f"/questions/{question.id}")
            page = noor.alone(question.id)
            yield f"question {question.id}", page
            yield f"mark of {question.id}", noor.go_on(noor.send(page, **wrong_fields(page)))
    yield "progress", noor.open("/progress")
    yield "today", noor.open("/")


def described(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield the empty list of roofs, and the form of one: blank, planned, wrong, of corners."""
    yield "roofs, none", noor.open("/roofs")
    blank = noor.open("/roofs/new")
    yield "roof form, blank", blank
    yield "roof form, wrong", noor.send(blank, press="keep", **{"boards.gap_mm": "wide"})
    example = noor.open("/roofs/new?example=workshop")
    yield "roof form, planned", example
    corners = {"outline.shape": "corners", "outline.corners_m": "0, 0\n4, 0\n4, 3"}
    yield "roof form, corners", noor.send(example, press="plan", **corners)


def people(bench: Bench) -> Iterator[tuple[str, Page]]:
    """Yield the pages of those who answer for others."""
    noor, bertil = bench.visit(NOOR), bench.visit(BERTIL)
    yield "uses, none", noor.open("/uses")
    yield "uses, wrong", note_use(noor, roof="", used_on="soon")
    note_use(noor)
    yield "uses to confirm", bertil.open("/crew/uses")
    yield "uses, none to confirm", answer_uses(bertil)
    note_use(noor, roof="Porch in Mill Road")
    yield "uses, confirmed and waiting", noor.open("/uses")
    yield "crew", bertil.open("/crew")
    yield "person", bench.visit(BERTIL).open("/crew/ref-of-noor")
    yield "all crews", bench.visit(KIT).open("/crew")
    yield "person of no doing", bench.visit(KIT).open("/crew/ref-of-oda")


def sittings(bench: Bench) -> Iterator[tuple[str, Page]]:
    """Yield practice: none yet, offered, a turn, its mark, half-way, and its end."""
    yield "practice, none", bench.reader(NOOR).open("/practice")
    noor = due(bench)
    yield "today, due", noor.open("/")
    yield "practice, offered", noor.open("/practice")
    turn = begin(noor)
    yield "turn of practice", turn
    yield "mark in practice", answer_right(bench, noor, turn)
    yield "practice, half-way", noor.open("/practice")
    end = f"{turn.path.rpartition('/')[0]}/end"
    yield "end of practice, half-way", noor.open(end)
    form = noor.open(end).form_to(end)
    yield "end of practice", noor.go_on(noor.post(form.action, form.fields))
    yield "practice, done", noor.open("/practice")
    yield "progress, due", noor.open("/progress")


def seasons(bench: Bench) -> Iterator[tuple[str, Page]]:
    """Yield the refresher: unset, set wrongly, open, sat, the crew's picture, and compared."""
    bertil = bench.visit(BERTIL)
    yield "season, unset", bench.visit(NOOR).open("/season")
    yield "season, wrong", set_start(bench.visit(KIT), "soon")
    yield "crew, no season", bertil.open("/season/crew")
    yield "compared, no season", bertil.open("/season/compare")
    noor = wintered(bench)
    yield "season, open", noor.open("/season")
    yield "today, refresher", noor.open("/")
    yield "season, the office", bench.visit(KIT).open("/season")
    form = noor.open("/season").form_to("/season/begin")
    answer_right(bench, noor, noor.go_on(noor.post(form.action, form.fields)))
    yield "season, begun", noor.open("/season")
    yield "crew before the season", bench.visit(BERTIL).open("/season/crew")
    yield "all crews before the season", bench.visit(KIT).open("/season/crew")
    yield "compared, before the start", bench.visit(KIT).open("/season/compare")
    bench.clock.wait(days=25)
    yield "compared", bench.visit(KIT).open("/season/compare")


def refusals(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield what is said when something can't be done."""
    yield "missing page", noor.open("/no-such-page")
    yield "refused page", noor.open("/crew")
    yield "wrong method", noor.open("/sign-out")
    yield "too much", noor.post("/questions/first-dose", {"answer_0": "4" * 300_000})
    yield "no token", noor.post("/sign-out", {})


def practice(tiny: Bench, noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield what a roof can be practised on: before, in the middle of it, and after."""
    roof = save(tiny, NOOR)
    yield "practise", noor.open(f"/roofs/{roof}/practise")
    coat = noor.open(question_on(roof, "roof-coat"))
    yield "question on a roof", coat
    slip = noor.answer(coat, "10", "8")
    yield "slip on a roof", slip
    yield "mark on a roof", noor.answer(slip, "5")
    fall = noor.open(question_on(roof, "roof-fall"))
    change(tiny, NOOR, roof, DEEPER)
    yield "question on a changed roof", noor.send(fall, answer_0="")
    broken = save(tiny, NOOR, {**SHED, "edge": []})
    yield "practise, unplanned", noor.open(f"/roofs/{broken}/practise")
    remove(tiny, NOOR, roof)
    yield "mark on a roof that is gone", noor.open(slip.path)


def marks(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield each kind of mark, and forms that come back."""
    chain = noor.alone("dose-chain")
    yield "unclear", noor.send(chain, answer_0="a drop", answer_1="")
    yield "token lost", noor.send(chain, csrf_token="", answer_0="40")
    yield "form not ours", noor.send(chain, shown="forged", answer_0="40")
    slip = noor.answer(chain, "4", "3.2")
    yield "slip", slip
    yield "second try, unclear", noor.send(slip, answer_0="a drop")
    yield "second try, right", noor.answer(slip, "40")
    yield "carried", noor.answer("dose-chain", "30", "24")
    yield "right", noor.answer("dose-chain", "40", "32")
    yield "started afresh", noor.answer("bare-chain", "3", "20")
    token = noor.alone("dose-chain").form.fields["csrf_token"]
    gone = {"csrf_token": token, "answer_0": "40"}
    yield "question gone", noor.post("/questions/old-dose", gone)


def picked(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield a question of each kind without numbers, nothing picked, and its mark."""
    for path in (STRINGS, STEPS, LEAK):
        page = noor.open(path)
        yield path, page
        yield f"{path}, nothing picked", noor.send(page, answer_0="")
        yield f"{path}, marked", noor.go_on(noor.send(noor.open(path), **wrong_fields(page)))
    steps = noor.open(STEPS)
    yield "a step moved", noor.send(steps, move="2 to 1")
    yield "a place picked", noor.open(f"{LEAK}?answer_0=top")


def sheets(tiny: Bench, noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield the sheet and the card of a roof with a clock, without, and that can't be planned."""
    crossing = {"shape": "corners", "corners_m": [[0, 0], [4, 3], [4, 0], [0, 3]]}
    for name, data in (
        ("timed", TIMED),
        ("bare", GARAGE),
        ("unplanned", {**GARAGE, "outline": crossing}),
    ):
        number = keep(tiny, NOOR, {**data, "sold": SOLD})
        yield f"sheet, {name}", noor.open(f"/roofs/{number}")
        yield f"card, {name}", noor.open(f"/roofs/{number}/card")
        yield f"change, {name}", noor.open(f"/roofs/{number}/change")
    keep(tiny, BERTIL, {**GARAGE, "sold": SOLD})
    yield "roofs", noor.open("/roofs")
    yield "removal", noor.open(f"/roofs/{number}/remove")


def buckets(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield the page of a bucket and the list of test cups, from empty to a clock that runs."""
    yield "mix", noor.open("/mix")
    yield "mix, unclear", mixed(noor, NAMED, resin="1,300", dose="a drop", at="-90")
    yield "mix, no cup", mixed(noor, NAMED)
    yield "test cups, none", noor.open("/mix/cups")
    yield "test cup, unclear", noor.send(noor.open("/mix/cups"), minutes="soon")
    yield "test cup, kept", noor.go_on(timed_cup(noor))
    start = noor.open("/mix/cups").form_to("/mix/cups").fields
    yield "test cup, running", noor.go_on(noor.post("/mix/cups", {**start, **CUP, "minutes": ""}))
    worked = mixed(noor, NAMED, dose="4.2")
    yield "mix, strong", worked
    yield "mix, timed", mixed(noor, NAMED)
    form = mixed(noor, NAMED).form_to("/mix")
    yield "mix, running", noor.go_on(noor.post(form.action, form.fields))
    yield "mix, run out", mixed(noor, NAMED, since="2020-01-01T00:00:00Z")
