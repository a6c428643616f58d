"""What `trainer check` proves of every question, by working it many times over."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path

from trainer.engine.errors import UNWORKABLE
from trainer.lessons.crosscheck import lines_with
from trainer.lessons.errors import AuthorError
from trainer.lessons.lesson import Lesson
from trainer.lessons.library import Library, read_library
from trainer.lessons.marks import Typed, mark_answers
from trainer.lessons.question import Question, Slip
from trainer.lessons.variant import Variant, close_slips, slip_figures, variant

VARIANTS = 500
#: More draws than this share that collide with a slip are the author's to mend.
MOST_COLLISIONS = 0.2
FEWEST_QUESTIONS = 5
FEWEST_SLIPS = 2
FEWEST_PICTURES = 2
_NONSENSE = re.compile(r"[{}]|\b(nan|inf|None)\b")


def check_content(folder: Path) -> tuple[Library, list[AuthorError]]:
    """Return the library and the mistakes that show only when it is worked.

    Raises ContentError where it can't even be read.
    """
    library = read_library(folder)
    mistakes = [mistake for lesson in library.lessons for mistake in _lesson(library, lesson.slug)]
    return library, mistakes


def _lesson(library: Library, slug: str) -> Iterator[AuthorError]:
    lesson = library.by_slug[slug]
    if len(lesson.questions) < FEWEST_QUESTIONS:
        yield AuthorError(lesson.file, 1, f"A lesson asks {FEWEST_QUESTIONS} questions at least.")
    if len(set(lesson.pictures)) < FEWEST_PICTURES:
        yield AuthorError(lesson.file, 1, f"A lesson has {FEWEST_PICTURES} pictures at least.")
    yield from _outdented(lesson)
    if lesson.worked is None:
        yield AuthorError(lesson.file, 1, "A lesson has one worked job.")
    for question in lesson.questions:
        yield from check_question(question, lesson.file, lines_with(lesson, "id", question.id)[0])


@dataclass(slots=True)
class _Found:
    """What came up while a question was worked; every count is one of draws."""

    fair: int = 0
    collided: int = 0
    collisions: Counter[Slip] = field(default_factory=Counter)
    nearest: dict[Slip, float] = field(default_factory=dict)
    #: How often each slip, when it was made, was named.
    named: Counter[Slip] = field(default_factory=Counter)
    unprinted: str = ""


def _outdented(lesson: Lesson) -> Iterator[AuthorError]:
    """Yield each line that falls out of the box it was meant for, because it isn't indented."""
    lines = lesson.text.splitlines()
    inside = False
    for number, (above, line) in enumerate(pairwise(lines), start=2):
        inside = above.startswith("!!! ") or (inside and above.startswith("    "))
        if inside and line.strip() and not line.startswith("    "):
            mend = "Indent it by four spaces, or leave a line empty above it."
            yield AuthorError(lesson.file, number, "This line falls out of its box.", line, mend)


def check_question(question: Question, file: str, line: int) -> Iterator[AuthorError]:
    """Yield what is wrong with a question after VARIANTS draws."""

    def mistake(sentence: str, mend: str = "") -> AuthorError:
        return AuthorError(file, line, f"Question '{question.id}': {sentence}", "", mend)

    if len(question.slips) < FEWEST_SLIPS:
        yield mistake(f"it takes {FEWEST_SLIPS} slips at least, and knows {len(question.slips)}.")
    try:
        found = _work_through(question)
    except UNWORKABLE as error:
        yield mistake(f"it can't always be worked. {error}", "Narrow the ranges of its givens.")
        return
    for slip in _too_close(found):
        yield mistake(
            f"the slip '{slip.name}' comes within three tolerances of the right answer in "
            f"{found.collisions[slip]} of {VARIANTS} draws; "
            f"the nearest is {found.nearest[slip]:.4g} off.",
            "Change the ranges, the slip, or a tighter tolerance.",
        )
    for slip in question.slips:
        if found.named[slip] < (1 - MOST_COLLISIONS) * found.fair:
            yield mistake(
                f"the slip '{slip.name}' is told from the others in only "
                f"{found.named[slip]} of {found.fair} draws.",
                "Two slips lead to the same figure, or it can't happen: drop one.",
            )
    if found.unprinted:
        yield mistake(f"it doesn't print sensibly: {found.unprinted}")


def _work_through(question: Question) -> _Found:
    """Return what comes up in VARIANTS draws; numbers that are drawn again aren't worked again."""
    found = _Found()
    for drawn, times in _drawn(question):
        close = dict(close_slips(drawn))
        for slip, distance in close.items():
            found.collisions[slip] += times
            found.nearest[slip] = min(distance, found.nearest.get(slip, distance))
        if close:
            found.collided += times
            continue
        found.fair += times
        found.named.update(dict.fromkeys(_named(drawn), times))
        found.unprinted = found.unprinted or _nonsense(drawn)
    return found


def _drawn(question: Question) -> Iterable[tuple[Variant, int]]:
    """Return each variant that comes up in VARIANTS draws, with how often it does."""
    drawn = [variant(question, f"check-{number}") for number in range(VARIANTS)]
    times = Counter(each.key for each in drawn)
    return [(each, times[key]) for key, each in {each.key: each for each in drawn}.items()]


def _too_close(found: _Found) -> list[Slip]:
    """Return the slips to blame where too many draws collide: each over the limit, or the worst."""
    most = MOST_COLLISIONS * VARIANTS
    over = [slip for slip, count in found.collisions.items() if count > most]
    if over or found.collided <= most:
        return over
    return [slip for slip, _ in found.collisions.most_common(1)]


def _named(drawn: Variant) -> Iterator[Slip]:
    """Yield each slip that is named, and none besides, when somebody makes it."""
    right = drawn.working().figures
    answers = {
        ask.line: Typed(repr(ask.in_asked_unit(right[ask.line])), ask.unit)
        for ask in drawn.question.asks
    }
    for slip in drawn.question.slips:
        for ask, figure in slip_figures(drawn, slip, right):
            if ask.tolerance.allows(figure, right[ask.line]):
                continue
            typed = Typed(f"{ask.in_asked_unit(figure):.12f}", ask.unit)
            if mark_answers(drawn, {**answers, ask.line: typed}, try_no=1).slip == slip:
                yield slip
                break


def _nonsense(drawn: Variant) -> str:
    """Return the first text of a variant that doesn't print sensibly, or nothing."""
    texts = [drawn.text(), *(drawn.text(ask) for ask in drawn.question.asks)]
    texts += [line.shown() for line in drawn.working().lines]
    return next((text for text in texts if _NONSENSE.search(text)), "")
