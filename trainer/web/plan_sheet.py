"""The plan of a roof as its page tells it: the verdict, the pictures, the clock, the cuts."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from markupsafe import Markup

from trainer.engine import show
from trainer.engine.conversions import MM_PER_M
from trainer.engine.plans.gel import GelTimes, NoTimes
from trainer.engine.plans.roof import Assumption, RoofPlan
from trainer.engine.plans.stock_cuts import Cuts
from trainer.engine.plans.trims import TrimRun
from trainer.engine.plans.verdict import Level, Word
from trainer.engine.units import figure
from trainer.lessons.cautions import ON_A_ROOF, Caution
from trainer.web.drawing import TITLES, describe_roof, draw_roof
from trainer.web.installation import here

NO_CUP = "No test cup: no clock. Start a test cup."
NO_START = "No start was given. Count from the moment that the catalyst goes in."
#: The caution that stands under the others as a sentence of its own, and so isn't printed twice.
_TOLD_ANYWAY = "data-sheet"
CARD_CAUTIONS = ("eyes", "catalyst-acetone", "left-over")
#: The tone of the banner, which is one of a mark's.
_TONES: Mapping[Word, str] = {
    "stop": "wrong",
    "care": "slip",
    "not judged yet": "open",
    "go": "right",
}
_SHAPES: Mapping[Level, str] = {
    "stop": "wrong",
    "care": "caution",
    "not judged": "not-tried",
    "fine": "right",
}


@dataclass(frozen=True, slots=True)
class Picture:
    """One drawing of the roof."""

    part: str
    title: str
    drawing: Markup


@dataclass(frozen=True, slots=True)
class Bar:
    """Stock lengths that are cut alike."""

    times: int
    #: "3000" or "1820 + 1100".
    pieces: str
    left: str


class Trimmed(NamedTuple):
    """The trims of one kind: how many lengths they take, and what each is cut into."""

    run: TrimRun
    words: str
    bars: list[Bar]


@dataclass(frozen=True, slots=True)
class RoofSheet:
    """Everything that the page of a roof says."""

    plan: RoofPlan
    tone: str
    shapes: Mapping[Level, str]
    pictures: tuple[Picture, ...]
    #: The drawings in sentences.
    in_words: tuple[str, ...]
    #: Why there is no clock; nothing where there is one.
    no_clock: tuple[str, ...]
    #: Which test cup the clock goes by, and what the cups say besides their times.
    cups: tuple[str, ...]
    trims: tuple[Trimmed, ...]
    #: What nobody gave, by how it is known; each with its source where it has one.
    assumed: Mapping[str, list[tuple[Assumption, str]]]
    cautions: tuple[Caution, ...]

    @property
    def told_anyway(self) -> str:
        """The slug of the one caution that paper tells elsewhere; all others are printed."""
        return _TOLD_ANYWAY

    @property
    def patch(self) -> str:
        """The size of the patch over one open end: "160 by 140 mm"."""
        roof = self.plan.description
        wraps = 2 * roof.bandage.wrap_mm
        wide, high = roof.trims.end_width_mm + wraps, roof.trims.end_height_mm + wraps
        return f"{figure(wide)} by {show(high, 'mm')}"

    @property
    def gel(self) -> GelTimes | None:
        """The gel times, where there are any."""
        return self.plan.gel if isinstance(self.plan.gel, GelTimes) else None


def sheet_of(plan: RoofPlan) -> RoofSheet:
    """Return the sheet of a plan."""
    return RoofSheet(
        plan,
        _TONES[plan.verdict.word],
        _SHAPES,
        tuple(_pictures(plan)),
        tuple(describe_roof(plan)),
        no_clock(plan),
        (*goes_by(plan.gel), *cups_words(plan.gel)),
        tuple(Trimmed(run, cuts_words(run.cuts), bars_of(run.cuts)) for run in plan.trims.runs),
        _assumed(plan),
        cautions_named(ON_A_ROOF),
    )


def _assumed(plan: RoofPlan) -> Mapping[str, list[tuple[Assumption, str]]]:
    groups: dict[str, list[tuple[Assumption, str]]] = {}
    for each in plan.assumptions:
        standing, _, source = each.standing.partition(": ")
        groups.setdefault(standing, []).append((each, source))
    return groups


def cautions_named(slugs: Iterable[str]) -> tuple[Caution, ...]:
    """Return the content's cautions of these slugs; one that a teacher took out is left out."""
    known = here().library.cautions
    return tuple(known[slug] for slug in slugs if slug in known)


def _pictures(plan: RoofPlan) -> Iterator[Picture]:
    for part, title in TITLES.items():
        drawing = Markup(draw_roof(plan, part))  # noqa: S704 - drawn by a template that escapes
        yield Picture(part, title, drawing)


def no_clock(plan: RoofPlan) -> tuple[str, ...]:
    """Return why a plan has no clock; nothing where it has one."""
    if not plan.description.cups:
        return (NO_CUP,)
    if not isinstance(plan.gel, GelTimes):
        return plan.gel.reasons
    return (NO_START,) if plan.description.crew.start is None else ()


def goes_by(gel: GelTimes | NoTimes) -> Iterator[str]:
    """Yield what the clock goes by, then what was timed besides."""
    if isinstance(gel, GelTimes):
        yield f"The clock goes by {gel.goes_by.words}."
        yield from (f"Timed too: {cup.words}." for cup in gel.used if cup is not gel.goes_by)


def cups_words(gel: GelTimes | NoTimes) -> Iterator[str]:
    """Yield what test cups say besides their times."""
    if not isinstance(gel, GelTimes):
        return
    yield from gel.refused
    fit = gel.fit
    if fit is not None:
        off = show(fit.off_percent, "%", 0)
        yield f"The cups fit one another to within {off}. The clock goes by the soonest of them."


def bars_of(cuts: Cuts) -> list[Bar]:
    """Return the stock lengths of a cut list, those that are cut alike together."""
    return [
        Bar(
            times,
            " + ".join(f"{piece}" for piece in pieces),
            show(cuts.stock_mm - sum(pieces), "mm"),
        )
        for pieces, times in Counter(cuts.bars).items()
    ]


def cuts_words(cuts: Cuts) -> str:
    """Return how many stock lengths a cut list takes, and how good it is."""
    each, left = (show(mm / MM_PER_M.value, "m") for mm in (cuts.stock_mm, cuts.waste_mm))
    lengths = show(len(cuts.bars), "lengths")
    rest = f"{left} is left over" if cuts.waste_mm else "Nothing is left over"
    return f"{lengths} of {each}: {cuts.verdict}. {rest}."
