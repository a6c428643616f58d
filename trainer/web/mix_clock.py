"""The clock of a bucket or a test cup: when catalyst went in, and what that makes the time now."""

import hashlib
import hmac
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Literal

from trainer.engine.plans.gel import GelTimes, NoTimes
from trainer.web.access import signed_in
from trainer.web.answer import instant_in
from trainer.web.installation import here

Phase = Literal["working", "gel", "may", "up"]
LONGEST = timedelta(days=1)
#: A phone's clock and the server's may part by this much.
_APART = timedelta(minutes=2)
UNREADABLE = "The start of that clock can't be read. Start it again."
AHEAD = "That clock starts in the future. Look at the time on this phone, then start it again."
RUN_OUT = "That clock was started over a day ago, so it has run out."


@dataclass(frozen=True, slots=True)
class Start:
    """When catalyst went in, as an address tells it; or why that can't be used."""

    at: datetime | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Clock:
    """A clock that runs or is ready to, with the minutes that it counts to."""

    start: Start
    #: None where there is no gel time to go by, and then it counts up.
    working_min: float | None = None
    short_min: float | None = None

    @property
    def phase(self) -> Phase:
        """What it is time for."""
        if self.working_min is None or self.short_min is None or self.start.at is None:
            return "up"
        gone = (here().now() - self.start.at) / timedelta(minutes=1)
        if gone < self.working_min:
            return "working"
        return "gel" if gone < self.short_min else "may"

    def at(self, minutes: float = 0) -> str:
        """Return the local time so many minutes after the start: "14:18", never a minute late."""
        if self.start.at is None:
            return ""
        then = self.start.at + timedelta(minutes=minutes)
        return f"{then.astimezone(here().zone):%H:%M}"


def start_of(text: str) -> Start:
    """Return the start that stands in an address; none where nothing stands there."""
    if not text:
        return Start()
    at, now = instant_in(text), here().now()
    if at is None:
        return Start(note=UNREADABLE)
    if at > now + _APART:
        return Start(note=AHEAD)
    if now - at > LONGEST:
        return Start(note=RUN_OUT)
    return Start(at)


def stamp(instant: datetime) -> str:
    """Return an instant as an address keeps it: "2026-03-09T07:45:00Z"."""
    return f"{instant.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}"


def clock_of(start: Start, gel: GelTimes | NoTimes | None) -> Clock:
    """Return the clock of a start, against the gel where it can be told."""
    if not isinstance(gel, GelTimes):
        return Clock(start)
    return Clock(start, gel.lay_by, gel.short.value)


def minutes_gone(start: datetime, pressed: str) -> float:
    """Return the minutes from a start to when the button was pressed, by the phone's own clock.

    `pressed` is its ISO time, or nothing; what isn't between the start and now is not believed.
    """
    now = here().now()
    then = instant_in(pressed)
    if then is None or not start <= then <= now + _APART:
        then = now
    return (then - start) / timedelta(minutes=1)


def holder() -> str:
    """Return a name for this very sign-in, under which its pages are kept on the phone.

    It tells nothing, and nobody who signs in later has the same.
    """
    words = f"kept on the phone\n{signed_in().sign_in_id}".encode()
    return hmac.new(here().secret.encode(), words, hashlib.sha256).hexdigest()[:24]
