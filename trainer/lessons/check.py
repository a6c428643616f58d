"""What `trainer check` proves of every question, by working it many times over."""

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from trainer.engine import EngineError
from trainer.lessons.errors import AuthorError
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
    if lesson.worked is None:
        yield AuthorError(lesson.file, 1, "A lesson has one worked job.")
    for question in lesson.questions:
        yield from check_question(question, lesson.file, _line_of(lesson.text, question.id))


def check_question(question: Question, file: str, line: int) -> Iterator[AuthorError]:
    """Yield what is wrong with a question after VARIANTS draws."""

    def mistake(sentence: str, mend: str = "") -> AuthorError:
        return AuthorError(file, line, f"Question '{question.id}': {sentence}", "", mend)

    if len(question.slips) < FEWEST_SLIPS:
        yield mistake(f"it knows {len(question.slips)} slips; it takes {FEWEST_SLIPS} at least.")
    drawn = [variant(question, f"check-{number}") for number in range(VARIANTS)]
    try:
        collisions, nearest = _collisions(drawn)
        fair = [each for each in drawn if next(close_slips(each), None) is None]
        unprinted = next((each for each in fair if not _prints_sensibly(each)), None)
        met = Counter(slip.name for each in fair for slip in _recognised(each))
    except EngineError as error:
        yield mistake(f"it can't always be worked. {error}", "Narrow the ranges of its givens.")
        return
    for name, count in collisions.items():
        if count > MOST_COLLISIONS * VARIANTS:
            yield mistake(
                f"the slip '{name}' comes within three tolerances of the right answer in "
                f"{count} of {VARIANTS} draws; the nearest is {nearest[name]:.4g} off.",
                "Change the ranges, the slip, or a tighter tolerance.",
            )
    for slip in question.slips:
        if fair and met[slip.name] < (1 - MOST_COLLISIONS) * len(fair):
            yield mistake(
                f"the slip '{slip.name}' is told from the others in only "
                f"{met[slip.name]} of {len(fair)} draws.",
                "Two slips lead to the same figure, or it can't happen: drop one.",
            )
    if unprinted:
        yield mistake(f"it doesn't print sensibly: {unprinted.text()}")


def _collisions(drawn: list[Variant]) -> tuple[Counter[str], dict[str, float]]:
    collisions: Counter[str] = Counter()
    nearest: dict[str, float] = {}
    for each in drawn:
        for slip, distance in close_slips(each):
            collisions[slip.name] += 1
            nearest[slip.name] = min(distance, nearest.get(slip.name, distance))
    return collisions, nearest


def _recognised(drawn: Variant) -> Iterator[Slip]:
    """Yield each slip that is named, and none besides, when somebody makes it."""
    right = drawn.working().figures
    for slip in drawn.question.slips:
        for ask, figure in slip_figures(drawn, slip, right):
            if ask.tolerance.allows(figure, right[ask.line]):
                continue
            typed = {
                a.line: Typed(repr(a.in_asked_unit(right[a.line])), a.unit)
                for a in drawn.question.asks
            }
            typed[ask.line] = Typed(_written(ask.in_asked_unit(figure)), ask.unit)
            if mark_answers(drawn, typed, try_no=1).slip == slip:
                yield slip
                break


def _written(figure: float) -> str:
    return f"{figure:.12f}"


def _prints_sensibly(drawn: Variant) -> bool:
    texts = [drawn.text(), *(drawn.text(ask) for ask in drawn.question.asks)]
    texts += [line.shown() for line in drawn.working().lines]
    return not any(bad in text for text in texts for bad in ("{", "nan", "inf", "None"))


def _line_of(text: str, question_id: str) -> int:
    lines = text.splitlines()
    return next((n for n, line in enumerate(lines, 1) if f'"{question_id}"' in line), 1)
