"""The two tables of skills, and how a progress becomes a row and a row a progress.

`skill_progress` holds what somebody's tries came to. `skill_start` holds, for tries that are gone,
what they had come to: whoever counts again begins there.
"""

from collections.abc import Iterator, Mapping
from dataclasses import fields
from datetime import date
from typing import Any

from sqlalchemy import CheckConstraint, Double, ForeignKey, select
from sqlalchemy.orm import Mapped, mapped_column

from .database import AnySession, Base, Model, one_of, table_of
from .fading import Fading
from .reviews import MODEL, Card
from .running import REACHED, Progress

__all__ = ["COLUMNS", "SkillProgress", "SkillStart", "kept_in", "progress_in", "row_of"]


class _Kept:
    """The columns of a skill's progress; what they mean stands at `running.Progress`."""

    person_id: Mapped[int] = mapped_column(ForeignKey("person.id"), primary_key=True)
    skill: Mapped[str] = mapped_column(primary_key=True)
    reached: Mapped[str]
    stage: Mapped[int]
    wrong_running: Mapped[int]
    right_alone: Mapped[int]
    met_on: Mapped[date | None]
    in_a_row: Mapped[int]
    runs: Mapped[int]
    counted: Mapped[int]
    wrong: Mapped[int]
    numberless: Mapped[int]
    counted_days: Mapped[int]
    right_days: Mapped[int]
    owed: Mapped[int]
    slipped: Mapped[bool]
    day: Mapped[date | None]
    day_tries: Mapped[int]
    day_open: Mapped[bool]
    day_counted: Mapped[bool]
    day_right: Mapped[bool]
    due: Mapped[date | None]
    model: Mapped[str]
    stability: Mapped[float | None] = mapped_column(Double)
    difficulty: Mapped[float | None] = mapped_column(Double)
    heard: Mapped[date | None]
    review_due: Mapped[date | None]


class SkillProgress(_Kept, Model):
    """One person at one skill, after all that they have answered."""

    __tablename__ = "skill_progress"
    __table_args__ = (CheckConstraint(one_of("reached", REACHED), name="reached"),)


class SkillStart(_Kept, Model):
    """One person at one skill after the tries that are gone; from here on the others follow."""

    __tablename__ = "skill_start"
    __table_args__ = (CheckConstraint(one_of("reached", REACHED), name="reached"),)


_FADING = tuple(each.name for each in fields(Fading))
_PLAIN = tuple(each.name for each in fields(Progress) if each.name not in ("card", "fading"))
_DAYS = {"day", "due", "met_on"}
_YES_OR_NO = {"slipped", "day_open", "day_counted", "day_right"}
_CARD = ("model", "stability", "difficulty", "heard", "review_due")
COLUMNS = (*_FADING, *_PLAIN, *_CARD)
"""What a row keeps beside whose and which skill it is."""


def kept_in(
    session: AnySession, model: type[Base], person_id: int | None = None
) -> Iterator[tuple[tuple[int, str], Progress]]:
    """Yield person and skill with what a table keeps of them; of one person, or of everybody."""
    table = table_of(model)
    query = select(table) if person_id is None else select(table).filter_by(person_id=person_id)
    for row in session.execute(query).mappings():
        yield (row["person_id"], row["skill"]), progress_in(dict(row))


def row_of(person_id: int, skill: str, progress: Progress) -> dict[str, Any]:
    """Return the row that keeps a progress."""
    card = progress.card
    return {
        "person_id": person_id,
        "skill": skill,
        **{name: getattr(progress.fading, name) for name in _FADING},
        **{name: getattr(progress, name) for name in _PLAIN},
        "model": MODEL if card else "",
        "stability": card and card.stability,
        "difficulty": card and card.difficulty,
        "heard": card and card.heard,
        "review_due": card and card.due,
    }


def progress_in(row: Mapping[str, Any]) -> Progress:
    """Return the progress that a row keeps, whether its dates are dates or ISO 8601."""
    plain = {name: _as_kept(name, row[name]) for name in _PLAIN}
    fading = Fading(*(_as_kept(name, row[name]) for name in _FADING))
    heard, due = _day(row["heard"]), _day(row["review_due"])
    if heard is None or due is None:
        return Progress(**plain, fading=fading)
    return Progress(
        **plain, fading=fading, card=Card(row["stability"], row["difficulty"], heard, due)
    )


def _as_kept(name: str, value: Any) -> Any:  # noqa: ANN401 - one column after another
    if name in _DAYS:
        return _day(value)
    # SQLite hands a yes or no back as a number.
    return bool(value) if name in _YES_OR_NO else value


def _day(value: date | str | None) -> date | None:
    return date.fromisoformat(value) if isinstance(value, str) else value
