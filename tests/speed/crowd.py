"""Measure Today and the crew's pages with very many people, against few.

    .venv/bin/python tests/speed/crowd.py

10,000 trainees with 2 million answers against 100 with 20,000, in crews of twenty; asked in
process, in turn, so that a busy machine slows both alike. It takes some minutes and about a
gigabyte in the temporary folder. Nothing here passes or fails: read it.
"""

import os
import platform
import sqlite3
import statistics
import tempfile
import time
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from itertools import islice
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from flask.testing import FlaskClient

from trainer import create_app, web
from trainer.cli.demo import demo_config
from trainer.records import db, people, seasons, writing
from trainer.records.passwords import hash_password
from trainer.records.running import NEVER_TRIED, after
from trainer.records.skill_table import row_of
from trainer.records.skill_tries import SkillTold
from trainer.web import Installation

Row = dict[str, Any]
CREW, ANSWERS = 20, 200
PASSWORD = "three wet rollers"
PAGES = ("/", "/practice", "/crew", "/season/crew")
ROUNDS = 40


@dataclass(frozen=True)
class Crowd:
    """An installation with so many people, and two of them who look round in it."""

    trainee: FlaskClient
    supervisor: FlaskClient

    def ask(self, page: str) -> float:
        """Return how many milliseconds a page takes."""
        client = self.supervisor if "crew" in page else self.trainee
        begun = time.perf_counter_ns()
        answer = client.get(page)
        took = (time.perf_counter_ns() - begun) / 1e6
        if answer.status_code != 200:
            raise SystemExit(f"{page} answered {answer.status_code}.")
        return took


def main() -> None:
    """Print a line for each page."""
    print(
        f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}, "
        f"load {os.getloadavg()[0]:.1f}"
    )
    with tempfile.TemporaryDirectory() as folder:
        few, many = (crowd(Path(folder) / str(number), number) for number in (100, 10_000))
        for page in PAGES:
            for each in (few, many):
                each.ask(page)
            pairs = [(few.ask(page), many.ask(page)) for _ in range(ROUNDS)]
            small, large = (statistics.median(column) for column in zip(*pairs, strict=True))
            print(f"{page}: {large:.2f} ms against {small:.2f} ms, {large / small:.2f} times")


def crowd(folder: Path, number: int) -> Crowd:
    """Return an installation with so many trainees, and their answers."""
    folder.mkdir()
    config = replace(demo_config(folder), zone=ZoneInfo("UTC"))
    app = create_app(config)
    web.prepare(app)
    installation: Installation = app.extensions["installation"]
    with app.app_context():
        writing(db.session)
        db.session.commit()
    with closing(sqlite3.connect(folder / "trainer.sqlite")) as file:
        file.execute("PRAGMA synchronous = OFF")
        for table, rows in filled(installation, number):
            insert(file, table, rows)
        file.commit()
    with app.app_context():
        writing(db.session)
        office = people.by_ref(db.session, "ref-2")
        rules, today = installation.thresholds.seasons, installation.today()
        starts = today + timedelta(days=20)
        by = office.person_id if office else 2
        seasons.set_start(db.session, starts, today, rules, by=by, now=installation.now())
        db.session.commit()
    return Crowd(signed_in(app.test_client(), "one"), signed_in(app.test_client(), "two"))


