"""Days as people type them."""

from datetime import date, datetime

#: How a browser sends a day, and how people write one.
_FORMS = ("%Y-%m-%d", "%d %B %Y", "%d %b %Y", "%d.%m.%Y")


def read_day(text: str) -> date | None:
    """Return the day that a text means: 2027-03-01, 1 March 2027, 1.3.2027; else None.

    Days with strokes are not read: who writes 3/1/2027 may mean March or January.
    """
    tidy = " ".join(text.split())
    for form in _FORMS:
        try:
            return datetime.strptime(tidy, form).date()  # noqa: DTZ007 - a day has no zone
        except ValueError:
            continue
    return None
