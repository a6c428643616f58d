"""The sittings of a season as a calendar file, for whatever calendar somebody keeps.

RFC 5545: whole days, one event a sitting, the same UID for the same sitting each time, so that a
file taken again moves what it brought before. The lines end in CR LF and are folded at 75 octets.
"""

import hashlib
import hmac
import uuid
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING

from trainer.records.seasons import SeasonRow, sitting_dates
from trainer.web.installation import here

if TYPE_CHECKING:
    from icalendar import Event

PRODUCT = "-//Laminator's bench//Season refresher//EN"
MINUTES = "About {minutes} minutes, on a phone or at a desk: {address}"


def sittings_calendar(season: SeasonRow, address: str, now: datetime) -> bytes:
    """Return the sittings of a season as an .ics file; `address` is where they are sat."""
    # Imported here, since few ever take the file and it reads time zones for a while.
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    dates = sitting_dates(season.starts, here().thresholds.seasons)
    for number, day in enumerate(dates, start=1):
        uid = _uid(season.season_id, number)
        calendar.add_component(_event(uid, number, len(dates), day, address, now))
    file: bytes = calendar.to_ical()
    return file


def _uid(season_id: int, number: int) -> str:
    """Return a sitting's name for good, by whatever address its file was taken (RFC 7986, 5.3)."""
    words = f"season {season_id} sitting {number}".encode()
    digest = hmac.new(here().secret.encode(), words, hashlib.sha256).digest()
    return str(uuid.UUID(bytes=digest[:16], version=4))


def _event(uid: str, number: int, of: int, day: date, address: str, now: datetime) -> "Event":
    from icalendar import Event

    event = Event()
    event.add("uid", uid)
    event.add("dtstamp", now)
    event.add("dtstart", day)
    event.add("dtend", day + timedelta(days=1))
    event.add("summary", f"Season refresher, sitting {number} of {of}")
    minutes = here().thresholds.sittings.sitting_minutes
    event.add("description", MINUTES.format(minutes=minutes, address=address))
    event.add("url", address)
    event.add("transp", "TRANSPARENT")
    return event
