"""What `trainer check` proves of one question, by working it many times over."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import islice, product

from trainer.engine import Working
from trainer.engine.errors import UNWORKABLE
from trainer.lessons.asks import Ask, Slip
from trainer.lessons.calculate import (
    CalculateQuestion,
    Variant,
    slip_figures,
    too_near,
    variant,
)
from trainer.lessons.errors import AuthorError
from trainer.lessons.marks import Typed

VARIANTS = 500
#: More draws than this share that collide with a slip are the author's to mend.
MOST_COLLISIONS = 0.2
#: On one roof most figures stand still, so that more draws are thrown away for one slip.
MOST_ON_A_ROOF = 0.5
FEWEST_SLIPS = 2
#: Of a question with many givens no more combinations of their ends are worked.
MOST_ENDS = 256
_NONSENSE = re.compile(r"[{}]|\b(nan|inf|None)\b")
_UNSEEN = "It can't be made there: change its line 'on', or what it puts wrong, or drop it."
_CLOSE = "Change the ranges, the slip, or a tighter tolerance."
_MIXED_UP = "Two slips lead to the same figure, or it can't happen: drop one."
#: What each slip leads to at each asked line that it may show at.
_Made = Mapping[Slip, tuple[tuple[Ask, float], ...]]


@dataclass(slots=True)
class _Found:
    """What came up while a question was worked; every count is one of draws."""

    fair: int = 0
    collided: int = 0
    collisions: Counter[Slip] = field(default_factory=Counter)
    nearest: dict[Slip, float] = field(default_factory=dict)
    #: How often each slip led to no other figure at any line that it belongs to.
    unseen: Counter[Slip] = field(default_factory=Counter)
    #: How often each slip, when it was made, was named.
    named: Counter[Slip] = field(default_factory=Counter)
    unprinted: str = ""


def check_question(
    question: CalculateQuestion, file: str, line: int, *, roof: str = ""
) -> Iterator[AuthorError]:
    """Yield what is wrong with a question after VARIANTS draws.

    Of one with a roof's figures in it, `roof` is the roof's name; it has the slips that can be
    made there.
    """
    on_roof = f" on the roof '{roof}'" if roof else ""
    for sentence, mend in _wrong(question, roof=bool(roof)):
        told = f"Question '{question.id}'{on_roof}: {sentence}"
        yield AuthorError(file, line, told, f'id = "{question.id}"', mend)


def _wrong(question: CalculateQuestion, *, roof: bool) -> Iterator[tuple[str, str]]:
    """Yield what is wrong with a question, and how it is mended."""
    if not roof and len(question.slips) < FEWEST_SLIPS:
        yield f"it takes {FEWEST_SLIPS} slips at least, and knows {len(question.slips)}.", ""
    try:
        found = _work_through(question)
        for ends in at_the_ends(question):
            found.unprinted = found.unprinted or _nonsense(ends, ends.working())
    except UNWORKABLE as error:
        yield f"it can't always be worked. {error}", "Narrow the ranges of its givens."
        return
    yield from _wrong_slips(question, found, MOST_ON_A_ROOF if roof else MOST_COLLISIONS)
    if found.unprinted:
        yield f"it doesn't print sensibly: {found.unprinted}", ""


def _wrong_slips(
    question: CalculateQuestion, found: _Found, most: float
) -> Iterator[tuple[str, str]]:
    """Yield each slip that can't be made, comes too close to right, or is taken for another."""
    for slip, draws in found.unseen.items():
        if draws > most * VARIANTS:
            where = f"at '{slip.on or question.asks[-1].line}'"
            words = f"leads to no other figure {where} in {draws} of {VARIANTS} draws."
            yield f"the slip '{slip.name}' {words}", _UNSEEN
    for slip in _too_close(found, most * VARIANTS):
        words = (
            f"comes within three tolerances of the right answer in {found.collisions[slip]} of "
            f"{VARIANTS} draws; the nearest is {found.nearest[slip]:.4g} off."
        )
        yield f"the slip '{slip.name}' {words}", _CLOSE
    for slip in question.slips:
        if slip not in found.unseen and found.named[slip] < (1 - most) * found.fair:
            words = f"is told from the others in only {found.named[slip]} of {found.fair} draws."
            yield f"the slip '{slip.name}' {words}", _MIXED_UP


