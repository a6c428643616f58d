"""All content read at once: every mistake is reported, and nothing is half-built."""

from pathlib import Path

import pytest
from lessons_specimens import (
    COMPETENCIES,
    FRONT,
    RESIN,
    another,
    edited,
    lesson_text,
    line_of,
)

from trainer.lessons.errors import ContentError
from trainer.lessons.library import Library, read_library


def add_lesson(content: Path, slug: str, order: int, file: str) -> str:
    """Write another lesson into a content folder, and return its text."""
    front = edited(FRONT, 'slug = "shed"', f'slug = "{slug}"')
    text = lesson_text(
        another(RESIN, f"{slug}-resin"), front=edited(front, "order = 1", f"order = {order}")
    )
    (content / "lessons" / file).write_text(text, "utf-8")
    return text


def mistakes_in(content: Path) -> list[str]:
    """Return the mistakes for which a content folder is refused, one line each."""
    with pytest.raises(ContentError) as refused:
        read_library(content)
    assert str(refused.value) == "\n".join(str(each) for each in refused.value.mistakes)
    return [f"{each.file}:{each.line}: {each.sentence}" for each in refused.value.mistakes]


def test_everything_is_read(content: Path) -> None:
    """Lessons, questions, competencies, cautions and stock, each found by its name."""
    library = read_library(content)
    assert [lesson.slug for lesson in library.lessons] == list(library.by_slug) == ["shed"]
    assert len(library.questions) == 5
    assert library.questions["shed-chain"].lesson == "shed"
    assert library.by_competency["bandaging"].title == "Bandaging"
    assert list(library.cautions) == ["eyes", "height"]
    assert list(library.stock) == ["tape"]


def test_lessons_follow_their_order_and_not_their_names(content: Path) -> None:
    """The first is the one with the lowest number."""
    add_lesson(content, "safety", 0, "99-safety.md")
    add_lesson(content, "corners", 2, "00-corners.md")
    library = read_library(content)
    assert [lesson.slug for lesson in library.lessons] == ["safety", "shed", "corners"]
    assert library.first.slug == "safety"


def test_one_lesson_follows_another(content: Path) -> None:
    """And none the last."""
    add_lesson(content, "corners", 2, "02-corners.md")
    add_lesson(content, "pipes", 3, "03-pipes.md")
    library = read_library(content)
    shed, corners, pipes = library.lessons
    assert [library.next_after(each) for each in (shed, corners, pipes)] == [corners, pipes, None]


@pytest.mark.parametrize("name", ["competencies.toml", "cautions.toml", "stock.toml"])
def test_a_missing_file_is_named_once(content: Path, name: str) -> None:
    """Not again for each lesson that leans on it."""
    (content / name).unlink()
    assert mistakes_in(content) == [f"content/{name}:1: This file is missing."]


def test_a_broken_file_is_named_once(content: Path) -> None:
    """Nor is a file that can't be read."""
    text = edited(COMPETENCIES, "weight = 1\n", "weight = \n")
    (content / "competencies.toml").write_text(text, "utf-8")
    (mistake,) = mistakes_in(content)
    line = line_of(text, "weight = \n")
    assert mistake.startswith(f"content/competencies.toml:{line}: This is not TOML:")


def test_a_folder_without_lessons_is_refused(content: Path) -> None:
    """A wrong path isn't served as an empty course."""
    (content / "lessons/01-shed.md").unlink()
    assert mistakes_in(content) == ["content/lessons:1: There are no lessons here."]


def test_a_file_that_is_not_utf_8_is_named(content: Path) -> None:
    """With the line on which the first odd byte stands."""
    (content / "lessons/01-shed.md").write_bytes(b"+++\nslug = 'sh\xe9d'\n+++\n")
    assert mistakes_in(content) == ["content/lessons/01-shed.md:2: This isn't UTF-8 text."]


def test_all_mistakes_come_at_once(content: Path) -> None:
    """One in each of two lessons and one in the stock are three, not the first alone."""
    wrong = edited(
        add_lesson(content, "corners", 2, "02-corners.md"), "minutes = 10", "minutes = x"
    )
    (content / "lessons/02-corners.md").write_text(wrong, "utf-8")
    shed = edited(lesson_text(), '"eyes", "height"', '"eyes", "hight"')
    (content / "lessons/01-shed.md").write_text(shed, "utf-8")
    (content / "stock.toml").write_text("[tape]\nroll_m = [20]\n", "utf-8")
    assert [mistake.partition(": ")[0] for mistake in mistakes_in(content)] == [
        f"content/lessons/01-shed.md:{line_of(shed, 'cautions =')}",
        f"content/lessons/02-corners.md:{line_of(wrong, 'minutes = x')}",
        "content/stock.toml:1",
    ]


def test_a_library_remembers_its_folder(content: Path) -> None:
    """Whoever draws a picture again knows where to look."""
    library: Library = read_library(content)
    assert library.folder == content
