"""An apprentice's first three days of one skill, by thumb, with a clock that the test sets."""

import re
import threading
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest
from browsing import Served, answer
from playwright.sync_api import Browser, Page, expect
from waitress.server import create_server

from trainer import create_app, web
from trainer.cli.demo import demo_config
from trainer.records import crews, db, people, writing

FIRST_DAY = datetime(2026, 3, 9, 7, 30, tzinfo=UTC)
WORDS = "three wet rollers"


class Days:
    """The clock of the installation."""

    def __init__(self) -> None:
        self.now = FIRST_DAY

    def __call__(self) -> datetime:
        """Return the instant that was set."""
        return self.now

    def sleep(self, nights: int = 1) -> None:
        """Let nights go by."""
        self.now += timedelta(days=nights)


@pytest.fixture
def days() -> Days:
    """A Monday morning."""
    return Days()


@pytest.fixture
def yard(tmp_path_factory: pytest.TempPathFactory, days: Days) -> Iterator[Served]:
    """An installation with one apprentice who has done nothing yet."""
    config = demo_config(tmp_path_factory.mktemp("yard"))
    app = create_app(config, clock=days)
    web.prepare(app)
    with app.app_context():
        writing(db.session)
        crew = crews.add_crew(db.session, "Quay crew")
        people.add_person(
            db.session,
            name="Mara",
            sign_in_name="mara",
            password=WORDS,
            roles=("trainee",),
            now=FIRST_DAY,
            crew_id=crew.crew_id,
        )
        db.session.commit()
    server = create_server(app, host="127.0.0.1", port=0, threads=4)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    yield Served(f"http://127.0.0.1:{server.effective_port}", app)
    server.close()
    thread.join(5)


@pytest.fixture
def mara(chromium: Browser, yard: Served) -> Iterator[Page]:
    """Her phone, held upright; it stays signed in over the nights."""
    context = chromium.new_context(
        base_url=yard.address,
        viewport={"width": 360, "height": 740},
        has_touch=True,
        is_mobile=True,
    )
    context.set_default_timeout(10_000)
    page = context.new_page()
    page.goto("/sign-in")
    page.get_by_label("Your sign-in name").fill("mara")
    page.get_by_label("Password").fill(WORDS)
    with page.expect_navigation():
        page.get_by_role("button", name="Sign in").tap()
    yield page
    context.close()


def sums(served: Served) -> dict[str, list[str]]:
    """Return the sums of the first lesson that ask one skill, by skill."""
    found: dict[str, list[str]] = {}
    for each in served.library.first.questions:
        if not each.is_numberless and len(set(each.skills)) == 1:
            found.setdefault(each.skills[0], []).append(each.id)
    return found


def first_card(page: Page) -> str:
    """Return what the card on top of the page says."""
    return " ".join((page.locator(".first").text_content() or "").split())


def sit(page: Page, served: Served) -> int:
    """Answer today's sitting right to its end, and return how many questions it had."""
    answered = 0
    while page.get_by_role("heading", name="What changed").count() == 0:
        answer(page, served)
        answered += 1
        with page.expect_navigation():
            page.locator("main a.button.primary").tap()
    return answered


def test_three_days_of_an_apprentice(mara: Page, yard: Served, days: Days) -> None:
    """Read and gelled on Monday, due on Tuesday, due again on Thursday; Wednesday is free."""
    # Monday: one thing to do, and that is reading.
    assert "Fire, eyes, fumes, dust and waste" in first_card(mara)
    with mara.expect_navigation():
        mara.get_by_role("link", name="Read it").tap()
    with mara.expect_navigation():
        mara.get_by_role("button", name="I have read this").tap()
    skills = sums(yard)
    for questions in skills.values():
        for turn in range(3):
            mara.goto(f"/questions/{questions[turn % len(questions)]}?alone=yes")
            answer(mara, yard)
    mara.goto("/practice")
    expect(mara.get_by_text("The next practice is tomorrow.")).to_be_visible()

    # Tuesday: what gelled is due, before the next lesson.
    days.sleep()
    mara.goto("/")
    due = f"{len(skills)} skills are due today: {2 * len(skills)} questions"
    assert due in first_card(mara)
    with mara.expect_navigation():
        mara.get_by_role("link", name="Begin").tap()
    with mara.expect_navigation():
        mara.get_by_role("button", name="Begin").tap()
    # She is called away after two, and goes on after the break.
    for _ in range(2):
        answer(mara, yard)
        with mara.expect_navigation():
            mara.get_by_role("link", name="Next question").tap()
    mara.goto("/")
    assert f"You are in the middle of it: {2 * len(skills) - 2} questions left." in first_card(mara)
    with mara.expect_navigation():
        mara.get_by_role("link", name="Go on").tap()
    with mara.expect_navigation():
        mara.get_by_role("button", name="Go on").tap()
    assert sit(mara, yard) == 2 * len(skills) - 2
    expect(mara.get_by_text("The next practice is 12 March.")).to_be_visible()
    mara.goto("/practice")
    expect(mara.get_by_text("Today's practice is done.")).to_be_visible()

    # Wednesday: nothing is due, and the lesson goes on.
    days.sleep()
    mara.goto("/practice")
    expect(mara.get_by_text("Nothing is due today.")).to_be_visible()
    mara.goto("/")
    expect(mara.locator(".first a")).to_have_attribute("href", re.compile("^/lessons/"))

    # Thursday: one wrong among them, and the end says where each stands.
    days.sleep()
    mara.goto("/practice")
    with mara.expect_navigation():
        mara.get_by_role("button", name="Begin").tap()
    answer(mara, yard, right=False)
    expect(mara.locator(".mark-wrong")).to_be_visible()
    with mara.expect_navigation():
        mara.get_by_role("link", name="Next question").tap()
    assert sit(mara, yard) == 2 * len(skills) - 1
    expect(mara.locator(".skill .state-gelled").first).to_be_visible()
    expect(mara.get_by_text("The next practice is 16 March.")).to_be_visible()
    mara.goto("/progress")
    expect(
        mara.get_by_text("It was right on a later day, and more later days are to come.").first
    ).to_be_visible()
