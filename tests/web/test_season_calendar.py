"""The refresher's sittings as a calendar file, read back by a calendar's own rules.

Source: RFC 5545 (iCalendar): content lines end in CR LF and are at most 75 octets long (3.1); a
calendar has VERSION and PRODID (3.6); an event has UID and DTSTAMP, and a whole day a DTSTART of
VALUE=DATE (3.6.1).
"""

from datetime import date

import pytest
from icalendar import Calendar
from web_bench import Bench
from web_cast import KIT, NOOR
from web_season import in_days, set_start


@pytest.fixture
def file(bench: Bench) -> bytes:
    """What Noor gets once the office has set the start to 8 May."""
    set_start(bench.visit(KIT), in_days(bench, 60))
    page = bench.visit(NOOR).client.get("/season/sittings.ics")
    assert page.status_code == 200
    assert page.content_type == "text/calendar; charset=utf-8"
    return page.data


def events(file: bytes) -> list[object]:
    """The events of a file, as a calendar reads them."""
    return list(Calendar.from_ical(file).walk("VEVENT"))


def test_a_calendar_reads_the_three_sittings(file: bytes) -> None:
    """Whole days, on the dates of the page."""
    days = [each["DTSTART"].dt for each in events(file)]  # type: ignore[index]
    assert days == [date(2026, 4, 10), date(2026, 4, 28), date(2026, 5, 25)]
    assert b"DTSTART;VALUE=DATE:20260410" in file


def test_it_has_what_the_standard_asks_for(file: bytes) -> None:
    """Version and product once; each event its own UID, and when it was made."""
    calendar = Calendar.from_ical(file)
    assert calendar["VERSION"] == "2.0"
    assert calendar["PRODID"]
    assert len({str(each["UID"]) for each in events(file)}) == 3  # type: ignore[index]
    assert all(each["DTSTAMP"].dt for each in events(file))  # type: ignore[index]


def test_its_lines_are_short_and_end_as_they_should(file: bytes) -> None:
    """At most 75 octets before each CR LF, and no LF alone."""
    lines = file.split(b"\r\n")
    assert lines[-1] == b""
    assert all(len(line) <= 75 for line in lines)
    assert not any(b"\n" in line for line in lines)
    assert any(line.startswith(b" ") for line in lines)


def test_a_moved_start_moves_the_same_events(bench: Bench, file: bytes) -> None:
    """By their UIDs, so that a calendar keeps three and not six."""
    set_start(bench.visit(KIT), in_days(bench, 67))
    moved = bench.visit(NOOR).client.get("/season/sittings.ics").data
    before, after = ([str(each["UID"]) for each in events(data)] for data in (file, moved))  # type: ignore[index]
    assert before == after
    assert events(moved)[0]["DTSTART"].dt == date(2026, 4, 17)  # type: ignore[index]


def test_an_event_keeps_its_name_whatever_address_it_was_taken_by(
    bench: Bench, file: bytes
) -> None:
    """The office's desk and the phone on the building site call the house differently."""
    client = bench.visit(NOOR).client
    elsewhere = client.get("/season/sittings.ics", base_url="http://localhost/").data
    bench.clock.wait(days=2)
    later = client.get("/season/sittings.ics").data
    names = [[str(each["UID"]) for each in events(data)] for data in (file, elsewhere, later)]  # type: ignore[index]
    assert names[0] == names[1] == names[2]


def test_it_says_where_the_sitting_is_sat(file: bytes) -> None:
    """With an address to tap."""
    first = events(file)[0]
    assert str(first["URL"]).endswith("/season")  # type: ignore[index]
    assert str(first["SUMMARY"]) == "Season refresher, sitting 1 of 3"  # type: ignore[index]


def test_without_a_start_there_is_no_file(bench: Bench) -> None:
    """Nothing could stand in it."""
    assert bench.visit(NOOR).open("/season/sittings.ics").status == 404
