"""What one running installation has."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import pytest
from web_bench import Bench
from web_cast import NOW

from trainer import create_app, web
from trainer.config import ConfigError
from trainer.lessons import ContentError
from trainer.records import texts
from trainer.web.installation import here


def test_it_is_the_applications_own(tiny: Bench, bench: Bench) -> None:
    """Two installations in one process don't meet."""
    with tiny.app.app_context():
        assert here() is tiny.installation
    with bench.app.app_context():
        assert here() is bench.installation
    assert tiny.installation.secret != bench.installation.secret


def test_the_instant_is_in_utc(tiny: Bench) -> None:
    """Whatever zone the clock speaks in."""
    tiny.clock.now = datetime(2026, 3, 9, 9, 45, tzinfo=timezone(timedelta(hours=2)))
    assert tiny.installation.now() == NOW
    assert tiny.installation.now().tzinfo is UTC


@pytest.mark.parametrize(
    ("instant", "local"),
    [
        (datetime(2026, 3, 9, 22, 59, tzinfo=UTC), date(2026, 3, 9)),
        (datetime(2026, 3, 9, 23, 0, tzinfo=UTC), date(2026, 3, 10)),
        (datetime(2026, 7, 9, 22, 0, tzinfo=UTC), date(2026, 7, 10)),
    ],
    ids=["before midnight", "at midnight", "in summer"],
)
def test_a_date_is_local(tiny: Bench, instant: datetime, local: date) -> None:
    """Midnight is an hour before UTC's in winter, two in summer."""
    tiny.clock.now = instant
    assert tiny.installation.today() == local
    assert tiny.installation.date_of(instant) == local


def test_a_seed_is_of_one_person_question_roof_and_count(tiny: Bench) -> None:
    """Any other one gives other numbers; the same gives the same again."""
    seeds = {
        tiny.installation.seed(*facts)
        for facts in (
            (1, "first-dose", "", 0),
            (2, "first-dose", "", 0),
            (1, "drum-dose", "", 0),
            (1, "first-dose", "a roof", 0),
            (1, "first-dose", "", 1),
            (11, "first-dose", "", 0),
        )
    }
    assert len(seeds) == 6
    assert tiny.installation.seed(1, "first-dose", "", 0) in seeds


def test_a_seed_rests_on_the_secret(tiny: Bench) -> None:
    """Nobody outside can work out which numbers come next."""
    other = replace(tiny.installation, secret="another")
    assert other.seed(1, "first-dose", "", 0) != tiny.installation.seed(1, "first-dose", "", 0)


def test_without_a_zone_it_does_not_start(tiny: Bench) -> None:
    """The sentence says what to set."""
    with pytest.raises(ConfigError, match="No time zone is set"):
        create_app(replace(tiny.config, zone=None), tiny.clock)


def test_with_a_mistake_in_a_lesson_it_does_not_start(tiny: Bench, tmp_path: Path) -> None:
    """Nothing half-read is served."""
    (tmp_path / "lessons").mkdir()
    with pytest.raises(ContentError):
        create_app(replace(tiny.config, content=tmp_path), tiny.clock)


def test_every_text_that_can_be_asked_is_kept(tiny: Bench) -> None:
    """An answer names the text it was asked by, so the text is there before the first page."""
    with tiny.records() as session:
        for lesson in tiny.library.lessons:
            assert texts.text_of(session, lesson.digest) == lesson.text


def test_starting_again_changes_nothing(tiny: Bench) -> None:
    """The secret, the people and their answers are the same after a restart."""
    noor = tiny.visit()
    web.prepare(tiny.app)
    again = tiny.restarted(tiny.config.content)
    assert again.installation.secret == tiny.installation.secret
    assert again.app.secret_key == tiny.app.secret_key
    assert noor.open("/help").status == 200
    again.close()