def _work_through(question: CalculateQuestion) -> _Found:
    """Return what comes up in VARIANTS draws; numbers that are drawn again aren't worked again."""
    found = _Found()
    for drawn, times in _drawn(question):
        working = drawn.working()
        made = {slip: tuple(slip_figures(drawn, slip, working.figures)) for slip in question.slips}
        if _collides(found, made, working.figures, times):
            found.collided += times
            continue
        found.fair += times
        found.named.update(dict.fromkeys(told_apart(made, working.figures), times))
        found.unprinted = found.unprinted or _nonsense(drawn, working)
    return found


def _collides(found: _Found, made: _Made, right: Mapping[str, float], times: int) -> bool:
    """Return whether a slip comes too close to the right answer; note which, and how close."""
    collides = False
    for slip, figures in made.items():
        near = too_near(figures, right)
        if near is None:
            continue
        collides = True
        found.collisions[slip] += times
        found.unseen[slip] += times if near == 0 else 0
        found.nearest[slip] = min(near, found.nearest.get(slip, near))
    return collides


def _drawn(question: CalculateQuestion) -> Iterable[tuple[Variant, int]]:
    """Return each variant that comes up in VARIANTS draws, with how often it does."""
    drawn = [variant(question, f"check-{number}") for number in range(VARIANTS)]
    numbers = [tuple(each.givens.values()) for each in drawn]
    times = Counter(numbers)
    return [(each, times[key]) for key, each in dict(zip(numbers, drawn, strict=True)).items()]


def at_the_ends(question: CalculateQuestion) -> Iterator[Variant]:
    """Yield the question with each given at either end of its range, in every combination.

    A draw seldom meets several ends at once. A given with many values has only its own ends.
    """
    ends = {
        name: dict.fromkeys((each.value(0), each.value(each.count - 1)))
        for name, each in question.givens.items()
    }
    for together in islice(product(*ends.values()), MOST_ENDS):
        yield Variant(question, "ends", 0, dict(zip(ends, together, strict=True)))


def _too_close(found: _Found, most: float) -> list[Slip]:
    """Return the slips to blame where too many draws collide: each over the limit, or the worst.

    One that leads to no other figure at all is blamed for that instead.
    """
    over = [slip for slip, count in found.collisions.items() if count > most]
    if not over and found.collided > most:
        over = [slip for slip, _ in found.collisions.most_common(1)]
    return [slip for slip in over if found.unseen[slip] <= most]


def told_apart(made: _Made, right: Mapping[str, float]) -> Iterator[Slip]:
    """Yield each slip that marking names, and none besides, when somebody makes it.

    Every slip was worked once already, and marking would work all of them again for each.
    """
    for slip, figures in made.items():
        for ask, figure in figures:
            if ask.tolerance.allows(figure, right[ask.line]):
                continue
            if _leading_to(ask, _as_typed(ask, figure), made) == [slip]:
                yield slip
                break


def _as_typed(ask: Ask, figure: float) -> float:
    """Return a figure as it is read when somebody types it; raise Unclear where nobody can."""
    typed = Typed(f"{ask.in_asked_unit(figure):.12f}", ask.unit)
    return ask.in_line_unit(typed.read_for(ask).value)


def _leading_to(ask: Ask, typed: float, made: _Made) -> list[Slip]:
    return [
        slip
        for slip, figures in made.items()
        if any(each is ask and ask.tolerance.allows(typed, figure) for each, figure in figures)
    ]


def _nonsense(drawn: Variant, working: Working) -> str:
    """Return the first text of a variant that doesn't print sensibly, or nothing."""
    texts = [drawn.text(), *(drawn.text(ask) for ask in drawn.question.asks)]
    texts += [line.shown() for line in working.lines]
    return next((text for text in texts if _NONSENSE.search(text)), "")
