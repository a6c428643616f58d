"""Measure what the budgets speak of, each against a floor taken in the same run.

    .venv/bin/python tests/speed/measure.py

Served by gunicorn with one worker, asked by one client, the page and its floor in turn, so that
a busy machine slows both alike. It takes about a minute. Nothing here passes or fails: read it.
"""

import http.client
import os
import platform
import re
import signal
import socket
import statistics
import subprocess
import sys
import tempfile
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from functools import partial
from pathlib import Path
from urllib.parse import urlencode
from zoneinfo import ZoneInfo

HERE = Path(__file__).resolve().parent
LESSON = "wetting-out"
QUESTION = "wetting-glass-in-strip"
#: One that the rounds of posting haven't filled a day with.
OTHER = "wetting-strip-resin"
ROUNDS = 400
#: Tries that somebody has made over some years of daily practice.
HISTORY = 10_000

Answer = tuple[int, dict[str, str], bytes]


def main() -> None:
    """Print one line for each budget."""
    print(
        f"{platform.processor() or platform.machine()}, {os.cpu_count()} cores, "
        f"Python {platform.python_version()}, load {os.getloadavg()[0]:.1f}"
    )
    one_question()
    start_up()
    roof_sheet()
    with tempfile.TemporaryDirectory() as folder:
        environment = {**os.environ, "TRAINER_INSTANCE": folder, "TRAINER_ZONE": "UTC"}
        make_people(environment)
        with served("trainer.web.wsgi:application()", environment) as ours:
            visitor = Visitor(ours)
            size = len(visitor.get(f"/lessons/{LESSON}")[2])
            environment["FLOOR_BYTES"] = str(size)
            with served("floor:create_app()", environment) as floor:
                lesson_page(visitor, floor, size)
                posting(visitor, floor)
                remember(environment, HISTORY)
                posting(visitor, floor, f" after {HISTORY:,} others")
                own_pages(visitor, floor)


def one_question() -> None:
    """Vary, work and mark one question, in process: at most 50 microseconds."""
    from trainer.config import read_config  # noqa: PLC0415 - the import is part of no figure
    from trainer.lessons import Typed, mark_answers, read_library, variant  # noqa: PLC0415

    medians = []
    lessons = read_library(read_config().content).lessons
    for question in (each for lesson in lessons for each in lesson.sums):
        right = variant(question, "0").working().figures
        times = []
        for number in range(ROUNDS):
            drawn = variant(question, str(number))
            right = drawn.working().figures
            typed = {
                ask.line: Typed(f"{ask.in_asked_unit(right[ask.line]):.6f}", ask.unit)
                for ask in question.asks
            }
            begun = time.perf_counter_ns()
            mark_answers(variant(question, str(number)), typed, try_no=1)
            times.append((time.perf_counter_ns() - begun) / 1000)
        medians.append(statistics.median(times))
    print(
        f"vary, work and mark one question: median {statistics.median(medians):.0f} µs "
        f"(each of {len(medians)} questions: {min(medians):.0f} to {max(medians):.0f}); "
        "budget 50 µs"
    )


def start_up() -> None:
    """Make the application from a cold interpreter: at most one second.

    Beside it what the libraries alone take, since that is most of it on any machine.
    """
    with tempfile.TemporaryDirectory() as folder:
        environment = {**os.environ, "TRAINER_INSTANCE": folder, "TRAINER_ZONE": "UTC"}

        def run(code: str) -> Callable[[], object]:
            return partial(
                subprocess.run, [sys.executable, "-c", code], env=environment, check=True
            )

        ours = run("from trainer import create_app; create_app()")
        alone = run("import flask, flask_sqlalchemy, markdown")
        pairs = [(timed(ours), timed(alone)) for _ in range(7)]
    a, b = (statistics.median(times) / 1000 for times in zip(*pairs, strict=True))
    print(
        f"create_app() from a cold interpreter: median {a:.2f} s, "
        f"of which the libraries alone {b:.2f} s; budget 1 s"
    )


