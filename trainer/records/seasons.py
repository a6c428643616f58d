"""The season's start, as the office sets it."""

from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import ForeignKey, insert, select, update
from sqlalchemy.orm import Mapped, mapped_column

from .calendar_days import days_between, days_on
from .database import AnySession, Model, UtcDateTime, table_of
from .faults import RecordsError
from .rules import SeasonRules

__all__ = [
    "Season",
    "SeasonRow",
    "StartInThePast",
    "StartTooFarAhead",
    "current_season",
    "set_start",
    "sitting_dates",
]


class Season(Model):
    """One season. The newest is the one that counts."""

    __tablename__ = "season"

    id: Mapped[int] = mapped_column(primary_key=True)
    starts: Mapped[date]
    set_by: Mapped[int] = mapped_column(ForeignKey("person.id"))
    set_at: Mapped[datetime] = mapped_column(UtcDateTime)


@dataclass(frozen=True, slots=True)
class SeasonRow:
    """A season as it is kept."""

    season_id: int
    starts: date


class StartInThePast(RecordsError):
    """A season's start before today; carries the day."""

    def __init__(self, starts: date) -> None:
        super().__init__(starts)
        self.starts = starts

    def __str__(self) -> str:
        return "That day has passed. A refresher before it can't be made up: set the next start."


class StartTooFarAhead(RecordsError):
    """A season's start further ahead than one is set; carries both days."""

    def __init__(self, starts: date, latest: date) -> None:
        super().__init__(starts, latest)
        self.starts, self.latest = starts, latest

    def __str__(self) -> str:
        return (
            f"That is in {self.starts.year}: look at the year. "
            f"A start can be set up to {self.latest.day} {self.latest:%B %Y}."
        )


def current_season(session: AnySession) -> SeasonRow | None:
    """Return the newest season, or None where none was ever set."""
    found = session.execute(select(Season.id, Season.starts).order_by(Season.id.desc()).limit(1))
    row = found.first()
    return SeasonRow(*row) if row else None


def set_start(
    session: AnySession, starts: date, today: date, rules: SeasonRules, *, by: int, now: datetime
) -> SeasonRow:
    """Return the season that now starts on that day.

    A season that is still to start is moved, and keeps its sittings; so is one whose sittings
    would overlap with the new ones. After that another begins.
    Raises StartInThePast and StartTooFarAhead.
    """
    if starts < today:
        raise StartInThePast(starts)
    if days_between(today, starts) > rules.season_ahead_days:
        raise StartTooFarAhead(starts, days_on(today, rules.season_ahead_days))
    table, current = table_of(Season), current_season(session)
    values = {"starts": starts, "set_by": by, "set_at": now}
    if current and _is_moved(current.starts, starts, today, rules):
        session.execute(update(table).where(table.c.id == current.season_id).values(values))
        return SeasonRow(current.season_id, starts)
    made = session.scalar(insert(table).values(values).returning(table.c.id))
    return SeasonRow(int(made or 0), starts)


def _is_moved(before: date, starts: date, today: date, rules: SeasonRules) -> bool:
    """Whether a new start is the same season's: rain may put it off after it has begun."""
    if before >= today:
        return True
    over = days_on(before, rules.refresher_days[-1] + rules.refresher_last_open_days)
    return days_on(starts, rules.refresher_days[0]) <= over


def sitting_dates(starts: date, rules: SeasonRules) -> list[date]:
    """Return the days from which the sittings of a season are open, in order."""
    return [days_on(starts, days) for days in rules.refresher_days]