def filled(installation: Installation, number: int) -> Iterator[tuple[str, Iterator[Row]]]:
    """Yield each table with its rows; the first trainee and a supervisor share the first crew."""
    library, now = installation.library, datetime.now(UTC).replace(tzinfo=None)
    today = installation.today()
    password = hash_password(PASSWORD)
    ids = range(1, number + 1)
    skills = list(library.competencies.skills)
    questions = [each for each in library.questions.values() if not each.is_numberless]
    told = [SkillTold(today - timedelta(days=40 - n), right=True, unaided=True) for n in range(9)]
    progress = after(NEVER_TRIED, told, installation.thresholds.skills)
    yield "crew", ({"id": n, "name": f"Crew {n}"} for n in range(1, number // CREW + 2))
    yield (
        "person",
        (
            {
                "id": n,
                "ref": f"ref-{n}",
                "name": f"Number {n}",
                "sign_in_name": {1: "one", 2: "two"}.get(n, f"number-{n}"),
                "password_hash": password,
                "crew_id": n // CREW + 1,
                "created_at": str(now),
            }
            for n in ids
        ),
    )
    yield "person_role", ({"person_id": n, "role": "trainee"} for n in ids)
    yield "person_role", iter([{"person_id": 2, "role": "supervisor"}])
    yield (
        "lesson_progress",
        (
            {
                "person_id": n,
                "lesson": each.slug,
                "read_at": str(now),
                "read_date": str(today),
                "tried": 9,
                "right": 8,
                "last_seen_at": str(now),
                "last_date": str(today),
            }
            for n in ids
            for each in library.lessons
        ),
    )
    yield (
        "question_progress",
        (
            {
                "person_id": n,
                "question_id": each.id,
                "lesson": each.lesson,
                "tried": 3,
                "right": 2,
                "finished": 3,
                "ever_right": 1,
                "last_seen_at": str(now),
                "last_date": str(today),
            }
            for n in ids
            for each in questions
        ),
    )
    yield (
        "skill_progress",
        (
            {name: as_kept(value) for name, value in row_of(n, each, progress).items()}
            for n in ids
            for each in skills
        ),
    )
    attempts = (
        {
            "id": (n - 1) * ANSWERS + count + 1,
            "person_id": n,
            "question_id": questions[count % len(questions)].id,
            "kind": "calculate",
            "lesson": questions[count % len(questions)].lesson,
            "competency": "mixing",
            "roof": "",
            "count": count // len(questions),
            "try_no": 1,
            "seed": "s",
            "redraws": 0,
            "variant": str(count),
            "source_digest": library.written[0].digest,
            "engine_version": "1",
            "givens": "{}",
            "lines": "[]",
            "sent_at": str(now),
            "local_date": str(today - timedelta(days=ANSWERS - count)),
            "sent_later": 0,
            "working_shown": 0,
            "started_afresh": 0,
            "stage": 3,
            "unaided": 1,
            "right": 1,
            "finished": 1,
        }
        for n in ids
        for count in range(ANSWERS)
    )
    yield "attempt", attempts
    yield (
        "answer",
        (
            {
                "attempt_id": number_of,
                "position": 0,
                "line": "mass",
                "skill": skills[number_of % len(skills)],
                "unit": "g",
                "tolerance": "1 %",
                "typed": "40",
                "read_as": "40 g",
                "verdict": "right",
                "slip": "",
                "cue": "",
            }
            for number_of in range(1, number * ANSWERS + 1)
        ),
    )


def as_kept(value: object) -> object:
    """Return a date as SQLite keeps it, and anything else as it is."""
    return value.isoformat() if hasattr(value, "isoformat") else value


def insert(file: sqlite3.Connection, table: str, rows: Iterator[Row]) -> None:
    """Write rows, many at a time."""
    while some := list(islice(rows, 20_000)):
        names = list(some[0])
        places = ", ".join(f":{name}" for name in names)
        quoted = ", ".join(f'"{name}"' for name in names)
        file.executemany(f"INSERT INTO {table} ({quoted}) VALUES ({places})", some)  # noqa: S608


def signed_in(client: FlaskClient, name: str) -> FlaskClient:
    """Return the browser of somebody who has signed in."""
    page = client.get("/sign-in").text
    token = page.partition('name="csrf_token" value="')[2].partition('"')[0]
    client.post("/sign-in", data={"csrf_token": token, "name": name, "password": PASSWORD})
    return client


if __name__ == "__main__":
    main()
