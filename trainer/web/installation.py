"""What one running installation has: its lessons, its time zone, its clock and its secret."""

import hashlib
import hmac
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

from flask import Flask, current_app

from trainer.config import Config, read_secret
from trainer.lessons import Lesson, Library
from trainer.web.thresholds import Thresholds, thresholds_of

Clock = Callable[[], datetime]


def utc_now() -> datetime:
    """Return the instant it is."""
    return datetime.now(UTC)


@dataclass(frozen=True)
class Installation:
    """Everything that is read once at the start and the same for every request."""

    config: Config
    library: Library
    zone: ZoneInfo
    clock: Clock
    secret: str
    thresholds: Thresholds

    @classmethod
    def read(cls, config: Config, library: Library, clock: Clock) -> "Installation":
        """Return the installation of these settings.

        Raises ConfigError without a zone, and ContentError without the rules.
        """
        thresholds, zone = thresholds_of(library), config.wanted_zone()
        return cls(config, library, zone, clock, read_secret(config.instance), thresholds)

    def install(self, app: Flask) -> None:
        """Make this the application's installation."""
        app.extensions["installation"] = self

    @property
    def lessons(self) -> tuple[Lesson, ...]:
        """The lessons in order."""
        return self.library.lessons

    def now(self) -> datetime:
        """Return the instant it is, in UTC."""
        return self.clock().astimezone(UTC)

    def today(self) -> date:
        """Return the local date it is."""
        return self.date_of(self.now())

    def date_of(self, instant: datetime) -> date:
        """Return the local date that an instant falls on."""
        return instant.astimezone(self.zone).date()

    def seed(self, person_id: int, question_id: str, roof: str, count: int) -> str:
        """Return the seed of somebody's next numbers: nobody can guess or choose it."""
        words = f"{person_id}\n{question_id}\n{roof}\n{count}".encode()
        return hmac.new(self.secret.encode(), words, hashlib.sha256).hexdigest()[:24]


def here() -> Installation:
    """Return the installation that serves this request."""
    installation: Installation = current_app.extensions["installation"]
    return installation