def roof_sheet() -> None:
    """Plan an L of 60 m² and draw its whole sheet, in process: at most 15 ms.

    Each round's roof is a millimetre longer, so that nothing is kept from the one before.
    """
    from flask import g, render_template  # noqa: PLC0415 - the import is part of no figure

    from trainer import create_app  # noqa: PLC0415
    from trainer.config import read_config  # noqa: PLC0415
    from trainer.engine.plans.lists import lists_of  # noqa: PLC0415
    from trainer.engine.plans.roof import plan_roof  # noqa: PLC0415
    from trainer.web.drawing import draw_roof  # noqa: PLC0415
    from trainer.web.plan_sheet import sheet_of  # noqa: PLC0415
    from trainer.web.wsgi import settle  # noqa: PLC0415 - as the server does

    config = replace(read_config(), zone=ZoneInfo("UTC"))
    app = create_app(config)
    settle()
    workshop = app.extensions["installation"].library.roofs["workshop"].description
    right = max(x for x, _ in workshop.corners)
    took: dict[str, list[float]] = defaultdict(list)
    with app.test_request_context():
        g.person = None
        for longer in range(ROUNDS // 4):
            corners = tuple((x + longer * (x == right), y) for x, y in workshop.corners)
            begun = time.perf_counter_ns()
            plan = plan_roof(replace(workshop, corners=corners))
            planned = time.perf_counter_ns()
            lists_of(plan)
            page = render_template("roofs/_sheet.html", sheet=sheet_of(plan))
            done = time.perf_counter_ns()
            draw_roof(plan, "deck"), draw_roof(plan, "mat")
            drawn = time.perf_counter_ns()
            took["plan"].append((planned - begun) / 1e6)
            took["all"].append((done - begun) / 1e6)
            took["drawings"].append((drawn - done) / 1e6)
    a, b, c = (statistics.median(took[part]) for part in ("all", "plan", "drawings"))
    print(
        f"a roof sheet of {len(page) / 1000:.0f} kB for 60 m²: median {a:.1f} ms, "
        f"of which the plan {b:.1f} ms and its two drawings {c:.1f} ms; budget 15 ms"
    )


def lesson_page(visitor: "Visitor", floor: str, size: int) -> None:
    """Compare a lesson page, signed in, with a bare page of the same bytes after one read."""
    bare = Visitor(floor)
    ours, theirs = in_turn(
        lambda: partial(visitor.get, f"/lessons/{LESSON}"), lambda: partial(bare.get, "/page/1")
    )
    tell(f"lesson page of {size / 1000:.0f} kB", ours, theirs, 1.3)


def posting(visitor: "Visitor", floor: str, after: str = "") -> None:
    """Compare posting an answer with bare Flask and one durable insert."""
    bare = Visitor(floor)
    ours, theirs = in_turn(
        lambda: partial(visitor.post, f"/questions/{QUESTION}", visitor.filled_in(QUESTION)),
        lambda: partial(bare.post, "/insert", {"words": "40 ml"}),
    )
    tell(f"posting an answer{after}", ours, theirs, 1.5)


def own_pages(visitor: "Visitor", floor: str) -> None:
    """Tell what somebody with that many tries waits for, beside a bare page."""
    bare = Visitor(floor)
    for what, path in (("Today", "/"), ("a form", f"/questions/{OTHER}")):
        ours, theirs = in_turn(
            lambda path=path: partial(visitor.get, path), lambda: partial(bare.get, "/page/1")
        )
        tell(f"{what} after {HISTORY:,} tries", ours, theirs, None)


def in_turn(
    one: Callable[[], Callable[[], Answer]], other: Callable[[], Callable[[], Answer]]
) -> tuple[list[float], list[float]]:
    """Return the milliseconds of both, taken in turn after a warm-up.

    Each makes the act ready before the clock runs: a form is fetched before it is sent.
    """
    for _ in range(20):
        one()(), other()()
    pairs = [(timed(one()), timed(other())) for _ in range(ROUNDS)]
    return [a for a, _ in pairs], [b for _, b in pairs]


def timed(act: Callable[[], object]) -> float:
    """Return how long an act takes, in milliseconds; a form is fetched outside of it."""
    begun = time.perf_counter_ns()
    result = act()
    took = (time.perf_counter_ns() - begun) / 1e6
    if isinstance(result, tuple) and result[0] >= 400:
        raise SystemExit(f"It answered {result[0]}.")
    return took


def tell(what: str, ours: list[float], theirs: list[float], budget: float | None) -> None:
    """Print the medians, their ratio and the budget, where there is one."""
    a, b = statistics.median(ours), statistics.median(theirs)
    most = "no budget" if budget is None else f"budget {budget}"
    print(f"{what}: median {a:.2f} ms against {b:.2f} ms, {a / b:.2f} times; {most}")


class Visitor:
    """One client, signed in once, who keeps its cookies."""

    def __init__(self, address: str) -> None:
        self.address, self.cookies = address, {}
        if ":" in address and self.get("/sign-in")[0] == 200:
            self._sign_in()

    def get(self, path: str) -> Answer:
        """Ask for a page."""
        return self._send("GET", path, None)

    def post(self, path: str, fields: dict[str, str]) -> Answer:
        """Send a form."""
        return self._send("POST", path, urlencode(fields))

    def filled_in(self, question: str) -> dict[str, str]:
        """Return a question's form on fresh numbers, filled in."""
        # Alone, so that wrong answers don't bring lines of the working into the form.
        fields = hidden(self.get(f"/questions/{question}?alone=yes")[2])
        return {**fields, "answer_0": "12345", "answer_0_unit": "g"}

    def _sign_in(self) -> None:
        fields = hidden(self.get("/sign-in")[2])
        self.post("/sign-in", {**fields, "name": "noor", "password": "straw-and-amber"})
        first = next(iter(re.findall(rb'href="(/lessons/[\w-]+)"', self.get("/")[2]))).decode()
        self.post(f"{first}/read", hidden(self.get(first)[2]))

    def _send(self, method: str, path: str, body: str | None) -> Answer:
        connection = http.client.HTTPConnection(*self.address.split(":"), timeout=10)
        headers = {"Cookie": "; ".join(f"{k}={v}" for k, v in self.cookies.items())}
        if body is not None:
            headers["Content-Type"] = "application/x-www-form-urlencoded"
        connection.request(method, path, body, headers)
        answer = connection.getresponse()
        data = answer.read()
        connection.close()
        for cookie in answer.headers.get_all("Set-Cookie") or ():
            name, _, value = cookie.partition(";")[0].partition("=")
            self.cookies[name] = value
        return answer.status, dict(answer.headers), data


def hidden(page: bytes) -> dict[str, str]:
    """Return the hidden fields of a page's forms."""
    found = re.findall(r'type="hidden" name="(\w+)" value="([^"]*)"', page.decode())
    return dict(found)


@contextmanager
def served(application: str, environment: dict[str, str]) -> Iterator[str]:
    """Serve an application with one gunicorn worker; yield its address."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        address = f"127.0.0.1:{free.getsockname()[1]}"
    command = [
        sys.executable,
        "-m",
        "gunicorn",
        "-w",
        "1",
        "-b",
        address,
        application,
        "--chdir",
        str(HERE),
        "--log-level",
        "warning",
    ]
    server = subprocess.Popen(command, env=environment)  # noqa: S603
    try:
        wait_for(address)
        yield address
    finally:
        server.send_signal(signal.SIGTERM)
        server.wait(10)


def wait_for(address: str) -> None:
    """Wait until something listens there."""
    for _ in range(100):
        try:
            socket.create_connection(address.split(":"), timeout=1).close()  # type: ignore[arg-type]
        except OSError:
            time.sleep(0.1)
        else:
            return
    raise SystemExit(f"Nothing listens on {address}.")


def make_people(environment: dict[str, str]) -> None:
    """Add one trainee through the command line."""
    command = [
        str(Path(sys.executable).with_name("trainer")),
        "person",
        "add",
        "Noor",
        "--password",
        "straw-and-amber",
        "--crew",
        "North",
    ]
    subprocess.run(command, env=environment, check=True, stdout=subprocess.DEVNULL)  # noqa: S603


def remember(environment: dict[str, str], number: int) -> None:
    """Give the one trainee so many tries, over all sums and three years of days."""
    from datetime import timedelta  # noqa: PLC0415 - the import is part of no figure

    from trainer import create_app  # noqa: PLC0415
    from trainer.config import read_config  # noqa: PLC0415
    from trainer.lessons import Typed, mark_answers, variant  # noqa: PLC0415
    from trainer.records import attempts, db, writing  # noqa: PLC0415
    from trainer.web.answer import AnswerTime, attempt_facts  # noqa: PLC0415
    from trainer.web.shown import Shown  # noqa: PLC0415

    app = create_app(read_config(environment))
    installation = app.extensions["installation"]
    lessons = installation.library.lessons
    texts = {each.id: lesson.digest for lesson in lessons for each in lesson.sums}
    drawn = [variant(each, "0") for lesson in lessons for each in lesson.sums]
    marks = []
    for each in drawn:
        figures = each.working().figures
        typed = {
            ask.line: Typed(f"{ask.in_asked_unit(figures[ask.line]):.6f}", ask.unit)
            for ask in each.asks
        }
        marks.append(mark_answers(each, typed, try_no=1))
    with app.app_context():
        writing(db.session)
        for made in range(number):
            asked, mark = drawn[made % len(drawn)], marks[made % len(drawn)]
            name = asked.question.id
            # Beyond what the forms have counted.
            shown = Shown(1, name, 1_000_000 + made, 1, f"h{made}", 0, texts[name])
            sent = installation.now() - timedelta(days=1095 - made * 1095 // number)
            time_ = AnswerTime(sent, sent.date(), sent_later=False)
            facts = attempt_facts(shown, asked, mark, time_, "mixing")
            facts = replace(facts, variant=f"h{made}")
            attempts.record(db.session, facts, installation.thresholds.skills)
        db.session.commit()
        db.engine.dispose()


if __name__ == "__main__":
    main()
