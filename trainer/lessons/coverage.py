"""What is promised and nowhere kept: nothing taught, asked or shown of it."""

from collections.abc import Iterator

from trainer.lessons.competencies import Competency
from trainer.lessons.crosscheck import mistake_of
from trainer.lessons.errors import AuthorError
from trainer.lessons.library import Library

_SUM = "calculate"


def check_coverage(library: Library) -> Iterator[AuthorError]:
    """Yield each competency, skill and picture that no lesson makes use of."""
    for competency in library.competencies.competencies:
        yield from _competency(library, competency)
    yield from _unused_pictures(library)


def _competency(library: Library, competency: Competency) -> Iterator[AuthorError]:
    """Yield what is wrong with one: no lesson teaches it or asks it, or a skill has no sum."""
    source = library.competencies_source
    slug = competency.slug
    taught = [lesson for lesson in library.lessons if lesson.competency == slug]
    own = {skill.slug for skill in competency.skills}
    asked = {skill for lesson in taught for each in lesson.questions for skill in each.skills}
    if not taught:
        mend = f'Write competency = "{slug}" in the lesson that does.'
        yield mistake_of(source, "slug", slug, f"No lesson teaches '{slug}'.", mend)
    elif not own & asked:
        sentence = f"No lesson that teaches '{slug}' asks a skill of it."
        yield mistake_of(source, "slug", slug, sentence, "Ask one there.")
    sums = {
        skill for each in library.questions.values() if each.kind == _SUM for skill in each.skills
    }
    for skill in competency.skills:
        if skill.slug not in sums:
            sentence = f"No question has people work a sum for the skill '{skill.slug}'."
            mend = "Ask it with a calculation: picking an answer can't show it alone."
            yield mistake_of(source, "slug", skill.slug, sentence, mend)


def _unused_pictures(library: Library) -> Iterator[AuthorError]:
    """Yield each picture that is drawn and shown nowhere."""
    texts = [each.text for each in library.written]
    for file in sorted((library.folder / "pictures").glob("*.svg")):
        picture = f"pictures/{file.name}"
        if not any(picture in text for text in texts):
            sentence, mend = "No lesson shows this picture.", "Show it in one, or delete the file."
            yield AuthorError(f"content/{picture}", 1, sentence, "", mend)
