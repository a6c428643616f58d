"""A walk through every page there is, in each of its states."""

from collections.abc import Iterator

from web_bench import Bench
from web_cast import BERTIL, KIT, NOOR
from web_page import Page
from web_visitor import Visitor


def walk(bench: Bench, tiny: Bench) -> dict[str, Page]:
    """Return every page by name: of the real lessons, and marks of the tiny ones."""
    bench.renew()
    tiny.renew()
    pages = dict(signed_out(bench.visit()))
    pages["first morning"] = bench.visit(NOOR).open("/")
    pages["first lesson, not read"] = bench.visit(NOOR).open(f"/lessons/{bench.library.first.slug}")
    pages.update(lessons(bench, bench.reader(NOOR)))
    pages.update(people(bench))
    pages.update(refusals(bench.visit(NOOR)))
    pages.update((f"tiny {name}", page) for name, page in marks(tiny.reader(NOOR)))
    return pages


def signed_out(nobody: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield what anybody sees, and what comes of a sign-in that fails."""
    yield "sign-in", nobody.open("/sign-in?then=/progress")
    yield "sign-in, empty", nobody.send(nobody.open("/sign-in"))
    yield "sign-in, ended", nobody.post("/questions/first-dose", {"answer_0": "40"})
    yield "cautions", nobody.open("/cautions")
    yield "help", nobody.open("/help")
    yield "way to the sign-in", nobody.open("/")


def lessons(bench: Bench, noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield every lesson, every question, and each question's wrong mark."""
    for lesson in bench.library.lessons:
        yield f"lesson {lesson.slug}", noor.open(f"/lessons/{lesson.slug}")
        for question in lesson.questions:
            page = noor.open(f"/questions/{question.id}")
            yield f"question {question.id}", page
            typed = ["0.123"] * len(question.asks)
            yield f"mark of {question.id}", noor.answer(page, *typed)
    yield "progress", noor.open("/progress")
    yield "today", noor.open("/")


def people(bench: Bench) -> Iterator[tuple[str, Page]]:
    """Yield the pages of those who answer for others."""
    yield "crew", bench.visit(BERTIL).open("/crew")
    yield "person", bench.visit(BERTIL).open("/crew/ref-of-noor")
    yield "all crews", bench.visit(KIT).open("/crew")
    yield "person of no doing", bench.visit(KIT).open("/crew/ref-of-oda")


def refusals(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield what is said when something can't be done."""
    yield "missing page", noor.open("/no-such-page")
    yield "refused page", noor.open("/crew")
    yield "wrong method", noor.open("/sign-out")
    yield "too much", noor.post("/questions/first-dose", {"answer_0": "4" * 300_000})
    yield "no token", noor.post("/sign-out", {})


def marks(noor: Visitor) -> Iterator[tuple[str, Page]]:
    """Yield each kind of mark, and forms that come back."""
    chain = noor.open("/questions/dose-chain")
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
    token = noor.open("/questions/dose-chain").form.fields["csrf_token"]
    gone = {"csrf_token": token, "answer_0": "40"}
    yield "question gone", noor.post("/questions/old-dose", gone)
