"""Test cups, and what several of them fit: shown beside the gel times, never planned with."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import exp, log

from trainer.engine.band import gel_short_end
from trainer.engine.conversions import J_PER_KJ
from trainer.engine.cure import GAS, in_kelvin
from trainer.engine.units import show

# Two columns that are nearer to one another than this are one: they can't be told apart.
_ONE = 1e-9


@dataclass(frozen=True, slots=True)
class TestCup:
    """A small batch that was timed until it gelled, or a batch's own gel; the dose is by mass.

    Raises NotAFigure for minutes, a temperature or a dose that aren't above zero.
    """

    product: str
    minutes: float
    air_c: float
    percent: float
    days_old: int = 0
    #: Whether a batch on the roof gelled, and no cup.
    from_batch: bool = False
    #: Whether nobody timed it: it stands on the data sheet, which grows no older.
    from_sheet: bool = False

    def __post_init__(self) -> None:
        figures = {"cup_min": self.minutes, "cup_c": self.air_c, "cup_percent": self.percent}
        for name, figure in figures.items():
            gel_short_end.parameters[name].check_inside(figure)

    @property
    def age(self) -> str:
        """How old it is: "today", "yesterday", "3 days ago"."""
        days = self.days_old
        return ("today", "yesterday")[days] if days < 2 else f"{days} days ago"

    @property
    def words(self) -> str:
        """What it is and says: "the cup of today: 22 min at 27 °C, 1.2 % by mass"."""
        what = f"the {'batch on the roof' if self.from_batch else 'cup'} of {self.age}"
        time, at_c = show(self.minutes, "min"), show(self.air_c, "°C")
        said = f"{time} at {at_c}, {show(self.percent, '%')} by mass"
        return f"{'the data sheet' if self.from_sheet else what}: {said}"

    def is_of(self, product: str) -> bool:
        """Whether it is of this product, however its name was typed."""
        return _plain(self.product) == _plain(product)


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


@dataclass(frozen=True, slots=True)
class CupFit:
    """The one energy and order that come nearest to all cups."""

    #: None where the cups stood at one temperature.
    energy_kj_per_mol: float | None
    #: None where the cups had one dose.
    order: float | None
    #: How far the cup that lies furthest off is from the fit.
    off_percent: float


def fit_cups(cups: Sequence[TestCup]) -> CupFit | None:
    """Return what two or more cups fit, or None where their figures can't tell it.

    Least squares of ln t = a + energy ÷ (R × T) − order × ln(dose), in kelvin. Temperature and
    dose that only ever changed together can't be told apart.
    """
    if len(cups) < 2:
        return None
    warmth = _centred(cups, lambda cup: J_PER_KJ.value / (GAS.value * _kelvin(cup)))
    weakness = _centred(cups, lambda cup: -log(cup.percent))
    time = _centred(cups, lambda cup: log(cup.minutes))
    slopes = _slopes(warmth, weakness, time)
    if slopes is None:
        return None
    energy, order = slopes
    off = (
        t - (energy or 0) * x - (order or 0) * y
        for x, y, t in zip(warmth, weakness, time, strict=True)
    )
    return CupFit(energy, order, max(abs(exp(each) - 1) for each in off) * 100)


def _kelvin(cup: TestCup) -> float:
    return in_kelvin("cup_k", "temperature of the cup", cup.air_c).value


def _centred(cups: Sequence[TestCup], of: Callable[[TestCup], float]) -> list[float]:
    """Return a column of figures, less their mean."""
    column = [of(cup) for cup in cups]
    mean = sum(column) / len(column)
    return [each - mean for each in column]


def _times(one: Sequence[float], other: Sequence[float]) -> float:
    return sum(x * y for x, y in zip(one, other, strict=True))


def _vary(column: Sequence[float]) -> bool:
    return _times(column, column) > _ONE**2


def _slopes(
    warmth: Sequence[float], weakness: Sequence[float], time: Sequence[float]
) -> tuple[float | None, float | None] | None:
    """Return energy and order, each None where its column doesn't change; None for both as one."""
    if _vary(warmth) and _vary(weakness):
        return _two_slopes(warmth, weakness, time)
    return _one_slope(warmth, time), _one_slope(weakness, time)


def _one_slope(column: Sequence[float], time: Sequence[float]) -> float | None:
    """Return the slope of time along one column; None where it doesn't change."""
    return _times(column, time) / _times(column, column) if _vary(column) else None


def _two_slopes(
    one: Sequence[float], other: Sequence[float], time: Sequence[float]
) -> tuple[float, float] | None:
    """Return the slopes of time along two columns, by the normal equations; None for one column."""
    xx, yy, xy = _times(one, one), _times(other, other), _times(one, other)
    xt, yt = _times(one, time), _times(other, time)
    determinant = xx * yy - xy**2
    if determinant <= _ONE * xx * yy:
        return None
    return (xt * yy - yt * xy) / determinant, (yt * xx - xt * xy) / determinant
