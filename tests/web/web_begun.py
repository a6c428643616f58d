"""Somebody who has met the first lessons and is due for practice."""

from web_bench import Bench
from web_cast import NOOR, Who
from web_kinds import answer_right
from web_page import Page
from web_visitor import Visitor

from trainer.lessons import Question
from trainer.web.shown import opened


def sums_of(bench: Bench, skills: int) -> dict[str, list[Question]]:
    """Return questions of the first lesson by skill, of its first so many skills with sums."""
    found: dict[str, list[Question]] = {}
    for each in bench.library.first.questions:
        if not each.is_numberless and len(set(each.skills)) == 1:
            found.setdefault(each.skills[0], []).append(each)
    return dict(list(found.items())[:skills])


def gelled(bench: Bench, who: Who = NOOR, skills: int = 4) -> Visitor:
    """Return somebody with so many skills of the first lesson that gelled today."""
    visitor = bench.reader(who)
    for questions in sums_of(bench, skills).values():
        for turn in range(3):
            answer_right(bench, visitor, visitor.alone(questions[turn % len(questions)].id))
    return visitor


def due(bench: Bench, who: Who = NOOR, skills: int = 4) -> Visitor:
    """Return somebody for whom so many skills are due today."""
    visitor = gelled(bench, who, skills)
    bench.clock.wait(days=1)
    return visitor


def begin(visitor: Visitor) -> Page:
    """Press the button of the practice page, and return the question that it leads to."""
    return visitor.go_on(visitor.send(visitor.open("/practice")))


def begun(bench: Bench) -> Visitor:
    """Return somebody who has answered the first question of today's sitting."""
    visitor = due(bench)
    answer_right(bench, visitor, begin(visitor))
    return visitor


def onward(mark: Page) -> str:
    """Where a mark leads on to."""
    return mark.main.all("a", class_="primary")[0]["href"]


def question_of(bench: Bench, page: Page) -> str:
    """The id of the question that a page asks."""
    with bench.app.test_request_context("/"):
        was = opened(page.form.fields["shown"])
    assert was is not None
    return was.question_id


def end_of(page: Page) -> str:
    """The address of the end of the sitting that a page belongs to."""
    return f"/practice/{page.path.split('/')[2]}/end"
